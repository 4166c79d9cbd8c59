//! A fastener that went wrong, from its first word to its spec.
use super::*;
use crate::job::entry::How;
use crate::job::recorded::sheet;
use crate::job::turn::Turning;
use crate::job::turn::tests::{CORNER, kit, planned, spec, torque, walk};
use crate::job::{Status, status};
use crate::trade::fastening::SpecItem;
use crate::trade::wheel_end::{ItemKind, Step, items};

fn broken(planned: &PlannedStep, item: Item) -> Event {
    Event::Mishap(Mishap {
        step: planned.key,
        item,
        kind: MishapKind::Sheared,
        part: "stud".to_owned(),
        minutes: 30,
    })
}

fn extra(planned: &PlannedStep, yes: bool) -> Event {
    Event::Consent(Consent {
        step: planned.key,
        scope: Scope::Extra,
        yes,
        how: How::Spoken,
        amount: None,
    })
}

#[test]
fn a_car_that_waited_for_a_yes_is_shoved_before_it_is_mended() {
    let planned = planned(Step::TurnLugNuts, ItemKind::LugNuts);
    let third = items(CORNER, ItemKind::LugNuts, 5)[2];
    let state = |whats: &[Event]| {
        let now = sheet(whats);
        mending(&now, in_the_way(&now, &planned).unwrap())
    };
    let mut whats = vec![broken(&planned, third)];
    let Event::Mishap(mishap) = whats[0].clone() else {
        unreachable!()
    };
    let shoved = |answer| Event::Answered(shoving(&mishap), Reply::Said(answer));
    // A shove of an earlier day says nothing of today.
    whats.push(shoved(Answer::Yes));
    whats.push(Event::Answered(waiting(&mishap), Reply::Done));
    assert_eq!(state(&whats), Mending::Waiting);
    whats.push(extra(&planned, true));
    assert_eq!(state(&whats), Mending::Shove);
    whats.push(shoved(Answer::No));
    assert_eq!(state(&whats), Mending::Shove);
    whats.push(shoved(Answer::Yes));
    assert_eq!(state(&whats), Mending::Agreed);
    // Another one is asked for again, and the car does not wait for it.
    whats.push(broken(&planned, third));
    assert_eq!(state(&whats), Mending::Asking);
}

#[test]
fn a_crack_is_stop_until_the_part_is_replaced_where_the_hub_goes_on() {
    use crate::job::evidence::verdict;
    use crate::trade::play::{Decision, Reason, StopSign};
    let at = |step: Step| PlannedStep {
        key: StepKey::at(step, CORNER),
        form: Form::Do,
        changes: step.row().changes.to_vec(),
        ..planned(step, ItemKind::HubBolts)
    };
    let stops = |now: &JobState| {
        let verdict = verdict(now, CORNER);
        let cracked = Reason::MustNotDrive(StopSign::CrackedPart);
        (
            verdict.decision == Decision::Stop,
            verdict.reasons.contains(&cracked),
        )
    };
    let (seat, hub_on) = (at(Step::Seat), at(Step::Offer));
    let now = sheet([]);
    assert_eq!(stops(&now), (false, false));
    let possible = possible(&now, &[&seat]);
    let [(MishapKind::Cracked, bare)] = possible.as_slice() else {
        panic!("{possible:?}")
    };
    let [(knuckle, step)] = bare.as_slice() else {
        panic!("{bare:?}")
    };
    assert_eq!((knuckle.group, *step), (ItemKind::Knuckle, seat.key));
    let crack = Event::Mishap(Mishap {
        step: seat.key,
        item: *knuckle,
        kind: MishapKind::Cracked,
        part: "knuckle".to_owned(),
        minutes: 120,
    });
    let mut whats = vec![crack];
    let now = sheet(&whats);
    // It stands on the loose list, so that the job can end as left unfinished alone.
    assert_eq!(now.loose(), [(*knuckle, ItemState::Off)]);
    assert_eq!(stops(&now), (true, true));
    let state = |whats: &[Event], planned: &PlannedStep| {
        let now = sheet(whats);
        in_the_way(&now, planned).map(|mishap| mending(&now, mishap))
    };
    assert_eq!(state(&whats, &seat), Some(Mending::Asking));
    whats.push(extra(&seat, false));
    assert_eq!(state(&whats, &seat), Some(Mending::Refused));
    assert_eq!(state(&whats, &hub_on), Some(Mending::Refused));
    whats.push(extra(&seat, true));
    assert_eq!(state(&whats, &seat), None);
    assert_eq!(state(&whats, &hub_on), Some(Mending::Agreed));
    assert_eq!(stops(&sheet(&whats)), (true, true));
    whats.extend(mended(&hub_on, *knuckle));
    assert_eq!(state(&whats, &hub_on), None);
    let now = sheet(&whats);
    assert_eq!((now.loose(), stops(&now)), (vec![], (false, false)));
}

#[test]
fn a_sheared_stud_is_off_until_it_is_agreed_mended_and_the_pass_begun_again() {
    let planned = planned(Step::TurnLugNuts, ItemKind::LugNuts);
    let third = items(CORNER, ItemKind::LugNuts, 5)[2];
    let start = vec![kit(), spec(SpecItem::LugNuts, vec![torque("120")])];
    let (_, mut whats) = walk(&planned, ItemKind::LugNuts, start);
    assert_eq!(sheet(&whats).loose(), []);
    whats.push(broken(&planned, third));
    let now = sheet(&whats);
    assert_eq!(now.loose(), [(third, ItemState::Off)]);
    assert_eq!(status(&now, &planned), Status::Partly(4, 5));
    assert_eq!(
        Turning::of(&now, &planned, ItemKind::LugNuts)
            .unwrap()
            .tap(),
        None
    );
    let mishap = in_the_way(&now, &planned).unwrap();
    assert_eq!(mending(&now, mishap), Mending::Asking);
    whats.push(extra(&planned, false));
    let now = sheet(&whats);
    assert_eq!(
        mending(&now, in_the_way(&now, &planned).unwrap()),
        Mending::Refused
    );
    whats.push(extra(&planned, true));
    let now = sheet(&whats);
    assert_eq!(
        mending(&now, in_the_way(&now, &planned).unwrap()),
        Mending::Agreed
    );
    whats.extend(mended(&planned, third));
    let now = sheet(&whats);
    assert_eq!(in_the_way(&now, &planned), None);
    assert_eq!(now.loose(), [(third, ItemState::ByHand)]);
    let (taps, whats) = walk(&planned, ItemKind::LugNuts, whats);
    assert_eq!((taps, sheet(&whats).loose()), (5, Vec::new()));
    // A second one at the same step is asked for again.
    let mut again = whats;
    again.push(broken(&planned, third));
    let now = sheet(&again);
    assert_eq!(
        mending(&now, in_the_way(&now, &planned).unwrap()),
        Mending::Asking
    );
}

#[test]
fn without_its_key_a_nut_that_was_never_touched_is_not_called_loose() {
    let turn = planned(Step::TurnLugNuts, ItemKind::LugNuts);
    let crack = PlannedStep {
        form: Form::Do,
        ..planned(Step::LoosenLugNuts, ItemKind::LugNuts)
    };
    let first = items(CORNER, ItemKind::LugNuts, 5)[0];
    let missing = Event::Mishap(Mishap {
        step: crack.key,
        item: first,
        kind: MishapKind::LockKeyMissing,
        part: String::new(),
        minutes: 20,
    });
    let now = sheet(std::slice::from_ref(&missing));
    assert_eq!(now.loose(), []);
    assert!(in_the_way(&now, &crack).is_some());
    assert!(in_the_way(&now, &turn).is_some());
    let now = sheet(&[missing, extra(&crack, true)]);
    assert!(in_the_way(&now, &crack).is_none());
    assert!(in_the_way(&now, &turn).is_some());
}
