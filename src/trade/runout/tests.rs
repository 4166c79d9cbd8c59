#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]
use super::*;
use crate::trade::play::conformity::Judged;
use crate::trade::play::limit::NegativeLimit;
use crate::trade::play::uncertainty::Guarded;
use crate::trade::play::{Dial, Divisions, IndicatorError};
use crate::units::{Angle, AngleUnit, Length, LengthUnit, NotFinite};

fn degrees(value: f64) -> Angle {
    Angle::new(value, AngleUnit::Degree).unwrap()
}

fn at(angle: f64, needle: f64) -> Spot {
    Spot {
        angle: degrees(angle),
        needle: Divisions::new(needle).unwrap(),
        left_out: None,
    }
}

/// Readings of a 0.01 mm dial at equal steps.
fn equal(needles: &[f64]) -> Series {
    let needles: Vec<_> = needles.iter().map(|n| Divisions::new(*n)).collect();
    Series::equally_spaced(Dial::HUNDREDTH_MM, &needles).unwrap()
}

fn series(spots: &[(f64, f64)]) -> Series {
    let spots = spots.iter().map(|(angle, needle)| at(*angle, *needle));
    Series::read(Dial::HUNDREDTH_MM, spots.collect()).unwrap()
}

fn mm(value: f64) -> Length {
    Length::millimetres(value)
}

/// Needles of a pure wave, rounded to half divisions as they are read.
fn wave(places: u32, waves: f64, divisions: f64) -> Vec<f64> {
    let turn = std::f64::consts::TAU / f64::from(places);
    let needle = |place| divisions * (waves * f64::from(place) * turn).cos();
    (0..places)
        .map(|place| (needle(place) * 2.0).round() / 2.0)
        .collect()
}

#[test]
fn no_reading_and_no_angle_is_anything_but_a_number() {
    assert_eq!(Divisions::new(f64::NAN), None);
    assert_eq!(Divisions::new(f64::INFINITY), None);
    assert_eq!(Angle::new(f64::NAN, AngleUnit::Degree), Err(NotFinite));
}

#[test]
fn one_reading_is_no_series() {
    let read = |spots: &[Spot]| Series::read(Dial::THOU, spots.to_vec());
    let fault = |kept| Err(SeriesFault::TooFew { kept, needed: 2 });
    assert_eq!(read(&[]), fault(0));
    let out = Spot {
        left_out: Some(LeftOut::StudHole),
        ..at(90.0, 4.0)
    };
    assert_eq!(read(&[at(0.0, 0.0), out]), fault(1));
}

#[test]
fn twenty_four_places_and_the_first_again_are_the_most() {
    let spots = |n: u32| (0..n).map(|i| at(f64::from(i) * 15.0, 1.0)).collect();
    assert!(Series::read(Dial::THOU, spots(25)).is_ok());
    let fault = SeriesFault::TooMany { given: 26 };
    assert_eq!(Series::read(Dial::THOU, spots(26)), Err(fault));
}

#[test]
fn a_reading_beyond_the_face_is_refused() {
    let spots = vec![at(0.0, 1.0), at(90.0, -101.0), at(180.0, 2.0)];
    let fault = SeriesFault::OffTheDial { index: 1 };
    assert_eq!(Series::read(Dial::THOU, spots), Err(fault));
}

#[test]
fn opposite_places_leave_the_wobble_open() {
    let two = series(&[(0.0, 0.0), (180.0, 2.0), (360.0, 0.5), (180.0, 2.5)]);
    let open = Undetermined::Rank { rank: 2, needed: 3 };
    assert_eq!(fit(&two, Order::First).unwrap_err(), open);
    assert_eq!(best_fit(&two).unwrap_err(), open);
    assert_eq!(shape(&two).unwrap_err(), open);
}

#[test]
fn four_places_give_no_second_wave() {
    let four = equal(&[0.0, 5.0, 8.0, 3.0]);
    let open = Undetermined::Rank { rank: 4, needed: 5 };
    assert_eq!(fit(&four, Order::Second).unwrap_err(), open);
    assert_eq!(best_fit(&four).unwrap().second, None);
}

#[test]
fn places_bunched_together_are_refused() {
    let bunched = series(&[(0.0, 0.0), (10.0, 1.0), (20.0, 1.0), (30.0, 2.0)]);
    let refused = fit(&bunched, Order::First).unwrap_err();
    assert!(matches!(refused, Undetermined::Bunched { condition } if condition > 30.0));
    // A third of the circle is enough for the wobble, not for the warp.
    let third = series(&[
        (0.0, 0.0),
        (30.0, 3.0),
        (60.0, 4.0),
        (90.0, 3.0),
        (120.0, 0.0),
    ]);
    assert!(matches!(
        fit(&third, Order::Second),
        Err(Undetermined::Bunched { .. })
    ));
    assert!(fit(&third, Order::First).is_ok());
}

#[test]
fn readings_that_agree_have_no_high_spot_and_are_as_true_as_the_dial() {
    let told = shape(&equal(&[3.0; 8])).unwrap();
    assert_eq!(told.form, Form::True);
    assert_eq!(told.high_spot, None);
    assert_eq!(told.fit.first.sure_to(), None);
    assert_eq!(equal(&[3.0; 8]).tir(), Length::ZERO);
}

#[test]
fn a_stud_hole_marked_out_leaves_the_others() {
    let mut spots: Vec<_> = (0..8).map(|i| at(f64::from(i) * 45.0, 2.0)).collect();
    spots[3].needle = Divisions::new(6.0).unwrap();
    let read = |spots: &[Spot]| Series::read(Dial::HUNDREDTH_MM, spots.to_vec()).unwrap();
    assert!((read(&spots).tir().mm() - 0.04).abs() < 1e-12);
    spots[3].left_out = Some(LeftOut::StudHole);
    let series = read(&spots);
    assert_eq!(series.tir(), Length::ZERO);
    assert_eq!(series.spots().len(), 8);
}

#[track_caller]
fn looks(needles: &[f64], form: Form, high_spot: Option<f64>) {
    let told = shape(&equal(needles)).unwrap();
    assert_eq!(told.form, form);
    let high = told.high_spot.map(|spot| spot.in_unit(AngleUnit::Degree));
    match (high, high_spot) {
        (Some(high), Some(known)) => assert!((high - known).abs() < 5.0, "{high}"),
        (high, known) => assert_eq!(high, known),
    }
}

#[test]
fn each_shape_is_named() {
    looks(&wave(8, 1.0, 6.0), Form::Wobble, Some(0.0));
    looks(&wave(12, 2.0, 6.0), Form::Warp, Some(0.0));
    looks(&wave(4, 1.0, 6.0), Form::Wobble, Some(0.0));
    looks(
        &[7.0, 7.0, 7.0, 7.0, 7.0, 7.0, 7.0, 12.0],
        Form::Bump,
        Some(315.0),
    );
    looks(
        &[7.0, 7.0, 2.0, 7.0, 7.0, 7.0, 7.0, 7.0],
        Form::Hollow,
        None,
    );
    looks(&[0.0, 1.0, 1.0, 0.0, 0.0, 1.0, 0.0, 1.0], Form::True, None);
    looks(
        &[0.0, 6.0, 1.0, 7.0, 0.0, 5.0, 0.0, 8.0],
        Form::Uneven,
        Some(315.0),
    );
}

#[test]
fn a_burr_on_a_wobble_is_still_found() {
    let mut needles = wave(12, 1.0, 4.0);
    needles[5] += 6.0;
    let told = shape(&equal(&needles)).unwrap();
    assert_eq!(told.form, Form::Bump);
    assert!((told.high_spot.unwrap().in_unit(AngleUnit::Degree) - 150.0).abs() < 1e-9);
    assert!((told.stands_out.unwrap().mm() - 0.06).abs() < 0.01);
}

// GUM 5.1: with n equal steps each part of a wave has the variance 2 u² / n.
#[test]
fn the_uncertainty_of_a_wobble_is_carried_through_the_fit() {
    let fit = fit(&equal(&wave(8, 1.0, 0.0)), Order::First).unwrap();
    let one = 0.005_f64.hypot(0.01 / 12_f64.sqrt());
    assert!((fit.first.u().mm() - one * (2.0 / 8.0_f64).sqrt()).abs() < 1e-12);
    assert_eq!(fit.first.dof(), None);
    let within = 1.959_964 * 2.0 * fit.first.u().mm();
    assert!((fit.first.reach_within().mm() - within).abs() < 1e-8);
    let scattered = super::fit(
        &equal(&[0.0, 9.0, 1.0, 8.0, 0.0, 9.0, 1.0, 8.0]),
        Order::First,
    );
    assert!(scattered.unwrap().first.dof().is_some_and(|dof| dof >= 5.0));
}

#[test]
fn a_wobble_below_its_own_uncertainty_does_not_say_where_it_is() {
    let fit = fit(
        &equal(&[0.0, 0.5, 0.0, 0.0, -0.5, 0.0, 0.0, 0.0]),
        Order::First,
    )
    .unwrap();
    assert!(fit.first.phase().is_some());
    assert_eq!(fit.first.sure_to(), None);
    let clear = super::fit(&equal(&wave(8, 1.0, 20.0)), Order::First).unwrap();
    assert!(clear.first.sure_to().unwrap().in_unit(AngleUnit::Degree) < 5.0);
}

#[test]
fn the_fit_is_drawn_where_the_readings_were() {
    let series = equal(&[10.0, 12.0, 9.0, 4.0, 2.0, 3.0, 6.0, 8.0]);
    let fit = fit(&series, Order::Second).unwrap();
    for ((angle, reading), residual) in series.kept().zip(&fit.residuals) {
        assert!((fit.at(angle).plus(*residual).mm() - reading.mm()).abs() < 1e-12);
    }
    assert!(fit.without_wobble() < series.tir());
}

fn limit(value: f64) -> RunoutLimit {
    RunoutLimit::maker(Surface::Rotor, mm(value)).unwrap()
}

#[test]
fn a_limit_is_not_negative_and_only_for_its_surface() {
    let negative = RunoutLimit::maker(Surface::Rotor, mm(-0.01));
    assert_eq!(negative, Err(NegativeLimit { value: mm(-0.01) }));
    let series = equal(&wave(8, 1.0, 6.0));
    let budget = budget(&series, IndicatorError::OneDivision);
    let refused = compare(Surface::HubFace, series.tir(), &budget, &limit(0.05));
    let limit = Surface::Rotor;
    assert_eq!(refused, Err(OtherSurface { limit }));
}

#[test]
fn a_run_out_is_proven_over_only_beyond_the_guard_band() {
    let series = equal(&wave(8, 1.0, 6.0));
    let budget = budget(&series, IndicatorError::OneDivision);
    let band = budget.guard_band().mm();
    let at = |value: f64| {
        let judged = compare(Surface::Rotor, series.tir(), &budget, &limit(value));
        judged.unwrap().result
    };
    assert_eq!(at(0.12), Guarded::InNotProven);
    assert_eq!(at(0.12 + band + 1e-6), Guarded::ProvenIn);
    assert_eq!(at(0.12 - band + 1e-6), Guarded::OutNotProven);
    assert_eq!(at(0.12 - band - 1e-6), Guarded::ProvenOut);
}

#[test]
fn a_needle_that_did_not_come_back_makes_the_reading_less_sure() {
    let closed = series(&[
        (0.0, 0.0),
        (90.0, 4.0),
        (180.0, 8.0),
        (270.0, 4.0),
        (360.0, 3.0),
    ]);
    assert!((closed.closure().unwrap().mm() - 0.03).abs() < 1e-12);
    let open = equal(&[0.0, 4.0, 8.0, 4.0]);
    assert_eq!(open.closure(), None);
    let band = |series| budget(series, IndicatorError::OneDivision).guard_band();
    assert!(band(&closed) > band(&open));
}

fn known(form: Form, over: bool) -> Known {
    let result = if over {
        Guarded::OutNotProven
    } else {
        Guarded::InNotProven
    };
    Known {
        surface: Surface::Rotor,
        form,
        judged: Some(Judged {
            result,
            conformance: 0.5,
        }),
        limit: Some(mm(0.05)),
        cleaned: true,
        without_wobble: mm(0.01),
        best: None,
    }
}

fn best(amplitude: f64, stud: u8) -> Position {
    let wobble = Arrow::known(mm(amplitude), Angle::ZERO, mm(0.002));
    Position { stud, wobble }
}

#[test]
fn the_next_step_is_the_cheapest_that_can_help() {
    let over = known(Form::Wobble, true);
    let judged = None;
    assert_eq!(next(&Known { judged, ..over }), Next::LookUp);
    assert_eq!(next(&known(Form::Wobble, false)), Next::GoOn);
    let cleaned = false;
    assert_eq!(next(&Known { cleaned, ..over }), Next::Clean);
    assert_eq!(next(&known(Form::Bump, true)), Next::Clean);
    assert_eq!(next(&over), Next::ReadTurned);
    let on = |amplitude, stud, now| {
        next(&Known {
            best: Some((best(amplitude, stud), now)),
            ..over
        })
    };
    assert_eq!(on(0.01, 2, 0), Next::Index);
    assert_eq!(on(0.03, 2, 0), Next::Plate);
    // It sits there already and is over all the same.
    assert_eq!(on(0.01, 2, 2), Next::Plate);
    assert_eq!(next(&known(Form::Warp, true)), Next::NewPart);
    let surface = Surface::HubFace;
    assert_eq!(next(&Known { surface, ..over }), Next::NewPart);
    let without_wobble = mm(0.06);
    assert_eq!(
        next(&Known {
            without_wobble,
            ..over
        }),
        Next::NewPart
    );
}

fn thickness(readings: &[f64]) -> Result<Thickness, ThicknessFault> {
    Thickness::read(mm(0.001), readings.iter().map(|one| mm(*one)).collect())
}

#[test]
fn a_rotor_that_varies_and_is_thin_is_judged_by_the_same_rule() {
    let rotor = thickness(&[22.010, 22.018, 22.031, 22.022]).unwrap();
    assert!((rotor.variation().mm() - 0.021).abs() < 1e-12);
    assert!((rotor.thinnest().mm() - 22.010).abs() < 1e-12);
    assert!(rotor.budget_of_variation().u_c < rotor.budget_of_thinnest().u_c.times(2.0));
    assert_eq!(rotor.varies(mm(0.013)).result, Guarded::ProvenOut);
    assert_eq!(rotor.varies(mm(0.020)).result, Guarded::OutNotProven);
    assert_eq!(rotor.varies(mm(0.022)).result, Guarded::InNotProven);
    assert_eq!(rotor.varies(mm(0.030)).result, Guarded::ProvenIn);
    assert_eq!(rotor.is_thin(mm(22.0)).result, Guarded::ProvenIn);
    assert_eq!(rotor.is_thin(mm(22.008)).result, Guarded::InNotProven);
    assert_eq!(rotor.is_thin(mm(22.011)).result, Guarded::OutNotProven);
    assert_eq!(rotor.is_thin(mm(22.2)).result, Guarded::ProvenOut);
}

#[test]
fn each_slip_with_the_micrometer_is_named() {
    let three = thickness(&[22.0; 3]).unwrap_err();
    assert_eq!(three, ThicknessFault::TooFew { given: 3 });
    let many = thickness(&[22.0; 25]).unwrap_err();
    assert_eq!(many, ThicknessFault::TooMany { given: 25 });
    let none = thickness(&[22.0, 22.0, 0.0, 22.0]).unwrap_err();
    assert_eq!(none, ThicknessFault::NoThickness { index: 2 });
    let division = mm(0.5);
    let coarse = Thickness::read(division, vec![mm(22.0); 4]).unwrap_err();
    assert_eq!(coarse, ThicknessFault::Division { division });
}

#[test]
fn a_micrometer_reads_in_its_own_unit_and_step() {
    let step = |of: Micrometer| (of.unit(), of.division().mm());
    assert_eq!(
        step(Micrometer::HundredthMm),
        (LengthUnit::Millimetre, 0.01)
    );
    assert_eq!(
        step(Micrometer::ThousandthMm),
        (LengthUnit::Millimetre, 0.001)
    );
    // The inch is 25.4 mm by definition.
    assert_eq!(step(Micrometer::Thou), (LengthUnit::Inch, 0.0254));
    assert!((step(Micrometer::TenthThou).1 - 0.002_54).abs() < 1e-15);
}

#[test]
fn a_thin_rotor_outweighs_all_and_the_good_side_must_be_proven() {
    let is = |result| {
        Some(Judged {
            result,
            conformance: 0.5,
        })
    };
    let (fine, near) = (is(Guarded::ProvenIn), is(Guarded::InNotProven));
    let (over, far) = (is(Guarded::OutNotProven), is(Guarded::ProvenOut));
    assert_eq!(next_of_rotor(over, far), RotorNext::NewRotor);
    assert_eq!(next_of_rotor(far, None), RotorNext::NewRotor);
    assert_eq!(next_of_rotor(fine, over), RotorNext::Machine);
    assert_eq!(next_of_rotor(None, far), RotorNext::Machine);
    assert_eq!(next_of_rotor(fine, None), RotorNext::LookUp);
    assert_eq!(next_of_rotor(None, near), RotorNext::LookUp);
    assert_eq!(next_of_rotor(near, fine), RotorNext::MeasureAgain);
    assert_eq!(next_of_rotor(fine, near), RotorNext::MeasureAgain);
    assert_eq!(next_of_rotor(fine, fine), RotorNext::GoOn);
}
