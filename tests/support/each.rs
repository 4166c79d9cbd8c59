//! One job with one entry of each kind that version 1 writes, and every shape of a spec and of a
//! reply. Invented people, plates and documents.

use hubslate::exchange::entry_digest;
use hubslate::exchange::wire::encode;
use hubslate::job::angled::AngleBy;
use hubslate::job::caption::CaptionWord;
use hubslate::job::entry::{
    AgainstLimit, Caption, Captioned, Charge, Confirmation, Consent, DayTime, Decided, DialSetup,
    Discount, Due, DueKind, Ended, Ending, Entry, EntryId, Event, FaceFound, Gauging, HandedOver,
    Held, How, Inputs, KitItem, LogId, Moved, Opened, Paid, PaidHow, Part, PersonField, Photo,
    Proved, ReachFound, Reading, Remark, Reply, RotorFound, RunoutReading, RunoutSpec, Scope,
    Setup, ShapeFound, Shop, ShopRetorque, Side, Signed, Slot, Stock, Template, ThicknessReading,
    ThicknessSpec, VehicleField, Voice, WaveFound,
};
use hubslate::job::interruption::{Interrupted, Interruption};
use hubslate::job::manual_item::Also;
use hubslate::job::mishap::Mishap;
use hubslate::job::reason;
use hubslate::job::runout::Basis;
use hubslate::job::slip::Slip;
use hubslate::trade::answer::Answer;
use hubslate::trade::damage::{CameBackFor, Finding, Inspected, PartReading};
use hubslate::trade::diagnosis::{Clue, Complaint};
use hubslate::trade::fastening::{
    MishapKind, Position, Spec, SpecBody, SpecItem, SpecSource, TypedLever,
};
use hubslate::trade::money::{
    Billed, BilledFor, Invoice, Line, LineKind, TaxRounding, TaxRule, written_out,
};
use hubslate::trade::play::conformity::Judged;
use hubslate::trade::play::uncertainty::Guarded;
use hubslate::trade::play::{
    After, Against, Decision, Dial, Divisions, Evidence, Felt, IndicatorError, Limit, Measured,
    Place, ReadingSet, RigFacts, Round, StopSign, Way, decide, join,
};
use hubslate::trade::runout::{
    Bound, Form, LeftOut, Micrometer, Next, RotorNext, Surface, Undetermined,
};
use hubslate::trade::vehicle::{Axle, Corner};
use hubslate::trade::wheel_end::{
    Check, Choice, Item, ItemKind, ItemState, Kind, NotDoneReason, SetName, Start, Step, StepKey,
    When, items,
};
use hubslate::units::{
    Angle, AngleUnit, Decimal, DistanceUnit, Force, ForceUnit, Length, LengthUnit, TorqueUnit,
    Typed,
};

use crate::every::entry;
use crate::parts;

/// The job's id.
pub const LOG: &str = "019c6c21-0e76-762b-b33a-5df32f2a8d00";

const FRONT_LEFT: Corner = Corner::FrontLeft;

/// The entries, each after the one before.
pub fn entries() -> Vec<Entry> {
    let mut whats = before_the_work();
    whats.extend(at_the_corner());
    whats.extend(at_the_end());
    whats.extend(round_a_face());
    whats.extend(through_a_rotor());
    whats.extend(saved_as_bytes());
    whats.extend(between_shop_and_van());
    let id = |place: usize| format!("019c6c21-0e76-762b-b33a-{place:012x}");
    // The note is struck by the last entry.
    let note = whats
        .iter()
        .position(|what| matches!(what, Event::Note(..)));
    whats.push(Event::Strike(vec![EntryId(id(note.unwrap()))]));
    let mut entries = Vec::new();
    for (place, what) in whats.into_iter().enumerate() {
        let before: Vec<String> = place.checked_sub(1).map(id).into_iter().collect();
        let after: Vec<&str> = before.iter().map(String::as_str).collect();
        let mut made = entry(LOG, &id(place), &after, what);
        made.n = 40 + u64::try_from(place).unwrap();
        made.at.utc_ms += 95_000 * i64::try_from(place).unwrap();
        made.at.recorded = (place == 3).then_some(made.at.utc_ms - 3_600_000);
        entries.push(made);
    }
    entries
}

/// Their texts.
pub fn texts() -> Vec<String> {
    entries()
        .iter()
        .map(|entry| encode(entry).unwrap())
        .collect()
}

fn before_the_work() -> Vec<Event> {
    let erased = entry_digest("the address that stood here");
    let mut whats = vec![
        Event::Opened(Opened {
            start: Start::AtHome,
            practice: Some("quiet_front".to_owned()),
        }),
        Event::Person(PersonField::Name, "Dana Quill".to_owned()),
        Event::Erased(erased),
        Event::Said("It \"hums\" at 40 mph; the seat \u{2014} a little \u{1f527}.".to_owned()),
        Event::Vehicle(VehicleField::Studs, "5".to_owned()),
        Event::Corners(vec![FRONT_LEFT, Corner::RearRight]),
    ];
    let mut specs = parts::specs(
        "Marlin Estate service book, wheel ends (invented)",
        "R. Okafor",
        parts::day(2026, 2, 16),
        Position::OnGround,
        parts::play("2.0", LengthUnit::Thou),
    );
    specs.push(Spec {
        item: SpecItem::PlayLimit,
        body: SpecBody::NotFound {
            reason: "not in the wheel end chapter".to_owned(),
        },
    });
    whats.extend(specs.into_iter().map(Event::Spec));
    whats.push(Event::Missing(vec![
        KitItem::SpareNut,
        KitItem::PedalDepressor,
    ]));
    whats.push(Event::Carried(parts::carried(Dial::HALF_THOU)));
    let mut price = parts::price(48_600, 9_500);
    price.estimate = Some(parts::estimate());
    whats.push(Event::Price(price));
    whats
}

fn at_the_corner() -> Vec<Event> {
    let at = |step| StepKey::at(step, FRONT_LEFT);
    let once = StepKey::once;
    let answered = [
        (once(Step::Booking), Reply::Done),
        (once(Step::Drive), Reply::NotDone(NotDoneReason::NotSafe)),
        (once(Step::SignSpeed), Reply::Said(Answer::NotDone)),
        (at(Step::RockAxial), Reply::Felt(Felt::JustFelt)),
        (at(Step::RigPush).nth(2), Reply::Picked(Choice::FlexHalf)),
        (once(Step::Odometer), parts::miles("81204")),
        (once(Step::HeatHere), parts::fahrenheit("97,5")),
        (
            once(Step::SiteLook),
            Reply::Checked(vec![
                (Check::Slope, Answer::Yes),
                (Check::Traffic, Answer::NotDone),
            ]),
        ),
    ];
    let mut whats: Vec<Event> = answered
        .map(|(step, reply)| Event::Answered(step, reply))
        .into();
    let turn = at(Step::TurnLugNuts);
    whats.push(Event::Pass(turn));
    whats.push(Event::Moved(Moved {
        step: turn,
        items: items(FRONT_LEFT, ItemKind::LugNuts, 2),
        to: ItemState::Done,
        wrench: Some((
            "half inch".to_owned(),
            Typed::parse("120", TorqueUnit::NewtonMetre).unwrap(),
        )),
    }));
    let fourth = Item {
        corner: FRONT_LEFT,
        group: ItemKind::LugNuts,
        number: 4,
    };
    let millimetres = |text| Typed::parse(text, LengthUnit::Millimetre).unwrap();
    whats.extend([
        Event::Also(Also {
            item: Item {
                corner: FRONT_LEFT,
                group: ItemKind::Other,
                number: 1,
            },
            name: "brake hose bracket".to_owned(),
            spec: Some((
                Typed::parse("25", TorqueUnit::NewtonMetre).unwrap(),
                "Marlin Estate service book, BR-9 (invented)".to_owned(),
            )),
        }),
        Event::Lever(
            turn,
            Some(TypedLever {
                wrench: millimetres("420"),
                adapter: millimetres("60"),
                angle: Typed::parse("0", AngleUnit::Degree).unwrap(),
            }),
        ),
        Event::Mishap(Mishap {
            step: turn,
            item: fourth,
            kind: MishapKind::Sheared,
            part: "wheel stud, nut".to_owned(),
            minutes: 40,
        }),
        Event::Mended(fourth),
        Event::Interrupted(Interrupted {
            step: turn,
            why: Interruption::Rain,
            to: "T. Second".to_owned(),
        }),
        Event::Answered(once(Step::RetorqueDone), Reply::FoundLoose(1)),
    ]);
    let set = SetName {
        when: When::Before,
        nth: 1,
    };
    whats.push(Event::DialSetup(DialSetup {
        corner: FRONT_LEFT,
        set,
        way: Way {
            force: Some(Force::new(98.1, ForceUnit::Newton).unwrap()),
            ..Way::DEFAULT
        },
    }));
    whats.push(Event::Reading(Reading {
        corner: FRONT_LEFT,
        set,
        round: 1,
        side: Side::Pull,
        divisions: Decimal::parse("6.30").unwrap(),
        turns: None,
        dial: Dial::THOU,
    }));
    let reasons = ["over_proven", "must_not_drive.knocks"].map(str::to_owned);
    assert!(
        reasons
            .iter()
            .all(|reason| reason::codes().contains(reason))
    );
    whats.push(Event::Decided(Decided {
        corner: FRONT_LEFT,
        nth: 1,
        decision: Decision::Stop,
        again: false,
        reasons: reasons.to_vec(),
        rules: 1,
        inputs: rested_on(),
    }));
    let outcome = After::Blocked {
        against: vec![Against::Over, Against::Noisy],
    };
    let [set, _] = taken();
    let spun = (Answer::No, Answer::Yes);
    whats.push(Event::Proved(Proved::today(
        FRONT_LEFT,
        Some(set.figures()),
        spun,
        outcome,
    )));
    whats.push(Event::Part(Part {
        corner: FRONT_LEFT,
        number: "MX-4410-H".to_owned(),
        lot: String::new(),
    }));
    whats
}

/// Two sets that scatter.
fn taken() -> [Measured; 2] {
    let rig = RigFacts {
        indicator: IndicatorError::OneDivision,
        flex: Dial::HUNDREDTH_MM.graduation(),
        temperature: None,
    };
    [[5.0, 7.0, 9.0], [6.0, 8.0, 10.0]].map(|pulls| {
        let round = |pull| Round::zeroed(Divisions::new(pull).unwrap());
        let rounds = pulls.map(round);
        let set = ReadingSet::read(Dial::HUNDREDTH_MM, Way::DEFAULT, &rounds, vec![]);
        Measured::of(set.unwrap(), &rig, None, &Limit::HOUSE)
    })
}

/// The two, and both together.
fn rested_on() -> Box<Inputs> {
    let sets = taken();
    let evidence = Evidence {
        felt: Some(Felt::Knocks),
        stop_signs: vec![StopSign::GrindingWithHeat],
        ..Evidence::nothing()
    };
    let figures = (1..).zip(sets.iter().map(Measured::figures));
    Inputs::of(figures, join(&sets), evidence.clone(), &decide(&evidence))
}

/// A place that was read, one that was skipped, and the limit.
fn round_a_face() -> Vec<Event> {
    let setup = Setup {
        surface: Surface::Rotor,
        places: 8,
        stud: 3,
        cleaned: Answer::Yes,
    };
    let read = RunoutReading {
        corner: FRONT_LEFT,
        run: 1,
        setup,
        place: 2,
        angle: Some(Typed::parse("47.5", AngleUnit::Degree).unwrap()),
        radius: Some(Typed::parse("130", LengthUnit::Millimetre).unwrap()),
        divisions: Some(Decimal::parse("\u{2212}2.50").unwrap()),
        turns: Some(-1),
        dial: Dial::THOU,
        left_out: Some(LeftOut::StudHole),
    };
    let skipped = RunoutReading {
        place: 3,
        angle: None,
        radius: None,
        divisions: None,
        turns: None,
        left_out: None,
        ..read.clone()
    };
    let spec = RunoutSpec {
        surface: Surface::Rotor,
        most: Typed::parse("0.05", LengthUnit::Millimetre).unwrap(),
        source: SpecSource {
            document: "Marlin Estate service book, brakes (invented)".to_owned(),
            page: "4-12".to_owned(),
            looked_up: parts::day(2026, 2, 16),
            who: "R. Okafor".to_owned(),
            override_reason: None,
        },
    };
    vec![
        Event::Runout(read),
        Event::Runout(skipped),
        Event::RunoutLimit(spec.clone()),
        Event::FaceFound(Box::new(said_of_a_face(&spec))),
        Event::RemovedPart(FRONT_LEFT, PartReading::new(Inspected::Closed)),
        Event::RemovedPart(
            FRONT_LEFT,
            PartReading::new(Inspected::CutOpen).turned(Finding::Flaked),
        ),
        Event::CameBackFor(CameBackFor::Fitting),
        Event::Complaint(Complaint::Hum),
        Event::Clue(Some(Corner::FrontLeft), Clue::LoudestHub, Answer::Yes),
        Event::Stock(Stock {
            number: "MX-4410-H".to_owned(),
            have: 2,
            least: 1,
            cores: 0,
        }),
    ]
}

fn um(um: f64) -> Length {
    Length::new(um / 1000.0, LengthUnit::Millimetre).unwrap()
}

fn reach(estimate: f64) -> ReachFound {
    ReachFound {
        read: um(estimate + 1.5),
        u: um(4.25),
        scatter: um(3.125),
        dof: Some(6.5),
        estimate: um(estimate),
        low: um(estimate - 20.0),
        high: um(estimate + 20.0),
    }
}

/// A wobble over its limit, with two positions of the rotor.
fn said_of_a_face(spec: &RunoutSpec) -> FaceFound {
    let degrees = |degrees| Some(Angle::new(degrees, AngleUnit::Degree).unwrap());
    let wave = |reach| WaveFound {
        reach: um(reach),
        u: um(2.5),
    };
    FaceFound {
        corner: FRONT_LEFT,
        run: 1,
        rules: 1,
        surface: Surface::Rotor,
        tir: um(90.0),
        closure: Some(um(10.0)),
        shape: Ok(ShapeFound {
            form: Form::Wobble,
            mean: um(-12.5),
            wobble: wave(81.5),
            warp: Some(wave(12.25)),
            rms: um(2.75),
            stands_out: Some(um(33.0)),
            high_spot: degrees(47.5),
            sure_to: degrees(8.125),
        }),
        reach: Some(reach(80.0)),
        against: Some(AgainstLimit {
            spec: spec.clone(),
            judged: Some(Judged {
                result: Guarded::ProvenOut,
                conformance: 0.000_25,
            }),
        }),
        positions: Some((
            Basis::TwoPositions,
            vec![(4, reach(20.5)), (0, reach(95.25))],
        )),
        next: Next::Index,
    }
}

/// A rotor that is thick enough, at places that do not tell how much it varies.
fn said_of_a_rotor(least: &ThicknessSpec, variation: &ThicknessSpec) -> RotorFound {
    RotorFound {
        corner: FRONT_LEFT,
        run: 1,
        rules: 1,
        thinnest: um(22_010.0),
        place: 3,
        u: um(3.5),
        guard_band: um(5.75),
        thickest: um(22_030.0),
        varies: Err(Undetermined::NoSpare { more: 1 }),
        least: Some(AgainstLimit {
            spec: least.clone(),
            judged: Some(Judged {
                result: Guarded::ProvenIn,
                conformance: 0.999_75,
            }),
        }),
        variation: Some(AgainstLimit {
            spec: variation.clone(),
            judged: None,
        }),
        next: RotorNext::MeasureAgain,
    }
}

/// A place of a rotor that was measured, one that was skipped, both limits; and where tips stood.
fn through_a_rotor() -> Vec<Event> {
    let measured = ThicknessReading {
        corner: FRONT_LEFT,
        run: 1,
        gauging: Gauging {
            micrometer: Micrometer::ThousandthMm,
            places: 8,
        },
        place: 2,
        thickness: Some(Typed::parse("22.010", LengthUnit::Millimetre).unwrap()),
    };
    let skipped = ThicknessReading {
        place: 3,
        thickness: None,
        ..measured.clone()
    };
    let limit = |bound, value: &str| ThicknessSpec {
        axle: Axle::Front,
        bound,
        value: Typed::parse(value, LengthUnit::Millimetre).unwrap(),
        source: SpecSource {
            document: "Marlin Estate service book, brakes (invented)".to_owned(),
            page: "4-14".to_owned(),
            looked_up: parts::day(2026, 2, 16),
            who: "R. Okafor".to_owned(),
            override_reason: None,
        },
    };
    let (least, variation) = (
        limit(Bound::Least, "20.4"),
        limit(Bound::Variation, "0.015"),
    );
    let said = said_of_a_rotor(&least, &variation);
    let slant = Typed::parse("12.5", AngleUnit::Degree).unwrap();
    let first = SetName {
        when: When::Before,
        nth: 1,
    };
    let radius = Typed::parse("135", LengthUnit::Millimetre).unwrap();
    vec![
        Event::Thickness(measured),
        Event::Thickness(skipped),
        Event::ThicknessLimit(least),
        Event::ThicknessLimit(variation),
        Event::RotorFound(Box::new(said)),
        Event::TipRadius(Place::RotorFace, radius),
        Event::TipAngle(FRONT_LEFT, first, slant),
        Event::Crept(FRONT_LEFT, first, Decimal::parse("1.5").unwrap()),
    ]
}

fn saved_as_bytes() -> Vec<Event> {
    let said = |caption| {
        Event::Captioned(Captioned {
            sha256: entry_digest("a picture"),
            caption,
        })
    };
    vec![
        Event::Voice(Voice {
            step: StepKey::at(Step::SpinHand, FRONT_LEFT),
            sha256: entry_digest("a voice"),
            mime: "audio/webm;codecs=opus".to_owned(),
            seconds: 7,
        }),
        said(Caption::Word(CaptionWord::StandAndGround)),
        said(Caption::Words("Stand on the tarred strip".to_owned())),
        said(Caption::Step),
    ]
}

/// What the shop says to a van; each kind once, the shop's settings with all that can be set.
pub fn between_shop_and_van() -> Vec<Event> {
    let line = Line {
        kind: LineKind::Labour,
        text: "Hub bearing, one corner".to_owned(),
        quantity: Decimal::parse("1.5").unwrap(),
        each: 9_500,
        taxed: true,
        rate: Some(Decimal::parse("5.5").unwrap()),
        corner: Some(FRONT_LEFT),
    };
    let shop = Shop {
        id: Some("019c6c21-0e76-762b-b33a-0000000000aa".to_owned()),
        name: "Driveway Hubs (invented)".to_owned(),
        contact: "555 0100".to_owned(),
        currency: "USD".to_owned(),
        tax: Some(TaxRule {
            percent: Decimal::parse("8.25").unwrap(),
            rounding: TaxRounding::Line,
        }),
        labour: Some(9_500),
        warranty: "Parts and labour for 12 months.".to_owned(),
        share: Some((25, 90)),
        retorque: Some(ShopRetorque {
            after: Typed::parse("60", DistanceUnit::Mile).unwrap(),
            days: 4,
        }),
        keep_days: Some(30),
        templates: vec![Template {
            kind: Kind::BoltedDriven,
            lines: vec![line],
        }],
    };
    let held = Held {
        log: LogId(LOG.to_owned()),
        device: "van-2".to_owned(),
        through: 61,
        count: 22,
        digest: entry_digest("what is held"),
    };
    vec![
        Event::Slot(Slot {
            day: parts::day(2026, 2, 17),
            time: DayTime::parse("09:30"),
            van: "N".to_owned(),
        }),
        Event::Shop(Box::new(shop)),
        Event::Confirmation(Confirmation { held: vec![held] }),
        Event::LetGo(entry_digest("the number that stood here")),
        Event::Angled(StepKey::at(Step::TurnAxleNut, FRONT_LEFT), AngleBy::Gauge),
    ]
}

fn at_the_end() -> Vec<Event> {
    let agree = StepKey::at(Step::Agree, FRONT_LEFT);
    vec![
        Event::Consent(Consent {
            step: agree,
            scope: Scope::Repair,
            yes: true,
            how: How::Written,
            amount: Some(parts::price(48_600, 9_500).repair),
        }),
        Event::Signed(Signed {
            step: agree,
            strokes: "M24 84C40 30 62 30 66 78".to_owned(),
        }),
        Event::Photo(Photo {
            step: StepKey::at(Step::StandPhoto, FRONT_LEFT),
            sha256: entry_digest("a picture"),
            mime: "image/jpeg".to_owned(),
            width: 1600,
            height: 1200,
        }),
        Event::Note(Some(agree), "line one\nline two".to_owned()),
        Event::Remark(agree, Remark::RefusedToSign),
        Event::Due(Due {
            kind: DueKind::Retorque,
            date: "2026-02-22".to_owned(),
            distance: Some(Typed::parse("50", DistanceUnit::Mile).unwrap()),
        }),
        Event::FromPaper(Slip {
            job: LOG.to_owned(),
            digest: entry_digest("what was printed"),
            facts: vec![
                Event::Vehicle(VehicleField::Studs, "5".to_owned()),
                Event::Corners(vec![FRONT_LEFT]),
                Event::Part(Part {
                    corner: FRONT_LEFT,
                    number: "MX-4410-H (invented)".to_owned(),
                    lot: "lot 25|48".to_owned(),
                }),
            ],
        }),
        Event::Invoice(Box::new(invoice())),
        Event::Discount(Discount {
            amount: parts::price(1_000, 0).repair,
            reason: "waited an hour".to_owned(),
        }),
        Event::Refunded(Paid {
            how: PaidHow::Cash,
            amount: parts::price(600, 0).repair,
        }),
        Event::Paid(Paid {
            how: PaidHow::Transfer,
            amount: parts::price(48_600, 9_500).repair,
        }),
        Event::HandedOver(HandedOver {
            digest: entry_digest("what was handed over"),
        }),
        Event::Ended(Ended {
            ending: Ending::LeftUnfinished,
            charge: Some(Charge::Towed),
        }),
    ]
}

/// A credit note with all that one can have.
fn invoice() -> Invoice {
    let (lines, taxes) = written_out(&parts::estimate()).unwrap();
    let part = Billed {
        of: "019c6c21-0e76-762b-b33a-000000000001".to_owned(),
        what: BilledFor::Repair,
        corner: Some(FRONT_LEFT),
        text: "hub".to_owned(),
        lines,
        taxes,
    };
    Invoice {
        number: "N0043".to_owned(),
        credits: Some("N0042".to_owned()),
        currency: "USD".to_owned(),
        parts: vec![part.reversed()],
    }
}
