//! The state of a job, derived from its entries; nothing here can be changed but by an entry.

use crate::job::entry::{
    Carried, Consent, Decided, Due, DueKind, Entry, EntryId, Event, Opened, Part, PersonField,
    Photo, Price, Reading, Reply, Side, Signed, Slip, VehicleField,
};
use crate::job::key::{Key, is_no_less_careful};
use crate::job::problem::Problem;
use crate::map::{OrderedMap, OrderedSet};
use crate::trade::fastening::{Spec, SpecItem, TypedLever};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Item, ItemState, SetName, StepKey};

mod bench;
mod contested;
mod ended;
mod found;
mod money;
mod proved;
mod saved;

/// The state of a job.
#[derive(Clone, Debug, PartialEq)]
pub struct JobState {
    entries: Vec<Entry>,
    effective: Vec<bool>,
    registers: OrderedMap<Key, Vec<usize>>,
    heads: Vec<EntryId>,
    problems: Vec<Problem>,
    /// The places of what counts and was named by hand, by item.
    named: OrderedMap<Item, Vec<usize>>,
}

impl JobState {
    pub(super) fn new(
        entries: Vec<Entry>,
        effective: Vec<bool>,
        registers: OrderedMap<Key, Vec<usize>>,
        heads: Vec<EntryId>,
        problems: Vec<Problem>,
    ) -> Self {
        let mut named: OrderedMap<Item, Vec<usize>> = OrderedMap::new();
        for (place, (entry, counts)) in entries.iter().zip(&effective).enumerate() {
            if let (Event::Also(also), true) = (&entry.what, *counts) {
                named.or_default(also.item).push(place);
            }
        }
        Self {
            entries,
            effective,
            registers,
            heads,
            problems,
            named,
        }
    }

    /// Every entry, struck ones too, each after all that it saw.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// The entries that count, in order.
    pub fn counting(&self) -> impl Iterator<Item = &Entry> {
        self.entries
            .iter()
            .zip(&self.effective)
            .filter(|(_, counts)| **counts)
            .map(|(e, _)| e)
    }

    /// Every entry with whether it was struck, in order.
    pub fn with_struck(&self) -> impl Iterator<Item = (&Entry, bool)> {
        let all = self.entries.iter().zip(&self.effective);
        all.map(|(entry, counts)| (entry, !counts))
    }

    /// Whether an entry was struck.
    pub fn is_struck(&self, id: &EntryId) -> bool {
        self.with_struck()
            .any(|(entry, struck)| entry.id == *id && struck)
    }

    /// The entries that none has seen yet; the next entry goes after them.
    pub fn heads(&self) -> &[EntryId] {
        &self.heads
    }

    /// What is wrong with the record.
    pub fn problems(&self) -> &[Problem] {
        &self.problems
    }

    /// Whether the job may only be read, since it holds what this version does not understand.
    pub fn read_only(&self) -> bool {
        self.problems
            .iter()
            .any(|problem| matches!(problem, Problem::Unknown(_)))
    }

    /// Whether entries are missing that others name, or their order is not known: then what is
    /// loose, and what was answered, is known only in part.
    pub fn is_incomplete(&self) -> bool {
        self.problems.iter().any(Problem::leaves_gaps)
    }

    /// The same sheet of a record of which the phone once had more than it has now.
    #[must_use]
    pub fn with_entries_lost(mut self) -> Self {
        self.problems.push(Problem::Lost);
        self
    }

    /// Every statement of a fact that stands, in order; more than one if they disagree.
    pub fn stated(&self, key: &Key) -> impl Iterator<Item = &Entry> {
        let places = self.registers.get(key).map_or(&[][..], Vec::as_slice);
        places.iter().filter_map(|place| self.entries.get(*place))
    }

    /// The statement of a fact that holds: of several the most careful, then the latest.
    pub fn holds(&self, key: &Key) -> Option<&Entry> {
        if let Key::Reading(corner, set, round, side) = key
            && self.stated(key).nth(1).is_some()
        {
            return contested::reading(self, (*corner, *set, *round), *side);
        }
        self.stated(key).reduce(|saved, next| {
            if is_no_less_careful(&next.what, &saved.what) {
                next
            } else {
                saved
            }
        })
    }

    /// The fact that counts: the one that holds, else the one that was read from paper.
    pub(super) fn fact(&self, key: &Key) -> Option<&Event> {
        let own = self.holds(key).map(|entry| &entry.what);
        own.or_else(|| self.slip()?.stands_in(key))
    }

    /// How the job was started.
    pub fn opened(&self) -> Option<&Opened> {
        match self.fact(&Key::Opened) {
            Some(Event::Opened(opened)) => Some(opened),
            _ => None,
        }
    }

    /// A personal fact of the customer.
    pub fn person(&self, field: PersonField) -> Option<&str> {
        match self.fact(&Key::Person(field)) {
            Some(Event::Person(_, text)) => Some(text),
            _ => None,
        }
    }

    /// The complaint, word for word.
    pub fn complaint(&self) -> Option<&str> {
        match self.fact(&Key::Said) {
            Some(Event::Said(text)) => Some(text),
            _ => None,
        }
    }

    /// A fact of the vehicle.
    pub fn vehicle(&self, field: VehicleField) -> Option<&str> {
        match self.fact(&Key::Vehicle(field)) {
            Some(Event::Vehicle(_, text)) => Some(text),
            _ => None,
        }
    }

    /// The corners, in the order of work.
    pub fn corners(&self) -> &[Corner] {
        match self.fact(&Key::Corners) {
            Some(Event::Corners(corners)) => corners,
            _ => &[],
        }
    }

    /// A spec spec.
    pub fn spec(&self, item: SpecItem) -> Option<&Spec> {
        match self.fact(&Key::Spec(item)) {
            Some(Event::Spec(spec)) => Some(spec),
            _ => None,
        }
    }

    /// The instruments on board.
    pub fn carried(&self) -> Option<&Carried> {
        match self.fact(&Key::Carried) {
            Some(Event::Carried(carried)) => Some(carried),
            _ => None,
        }
    }

    /// The answer to a step.
    pub fn reply(&self, step: StepKey) -> Option<&Reply> {
        match self.fact(&Key::Step(step)) {
            Some(Event::Answered(_, reply)) => Some(reply),
            _ => None,
        }
    }

    /// The entry that answered a step.
    pub fn answered(&self, step: StepKey) -> Option<&Entry> {
        self.holds(&Key::Step(step))
    }

    /// Where an item stands, if it was ever touched; what broke is off until it is mended.
    pub fn item(&self, item: Item) -> Option<ItemState> {
        let moved = match self.fact(&Key::Item(item)) {
            Some(Event::Moved(moved)) => Some(moved.to),
            Some(Event::Also(_)) => Some(ItemState::Off),
            _ => None,
        };
        match self.open_mishap(item) {
            Some(mishap) if mishap.kind.takes_off() => Some(ItemState::Off),
            Some(_) => moved.map(|hold| hold.min(ItemState::Loosened)),
            None => moved,
        }
    }

    /// Every fact that was stated.
    pub fn keys(&self) -> impl Iterator<Item = &Key> {
        self.registers.keys()
    }

    /// The adapter with which the wrench is used at a step.
    pub fn lever(&self, step: StepKey) -> Option<&TypedLever> {
        match self.fact(&Key::Lever(step)) {
            Some(Event::Lever(_, lever)) => lever.as_ref(),
            _ => None,
        }
    }

    /// Everything that is off or loosened and not yet back, in the order of the corners.
    pub fn loose(&self) -> Vec<(Item, ItemState)> {
        let items: OrderedSet<Item> = OrderedSet::from_iter(
            self.keys()
                .filter_map(|key| match key {
                    Key::Item(item) | Key::Mishap(item) => Some(*item),
                    _ => None,
                })
                .chain(self.slip().into_iter().flat_map(Slip::items)),
        );
        items
            .into_iter()
            .filter_map(|item| Some((item, self.item(item)?)))
            .filter(|(_, h)| h.is_loose())
            .collect()
    }

    /// Whether an item was brought to its spec at this step, since the pass began.
    pub fn turned(&self, step: StepKey, item: Item) -> bool {
        matches!(
            self.fact(&Key::Turned(step, item)),
            Some(Event::Moved(moved)) if moved.to == ItemState::Done
        ) && self.open_mishap(item).is_none()
    }

    /// What stands at a place of the loose list and was named by hand, in order.
    pub(super) fn named(&self, item: Item) -> impl Iterator<Item = &Event> {
        let places = self.named.get(&item).map_or(&[][..], Vec::as_slice);
        let entries = places.iter().filter_map(|place| self.entries.get(*place));
        entries.map(|entry| &entry.what)
    }

    /// The place of the first counting entry of a kind, in the order of entries.
    pub(super) fn first_place(&self, is: impl Fn(&Event) -> bool) -> Option<usize> {
        let counting = self.entries.iter().zip(&self.effective).enumerate();
        counting
            .filter(|(_, (_, counts))| **counts)
            .find(|(_, (e, _))| is(&e.what))
            .map(|(i, _)| i)
    }

    /// The entries that count with their places, in order.
    pub(super) fn counting_places(&self) -> impl Iterator<Item = (usize, &Entry)> {
        let all = self.entries.iter().zip(&self.effective).enumerate();
        all.filter(|(_, (_, counts))| **counts)
            .map(|(place, (entry, _))| (place, entry))
    }

    /// The place of the latest statement of a fact, in the order of entries.
    pub(super) fn place(&self, key: &Key) -> Option<usize> {
        self.registers
            .get(key)
            .and_then(|places| places.last())
            .copied()
    }

    /// One side of a round.
    pub fn reading(&self, corner: Corner, set: SetName, round: u8, side: Side) -> Option<&Reading> {
        match self.fact(&Key::Reading(corner, set, round, side)) {
            Some(Event::Reading(reading)) => Some(reading),
            _ => None,
        }
    }

    /// The decision on a corner: that of the second set, unless the first was made again after it.
    pub fn decided(&self, corner: Corner) -> Option<&Decided> {
        [2, 1]
            .into_iter()
            .filter(|nth| self.decides(corner, *nth))
            .find_map(|nth| self.decided_nth(corner, nth))
    }

    /// Whether the decision after the `nth` set stands: none before it was made again since.
    pub fn decides(&self, corner: Corner, nth: u8) -> bool {
        let place = |nth| self.place(&Key::Decided(corner, nth));
        place(nth).is_some() && (nth == 1 || place(1) < place(nth))
    }

    /// The decision after the `nth` set.
    pub fn decided_nth(&self, corner: Corner, nth: u8) -> Option<&Decided> {
        match self.fact(&Key::Decided(corner, nth)) {
            Some(Event::Decided(decided)) => Some(decided),
            _ => None,
        }
    }

    /// What the work costs.
    pub fn price(&self) -> Option<&Price> {
        match self.fact(&Key::Price) {
            Some(Event::Price(price)) => Some(price),
            _ => None,
        }
    }

    /// The customer's answer at a step.
    pub fn consent(&self, step: StepKey) -> Option<&Consent> {
        match self.fact(&Key::Consent(step)) {
            Some(Event::Consent(consent)) => Some(consent),
            _ => None,
        }
    }

    /// The customer's answer about extra work seen at a step.
    pub fn extra(&self, step: StepKey) -> Option<&Consent> {
        match self.fact(&Key::Extra(step)) {
            Some(Event::Consent(consent)) => Some(consent),
            _ => None,
        }
    }

    /// The signature at a step.
    pub fn signed(&self, step: StepKey) -> Option<&Signed> {
        match self.fact(&Key::Signed(step)) {
            Some(Event::Signed(signed)) => Some(signed),
            _ => None,
        }
    }

    /// The part that was fitted at a corner.
    pub fn part(&self, corner: Corner) -> Option<&Part> {
        match self.fact(&Key::Part(corner)) {
            Some(Event::Part(part)) => Some(part),
            _ => None,
        }
    }

    /// Something that is due.
    pub fn due(&self, kind: DueKind) -> Option<&Due> {
        match self.fact(&Key::Due(kind)) {
            Some(Event::Due(due)) => Some(due),
            _ => None,
        }
    }

    /// The pictures of a step.
    pub fn photos(&self, step: StepKey) -> impl Iterator<Item = &Photo> {
        self.counting().filter_map(move |entry| match &entry.what {
            Event::Photo(photo) if photo.step == step => Some(photo),
            _ => None,
        })
    }
}
