//! Facts of the record: what holds when phones did not see each other, strikes, what is kept.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "job/careful.rs"]
mod careful;
#[path = "job/contested.rs"]
mod contested;
#[path = "support/record.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod record;

use hubslate::job::entry::{
    Consent, Decided, Entry, EntryId, Event, How, Inputs, PersonField, Reply, Scope, VehicleField,
};
use hubslate::job::manual_item::{self, Also};
use hubslate::job::mishap::Mishap;
use hubslate::job::{Key, Problem, evidence, fold};
use hubslate::trade::answer::Answer;
use hubslate::trade::fastening::MishapKind;
use hubslate::trade::play::{Decision, Felt};
use hubslate::trade::wheel_end::{
    Check, Choice, ItemKind, ItemState, NotDoneReason, Sign, Step, StepKey, sign_step,
};
use record::{HERE, Job, item, moved, note, said};

const LONG_AGO: i64 = 1_000;

const FAR_AHEAD: i64 = 4_000_000_000_000;

fn pin() -> hubslate::trade::wheel_end::Item {
    item(ItemKind::CaliperPins, 1)
}

fn off() -> Event {
    moved(Step::CaliperUp, vec![pin()], ItemState::Off)
}

fn tight() -> Event {
    moved(Step::TurnCaliperPins, vec![pin()], ItemState::Done)
}

fn decided(decision: Decision) -> Event {
    Event::Decided(Decided {
        corner: HERE,
        nth: 1,
        decision,
        again: false,
        reasons: Vec::new(),
        rules: 1,
        inputs: Inputs::none(),
    })
}

fn agreed(yes: bool) -> Event {
    Event::Consent(Consent {
        step: StepKey::at(Step::Agree, HERE),
        scope: Scope::Repair,
        yes,
        how: How::Spoken,
        amount: None,
    })
}

/// Two phones tap without seeing each other, their clocks as given, and are then put together.
fn apart(base: &Job, here: (i64, Event), there: (i64, Event)) -> Job {
    let mut one = base.on("slate one", here.0);
    let mut two = base.on("slate two", there.0);
    one.tap(vec![here.1]);
    two.tap(vec![there.1]);
    one.take(&two);
    one
}

/// The same two statements with each clock once far ahead and once long ago.
fn either_clock(base: &Job, safe: &Event, unsafe_one: &Event) -> [Job; 2] {
    [(LONG_AGO, FAR_AHEAD), (FAR_AHEAD, LONG_AGO)]
        .map(|(here, there)| apart(base, (here, safe.clone()), (there, unsafe_one.clone())))
}

#[test]
fn a_clock_that_runs_ahead_never_empties_the_loose_list() {
    let mut base = Job::opened();
    base.tap(vec![off()]);
    base.tap(vec![tight()]);
    assert_eq!(base.sheet().loose(), []);
    // One phone takes it off again; the other, which did not see that, calls it tight.
    for joined in either_clock(&base, &off(), &tight()) {
        assert_eq!(joined.sheet().loose(), [(pin(), ItemState::Off)]);
    }
}

#[test]
fn a_clock_that_was_set_back_does_not_reopen_what_was_closed() {
    let mut job = Job::opened();
    job.phone.clock = FAR_AHEAD;
    job.tap(vec![off()]);
    job.phone.clock = LONG_AGO;
    job.tap(vec![tight()]);
    assert_eq!(job.sheet().loose(), []);
    assert_eq!(job.sheet().problems(), []);
}

#[test]
fn a_strike_takes_its_entry_out() {
    let mut job = Job::opened();
    job.tap(vec![off()]);
    let ids = job.tap(vec![tight()]);
    job.tap(vec![Event::Strike(ids.clone())]);
    let sheet = job.sheet();
    assert_eq!(sheet.loose(), [(pin(), ItemState::Off)]);
    assert!(sheet.is_struck(&ids[0]));
    assert_eq!(sheet.entries().len(), 4, "a struck entry is kept");
    assert_eq!(sheet.counting().count(), 3);
}

#[test]
fn a_strike_hits_only_what_it_had_seen() {
    let base = Job::opened();
    let mut one = base.on("slate one", LONG_AGO);
    let mut two = base.on("slate two", FAR_AHEAD);
    let unseen = one.tap(vec![off()]);
    two.tap(vec![Event::Strike(unseen.clone())]);
    one.take(&two);
    assert!(!one.sheet().is_struck(&unseen[0]));
    assert_eq!(one.sheet().loose(), [(pin(), ItemState::Off)]);
}

#[test]
fn a_strike_cannot_strike_itself() {
    let mut job = Job::opened();
    let ids = job.tap(vec![note("x")]);
    let mut strike = job.tap(vec![Event::Strike(ids.clone())]);
    let last = job.entries.last_mut().unwrap();
    last.what = Event::Strike(vec![ids[0].clone(), strike.remove(0)]);
    let sheet = job.sheet();
    assert!(sheet.is_struck(&ids[0]));
    assert_eq!(sheet.counting().count(), 2);
}

#[test]
fn striking_the_strike_brings_it_back() {
    let mut job = Job::opened();
    job.tap(vec![off()]);
    let done = job.tap(vec![tight()]);
    let struck = job.tap(vec![Event::Strike(done)]);
    assert_eq!(job.sheet().item(pin()), Some(ItemState::Off));
    let redone = job.tap(vec![Event::Strike(struck)]);
    assert_eq!(job.sheet().item(pin()), Some(ItemState::Done));
    job.tap(vec![Event::Strike(redone)]);
    assert_eq!(job.sheet().item(pin()), Some(ItemState::Off));
}

#[test]
fn an_unknown_kind_makes_it_read_only_and_keeps_the_rest() {
    let mut job = Job::opened();
    job.tap(vec![off()]);
    assert!(!job.sheet().read_only());
    let id = job.tap(vec![Event::Unknown(
        r#"{"weather":{"rain":true}}"#.to_owned(),
    )]);
    job.tap(vec![tight()]);
    let sheet = job.sheet();
    assert!(sheet.read_only());
    assert_eq!(sheet.problems(), [Problem::Unknown(id[0].clone())]);
    assert_eq!(sheet.item(pin()), Some(ItemState::Done));
    assert_eq!(sheet.entries().len(), 4);
}

#[test]
fn a_missing_parent_is_named_and_nothing_else_is_lost() {
    let mut job = Job::opened();
    let lost = job.tap(vec![off()]);
    job.tap(vec![note("after it")]);
    job.entries.retain(|entry| entry.id != lost[0]);
    let sheet = job.sheet();
    assert_eq!(sheet.problems(), [Problem::Missing(lost[0].clone())]);
    assert_eq!(sheet.counting().count(), 2);
}

fn with(entry: &Entry, what: Event) -> Entry {
    Entry {
        what,
        ..entry.clone()
    }
}

/// Every order of three.
const ORDERS: [[usize; 3]; 6] = [
    [0, 1, 2],
    [0, 2, 1],
    [1, 0, 2],
    [1, 2, 0],
    [2, 0, 1],
    [2, 1, 0],
];

#[test]
fn one_id_with_two_bodies_is_edited_in_whatever_order_they_come() {
    let mut job = Job::opened();
    job.tap(vec![off()]);
    let entry = job.entries.pop().unwrap();
    let edited = with(&entry, tight());
    let erased = with(&entry, Event::Erased("ab".repeat(32)));
    let versions = [entry.clone(), edited, erased];
    let sheets = ORDERS.map(|order| {
        let same = order.map(|place| versions[place].clone());
        fold(job.entries.iter().cloned().chain(same))
    });
    for sheet in &sheets {
        assert_eq!(sheet.problems(), [Problem::Edited(entry.id.clone())]);
        assert_eq!(sheet, &sheets[0]);
    }
}

#[test]
fn erased_beats_its_original_and_is_no_edit() {
    let mut job = Job::opened();
    let name = Event::Person(PersonField::Name, "Ilse Varga-Moss".to_owned());
    job.tap(vec![name]);
    let original = job.entries.pop().unwrap();
    let erased = with(&original, Event::Erased("cd".repeat(32)));
    for pair in [
        [original.clone(), erased.clone()],
        [erased.clone(), original.clone()],
    ] {
        let sheet = fold(job.entries.iter().cloned().chain(pair));
        assert_eq!(sheet.person(PersonField::Name), None);
        assert_eq!(sheet.entries().last(), Some(&erased));
        assert_eq!(sheet.problems(), []);
    }
}

#[test]
fn a_circle_neither_hangs_nor_loses_an_entry() {
    let mut job = Job::opened();
    let first = job.tap(vec![off()]);
    let second = job.tap(vec![Event::Vehicle(VehicleField::Studs, "6".to_owned())]);
    let third = job.tap(vec![note("x")]);
    let at = |id: &EntryId| job.entries.iter().position(|e| e.id == *id).unwrap();
    let places = [at(&first[0]), at(&third[0])];
    job.entries[places[0]].after = third.clone();
    let itself = job.entries[places[1]].id.clone();
    job.entries[places[1]].after = vec![second[0].clone(), itself];
    let sheet = job.sheet();
    assert_eq!(sheet.entries().len(), 4);
    assert_eq!(sheet.loose(), [(pin(), ItemState::Off)]);
    assert_eq!(sheet.vehicle(VehicleField::Studs), Some("6"));
    // The tap that opened the job is in no circle, and none is named that only follows one.
    let circles: Vec<Problem> = sheet.problems().to_vec();
    let inside = [&first[0], &second[0], &third[0]].map(|id| Problem::Circle(id.clone()));
    assert_eq!(circles, inside);
    let mut more = job.on("slate two", LONG_AGO);
    let mut after = more.phone.tap(&third, vec![note("after")]);
    more.entries.append(&mut after);
    assert_eq!(more.sheet().problems(), inside);
    job.entries.reverse();
    assert_eq!(job.sheet(), sheet);
}

#[test]
fn a_tap_noted_beside_a_new_pass_does_not_count_in_it_whatever_the_clocks_say() {
    let step = StepKey::at(Step::TurnCaliperPins, HERE);
    for joined in either_clock(&Job::opened(), &Event::Pass(step), &tight()) {
        assert!(!joined.sheet().turned(step, pin()));
    }
}

#[test]
fn the_second_thing_a_phone_says_replaces_its_first() {
    let mut job = Job::opened();
    job.tap(vec![Event::Vehicle(VehicleField::Studs, "5".to_owned())]);
    job.tap(vec![Event::Vehicle(VehicleField::Studs, "6".to_owned())]);
    assert_eq!(job.sheet().vehicle(VehicleField::Studs), Some("6"));
    assert_eq!(job.sheet().problems(), []);
}

#[test]
fn the_heads_are_the_entries_that_none_has_seen() {
    let base = Job::opened();
    let mut one = base.on("slate one", LONG_AGO);
    let mut two = base.on("slate two", FAR_AHEAD);
    let mut ids = one.tap(vec![note("x"), note("y")]).split_off(1);
    ids.extend(two.tap(vec![note("z")]));
    one.take(&two);
    let mut heads = one.sheet().heads().to_vec();
    heads.sort();
    ids.sort();
    assert_eq!(heads, ids);
}

fn named(name: &str) -> Event {
    Event::Also(Also {
        item: item(ItemKind::Other, 1),
        name: name.to_owned(),
        spec: None,
    })
}

#[test]
fn a_mishap_reported_beside_its_mending_stays_open_until_it_is_settled() {
    let broke = Event::Mishap(Mishap {
        step: StepKey::at(Step::TurnCaliperPins, HERE),
        item: pin(),
        kind: MishapKind::Sheared,
        part: "pin bolt".to_owned(),
        minutes: 20,
    });
    let mut base = Job::opened();
    base.tap(vec![tight()]);
    base.tap(vec![broke.clone()]);
    for mut job in either_clock(&base, &broke, &Event::Mended(pin())) {
        assert_eq!(job.sheet().loose(), [(pin(), ItemState::Off)]);
        let problem = Problem::Disagree(Key::Mishap(pin()));
        assert_eq!(job.sheet().problems(), [problem]);
        job.tap(vec![Event::Mended(pin())]);
        assert_eq!(job.sheet().loose(), []);
        assert_eq!(job.sheet().problems(), []);
    }
}

#[test]
fn two_things_named_by_one_number_are_both_reported_and_put_back_together() {
    let base = Job::opened();
    for mut job in either_clock(&base, &named("hose bracket"), &named("undertray clip")) {
        let other = item(ItemKind::Other, 1);
        let names = |job: &Job| {
            let sheet = job.sheet();
            let all = manual_item::named(&sheet, other);
            let mut names: Vec<String> = all.iter().map(|it| it.name.clone()).collect();
            names.sort();
            names
        };
        assert_eq!(names(&job), ["hose bracket", "undertray clip"]);
        assert_eq!(job.sheet().loose(), [(other, ItemState::Off)]);
        job.tap(vec![moved(Step::Lower, vec![other], ItemState::Done)]);
        assert_eq!(job.sheet().loose(), []);
    }
}
