//! Does the printed interval of a runout hold the true one as often as it says, and does scatter
//! alone condemn nothing? Faces are simulated from a known truth, by one seed.
//!
//! Each face has a wobble of a known runout and a high spot by chance, an error of the dial that
//! makes a wave of its own, normal with the standard uncertainty which the budget gives it, and a
//! normal scatter on each reading. What is told is held to the truth that was put in.
//!
//! What is not held here, and why. At four places one reading is to spare, and nothing is told; the
//! last tests show what would be. A dial with divisions of 10 µm hides a scatter below half a division: the division stands for it,
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

use hubslate::trade::play::uncertainty::{Contribution, Guarded, t_two_sided};
use hubslate::trade::play::{Dial, DialKind, Divisions, IndicatorError};
use hubslate::trade::practice::chance::Chance;
use hubslate::trade::runout::{Order, Reach, Series, Thickness, Undetermined, fit, reach, shape};
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

    /// Faces of this case, from a seed of its own, until it is clear what they say.
    fn tally(&self, seed: u64, read: impl Fn(&Self, &mut Chance) -> Reach) -> Tally {
        let mut chance = Chance::at(11, seed);
        let truth = um(self.truth);
        let mut tally = Tally::default();
        while tally.faces < FEWEST || (tally.faces < MOST && !tally.is_clear()) {
            let reach = read(self, &mut chance);
            tally.holds += u32::from(reach.holds(truth));
            let at_truth = reach.against(truth);
            tally.above += u32::from(at_truth.is_over());
            tally.proven_over += u32::from(at_truth.result == Guarded::ProvenOut);
            tally.proven_within += u32::from(at_truth.result == Guarded::ProvenIn);
            // What is printed is solved for; a part of the faces is enough to see that it agrees.
            if tally.faces.is_multiple_of(128) {
                let (low, high) = reach.interval();
                let printed = low <= truth && truth <= high;
                assert_eq!(printed, reach.holds(truth), "{self:?}: {reach:?}");
                let above = reach.estimate() > truth;
                assert_eq!(above, at_truth.is_over(), "{self:?}: {reach:?}");
                assert!(low <= reach.estimate() && reach.estimate() <= high);
            }
            tally.faces += 1;
        }
        tally
    }

    /// How often a face of this case is over [`LIMIT`], proven or not, in percent.
    fn over(&self, seed: u64) -> f64 {
        let mut chance = Chance::at(11, seed);
        let is_over = |_| u32::from(self.reach(&mut chance).against(um(LIMIT)).is_over());
        percent((0..1000).map(is_over).sum(), 1000)
    }

    /// The expanded uncertainty of the scatter and the dial that are put in, by GUM G.6.4: Student's
    /// t with the readings to spare, times twice the uncertainty of one part of a wave.
    fn expanded(&self) -> f64 {
        let of_scatter = 2.0 * self.scatter * (2.0 / f64::from(self.places)).sqrt();
        let spare = f64::from(self.places) - 3.0;
        t_two_sided(0.95, Some(spare)) * of_scatter.hypot(self.gauge.u())
    }
}

/// A share of 95 % of so few faces is known to 0.6 % (one standard deviation of the binomial), and
/// of so many to 0.2 %.
const FEWEST: u32 = 1500;
const MOST: u32 = 12_000;
/// A share this far within what is held needs no more faces, in percent.
const CLEAR: f64 = 0.8;

#[derive(Debug, Default)]
struct Tally {
    faces: u32,
    /// Faces whose interval holds the truth.
    holds: u32,
    /// Faces that are told higher than the truth.
    above: u32,
    /// Faces that are proven over, or within, a limit that is the truth itself.
    proven_over: u32,
    proven_within: u32,
}

impl Tally {
    /// Every share that is held, in percent, with its bounds.
    ///
    /// A limit that is the truth itself is passed for sure in 5 % either way, by the t in the
    /// plane, which is right to a few tenths of that; with two and three readings to spare 6.8 %
    /// were seen. The estimate is too high as often as too low: 50 %, and with few readings to
    /// spare a little less.
    fn held(&self) -> [(&'static str, f64, f64, f64); 4] {
        let share = |of| percent(of, self.faces);
        [
            ("holds", share(self.holds), 93.0, 97.0),
            ("proven over", share(self.proven_over), f64::MIN, 7.0),
            ("proven within", share(self.proven_within), f64::MIN, 7.0),
            ("above", share(self.above), 40.0, 58.0),
        ]
    }

    fn is_clear(&self) -> bool {
        let mut held = self.held().into_iter();
        held.all(|(_, share, low, high)| low + CLEAR <= share && share <= high - CLEAR)
    }
}

fn percent(of: u32, all: u32) -> f64 {
    100.0 * f64::from(of) / f64::from(all)
}

/// So many places and scatters, each with no runout, the limit, and one between that differs from
/// number to number of places: 5, 12.5, 20, 27.5 or 35 µm.
fn cases(places: impl IntoIterator<Item = u32>, scatters: &[f64], gauge: Gauge) -> Vec<Case> {
    let mut cases = Vec::new();
    for places in places {
        let between = 0.1 + 0.15 * f64::from(places % 5);
        for scatter in scatters {
            for share in [0.0, between, 1.0] {
                cases.push(Case {
                    places,
                    scatter: *scatter,
                    truth: share * LIMIT,
                    gauge,
                });
            }
        }
    }
    cases
}

/// Every case with what is counted in it, on two threads.
fn counted<T: Send>(
    cases: &[Case],
    count: impl Fn(&Case, u64) -> T + Copy + Sync,
) -> Vec<(Case, T)> {
    let run = |half: usize| {
        let mine = cases.iter().enumerate().skip(half).step_by(2);
        mine.map(|(seed, case)| (*case, count(case, seed as u64)))
            .collect::<Vec<_>>()
    };
    std::thread::scope(|scope| {
        let other = scope.spawn(|| run(1));
        let mut all = run(0);
        all.extend(other.join().unwrap());
        all
    })
}

/// The same for what is told of the faces.
fn tallied(
    cases: &[Case],
    read: impl Fn(&Case, &mut Chance) -> Reach + Copy + Sync,
) -> Vec<(Case, Tally)> {
    counted(cases, |case, seed| case.tally(seed, read))
}

/// Every complaint of every case, so that one run shows them all.
fn held(tallied: &[(Case, Tally)]) {
    let mut complaints = Vec::new();
    for (case, tally) in tallied {
        for (name, share, low, high) in tally.held() {
            if !(low..=high).contains(&share) {
                let faces = tally.faces;
                complaints.push(format!("{name} in {share:.1} % of {faces}: {case:?}"));
            }
        }
    }
    assert!(complaints.is_empty(), "{complaints:#?}");
}

#[test]
fn the_interval_of_a_runout_holds_the_true_one_as_often_as_it_says() {
    let tallied = tallied(&cases(5..=24, &[2.0, 5.0, 10.0, 20.0], FINE), Case::reach);
    held(&tallied);
    // On average over the twelve cases of so many places, which is known to 0.2 %.
    for places in 5..=24 {
        let of_places = tallied.iter().filter(|(case, _)| case.places == places);
        let shares = of_places.map(|(_, tally)| percent(tally.holds, tally.faces));
        let mean = shares.sum::<f64>() / 12.0;
        assert!(
            (94.0..=96.0).contains(&mean),
            "{places} places: {mean:.2} %"
        );
    }
}

#[test]
fn a_common_dial_tells_as_much_as_it_says() {
    let usual = cases([8, 24], &[5.0, 20.0], COMMON);
    held(&tallied(&usual, Case::reach));
}

#[test]
fn the_interval_of_a_variation_holds_the_true_one_as_often_as_it_says() {
    let cases = cases([6, 12], &[2.0, 10.0], FINE);
    held(&tallied(&cases, Case::variation));
}

/// Faces that are good by their uncertainty are over in 5 % at most; `fewest` cases are looked at.
fn good_is_seldom_over(mut cases: Vec<Case>, fewest: usize) {
    cases.retain(|case| case.truth == LIMIT);
    for case in &mut cases {
        case.truth = LIMIT - case.expanded();
    }
    // Where the uncertainty is larger than the limit there is no such face.
    cases.retain(|case| case.truth >= 0.0);
    assert!(cases.len() >= fewest, "{}", cases.len());
    for (case, over) in counted(&cases, Case::over) {
        assert!(over <= 5.0, "over in {over:.1} %: {case:?}");
    }
}

#[test]
fn a_face_that_is_good_by_its_uncertainty_is_over_in_five_percent_at_most() {
    good_is_seldom_over(cases(5..=24, &[2.0, 7.0, 20.0], FINE), 50);
}

#[test]
fn a_good_face_on_a_common_dial_is_over_in_five_percent_at_most() {
    good_is_seldom_over(cases([5, 6, 8, 12, 24], &[5.0, 10.0, 20.0], COMMON), 8);
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
    };
    let faces = 2000;
    let mut chance = Chance::of(11);
    let (mut range, mut over_by_range, mut over) = (0.0, 0, 0);
    let limit = um(12.0);
    for _ in 0..faces {
        let series = case.series(&mut chance);
        range += series.tir().in_unit(LengthUnit::Micrometre) / f64::from(faces);
        over_by_range += u32::from(series.tir() > limit);
        let moves = shape(&series).unwrap().moves;
        let reach = reach(&series, moves, case.gauge.error()).unwrap();
        over += u32::from(reach.against(limit).is_over());
    }
    assert!((range - 14.2).abs() < 0.3, "{range}");
    assert!(percent(over_by_range, faces) > 60.0);
    assert!(percent(over, faces) < 5.0, "{over}");
}

#[test]
fn four_places_say_nothing_and_ask_for_more() {
    let mut chance = Chance::of(11);
    for case in cases([4], &[2.0, 7.0, 20.0], FINE) {
        for _ in 0..100 {
            let series = case.series(&mut chance);
            let more = Undetermined::NoSpare { more: 1 };
            assert_eq!(shape(&series).unwrap_err(), more);
            let places = series.saved();
            let places = places.map(|(angle, height)| (angle, height.plus(um(22_000.0))));
            let rotor = Thickness::read(um(1.0), places.collect()).unwrap();
            assert_eq!(rotor.varies(um(LIMIT)), Err(more));
        }
    }
}

/// The wobble that is read, whatever is to spare, and what scatter makes of it.
fn wobble(series: &Series) -> (Length, Contribution) {
    let first = fit(series, Order::First).unwrap().first;
    let scatter = Contribution {
        u: 2.0 * first.u().mm(),
        dof: first.dof(),
    };
    (first.reach(), scatter)
}

/// What would be told of it by the rule of more places.
fn by_rule(series: &Series) -> Reach {
    let (read, scatter) = wobble(series);
    Reach::new(read, scatter, um(FINE.u())).unwrap()
}

/// The same with the degrees of freedom of the scatter for the dial's part too, which is never too
/// narrow (the smallest of all parts, Mickey and Brown 1966, from memory).
fn by_care(series: &Series) -> Reach {
    let (read, scatter) = wobble(series);
    let u = scatter.u.hypot(um(FINE.u()).mm());
    Reach::new(read, Contribution { u, ..scatter }, Length::ZERO).unwrap()
}

// Why nothing is told at four places, first: one reading to spare (t is 12.7). The rule of more
// places would hold the truth too seldom, and the careful one too often: at the limit its interval
// is wider than the limit itself, by the smallest scatter that is looked at.
#[test]
fn an_interval_of_four_places_would_not_keep_its_word() {
    let held = |scatter, truth, recorded: fn(&Series) -> Reach| {
        let case = cases([4], &[scatter], FINE);
        let case = case.into_iter().find(|case| case.truth == truth).unwrap();
        let tally = case.tally(11, |case, chance| recorded(&case.series(chance)));
        percent(tally.holds, tally.faces)
    };
    assert!(held(7.0, 0.0, by_rule) < 93.0);
    assert!(held(2.0, LIMIT, by_care) > 97.0);
    let mut chance = Chance::of(11);
    let case = cases([4], &[2.0], FINE).pop().unwrap();
    let mut widths: Vec<Length> = (0..201)
        .map(|_| by_care(&case.series(&mut chance)).interval())
        .map(|(low, high)| high.minus(low))
        .collect();
    widths.sort_by(|a, b| a.mm().total_cmp(&b.mm()));
    assert!(widths[100] > um(LIMIT), "{:?}", widths[100]);
}

// Why, second: at quarter turns the sine of a warp is 0, so that this part of it moves no needle.
// Of faces that are warped over the limit more than 5 % would be proven within it, by either rule.
// Five places see all of a warp.
#[test]
fn four_places_would_pass_a_warped_face() {
    let warp = 1.2 * LIMIT;
    let passed = |places: u32, recorded: fn(&Series) -> Reach| {
        let mut chance = Chance::of(11);
        let passed = |_| {
            let (x, y) = wave(&mut chance, warp);
            let needles: Vec<_> = (0..places)
                .map(|place| {
                    let (sin, cos) = (2.0 * angle(place, places)).sin_cos();
                    Divisions::new(x * cos + y * sin + 2.0 * chance.normal())
                })
                .collect();
            let dial = Dial::new(um(1.0), 1000, DialKind::Plunger).unwrap();
            let series = Series::equally_spaced(dial, &needles).unwrap();
            u32::from(recorded(&series).against(um(LIMIT)).result == Guarded::ProvenIn)
        };
        percent((0..1000).map(passed).sum(), 1000)
    };
    for recorded in [by_rule, by_care] {
        assert!(passed(4, recorded) > 5.0);
        assert!(passed(5, recorded) == 0.0);
    }
}

// A warp of 60 µm beside a wobble of 30 µm, each with its high spot by chance; how far both move the
// needle is looked for at 3600 places.
#[test]
fn a_warp_beside_a_wobble_is_reported_as_surely() {
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
