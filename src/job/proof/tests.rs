//! Which proofs are to be recorded, and how long a recorded one stands.
use super::*;
use crate::job::dial_setup::recorded as set_up;
use crate::job::entry::{Carried, Ended, Ending, Entry, EntryId, HandedOver, Reading, Reply, Side};
use crate::job::fold;
use crate::job::judge::flex_step;
use crate::job::kit::MoreKit;
use crate::job::recorded::sheet;
use crate::job::slip::Slip;
use crate::trade::fastening::{Spec, SpecBody, SpecItem};
use crate::trade::play::{Against, Dial, Way};
use crate::trade::wheel_end::Choice;
use crate::units::{AngleUnit, Decimal, Typed};

const HERE: Corner = Corner::FrontLeft;

fn spun(pick: Choice) -> Event {
    Event::Answered(spin(HERE), Reply::Picked(pick))
}

fn pulled(divisions: &str) -> Event {
    Event::Reading(Reading {
        corner: HERE,
        set: SetName::AFTER,
        round: 1,
        side: Side::Pull,
        divisions: Decimal::parse(divisions).unwrap(),
        turns: None,
        dial: Dial::HUNDREDTH_MM,
    })
}

/// One cycle read and the hub spun, and the proof as today's rules judge it.
fn entered() -> Vec<Event> {
    vec![
        Event::Corners(vec![HERE]),
        set_up(HERE, SetName::AFTER, Way::DEFAULT),
        Event::Answered(
            flex_step(HERE, SetName::AFTER),
            Reply::Picked(Choice::FlexNone),
        ),
        pulled("2"),
        spun(Choice::SmoothQuiet),
    ]
}

fn saved(mut whats: Vec<Event>) -> Vec<Event> {
    let owed = owed(&sheet(&whats));
    assert_eq!(owed.len(), 1);
    whats.extend(owed.into_iter().map(Event::Proved));
    whats
}

#[test]
fn a_corner_that_was_read_or_spun_after_the_work_owes_its_proof_once() {
    let none = [Event::Corners(vec![HERE])];
    assert_eq!(owed(&sheet(none)), []);
    for one in [pulled("2"), spun(Choice::SmoothQuiet)] {
        let whats = saved(vec![Event::Corners(vec![HERE]), one]);
        assert_eq!(owed(&sheet(whats)), []);
    }
}

#[test]
fn whatever_a_proof_rests_on_makes_it_live_when_it_is_reported_or_taken_back() {
    let not_found = SpecBody::NotFound {
        reason: "none".to_owned(),
    };
    let news = [
        pulled("2"),
        set_up(HERE, SetName::AFTER, Way::DEFAULT),
        Event::Answered(
            flex_step(HERE, SetName::AFTER),
            Reply::Picked(Choice::FlexNone),
        ),
        Event::TipAngle(
            HERE,
            SetName::AFTER,
            Typed::parse("0", AngleUnit::Degree).unwrap(),
        ),
        Event::Crept(HERE, SetName::AFTER, Decimal::parse("1").unwrap()),
        spun(Choice::SmoothQuiet),
        Event::Spec(Spec {
            item: SpecItem::PlayLimit,
            body: not_found,
        }),
        Event::Carried(Carried {
            wrenches: vec![],
            dial: Dial::HUNDREDTH_MM,
            more: MoreKit::default(),
            dial_due: None,
        }),
        Event::FromPaper(Slip {
            job: "an earlier visit".to_owned(),
            digest: String::new(),
            facts: vec![],
        }),
    ];
    let whats = saved(entered());
    let strike = |place: usize| Event::Strike(vec![EntryId(format!("{place:04}"))]);
    let reading = entered()
        .iter()
        .position(|what| *what == pulled("2"))
        .unwrap();
    for new in news.into_iter().chain([strike(reading)]) {
        let changed = sheet([whats.clone(), vec![new.clone()]].concat());
        assert_eq!(recorded(&changed, HERE), None, "{new:?}");
        assert_eq!(owed(&changed), [proved(&changed, HERE)], "{new:?}");
    }
    let note = vec![Event::Note(None, "cleaned".to_owned())];
    let noted = sheet([whats.clone(), note].concat());
    assert_eq!(Some(recorded(&noted, HERE).unwrap()), noted.proved(HERE));
    // Read again, and that taken back: nobody knows any more what the record had seen.
    let again = [whats, vec![pulled("9")]].concat();
    let taken_back = [again.clone(), vec![strike(again.len() - 1)]].concat();
    assert_eq!(recorded(&sheet(taken_back), HERE), None);
}

#[test]
fn a_round_that_another_phone_read_beside_the_record_makes_it_live() {
    let whats = saved(entered());
    let mut entries = sheet(&whats).entries().to_vec();
    let record = entries.last().unwrap().clone();
    assert!(matches!(record.what, Event::Proved(_)));
    // By its id it comes before the record, which had not seen it.
    let beside = Entry {
        id: EntryId(format!("{:04}+", whats.len() - 2)),
        // Twice the default limit of 4 thou.
        what: pulled("20"),
        ..record.clone()
    };
    assert!(beside.id < record.id);
    entries.push(beside);
    let merged = fold(entries);
    assert_eq!(merged.entries().last(), Some(&record));
    assert_eq!(recorded(&merged, HERE), None);
    let over = Against::Over;
    assert_eq!(
        after(&merged, HERE),
        After::Blocked {
            against: vec![over]
        }
    );
}

#[test]
fn a_recorded_outcome_is_reported_and_a_part_that_is_spun_again_is_judged_again() {
    let mut whats = saved(entered());
    let Some(Event::Proved(proved)) = whats.last_mut() else {
        panic!("nothing was recorded");
    };
    // What rules of another version may have said.
    (proved.rules, proved.outcome) = (1, After::NotJudged { not_done: vec![] });
    let as_it_was = proved.outcome.clone();
    assert_eq!(after(&sheet(&whats), HERE), as_it_was);
    whats.push(spun(Choice::Noisy));
    let blocked = After::Blocked {
        against: vec![Against::Noisy],
    };
    assert_eq!(after(&sheet(whats), HERE), blocked);
}

#[test]
fn a_proof_stands_before_what_hands_over_or_ends_and_only_once() {
    let sheet = sheet(entered());
    let (over, done) = (
        Event::HandedOver(HandedOver::NOW),
        Event::Answered(StepKey::once(Step::Report), Reply::Done),
    );
    let ended = Event::Ended(Ended {
        ending: Ending::Finished,
        charge: None,
    });
    let proof = Event::Proved(proved(&sheet, HERE));
    let with = |whats: &[Event]| with_records(&sheet, whats.to_vec());
    assert_eq!(
        with(std::slice::from_ref(&ended)),
        [proof.clone(), ended.clone()]
    );
    let handed = with(&[over.clone(), done.clone()]);
    assert_eq!(handed, [proof.clone(), over.clone(), done.clone()]);
    // The report and the end told with one tap.
    let both = with(&[handed, vec![ended.clone()]].concat());
    assert_eq!(both, [proof, over, done.clone(), ended]);
    assert_eq!(with(std::slice::from_ref(&done)), [done]);
}
