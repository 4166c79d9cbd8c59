//! Random walks through a job: whatever is tapped, skipped, broken, taken back or done out of
//! order, the loose list is empty exactly if each item that was touched came back.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/record.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod record;
#[path = "support/technician.rs"]
#[allow(dead_code, reason = "each test file uses a part of it")]
mod technician;

use std::cell::Cell;
use std::collections::{BTreeMap, BTreeSet};

use hubslate::job::entry::{Consent, Event, How, Reply, Scope};
use hubslate::job::loose::put_back;
use hubslate::job::manual_item::{Also, next_place};
use hubslate::job::mishap::{Mishap, in_the_way, mended, possible};
use hubslate::job::turn::Turning;
use hubslate::job::{held, next};
use hubslate::slate::undo;
use hubslate::trade::fastening::MishapKind;
use hubslate::trade::play::Decision;
use hubslate::trade::wheel_end::{
    Form, HoldPoint, Item, ItemKind, ItemState, NotDoneReason, NutPosition, PlannedStep, Start,
};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;
use record::{HERE, Job};
use technician::{Story, answer, begin, steps};

/// What the technician does next; numbers pick among what there is.
#[derive(Clone, Debug)]
enum Act {
    /// The step that comes next, as a good technician does it; a fastener is one tap.
    Next,
    /// The step that comes next is not done.
    Skip,
    /// Some other step is done out of order.
    Jump(usize),
    /// A pass begins again.
    Pass(usize),
    /// Something goes wrong at a step.
    Break(usize, usize, usize, bool),
    /// What stands in the way is mended.
    Mend,
    /// Something else comes off, or back.
    Also(bool),
    /// The last tap is taken back.
    Undo,
}

fn act() -> impl Strategy<Value = Act> {
    let kind = any::<usize>();
    prop_oneof![
        60 => Just(Act::Next),
        1 => Just(Act::Skip),
        1 => any::<usize>().prop_map(Act::Jump),
        1 => any::<usize>().prop_map(Act::Pass),
        1 => (any::<usize>(), any::<usize>(), kind, any::<bool>())
            .prop_map(|(step, item, kind, yes)| Act::Break(step, item, kind, yes)),
        3 => Just(Act::Mend),
        2 => any::<bool>().prop_map(Act::Also),
        2 => Just(Act::Undo),
    ]
}

fn story() -> impl Strategy<Value = Story> {
    let decision = select(&[Decision::Keep, Decision::Replace, Decision::Stop][..]);
    let facts = (any::<bool>(), any::<bool>());
    (
        select(Start::ALL),
        select(NutPosition::ALL),
        decision,
        facts,
    )
        .prop_map(|(start, nut, decision, (yes, again))| Story {
            still_plays: false,
            end: &[],
            start,
            nut,
            decision,
            yes,
            again,
        })
}

/// A job, and beside it each tap as it was made, so that what is loose can be told without the
/// fold.
struct Walk {
    job: Job,
    story: Story,
    taps: Vec<Vec<Event>>,
}

impl Walk {
    fn tap(&mut self, whats: Vec<Event>) {
        self.job.tap(whats.clone());
        self.taps.push(whats);
    }

    fn act(&mut self, act: &Act) {
        let sheet = self.job.sheet();
        let all = steps(&sheet);
        let of = |place: usize| all[place % all.len()].clone();
        match act {
            Act::Next => {
                if let Some(planned) = next(&sheet, &all).cloned() {
                    self.work(&planned);
                }
            }
            Act::Skip => {
                if let Some(planned) = next(&sheet, &all) {
                    let reply = Reply::NotDone(NotDoneReason::Other);
                    self.tap(vec![Event::Answered(planned.key, reply)]);
                }
            }
            Act::Jump(place) if matches!(of(*place).form, Form::Do | Form::Turn(_)) => {
                self.work(&of(*place));
            }
            Act::Pass(place) if matches!(of(*place).form, Form::Turn(_)) => {
                self.tap(vec![Event::Pass(of(*place).key)]);
            }
            Act::Break(place, item, kind, yes) => {
                let planned = of(*place);
                let kinds = possible(&sheet, &[&planned]);
                if !kinds.is_empty() {
                    let (kind, items) = &kinds[kind % kinds.len()];
                    let (item, step) = items[item % items.len()];
                    self.tap(vec![Event::Mishap(Mishap {
                        step,
                        item,
                        kind: *kind,
                        part: "stud".to_owned(),
                        minutes: 30,
                    })]);
                    self.tap(vec![Event::Consent(Consent {
                        step: planned.key,
                        scope: Scope::Extra,
                        yes: *yes,
                        how: How::Spoken,
                        amount: None,
                    })]);
                }
            }
            Act::Mend => {
                let planned = next(&sheet, &all);
                let broken =
                    planned.and_then(|planned| Some((planned, in_the_way(&sheet, planned)?)));
                if let Some((planned, mishap)) = broken {
                    self.tap(mended(&sheet, planned, mishap.item));
                }
            }
            Act::Also(back) => self.also(*back),
            Act::Undo => {
                if let Some(strike) = undo(&sheet, self.job.phone.device) {
                    self.job.tap(vec![strike]);
                    self.taps.pop();
                }
            }
            Act::Jump(_) | Act::Pass(_) => {}
        }
    }

    /// One tap at a step: the next fastener where some are turned.
    fn work(&mut self, planned: &PlannedStep) {
        let sheet = self.job.sheet();
        let whats = match planned.form {
            Form::Turn(group) => {
                match Turning::of(&sheet, planned, group).and_then(|it| it.tap()) {
                    Some(what) => vec![what],
                    None => return,
                }
            }
            _ => answer(&sheet, planned, self.story),
        };
        self.tap(whats);
    }

    fn also(&mut self, back: bool) {
        let sheet = self.job.sheet();
        let named = sheet.loose().into_iter().map(|(item, _)| item);
        let off: Vec<Item> = named.filter(|item| item.group == ItemKind::Other).collect();
        match (back, off.first(), next(&sheet, &steps(&sheet))) {
            (true, Some(item), Some(planned)) => self.tap(vec![put_back(planned.key, *item, None)]),
            (false, None, _) => {
                if let Some(item) = next_place(&sheet, HERE) {
                    let name = "hose bracket".to_owned();
                    let spec = None;
                    self.tap(vec![Event::Also(Also { item, name, spec })]);
                }
            }
            _ => {}
        }
    }

    /// What is not back: by the taps that were not taken back, in their order, and nothing else.
    fn not_back(&self) -> BTreeSet<Item> {
        let mut back: BTreeMap<Item, bool> = BTreeMap::new();
        let mut broken: BTreeMap<Item, MishapKind> = BTreeMap::new();
        for what in self.taps.iter().flatten() {
            match what {
                Event::Moved(moved) => {
                    for item in &moved.items {
                        let turned = moved.step.step.code().starts_with("turn_");
                        let at_its_spec = !item.group.is_fastener() || turned;
                        back.insert(*item, moved.to == ItemState::Done && at_its_spec);
                    }
                }
                Event::Also(also) => {
                    back.insert(also.item, false);
                }
                Event::Mishap(mishap) => {
                    broken.insert(mishap.item, mishap.kind);
                }
                Event::Mended(item) => {
                    broken.remove(item);
                }
                _ => {}
            }
        }
        let loose = back.iter().filter(|(_, back)| !**back);
        let mut loose: BTreeSet<Item> = loose.map(|(item, _)| *item).collect();
        // A nut whose key is missing is loose only where it was touched.
        let broken = broken
            .into_iter()
            .filter(|(item, kind)| *kind != MishapKind::LockKeyMissing || back.contains_key(item));
        loose.extend(broken.map(|(item, _)| item));
        loose
    }
}

#[test]
fn the_loose_list_is_empty_exactly_if_each_item_came_back() {
    let (empty, full, broken) = (Cell::new(0), Cell::new(0), Cell::new(0));
    let mut runner = proptest::test_runner::TestRunner::new(ProptestConfig {
        cases: 48,
        ..ProptestConfig::default()
    });
    let walks = (story(), vec(act(), 20..220));
    let outcome = runner.run(&walks, |(story, acts)| {
        let job = begin(story);
        let mut walk = Walk {
            job,
            story,
            taps: Vec::new(),
        };
        for act in &acts {
            walk.act(act);
        }
        let sheet = walk.job.sheet();
        let loose: BTreeSet<Item> = sheet.loose().into_iter().map(|(item, _)| item).collect();
        prop_assert_eq!(&loose, &walk.not_back());
        if let Some(end) = steps(&sheet)
            .iter()
            .find(|planned| planned.form == Form::End)
        {
            let held = held(&sheet, &steps(&sheet), end);
            let by_loose = held.is_some_and(|held| held.point == HoldPoint::Loose);
            prop_assert!(!loose.is_empty() || !by_loose);
            prop_assert!(loose.is_empty() || held.is_some() || end.holds.is_empty());
        }
        let count = |cell: &Cell<u32>, is: bool| cell.set(cell.get() + u32::from(is));
        let touched = sheet
            .keys()
            .any(|key| matches!(key, hubslate::job::Key::Item(_)));
        count(&empty, loose.is_empty() && touched);
        count(&full, !loose.is_empty());
        count(
            &broken,
            walk.taps
                .iter()
                .flatten()
                .any(|it| matches!(it, Event::Mended(_))),
        );
        Ok(())
    });
    outcome.unwrap();
    // The walks would say nothing if none of them ever closed its list, or none left it open.
    assert!(0 < empty.get() && 0 < full.get(), "{empty:?} {full:?}");
    assert!(0 < broken.get(), "{broken:?}");
}
