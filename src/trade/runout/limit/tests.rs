//! What a runout or a rotor's thickness says against its limit, and what comes next.

use crate::trade::play::IndicatorError;
use crate::trade::play::conformity::Judged;
use crate::trade::play::limit::NegativeLimit;
use crate::trade::play::uncertainty::{Contribution, Guarded, t_one_sided};
use crate::trade::runout::tests::{degrees, equal, mm, series, wave};
use crate::trade::runout::*;
use crate::units::LengthUnit;
use crate::units::{Angle, Length};

fn limit(value: f64) -> RunoutLimit {
    RunoutLimit::manufacturer(Surface::Rotor, mm(value)).unwrap()
}

#[test]
fn a_limit_is_not_negative_and_only_for_its_surface() {
    let negative = RunoutLimit::manufacturer(Surface::Rotor, mm(-0.01));
    assert_eq!(negative, Err(NegativeLimit { value: mm(-0.01) }));
    let series = equal(&wave(8, 1.0, 6.0));
    let refused = compare(Surface::HubFace, &recorded(&series), &limit(0.05));
    let limit = Surface::Rotor;
    assert_eq!(refused, Err(OtherSurface { limit }));
}

/// The runout of a series that was read with a dial without a certificate.
fn recorded(series: &Series) -> Reach {
    let moves = shape(series).unwrap().moves;
    reach(series, moves, IndicatorError::OneDivision).unwrap()
}

// GUM 5.1 and G.4: the wave of 60 µm has 2 · 10/√12 · √(2/8) µm from the division with 5 degrees of
// freedom, the dial 10/√3 µm; a wave of many times its uncertainty is beyond a limit for sure by
// Student's t of that, and too long by u²/2A (Rice 1945, the first term of his series).
#[test]
fn a_runout_is_proven_over_only_beyond_its_guard_band() {
    let series = equal(&wave(8, 1.0, 6.0));
    let reach = recorded(&series);
    let (scatter, dial) = (2.0 * 10.0 / 12_f64.sqrt() / 2.0, 10.0 / 3_f64.sqrt());
    let u = scatter.hypot(dial);
    assert!((reach.u().mm() * 1e3 - u).abs() < 0.2, "{:?}", reach.u());
    let estimate = reach.read().mm() - reach.u().mm().powi(2) / (2.0 * reach.read().mm());
    assert!((reach.estimate().mm() - estimate).abs() < 1e-4);
    let band = t_one_sided(0.95, reach.dof()) * reach.u().mm();
    let at = |value: f64| {
        let judged = compare(Surface::Rotor, &reach, &limit(value)).unwrap();
        judged.result
    };
    assert_eq!(at(estimate + 1e-4), Guarded::InNotProven);
    assert_eq!(at(estimate + band + 1e-4), Guarded::ProvenIn);
    assert_eq!(at(estimate + band - 3e-4), Guarded::InNotProven);
    assert_eq!(at(estimate - band + 3e-4), Guarded::OutNotProven);
    assert_eq!(at(estimate - band - 3e-4), Guarded::ProvenOut);
}

#[test]
fn a_limit_of_nothing_is_never_proven_within() {
    let flat = recorded(&equal(&[2.0; 8]));
    assert_eq!(flat.estimate(), Length::ZERO);
    assert_eq!(flat.against(Length::ZERO).result, Guarded::InNotProven);
    let (low, high) = flat.interval();
    assert!(low == Length::ZERO && high > flat.u());
    let wobbles = recorded(&equal(&wave(8, 1.0, 6.0)));
    assert_eq!(wobbles.against(Length::ZERO).result, Guarded::ProvenOut);
}

#[test]
fn an_uncertainty_of_zero_is_refused() {
    let series = equal(&wave(8, 1.0, 6.0));
    let moves = shape(&series).unwrap().moves;
    let perfect = IndicatorError::Certificate { u: Length::ZERO };
    assert_eq!(reach(&series, moves, perfect), Err(NoUncertainty));
    let of = |u, dof| Reach::new(mm(0.02), Contribution { u, dof }, Length::ZERO);
    for u in [0.0, -0.001, f64::NAN, f64::INFINITY] {
        assert_eq!(of(u, Some(5.0)), Err(NoUncertainty), "{u}");
    }
    assert_eq!(of(0.002, Some(0.0)), Err(NoUncertainty));
    assert!(of(0.002, None).is_ok());
    // A micrometer's readings that agree are still only read to its division.
    let alike = thickness(&[22.0; 8]).unwrap().variation().unwrap();
    assert!(alike.u() > Length::ZERO);
    assert_eq!(alike.against(Length::ZERO).result, Guarded::InNotProven);
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
    // Off by 30 µm, as a rectangle (GUM 4.3.7).
    let known = |reach: Reach| reach.u().mm().powi(2) - reach.scatter().mm().powi(2);
    let dial = 0.01_f64.powi(2) / 3.0;
    assert!((known(recorded(&closed)) - dial - 0.03_f64.powi(2) / 3.0).abs() < 1e-12);
    let open = equal(&[0.0, 4.0, 8.0, 8.0, 4.0, 0.0]);
    assert_eq!(open.closure(), None);
    assert!((known(recorded(&open)) - dial).abs() < 1e-12);
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
        more_would_tell: false,
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

#[test]
fn no_part_is_condemned_by_scatter() {
    let more_would_tell = true;
    let unsure = |form, over| Known {
        more_would_tell,
        ..known(form, over)
    };
    for form in [Form::Wobble, Form::Warp, Form::Uneven] {
        assert_eq!(next(&unsure(form, false)), Next::ReadMore);
    }
    assert_eq!(next(&unsure(Form::Wobble, true)), Next::ReadMore);
    assert_eq!(next(&unsure(Form::Warp, true)), Next::ReadMore);
    // What is cheap and may be the cause comes first.
    assert_eq!(next(&unsure(Form::Uneven, true)), Next::Clean);
    let cleaned = false;
    let dirty = unsure(Form::Wobble, false);
    assert_eq!(next(&Known { cleaned, ..dirty }), Next::Clean);
    // Proven is proven.
    let judged = |result| Judged {
        result,
        conformance: 0.01,
    };
    let warp = |result| Known {
        judged: Some(judged(result)),
        ..unsure(Form::Warp, true)
    };
    assert_eq!(next(&warp(Guarded::ProvenOut)), Next::NewPart);
    assert_eq!(next(&warp(Guarded::ProvenIn)), Next::GoOn);
}

fn at_steps(readings: &[f64]) -> Vec<(Angle, Length)> {
    let step = 360.0 / f64::from(u32::try_from(readings.len()).unwrap());
    let places = (0_u32..).zip(readings);
    let place = |(place, one): (u32, &f64)| (degrees(step * f64::from(place)), mm(*one));
    places.map(place).collect()
}

fn thickness(readings: &[f64]) -> Result<Thickness, ThicknessError> {
    Thickness::read(mm(0.001), at_steps(readings))
}

#[test]
fn a_rotor_that_varies_and_is_thin_is_judged_by_the_same_rule() {
    let wave = [
        22.030, 22.027, 22.020, 22.013, 22.010, 22.013, 22.020, 22.027,
    ];
    let rotor = thickness(&wave).unwrap();
    assert!((rotor.range().mm() - 0.020).abs() < 1e-12);
    assert!((rotor.thinnest().mm() - 22.010).abs() < 1e-12);
    let variation = rotor.variation().unwrap();
    assert!((variation.estimate().mm() - 0.020).abs() < 2e-4);
    assert!(variation.u() < rotor.budget_of_thinnest().u_c);
    let varies = |most| rotor.varies(mm(most)).unwrap().result;
    assert_eq!(varies(0.013), Guarded::ProvenOut);
    assert_eq!(varies(0.0197), Guarded::OutNotProven);
    assert_eq!(varies(0.0202), Guarded::InNotProven);
    assert_eq!(varies(0.030), Guarded::ProvenIn);
    let four = thickness(&wave[..4]).unwrap();
    let more = Undetermined::NoSpare { more: 1 };
    assert_eq!(four.varies(mm(0.013)), Err(more));
    assert_eq!(rotor.is_thin(mm(22.0)).result, Guarded::ProvenIn);
    assert_eq!(rotor.is_thin(mm(22.008)).result, Guarded::InNotProven);
    assert_eq!(rotor.is_thin(mm(22.011)).result, Guarded::OutNotProven);
    assert_eq!(rotor.is_thin(mm(22.2)).result, Guarded::ProvenOut);
}

#[test]
fn each_slip_with_the_micrometer_is_named() {
    let three = thickness(&[22.0; 3]).unwrap_err();
    assert_eq!(three, ThicknessError::TooFew { given: 3 });
    let many = thickness(&[22.0; 25]).unwrap_err();
    assert_eq!(many, ThicknessError::TooMany { given: 25 });
    let none = thickness(&[22.0, 22.0, 0.0, 22.0]).unwrap_err();
    assert_eq!(none, ThicknessError::NoThickness { index: 2 });
    let division = mm(0.5);
    let coarse = Thickness::read(division, at_steps(&[22.0; 4])).unwrap_err();
    assert_eq!(coarse, ThicknessError::Division { division });
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
    let says = |judged: Option<Judged>| judged.map(Ok);
    let next = |least, variation| next_of_rotor(least, says(variation));
    assert_eq!(next(over, far), RotorNext::NewRotor);
    assert_eq!(next(far, None), RotorNext::NewRotor);
    assert_eq!(next(fine, far), RotorNext::Machine);
    assert_eq!(next(None, far), RotorNext::Machine);
    assert_eq!(next(fine, None), RotorNext::LookUp);
    assert_eq!(next(None, near), RotorNext::LookUp);
    assert_eq!(next(near, fine), RotorNext::MeasureAgain);
    assert_eq!(next(fine, near), RotorNext::MeasureAgain);
    // A variation that is not proven may be scatter: no rotor is machined for it.
    assert_eq!(next(fine, over), RotorNext::MeasureAgain);
    assert_eq!(next(fine, fine), RotorNext::GoOn);
    let few = Some(Err(Undetermined::NoSpare { more: 1 }));
    assert_eq!(next_of_rotor(fine, few), RotorNext::MeasureAgain);
}
