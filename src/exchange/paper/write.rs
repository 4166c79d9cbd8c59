//! From the facts to their lines.

use super::line::{field, line, number, stage};
use super::{Paper, round};
use crate::exchange::json::written;
use crate::job::entry::{Decided, Event, Moved, Reading, RunoutReading, Side};
use crate::trade::fastening::{Spec, SpecBody, SpecSource, TorqueBody};
use crate::trade::play::{Dial, Way};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Item, SetName};
use crate::units::ForceUnit;

/// The lines of a paper, the first of its symbols left out.
pub fn write(paper: &Paper) -> String {
    let slip = &paper.slip;
    let mut pen = Pen::default();
    pen.line('J', &[field(&slip.job), field(&slip.digest)]);
    if let Some(plate) = &paper.plate {
        pen.line('N', &[field(plate)]);
    }
    pen.vehicle(&slip.facts);
    let mut rest = slip.facts.iter().peekable();
    while let Some(what) = rest.next() {
        match what {
            Event::Reading(reading) => {
                let mut rounds = vec![reading];
                while let Some(Event::Reading(next)) = rest.peek() {
                    if frame(next) != frame(reading) {
                        break;
                    }
                    rounds.push(next);
                    rest.next();
                }
                pen.readings(&rounds, slip.dial_setup(reading.corner, reading.set));
            }
            Event::Runout(reading) => {
                let mut places = vec![reading];
                while let Some(Event::Runout(next)) = rest.peek() {
                    if round::frame(next) != round::frame(reading) {
                        break;
                    }
                    places.push(next);
                    rest.next();
                }
                pen.run(reading, &places);
            }
            what => pen.fact(what),
        }
    }
    pen.lines.join("\n")
}

/// What the rounds of one line have in common.
const fn frame(reading: &Reading) -> (Corner, SetName, Dial) {
    (reading.corner, reading.set, reading.dial)
}

#[derive(Default)]
struct Pen {
    lines: Vec<String>,
    sources: Vec<SpecSource>,
    dials: Vec<Dial>,
}

impl Pen {
    fn line(&mut self, kind: char, fields: &[String]) {
        self.lines.push(line(kind, fields));
    }

    fn vehicle(&mut self, facts: &[Event]) {
        let pairs = facts.iter().filter_map(|what| match what {
            Event::Vehicle(name, text) => Some([name.code().to_owned(), field(text)]),
            _ => None,
        });
        let fields: Vec<String> = pairs.flatten().collect();
        if !fields.is_empty() {
            self.line('V', &fields);
        }
    }

    fn fact(&mut self, what: &Event) {
        match what {
            Event::Corners(corners) => {
                let names: Vec<String> = corners.iter().map(|c| c.code().to_owned()).collect();
                self.line('K', &names);
            }
            Event::Spec(spec) => self.spec(spec),
            Event::Moved(moved) => self.moved(moved),
            Event::Also(also) => {
                let (torque, document) = match &also.spec {
                    Some((torque, document)) => (number(torque), field(document)),
                    None => Default::default(),
                };
                let [corner, item] = named(also.item);
                self.line('A', &[corner, item, field(&also.name), torque, document]);
            }
            Event::Mishap(mishap) => {
                let [corner, item] = named(mishap.item);
                let (step, kind) = (mishap.step.code(), mishap.kind.code().to_owned());
                let minutes = mishap.minutes.to_string();
                self.line(
                    'B',
                    &[step, corner, item, kind, field(&mishap.part), minutes],
                );
            }
            Event::Decided(decided) => self.decided(decided),
            Event::Consent(consent) => {
                let yes = if consent.yes { "yes" } else { "no" };
                let how = consent.how.code().to_owned();
                self.line('Y', &[consent.step.code(), yes.to_owned(), how]);
            }
            Event::Part(part) => {
                let corner = part.corner.code().to_owned();
                self.line('P', &[corner, field(&part.number), field(&part.lot)]);
            }
            Event::Due(due) => {
                let distance = due.distance.as_ref().map(number).unwrap_or_default();
                self.line(
                    'T',
                    &[due.kind.code().to_owned(), field(&due.date), distance],
                );
            }
            Event::Ended(ended) => {
                let charge = ended.charge.map(|charge| charge.code().to_owned());
                self.line(
                    'E',
                    &[ended.ending.code().to_owned(), charge.unwrap_or_default()],
                );
            }
            // Nothing else is a fact of a slip; see `job::slip::facts`.
            _ => {}
        }
    }

    fn spec(&mut self, spec: &Spec) {
        let item = spec.item.code().to_owned();
        match &spec.body {
            SpecBody::Torque(body) => {
                let source = self.source(&body.source);
                let mut fields = vec![item, source, field(&body.source.page)];
                fields.extend(torque(body));
                self.line('C', &fields);
            }
            SpecBody::Play {
                most,
                least,
                way,
                source,
            } => {
                let number_of = self.source(source);
                let mut fields = vec![item, number_of, field(&source.page), number(most)];
                fields.extend(recorded_method(way));
                fields.extend(least.as_ref().map(number));
                self.line('L', &fields);
            }
            SpecBody::NotFound { reason } => self.line('X', &[item, field(reason)]),
        }
    }

    /// The number of a source, which stands in a line of its own before the first that names it.
    fn source(&mut self, source: &SpecSource) -> String {
        let source = SpecSource {
            page: String::new(),
            ..source.clone()
        };
        if let Some(place) = self.sources.iter().position(|known| *known == source) {
            return (place + 1).to_string();
        }
        let fields = [
            field(&source.document),
            source.looked_up.to_string(),
            field(&source.who),
            source
                .override_reason
                .as_deref()
                .map(reason)
                .unwrap_or_default(),
        ];
        self.line('S', &fields);
        self.sources.push(source);
        self.sources.len().to_string()
    }

    fn moved(&mut self, moved: &Moved) {
        let Some(first) = moved.items.first() else {
            return;
        };
        let items: Vec<String> = moved.items.iter().map(|it| named(*it)[1].clone()).collect();
        let fields = [
            moved.step.code(),
            moved.to.code().to_owned(),
            first.corner.code().to_owned(),
            items.join(";"),
        ];
        self.line('M', &fields);
    }

    fn readings(&mut self, readings: &[&Reading], way: Option<&Way>) {
        let Some(first) = readings.first() else {
            return;
        };
        let mut fields = vec![
            first.corner.code().to_owned(),
            first.set.when.code().to_owned(),
            first.set.nth.to_string(),
            self.dial(&first.dial),
        ];
        fields.extend(way.map(recorded_method).unwrap_or_default());
        fields.extend(rounds(readings));
        self.line('R', &fields);
    }

    fn run(&mut self, first: &RunoutReading, places: &[&RunoutReading]) {
        let mut fields = round::head(first, self.dial(&first.dial));
        fields.extend(places.iter().map(|reading| round::place(reading)));
        self.line('O', &fields);
    }

    fn dial(&mut self, dial: &Dial) -> String {
        if let Some(place) = self.dials.iter().position(|known| known == dial) {
            return (place + 1).to_string();
        }
        let fields = [
            digits(dial.graduation().mm()),
            dial.divisions_per_turn().to_string(),
            dial.kind().code().to_owned(),
        ];
        self.line('G', &fields);
        self.dials.push(*dial);
        self.dials.len().to_string()
    }

    fn decided(&mut self, decided: &Decided) {
        let fields = [
            decided.corner.code().to_owned(),
            decided.nth.to_string(),
            decided.decision.code().to_owned(),
            if decided.again { "again" } else { "" }.to_owned(),
            decided.rules.to_string(),
            decided
                .reasons
                .iter()
                .map(|code| field(code).replace(';', "%3b"))
                .collect::<Vec<_>>()
                .join(";"),
        ];
        self.line('D', &fields);
    }
}

/// An empty reason is another thing than none.
fn reason(text: &str) -> String {
    format!("!{}", field(text))
}

fn named(item: Item) -> [String; 2] {
    let name = format!("{}.{}", item.group.code(), item.number);
    [item.corner.code().to_owned(), name]
}

fn torque(body: &TorqueBody) -> [String; 8] {
    let printed = &body.printed;
    let stages: Vec<String> = body.stages.iter().map(stage).collect();
    let conditions: Vec<&str> = body.conditions.iter().map(|it| it.code()).collect();
    let thread = printed.thread.as_ref();
    [
        stages.join(";"),
        body.position
            .map(|it| it.code().to_owned())
            .unwrap_or_default(),
        conditions.join(";"),
        printed
            .count
            .map(|count| count.to_string())
            .unwrap_or_default(),
        thread.map(|it| field(it.as_typed())).unwrap_or_default(),
        printed
            .class
            .map(|it| it.code().to_owned())
            .unwrap_or_default(),
        printed
            .pattern
            .map(|it| it.code().to_owned())
            .unwrap_or_default(),
        printed
            .threadlocker
            .as_deref()
            .map(reason)
            .unwrap_or_default(),
    ]
}

fn recorded_method(way: &Way) -> [String; 4] {
    let newtons = way
        .force
        .map(|force| digits(force.in_unit(ForceUnit::Newton)));
    [
        way.method.code().to_owned(),
        way.place.code().to_owned(),
        way.rig.map(|rig| rig.code().to_owned()).unwrap_or_default(),
        newtons.unwrap_or_default(),
    ]
}

/// The shortest digits that give the number back.
fn digits(value: f64) -> String {
    written(&value)
}

/// Each round once: `1=0>6.3`, or one side alone.
fn rounds(readings: &[&Reading]) -> Vec<String> {
    let mut rounds: Vec<(u8, String)> = Vec::new();
    for reading in readings {
        let place = reading.divisions.as_typed();
        let recorded = match reading.side {
            Side::Push => format!("{place}>"),
            Side::Pull => match reading.turns {
                Some(turns) => format!("{place}#{turns}"),
                None => place.to_owned(),
            },
        };
        match rounds.last_mut() {
            Some((round, text)) if *round == reading.round => text.push_str(&recorded),
            _ => rounds.push((reading.round, recorded)),
        }
    }
    rounds
        .iter()
        .map(|(round, text)| format!("{round}={text}"))
        .collect()
}
