//! What can have gone wrong with a fastener on a screen: what its steps have hands on, and no more.

use std::collections::BTreeSet;

use hubslate::job::entry::Event;
use hubslate::job::mishap::{Mishap, in_the_way_of, possible};
use hubslate::trade::fastening::MishapKind;
use hubslate::trade::wheel_end::{
    Change, Form, Item, ItemKind, ItemState, PlannedStep, Step, StepKey, procedure,
};

use super::plans;
use super::record::Job;
use super::technician::{Story, walk_to};
use super::{at, screen};

/// What can have gone wrong on the screen at which a plain job meets `first`: each kind with what
/// it can have happened to, and at which step.
fn wrong_at(story: Story, first: StepKey) -> Vec<(MishapKind, Vec<(Item, StepKey)>)> {
    let sheet = walk_to(story, first).sheet();
    let screen = screen(&sheet);
    possible(&sheet, &screen.iter().collect::<Vec<_>>())
}

fn kinds(wrong: &[(MishapKind, Vec<(Item, StepKey)>)]) -> Vec<MishapKind> {
    wrong.iter().map(|(kind, _)| *kind).collect()
}

#[test]
fn only_what_the_hands_of_a_screen_are_on_can_have_gone_wrong() {
    use MishapKind::*;
    let at_step = |step| kinds(&wrong_at(Story::REPLACED, at(step)));
    let loosened = [
        Sheared,
        ThreadCrossed,
        TurnsOn,
        LockKeyMissing,
        WrongSeat,
        BoltTooLong,
        Cracked,
        Seized,
    ];
    // The second step of its screen is a question; the hands were on the nuts before it.
    assert_eq!(at_step(Step::LoosenLugNuts), loosened);
    // A wheel rusts to its hub, a rotor too.
    assert_eq!(at_step(Step::WheelOff), [&loosened[..], &[Stuck]].concat());
    let no_key_and_no_seat = [
        Sheared,
        ThreadCrossed,
        TurnsOn,
        BoltTooLong,
        Cracked,
        Seized,
    ];
    let with = |more: &[MishapKind]| [&no_key_and_no_seat[..], more].concat();
    assert_eq!(at_step(Step::CaliperUp), with(&[Leaking, HoseTwisted]));
    assert_eq!(at_step(Step::StripNut), with(&[Stuck]));
    let by_hand = [Sheared, ThreadCrossed, WouldNotStart, BoltTooLong, Cracked];
    let behind = [SensorBroken, SeatDamaged, BoreWorn];
    assert_eq!(at_step(Step::Seat), [&by_hand[..], &behind].concat());
    let nut = [
        Sheared,
        ThreadCrossed,
        TurnsOn,
        WouldNotStart,
        ClickedEarly,
        Cracked,
    ];
    assert_eq!(at_step(Step::NutOn), nut);
    let turned = [
        &loosened[..3],
        &[WouldNotStart, ClickedEarly],
        &loosened[3..7],
    ]
    .concat();
    assert_eq!(at_step(Step::TurnLugNuts), turned);
    for untouched in [
        Step::RockNuts,
        Step::GaugeClean,
        Step::RigPush,
        Step::Round,
        Step::SensorPhoto,
        Step::Compare,
        Step::ProveSpin,
    ] {
        let nth = match untouched {
            Step::Round => 1,
            _ => StepKey::once(untouched).nth,
        };
        let key = at(untouched).nth(nth);
        assert_eq!(wrong_at(Story::REPLACED, key), [], "{untouched:?}");
    }
}

#[test]
fn what_went_wrong_is_of_the_step_whose_hands_were_on_it() {
    let of = |first, kind| {
        let all = wrong_at(Story::REPLACED, at(first));
        let found = all.into_iter().find(|(of, _)| *of == kind);
        let found = found.map(|(_, items)| items).unwrap_or_default();
        let recorded: BTreeSet<_> = found.iter().map(|(i, at)| (i.group, at.step)).collect();
        recorded.into_iter().collect::<Vec<_>>()
    };
    let broke = MishapKind::Sheared;
    assert_eq!(
        of(Step::StripNut, broke),
        [
            (ItemKind::AxleNut, Step::StripNut),
            (ItemKind::BracketBolts, Step::StripBrake),
            (ItemKind::CaliperPins, Step::StripBrake),
        ]
    );
    assert_eq!(
        of(Step::CaliperUp, broke),
        [(ItemKind::CaliperPins, Step::CaliperUp)]
    );
    // Put on by hand and turned: it is the turning that waits for it.
    assert_eq!(
        of(Step::NutOn, broke),
        [(ItemKind::AxleNut, Step::TurnAxleNut)]
    );
    assert_eq!(of(Step::StripNut, MishapKind::LockKeyMissing), []);
}

#[test]
fn a_crack_is_reported_where_flange_knuckle_and_studs_are_bare() {
    let of = |first| {
        let all = wrong_at(Story::REPLACED, at(first));
        let found = all
            .into_iter()
            .find(|(kind, _)| *kind == MishapKind::Cracked);
        let found = found.map(|(_, items)| items).unwrap_or_default();
        let groups: BTreeSet<_> = found.iter().map(|(item, _)| item.group).collect();
        groups
    };
    for (first, part) in [
        (Step::WheelOff, ItemKind::Hub),
        (Step::WheelOff, ItemKind::LugNuts),
        (Step::StripNut, ItemKind::Hub),
        (Step::StripNut, ItemKind::Knuckle),
        (Step::Seat, ItemKind::Knuckle),
    ] {
        assert!(of(first).contains(&part), "{first:?} {part:?}");
    }
}

#[test]
fn what_broke_at_a_row_stands_in_the_way_of_its_whole_screen() {
    let mut job = walk_to(Story::REPLACED, at(Step::CaliperUp));
    let (item, step) = wrong_at(Story::REPLACED, at(Step::CaliperUp))[0].1[0];
    job.tap(vec![Event::Mishap(Mishap {
        step,
        item,
        kind: MishapKind::Sheared,
        part: "bolt".to_owned(),
        minutes: 30,
    })]);
    let sheet = job.sheet();
    let screen = screen(&sheet);
    assert_eq!(screen.len(), 2);
    let recorded: Vec<&PlannedStep> = screen.iter().collect();
    let (planned, mishap) = in_the_way_of(&sheet, &recorded).unwrap();
    assert_eq!((planned.key, mishap.item), (at(Step::CaliperUp), item));
}

/// The forms whose screens have the key.
const fn can_tell(form: &Form) -> bool {
    matches!(
        form,
        Form::Do | Form::Ask | Form::Choice(_) | Form::Photo | Form::Turn(_)
    )
}

#[test]
fn every_screen_with_hands_on_a_fastener_ends_with_a_form_that_has_the_key() {
    let mut screens = 0;
    plans::each_plan(|plan| {
        let mut hands = false;
        for planned in procedure(plan) {
            // A spec that is not known ends the screen before it.
            if matches!(planned.form, Form::Spec(_)) {
                hands = false;
                continue;
            }
            let here = matches!(planned.form, Form::Turn(_))
                || planned.changes.iter().any(|it| it.group.is_fastener());
            hands |= here;
            assert!(!hands || can_tell(&planned.form), "{:?}", planned.key);
            screens += usize::from(hands && !planned.joins);
            hands &= planned.joins;
        }
    });
    assert!(screens > 100);
}

#[test]
fn a_fastener_can_break_wherever_hands_are_on_it() {
    let mut touched = 0;
    let mut known: Vec<PlannedStep> = Vec::new();
    let mut seen = BTreeSet::new();
    let empty = Job::opened().sheet();
    plans::each_plan(|plan| {
        for planned in procedure(plan) {
            if known.contains(&planned) {
                continue;
            }
            let turns = matches!(planned.form, Form::Turn(_));
            let fastens = planned.changes.iter().any(|it| it.group.is_fastener());
            let kinds = kinds(&possible(&empty, &[&planned]));
            let bare = !planned.key.step.row().bare.is_empty();
            let part = planned.changes.iter().any(can_be_stuck_or_leak);
            assert_eq!(
                !kinds.is_empty(),
                turns || fastens || bare || part,
                "{:?}",
                planned.key
            );
            if turns || fastens {
                touched += 1;
                for kind in [MishapKind::Sheared, MishapKind::ThreadCrossed] {
                    assert!(kinds.contains(&kind), "{kind:?} {:?}", planned.key);
                }
            }
            seen.extend(kinds.iter().map(|kind| kind.code()));
            known.push(planned);
        }
    });
    assert!(touched > 30, "{touched}");
    // Of an untouched car no part is off that a new one could be compared with.
    let untouched = MishapKind::ALL.iter().filter(|kind| !kind.goes_back());
    assert_eq!(seen.len(), untouched.count());
}

/// Whether a part is pulled off what it rusts to, or is one of brake fluid or wire.
fn can_be_stuck_or_leak(change: &Change) -> bool {
    use ItemKind as It;
    let rusts = [
        It::Wheel,
        It::Rotor,
        It::Drum,
        It::Hub,
        It::Bearing,
        It::SnapRing,
        It::Knuckle,
    ];
    let pulled = change.to == ItemState::Off && rusts.contains(&change.group);
    pulled || matches!(change.group, It::Caliper | It::SensorWire)
}
