//! Entries of every kind: one of each, and any at all.

#[path = "every_bench.rs"]
mod bench;
#[path = "every_decided.rs"]
mod decisions;
#[path = "every_flow.rs"]
mod flow;
#[path = "every_found.rs"]
mod found;
#[path = "every_kit.rs"]
mod kit;
#[path = "every_slip.rs"]
mod slips;

use bench::{benched, runout};
use chrono::{Days, NaiveDate};
use decisions::{inputs, proved};
use flow::sent;
use found::found;
use hubslate::job::angled::AngleBy;
use hubslate::job::caption::CaptionWord;
use hubslate::job::entry::{
    Caption, Captioned, Carried, Charge, Confirmation, Consent, DayTime, Decided, DialSetup,
    Discount, Due, DueKind, Ended, Ending, Entry, EntryId, Event, Gauging, HandedOver, Held, How,
    Inputs, KitItem, LogId, Money, Moved, Opened, Paid, PaidHow, Part, PersonField, Photo, Price,
    Quantity, Reading, Remark, Reply, RunoutReading, RunoutSpec, Scope, Setup, Shop, ShopRetorque,
    Side, Signed, Slot, Stock, ThicknessReading, ThicknessSpec, Timestamp, VehicleField, Voice,
};
use hubslate::job::interruption::{Interrupted, Interruption};
use hubslate::job::kit::{MoreKit, Stand};
use hubslate::job::manual_item::Also;
use hubslate::job::mishap::Mishap;
use hubslate::job::reason;
use hubslate::job::slip::Slip;
use hubslate::trade::answer::Answer;
use hubslate::trade::damage::{CameBackFor, Finding, Inspected, PartReading};
use hubslate::trade::diagnosis::{Clue, Complaint};
use hubslate::trade::fastening::{
    Condition, MishapKind, Pattern, Position, Printed, PropertyClass, Spec, SpecBody, SpecItem,
    SpecSource, Stage, Thread, TorqueBody, TypedLever, Upkeep, Wrench,
};
use hubslate::trade::money::{
    Billed, BilledFor, BilledLine, Estimate, Invoice, Line, LineKind, TaxRounding, TaxRule, TaxSum,
};
use hubslate::trade::play::{Decision, Dial, DialKind, Felt, Method, Place, Rig, Way};
use hubslate::trade::runout::{Bound, LeftOut, Micrometer, Surface};
use hubslate::trade::vehicle::{Axle, Corner};
use hubslate::trade::wheel_end::{
    Check, Choice, Item, ItemKind, ItemState, Kind, NotDoneReason, SetName, Start, Step, StepKey,
    When,
};
use hubslate::units::{
    AngleUnit, Decimal, DistanceUnit, Force, ForceUnit, Length, LengthUnit, MassUnit,
    TemperatureUnit, Torque, TorqueUnit, Typed,
};
use kit::{carried, source, spec};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;
use slips::slip;

/// Some words of every fact of the vehicle that picks its steps.
const KNOWN: [(VehicleField, &[&str]); 6] = [
    (
        VehicleField::Kind,
        &["bolted_driven", "tapered", "pressed", ""],
    ),
    (VehicleField::Brake, &["disc", "drum", "none", ""]),
    (VehicleField::Sensor, &["active", "none", "not_known"]),
    (VehicleField::Encoder, &["ring", "magnetic"]),
    (VehicleField::NutLock, &["cotter", "lock_nut"]),
    (
        VehicleField::Pressing,
        &["knuckle_off", "on_car", "not_known"],
    ),
];

/// A fact of the vehicle. What picks the steps is a word of its set; anything else is no known fact.
pub fn fact() -> impl Strategy<Value = (VehicleField, String)> {
    (select(VehicleField::ALL), text(), any::<u8>()).prop_map(|(field, text, n)| {
        let known = KNOWN.iter().find(|(of, _)| *of == field);
        let word = |(_, all): &(VehicleField, &[&str])| all[usize::from(n) % all.len()].to_owned();
        (field, known.map_or(text, word))
    })
}

/// Any digits that a person can type, with either separator and any sign.
pub fn typed_text() -> impl Strategy<Value = String> {
    let sign = select(&["", "-", "+", "\u{2212}"][..]);
    let point = select(&[".", ","][..]);
    (
        sign,
        0_u32..100_000,
        option::of((point, 0_u32..1000, 1_usize..4)),
    )
        .prop_map(|(sign, whole, rest)| match rest {
            None => format!("{sign}{whole}"),
            Some((point, part, width)) => format!("{sign}{whole}{point}{part:0width$}"),
        })
}

pub fn typed<U: Copy + core::fmt::Debug + 'static>(
    units: &'static [U],
) -> impl Strategy<Value = Typed<U>> {
    (typed_text(), select(units)).prop_map(|(text, unit)| Typed::parse(&text, unit).unwrap())
}

fn text() -> impl Strategy<Value = String> {
    any::<String>()
}

fn hex() -> impl Strategy<Value = String> {
    any::<[u8; 32]>().prop_map(|bytes| bytes.iter().map(|byte| format!("{byte:02x}")).collect())
}

pub fn uuid() -> impl Strategy<Value = String> {
    any::<u128>().prop_map(|bits| uuid::Uuid::from_u128(bits).to_string())
}

pub fn step() -> impl Strategy<Value = StepKey> {
    let corner = option::of(select(Corner::ALL));
    (select(Step::ALL), corner, 1_u8..=99).prop_map(|(step, corner, nth)| StepKey {
        step,
        corner,
        nth,
    })
}

fn item() -> impl Strategy<Value = Item> {
    (select(Corner::ALL), select(ItemKind::ALL), 1_u8..=10).prop_map(|(corner, group, number)| {
        Item {
            corner,
            group,
            number,
        }
    })
}

fn money() -> impl Strategy<Value = Money> {
    let currency = select(&["USD", "EUR", "JPY"][..]).prop_map(str::to_owned);
    (0_i64..100_000_000, currency).prop_map(|(minor, currency)| Money { minor, currency })
}

fn way() -> impl Strategy<Value = Way> {
    let force = (1_u32..5000).prop_map(|tenths| f64::from(tenths) / 10.0);
    let force = force.prop_map(|newtons| Force::new(newtons, ForceUnit::Newton).unwrap());
    (
        select(Method::ALL),
        select(Place::ALL),
        option::of(select(Rig::ALL)),
        option::of(force),
    )
        .prop_map(|(method, place, rig, force)| Way {
            method,
            place,
            rig,
            force,
        })
}

fn dial() -> impl Strategy<Value = Dial> {
    let any = (1_u32..1000, 10_u32..=1000, select(DialKind::ALL)).prop_map(|(um, turn, kind)| {
        let graduation = Length::new(f64::from(um), LengthUnit::Micrometre).unwrap();
        Dial::new(graduation, turn, kind).unwrap()
    });
    let common = select(&[Dial::HUNDREDTH_MM, Dial::THOU, Dial::HALF_THOU][..]);
    prop_oneof![any, common]
}

pub fn reply() -> impl Strategy<Value = Reply> {
    let number = prop_oneof![
        typed(DistanceUnit::ALL).prop_map(Quantity::Distance),
        typed(TemperatureUnit::ALL).prop_map(Quantity::Temperature),
    ];
    prop_oneof![
        Just(Reply::Done),
        select(NotDoneReason::ALL).prop_map(Reply::NotDone),
        select(Answer::ALL).prop_map(Reply::Said),
        select(Felt::ALL).prop_map(Reply::Felt),
        select(Choice::ALL).prop_map(Reply::Picked),
        number.prop_map(Reply::Number),
        any::<u8>().prop_map(Reply::FoundLoose),
        vec((select(Check::ALL), select(Answer::ALL)), 0..5).prop_map(Reply::Checked),
    ]
}

fn moved() -> impl Strategy<Value = Moved> {
    let wrench = option::of((text(), typed(TorqueUnit::ALL)));
    (step(), vec(item(), 0..6), select(ItemState::ALL), wrench).prop_map(
        |(step, items, to, wrench)| Moved {
            step,
            items,
            to,
            wrench,
        },
    )
}

fn also() -> impl Strategy<Value = Also> {
    let spec = option::of((typed(TorqueUnit::ALL), text()));
    (item(), text(), spec).prop_map(|(item, name, spec)| Also { item, name, spec })
}

fn lever() -> impl Strategy<Value = TypedLever> {
    let lengths = (typed(LengthUnit::ALL), typed(LengthUnit::ALL));
    (lengths, typed(AngleUnit::ALL)).prop_map(|((wrench, adapter), angle)| TypedLever {
        wrench,
        adapter,
        angle,
    })
}

fn mishap() -> impl Strategy<Value = Mishap> {
    let work = (text(), any::<u16>());
    (step(), item(), select(MishapKind::ALL), work).prop_map(
        |(step, item, kind, (part, minutes))| Mishap {
            step,
            item,
            kind,
            part,
            minutes,
        },
    )
}

fn set_name() -> impl Strategy<Value = SetName> {
    (select(When::ALL), 1_u8..=2).prop_map(|(when, nth)| SetName { when, nth })
}

fn reading() -> impl Strategy<Value = Reading> {
    let set = set_name();
    let at = (select(Corner::ALL), set, 1_u8..=3, select(Side::ALL));
    (at, typed_text(), option::of(-2..=2), dial()).prop_map(
        |((corner, set, round, side), divisions, turns, dial)| Reading {
            corner,
            set,
            round,
            side,
            divisions: Decimal::parse(&divisions).unwrap(),
            turns,
            dial,
        },
    )
}

fn dial_setup() -> impl Strategy<Value = DialSetup> {
    let at = (select(Corner::ALL), set_name());
    (at, way()).prop_map(|((corner, set), way)| DialSetup { corner, set, way })
}

fn decided() -> impl Strategy<Value = Decided> {
    let reasons = vec(select(reason::codes()), 0..4);
    let decision = select(Decision::ALL);
    (
        select(Corner::ALL),
        1_u8..=2,
        decision,
        any::<bool>(),
        reasons,
        1_u32..9,
    )
        .prop_map(|(corner, nth, decision, again, reasons, rules)| Decided {
            corner,
            nth,
            decision,
            again,
            reasons,
            rules,
            inputs: Inputs::none(),
        })
}

fn consent() -> impl Strategy<Value = Consent> {
    let how = (select(Scope::ALL), any::<bool>(), select(How::ALL));
    (step(), how, option::of(money())).prop_map(|(step, (scope, yes, how), amount)| Consent {
        step,
        scope,
        yes,
        how,
        amount,
    })
}

fn due() -> impl Strategy<Value = Due> {
    let distance = option::of(typed(DistanceUnit::ALL));
    (select(DueKind::ALL), 1_u32..29, distance).prop_map(|(kind, day, distance)| Due {
        kind,
        date: format!("2026-02-{day:02}"),
        distance,
    })
}

fn recorded() -> impl Strategy<Value = Event> {
    let opened = (select(Start::ALL), option::of(text()));
    prop_oneof![
        opened.prop_map(|(start, practice)| Event::Opened(Opened { start, practice })),
        (select(PersonField::ALL), text()).prop_map(|(field, text)| Event::Person(field, text)),
        hex().prop_map(Event::Erased),
        text().prop_map(Event::Said),
        fact().prop_map(|(field, text)| Event::Vehicle(field, text)),
        vec(select(Corner::ALL), 0..5).prop_map(Event::Corners),
        spec().prop_map(Event::Spec),
        vec(select(KitItem::ALL), 0..5).prop_map(Event::Missing),
        carried().prop_map(Event::Carried),
        (option::of(step()), text()).prop_map(|(step, text)| Event::Note(step, text)),
        (step(), select(Remark::ALL)).prop_map(|(step, remark)| Event::Remark(step, remark)),
        hex().prop_map(|digest| Event::HandedOver(HandedOver { digest })),
        vec(uuid().prop_map(EntryId), 0..4).prop_map(Event::Strike),
    ]
}

fn estimate() -> impl Strategy<Value = Estimate> {
    let decimal = || typed_text().prop_map(|text| Decimal::parse(&text).unwrap());
    let kind = select(LineKind::ALL);
    let own = (option::of(decimal()), option::of(select(Corner::ALL)));
    let line = (kind, text(), decimal(), any::<i64>(), any::<bool>(), own).prop_map(
        |(kind, text, quantity, each, taxed, (rate, corner))| Line {
            kind,
            text,
            quantity,
            each,
            taxed,
            rate,
            corner,
        },
    );
    let tax = (decimal(), select(TaxRounding::ALL))
        .prop_map(|(percent, rounding)| TaxRule { percent, rounding });
    (vec(line, 0..4), option::of(tax)).prop_map(|(lines, tax)| Estimate { lines, tax })
}

fn invoice() -> impl Strategy<Value = Invoice> {
    let decimal = || typed_text().prop_map(|text| Decimal::parse(&text).unwrap());
    let sums = (any::<i64>(), any::<i64>());
    let line = (
        select(LineKind::ALL),
        text(),
        decimal(),
        sums,
        option::of(decimal()),
    )
        .prop_map(|(kind, text, quantity, (each, net), percent)| BilledLine {
            kind,
            text,
            quantity,
            each,
            net,
            percent,
        });
    let tax = (decimal(), any::<i64>(), any::<i64>()).prop_map(|(percent, net, tax)| TaxSum {
        percent,
        net,
        tax,
    });
    let what = (select(BilledFor::ALL), option::of(select(Corner::ALL)));
    let part = (text(), what, text(), vec(line, 0..3), vec(tax, 0..3)).prop_map(
        |(of, (what, corner), text, lines, taxes)| Billed {
            of,
            what,
            corner,
            text,
            lines,
            taxes,
        },
    );
    (text(), option::of(text()), text(), vec(part, 0..3)).prop_map(
        |(number, credits, currency, parts)| Invoice {
            number,
            credits,
            currency,
            parts,
        },
    )
}

fn caption() -> impl Strategy<Value = Caption> {
    prop_oneof![
        Just(Caption::Step),
        select(CaptionWord::ALL).prop_map(Caption::Word),
        text().prop_map(Caption::Words),
    ]
}

fn worked() -> impl Strategy<Value = Event> {
    let ended = (select(Ending::ALL), option::of(select(Charge::ALL)));
    let part = (select(Corner::ALL), text(), text());
    prop_oneof![
        (step(), reply()).prop_map(|(step, reply)| Event::Answered(step, reply)),
        moved().prop_map(Event::Moved),
        also().prop_map(Event::Also),
        (step(), option::of(lever())).prop_map(|(step, lever)| Event::Lever(step, lever)),
        (step(), select(AngleBy::ALL)).prop_map(|(step, by)| Event::Angled(step, by)),
        mishap().prop_map(Event::Mishap),
        item().prop_map(Event::Mended),
        (step(), select(Interruption::ALL), text())
            .prop_map(|(step, why, to)| Event::Interrupted(Interrupted { step, why, to })),
        step().prop_map(Event::Pass),
        dial_setup().prop_map(Event::DialSetup),
        reading().prop_map(Event::Reading),
        (decided(), inputs())
            .prop_map(|(decided, inputs)| { Event::Decided(Decided { inputs, ..decided }) }),
        proved().prop_map(Event::Proved),
        found(),
        benched(),
        (money(), option::of(money()), option::of(estimate())).prop_map(
            |(repair, refit, estimate)| {
                Event::Price(Price {
                    repair,
                    refit,
                    estimate,
                })
            }
        ),
        invoice().prop_map(|invoice| Event::Invoice(Box::new(invoice))),
        (money(), text()).prop_map(|(amount, reason)| Event::Discount(Discount { amount, reason })),
        (select(PaidHow::ALL), money())
            .prop_map(|(how, amount)| Event::Refunded(Paid { how, amount })),
        (select(PaidHow::ALL), money()).prop_map(|(how, amount)| Event::Paid(Paid { how, amount })),
        consent().prop_map(Event::Consent),
        (step(), text()).prop_map(|(step, strokes)| Event::Signed(Signed { step, strokes })),
        (step(), hex(), 1_u32..1600, 1_u32..1600).prop_map(|(step, sha256, width, height)| {
            Event::Photo(Photo {
                step,
                sha256,
                mime: "image/jpeg".to_owned(),
                width,
                height,
            })
        }),
        (step(), hex(), 1_u8..=60).prop_map(|(step, sha256, seconds)| {
            Event::Voice(Voice {
                step,
                sha256,
                mime: "audio/webm;codecs=opus".to_owned(),
                seconds,
            })
        }),
        (hex(), caption())
            .prop_map(|(sha256, caption)| Event::Captioned(Captioned { sha256, caption })),
        part.prop_map(|(corner, number, lot)| Event::Part(Part {
            corner,
            number,
            lot
        })),
        (
            select(Corner::ALL),
            select(Inspected::ALL),
            vec(select(Finding::ALL), 0..4)
        )
            .prop_map(|(at, inspected, seen)| {
                Event::RemovedPart(at, PartReading { inspected, seen })
            }),
        select(CameBackFor::ALL).prop_map(Event::CameBackFor),
        select(Complaint::ALL).prop_map(Event::Complaint),
        (
            option::of(select(Corner::ALL)),
            select(Clue::ALL),
            select(Answer::ALL)
        )
            .prop_map(|(corner, clue, answer)| Event::Clue(corner, clue, answer)),
        (text(), any::<u16>(), any::<u16>(), any::<u16>()).prop_map(
            |(number, have, least, cores)| {
                Event::Stock(Stock {
                    number,
                    have,
                    least,
                    cores,
                })
            }
        ),
        due().prop_map(Event::Due),
        slip().prop_map(Event::FromPaper),
        ended.prop_map(|(ending, charge)| Event::Ended(Ended { ending, charge })),
    ]
}

/// Anything that can happen, of every kind that this version knows.
pub fn what() -> impl Strategy<Value = Event> {
    prop_oneof![recorded(), worked(), sent()]
}

/// An entry of the job `log` around something that happened.
pub fn entry(log: &str, id: &str, after: &[&str], what: Event) -> Entry {
    Entry {
        id: EntryId(id.to_owned()),
        log: LogId(log.to_owned()),
        at: Timestamp {
            utc_ms: 1_771_335_000_000,
            offset_min: -300,
            recorded: None,
        },
        by: "R. Okafor".to_owned(),
        device: "van-2".to_owned(),
        n: 1,
        after: after.iter().map(|id| EntryId((*id).to_owned())).collect(),
        what,
    }
}
