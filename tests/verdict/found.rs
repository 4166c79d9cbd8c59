//! What runs and rotors said is told as it was recorded: a job that was measured by other rules
//! says the same for ever.

use std::sync::LazyLock;

use hubslate::exchange::verify::verify;
use hubslate::job::entry::{
    AgainstLimit, Entry, Event, FaceFound, RotorFound, ShapeFound, VehicleField,
};
use hubslate::job::runout::{Basis, runs};
use hubslate::job::{fold, found};
use hubslate::trade::answer::Answer;
use hubslate::trade::play::uncertainty::Guarded;
use hubslate::trade::runout::{Bound, Form, Next, RotorNext, Surface, Undetermined};
use hubslate::units::{Angle, AngleUnit, LengthUnit, Typed};

use super::bench::{HERE, bound, most, rotor, run};
use super::frozen::{file, finished, report, reported};
use super::mm;

/// A wobble and a place that stands out, in hundredths of a millimetre.
const ONE: [f64; 8] = [6.0, 4.3, 0.2, -4.2, -6.0, -4.3, 0.1, 4.2];
const OTHER: [f64; 8] = [2.0, 3.5, 3.0, 0.5, -2.0, -3.5, -3.0, -0.5];
const OVER: [f64; 8] = [1.0, 1.2, 1.1, 1.4, 1.0, 1.3, 1.1, 1.2];

/// The finished job of the replaced hub with a rotor read in two positions and measured; what
/// they said stands recorded.
fn measured() -> Vec<Entry> {
    static MADE: LazyLock<Vec<Entry>> = LazyLock::new(made);
    MADE.clone()
}

fn made() -> Vec<Entry> {
    let mut entries = finished();
    let read = [
        vec![
            Event::Vehicle(VehicleField::Studs, "5".to_owned()),
            most(Surface::Rotor, "0.05"),
            bound(Bound::Least, "21.9"),
            bound(Bound::Variation, "0.02"),
        ],
        run(1, Surface::Rotor, (1, Answer::Yes), &ONE),
        run(2, Surface::Rotor, (3, Answer::Yes), &OTHER),
        rotor(1, &OVER),
    ];
    reported(&mut entries, read.concat());
    let owed = found::owed(&fold(entries.clone()));
    assert_eq!(owed.len(), 3);
    reported(&mut entries, owed);
    entries
}

/// The same job, the second run recorded otherwise.
fn face(change: impl FnOnce(&mut FaceFound)) -> Vec<Entry> {
    let mut entries = measured();
    let faces = entries
        .iter_mut()
        .filter_map(|entry| match &mut entry.what {
            Event::FaceFound(found) if found.run == 2 => Some(found),
            _ => None,
        });
    change(faces.last().unwrap());
    entries
}

/// The same job, its rotor recorded otherwise.
fn thickness(change: impl FnOnce(&mut RotorFound)) -> Vec<Entry> {
    let mut entries = measured();
    let rotors = entries
        .iter_mut()
        .filter_map(|entry| match &mut entry.what {
            Event::RotorFound(found) => Some(found),
            _ => None,
        });
    change(rotors.last().unwrap());
    entries
}

#[track_caller]
fn tells(entries: Vec<Entry>, wanted: &[&str]) {
    static BEFORE: LazyLock<String> = LazyLock::new(|| report(&fold(measured())));
    let before = &*BEFORE;
    let after = report(&fold(entries));
    for word in wanted {
        let (was, is) = (before.matches(word).count(), after.matches(word).count());
        assert!(
            is > was,
            "{word:?} stands {is} times, {was} before, in:\n{after}"
        );
    }
}

/// A value of a run by other rules is what the report says.
#[track_caller]
fn face_says(change: impl FnOnce(&mut FaceFound), wanted: &[&str]) {
    let entries = face(|found| {
        found.rules = 9;
        change(found);
    });
    tells(entries, wanted);
}

#[track_caller]
fn shape_says(change: impl FnOnce(&mut ShapeFound), wanted: &[&str]) {
    face_says(|found| change(found.shape.as_mut().unwrap()), wanted);
}

#[track_caller]
fn rotor_says(change: impl FnOnce(&mut RotorFound), wanted: &[&str]) {
    let entries = thickness(|found| {
        found.rules = 9;
        change(found);
    });
    tells(entries, wanted);
}

fn against<C>(limit: &mut Option<AgainstLimit<C>>) -> &mut AgainstLimit<C> {
    limit.as_mut().unwrap()
}

fn typed(text: &str) -> hubslate::units::TypedLength {
    Typed::parse(text, LengthUnit::Millimetre).unwrap()
}

fn degrees(degrees: f64) -> Option<Angle> {
    Some(Angle::new(degrees, AngleUnit::Degree).unwrap())
}

#[test]
fn each_value_of_a_recorded_run_is_reported_from_its_entry() {
    face_says(|_| {}, &["Rules, version\n9"]);
    face_says(|found| found.tir = mm(0.777), &["0.777\u{a0}mm"]);
    face_says(|found| found.closure = Some(mm(0.777)), &["0.777\u{a0}mm"]);
    face_says(|found| found.next = Next::Plate, &["correction plate"]);
    let reach = |found: &mut FaceFound| found.reach.unwrap();
    face_says(
        |found| {
            let mut of = reach(found);
            (of.estimate, of.low, of.high) = (mm(0.777), mm(0.666), mm(0.888));
            (of.u, of.scatter) = (mm(0.0333), mm(0.0222));
            found.reach = Some(of);
        },
        &[
            "0.777\u{a0}mm",
            "0.666\u{a0}mm",
            "0.888\u{a0}mm",
            "0.0333\u{a0}mm",
            "0.0222\u{a0}mm",
        ],
    );
    face_says(
        |found| {
            let limit = against(&mut found.against);
            limit.spec.most = typed("0.0444");
            limit.spec.source.document = "Another document".to_owned();
            let judged = limit.judged.as_mut().unwrap();
            (judged.result, judged.conformance) = (Guarded::OutNotProven, 0.123);
        },
        &[
            "0.0444\u{a0}mm",
            "Another document",
            "12.3\u{a0}%",
            "over its limit of 0.0444",
        ],
    );
    face_says(
        |found| {
            let (basis, all) = found.positions.as_mut().unwrap();
            *basis = Basis::HubAndRotor;
            let (stud, wobble) = &mut all[0];
            *stud = 8;
            (wobble.estimate, wobble.u) = (mm(0.777), mm(0.0333));
        },
        &[
            "lug 9",
            "0.777\u{a0}mm",
            "0.0333\u{a0}mm",
            "both read from outside",
        ],
    );
    face_says(
        |found| found.shape = Err(Undetermined::Rank { rank: 2, needed: 9 }),
        &["These places show 2 of 9 unknowns"],
    );
}

#[test]
fn each_value_of_a_recorded_shape_is_reported_from_its_entry() {
    shape_says(|shape| shape.mean = mm(0.777), &["0.777\u{a0}mm"]);
    shape_says(|shape| shape.rms = mm(0.0333), &["0.0333\u{a0}mm"]);
    shape_says(
        |shape| shape.stands_out = Some(mm(0.777)),
        &["0.777\u{a0}mm"],
    );
    shape_says(
        |shape| (shape.wobble.reach, shape.wobble.u) = (mm(0.777), mm(0.0333)),
        &["0.777\u{a0}mm", "(u 0.0333\u{a0}mm)"],
    );
    shape_says(
        |shape| {
            let mut warp = shape.wobble;
            (warp.reach, warp.u) = (mm(0.777), mm(0.0333));
            shape.warp = Some(warp);
        },
        &["0.777\u{a0}mm", "(u 0.0333\u{a0}mm)"],
    );
    shape_says(
        |shape| (shape.high_spot, shape.sure_to) = (degrees(123.0), degrees(7.0)),
        &["123°", "7°"],
    );
    shape_says(|shape| shape.form = Form::Bump, &["one place stands"]);
}

#[test]
fn each_value_of_a_recorded_rotor_is_reported_from_its_entry() {
    rotor_says(|_| {}, &["Rules, version\n9"]);
    rotor_says(
        |found| (found.thinnest, found.place, found.thickest) = (mm(20.111), 7, mm(20.333)),
        // The range is the difference.
        &[
            "20.111\u{a0}mm",
            "20.333\u{a0}mm",
            "0.222\u{a0}mm",
            "place 7",
        ],
    );
    rotor_says(|found| found.u = mm(0.0333), &["0.0333\u{a0}mm"]);
    rotor_says(|found| found.guard_band = mm(0.0444), &["0.0444\u{a0}mm"]);
    rotor_says(|found| found.next = RotorNext::NewRotor, &["new rotor"]);
    rotor_says(
        |found| {
            let of = found.varies.as_mut().unwrap();
            (of.estimate, of.low, of.high) = (mm(0.777), mm(0.666), mm(0.888));
            of.u = mm(0.0333);
        },
        &[
            "0.777\u{a0}mm",
            "0.666\u{a0}mm",
            "0.888\u{a0}mm",
            "0.0333\u{a0}mm",
        ],
    );
    rotor_says(
        |found| found.varies = Err(Undetermined::NoSpare { more: 7 }),
        &["at least 7 more"],
    );
    for limit in [
        (|found| &mut found.least) as fn(&mut RotorFound) -> &mut Option<_>,
        |found| &mut found.variation,
    ] {
        rotor_says(
            |found| {
                let limit = against(limit(found));
                limit.spec.value = typed("19.444");
                limit.spec.source.document = "Another document".to_owned();
                let judged = limit.judged.as_mut().unwrap();
                (judged.result, judged.conformance) = (Guarded::OutNotProven, 0.123);
            },
            &[
                "19.444\u{a0}mm",
                "Another document",
                "12.3\u{a0}%",
                "of 19.444",
            ],
        );
    }
}

#[test]
fn what_is_read_again_or_looked_up_again_makes_a_run_live_until_it_is_recorded_again() {
    let other = || face(|found| (found.rules, found.tir) = (9, mm(0.777)));
    let is_recorded = |entries: &[Entry]| report(&fold(entries.to_vec())).contains("0.777\u{a0}mm");
    assert!(is_recorded(&other()));
    let again = run(2, Surface::Rotor, (3, Answer::Yes), &[7.0; 8]).remove(3);
    for news in [again, most(Surface::Rotor, "0.06")] {
        let mut entries = other();
        reported(&mut entries, vec![news]);
        assert!(!is_recorded(&entries));
        let owed = found::owed(&fold(entries.clone()));
        let here = |what: &Event| matches!(what, Event::FaceFound(found) if found.run == 2);
        assert!(owed.iter().any(here));
        reported(&mut entries, owed);
        let sheet = fold(entries.clone());
        let second = &runs(&sheet, HERE)[1];
        let recorded = found::face_recorded(&sheet, HERE, second).unwrap();
        assert_eq!(*recorded, found::face_today(&sheet, HERE, second).unwrap());
        assert_eq!(found::owed(&sheet), []);
        assert_eq!(codes(&entries).0, [] as [&str; 0]);
    }
    // What it does not rest on leaves it as it is.
    let mut entries = other();
    reported(&mut entries, vec![most(Surface::Pilot, "0.06")]);
    assert!(is_recorded(&entries));
}

/// What is found in a file again, and what is said beside it.
fn codes(entries: &[Entry]) -> (Vec<&'static str>, Vec<&'static str>) {
    let checked = verify(&file(entries)).unwrap().remove(0);
    let findings = checked.findings.iter().map(|finding| finding.code());
    let remarks = checked.remarks.iter().map(|remark| remark.code());
    (findings.collect(), remarks.collect())
}

#[test]
fn a_record_of_todays_rules_that_differs_is_found_and_one_of_others_is_never_called_wrong() {
    let faces: [fn(&mut FaceFound); 6] = [
        |found| found.tir = mm(0.777),
        |found| found.reach.as_mut().unwrap().dof = Some(99.0),
        |found| found.shape.as_mut().unwrap().rms = mm(0.0333),
        |found| against(&mut found.against).spec.most = typed("0.050"),
        |found| found.positions.as_mut().unwrap().1.reverse(),
        |found| found.run = 7,
    ];
    for change in faces {
        let (findings, _) = codes(&face(change));
        assert!(findings.contains(&"face"), "{findings:?}");
        let (findings, remarks) = codes(&face(|found| {
            change(found);
            found.rules = 9;
        }));
        assert!(!findings.contains(&"face"), "{findings:?}");
        assert!(remarks.contains(&"other_rules"), "{remarks:?}");
    }
    let rotors: [fn(&mut RotorFound); 4] = [
        |found| found.thinnest = mm(20.0),
        |found| found.varies = Err(Undetermined::NoSpare { more: 1 }),
        |found| found.variation = None,
        |found| found.next = RotorNext::NewRotor,
    ];
    for change in rotors {
        let (findings, _) = codes(&thickness(change));
        assert!(findings.contains(&"rotor"), "{findings:?}");
        let (findings, remarks) = codes(&thickness(|found| {
            change(found);
            found.rules = 9;
        }));
        assert!(!findings.contains(&"rotor"), "{findings:?}");
        assert!(remarks.contains(&"other_rules"), "{remarks:?}");
    }
    assert_eq!(codes(&measured()).0, [] as [&str; 0]);
}
