//! The van kit: a sensible one to begin with, and what the form of an instrument gives.

use crate::job::entry::Carried;
use crate::trade::fastening::Wrench;
use crate::trade::play::dial::DialError;
use crate::trade::play::{Dial, DialKind};
use crate::units::{DecimalSlip, LengthUnit, System, Torque, TorqueUnit, Typed, TypedTorque};

/// The log of the van kit; job logs hold no colon.
pub const LOG: &str = "kit:van";

/// Why the fields give no instrument.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum KitSlip {
    /// A wrench without a name.
    NoName,
    /// A field is no number.
    Number(DecimalSlip),
    /// The lower mark is not above zero and below the upper one.
    Range,
    /// There is no such dial.
    Dial(DialError),
}

/// Three wrenches and the common dial of the unit system: invented, to be replaced by one's own.
pub fn first_kit(system: System) -> Carried {
    let wrench = |name: &str, low, high| Wrench {
        name: name.to_owned(),
        low: Torque::newton_metres(low),
        high: Torque::newton_metres(high),
        unit: match system {
            System::Metric => TorqueUnit::NewtonMetre,
            System::Us => TorqueUnit::PoundFoot,
        },
    };
    Carried {
        wrenches: vec![
            wrench("Wrench A", 10.0, 60.0),
            wrench("Wrench B", 40.0, 200.0),
            wrench("Wrench C", 100.0, 500.0),
        ],
        dial: match system {
            System::Metric => Dial::HUNDREDTH_MM,
            System::Us => Dial::THOU,
        },
        dial_due: None,
    }
}

/// A wrench from its fields.
///
/// # Errors
/// The first [`KitSlip`].
pub fn typed_wrench(
    name: &str,
    low: &str,
    high: &str,
    unit: TorqueUnit,
) -> Result<Wrench, KitSlip> {
    let name = name.trim().to_owned();
    if name.is_empty() {
        return Err(KitSlip::NoName);
    }
    let torque = |text: &str| {
        TypedTorque::parse(text, unit)
            .map(|typed| typed.torque())
            .map_err(KitSlip::Number)
    };
    let (low, high) = (torque(low)?, torque(high)?);
    if !(Torque::ZERO < low && low < high) {
        return Err(KitSlip::Range);
    }
    Ok(Wrench {
        name,
        low,
        high,
        unit,
    })
}

/// A dial from its fields.
///
/// # Errors
/// The first [`KitSlip`].
pub fn typed_dial(
    division: &str,
    unit: LengthUnit,
    divisions_per_turn: &str,
    kind: DialKind,
) -> Result<Dial, KitSlip> {
    let graduation = Typed::parse(division, unit)
        .map_err(KitSlip::Number)?
        .length();
    let turn = divisions_per_turn
        .trim()
        .parse()
        .map_err(|_| KitSlip::Number(DecimalSlip::NoDigit))?;
    Dial::new(graduation, turn, kind).map_err(KitSlip::Dial)
}

#[cfg(test)]
mod tests {
    #![allow(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::panic,
        clippy::indexing_slicing
    )]
    use super::*;

    #[test]
    fn fields_of_a_wrench_become_one_or_say_why_not() {
        let unit = TorqueUnit::PoundFoot;
        let wrench = typed_wrench(" D ", "30", "150", unit).unwrap();
        assert_eq!((wrench.name.as_str(), wrench.unit), ("D", unit));
        let slip = |name, low, high| typed_wrench(name, low, high, unit).unwrap_err();
        assert_eq!(slip(" ", "30", "150"), KitSlip::NoName);
        assert_eq!(slip("D", "", "150"), KitSlip::Number(DecimalSlip::Empty));
        assert_eq!(slip("D", "150", "30"), KitSlip::Range);
        assert_eq!(slip("D", "0", "30"), KitSlip::Range);
    }

    #[test]
    fn fields_of_a_dial_become_one_or_say_why_not() {
        let dial = typed_dial("0,002", LengthUnit::Millimetre, "100", DialKind::Lever).unwrap();
        assert_eq!(dial.divisions_per_turn(), 100);
        assert!((dial.graduation().mm() - 0.002).abs() < 1e-15);
        let slip = |division: &str, turn: &str| {
            typed_dial(division, LengthUnit::Inch, turn, DialKind::Plunger).unwrap_err()
        };
        assert!(matches!(slip("0", "100"), KitSlip::Dial(_)));
        assert!(matches!(slip("0.001", "3"), KitSlip::Dial(_)));
        assert!(matches!(slip("x", "100"), KitSlip::Number(_)));
        assert!(matches!(slip("0.001", "many"), KitSlip::Number(_)));
    }

    #[test]
    fn the_first_kit_speaks_the_units_of_its_holder() {
        assert_eq!(first_kit(System::Metric).dial, Dial::HUNDREDTH_MM);
        assert_eq!(first_kit(System::Us).dial, Dial::THOU);
        assert_eq!(first_kit(System::Us).wrenches.len(), 3);
    }
}
