//! The cautions that the facts of a job bring to a step, beside those that always stand there.

use crate::job::entry::{Reply, VehicleField};
use crate::job::sheet::JobState;
use crate::job::turn::spec_item;
use crate::job::wheel_end::fitted;
use crate::trade::fastening::{Condition, SpecBody};
use crate::trade::vehicle::{Corner, Fixing, Power};
use crate::trade::wheel_end::{
    Choice, Form, ItemKind, ItemState, PlannedStep, SetName, Step, StepKey, When,
};
use crate::words;

words! {
    /// A caution that only some jobs need.
    pub enum Caution {
        /// The car has a traction battery between its jacking points.
        ElectricJack = "electric_jack",
        /// The spec has a new axle nut each time.
        NewNut = "new_nut",
        /// The spec has new lug nuts each time.
        NewLugNuts = "new_lug_nuts",
        /// The spec has new bolts each time.
        NewBolts = "new_bolts",
        /// The axle nut had been loosened and was torqued to spec before the reading.
        NutWasLoosened = "nut_was_loosened",
        /// The car is held once for both corners of its axle.
        ChockBoth = "chock_both",
        /// It is raised at the second of them.
        StillChocked = "still_chocked",
    }
}

/// The cautions of a step.
pub fn cautions(sheet: &JobState, planned: &PlannedStep) -> Vec<Caution> {
    let mut all = Vec::new();
    let power = sheet
        .vehicle(VehicleField::Power)
        .and_then(Power::from_code);
    if planned.key.step == Step::LiftStand && power.is_some_and(|it| it != Power::Combustion) {
        all.push(Caution::ElectricJack);
    }
    if let Some(corner) = planned.key.corner {
        all.extend(held_once(sheet, planned.key, corner));
    }
    let started = planned.changes.iter().filter(|change| {
        change.group.is_fastener() && matches!(change.to, ItemState::ByHand | ItemState::Snug)
    });
    for change in started.filter(|change| is_new_each_time(sheet, change.group)) {
        all.push(match change.group {
            ItemKind::AxleNut => Caution::NewNut,
            ItemKind::LugNuts if fitted(sheet).fixing == Fixing::Nuts => Caution::NewLugNuts,
            _ => Caution::NewBolts,
        });
    }
    if let (
        Form::Round(
            SetName {
                when: When::Before, ..
            },
            _,
        ),
        Some(corner),
    ) = (&planned.form, planned.key.corner)
    {
        let found = sheet.reply(StepKey::at(Step::NutFound, corner));
        let loosened = found == Some(&Reply::Picked(Choice::NutRetorqued));
        all.extend(loosened.then_some(Caution::NutWasLoosened));
    }
    all
}

/// Where two corners of one axle are worked the car is held once: both wheels of the other axle are
/// chocked, and looked at before the second is raised. `common practice, no source`.
fn held_once(sheet: &JobState, step: StepKey, corner: Corner) -> Option<Caution> {
    let corners = sheet.corners();
    let other = corners.contains(&corner.opposite_side());
    let first = corners.iter().find(|at| at.axle() == corner.axle()) == Some(&corner);
    match step.step {
        Step::LiftHold if other && first => Some(Caution::ChockBoth),
        Step::LiftStand if other && !first => Some(Caution::StillChocked),
        _ => None,
    }
}

/// Whether the spec of a group has new fasteners each time.
fn is_new_each_time(sheet: &JobState, group: ItemKind) -> bool {
    let spec = spec_item(group).and_then(|item| sheet.spec(item));
    spec.is_some_and(|spec| match &spec.body {
        SpecBody::Torque(body) => body.conditions.contains(&Condition::NewFastener),
        _ => false,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::panic)]
    use super::*;
    use crate::job::entry::Event;
    use crate::job::recorded::sheet;
    use crate::job::turn::tests::{CORNER, spec, torque};
    use crate::job::{plan, wheel_end};
    use crate::trade::fastening::SpecItem;
    use crate::trade::wheel_end::{Change, Phase, procedure};

    fn at(step: Step, form: Form, changes: &[Change]) -> PlannedStep {
        PlannedStep {
            key: StepKey::at(step, CORNER),
            phase: Phase::Tighten,
            form,
            holds: Vec::new(),
            changes: changes.to_vec(),
            joins: false,
        }
    }

    fn work(step: Step) -> PlannedStep {
        at(step, Form::Do, step.row().changes)
    }

    fn new_each_time(item: SpecItem) -> Event {
        let mut event = spec(item, vec![torque("120")]);
        if let Event::Spec(spec) = &mut event
            && let SpecBody::Torque(body) = &mut spec.body
        {
            body.conditions.push(Condition::NewFastener);
        }
        event
    }

    #[test]
    fn an_axle_is_chocked_once_for_both_corners_and_looked_at_before_the_second() {
        let other = CORNER.opposite_side();
        let at_corner = |step, corner| PlannedStep {
            key: StepKey::at(step, corner),
            ..work(step)
        };
        let hold = |corners: &[Corner], corner| {
            let now = sheet([Event::Corners(corners.to_vec())]);
            let of = |step| cautions(&now, &at_corner(step, corner));
            (of(Step::LiftHold), of(Step::LiftStand))
        };
        let both = [CORNER, other];
        let (chock, still) = (vec![Caution::ChockBoth], vec![Caution::StillChocked]);
        assert_eq!(hold(&both, CORNER), (chock, vec![]));
        assert_eq!(hold(&both, other), (vec![], still));
        assert_eq!(hold(&[CORNER], CORNER), (vec![], vec![]));
    }

    #[test]
    fn a_car_with_a_traction_battery_is_jacked_at_its_pads() {
        let of = |power: Option<Power>| {
            let recorded =
                power.map(|it| Event::Vehicle(VehicleField::Power, it.code().to_owned()));
            sheet(recorded.into_iter().collect::<Vec<_>>())
        };
        let stand = work(Step::LiftStand);
        for power in [Power::Hybrid, Power::Electric] {
            assert_eq!(cautions(&of(Some(power)), &stand), [Caution::ElectricJack]);
            assert_eq!(cautions(&of(Some(power)), &work(Step::Lower)), []);
        }
        assert_eq!(cautions(&of(Some(Power::Combustion)), &stand), []);
        assert_eq!(cautions(&of(None), &stand), []);
    }

    #[test]
    fn new_fasteners_are_named_where_they_are_started_and_only_if_the_spec_has_them() {
        let cases = [
            (Step::NutOn, SpecItem::AxleNut, Caution::NewNut),
            (Step::Offer, SpecItem::HubBolts, Caution::NewBolts),
            (Step::BracketOn, SpecItem::BracketBolts, Caution::NewBolts),
            (Step::CaliperOn, SpecItem::CaliperPins, Caution::NewBolts),
            (Step::WheelOn, SpecItem::LugNuts, Caution::NewLugNuts),
        ];
        for (step, item, caution) in cases {
            let new = sheet([new_each_time(item)]);
            assert_eq!(cautions(&new, &work(step)), [caution], "{step:?}");
            let used = sheet([spec(item, vec![torque("120")])]);
            assert_eq!(cautions(&used, &work(step)), [], "{step:?}");
            let other = cases.iter().find(|(_, of, _)| *of != item);
            let other = other.map(|(_, of, _)| new_each_time(*of));
            let other = sheet(other.into_iter().collect::<Vec<_>>());
            assert_eq!(cautions(&other, &work(step)), [], "{step:?}");
        }
        // What is only loosened needs no new one yet.
        let new = sheet([new_each_time(SpecItem::AxleNut)]);
        assert_eq!(cautions(&new, &work(Step::LoosenAxleNut)), []);
    }

    #[test]
    fn readings_before_the_work_say_that_the_nut_had_been_loosened() {
        let found = |pick| {
            let key = StepKey::at(Step::NutFound, CORNER);
            sheet([Event::Answered(key, Reply::Picked(pick))])
        };
        let round = |set| at(Step::Round, Form::Round(set, 1), &[]);
        let loosened = found(Choice::NutRetorqued);
        for set in [SetName::FIRST, SetName::SECOND] {
            assert_eq!(cautions(&loosened, &round(set)), [Caution::NutWasLoosened]);
        }
        assert_eq!(cautions(&loosened, &round(SetName::AFTER)), []);
        let tight = found(Choice::NutTight);
        assert_eq!(cautions(&tight, &round(SetName::FIRST)), []);
    }

    #[test]
    fn a_job_that_knows_nothing_yet_brings_no_caution() {
        let now = sheet([]);
        let steps = procedure(&plan(&now));
        assert!(!steps.is_empty() && !wheel_end(&now).specs(&plan(&now)).is_empty());
        assert!(
            steps
                .iter()
                .all(|planned| cautions(&now, planned).is_empty())
        );
    }
}
