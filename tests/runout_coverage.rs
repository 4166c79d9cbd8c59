//! Does the printed interval of a runout hold the true one as often as it says, and does scatter
//! alone condemn nothing? Faces are simulated from a known truth, by one seed.
//!
//! Each face has a wobble of a known runout and a high spot by chance, an error of the dial that
//! makes a wave of its own, normal with the standard uncertainty which the budget gives it, and a
//! normal scatter on each reading. What is told is held to the truth that was put in.
//!
//! What is not held here, and why. At four places one reading is to spare, and nothing is told. A
//! dial with divisions of 10 µm hides a scatter below half a division: the division stands for it,
//! and the interval holds the truth more often than it says. An error of the dial that keeps
//! strictly within its limits, as a rectangle does, is held more often than one that is normal,
//! where it is most of the uncertainty.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

use std::f64::consts::TAU;

use hubslate::trade::play::uncertainty::{Guarded, t_two_sided};
use hubslate::trade::play::{Dial, DialKind, Divisions, IndicatorError};
use hubslate::trade::practice::chance::Chance;
use hubslate::trade::runout::{Reach, Series, Thickness, Undetermined, reach, shape};
use hubslate::units::{Angle, AngleUnit, Length, LengthUnit};

/// What rotors are often allowed, in micrometres.
const LIMIT: f64 = 50.0;

fn um(value: f64) -> Length {
    Length::new(value, LengthUnit::Micrometre).unwrap()
}

/// What is simulated, in micrometres.
#[derive(Clone, Copy, Debug)]
struct Case {
    places: u32,
    scatter: f64,
    truth: f64,
    gauge: Gauge,
    faces: u32,
}

/// What it is read with, in micrometres.
#[derive(Clone, Copy, Debug)]
struct Gauge {
    division: f64,
    /// Readings are taken to this step.
    step: f64,
    /// Standard uncertainty of the dial; `None` for one without a certificate.
    certificate: Option<f64>,
}

/// A dial of 0.001 mm whose certificate gives 3 µm either way: 3 / √3.
const FINE: Gauge = Gauge {
    division: 1.0,
    step: 0.5,
    certificate: Some(1.732_050_8),
};
/// A dial of 0.01 mm without a certificate, read to half a division: 10 / √3.
const COMMON: Gauge = Gauge {
    division: 10.0,
    step: 5.0,
    certificate: None,
};

impl Gauge {
    fn error(self) -> IndicatorError {
        self.certificate.map_or(IndicatorError::OneDivision, |u| {
            IndicatorError::Certificate { u: um(u) }
        })
    }

    fn u(self) -> f64 {
        self.certificate.unwrap_or(self.division / 3_f64.sqrt())
    }
}

/// A wave of this reach with its high spot by chance, as its two parts.
fn wave(chance: &mut Chance, reach: f64) -> (f64, f64) {
    let (sin, cos) = (TAU * chance.share()).sin_cos();
    (reach / 2.0 * cos, reach / 2.0 * sin)
}

fn angle(place: u32, places: u32) -> f64 {
    TAU * f64::from(place) / f64::from(places)
}

impl Case {
    fn heights(&self, chance: &mut Chance, error: f64) -> Vec<f64> {
        let (mut x, mut y) = wave(chance, self.truth);
        x += error / 2.0 * chance.normal();
        y += error / 2.0 * chance.normal();
        let height = |place| {
            let (sin, cos) = angle(place, self.places).sin_cos();
            x * cos + y * sin + self.scatter * chance.normal()
        };
        (0..self.places).map(height).collect()
    }

    fn series(&self, chance: &mut Chance) -> Series {
        let Gauge { division, step, .. } = self.gauge;
        let dial = Dial::new(um(division), 1000, DialKind::Plunger).unwrap();
        let heights = self.heights(chance, self.gauge.u()).into_iter();
        let needles: Vec<_> = heights
            .map(|height| Divisions::new((height / step).round() * step / division))
            .collect();
        Series::equally_spaced(dial, &needles).unwrap()
    }

    fn reach(&self, chance: &mut Chance) -> Reach {
        let series = self.series(chance);
        let moves = shape(&series).unwrap().moves;
        reach(&series, moves, self.gauge.error()).unwrap()
    }

    /// A rotor under a micrometer of 0.001 mm; its own error drops out of a difference.
    fn variation(&self, chance: &mut Chance) -> Reach {
        let heights = self.heights(chance, 0.0).into_iter();
        let places = (0..).zip(heights).map(|(place, height)| {
            let turn = f64::from(place) / f64::from(self.places);
            let angle = Angle::new(turn, AngleUnit::Turn).unwrap();
            (angle, um(22_000.0 + height.round()))
        });
        let rotor = Thickness::read(um(1.0), places.collect()).unwrap();
        rotor.variation().unwrap()
    }

    /// All faces of this case, from a seed of its own.
    fn tally(&self, seed: u64, read: impl Fn(&Self, &mut Chance) -> Reach) -> Tally {
        let mut chance = Chance::at(11, seed);
        let truth = um(self.truth);
        let mut tally = Tally::default();
        for face in 0..self.faces {
            let reach = read(self, &mut chance);
            tally.holds += u32::from(reach.holds(truth));
            let at_truth = reach.against(truth);
            tally.above += u32::from(at_truth.is_over());
            tally.proven_over += u32::from(at_truth.result == Guarded::ProvenOut);
            tally.proven_within += u32::from(at_truth.result == Guarded::ProvenIn);
            tally.over += u32::from(self.truth < LIMIT && reach.against(um(LIMIT)).is_over());
            // What is printed is solved for; a part of the faces is enough to see that it agrees.
            if face % 32 == 0 {
                let (low, high) = reach.interval();
                let printed = low <= truth && truth <= high;
                assert_eq!(printed, reach.holds(truth), "{self:?}: {reach:?}");
                let above = reach.estimate() > truth;
                assert_eq!(above, at_truth.is_over(), "{self:?}: {reach:?}");
                assert!(low <= reach.estimate() && reach.estimate() <= high);
            }
        }
        tally
    }

    /// The expanded uncertainty of the scatter and the dial that are put in, by GUM G.6.4: Student's
    /// t with the readings to spare, times twice the uncertainty of one part of a wave.
    fn expanded(&self) -> f64 {
        let of_scatter = 2.0 * self.scatter * (2.0 / f64::from(self.places)).sqrt();
        let spare = f64::from(self.places) - 3.0;
        t_two_sided(0.95, Some(spare)) * of_scatter.hypot(self.gauge.u())
    }
}

#[derive(Debug, Default)]
struct Tally {
    /// Faces whose interval holds the truth.
    holds: u32,
    /// Faces that are told higher than the truth.
    above: u32,
    /// Faces that are proven over, or within, a limit that is the truth itself.
    proven_over: u32,
    proven_within: u32,
    /// Faces over [`LIMIT`], proven or not.
    over: u32,
}

fn percent(of: u32, all: u32) -> f64 {
    100.0 * f64::from(of) / f64::from(all)
}

fn cases(places: &[u32], scatters: &[f64], gauge: Gauge) -> Vec<Case> {
    let mut cases = Vec::new();
    for places in places {
        for scatter in scatters {
            for share in [0.0, 0.5, 1.0] {
                cases.push(Case {
                    places: *places,
                    scatter: *scatter,
                    truth: share * LIMIT,
                    gauge,
                    // Five places come nearest to 93 %, so that they are looked at more closely.
                    faces: if *places == 5 { 8000 } else { 2000 },
                });
            }
        }
    }
    cases
}

/// Every case tallied, on two threads.
fn tallied(
    cases: &[Case],
    read: impl Fn(&Case, &mut Chance) -> Reach + Copy + Sync,
) -> Vec<(Case, Tally)> {
    let run = |half: usize| {
        let mine = cases.iter().enumerate().skip(half).step_by(2);
        mine.map(|(seed, case)| (*case, case.tally(seed as u64, read)))
            .collect::<Vec<_>>()
    };
    std::thread::scope(|scope| {
        let other = scope.spawn(|| run(1));
        let mut all = run(0);
        all.extend(other.join().unwrap());
        all
    })
}

/// Every complaint of every case, so that one run shows them all.
///
/// A limit that is the truth itself is passed for sure in 5 % either way, by the t in the plane,
/// which is right to a few tenths of that; with two and three readings to spare 6.8 % were seen.
fn held(tallied: &[(Case, Tally)], most: f64) {
    let mut complaints = Vec::new();
    for (case, tally) in tallied {
        let share = |of| percent(of, case.faces);
        let mut hold = |name: &str, of: u32, low: f64, high: f64| {
            if !(low..=high).contains(&share(of)) {
                complaints.push(format!("{name} in {:.1} %: {case:?}", share(of)));
            }
        };
        hold("holds", tally.holds, 93.0, most);
        hold("proven over", tally.proven_over, 0.0, 7.0);
        hold("proven within", tally.proven_within, 0.0, 7.0);
        // Too high as often as too low: 50 %, and with few readings to spare a little less.
        hold("above", tally.above, 40.0, 58.0);
    }
    assert!(complaints.is_empty(), "{complaints:#?}");
}

#[test]
fn the_interval_of_a_runout_holds_the_true_one_as_often_as_it_says() {
    let cases = cases(&[5, 6, 8, 12, 24], &[2.0, 7.0, 20.0], FINE);
    held(&tallied(&cases, Case::reach), 97.0);
}

#[test]
fn a_common_dial_tells_as_much_as_it_says() {
    let usual = cases(&[8, 24], &[5.0, 20.0], COMMON);
    held(&tallied(&usual, Case::reach), 97.0);
}

#[test]
fn the_interval_of_a_variation_holds_the_true_one_as_often_as_it_says() {
    let cases = cases(&[6, 12], &[2.0, 10.0], FINE);
    held(&tallied(&cases, Case::variation), 97.0);
}

#[test]
fn a_face_that_is_good_by_its_uncertainty_is_over_in_five_percent_at_most() {
    for (gauge, scatters) in [(FINE, [2.0, 7.0, 20.0]), (COMMON, [5.0, 10.0, 20.0])] {
        let mut cases = cases(&[5, 6, 8, 12, 24], &scatters, gauge);
        for case in &mut cases {
            case.truth = LIMIT - case.expanded();
            case.faces = 1000;
        }
        // Where the uncertainty is larger than the limit there is no such face.
        cases.retain(|case| case.truth >= 0.0);
        assert!(cases.len() >= 18, "{}", cases.len());
        for (case, tally) in tallied(&cases, Case::reach) {
            let over = percent(tally.over, case.faces);
            assert!(over <= 5.0, "over in {over:.1} %: {case:?}");
        }
    }
}

// The range of eight normal readings is 2.847 standard deviations on average (Tippett 1925, d2 of
// the control charts; from memory): 14 µm of a face without runout, by a hand that scatters 5 µm.
#[test]
fn a_flat_face_reads_a_range_and_is_not_judged_by_it() {
    let case = Case {
        places: 8,
        scatter: 5.0,
        truth: 0.0,
        gauge: Gauge {
            certificate: Some(0.1),
            ..FINE
        },
        faces: 2000,
    };
    let mut chance = Chance::of(11);
    let (mut range, mut over_by_range, mut over) = (0.0, 0, 0);
    let limit = um(12.0);
    for _ in 0..case.faces {
        let series = case.series(&mut chance);
        range += series.tir().in_unit(LengthUnit::Micrometre) / f64::from(case.faces);
        over_by_range += u32::from(series.tir() > limit);
        let moves = shape(&series).unwrap().moves;
        let reach = reach(&series, moves, case.gauge.error()).unwrap();
        over += u32::from(reach.against(limit).is_over());
    }
    assert!((range - 14.2).abs() < 0.3, "{range}");
    assert!(percent(over_by_range, case.faces) > 60.0);
    assert!(percent(over, case.faces) < 5.0, "{over}");
}

#[test]
fn four_places_say_nothing_and_ask_for_more() {
    let mut chance = Chance::of(11);
    for truth in [0.0, LIMIT] {
        let case = Case {
            places: 4,
            scatter: 2.0,
            truth,
            gauge: FINE,
            faces: 1,
        };
        let refused = shape(&case.series(&mut chance)).unwrap_err();
        assert_eq!(refused, Undetermined::NoSpare { more: 1 });
    }
}

// A warp of 60 µm beside a wobble of 30 µm, each with its high spot by chance; how far both move the
// needle is looked for at 3600 places.
#[test]
fn a_warp_beside_a_wobble_is_told_as_surely() {
    let mut chance = Chance::of(11);
    let (mut holds, mut over, all) = (0, 0, 1500);
    for _ in 0..all {
        let (first, second) = (wave(&mut chance, 30.0), wave(&mut chance, 60.0));
        let height = |angle: f64| {
            let ((sin, cos), (sin2, cos2)) = (angle.sin_cos(), (2.0 * angle).sin_cos());
            first.0 * cos + first.1 * sin + second.0 * cos2 + second.1 * sin2
        };
        let heights = || (0..3600).map(|at| height(angle(at, 3600)));
        let truth = heights().fold(f64::MIN, f64::max) - heights().fold(f64::MAX, f64::min);
        let needles: Vec<_> = (0..24)
            .map(|place| Divisions::new(height(angle(place, 24)) + 5.0 * chance.normal()))
            .collect();
        let dial = Dial::new(um(1.0), 1000, DialKind::Plunger).unwrap();
        let series = Series::equally_spaced(dial, &needles).unwrap();
        let moves = shape(&series).unwrap().moves;
        let u = IndicatorError::Certificate { u: um(0.1) };
        let reach = reach(&series, moves, u).unwrap();
        holds += u32::from(reach.holds(um(truth)));
        over += u32::from(reach.against(um(truth)).result == Guarded::ProvenOut);
    }
    let held = percent(holds, all);
    assert!((93.0..=97.0).contains(&held), "holds in {held:.1} %");
    assert!(percent(over, all) <= 7.0, "{over}");
}
