//! Practice jobs by chance, the same for the same seed: every dial, way, limit and answer that the
//! measuring rules look at, also where they do not fit together.
//!
//! They follow no procedure: what cannot happen at the car can still stand in a file.

#[path = "random_bench.rs"]
mod bench;
#[path = "random_sets.rs"]
mod sets;

use hubslate::exchange::wire::{decode, encode};
use hubslate::exchange::{LogKind, SavedText, digest, export};
use hubslate::job::dial_setup::{recorded, required};
use hubslate::job::entry::{
    Carried, Due, DueKind, Entry, Event, HandedOver, Moved, Opened, PersonField, Quantity, Reading,
    Reply, Side,
};
use hubslate::job::evidence::decided;
use hubslate::job::kit::MoreKit;
use hubslate::job::proof::owed;
use hubslate::job::{fold, found};
use hubslate::slate::{Pen, compose, log_id};
use hubslate::trade::answer::Answer;
use hubslate::trade::fastening::{Spec, SpecBody, SpecItem, SpecSource};
use hubslate::trade::play::{Dial, DialKind, Felt, Method, Place, Rig, Way};
use hubslate::trade::vehicle::Corner;
use hubslate::trade::wheel_end::{
    Check, Choice, Item, ItemKind, ItemState, NotDoneReason, SetName, Start, Step, StepKey, When,
};
use hubslate::units::{
    AngleUnit, Decimal, Force, ForceUnit, Length, LengthUnit, TemperatureUnit, Typed,
};

/// The record of an entry's text.
pub fn saved(text: &str) -> SavedText {
    let entry = decode(text).unwrap();
    SavedText {
        log: entry.log.0,
        id: entry.id.0,
        text: text.to_owned(),
    }
}

/// Knuth's MMIX generator: no more chance than a test needs.
pub struct Chance(pub u64);

impl Chance {
    /// A number below `end`.
    pub fn below(&mut self, end: u64) -> u64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % end
    }

    /// True so many times in a hundred.
    pub fn often(&mut self, percent: u64) -> bool {
        self.below(100) < percent
    }

    /// One of these.
    pub fn of<T: Clone>(&mut self, all: &[T]) -> T {
        let place = usize::try_from(self.below(all.len() as u64)).unwrap();
        all[place].clone()
    }
}

/// A job on the way.
pub struct RandomJob {
    pub chance: Chance,
    pub entries: Vec<Entry>,
    pen: Pen,
    log: hubslate::job::entry::LogId,
}

impl RandomJob {
    /// The job of a seed.
    pub fn of(seed: u64) -> Self {
        let mut job = Self::begin(seed, "van-7");
        job.go_on();
        if job.chance.often(40) {
            job.set(SetName {
                when: When::Before,
                nth: 2,
            });
            job.decide(2);
        }
        if job.chance.often(60) {
            job.work();
        }
        job.bench();
        job.undo();
        job.prove();
        let texts = job.texts();
        let digest = digest(&texts);
        job.tap(vec![Event::HandedOver(HandedOver { digest })]);
        job
    }

    /// A job that was opened and nothing else.
    pub fn begin(seed: u64, device: &str) -> Self {
        let mut chance = Chance(seed);
        chance.below(2);
        let utc_ms = 1_771_000_000_000 + i64::try_from(chance.below(1_000_000_000)).unwrap();
        let mut job = Self {
            pen: Pen {
                by: "P. Nobody".to_owned(),
                device: device.to_owned(),
                n: 1 + chance.below(5_000),
                utc_ms,
                offset_min: chance.of(&[-300, 0, 60, 330]),
                recorded: None,
                chance: [0; 10],
            },
            chance,
            entries: Vec::new(),
            log: hubslate::job::entry::LogId(String::new()),
        };
        job.shake();
        job.log = log_id(&job.pen);
        let corners = job.chance.of(&[&[HERE][..], &[HERE, Corner::RearRight]]);
        job.tap(vec![
            Event::Opened(Opened {
                start: Start::AtHome,
                practice: Some(format!("seed {seed}")),
            }),
            Event::Person(PersonField::Name, "Nobody At All".to_owned()),
            Event::Corners(corners.to_vec()),
        ]);
        job
    }

    /// The same job on another phone.
    pub fn on(&self, device: &str, seed: u64) -> Self {
        let mut pen = self.pen.clone();
        pen.device = device.to_owned();
        Self {
            // Two phones never have the same chance.
            chance: Chance(
                device
                    .bytes()
                    .fold(seed, |sum, byte| sum * 31 + u64::from(byte)),
            ),
            entries: self.entries.clone(),
            log: self.log.clone(),
            pen,
        }
    }

    /// What comes before the work, and a set.
    pub fn go_on(&mut self) {
        self.before();
        self.set(SetName {
            when: When::Before,
            nth: 1,
        });
        self.decide(1);
    }

    /// Its records, as a phone keeps them.
    pub fn records(&self) -> Vec<SavedText> {
        self.texts().iter().map(|text| saved(text)).collect()
    }

    pub fn texts(&self) -> Vec<String> {
        self.entries.iter().map(|e| encode(e).unwrap()).collect()
    }

    pub fn file(&self) -> String {
        export(&[(LogKind::Job, self.log.clone(), self.texts())]).unwrap()
    }

    pub fn tap(&mut self, whats: Vec<Event>) {
        self.shake();
        self.pen.utc_ms += 1_000;
        let heads = fold(self.entries.iter().cloned()).heads().to_vec();
        let new = compose(&self.log, &heads, &self.pen, whats);
        self.pen.n += new.len() as u64;
        self.entries.extend(new);
    }

    fn shake(&mut self) {
        for place in 0..10 {
            self.pen.chance[place] = u8::try_from(self.chance.below(256)).unwrap();
        }
    }

    fn answer(&mut self, step: StepKey, reply: Reply) {
        self.tap(vec![Event::Answered(step, reply)]);
    }

    /// An answer most of the time.
    fn perhaps(&mut self, percent: u64, step: StepKey, all: &[Reply]) {
        if self.chance.often(percent) {
            let reply = self.chance.of(all);
            self.answer(step, reply);
        }
    }

    /// Something drawn beside the rest, which is the same with it and without.
    fn aside<T>(&mut self, draw: impl FnOnce(&mut Self) -> T) -> T {
        let saved = self.chance.0;
        self.chance.0 = !saved;
        let drawn = draw(self);
        self.chance.0 = saved;
        drawn
    }

    /// The signs of the road that speak of bearings, and the heat of both hubs.
    fn road(&mut self) {
        let said = [Answer::Yes, Answer::Yes, Answer::No, Answer::NotDone].map(Reply::Said);
        self.perhaps(70, StepKey::once(Step::SignSpeed), &said);
        let swerves =
            [Choice::LouderRight, Choice::LouderLeft, Choice::NoChange].map(Reply::Picked);
        self.perhaps(70, StepKey::once(Step::SignSwerve), &swerves);
        let rarely = [Answer::Yes, Answer::No, Answer::NotDone, Answer::NotDone].map(Reply::Said);
        self.perhaps(50, StepKey::once(Step::SignCoast), &rarely);
        self.perhaps(50, StepKey::once(Step::SignSurface), &rarely);
        let heat =
            |text, unit| Reply::Number(Quantity::Temperature(Typed::parse(text, unit).unwrap()));
        let (c, f) = (TemperatureUnit::Celsius, TemperatureUnit::Fahrenheit);
        let heats = [
            heat("41", c),
            heat("58,5", c),
            heat("104", f),
            heat("133", f),
        ];
        self.perhaps(80, StepKey::once(Step::HeatHere), &heats);
        self.perhaps(80, StepKey::once(Step::HeatOther), &heats);
    }

    fn before(&mut self) {
        if self.chance.often(85) {
            let spec = self.spec();
            self.tap(vec![Event::Spec(spec)]);
        }
        if self.chance.often(95) {
            let dial = self.dial();
            let certified = self.pen.n.is_multiple_of(3);
            let dial_error = certified.then(|| Typed::parse("4", LengthUnit::Micrometre).unwrap());
            self.tap(vec![Event::Carried(Carried {
                wrenches: vec![],
                dial,
                more: MoreKit {
                    dial_error,
                    ..MoreKit::default()
                },
                dial_due: None,
            })]);
        }
        let looks = [
            Answer::Yes,
            Answer::Yes,
            Answer::Yes,
            Answer::No,
            Answer::NotDone,
        ];
        let checks = [Check::NutsAsFound, Check::WheelUpright];
        let checks = checks.map(|check| (check, self.chance.of(&looks)));
        self.perhaps(
            80,
            StepKey::once(Step::BeforeDriving),
            &[Reply::Checked(checks.to_vec())],
        );
        let not = Reply::NotDone(NotDoneReason::NoTime);
        self.perhaps(70, StepKey::once(Step::Drive), &[Reply::Done, not.clone()]);
        self.aside(Self::road);
        for step in [Step::RockTwelveSix, Step::RockNineThree, Step::RockAxial] {
            let nothing = Reply::Felt(Felt::Nothing);
            let just = Reply::Felt(Felt::JustFelt);
            let rare = Reply::Felt(self.chance.of(&[Felt::JustFelt, Felt::Seen, Felt::Knocks]));
            let all = [
                nothing.clone(),
                nothing.clone(),
                nothing,
                just,
                rare,
                not.clone(),
            ];
            self.perhaps(85, at(step), &all);
        }
        let picks = |all: &[Choice]| all.iter().map(|p| Reply::Picked(*p)).collect::<Vec<_>>();
        let gone = picks(&[Choice::PlayGone, Choice::PlayGone, Choice::PlayStays]);
        self.perhaps(70, at(Step::BrakeHeld), &gone);
        let spins = picks(&SPINS);
        self.perhaps(90, at(Step::SpinHand), &spins);
        let nuts = [
            Choice::NutTight,
            Choice::NutTight,
            Choice::NutTight,
            Choice::NutRetorqued,
            Choice::NutSlack,
        ];
        self.perhaps(90, at(Step::NutFound), &picks(&nuts));
        self.perhaps(90, at(Step::RigPush), &picks(&FLEXES));
        if self.chance.often(8) {
            self.loosen_nut();
        }
    }

    fn decide(&mut self, nth: u8) {
        let sheet = fold(self.entries.iter().cloned());
        self.tap(vec![Event::Decided(decided(&sheet, HERE, nth))]);
    }

    /// Records what is owed, one by one: proofs, and what runs and rotors said.
    fn prove(&mut self) {
        let sheet = fold(self.entries.iter().cloned());
        let proofs = owed(&sheet).into_iter().map(Event::Proved);
        for what in proofs.chain(found::owed(&sheet)) {
            self.tap(vec![what]);
        }
    }

    fn loosen_nut(&mut self) {
        self.loosen(Step::NutFirst, ItemKind::AxleNut);
    }

    /// The first of a group comes off.
    fn loosen(&mut self, step: Step, group: ItemKind) {
        let items = vec![Item {
            corner: HERE,
            group,
            number: 1,
        }];
        let to = ItemState::Off;
        let step = at(step);
        self.tap(vec![Event::Moved(Moved {
            step,
            items,
            to,
            wrench: None,
        })]);
    }

    fn work(&mut self) {
        self.loosen_nut();
        let flexes: Vec<_> = FLEXES.iter().map(|pick| Reply::Picked(*pick)).collect();
        self.perhaps(90, at(Step::RigPush).nth(2), &flexes);
        if self.chance.often(80) {
            self.set(SetName {
                when: When::After,
                nth: 1,
            });
        }
        let spins: Vec<_> = SPINS.iter().map(|pick| Reply::Picked(*pick)).collect();
        self.perhaps(80, at(Step::ProveSpin), &spins);
        if self.entries.len() % 3 == 1 {
            self.aside(Self::prove);
        }
        self.tap(vec![Event::Due(Due {
            kind: DueKind::Retorque,
            date: "2026-03-01".to_owned(),
            distance: None,
        })]);
    }

    /// Strikes an entry now and then, and now and then strikes the strike.
    fn undo(&mut self) {
        for _ in 0..2 {
            if self.chance.often(30) {
                let from = self.entries.len() / 3;
                let place = from
                    + usize::try_from(self.chance.below((self.entries.len() - from) as u64))
                        .unwrap();
                let hit = self.entries[place].id.clone();
                self.tap(vec![Event::Strike(vec![hit])]);
            }
        }
    }
}

/// The corner that all this is about.
pub const HERE: Corner = Corner::FrontLeft;

const fn at(step: Step) -> StepKey {
    StepKey::at(step, HERE)
}

const FLEXES: [Choice; 5] = [
    Choice::FlexNone,
    Choice::FlexNone,
    Choice::FlexHalf,
    Choice::FlexOne,
    Choice::FlexMore,
];
const SPINS: [Choice; 7] = [
    Choice::SmoothQuiet,
    Choice::SmoothQuiet,
    Choice::SmoothQuiet,
    Choice::Rough,
    Choice::Noisy,
    Choice::RoughNoisy,
    Choice::GrindsHot,
];
