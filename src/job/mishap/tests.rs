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
    whats.extend(mended(&now, &hub_on, *knuckle));
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
    whats.extend(mended(&sheet(&whats), &planned, third));
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

fn at(step: Step) -> PlannedStep {
    PlannedStep {
        key: StepKey::at(step, CORNER),
        form: Form::Do,
        phase: step.row().phase,
        changes: step.row().changes.to_vec(),
        ..planned(step, ItemKind::HubBolts)
    }
}

fn part(group: ItemKind) -> Item {
    items(CORNER, group, 1)[0]
}

fn wrong(planned: &PlannedStep, item: Item, kind: MishapKind) -> Event {
    Event::Mishap(Mishap {
        step: planned.key,
        item,
        kind,
        part: String::new(),
        minutes: 0,
    })
}

fn brought(planned: &PlannedStep, item: Item, to: ItemState) -> Event {
    Event::Moved(Moved {
        step: planned.key,
        items: vec![item],
        to,
        wrench: None,
    })
}

#[test]
fn what_can_go_wrong_is_offered_where_hands_are_on_it() {
    let now = sheet([]);
    let offered = |step: Step| {
        let found = possible(&now, &[&at(step)]);
        found.into_iter().map(|(kind, _)| kind).collect::<Vec<_>>()
    };
    use MishapKind as It;
    for (step, kinds) in [
        (Step::WheelOff, &[It::Seized, It::Stuck][..]),
        (Step::CaliperUp, &[It::Seized, It::Leaking, It::HoseTwisted]),
        (Step::StripBrake, &[It::Seized, It::Stuck]),
        (Step::StripSensor, &[It::SensorBroken]),
        (Step::RouteSensor, &[It::SensorBroken]),
        (
            Step::StripHub,
            &[It::Seized, It::Stuck, It::SeatDamaged, It::BoreWorn],
        ),
        (Step::PressOut, &[It::Stuck]),
        (Step::CaliperDown, &[It::Leaking, It::HoseTwisted]),
    ] {
        let offered = offered(step);
        let missing = kinds.iter().filter(|kind| !offered.contains(kind));
        assert_eq!(missing.count(), 0, "{step:?} {offered:?}");
    }
    // Behind the hub nothing is seen while it is in.
    for step in [Step::WheelOff, Step::StripBrake] {
        assert!(!offered(step).contains(&It::BoreWorn), "{step:?}");
        assert!(!offered(step).contains(&It::SeatDamaged), "{step:?}");
    }
    // A new part is compared once the old one is off.
    let compare = at(Step::Compare);
    assert_eq!(possible(&now, &[&compare]), []);
    let hub = part(ItemKind::Hub);
    let out = sheet([brought(&at(Step::StripHub), hub, ItemState::Off)]);
    let found = possible(&out, &[&compare]);
    let at_hub = vec![(hub, compare.key)];
    assert_eq!(
        found,
        [(It::WrongPart, at_hub.clone()), (It::DamagedPart, at_hub)]
    );
}

#[test]
fn what_is_stuck_is_asked_for_and_over_once_it_is_off() {
    let (strip, hub) = (at(Step::StripHub), part(ItemKind::Hub));
    let state = |whats: &[Event]| {
        let now = sheet(whats);
        in_the_way(&now, &strip).map(|mishap| mending(&now, mishap))
    };
    let mut whats = vec![wrong(&strip, hub, MishapKind::Stuck)];
    assert_eq!(state(&whats), Some(Mending::Asking));
    // It is where it was.
    assert_eq!(sheet(&whats).loose(), []);
    whats.push(extra(&strip, false));
    assert_eq!(state(&whats), Some(Mending::Refused));
    whats.push(extra(&strip, true));
    assert_eq!(state(&whats), None);
    assert!(sheet(&whats).open_mishap(hub).is_some());
    whats.push(brought(&strip, hub, ItemState::Off));
    let now = sheet(&whats);
    assert_eq!(now.open_mishap(hub), None);
    assert_eq!(now.loose(), [(hub, ItemState::Off)]);
    // Taken back, it is stuck again.
    whats.pop();
    assert!(sheet(&whats).open_mishap(hub).is_some());
}

#[test]
fn a_wrong_part_holds_its_step_and_costs_the_customer_nothing() {
    let (compare, offer, hub) = (at(Step::Compare), at(Step::Offer), part(ItemKind::Hub));
    for kind in [MishapKind::WrongPart, MishapKind::DamagedPart] {
        let whats = [
            brought(&at(Step::StripHub), hub, ItemState::Off),
            wrong(&compare, hub, kind),
        ];
        let now = sheet(&whats);
        for step in [&compare, &offer] {
            let mishap = in_the_way(&now, step).unwrap();
            assert_eq!(mending(&now, mishap), Mending::Agreed, "{kind:?}");
        }
        // Tapped past it, the hub still counts as off.
        let in_place = [&whats[..], &[brought(&offer, hub, ItemState::Done)]].concat();
        assert_eq!(sheet(&in_place).loose(), [(hub, ItemState::Off)]);
        let here = [&whats[..], &mended(&now, &compare, hub)].concat();
        let now = sheet(&here);
        assert_eq!(in_the_way(&now, &compare), None);
        assert_eq!(in_the_way(&now, &offer), None);
    }
}

#[test]
fn what_is_closed_is_fixed_at_once_and_what_is_open_where_it_goes_back() {
    let wire = part(ItemKind::SensorWire);
    let (strip, route) = (at(Step::StripSensor), at(Step::RouteSensor));
    let whats = [
        wrong(&strip, wire, MishapKind::SensorBroken),
        extra(&strip, true),
    ];
    let now = sheet(&whats);
    assert_eq!(in_the_way(&now, &strip), None);
    assert!(in_the_way(&now, &route).is_some());
    assert_eq!(now.loose(), [(wire, ItemState::Off)]);
    let caliper = part(ItemKind::Caliper);
    for (step, kind) in [
        (Step::CaliperDown, MishapKind::Leaking),
        (Step::CaliperUp, MishapKind::HoseTwisted),
    ] {
        let step = at(step);
        let whats = [wrong(&step, caliper, kind), extra(&step, true)];
        let now = sheet(&whats);
        assert!(in_the_way(&now, &step).is_some(), "{kind:?}");
        assert_eq!(now.loose(), [(caliper, ItemState::Off)]);
    }
}

#[test]
fn a_stud_that_broke_on_the_ground_has_the_wheel_taken_off_and_every_nut_turned_again() {
    let turn = planned(Step::TurnLugNuts, ItemKind::LugNuts);
    let third = items(CORNER, ItemKind::LugNuts, 5)[2];
    let stud = |whats: &[Event]| broken_stud(&sheet(whats), CORNER);
    let (_, mut whats) = walk(
        &turn,
        ItemKind::LugNuts,
        vec![kit(), spec(SpecItem::LugNuts, vec![torque("120")])],
    );
    whats.push(broken(&turn, third));
    // Nothing is raised before the customer said yes.
    assert_eq!(stud(&whats), None);
    whats.push(extra(&turn, true));
    assert_eq!(stud(&whats), Some(turn.key));
    // A nut of the wrong seat is changed where it is.
    let seat = wrong(&turn, third, MishapKind::WrongSeat);
    assert_eq!(stud(&[seat, extra(&turn, true)]), None);
    let key = |step| StepKey::at(step, CORNER).nth(STUD_BROKE);
    let new = at(Step::StudIn);
    assert!(in_the_way(&sheet(&whats), &new).is_some());
    whats.push(Event::Answered(key(Step::LoosenLugNuts), Reply::Done));
    whats.extend(mended(&sheet(&whats), &new, third));
    let now = sheet(&whats);
    // The steps stay among those of the job, and all nuts are turned once more.
    assert_eq!(stud(&whats), Some(turn.key));
    assert_eq!(now.reply(new.key), Some(&Reply::Done));
    assert_eq!(status(&now, &turn), Status::Open);
    // Another one breaks: it is raised again for that one, too.
    let loosen = PlannedStep {
        key: key(Step::LoosenLugNuts),
        ..at(Step::LoosenLugNuts)
    };
    assert_eq!(status(&now, &loosen), Status::Done);
    whats.push(broken(&turn, third));
    whats.push(extra(&turn, true));
    let now = sheet(&whats);
    assert_eq!(status(&now, &loosen), Status::Open);
    assert_eq!(status(&now, &new), Status::Open);
}
