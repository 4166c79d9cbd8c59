//! Walks the real procedure of a job from its first step to its end, as a technician would.
//!
//! Every entry is composed, written down and read back as in the app; a step that is not settled
//! by what was tapped, or a hold point that stands in the way, ends the walk with a panic.

use hubslate::exchange::wire::{decode, encode};
use hubslate::exchange::{LogKind, digest, export};
use hubslate::job::dial_setup::{recorded, required};
use hubslate::job::entry::{
    Consent, Due, DueKind, Ended, Entry, Event, HandedOver, How, LogId, Moved, Opened, Part,
    PersonField, Photo, Quantity, Reading, Reply, Scope, Side, VehicleField,
};
use hubslate::job::evidence::decided;
use hubslate::job::proof::with_records;
use hubslate::job::{JobState, fold, group_items, held, next, plan, status};
use hubslate::slate::{Pen, compose, log_id, sealed, undo};
use hubslate::trade::answer::Answer;
use hubslate::trade::fastening::{
    Fit, RetorqueRule, UsableShare, cross_order, fit, retorque_due, star_order,
};
use hubslate::trade::vehicle::{Odometer, read_booking};
use hubslate::trade::wheel_end::{
    Form, ItemKind, ItemState, NotDoneReason, Phase, PlannedStep, SetName, Start, Step, StepKey,
    procedure,
};
use hubslate::units::{Decimal, DistanceUnit, TorqueUnit, Typed};

use crate::keys::{done, fits, moved, signed, spec_of};
use crate::story::Story;

/// A walk and what it has kept so far.
pub struct Walk<'a> {
    story: &'a Story,
    log: LogId,
    texts: Vec<String>,
    entries: Vec<Entry>,
    pen: Pen,
    chance: u64,
    /// The codes of the steps that were passed, in order.
    pub passed: Vec<String>,
}

/// More steps than any job has.
const FAR_TOO_MANY: usize = 1000;

impl<'a> Walk<'a> {
    /// Walks a story to its end.
    pub fn of(story: &'a Story) -> Self {
        let mut walk = Self::begin(story);
        while walk.step() {
            assert!(walk.passed.len() < FAR_TOO_MANY, "the job does not end");
        }
        walk
    }

    fn begin(story: &'a Story) -> Self {
        let pen = Pen {
            by: story.by.to_owned(),
            device: "van-2".to_owned(),
            n: 1 + story.seed % 997,
            utc_ms: story.begins,
            offset_min: story.offset_min,
            recorded: None,
            chance: [0; 10],
        };
        let mut walk = Self {
            story,
            log: LogId(String::new()),
            texts: Vec::new(),
            entries: Vec::new(),
            pen,
            chance: story.seed,
            passed: Vec::new(),
        };
        walk.shake();
        walk.log = log_id(&walk.pen);
        let mut whats = vec![Event::Opened(Opened {
            start: story.start,
            practice: None,
        })];
        if story.start == Start::AtCar {
            // Nobody is asked for the kit at the car: it is copied as it stands.
            whats.push(Event::Carried(story.carried.clone()));
        }
        walk.tap(whats);
        walk
    }

    /// The sheet as it stands.
    pub fn sheet(&self) -> JobState {
        fold(self.entries.clone())
    }

    /// The entries.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// The exported file.
    pub fn file(&self) -> String {
        export(&[(LogKind::Job, self.log.clone(), self.texts.clone())]).unwrap()
    }

    /// Passes one step; false at the end.
    fn step(&mut self) -> bool {
        let sheet = self.sheet();
        let steps = procedure(&plan(&sheet));
        let Some(planned) = next(&sheet, &steps).cloned() else {
            return false;
        };
        if planned.phase == Phase::LookBack {
            return false;
        }
        let code = planned.key.code();
        assert_eq!(held(&sheet, &steps, &planned), None, "held before {code}");
        self.wait(60 + self.some(120));
        self.answer(&sheet, &planned);
        if let Some(note) = self.story.notes.get(code.as_str()) {
            self.tap(vec![Event::Note(Some(planned.key), (*note).to_owned())]);
        }
        let after = self.sheet();
        assert!(
            status(&after, &planned).is_settled(),
            "{code} is not settled"
        );
        self.passed.push(code);
        true
    }

    fn answer(&mut self, sheet: &JobState, planned: &PlannedStep) {
        let reply = self.story.reply(planned.key);
        if let Some(reply @ Reply::NotDone(_)) = reply {
            return self.tap(vec![Event::Answered(planned.key, reply)]);
        }
        match &planned.form {
            Form::Booking => self.booking(planned.key),
            Form::Vehicle => self.vehicle(planned.key),
            Form::Corners => self.tap(vec![Event::Corners(self.story.corners.clone())]),
            Form::Spec(item) => self.tap(vec![Event::Spec(self.story.spec(*item))]),
            Form::Price => self.tap(vec![Event::Price(self.story.price.clone())]),
            Form::Kit => self.tap(vec![
                Event::Missing(Vec::new()),
                Event::Carried(self.story.carried.clone()),
                Event::Answered(planned.key, Reply::Done),
            ]),
            Form::Do | Form::Ready | Form::Result => self.tap(done(sheet, planned, Reply::Done)),
            Form::Ask => {
                let reply = reply.unwrap_or(Reply::Said(Answer::Yes));
                self.tap(done(sheet, planned, reply));
            }
            Form::Checks(checks) => {
                let yes = checks.iter().map(|check| (*check, Answer::Yes)).collect();
                self.tap(vec![Event::Answered(
                    planned.key,
                    reply.unwrap_or(Reply::Checked(yes)),
                )]);
                self.part(planned);
            }
            Form::Choice(_) | Form::Number(_) | Form::Swing => {
                let reply = reply.unwrap_or_else(|| panic!("no reply to {}", planned.key.code()));
                assert!(
                    fits(&planned.form, &reply),
                    "{} to {reply:?}",
                    planned.key.code()
                );
                self.tap(vec![Event::Answered(planned.key, reply)]);
            }
            Form::Photo => self.picture(planned.key),
            Form::DialSetup(set) => {
                let (way, _) = required(sheet);
                self.tap(vec![recorded(planned.key.corner.unwrap(), *set, way)]);
            }
            Form::Round(set, round) => self.round(planned, *set, *round),
            Form::Decide(nth) => {
                let corner = planned.key.corner.unwrap();
                self.tap(vec![Event::Decided(decided(sheet, corner, *nth))]);
            }
            Form::Consent => self.consent(planned.key),
            Form::Turn(group) => self.turn(sheet, planned, *group),
            Form::Retorque => self.retorque(sheet, planned.key),
            Form::Sign => self.tap(vec![signed(planned.key)]),
            Form::Report => {
                let over = Event::HandedOver(HandedOver::NOW);
                let done = Event::Answered(planned.key, Reply::Done);
                self.tap(with_records(sheet, vec![over, done]));
            }
            Form::End => {
                let ended = Ended {
                    ending: self.story.ending,
                    charge: None,
                };
                self.tap(with_records(sheet, vec![Event::Ended(ended)]));
            }
        }
    }

    fn booking(&mut self, step: StepKey) {
        let read = read_booking(self.story.message);
        let mut whats = vec![Event::Said(read.complaint)];
        let vin = read.vin.map(|found| found.value.as_str().to_owned());
        whats.extend(vin.map(|vin| Event::Vehicle(VehicleField::Vin, vin)));
        let persons = [
            (PersonField::Name, read.name),
            (PersonField::Phone, read.phone),
            (PersonField::Address, read.address),
            (PersonField::Plate, read.plate),
        ];
        for (field, found) in persons {
            whats.extend(found.map(|found| Event::Person(field, found.value)));
        }
        whats.push(Event::Answered(step, Reply::Done));
        self.tap(whats);
    }

    fn vehicle(&mut self, step: StepKey) {
        let facts = self.story.vehicle.iter();
        let mut whats: Vec<Event> = facts
            .map(|(field, text)| Event::Vehicle(*field, (*text).to_owned()))
            .collect();
        let persons = self.story.persons.iter();
        whats.extend(persons.map(|(field, text)| Event::Person(*field, (*text).to_owned())));
        whats.push(Event::Answered(step, Reply::Done));
        self.tap(whats);
    }

    fn part(&mut self, planned: &PlannedStep) {
        if let (Step::Compare, Some(corner)) = (planned.key.step, planned.key.corner) {
            let (number, lot) = self.story.part;
            self.tap(vec![Event::Part(Part {
                corner,
                number: number.to_owned(),
                lot: lot.to_owned(),
            })]);
        }
    }

    fn picture(&mut self, step: StepKey) {
        if !self.story.photos {
            let reply = Reply::NotDone(NotDoneReason::NoLight);
            return self.tap(vec![Event::Answered(step, reply)]);
        }
        // Pictures are not in the file; their digests are.
        let sha256 = digest([format!("{} {}", self.story.seed, step.code())]);
        self.tap(vec![Event::Photo(Photo {
            step,
            sha256,
            mime: "image/jpeg".to_owned(),
            width: 1600,
            height: 1200,
        })]);
    }

    fn round(&mut self, planned: &PlannedStep, set: SetName, round: u8) {
        if let Some(slip) = self.story.slips.get(planned.key.code().as_str()) {
            let wrong = self.pull(planned, set, round, slip);
            self.tap(wrong);
            self.wait(6);
            let strike = undo(&self.sheet(), &self.pen.device).unwrap();
            self.tap(vec![strike]);
            self.wait(9);
        }
        let pulls = self.story.readings.get(&(set.when, set.nth));
        let pulls = pulls.unwrap_or_else(|| panic!("no readings for {}", planned.key.code()));
        let typed = pulls[usize::from(round) - 1];
        let whats = self.pull(planned, set, round, typed);
        self.tap(whats);
    }

    /// The dial was zeroed while pushing; the needle was read while pulling.
    fn pull(&self, planned: &PlannedStep, set: SetName, round: u8, typed: &str) -> Vec<Event> {
        let sheet = self.sheet();
        let reading = |side, text: &str| {
            Event::Reading(Reading {
                corner: planned.key.corner.unwrap(),
                set,
                round,
                side,
                divisions: Decimal::parse(text).unwrap(),
                turns: None,
                dial: sheet.dial(),
            })
        };
        vec![reading(Side::Push, "0"), reading(Side::Pull, typed)]
    }

    fn consent(&mut self, step: StepKey) {
        let teardown = step.step == Step::TeardownYes;
        let price = &self.story.price;
        let consent = Event::Consent(Consent {
            step,
            scope: if teardown {
                Scope::Teardown
            } else {
                Scope::Repair
            },
            yes: teardown || self.story.yes,
            how: if teardown { How::Spoken } else { How::Written },
            amount: if teardown {
                price.refit.clone()
            } else {
                Some(price.repair.clone())
            },
        });
        let mut whats = vec![consent];
        if !teardown {
            whats.push(signed(step));
        }
        self.tap(whats);
    }

    /// A snug pass as one tap, then one tap a fastener in its order.
    fn turn(&mut self, sheet: &JobState, planned: &PlannedStep, group: ItemKind) {
        let items = group_items(sheet, planned.key.corner.unwrap(), group);
        let count = u8::try_from(items.len()).unwrap();
        let order: Vec<u8> = match group {
            ItemKind::LugNuts => star_order(count).unwrap().to_vec(),
            ItemKind::HubBolts => cross_order(count).unwrap().to_vec(),
            _ => (1..=count).collect(),
        };
        let wrench = self.wrench(group);
        if count > 1 {
            let snug = moved(planned.key, items.clone(), ItemState::Snug);
            self.tap(vec![Event::Pass(planned.key), snug]);
        }
        for number in order {
            self.wait(8 + self.some(14));
            let items = items.iter().copied().filter(|item| item.number == number);
            self.tap(vec![Event::Moved(Moved {
                step: planned.key,
                items: items.collect(),
                to: ItemState::Done,
                wrench: Some(wrench.clone()),
            })]);
        }
    }

    fn wrench(&self, group: ItemKind) -> (String, Typed<TorqueUnit>) {
        let item = spec_of(group);
        let spec = self.story.spec(item);
        let kit = &self.story.carried.wrenches;
        let Fit::Fits { wrenches } = fit(&spec, kit, UsableShare::DEFAULT) else {
            panic!("no wrench for {}", item.code());
        };
        let wrench = &kit[*wrenches.last().unwrap()];
        (wrench.name.clone(), spec.final_torque().unwrap().clone())
    }

    fn retorque(&mut self, sheet: &JobState, step: StepKey) {
        let unit = DistanceUnit::Mile;
        let odometer = match sheet.reply(StepKey::once(Step::Odometer)) {
            Some(Reply::Number(Quantity::Distance(read))) => Some(Odometer { read: read.clone() }),
            _ => None,
        };
        let today = chrono::DateTime::from_timestamp_millis(self.pen.utc_ms).unwrap();
        let rule = RetorqueRule::published(unit);
        let due = retorque_due(today.date_naive(), odometer.as_ref(), rule);
        let after = format!("{:.0}", rule.after.in_unit(unit));
        self.tap(vec![
            Event::Due(Due {
                kind: DueKind::Retorque,
                date: due.by.to_string(),
                distance: Some(Typed::parse(&after, unit).unwrap()),
            }),
            Event::Answered(step, Reply::Done),
        ]);
    }

    /// Keeps one tap: stamped, written down, read back.
    fn tap(&mut self, whats: Vec<Event>) {
        self.shake();
        let heads = self.sheet().heads().to_vec();
        let tap = compose(&self.log, &heads, &self.pen, whats);
        for entry in sealed(&self.entries, tap) {
            let text = encode(&entry).unwrap();
            assert_eq!(decode(&text).as_ref(), Ok(&entry));
            self.pen.n += 1;
            self.entries.push(entry);
            self.texts.push(text);
        }
        self.wait(1);
    }

    fn wait(&mut self, seconds: u64) {
        self.pen.utc_ms += i64::try_from(seconds * 1000 + self.some(1000)).unwrap();
    }

    /// A number below `end`, the same in every walk of the story.
    fn some(&self, end: u64) -> u64 {
        (self.chance >> 33) % end
    }

    /// The next ten bytes of chance; the same in every walk of the story.
    fn shake(&mut self) {
        for byte in &mut self.pen.chance {
            // Knuth's MMIX generator.
            self.chance = self
                .chance
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            *byte = self.chance.to_be_bytes()[1];
        }
    }
}
