use super::*;
use crate::trade::play::{Dial, Divisions};
use crate::units::{Angle, AngleUnit, Length, NotFinite};

pub(super) fn degrees(value: f64) -> Angle {
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
pub(super) fn equal(needles: &[f64]) -> Series {
    let needles: Vec<_> = needles.iter().map(|n| Divisions::new(*n)).collect();
    Series::equally_spaced(Dial::HUNDREDTH_MM, &needles).unwrap()
}

pub(super) fn series(spots: &[(f64, f64)]) -> Series {
    let spots = spots.iter().map(|(angle, needle)| at(*angle, *needle));
    Series::read(Dial::HUNDREDTH_MM, spots.collect()).unwrap()
}

pub(super) fn mm(value: f64) -> Length {
    Length::millimetres(value)
}

/// Needles of a pure wave, rounded to half divisions as they are read.
pub(super) fn wave(places: u32, waves: f64, divisions: f64) -> Vec<f64> {
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
    let fault = |saved| Err(SeriesError::TooFew { saved, needed: 2 });
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
    let fault = SeriesError::TooMany { given: 26 };
    assert_eq!(Series::read(Dial::THOU, spots(26)), Err(fault));
}

#[test]
fn a_reading_beyond_the_face_is_refused() {
    let spots = vec![at(0.0, 1.0), at(90.0, -101.0), at(180.0, 2.0)];
    let fault = SeriesError::OffTheDial { index: 1 };
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
fn four_places_leave_nothing_to_tell_scatter_by() {
    let four = equal(&[0.0, 5.0, 8.0, 3.0]);
    let open = Undetermined::Rank { rank: 4, needed: 5 };
    assert_eq!(fit(&four, Order::Second).unwrap_err(), open);
    let more = Undetermined::NoSpare { more: 1 };
    assert_eq!(best_fit(&four).unwrap_err(), more);
    assert_eq!(shape(&four).unwrap_err(), more);
}

// Five unknowns meet five readings, whatever they are: that is no warp. `fit` alone still does it,
// as numpy's FFT does.
#[test]
fn five_places_are_not_met_by_two_waves() {
    let five = equal(&[0.0, 5.0, 1.0, 4.0, 0.0]);
    let met = fit(&five, Order::Second).unwrap();
    assert!(met.spare == 0 && met.rms.mm() < 1e-12 && !met.first.u().mm().is_finite());
    let best = best_fit(&five).unwrap();
    assert_eq!((best.second, best.spare), (None, 2));
    assert_eq!(shape(&five).unwrap().form, Form::Uneven);
}

// A warp of 40 µm by a hand that scatters 10 µm: lost in it at 8 places, told at 24.
#[test]
fn a_warp_counts_only_where_scatter_does_not_make_one() {
    let scattered = |places: u32| {
        let mut needles = wave(places, 2.0, 2.0);
        for (place, needle) in needles.iter_mut().enumerate() {
            *needle += [1.0, -1.0, -1.0, 1.0, 0.5, -0.5, 1.5][place % 7];
        }
        best_fit(&equal(&needles)).unwrap()
    };
    assert_eq!(scattered(8).second, None);
    assert!(scattered(24).second.is_some());
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
    let recorded = shape(&equal(&[3.0; 8])).unwrap();
    assert_eq!(recorded.form, Form::True);
    assert_eq!(recorded.high_spot, None);
    assert_eq!(recorded.fit.first.sure_to(), None);
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
    let recorded = shape(&equal(needles)).unwrap();
    assert_eq!(recorded.form, form);
    let high = recorded
        .high_spot
        .map(|spot| spot.in_unit(AngleUnit::Degree));
    match (high, high_spot) {
        (Some(high), Some(known)) => assert!((high - known).abs() < 5.0, "{high}"),
        (high, known) => assert_eq!(high, known),
    }
}

#[test]
fn each_shape_is_named() {
    looks(&wave(8, 1.0, 6.0), Form::Wobble, Some(0.0));
    looks(&wave(12, 2.0, 6.0), Form::Warp, Some(0.0));
    looks(&wave(5, 1.0, 6.0), Form::Wobble, Some(0.0));
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
        None,
    );
}

#[test]
fn a_burr_on_a_wobble_is_still_found() {
    let mut needles = wave(12, 1.0, 4.0);
    needles[5] += 6.0;
    let recorded = shape(&equal(&needles)).unwrap();
    assert_eq!(recorded.form, Form::Bump);
    assert!((recorded.high_spot.unwrap().in_unit(AngleUnit::Degree) - 150.0).abs() < 1e-9);
    assert!((recorded.stands_out.unwrap().mm() - 0.06).abs() < 0.01);
}

// GUM 5.1: with n equal steps each part of a wave has the variance 2 u² / n.
#[test]
fn the_uncertainty_of_a_wobble_is_carried_through_the_fit() {
    let fit = fit(&equal(&wave(8, 1.0, 0.0)), Order::First).unwrap();
    // Readings that agree are still only read to the division, which gives them no freedom more.
    let one = 0.01 / 12_f64.sqrt();
    assert!((fit.first.u().mm() - one * (2.0 / 8.0_f64).sqrt()).abs() < 1e-12);
    assert_eq!(fit.first.dof(), Some(5.0));
    let needles = [0.0, 9.0, 1.0, 8.0, 0.0, 9.0, 1.0, 8.0];
    let scattered = super::fit(&equal(&needles), Order::First).unwrap().first;
    assert_eq!(scattered.dof(), Some(5.0));
    // The squares about the mean are 130 divisions²; those of the wave are in them, 4 · A².
    let own = 4.0 * scattered.amplitude().mm().powi(2);
    let s = ((130.0e-4 - own) / 5.0).sqrt();
    assert!((scattered.u().mm() - s / 2.0).abs() < 1e-12);
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
    for ((angle, reading), residual) in series.saved().zip(&fit.residuals) {
        assert!((fit.at(angle).plus(*residual).mm() - reading.mm()).abs() < 1e-12);
    }
    assert!(fit.without_wobble() < series.tir());
}
