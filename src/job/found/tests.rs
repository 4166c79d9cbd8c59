//! Which results are to be recorded, and how long a recorded one stands.
use super::*;
use crate::job::entry::{
    Carried, Ended, Ending, Entry, EntryId, Gauging, HandedOver, Moved, Reply, RunoutReading,
    RunoutSpec, Setup, ThicknessReading, ThicknessSpec,
};
use crate::job::fold;
use crate::job::kit::MoreKit;
use crate::job::proof::with_records;
use crate::job::recorded::sheet;
use crate::job::runout::runs;
use crate::job::slip::Slip;
use crate::job::thickness::measurements;
use crate::trade::answer::Answer;
use crate::trade::fastening::SpecSource;
use crate::trade::play::Dial;
use crate::trade::runout::rules::RUNOUT_RULES_VERSION;
use crate::trade::runout::{Bound, Micrometer};
use crate::trade::vehicle::Axle;
use crate::trade::wheel_end::{Choice, Item, ItemState, Step, StepKey};
use crate::units::{Decimal, Length, LengthUnit, Typed};

const HERE: Corner = Corner::FrontLeft;
const PLACES: u8 = 8;
const NEEDLES: [&str; 8] = ["0", "3", "5", "3", "0", "97", "95", "97"];

fn place(run: u8, surface: Surface, place: u8, needle: &str) -> Event {
    Event::Runout(RunoutReading {
        corner: HERE,
        run,
        setup: Setup {
            surface,
            places: PLACES,
            stud: run,
            cleaned: Answer::Yes,
        },
        place,
        angle: None,
        radius: None,
        divisions: Some(Decimal::parse(needle).unwrap()),
        turns: None,
        dial: Dial::HUNDREDTH_MM,
        left_out: None,
    })
}

fn run(nth: u8, surface: Surface) -> Vec<Event> {
    let needles = (1..).zip(NEEDLES);
    needles
        .map(|(at, needle)| place(nth, surface, at, needle))
        .collect()
}

fn measured(place: u8, text: &str) -> Event {
    Event::Thickness(ThicknessReading {
        corner: HERE,
        run: 1,
        gauging: Gauging {
            micrometer: Micrometer::HundredthMm,
            places: PLACES,
        },
        place,
        thickness: Some(Typed::parse(text, LengthUnit::Millimetre).unwrap()),
    })
}

fn source() -> SpecSource {
    SpecSource {
        document: "Service pages (invented)".to_owned(),
        page: "2".to_owned(),
        looked_up: chrono::NaiveDate::from_ymd_opt(2026, 2, 1).unwrap(),
        who: "R. Okafor".to_owned(),
        override_reason: None,
    }
}

fn most(surface: Surface) -> Event {
    Event::RunoutLimit(RunoutSpec {
        surface,
        most: Typed::parse("0.05", LengthUnit::Millimetre).unwrap(),
        source: source(),
    })
}

fn bound(axle: Axle, bound: Bound) -> Event {
    Event::ThicknessLimit(ThicknessSpec {
        axle,
        bound,
        value: Typed::parse("20.4", LengthUnit::Millimetre).unwrap(),
        source: source(),
    })
}

/// The hub's face, the rotor on two studs, and the rotor under the micrometer.
fn recorded() -> Vec<Event> {
    let runs = [
        run(1, Surface::HubFace),
        run(2, Surface::Rotor),
        run(3, Surface::Rotor),
    ];
    let thickness = [
        "22.01", "22.02", "22.00", "22.01", "22.03", "22.00", "22.02", "22.01",
    ];
    let studs = Event::Vehicle(VehicleField::Studs, "5".to_owned());
    let rotor = (1..).zip(thickness).map(|(at, text)| measured(at, text));
    let first = [Event::Corners(vec![HERE]), studs];
    first
        .into_iter()
        .chain(runs.concat())
        .chain(rotor)
        .collect()
}

/// With everything recorded: the runs in order, then the rotor.
fn saved() -> Vec<Event> {
    let mut whats = recorded();
    whats.extend(owed(&sheet(&whats)));
    whats
}

/// Which runs stand recorded, and whether the rotor does.
fn stands(sheet: &JobState) -> (Vec<u8>, bool) {
    let runs = runs(sheet, HERE);
    let runs = runs
        .iter()
        .filter(|run| face_recorded(sheet, HERE, run).is_some());
    let rotor = rotor_recorded(sheet, HERE, 1);
    (runs.map(|run| run.nth).collect(), rotor.is_some())
}

#[test]
fn every_run_and_rotor_with_a_result_is_recorded_once() {
    let whats = recorded();
    let sheet_then = sheet(&whats);
    let owed_then = owed(&sheet_then);
    let keys: Vec<_> = owed_then.iter().flat_map(crate::job::key::keys).collect();
    let faces = (1..=3).map(|nth| Key::FaceFound(HERE, nth));
    let wanted: Vec<_> = faces.chain([Key::RotorFound(HERE, 1)]).collect();
    assert_eq!(keys, wanted);
    let saved = sheet(saved());
    assert_eq!(owed(&saved), []);
    assert_eq!(stands(&saved), (vec![1, 2, 3], true));
    // One reading is no run, and three places are no rotor.
    let few = [Event::Corners(vec![HERE]), place(1, Surface::Pilot, 1, "0")];
    let three = (1..=3).map(|at| measured(at, "22.01"));
    let whats: Vec<_> = few.into_iter().chain(three).collect();
    assert_eq!(owed(&sheet(whats)), []);
}

#[test]
fn what_is_reported_or_taken_back_makes_live_what_rests_on_it_and_nothing_else() {
    let carried = Event::Carried(Carried {
        wrenches: vec![],
        dial: Dial::HUNDREDTH_MM,
        more: MoreKit::default(),
        dial_due: None,
    });
    let paper = Event::FromPaper(Slip {
        job: "an earlier visit".to_owned(),
        digest: String::new(),
        facts: vec![],
    });
    let bolt = Event::Moved(Moved {
        step: StepKey::at(Step::StripHub, HERE),
        items: vec![Item {
            corner: HERE,
            group: ItemKind::HubBolts,
            number: 1,
        }],
        to: ItemState::Off,
        wrench: None,
    });
    let strike = |what: &Event| {
        let at = recorded().iter().position(|one| one == what).unwrap();
        Event::Strike(vec![EntryId(format!("{at:04}"))])
    };
    let studs = Event::Vehicle(VehicleField::Studs, "6".to_owned());
    let vin = Event::Vehicle(VehicleField::Vin, "unknown".to_owned());
    let cases: [(Event, &[u8], bool); 16] = [
        // A rotor is measured where its runout was read.
        (place(1, Surface::HubFace, 2, "4"), &[], false),
        (place(2, Surface::Rotor, 2, "4"), &[1], false),
        (place(3, Surface::Rotor, 2, "4"), &[1, 2], false),
        (place(4, Surface::Rotor, 1, "0"), &[1, 2, 3], false),
        (strike(&place(2, Surface::Rotor, 2, "3")), &[1], false),
        (most(Surface::HubFace), &[2, 3], true),
        (most(Surface::Rotor), &[1], true),
        (most(Surface::Pilot), &[1, 2, 3], true),
        (studs, &[], true),
        (vin, &[1, 2, 3], true),
        (carried, &[], true),
        (paper, &[], false),
        (bolt, &[1], true),
        (measured(3, "21.99"), &[1, 2, 3], false),
        (bound(Axle::Front, Bound::Least), &[1, 2, 3], false),
        (bound(Axle::Rear, Bound::Least), &[1, 2, 3], true),
    ];
    for (news, faces, rotor) in cases {
        let changed = sheet([saved(), vec![news.clone()]].concat());
        let wanted = (faces.to_vec(), rotor);
        assert_eq!(stands(&changed), wanted, "{news:?}");
        let recorded = [saved(), vec![news.clone()], owed(&changed)].concat();
        assert_eq!(owed(&sheet(&recorded)), [], "{news:?}");
    }
}

#[test]
fn a_place_that_another_phone_read_beside_the_record_makes_it_live() {
    let whats = saved();
    let mut entries = sheet(&whats).entries().to_vec();
    let record = entries.last().unwrap().clone();
    assert!(matches!(record.what, Event::RotorFound(_)));
    // By its id it comes before the record, which had not seen it.
    let beside = Entry {
        id: EntryId(format!("{:04}+", whats.len() - 2)),
        what: measured(3, "19.00"),
        ..record.clone()
    };
    entries.push(beside);
    let merged = fold(entries);
    assert_eq!(merged.entries().last(), Some(&record));
    assert_eq!(stands(&merged), (vec![1, 2, 3], false));
    let of = &measurements(&merged, HERE)[0];
    let live = rotor(&merged, HERE, of).unwrap();
    assert_eq!((live.thinnest.mm(), live.place), (19.0, 3));
}

/// What rules of another version may have said is told, and today's are asked again after news.
#[test]
fn what_was_recorded_is_said_until_a_place_is_read_again() {
    let mut whats = saved();
    for what in &mut whats {
        match what {
            Event::FaceFound(face) => (face.rules, face.tir) = (9, Length::millimetres(0.777)),
            Event::RotorFound(rotor) => (rotor.rules, rotor.place) = (9, 7),
            _ => {}
        }
    }
    let face_said = |sheet: &JobState| face(sheet, HERE, &runs(sheet, HERE)[2]).unwrap();
    let rotor_said = |sheet: &JobState| rotor(sheet, HERE, &measurements(sheet, HERE)[0]).unwrap();
    let then = sheet(&whats);
    assert_eq!(face_said(&then).tir.mm(), 0.777);
    assert_eq!(rotor_said(&then).place, 7);
    assert_eq!(owed(&then), []);
    whats.extend([place(3, Surface::Rotor, 3, "7"), measured(4, "21.50")]);
    let now = sheet(&whats);
    // From 7 down to 95 − 100 hundredths.
    assert!((face_said(&now).tir.mm() - 0.12).abs() < 1e-9);
    let said = rotor_said(&now);
    assert_eq!((said.place, said.rules), (4, RUNOUT_RULES_VERSION));
}

#[test]
fn results_stand_before_what_hands_over_or_ends_and_only_once() {
    let sheet = sheet(recorded());
    let owed = owed(&sheet);
    let over = Event::HandedOver(HandedOver::NOW);
    let ended = Event::Ended(Ended {
        ending: Ending::Finished,
        charge: None,
    });
    for close in [over.clone(), ended.clone()] {
        let with = with_records(&sheet, vec![close.clone()]);
        assert_eq!(with, [owed.clone(), vec![close]].concat());
    }
    let handed = with_records(&sheet, vec![over.clone()]);
    let both = with_records(&sheet, [handed, vec![ended.clone()]].concat());
    assert_eq!(both, [owed, vec![over, ended]].concat());
    let answer = Event::Answered(
        StepKey::at(Step::SpinHand, HERE),
        Reply::Picked(Choice::SmoothQuiet),
    );
    assert_eq!(with_records(&sheet, vec![answer.clone()]), [answer]);
}
