//! What must hold for every series round a face and for every pair of hub and rotor.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

use hubslate::trade::play::{Dial, DialKind, Divisions, IndicatorError};
use hubslate::trade::runout::{
    Arrow, Fit, MeasuredAs, Order, RunoutLimit, Series, Spot, Studs, Surface, best_fit, compare,
    fit, positions, reach, separate, shape,
};
use hubslate::units::{Angle, AngleUnit, Length, LengthUnit};
use proptest::prelude::*;

/// Amplitude and high spot in millimetres and degrees.
type Wave = (f64, f64);

fn degrees(value: f64) -> Angle {
    Angle::new(value, AngleUnit::Degree).unwrap()
}

fn mm(value: f64) -> Length {
    Length::new(value, LengthUnit::Millimetre).unwrap()
}

/// A dial whose division is a millimetre.
fn dial() -> Dial {
    Dial::new(mm(1.0), 1000, DialKind::Plunger).unwrap()
}

fn spot(angle: f64, needle: f64) -> Spot {
    Spot {
        angle: degrees(angle),
        needle: Divisions::new(needle).unwrap(),
        left_out: None,
    }
}

fn read(dial: Dial, spots: &[(f64, f64)]) -> Series {
    let spots = spots.iter().map(|(angle, needle)| spot(*angle, *needle));
    Series::read(dial, spots.collect()).unwrap()
}

/// Readings of a mean and two waves at these angles.
fn waves(angles: &[f64], mean: f64, first: Wave, second: Wave) -> Vec<(f64, f64)> {
    let wave = |times: f64, angle: f64, (height, at): Wave| {
        height * (times * angle - at).to_radians().cos()
    };
    let needle = |angle: f64| mean + wave(1.0, angle, first) + wave(2.0, angle, second);
    angles
        .iter()
        .map(|angle| (*angle, needle(*angle)))
        .collect()
}

fn equal_steps(places: usize) -> Vec<f64> {
    (0..places)
        .map(|place| 360.0 * place as f64 / places as f64)
        .collect()
}

/// Steps of 360° / n, each place up to a quarter step off.
fn uneven_steps() -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec(-0.25..0.25_f64, 7..=24).prop_map(|off| {
        let step = 360.0 / off.len() as f64;
        let place = |(place, off): (usize, &f64)| (place as f64 + off) * step;
        off.iter().enumerate().map(place).collect()
    })
}

fn arrow() -> impl Strategy<Value = Arrow> {
    (0.001..0.2_f64, 0.0..360.0_f64, 0.0..0.01_f64)
        .prop_map(|(height, at, u)| Arrow::known(mm(height), degrees(at), mm(u)))
}

fn wave() -> impl Strategy<Value = Wave> {
    (0.1..100.0_f64, 0.0..360.0_f64)
}

fn apart_deg(a: f64, b: f64) -> f64 {
    let apart = (a - b).rem_euclid(360.0);
    apart.min(360.0 - apart)
}

fn phase(arrow: &Arrow) -> f64 {
    arrow.phase().unwrap().in_unit(AngleUnit::Degree)
}

fn is_wave(arrow: &Arrow, (height, at): Wave) -> bool {
    (arrow.amplitude().mm() - height).abs() < 1e-9 && apart_deg(phase(arrow), at) < 1e-6
}

/// The two ends of an arrow, so that alike ones can be told whatever their phase.
fn ends(arrow: &Arrow) -> (f64, f64) {
    let at = arrow
        .phase()
        .map_or(0.0, |at| at.in_unit(AngleUnit::Degree));
    let (sin, cos) = at.to_radians().sin_cos();
    (arrow.amplitude().mm() * cos, arrow.amplitude().mm() * sin)
}

fn is_alike(a: &Arrow, b: &Arrow) -> bool {
    let (a, b) = (ends(a), ends(b));
    (a.0 - b.0).hypot(a.1 - b.1) < 1e-9
}

fn both(spots: &[(f64, f64)]) -> Fit {
    fit(&read(dial(), spots), Order::Second).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn pure_waves_come_back_from_equal_steps(
        places in 5..=24_usize, mean in -200.0..200.0_f64, one in wave(), two in wave(),
    ) {
        let recorded = both(&waves(&equal_steps(places), mean, one, two));
        prop_assert!((recorded.mean.mm() - mean).abs() < 1e-9);
        prop_assert!(is_wave(&recorded.first, one) && is_wave(&recorded.second.unwrap(), two));
        prop_assert!(recorded.rms.mm() < 1e-9);
    }

    #[test]
    fn pure_waves_come_back_from_uneven_steps(
        angles in uneven_steps(), mean in -200.0..200.0_f64, one in wave(), two in wave(),
    ) {
        let recorded = both(&waves(&angles, mean, one, two));
        prop_assert!((recorded.mean.mm() - mean).abs() < 1e-9);
        prop_assert!(is_wave(&recorded.first, one) && is_wave(&recorded.second.unwrap(), two));
    }

    #[test]
    fn the_order_of_the_readings_does_not_count(
        (spots, mixed) in prop::collection::vec(-300.0..300.0_f64, 5..=24)
            .prop_map(|needles| {
                let angles = equal_steps(needles.len());
                angles.into_iter().zip(needles).collect::<Vec<_>>()
            })
            .prop_flat_map(|spots| (Just(spots.clone()), Just(spots).prop_shuffle())),
    ) {
        let (a, b) = (both(&spots), both(&mixed));
        prop_assert!(is_alike(&a.first, &b.first));
        prop_assert!(is_alike(&a.second.unwrap(), &b.second.unwrap()));
        prop_assert!((a.rms.mm() - b.rms.mm()).abs() < 1e-9);
        prop_assert_eq!(read(dial(), &spots).tir(), read(dial(), &mixed).tir());
    }

    #[test]
    fn beginning_elsewhere_only_turns_the_waves(
        angles in uneven_steps(), one in wave(), two in wave(), by in 0.0..360.0_f64,
    ) {
        let spots = waves(&angles, 3.0, one, two);
        let turned: Vec<_> = spots.iter().map(|(angle, needle)| (angle + by, *needle)).collect();
        let (a, b) = (both(&spots), both(&turned));
        prop_assert!(is_wave(&b.first, (a.first.amplitude().mm(), phase(&a.first) + by)));
        let (warp, turned) = (a.second.unwrap(), b.second.unwrap());
        prop_assert!(is_wave(&turned, (warp.amplitude().mm(), phase(&warp) + 2.0 * by)));
        prop_assert!((a.first.u().mm() - b.first.u().mm()).abs() < 1e-9);
    }

    #[test]
    fn a_dial_in_inches_tells_the_same(
        needles in prop::collection::vec(-40.0..40.0_f64, 5..=24),
    ) {
        let spots: Vec<_> = equal_steps(needles.len()).into_iter().zip(needles).collect();
        let inches: Vec<_> = spots.iter().map(|(at, needle)| (*at, needle * 0.01 / 0.0254)).collect();
        let series = (read(Dial::HUNDREDTH_MM, &spots), read(
            Dial::new(Length::new(1.0, LengthUnit::Thou).unwrap(), 1000, DialKind::Plunger).unwrap(),
            &inches,
        ));
        let (a, b) = (best_fit(&series.0).unwrap(), best_fit(&series.1).unwrap());
        prop_assert!((series.0.tir().mm() - series.1.tir().mm()).abs() < 1e-9);
        prop_assert!(is_alike(&a.first, &b.first));
        prop_assert!((a.rms.mm() - b.rms.mm()).abs() < 1e-9);
    }

    // Some place is within half a step of the high spot and, with an even count, the opposite
    // place is as near to the low spot; each can be off by a residual.
    #[test]
    fn a_wobble_shows_in_the_total_reading(
        half in 2..=12_usize, needles in prop::collection::vec(-300.0..300.0_f64, 24),
    ) {
        let places = 2 * half;
        let spots: Vec<_> = equal_steps(places).into_iter().zip(needles).collect();
        let series = read(dial(), &spots);
        let recorded = fit(&series, Order::First).unwrap();
        let worst = recorded.residuals.iter().fold(0.0_f64, |a, r| a.max(r.abs().mm()));
        let shown = (std::f64::consts::PI / places as f64).cos();
        let least = recorded.first.reach().mm() * shown - 2.0 * worst;
        prop_assert!(series.tir().mm() >= least - 1e-9);
    }

    #[test]
    fn positions_are_sorted_and_are_what_brute_force_finds(
        hub in arrow(), rotor in arrow(), count in 3..=10_u8,
    ) {
        let studs = Studs::new(count).unwrap();
        let recorded = positions(&MeasuredAs::Apart { hub, rotor }, studs).unwrap();
        let heights: Vec<f64> = recorded.iter().map(|one| one.wobble.amplitude().mm()).collect();
        prop_assert!(heights.windows(2).all(|pair| pair[0] <= pair[1] + 1e-9));
        let mut seen: Vec<u8> = recorded.iter().map(|one| one.stud).collect();
        seen.sort_unstable();
        prop_assert_eq!(seen, (0..count).collect::<Vec<_>>());
        for one in &recorded {
            // Both waves added up at a thousand places, half their largest difference.
            let on = 360.0 * f64::from(one.stud) / f64::from(count);
            let at = |place: f64| {
                let wave = |arrow: &Arrow, on: f64| {
                    arrow.amplitude().mm() * (place - phase(arrow) - on).to_radians().cos()
                };
                wave(&hub, 0.0) + wave(&rotor, on)
            };
            let needles = || (0..1000).map(|place| at(0.36 * f64::from(place)));
            let reach = needles().fold(f64::MIN, f64::max) - needles().fold(f64::MAX, f64::min);
            prop_assert!((one.reach().mm() - reach).abs() < 1e-4 * one.reach().mm() + 1e-5);
            let u = hub.u().mm().hypot(rotor.u().mm());
            prop_assert!((one.wobble.u().mm() - u).abs() < 1e-12);
        }
    }

    #[test]
    fn hub_and_rotor_come_apart_and_together_again(
        hub in arrow(), rotor in arrow(), count in 3..=10_u8, a in 0..10_u8, step in 1..10_u8,
    ) {
        let studs = Studs::new(count).unwrap();
        let (a, b) = (a % count, (a + 1 + step % (count - 1)) % count);
        let on = |stud: u8| (stud, hub.plus(&rotor.turned(studs.angle(stud))));
        let (one, other) = (on(a), on(b));
        let (h, r) = separate(studs, one, other).unwrap();
        prop_assert!(is_alike(&h, &hub) && is_alike(&r, &rotor));
        let assembled = positions(&MeasuredAs::Assembled { one, other }, studs).unwrap();
        let by_parts = positions(&MeasuredAs::Apart { hub, rotor }, studs).unwrap();
        for one in &assembled {
            let other = by_parts.iter().find(|other| other.stud == one.stud).unwrap();
            prop_assert!(is_alike(&one.wobble, &other.wobble));
        }
    }

    #[test]
    fn a_wider_limit_never_judges_harder(
        needles in prop::collection::vec(-20.0..20.0_f64, 5..=24),
        limits in (0.0..1.0_f64, 0.0..1.0_f64),
    ) {
        let spots: Vec<_> = equal_steps(needles.len()).into_iter().zip(needles).collect();
        let series = read(Dial::HUNDREDTH_MM, &spots);
        let moves = shape(&series).unwrap().moves;
        let reach = reach(&series, moves, IndicatorError::OneDivision).unwrap();
        let judged = |limit: f64| {
            let limit = RunoutLimit::manufacturer(Surface::Rotor, mm(limit)).unwrap();
            compare(Surface::Rotor, &reach, &limit).unwrap()
        };
        let (tight, wide) = (judged(limits.0.min(limits.1)), judged(limits.0.max(limits.1)));
        prop_assert!(wide.result as u8 <= tight.result as u8);
        prop_assert!(wide.conformance >= tight.conformance - 1e-12);
        let (low, high) = reach.interval();
        prop_assert!(low <= reach.estimate() && reach.estimate() <= high);
        prop_assert!(reach.holds(reach.estimate()));
    }
}
