//! Is the figure on this card one that such a fastener commonly has, or a slip of the unit?
//!
//! The ranges are wide, common practice, without a source. They doubt, they never refuse, and
//! none of them is a value for any vehicle.

use super::card::{CardBody, CardItem, SpecCard};
use crate::units::{Length, LengthUnit, Torque, TorqueUnit, TypedLength, TypedTorque};

/// A figure outside what is common, and the units in which the same digits would be common.
#[derive(Clone, Debug, PartialEq)]
pub enum Doubt {
    /// A torque stage.
    Torque {
        /// What is doubted.
        typed: TypedTorque,
        /// The common range.
        common: (Torque, Torque),
        /// Units that would fit.
        would_fit: Vec<TorqueUnit>,
    },
    /// A play limit.
    Play {
        /// What is doubted.
        typed: TypedLength,
        /// The common range.
        common: (Length, Length),
        /// Units that would fit.
        would_fit: Vec<LengthUnit>,
    },
}

/// Common last torques, N·m: wide, common practice, no source.
const fn common_torque(item: CardItem) -> Option<(Torque, Torque)> {
    let (low, high) = match item {
        CardItem::AxleNut => (100.0, 450.0),
        CardItem::WheelNuts => (60.0, 250.0),
        CardItem::HubBolts => (40.0, 250.0),
        CardItem::BracketBolts => (50.0, 250.0),
        CardItem::CaliperPins => (15.0, 100.0),
        CardItem::PlayLimit => return None,
    };
    Some((Torque::newton_metres(low), Torque::newton_metres(high)))
}

/// Play limits that were read go from nothing to 0.008 in; doubled for the doubt.
const COMMON_PLAY: (Length, Length) = (Length::ZERO, Length::thou(16.0));

/// What is odd about the figures of a card.
///
/// Only the last torque is held against the range: an angle may follow it, so that a low one is
/// doubted only where no angle does, and first stages are low by nature.
pub fn doubts(card: &SpecCard) -> Vec<Doubt> {
    match &card.body {
        CardBody::Torque(_) => doubted_torque(card).into_iter().collect(),
        CardBody::Play { most, .. } => doubted_play(most).into_iter().collect(),
        CardBody::NotFound { .. } => Vec::new(),
    }
}

fn doubted_torque(card: &SpecCard) -> Option<Doubt> {
    let typed = card.final_torque()?;
    let (low, high) = common_torque(card.item)?;
    let low = if ends_with_angle(card) {
        low.times(0.2)
    } else {
        low
    };
    let fits = |torque: Torque| low <= torque && torque <= high;
    if fits(typed.torque()) {
        return None;
    }
    let would_fit = TorqueUnit::ALL
        .iter()
        .copied()
        .filter(|unit| Torque::new(typed.number.value(), *unit).is_ok_and(fits))
        .collect();
    Some(Doubt::Torque {
        typed: typed.clone(),
        common: (low, high),
        would_fit,
    })
}

fn ends_with_angle(card: &SpecCard) -> bool {
    use super::card::Stage;
    matches!(&card.body, CardBody::Torque(body) if matches!(body.stages.last(), Some(Stage::Angle(_))))
}

fn doubted_play(typed: &TypedLength) -> Option<Doubt> {
    let fits = |length: Length| COMMON_PLAY.0 <= length && length <= COMMON_PLAY.1;
    if fits(typed.length()) {
        return None;
    }
    // A limit is printed in mm, in or thou; µm would make any figure plausible.
    let printed = [LengthUnit::Millimetre, LengthUnit::Inch, LengthUnit::Thou];
    let would_fit = printed
        .into_iter()
        .filter(|unit| Length::new(typed.number.value(), *unit).is_ok_and(fits))
        .collect();
    Some(Doubt::Play {
        typed: typed.clone(),
        common: COMMON_PLAY,
        would_fit,
    })
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
    use crate::trade::fastening::card::tests::{angle, card, source, torque};
    use crate::trade::play::way::Way;

    use TorqueUnit::{KilogramMetre, NewtonMetre, PoundFoot, PoundInch};

    /// The units that would fit, or nothing if the figure is not doubted.
    fn doubted(item: CardItem, text: &str, unit: TorqueUnit) -> Option<Vec<TorqueUnit>> {
        match doubts(&card(item, vec![torque(text, unit)])).pop()? {
            Doubt::Torque { would_fit, .. } => Some(would_fit),
            Doubt::Play { .. } => panic!("no limit here"),
        }
    }

    #[test]
    fn a_slip_of_the_unit_is_doubted_and_the_right_unit_named() {
        let nuts = CardItem::WheelNuts;
        assert_eq!(doubted(nuts, "80", PoundFoot), None);
        assert_eq!(doubted(nuts, "103", NewtonMetre), None);
        assert_eq!(doubted(nuts, "11", NewtonMetre), Some(vec![KilogramMetre]));
        assert_eq!(doubted(nuts, "1000", NewtonMetre), Some(vec![PoundInch]));
        assert_eq!(
            doubted(nuts, "80", PoundInch),
            Some(vec![NewtonMetre, PoundFoot])
        );
        assert_eq!(
            doubted(CardItem::AxleNut, "245", PoundInch),
            Some(vec![NewtonMetre, PoundFoot])
        );
        assert_eq!(doubted(CardItem::AxleNut, "9000", PoundFoot), Some(vec![]));
    }

    #[test]
    fn a_low_torque_before_an_angle_is_common() {
        let item = CardItem::AxleNut;
        let plain = card(item, vec![torque("50", NewtonMetre)]);
        let angled = card(item, vec![torque("50", NewtonMetre), angle("90")]);
        assert_eq!(doubts(&plain).len(), 1);
        assert_eq!(doubts(&angled), []);
    }

    #[test]
    fn a_limit_in_the_wrong_unit_is_doubted() {
        let limit = |text, unit| {
            let most = TypedLength::parse(text, unit).unwrap();
            let body = CardBody::Play {
                most,
                way: Way::DEFAULT,
                source: source(),
            };
            let item = CardItem::PlayLimit;
            match doubts(&SpecCard { item, body }).pop()? {
                Doubt::Play { would_fit, .. } => Some(would_fit),
                Doubt::Torque { .. } => panic!("no torque here"),
            }
        };
        assert_eq!(limit("0.05", LengthUnit::Millimetre), None);
        assert_eq!(limit("0", LengthUnit::Millimetre), None);
        assert_eq!(
            limit("0.05", LengthUnit::Inch),
            Some(vec![LengthUnit::Millimetre, LengthUnit::Thou])
        );
        assert_eq!(
            limit("2", LengthUnit::Millimetre),
            Some(vec![LengthUnit::Thou])
        );
    }
}
