//! From lines back to the facts. Strict: what this program would not write is damaged.

use super::line::{read_stage, text, typed};
use super::{Paper, round, write};
use crate::exchange::import::is_uuid;
use crate::job::entry::{
    Charge, Consent, Decided, DialSetup, Due, DueKind, Ended, Ending, Event, How, Inputs, Moved,
    Part, Reading, RunoutReading, Scope, Setup, Side, VehicleField,
};
use crate::job::manual_item::Also;
use crate::job::mishap::Mishap;
use crate::job::slip::Slip;
use crate::trade::day::day_of;
use crate::trade::fastening::{
    Condition, MishapKind, Pattern, Position, Printed, PropertyClass, Spec, SpecBody, SpecItem,
    SpecSource, Thread, TorqueBody,
};
use crate::trade::play::{Decision, Dial, DialKind, Method, Place, Rig, Way};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Item, ItemKind, ItemState, SetName, StepKey, When};
use crate::units::double;
use crate::units::{Decimal, Force, ForceUnit, Length, LengthUnit};
use crate::word::Word;

/// The paper of its lines; `None` unless they are written just so.
pub fn read(body: &str) -> Option<Paper> {
    let mut reader = Reader::default();
    for line in body.split('\n') {
        reader.line(line)?;
    }
    let paper = Paper {
        plate: reader.plate,
        slip: Slip {
            job: reader.job?,
            digest: reader.digest,
            facts: reader.facts,
        },
    };
    (write(&paper) == body).then_some(paper)
}

#[derive(Default)]
struct Reader {
    job: Option<String>,
    digest: String,
    plate: Option<String>,
    sources: Vec<SpecSource>,
    dials: Vec<Dial>,
    facts: Vec<Event>,
}

/// The fields of a line; those that were left out are empty.
struct Fields<'a>(Vec<&'a str>);

impl<'a> Fields<'a> {
    fn raw(&self, place: usize) -> &'a str {
        self.0.get(place).copied().unwrap_or_default()
    }

    fn text(&self, place: usize) -> Option<String> {
        text(self.raw(place))
    }

    fn word<W: Word>(&self, place: usize) -> Option<W> {
        W::of_code(self.raw(place))
    }

    /// `Some(None)` for an empty field, `None` for one that says nothing known.
    #[allow(clippy::option_option)]
    fn maybe<T>(&self, place: usize, read: impl FnOnce(&'a str) -> Option<T>) -> Option<Option<T>> {
        match self.raw(place) {
            "" => Some(None),
            field => read(field).map(Some),
        }
    }

    /// A text that may be empty and still be there.
    #[allow(clippy::option_option)]
    fn reason(&self, place: usize) -> Option<Option<String>> {
        self.maybe(place, |field| text(field.strip_prefix('!')?))
    }

    fn list<T>(&self, place: usize, read: impl Fn(&'a str) -> Option<T>) -> Option<Vec<T>> {
        match self.raw(place) {
            "" => Some(Vec::new()),
            field => field.split(';').map(read).collect(),
        }
    }

    fn item(&self, corner: usize, item: usize) -> Option<Item> {
        named(self.word(corner)?, self.raw(item))
    }

    fn way(&self, from: usize) -> Option<Way> {
        let newtons = |field: &str| Force::new(double(field)?, ForceUnit::Newton).ok();
        Some(Way {
            method: self.word::<Method>(from)?,
            place: self.word::<Place>(from + 1)?,
            rig: self.maybe(from + 2, Rig::from_code)?,
            force: self.maybe(from + 3, newtons)?,
        })
    }
}

fn named(corner: Corner, name: &str) -> Option<Item> {
    let (group, number) = name.split_once('.')?;
    Some(Item {
        corner,
        group: ItemKind::from_code(group)?,
        number: number.parse().ok()?,
    })
}

impl Reader {
    fn line(&mut self, line: &str) -> Option<()> {
        let mut fields = line.split('|');
        let kind = fields.next()?;
        let fields = Fields(fields.collect());
        match kind {
            "J" => {
                self.job = fields.text(0).filter(|id| is_uuid(id));
                self.digest = fields.text(1)?;
            }
            "N" => self.plate = Some(fields.text(0)?),
            "S" => self.sources.push(source(&fields)?),
            "G" => self.dials.push(dial(&fields)?),
            "V" => self.vehicle(&fields)?,
            "R" => self.readings(&fields)?,
            "O" => self.run(&fields)?,
            "C" | "L" | "X" => {
                let spec = self.spec(kind, &fields)?;
                self.facts.push(Event::Spec(spec));
            }
            kind => self.facts.push(fact(kind, &fields)?),
        }
        Some(())
    }

    fn vehicle(&mut self, fields: &Fields) -> Option<()> {
        for pair in (0..fields.0.len()).step_by(2) {
            let field = fields.word::<VehicleField>(pair)?;
            let text = fields.text(pair + 1).filter(|text| field.knows(text))?;
            self.facts.push(Event::Vehicle(field, text));
        }
        Some(())
    }

    fn spec(&self, kind: &str, fields: &Fields) -> Option<Spec> {
        let body = match kind {
            "X" => SpecBody::NotFound {
                reason: fields.text(1)?,
            },
            "L" => SpecBody::Play {
                most: typed(fields.raw(3))?,
                least: match fields.raw(8) {
                    "" => None,
                    least => Some(typed(least)?),
                },
                way: fields.way(4)?,
                source: self.source(fields)?,
            },
            _ => SpecBody::Torque(self.torque(fields)?),
        };
        Some(Spec {
            item: fields.word::<SpecItem>(0)?,
            body,
        })
    }

    fn torque(&self, fields: &Fields) -> Option<TorqueBody> {
        let thread = |field| Thread::parse(&text(field)?).ok();
        Some(TorqueBody {
            stages: fields.list(3, read_stage)?,
            position: fields.maybe(4, Position::from_code)?,
            conditions: fields.list(5, Condition::from_code)?,
            printed: Printed {
                count: fields.maybe(6, |field| field.parse().ok())?,
                thread: fields.maybe(7, thread)?,
                class: fields.maybe(8, PropertyClass::from_code)?,
                pattern: fields.maybe(9, Pattern::from_code)?,
                threadlocker: fields.reason(10)?,
            },
            source: self.source(fields)?,
        })
    }

    fn source(&self, fields: &Fields) -> Option<SpecSource> {
        let place = fields.raw(1).parse::<usize>().ok()?.checked_sub(1)?;
        Some(SpecSource {
            page: fields.text(2)?,
            ..self.sources.get(place)?.clone()
        })
    }

    fn readings(&mut self, fields: &Fields) -> Option<()> {
        let place = fields.raw(3).parse::<usize>().ok()?.checked_sub(1)?;
        let set = SetName {
            when: fields.word::<When>(1)?,
            nth: fields.raw(2).parse().ok()?,
        };
        let common = Reading {
            corner: fields.word(0)?,
            set,
            round: 0,
            side: Side::Push,
            divisions: Decimal::parse("0").ok()?,
            turns: None,
            dial: *self.dials.get(place)?,
        };
        if fields.0.get(4..8)?.iter().any(|field| !field.is_empty()) {
            self.dial_setup(DialSetup {
                corner: common.corner,
                set,
                way: fields.way(4)?,
            });
        }
        for round in fields.0.get(8..)? {
            self.facts.extend(sides(&common, round)?);
        }
        Some(())
    }

    /// The setups of a slip stand before its readings; the lines of one set name it once each.
    fn dial_setup(&mut self, setup: DialSetup) {
        let what = Event::DialSetup(setup);
        if self.facts.contains(&what) {
            return;
        }
        let is_reading = |what: &Event| matches!(what, Event::Reading(_));
        let place = self.facts.iter().position(is_reading);
        self.facts.insert(place.unwrap_or(self.facts.len()), what);
    }

    fn run(&mut self, fields: &Fields) -> Option<()> {
        let dial = fields.raw(6).parse::<usize>().ok()?.checked_sub(1)?;
        let common = RunoutReading {
            corner: fields.word(0)?,
            run: fields.raw(1).parse().ok()?,
            setup: Setup {
                surface: fields.word(2)?,
                places: fields.raw(3).parse().ok()?,
                stud: fields.raw(4).parse().ok()?,
                cleaned: fields.word(5)?,
            },
            place: 0,
            angle: None,
            radius: fields.maybe(7, typed)?,
            divisions: None,
            turns: None,
            dial: *self.dials.get(dial)?,
            left_out: None,
        };
        for field in fields.0.get(8..)? {
            let place = round::read_place(&common, field)?;
            self.facts.push(Event::Runout(place));
        }
        Some(())
    }
}

/// One or both sides of a round.
fn sides(common: &Reading, field: &str) -> Option<Vec<Event>> {
    let (round, rest) = field.split_once('=')?;
    let round = round.parse().ok()?;
    let (push, pull) = match rest.split_once('>') {
        Some((push, pull)) => (push, pull),
        None => ("", rest),
    };
    let (pull, turns) = match pull.split_once('#') {
        Some((pull, turns)) => (pull, Some(turns.parse().ok()?)),
        None => (pull, None),
    };
    let mut sides = Vec::new();
    for (side, place, turns) in [(Side::Push, push, None), (Side::Pull, pull, turns)] {
        if !place.is_empty() {
            sides.push(Event::Reading(Reading {
                round,
                side,
                divisions: Decimal::parse(place).ok()?,
                turns,
                ..common.clone()
            }));
        }
    }
    Some(sides)
}

fn source(fields: &Fields) -> Option<SpecSource> {
    Some(SpecSource {
        document: fields.text(0)?,
        page: String::new(),
        looked_up: day_of(fields.raw(1))?,
        who: fields.text(2)?,
        override_reason: fields.reason(3)?,
    })
}

fn dial(fields: &Fields) -> Option<Dial> {
    let graduation = Length::new(double(fields.raw(0))?, LengthUnit::Millimetre).ok()?;
    let turn = fields.raw(1).parse().ok()?;
    Dial::new(graduation, turn, fields.word::<DialKind>(2)?).ok()
}

/// The facts that need nothing said before them.
fn fact(kind: &str, fields: &Fields) -> Option<Event> {
    Some(match kind {
        "K" => {
            let corners = fields.0.iter().map(|code| Corner::from_code(code));
            Event::Corners(corners.collect::<Option<_>>()?)
        }
        "M" => moved(fields)?,
        "A" => Event::Also(Also {
            item: fields.item(0, 1)?,
            name: fields.text(2)?,
            spec: match fields.raw(3) {
                "" => None,
                torque => Some((typed(torque)?, fields.text(4)?)),
            },
        }),
        "B" => Event::Mishap(Mishap {
            step: StepKey::from_code(fields.raw(0))?,
            item: fields.item(1, 2)?,
            kind: fields.word::<MishapKind>(3)?,
            part: fields.text(4)?,
            minutes: fields.raw(5).parse().ok()?,
        }),
        "D" => Event::Decided(Decided {
            corner: fields.word(0)?,
            nth: fields.raw(1).parse().ok()?,
            decision: fields.word::<Decision>(2)?,
            again: fields.raw(3) == "again",
            reasons: fields.list(5, text)?,
            rules: fields.raw(4).parse().ok()?,
            inputs: Inputs::none(),
        }),
        "Y" => Event::Consent(Consent {
            step: StepKey::from_code(fields.raw(0))?,
            scope: Scope::Repair,
            yes: fields.raw(1) == "yes",
            how: fields.word::<How>(2)?,
            amount: None,
        }),
        "P" => Event::Part(Part {
            corner: fields.word(0)?,
            number: fields.text(1)?,
            lot: fields.text(2)?,
        }),
        "T" => Event::Due(Due {
            kind: fields.word::<DueKind>(0)?,
            date: fields.text(1)?,
            distance: fields.maybe(2, typed)?,
        }),
        "E" => Event::Ended(Ended {
            ending: fields.word::<Ending>(0)?,
            charge: fields.maybe(1, Charge::from_code)?,
        }),
        _ => return None,
    })
}

fn moved(fields: &Fields) -> Option<Event> {
    let corner = fields.word::<Corner>(2)?;
    Some(Event::Moved(Moved {
        step: StepKey::from_code(fields.raw(0))?,
        to: fields.word::<ItemState>(1)?,
        items: fields.list(3, |name| named(corner, name))?,
        wrench: None,
    }))
}
