use super::*;
use crate::job::entry::Carried;
use crate::job::kit::MoreKit;
use crate::job::recorded::sheet;
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
fn run(nth: u8, setup: Setup, needles: &[&str]) -> Vec<Event> {
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
        saved(&before, at.clone(), needle, None).unwrap_or_else(|| skipped(&before, at))
    });
    each.collect()
}

/// A dial of 0.01 mm and five studs.
fn before() -> Vec<Event> {
    vec![
        Event::Carried(Carried {
            wrenches: Vec::new(),
            dial: Dial::HUNDREDTH_MM,
            more: MoreKit::default(),
            dial_due: None,
        }),
        Event::Vehicle(VehicleField::Studs, "5".to_owned()),
    ]
}

/// A wobble of 0.06 mm, high at 90°, read on a face whose zero is at place 1.
const WOBBLE: [&str; 8] = ["0", "2", "3", "2", "0", "98", "97", "98"];

fn job(runs: Vec<Vec<Event>>) -> JobState {
    sheet(
        before()
            .into_iter()
            .chain(runs.into_iter().flatten())
            .collect::<Vec<_>>(),
    )
}

#[test]
fn a_needle_past_zero_is_reported_on_from_the_first_place() {
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

fn source(document: &str) -> SpecSource {
    SpecSource {
        document: document.to_owned(),
        page: "4-12".to_owned(),
        looked_up: Default::default(),
        who: "R. Okafor".to_owned(),
        override_reason: None,
    }
}

fn limit(surface: Surface, value: &str) -> Vec<Event> {
    let spec = limit_spec(surface, value, LengthUnit::Millimetre, source("Book"));
    vec![Event::RunoutLimit(spec.unwrap())]
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
    let third = |sheet: &JobState| runs(sheet, LEFT)[0].at(3).unwrap().clone();
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
    let spec = |value, document| {
        limit_spec(Surface::Rotor, value, LengthUnit::Thou, source(document)).unwrap_err()
    };
    assert!(matches!(spec("", "Book"), SpecInputError::Value(_)));
    assert_eq!(
        spec("-1", "Book"),
        SpecInputError::Fault(SpecError::NegativeLimit)
    );
    assert_eq!(spec("2", " "), SpecInputError::Fault(SpecError::NoSource));
}

/// A run with typed angles.
fn at_angles(places: &[(&str, &str)]) -> Vec<Event> {
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
        saved(&before, at, needle, None).unwrap()
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
    assert_eq!(typed(3, "47.50"), Err(AngleError::Taken { place: 2 }));
    assert_eq!(typed(3, "360"), Err(AngleError::Taken { place: 1 }));
    assert_eq!(typed(2, "47.5"), Ok(()), "the place itself, read again");
    assert_eq!(typed(3, "360.1"), Err(AngleError::OffTheTurn));
    assert_eq!(typed(3, "-1"), Err(AngleError::OffTheTurn));
    assert_eq!(typed(3, ""), Err(AngleError::Number(DecimalError::Empty)));
}

#[test]
fn a_run_at_equal_steps_has_no_typed_angles() {
    let sheet = job(vec![run(1, setup(Surface::HubFace, 1), &WOBBLE)]);
    assert_eq!(runs(&sheet, LEFT)[0].angles(), Angles::Equal);
}

/// A lever dial of 0.002 mm that turns once within 0.2 mm.
fn lever() -> Dial {
    let division = Length::millimetres(0.002);
    Dial::new(division, 100, crate::trade::play::DialKind::Lever).unwrap()
}

fn on(dial: Dial, needles: &[(&str, Option<i32>)]) -> Vec<Event> {
    let read = needles.iter().zip(1..).map(|((needle, turns), place)| {
        let divisions = Decimal::parse(needle).ok();
        Event::Runout(RunoutReading {
            corner: LEFT,
            run: 1,
            setup: setup(Surface::HubFace, 1),
            place,
            angle: None,
            radius: None,
            divisions,
            turns: *turns,
            dial,
            left_out: None,
        })
    });
    read.collect()
}

#[test]
fn a_run_on_two_dials_is_refused() {
    let mut whats = on(Dial::HUNDREDTH_MM, &[("0", None), ("2", None)]);
    whats.extend(on(Dial::THOU, &[("0", None), ("2", None), ("3", None)]).split_off(2));
    let sheet = job(vec![whats]);
    let runs = runs(&sheet, LEFT);
    assert_eq!(runs[0].series(), Err(SeriesError::MixedDials));
    assert!(found(&sheet, &runs, &runs[0]).is_err());
    assert!(runs[0].is_on_other_dial(&sheet));
}

// 0.162 mm from 0 is 81 divisions of 0.002 mm; the short way round would be 19: 0.038 mm.
#[test]
fn a_lever_dial_with_a_short_turn_asks_for_the_turns_of_a_run() {
    let untold = job(vec![on(lever(), &[("0", None), ("81", None)])]);
    let fault = SeriesError::AskTurns { index: 1 };
    assert_eq!(runs(&untold, LEFT)[0].series(), Err(fault));
    for (turns, mm) in [(0, 0.162), (-1, 0.038), (1, 0.362), (2, 0.562)] {
        let recorded = job(vec![on(lever(), &[("0", None), ("81", Some(turns))])]);
        let series = runs(&recorded, LEFT)[0].series().unwrap();
        assert!((series.tir().mm() - mm).abs() < 1e-12, "{turns}");
    }
}

#[test]
fn the_ways_of_a_needle_are_offered_the_shortest_first() {
    let sheet = job(vec![on(lever(), &[("10", None)])]);
    let runs = runs(&sheet, LEFT);
    let ways = runs[0].ways(2, "91");
    let recorded: Vec<_> = ways
        .iter()
        .map(|(turns, mm)| (*turns, (mm.mm() * 1000.0).round()))
        .collect();
    assert_eq!(recorded, [(-1, -38.0), (0, 162.0), (-2, -238.0)]);
    assert_eq!(runs[0].ways(1, "91"), []);
    assert_eq!(runs[0].from_first("91", None), None);
    let plain = job(vec![on(Dial::HUNDREDTH_MM, &[("10", None)])]);
    assert_eq!(super::runs(&plain, LEFT)[0].ways(2, "91"), []);
}

#[test]
fn the_first_place_repeats_nothing_and_a_later_one_what_was_read_last() {
    let sheet = job(vec![run(1, setup(Surface::HubFace, 1), &["0", "2.5", "-"])]);
    let run = &runs(&sheet, LEFT)[0];
    let typed = |needle: Option<&Decimal>| needle.map(|needle| needle.as_typed().to_owned());
    assert!(run.is_first(1) && !run.is_first(4));
    assert_eq!(run.same(1), None);
    assert_eq!(typed(run.same(4)).as_deref(), Some("2.5"));
    assert_eq!(run.stood_last(4), run.same(4));
    // Read once more, a place begins where it was read itself.
    assert_eq!(typed(run.stood_last(1)).as_deref(), Some("0"));
    assert_eq!(typed(run.same(2)).as_deref(), Some("2.5"));
}

#[test]
fn nothing_is_repeated_before_something_was_read() {
    let skipped = job(vec![run(1, setup(Surface::HubFace, 1), &["-"])]);
    let begun = &runs(&skipped, LEFT)[0];
    assert!(begun.is_first(2));
    assert_eq!((begun.stood_last(2), begun.same(2)), (None, None));
    // The skipped place is read after all: the zero of the dial is at place 2.
    let later = job(vec![run(1, setup(Surface::HubFace, 1), &["-", "0"])]);
    let run = &runs(&later, LEFT)[0];
    assert!(!run.is_first(1) && run.is_first(2));
    assert_eq!((run.stood_last(1), run.same(1)), (None, None));
    assert_eq!(run.same(3).unwrap().as_typed(), "0");
}
