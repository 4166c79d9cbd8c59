//! Is the figure on this spec one that such a fastener commonly has and bears, or a slip?
//!
//! The ranges are wide, common practice, without a source. They doubt, they never refuse, and
//! none of them is a value for any vehicle.

use super::clamp::{Finish, nut_factor, torque_for};
use super::spec::{Condition, Spec, SpecBody, SpecItem, Stage, TorqueBody};
use super::strength::{PropertyClass, proof_load};
use super::thread::Thread;
use crate::units::{Length, LengthUnit, Torque, TorqueUnit, TypedLength, TypedTorque};

/// What is odd about a figure.
#[derive(Clone, Debug, PartialEq)]
pub enum Doubt {
    /// A torque outside what is common, and the units in which the same digits would be common.
    Torque {
        /// What is doubted.
        typed: TypedTorque,
        /// The common range.
        common: (Torque, Torque),
        /// Units that would fit.
        would_fit: Vec<TorqueUnit>,
    },
    /// More than the bolt bears: it would be drawn past its proof load.
    PastProof {
        /// What is doubted.
        typed: TypedTorque,
        /// The thread on the spec.
        thread: Thread,
        /// The class on the spec.
        class: PropertyClass,
        /// The torque that reaches the proof load.
        most: Torque,
    },
    /// A wheel torque far from what such a stud commonly gets.
    OddForStud {
        /// What is doubted.
        typed: TypedTorque,
        /// The thread on the spec.
        thread: Thread,
        /// The common range.
        common: (Torque, Torque),
    },
    /// A torque lower than the one before it, without a turn back between them.
    LowerStage {
        /// What is doubted.
        typed: TypedTorque,
        /// The one before.
        before: TypedTorque,
    },
    /// Another number of fasteners than this vehicle has.
    Count {
        /// What the spec says.
        printed: u8,
        /// How many the vehicle is noted with, and the loose list goes by.
        known: u8,
    },
    /// A play limit outside what is common, and the units that would fit.
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
const fn common_torque(item: SpecItem) -> Option<(Torque, Torque)> {
    let (low, high) = match item {
        SpecItem::AxleNut => (100.0, 450.0),
        SpecItem::LugNuts => (60.0, 250.0),
        SpecItem::HubBolts => (40.0, 250.0),
        SpecItem::BracketBolts => (50.0, 250.0),
        SpecItem::CaliperPins => (15.0, 100.0),
        SpecItem::StrutBolts => (60.0, 300.0),
        SpecItem::BallJoint => (25.0, 250.0),
        SpecItem::TieRod => (20.0, 120.0),
        // From finger tight to several hundred: one range would doubt nothing.
        SpecItem::SpindleNut | SpecItem::LockNut | SpecItem::PlayLimit => return None,
    };
    Some((Torque::newton_metres(low), Torque::newton_metres(high)))
}

/// Play limits that were read go from nothing to 0.008 in; doubled for the doubt.
const COMMON_PLAY: (Length, Length) = (Length::ZERO, Length::thou(16.0));

/// What is odd about the figures of a spec.
///
/// Only the last torque is held against the range: an angle may follow it, so that a low one is
/// doubted only where no angle does, and first stages are low by nature.
pub fn doubts(spec: &Spec) -> Vec<Doubt> {
    match &spec.body {
        SpecBody::Torque(body) => {
            let typed = spec.final_torque();
            doubted_torque(spec)
                .into_iter()
                .chain(typed.and_then(|typed| past_proof(body, typed)))
                .chain(typed.and_then(|typed| odd_for_stud(spec.item, body, typed)))
                .chain(lower_stage(body))
                .collect()
        }
        SpecBody::Play { most, .. } => doubted_play(most).into_iter().collect(),
        SpecBody::NotFound { .. } => Vec::new(),
    }
}

/// Whether a spec speaks of another number of fasteners than the vehicle has, `known`: then page
/// or vehicle is the wrong one. Nothing where the page does not say how many.
pub fn other_count(spec: &Spec, known: u8) -> Option<Doubt> {
    let SpecBody::Torque(body) = &spec.body else {
        return None;
    };
    let printed = body.printed.count.filter(|printed| *printed != known)?;
    Some(Doubt::Count { printed, known })
}

fn doubted_torque(spec: &Spec) -> Option<Doubt> {
    let typed = spec.final_torque()?;
    let (low, high) = common_torque(spec.item)?;
    let low = if ends_with_angle(spec) {
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

/// The torque at which a bolt of this thread and class reaches its proof load, `T = K · d · F`.
///
/// `K` is 0.18 for oiled threads, else 0.20, as handbooks take it when nothing else is known.
pub fn torque_at_proof(body: &TorqueBody) -> Option<(&Thread, PropertyClass, Torque)> {
    let (thread, class) = (body.printed.thread.as_ref()?, body.printed.class?);
    let finish = if body.conditions.contains(&Condition::Oiled) {
        Finish::Lubricated
    } else {
        Finish::Zinc
    };
    let load = proof_load(thread, class)?;
    let most = torque_for(nut_factor(finish), thread.diameter(), load);
    Some((thread, class, most))
}

fn past_proof(body: &TorqueBody, typed: &TypedTorque) -> Option<Doubt> {
    let (thread, class, most) = torque_at_proof(body)?;
    (most < typed.torque()).then(|| Doubt::PastProof {
        typed: typed.clone(),
        thread: thread.clone(),
        class,
        most,
    })
}

/// Common wheel torques by the stud's diameter, mm and N·m: manufacturers' figures from memory, and
/// tables of wheel sellers (12 mm 70 to 80, 14 mm 85 to 90, 1/2 in 75 to 85, 9/16 in 135 to
/// 145 lb-ft).
const COMMON_FOR_STUD: [(f64, f64, f64); 4] = [
    (12.0, 95.0, 115.0),
    (12.7, 100.0, 135.0),
    (14.0, 115.0, 225.0),
    (14.2875, 180.0, 225.0),
];

/// Beyond a quarter outside the common range is far from it.
fn odd_for_stud(item: SpecItem, body: &TorqueBody, typed: &TypedTorque) -> Option<Doubt> {
    let thread = body.printed.thread.as_ref()?;
    let fits = |row: &&(f64, f64, f64)| thread.is_about_mm(row.0);
    let (_, low, high) = COMMON_FOR_STUD
        .iter()
        .find(fits)
        .filter(|_| item == SpecItem::LugNuts)?;
    let common = (Torque::newton_metres(*low), Torque::newton_metres(*high));
    let torque = typed.torque();
    let far = torque < common.0.times(0.75) || common.1.times(1.25) < torque;
    far.then(|| Doubt::OddForStud {
        typed: typed.clone(),
        thread: thread.clone(),
        common,
    })
}

fn lower_stage(body: &TorqueBody) -> Option<Doubt> {
    let mut before: Option<&TypedTorque> = None;
    for stage in &body.stages {
        match stage {
            Stage::Torque(typed) => {
                if let Some(before) = before.filter(|before| typed.torque() < before.torque()) {
                    return Some(Doubt::LowerStage {
                        typed: typed.clone(),
                        before: before.clone(),
                    });
                }
                before = Some(typed);
            }
            Stage::Back(_) => before = None,
            Stage::Snug | Stage::Angle(_) => {}
        }
    }
    None
}

fn ends_with_angle(spec: &Spec) -> bool {
    matches!(&spec.body, SpecBody::Torque(body) if matches!(body.stages.last(), Some(Stage::Angle(_))))
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
    use super::*;
    use crate::trade::fastening::spec::tests::{angle, source, spec, torque};
    use crate::trade::play::way::Way;

    use TorqueUnit::{KilogramMetre, NewtonMetre, PoundFoot, PoundInch};

    /// The units that would fit, or nothing if the figure is not doubted.
    fn doubted(item: SpecItem, text: &str, unit: TorqueUnit) -> Option<Vec<TorqueUnit>> {
        match doubts(&spec(item, vec![torque(text, unit)])).pop()? {
            Doubt::Torque { would_fit, .. } => Some(would_fit),
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn a_slip_of_the_unit_is_doubted_and_the_right_unit_named() {
        let nuts = SpecItem::LugNuts;
        assert_eq!(doubted(nuts, "80", PoundFoot), None);
        assert_eq!(doubted(nuts, "103", NewtonMetre), None);
        assert_eq!(doubted(nuts, "11", NewtonMetre), Some(vec![KilogramMetre]));
        assert_eq!(doubted(nuts, "1000", NewtonMetre), Some(vec![PoundInch]));
        assert_eq!(
            doubted(nuts, "80", PoundInch),
            Some(vec![NewtonMetre, PoundFoot])
        );
        assert_eq!(
            doubted(SpecItem::AxleNut, "245", PoundInch),
            Some(vec![NewtonMetre, PoundFoot])
        );
        assert_eq!(doubted(SpecItem::AxleNut, "9000", PoundFoot), Some(vec![]));
    }

    #[test]
    fn a_low_torque_before_an_angle_is_common() {
        let item = SpecItem::AxleNut;
        let plain = spec(item, vec![torque("50", NewtonMetre)]);
        let angled = spec(item, vec![torque("50", NewtonMetre), angle("90")]);
        assert_eq!(doubts(&plain).len(), 1);
        assert_eq!(doubts(&angled), []);
    }

    fn printed(
        item: SpecItem,
        text: &str,
        thread: &str,
        class: Option<PropertyClass>,
    ) -> Vec<Doubt> {
        let mut spec = spec(item, vec![torque(text, NewtonMetre)]);
        if let SpecBody::Torque(body) = &mut spec.body {
            body.printed.thread = Thread::parse(thread).ok();
            body.printed.class = class;
        }
        doubts(&spec)
    }

    #[test]
    fn more_than_the_bolt_bears_is_doubted() {
        // ISO 898-1: M12x1.5, 8.8, proof load 51 100 N; 0.20 · 12 mm · 51 100 N = 122.6 N·m.
        let bolts = |text| {
            printed(
                SpecItem::HubBolts,
                text,
                "M12x1.5",
                Some(PropertyClass::Iso88),
            )
        };
        assert_eq!(bolts("122"), []);
        let [Doubt::PastProof { most, .. }] = &bolts("123")[..] else {
            panic!("one doubt")
        };
        assert!((most.in_unit(NewtonMetre) - 122.64).abs() < 0.005);
        let unmarked = printed(SpecItem::HubBolts, "123", "M12x1.5", None);
        assert_eq!(unmarked, []);
    }

    #[test]
    fn a_wheel_torque_far_from_its_stud_is_doubted() {
        let nuts = |text, thread| printed(SpecItem::LugNuts, text, thread, None).len();
        assert_eq!(nuts("108", "M12x1.5"), 0);
        assert_eq!(nuts("190", "M12x1.5"), 1);
        assert_eq!(nuts("190", "M14x1.5"), 0);
        assert_eq!(nuts("80", "M14x1.5"), 1);
        assert_eq!(nuts("136", "1/2-20"), 0);
        assert_eq!(printed(SpecItem::HubBolts, "190", "M12x1.5", None), []);
    }

    #[test]
    fn another_number_of_fasteners_than_the_vehicle_has_is_doubted() {
        let mut nuts = spec(SpecItem::LugNuts, vec![torque("110", NewtonMetre)]);
        assert_eq!(other_count(&nuts, 5), None);
        if let SpecBody::Torque(body) = &mut nuts.body {
            body.printed.count = Some(6);
        }
        let doubt = Doubt::Count {
            printed: 6,
            known: 5,
        };
        assert_eq!(other_count(&nuts, 5), Some(doubt));
        assert_eq!(other_count(&nuts, 6), None);
    }

    #[test]
    fn a_lower_stage_is_doubted_unless_it_was_turned_back() {
        let nut = |stages| doubts(&spec(SpecItem::AxleNut, stages));
        let (high, low) = (torque("200", NewtonMetre), torque("110", NewtonMetre));
        let doubt = nut(vec![high.clone(), low.clone()]);
        assert!(matches!(doubt[..], [Doubt::LowerStage { .. }]), "{doubt:?}");
        assert_eq!(nut(vec![high.clone(), Stage::Back(None), low.clone()]), []);
        assert_eq!(nut(vec![low, high]), []);
    }

    #[test]
    fn a_limit_in_the_wrong_unit_is_doubted() {
        let limit = |text, unit| {
            let most = TypedLength::parse(text, unit).unwrap();
            let body = SpecBody::Play {
                least: None,
                most,
                way: Way::DEFAULT,
                source: source(),
            };
            let item = SpecItem::PlayLimit;
            match doubts(&Spec { item, body }).pop()? {
                Doubt::Play { would_fit, .. } => Some(would_fit),
                other => panic!("{other:?}"),
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
