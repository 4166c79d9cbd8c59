#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]
use super::*;
use crate::job::entry::Carried;
use crate::job::kit::MoreKit;
use crate::job::told::sheet;
use crate::trade::play::uncertainty::Guarded;
use crate::trade::runout::Form;
use crate::units::{AngleUnit, LengthUnit};

const LEFT: Corner = Corner::FrontLeft;

fn setup(surface: Surface, stud: u8) -> Setup {
    Setup {
        surface,
        places: 8,
        stud,
        cleaned: Answer::Yes,
    }
}

/// The entries of a run; a place without a needle was skipped.
fn run(nth: u8, setup: Setup, needles: &[&str]) -> Vec<What> {
    let before = sheet(before());
    let each = needles.iter().zip(1..).map(|(needle, place)| {
        let at = Spotted {
            corner: LEFT,
            run: nth,
            setup,
            place,
            angle: None,
            radius: None,
        };
        kept(&before, at.clone(), needle).unwrap_or_else(|| skipped(&before, at))
    });
    each.collect()
}

/// A dial of 0.01 mm and five studs.
fn before() -> Vec<What> {
    vec![
        What::Carried(Carried {
            wrenches: Vec::new(),
            dial: Dial::HUNDREDTH_MM,
            more: MoreKit::default(),
            dial_due: None,
        }),
        What::Vehicle(VehicleField::Studs, "5".to_owned()),
    ]
}

/// A wobble of 0.06 mm, high at 90°, read on a face whose zero is at place 1.
const WOBBLE: [&str; 8] = ["0", "2", "3", "2", "0", "98", "97", "98"];

fn job(runs: Vec<Vec<What>>) -> Sheet {
    sheet(
        before()
            .into_iter()
            .chain(runs.into_iter().flatten())
            .collect::<Vec<_>>(),
    )
}

#[test]
fn a_needle_past_zero_is_told_on_from_the_first_place() {
    let sheet = job(vec![run(1, setup(Surface::HubFace, 1), &WOBBLE)]);
    let runs = runs(&sheet, LEFT);
    let found = found(&sheet, &runs, &runs[0]).unwrap();
    assert!((found.series.tir().mm() - 0.06).abs() < 1e-12);
    let shape = found.shape.unwrap();
    assert_eq!(shape.form, Form::Wobble);
    let high = shape.high_spot.unwrap().in_unit(AngleUnit::Degree);
    assert!((high - 90.0).abs() < 1e-6);
}

#[test]
fn a_dial_that_was_not_at_zero_tells_the_same() {
    let needles = ["98", "0", "1", "0", "98", "96", "95", "96"];
    let sheet = job(vec![run(1, setup(Surface::HubFace, 1), &needles)]);
    let series = runs(&sheet, LEFT)[0].series().unwrap();
    assert!((series.tir().mm() - 0.06).abs() < 1e-12);
}

#[test]
fn the_next_place_is_the_first_that_was_neither_read_nor_skipped() {
    let some = run(1, setup(Surface::HubFace, 1), &["0", "-", "2"]);
    let sheet = job(vec![some]);
    let runs = runs(&sheet, LEFT);
    assert_eq!(runs[0].next_place(), Some(4));
    assert_eq!(runs[0].needle_before(4).unwrap().as_typed(), "2");
    assert_eq!(runs[0].at(2).unwrap().divisions, None);
    assert_eq!(runs[0].series().unwrap().spots().len(), 2);
    let refused = found(&sheet, &runs, &runs[0]).unwrap();
    assert!(matches!(
        refused.shape,
        Err(Undetermined::Rank { rank: 2, needed: 3 })
    ));
    assert_eq!((refused.next, refused.reach), (Next::ReadMore, None));
}

#[test]
fn without_a_limit_nothing_is_judged() {
    let sheet = job(vec![run(1, setup(Surface::Rotor, 1), &WOBBLE)]);
    let runs = runs(&sheet, LEFT);
    let found = found(&sheet, &runs, &runs[0]).unwrap();
    assert_eq!((found.limit, found.judged), (None, None));
    assert_eq!(found.next, Next::LookUp);
    assert_eq!(found.positions, None);
}

fn source(document: &str) -> CardSource {
    CardSource {
        document: document.to_owned(),
        page: "4-12".to_owned(),
        looked_up: Default::default(),
        who: "R. Okafor".to_owned(),
        kept_because: None,
    }
}

fn limit(surface: Surface, value: &str) -> Vec<What> {
    let card = limit_card(surface, value, LengthUnit::Millimetre, source("Book"));
    vec![What::RunoutLimit(card.unwrap())]
}

// Four needles that scatter two divisions: no verdict and no part, whatever the limit is.
#[test]
fn too_few_places_ask_for_more_and_judge_nothing() {
    for needles in [["0", "2", "1", "99"], ["0", "12", "1", "90"]] {
        let read = run(1, setup(Surface::Rotor, 1), &needles);
        let sheet = job(vec![read, limit(Surface::Rotor, "0.01")]);
        let runs = runs(&sheet, LEFT);
        let found = found(&sheet, &runs, &runs[0]).unwrap();
        assert_eq!(found.shape, Err(Undetermined::NoSpare { more: 1 }));
        assert_eq!((found.judged, found.next), (None, Next::ReadMore));
    }
}

#[test]
fn five_places_of_scatter_name_no_new_part() {
    // A wobble and a warp meet these five needles exactly.
    let needles = ["0", "5", "1", "4", "0"];
    let read = run(1, setup(Surface::HubFace, 1), &needles);
    let sheet = job(vec![read, limit(Surface::HubFace, "0.02")]);
    let runs = runs(&sheet, LEFT);
    let found = found(&sheet, &runs, &runs[0]).unwrap();
    assert_eq!(found.next, Next::ReadMore);
}

#[test]
fn a_limit_of_another_surface_is_not_used() {
    let read = run(1, setup(Surface::Rotor, 1), &WOBBLE);
    let sheet = job(vec![read, limit(Surface::HubFace, "0.02")]);
    let runs = runs(&sheet, LEFT);
    assert_eq!(found(&sheet, &runs, &runs[0]).unwrap().judged, None);
}

#[test]
fn a_rotor_read_in_two_positions_is_known_on_every_stud() {
    // The hub alone moves the needle; the rotor is true, so that every stud is alike.
    let first = run(1, setup(Surface::Rotor, 1), &WOBBLE);
    let second = run(2, setup(Surface::Rotor, 3), &WOBBLE);
    let sheet = job(vec![first, second, limit(Surface::Rotor, "0.02")]);
    let runs = runs(&sheet, LEFT);
    assert_eq!(found(&sheet, &runs, &runs[0]).unwrap().positions, None);
    assert_eq!(
        found(&sheet, &runs, &runs[0]).unwrap().next,
        Next::ReadTurned
    );
    let last = found(&sheet, &runs, &runs[1]).unwrap();
    assert_eq!(last.judged.unwrap().result, Guarded::ProvenOut);
    let positions = last.positions.unwrap();
    assert_eq!(positions.len(), 5);
    let reach = |index: usize| positions[index].reach().mm();
    assert!((reach(0) - reach(4)).abs() < 1e-9);
    assert_eq!(last.next, Next::Plate);
}

#[test]
fn a_reading_can_be_left_out_and_counts_again() {
    let mut whats = run(1, setup(Surface::HubFace, 1), &WOBBLE);
    let third = |sheet: &Sheet| runs(sheet, LEFT)[0].at(3).unwrap().clone();
    let read = third(&job(vec![whats.clone()]));
    whats.push(marked(&read, Some(LeftOut::StudHole)));
    let out = job(vec![whats.clone()]);
    assert_eq!(third(&out).left_out, Some(LeftOut::StudHole));
    assert!((runs(&out, LEFT)[0].series().unwrap().tir().mm() - 0.05).abs() < 1e-12);
    whats.push(marked(&third(&out), None));
    let again = job(vec![whats]);
    assert!((runs(&again, LEFT)[0].series().unwrap().tir().mm() - 0.06).abs() < 1e-12);
}

#[test]
fn each_slip_of_a_limit_is_named() {
    let card = |value, document| {
        limit_card(Surface::Rotor, value, LengthUnit::Thou, source(document)).unwrap_err()
    };
    assert!(matches!(card("", "Book"), CardSlip::Value(_)));
    assert_eq!(
        card("-1", "Book"),
        CardSlip::Fault(CardFault::NegativeLimit)
    );
    assert_eq!(card("2", " "), CardSlip::Fault(CardFault::NoSource));
}

/// A run with typed angles.
fn at_angles(places: &[(&str, &str)]) -> Vec<What> {
    let before = sheet(before());
    let each = places.iter().zip(1..).map(|((angle, needle), place)| {
        let at = Spotted {
            corner: LEFT,
            run: 1,
            setup: setup(Surface::Rotor, 1),
            place,
            angle: Some(angle_typed(angle).unwrap()),
            radius: None,
        };
        kept(&before, at, needle).unwrap()
    });
    each.collect()
}

#[test]
fn a_wobble_is_found_at_the_angles_that_were_typed() {
    // Sines of 0°, 30°, 90°, 150°, 210°, 270°, by their definition: 0, ½, 1, ½, −½, −1; times 4.
    let read = [
        ("0", "0"),
        ("30", "2"),
        ("90.0", "4"),
        ("150", "2"),
        ("210", "98"),
        ("270", "96"),
    ];
    let sheet = job(vec![at_angles(&read)]);
    let runs = runs(&sheet, LEFT);
    assert_eq!(runs[0].angles(), Angles::Typed);
    let shape = found(&sheet, &runs, &runs[0]).unwrap().shape.unwrap();
    assert_eq!(shape.form, Form::Wobble);
    let high = shape.high_spot.unwrap().in_unit(AngleUnit::Degree);
    assert!((high - 90.0).abs() < 1e-6);
    assert!((shape.fit.first.reach().mm() - 0.08).abs() < 1e-9);
}

#[test]
fn an_angle_beyond_a_turn_or_of_another_place_is_refused() {
    let sheet = job(vec![at_angles(&[("0", "0"), ("47.5", "2")])]);
    let runs = runs(&sheet, LEFT);
    let typed = |place, text| runs[0].place_typed(place, text).map(|_| ());
    assert_eq!(typed(3, "47.6"), Ok(()));
    assert_eq!(typed(3, "47.50"), Err(AngleSlip::Taken { place: 2 }));
    assert_eq!(typed(3, "360"), Err(AngleSlip::Taken { place: 1 }));
    assert_eq!(typed(2, "47.5"), Ok(()), "the place itself, read again");
    assert_eq!(typed(3, "360.1"), Err(AngleSlip::OffTheTurn));
    assert_eq!(typed(3, "-1"), Err(AngleSlip::OffTheTurn));
    assert_eq!(typed(3, ""), Err(AngleSlip::Number(DecimalSlip::Empty)));
}

#[test]
fn a_run_at_equal_steps_has_no_typed_angles() {
    let sheet = job(vec![run(1, setup(Surface::HubFace, 1), &WOBBLE)]);
    assert_eq!(runs(&sheet, LEFT)[0].angles(), Angles::Equal);
}
