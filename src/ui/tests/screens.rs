//! Every screen that a job of each kind comes to: what it says, which keys are live, what each writes.

use std::collections::BTreeSet;

use super::phone::{Key, Phone};
use super::technician::{Story, begin, next_key, step, steps};
use crate::job::combined_steps::lines;
use crate::job::entry::{Entry, Event, Reply};
use crate::job::{Status, combined_steps, held, status};
use crate::text::{self, Lang, Say};
use crate::trade::answer::Answer;
use crate::trade::wheel_end::{Choice, Form, Given, NotDoneReason, PlannedStep, sign_of};
use crate::ui::at::is_question;
use crate::ui::route::Route;

const LANG: Lang = Lang::English;

/// What the key of this label says, where it says one answer alone.
fn said_by(phone: &Phone, planned: &PlannedStep, label: &str) -> Option<Reply> {
    let text = text::step_for(LANG, planned.key, phone.open().plan.build());
    match &planned.form {
        Form::Do if label == text.primary => Some(Reply::Done),
        Form::Ask if label == text.primary => Some(Reply::Said(Answer::Yes)),
        Form::Ask if label == text.no => Some(Reply::Said(Answer::No)),
        Form::Choice(picks) => {
            let pick = picks.iter().find(|it| text::pick(LANG, **it) == label);
            pick.map(|pick| Reply::Picked(*pick))
        }
        _ => None,
    }
}

fn reply_in(whats: &[Event], planned: &PlannedStep) -> Option<Reply> {
    whats.iter().find_map(|what| match what {
        Event::Answered(key, reply) if *key == planned.key => Some(reply.clone()),
        _ => None,
    })
}

/// How much was looked at, so that none of it was for nothing.
#[derive(Default)]
struct Seen {
    steps: BTreeSet<String>,
    waited: usize,
    keys: usize,
    noes: usize,
    rows: usize,
    rows_of_several: usize,
    not_done: usize,
}

struct Look<'a> {
    phone: &'a Phone,
    planned: &'a PlannedStep,
    entries: Vec<Entry>,
}

impl Look<'_> {
    fn place(&self) -> Route {
        Route::Step(self.phone.log(), self.planned.key)
    }

    /// The step as it was before anybody touched it.
    fn again(&self) {
        self.phone.take(&self.entries);
        self.phone.go(&self.place());
    }

    /// What a tap writes, and how the step stands then.
    fn after(&self, act: impl FnOnce(&Phone)) -> (Vec<Event>, Status) {
        self.again();
        let whats = self.phone.writes(act);
        let now = status(&self.phone.open().sheet, self.planned);
        (whats, now)
    }

    /// No key answers what was not on the screen.
    fn keys_wait(&self, seen: &mut Seen) {
        self.phone.take(&self.entries);
        self.phone.go_unseen(&self.place());
        let open = self.phone.open();
        let stopped = held(&open.sheet, &open.steps, self.planned).is_some();
        if is_question(&self.planned.form) && !stopped && !self.phone.label().is_empty() {
            let live: Vec<_> = self.phone.keys().into_iter().filter(|it| it.live).collect();
            let links = |key: &Key| !self.phone.is_link(&key.label);
            let live: Vec<_> = live.into_iter().filter(links).collect();
            assert!(
                live.is_empty(),
                "{:?}: {live:?} before it was seen",
                self.planned.key
            );
            seen.waited += 1;
        }
    }

    /// Each key that says an answer writes that answer, and no other step's.
    fn keys_write_what_they_say(&self, seen: &mut Seen) {
        self.again();
        let keys = self.phone.keys();
        for key in keys.iter().filter(|key| key.live) {
            let Some(reply) = said_by(self.phone, self.planned, &key.label) else {
                continue;
            };
            let asks_more = matches!(&reply, Reply::Picked(pick) if matches!(
                pick,
                Choice::SomeLoose | Choice::SameCorner
            ));
            let (whats, _) = self.after(|it| it.tap(&key.label));
            let wrote = reply_in(&whats, self.planned);
            let expected = (!asks_more).then_some(reply);
            assert_eq!(wrote, expected, "{:?}: `{}`", self.planned.key, key.label);
            seen.keys += 1;
            seen.noes += usize::from(wrote == Some(Reply::Said(Answer::No)));
            let elsewhere = whats
                .iter()
                .any(|what| matches!(what, Event::Answered(of, _) if *of != self.planned.key));
            assert!(
                !elsewhere,
                "{:?}: `{}` wrote {whats:?}",
                self.planned.key, key.label
            );
        }
    }

    /// "Not done" is recorded with its reason and never reads as done.
    fn not_done_is_never_done(&self, because: NotDoneReason, seen: &mut Seen) {
        let not_done = text::say(LANG, Say::NotDone);
        self.again();
        if !self.phone.has(not_done) {
            return;
        }
        let (whats, now) = self.after(|it| it.not_done(text::because(LANG, because)));
        let at = format!("{:?} {because:?}: {whats:?}", self.planned.key);
        assert_eq!(
            reply_in(&whats, self.planned),
            Some(Reply::NotDone(because)),
            "{at}"
        );
        assert_ne!(now, Status::Done, "{at}");
        seen.not_done += 1;
    }

    /// Each row in turn is no: it is recorded as no, says what to do, and the list is not done as if
    /// it were yes.
    fn rows_turn_to_no(&self, seen: &mut Seen) {
        let Form::Checks(checks) = &self.planned.form else {
            return;
        };
        for (row, check) in checks.iter().enumerate() {
            let (whats, _) = self.after(|it| {
                let rows = it.rows();
                assert_eq!(
                    rows.len(),
                    checks.len(),
                    "{:?}: {}",
                    self.planned.key,
                    it.words()
                );
                assert!(rows.iter().all(|(_, answer)| answer == "open"), "{rows:?}");
                it.tap_row(row);
                assert_eq!(it.rows()[row].1, "no", "{:?}", self.planned.key);
                let follows = Given::Row(*check, Answer::No);
                let now = text::follows(
                    LANG,
                    self.planned.key,
                    follows,
                    self.phone.open().plan.build(),
                );
                assert!(it.words().contains(now.trim()), "`{now}` in {}", it.words());
                it.black();
            });
            let Some(Reply::Checked(answers)) = reply_in(&whats, self.planned) else {
                panic!("{:?}: {whats:?}", self.planned.key);
            };
            for (of, answer) in answers {
                let expected = if of == *check {
                    Answer::No
                } else {
                    Answer::Yes
                };
                assert_eq!(answer, expected, "{:?} {of:?}", self.planned.key);
            }
            seen.rows += 1;
        }
    }
}

/// All of it at one step of a job.
fn look_at(phone: &Phone, planned: &PlannedStep, seen: &mut Seen) {
    let look = Look {
        phone,
        planned,
        entries: phone.entries(),
    };
    look.keys_wait(seen);
    look.again();
    assert!(!phone.words().is_empty());
    let stopped = held(&phone.open().sheet, &phone.open().steps, planned).is_some();
    if !stopped {
        look.keys_write_what_they_say(seen);
        look.rows_turn_to_no(seen);
        look.not_done_is_never_done(NotDoneReason::Other, seen);
    }
    phone.take(&look.entries);
}

/// The rows of a screen that tells several steps: untouched they are answered by the key, and the
/// one that was turned is not.
fn rows_of_several(phone: &Phone, seen: &mut Seen) {
    let entries = phone.entries();
    let shown = phone.rows().len();
    let open = phone.open();
    let Some(first) = open.next() else { return };
    let told = combined_steps(&open.sheet, &open.steps, first);
    let signs = told
        .iter()
        .any(|planned| sign_of(planned.key.step).is_some());
    if told.len() < 2 || signs {
        return;
    }
    for row in 0..shown {
        phone.take(&entries);
        phone.tap_row(row);
        let (_, answer) = phone.rows()[row].clone();
        let Some(key) = phone.primary().filter(|key| key.live) else {
            continue;
        };
        let whats = phone.writes(|it| it.tap(&key.label));
        // Whatever it is, nothing reads as done that was turned to no or to "not yet".
        let above: Vec<_> = told[..told.len() - 1]
            .iter()
            .map(|it| (*it).clone())
            .collect();
        let lines = lines(&above);
        let Some(line) = lines.get(row) else { continue };
        let planned = told[line.step];
        assert_ne!(answer, "open");
        seen.rows_of_several += 1;
        let reply = reply_in(&whats, planned);
        match line.check {
            Some(check) => {
                let Some(Reply::Checked(answers)) = reply else {
                    panic!("{:?}: {whats:?}", planned.key);
                };
                assert!(answers.contains(&(check, Answer::No)), "{:?}", planned.key);
            }
            None if answer != "yes" => {
                assert_ne!(reply, Some(Reply::Done), "{:?}", planned.key);
                let sheet = &phone.open().sheet;
                assert_ne!(status(sheet, planned), Status::Done, "{:?}", planned.key);
            }
            None => {}
        }
    }
    phone.take(&entries);
}

/// Works a job of this kind, and looks at each step that no other job came to in the same way.
fn work(story: Story, seen: &mut Seen) -> usize {
    let mut job = begin(story);
    let phone = Phone::with(&job.entries);
    let mut looked = 0;
    for _ in 0..200 {
        let sheet = job.sheet();
        let Some(key) = next_key(&sheet) else {
            return looked;
        };
        let steps = steps(&sheet);
        let planned = steps.iter().find(|it| it.key == key).unwrap();
        let name = format!("{} {:?}", key.step.code(), planned.form);
        if seen.steps.insert(name) {
            phone.take(&job.entries);
            rows_of_several(&phone, seen);
            look_at(&phone, planned, seen);
            looked += 1;
        }
        assert!(step(&mut job, story));
    }
    panic!("went round in circles");
}

#[test]
fn every_key_of_every_step_of_each_kind_writes_what_it_says_and_no_no_reads_as_done() {
    let mut seen = Seen::default();
    let first = work(Story::REPLACED, &mut seen);
    assert!(first > 60, "{first} steps");
    for kind in Story::KINDS {
        work(Story::at(kind), &mut seen);
    }
    println!(
        "{} steps: {} waited, {} keys, {} noes, {} rows, {} rows of several, {} not done",
        seen.steps.len(),
        seen.waited,
        seen.keys,
        seen.noes,
        seen.rows,
        seen.rows_of_several,
        seen.not_done
    );
    assert!(seen.steps.len() > 90 && seen.waited > 30, "{}", seen.waited);
    assert!(
        seen.keys > 100 && seen.noes > 5,
        "{} {}",
        seen.keys,
        seen.noes
    );
    assert!(
        seen.rows > 30 && seen.rows_of_several > 15,
        "{} {}",
        seen.rows,
        seen.rows_of_several
    );
    assert!(seen.not_done > 60, "{}", seen.not_done);
}
