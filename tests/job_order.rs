//! Folding is pure and order-free, total, and agrees with a plain second reading of its rules.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/record.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod record;

use std::collections::{BTreeMap, BTreeSet};
use std::time::Instant;

use hubslate::job::entry::{
    Decided, Ended, Ending, Entry, EntryId, Event, Inputs, PersonField, Reply, VehicleField,
};
use hubslate::job::fold;
use hubslate::trade::answer::Answer;
use hubslate::trade::play::{Decision, Felt};
use hubslate::trade::wheel_end::{Choice, Item, ItemKind, ItemState, NotDoneReason, Step, StepKey};
use proptest::prelude::*;
use proptest::sample::select;
use record::{HERE, Job, Phone, item, moved, note, opened, said};

/// One thing a phone does.
#[derive(Clone, Debug)]
enum Act {
    /// It taps; its clock shows this.
    Tap(usize, i64, Box<Event>),
    /// It strikes entries, picked out of all there are by these numbers.
    Strike(usize, i64, Vec<usize>),
    /// It takes in all that another phone has.
    Sync(usize, usize),
}

const DEVICES: [&str; 3] = ["slate one", "slate two", "slate six"];

fn what() -> impl Strategy<Value = Event> {
    let steps = [Step::Shove, Step::SpinHand, Step::TurnLugNuts];
    let step = select(steps.to_vec()).prop_map(|step| StepKey::at(step, HERE));
    let reply = prop_oneof![
        Just(Reply::Done),
        select(NotDoneReason::ALL).prop_map(Reply::NotDone),
        select(Answer::ALL).prop_map(Reply::Said),
        select(Felt::ALL).prop_map(Reply::Felt),
        select(Choice::ALL).prop_map(Reply::Picked),
    ];
    prop_oneof![
        6 => (1..4_u8, 1..4_u8, select(ItemState::ALL)).prop_map(|(from, to, hold)| {
            let nuts = (from..=to).map(|n| item(ItemKind::LugNuts, n)).collect();
            moved(Step::TurnLugNuts, nuts, hold)
        }),
        4 => (step.clone(), reply).prop_map(|(step, reply)| Event::Answered(step, reply)),
        2 => step.prop_map(Event::Pass),
        2 => select(Decision::ALL).prop_map(decided),
        1 => select(PersonField::ALL).prop_map(|f| Event::Person(f, "Ilse".to_owned())),
        1 => select(VehicleField::ALL).prop_map(|f| Event::Vehicle(f, "6".to_owned())),
        1 => select(Ending::ALL).prop_map(|ending| Event::Ended(Ended { ending, charge: None })),
        1 => Just(note("x")),
        1 => Just(Event::Unknown(r#"{"weather":1}"#.to_owned())),
        1 => Just(Event::Erased("ef".repeat(32))),
    ]
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

fn act() -> impl Strategy<Value = Act> {
    let device = 0..DEVICES.len();
    let clock = 0..4_000_000_000_000_i64;
    prop_oneof![
        6 => (device.clone(), clock.clone(), what()).prop_map(|(d, at, w)| Act::Tap(d, at, Box::new(w))),
        2 => (device.clone(), clock, prop::collection::vec(any::<usize>(), 1..4))
            .prop_map(|(d, at, hits)| Act::Strike(d, at, hits)),
        2 => (device.clone(), device).prop_map(|(to, from)| Act::Sync(to, from)),
    ]
}

/// Plays what the phones did; gives every entry that any of them wrote.
fn play(acts: Vec<Act>) -> Vec<Entry> {
    let first = Phone::new("slate one", 0).tap(&[], vec![opened(record_start())]);
    let mut phones = DEVICES.map(|device| (Phone::new(device, 0), first.clone()));
    phones[0].0.n = 2;
    let mut all = first;
    for act in acts {
        let (device, clock, what) = match act {
            Act::Sync(to, from) => {
                let theirs = phones[from].1.clone();
                phones[to].1.extend(theirs);
                continue;
            }
            Act::Tap(device, clock, what) => (device, clock, *what),
            Act::Strike(device, clock, hits) => {
                let id = |hit: usize| all[hit % all.len()].id.clone();
                let ids = hits.into_iter().map(id).collect();
                (device, clock, Event::Strike(ids))
            }
        };
        let (phone, has) = &mut phones[device];
        phone.clock = clock;
        let heads = fold(has.iter().cloned()).heads().to_vec();
        let new = phone.tap(&heads, vec![what]);
        has.extend(new.clone());
        all.extend(new);
    }
    all
}

const fn record_start() -> hubslate::trade::wheel_end::Start {
    hubslate::trade::wheel_end::Start::AtHome
}

fn entries() -> impl Strategy<Value = Vec<Entry>> {
    prop::collection::vec(act(), 1..40).prop_map(play)
}

/// The same entries in another order, some of them several times, one edited and one erased.
fn handled(entries: Vec<Entry>) -> impl Strategy<Value = (Vec<Entry>, Vec<Entry>)> {
    let count = entries.len();
    let doubled = prop::collection::vec(0..count, 0..10);
    (doubled, 0..count, 0..count).prop_flat_map(move |(doubled, edited, erased)| {
        let mut base = entries.clone();
        base.push(Entry {
            what: note("edited"),
            ..entries[edited].clone()
        });
        base.push(Entry {
            what: Event::Erased("01".repeat(32)),
            ..entries[erased].clone()
        });
        let mut more = base.clone();
        more.extend(doubled.iter().map(|place| entries[*place].clone()));
        (Just(base), Just(more).prop_shuffle())
    })
}

/// The rules once more, as plainly as they can be said.
struct Plain<'a> {
    by_id: BTreeMap<&'a EntryId, &'a Entry>,
}

impl<'a> Plain<'a> {
    fn new(entries: &'a [Entry]) -> Self {
        let by_id = entries.iter().map(|entry| (&entry.id, entry)).collect();
        Self { by_id }
    }

    fn saw(&self, entry: &'a Entry) -> BTreeSet<&'a EntryId> {
        let mut seen = BTreeSet::new();
        let mut open: Vec<&EntryId> = entry.after.iter().collect();
        while let Some(id) = open.pop() {
            if seen.insert(id) {
                open.extend(&self.by_id[id].after);
            }
        }
        seen
    }

    fn counts(&self, entry: &'a Entry) -> bool {
        !self.by_id.values().any(|other| match &other.what {
            Event::Strike(hits) => {
                hits.contains(&entry.id)
                    && self.saw(other).contains(&entry.id)
                    && self.counts(other)
            }
            _ => false,
        })
    }

    /// The loosest of the statements about an item that no later one had seen.
    fn hold(&self, item: Item) -> Option<ItemState> {
        let stated: Vec<(&Entry, ItemState)> = self
            .by_id
            .values()
            .filter_map(|entry| match &entry.what {
                Event::Moved(m) if m.items.contains(&item) && self.counts(entry) => {
                    Some((*entry, m.to))
                }
                _ => None,
            })
            .collect();
        let last = |one: &&(&'a Entry, ItemState)| {
            let overtaken =
                |(other, _): &(&'a Entry, ItemState)| self.saw(other).contains(&one.0.id);
            !stated.iter().any(overtaken)
        };
        stated.iter().filter(last).map(|(_, hold)| *hold).min()
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn any_order_and_any_number_of_times_gives_the_same_sheet(
        (base, more) in entries().prop_flat_map(handled)
    ) {
        prop_assert_eq!(fold(base), fold(more));
    }

    #[test]
    fn folding_what_was_folded_changes_nothing(entries in entries()) {
        let sheet = fold(entries);
        prop_assert_eq!(fold(sheet.entries().iter().cloned()), sheet);
    }

    #[test]
    fn strikes_and_the_loose_list_follow_the_rules_read_plainly(entries in entries()) {
        let sheet = fold(entries.iter().cloned());
        let plain = Plain::new(&entries);
        for entry in &entries {
            prop_assert_eq!(sheet.is_struck(&entry.id), !plain.counts(entry));
        }
        for number in 1..4 {
            let nut = item(ItemKind::LugNuts, number);
            prop_assert_eq!(sheet.item(nut), plain.hold(nut));
        }
    }

    #[test]
    fn each_entry_stands_after_all_that_it_saw(entries in entries()) {
        let sheet = fold(entries);
        let mut before = BTreeSet::new();
        for entry in sheet.entries() {
            prop_assert!(entry.after.iter().all(|id| before.contains(id)));
            before.insert(entry.id.clone());
        }
    }
}

/// A small generator of numbers, so that the long tests need no shrinking.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, below: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005);
        self.0 = self.0.wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 33).unwrap() % below
    }
}

/// Entries that name any others as their parents: later ones, themselves, some that never were.
fn chaos(count: usize, dice: &mut Dice) -> Vec<Entry> {
    let name = |n: usize| EntryId(format!("entry {n:05}"));
    let mut phone = Phone::new("slate one", 5);
    (0..count)
        .map(|place| {
            let what = match dice.roll(6) {
                0 => Event::Strike((0..dice.roll(4)).map(|_| name(dice.roll(count))).collect()),
                1 => Event::Unknown("{}".to_owned()),
                2 => said(StepKey::at(Step::Shove, HERE), Answer::ALL[dice.roll(3)]),
                3 => Event::Pass(StepKey::at(Step::TurnLugNuts, HERE)),
                _ => moved(
                    Step::TurnLugNuts,
                    vec![item(ItemKind::LugNuts, 1), item(ItemKind::LugNuts, 1)],
                    ItemState::ALL[dice.roll(5)],
                ),
            };
            let mut entry = phone.tap(&[], vec![what]).remove(0);
            entry.id = name(place);
            // Most look back, so that there is a long record; one in five looks anywhere.
            let reach = if dice.roll(5) == 0 {
                count + 20
            } else {
                place.max(1)
            };
            entry.after = (0..dice.roll(4)).map(|_| name(dice.roll(reach))).collect();
            entry
        })
        .collect()
}

#[test]
fn two_thousand_entries_of_any_shape_are_folded_whole() {
    for start in 0..5 {
        let mut entries = chaos(2_000, &mut Dice(start));
        let sheet = fold(entries.iter().cloned());
        assert_eq!(sheet.entries().len(), 2_000);
        entries.reverse();
        assert_eq!(fold(entries), sheet);
    }
}

/// The time is printed, not judged: machines differ.
#[test]
fn three_hundred_entries_are_folded_at_once() {
    let mut job = Job::opened();
    for n in 0..299_u16 {
        let nut = item(ItemKind::LugNuts, u8::try_from(n % 5).unwrap() + 1);
        job.tap(vec![moved(Step::TurnLugNuts, vec![nut], ItemState::Snug)]);
    }
    let begin = Instant::now();
    let sheet = job.sheet();
    println!("300 entries folded in {:?}", begin.elapsed());
    assert_eq!(sheet.counting().count(), 300);
    assert_eq!(sheet.loose().len(), 5);
}
