//! 20,000 seeded cars a gauge, through the code of real jobs: how often do the decisions err?
//!
//! Source of the theory: JCGM 106:2012, clause 9 (specific and global risk of the consumer and of
//! the producer), the integrals computed in `support/quadrature.rs`. A seed gives the same car
//! for ever, so that nothing here depends on luck; a count may lie 4.5 binomial deviations from
//! its expectation, which a true statement misses once in 150,000 comparisons.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "support/curve.rs"]
mod curve;
#[path = "support/garage.rs"]
mod garage;
#[path = "support/quadrature.rs"]
mod quadrature;

use curve::Curve;
use garage::{Gauge, Judged, judge, judge_zeroed, mm};
use hubslate::drawing::shape::Dash;
use hubslate::trade::play::risk::Inspection;
use hubslate::trade::play::{Budget, Conformity, Decision};
use hubslate::trade::practice::{Car, Population};
use quadrature::{Theory, student, within_deviations};

const CARS: u64 = 20_000;
/// Deviation of the true plays around their limits.
const SPREAD: f64 = 0.015;
/// How many binomial deviations a count may be off.
const SIGMA: f64 = 4.5;

fn count(n: usize) -> f64 {
    f64::from(u32::try_from(n).unwrap())
}

/// Fails unless `seen` of `of` cases fits a chance of `share` each.
#[track_caller]
fn fits(what: &str, seen: usize, of: usize, share: f64) {
    let (expected, deviation) = (
        count(of) * share,
        (count(of) * share * (1.0 - share)).sqrt(),
    );
    assert!(
        (count(seen) - expected).abs() <= SIGMA * deviation,
        "{what}: {seen} of {of}, expected {expected:.1} ± {deviation:.1}"
    );
}

/// By how many of its u a gauge is wrong at most with probability `p`: Student's t with the degrees
/// of freedom of the whole, and no less than three rounds would ask for alone.
fn factor(gauge: &Gauge, p: f64) -> f64 {
    let rounds = student(p, 2.0) * gauge.u_set() / gauge.u();
    student(p, gauge.dof()).max(rounds)
}

fn theory(gauge: &Gauge) -> Theory {
    Theory {
        mean: 0.0,
        spread: SPREAD,
        u: gauge.u(),
        u_shared: gauge.u_shared(),
        g: factor(gauge, 0.95),
    }
}

/// Cars around their own limits, one a seed.
fn judged(gauge: &Gauge) -> Vec<Judged> {
    (0..CARS)
        .map(|seed| {
            let limit = gauge.limit(seed);
            let car = gauge.population(limit, SPREAD).car(seed);
            judge(gauge, &car, limit, 0)
        })
        .collect()
}

#[test]
fn the_budget_is_the_one_that_the_theory_takes() {
    for gauge in Gauge::all() {
        let budget = Budget::in_advance(&gauge.dial, &gauge.facts(), 3);
        assert!(
            (budget.u_c.mm() - gauge.u()).abs() < 1e-12,
            "{}",
            gauge.name
        );
        let dof = budget.dof_eff.unwrap();
        assert!((dof / gauge.dof() - 1.0).abs() < 1e-9);
        assert!((budget.g - factor(&gauge, 0.95)).abs() < 1e-6);
    }
}

#[test]
fn wrong_decisions_are_as_rare_as_the_risk_integrals_say() {
    for gauge in Gauge::all() {
        let theory = theory(&gauge);
        let band = theory.g * gauge.u();
        let cars = judged(&gauge);
        let seen = |is: &dyn Fn(&Judged) -> bool| cars.iter().filter(|car| is(car)).count();
        let fits = |what: &str, seen, share| {
            fits(&format!("{}: {what}", gauge.name), seen, cars.len(), share);
        };
        fits(
            "over the limit and kept",
            seen(&|car| car.is_bad() && car.is(Decision::Keep)),
            theory.over(|x| theory.reads_below(x, -band)),
        );
        fits(
            "over the limit and not replaced",
            seen(&|car| car.is_bad() && !car.is(Decision::Replace)),
            theory.over(|x| 1.0 - theory.replaced(x)),
        );
        fits(
            "within the limit and proven over",
            seen(&|car| !car.is_bad() && matches!(car.first, Conformity::ProvenOut(_))),
            theory.within(|x| 1.0 - theory.reads_below(x, band)),
        );
        fits(
            "within the limit and over in the first set",
            seen(&|car| !car.is_bad() && car.first.is_over()),
            theory.within(|x| 1.0 - theory.reads_below(x, 0.0)),
        );
        fits(
            "within the limit and replaced, after a second set where one was asked",
            seen(&|car| !car.is_bad() && car.is(Decision::Replace)),
            theory.within(|x| theory.replaced(x)),
        );
        fits(
            "kept",
            seen(&|car| car.is(Decision::Keep)),
            theory.over(|x| theory.reads_below(x, -band))
                + theory.within(|x| theory.reads_below(x, -band)),
        );
    }
}

#[test]
fn the_app_computes_the_same_risks() {
    for gauge in Gauge::all() {
        let theory = theory(&gauge);
        let band = theory.g * gauge.u();
        let app = |most| Inspection {
            mean: 0.0,
            sd: SPREAD,
            u: gauge.u(),
            tolerance: (-1.0, 0.0),
            accepted: (-2.0, most),
        };
        let consumer = theory.over(|x| theory.reads_below(x, -band));
        let producer = theory.within(|x| 1.0 - theory.reads_below(x, band));
        assert!((app(-band).consumer_risk() - consumer).abs() < 1e-6);
        assert!((app(band).producer_risk() - producer).abs() < 1e-6);
    }
}

#[test]
fn among_cars_read_alike_as_many_are_over_as_their_specific_risk_says() {
    for gauge in Gauge::all() {
        let theory = theory(&gauge);
        let cars = judged(&gauge);
        let mut compared = 0;
        for class in -8..8 {
            let (from, to) = (
                f64::from(class) * 0.5 * gauge.u(),
                f64::from(class + 1) * 0.5 * gauge.u(),
            );
            let read = |car: &&Judged| from <= car.mean - car.limit && car.mean - car.limit < to;
            let class: Vec<&Judged> = cars.iter().filter(read).collect();
            let risk = |car: &&Judged| theory.over_if_read(car.mean - car.limit);
            let share = class.iter().map(risk).sum::<f64>() / count(class.len()).max(1.0);
            // With fewer expected the binomial has no normal limits.
            if count(class.len()) * share.min(1.0 - share) < 10.0 {
                continue;
            }
            compared += 1;
            let over = class.iter().filter(|car| car.is_bad()).count();
            fits(
                &format!("{} read {from:.4} to {to:.4} mm off", gauge.name),
                over,
                class.len(),
                share,
            );
        }
        assert!(compared >= 6, "{}: {compared} classes", gauge.name);
    }
}

/// The rounds of these cars do not scatter, which three rounds cannot know: the interval is that
/// of Student's t, so that it holds more than 95 of 100 where the rounds weigh most.
#[test]
fn the_printed_interval_holds_the_truth_in_95_of_100_and_more() {
    for gauge in Gauge::all() {
        let cars = judged(&gauge);
        let holds = |car: &&Judged| (car.mean - car.truth).abs() <= car.expanded;
        let held = cars.iter().filter(holds).count();
        let share = within_deviations(factor(&gauge, 0.975));
        assert!(0.95 <= share, "{}: {share}", gauge.name);
        fits(gauge.name, held, cars.len(), share);
    }
}

/// Cars as the garage of "another car" has them: rounds that scatter and rollers to be seated.
fn garage(gauge: &Gauge, swings: u8) -> Vec<Judged> {
    let population = Population {
        // The dial and the base of this gauge; all else as in the garage.
        dial_spread: mm(gauge.u_dial()),
        flex_spread: mm(gauge.u_base()),
        play: mm(0.06),
        ..Population::GARAGE
    };
    let cars = (0..CARS).map(|seed| population.car(seed));
    // A base that gives is found by pushing the knuckle, before any reading.
    cars.filter(|car: &Car| car.truth.flex.is_none())
        .map(|car| judge(gauge, &car, 0.05, swings))
        .collect()
}

#[test]
fn in_a_rougher_garage_the_interval_is_never_too_short_and_no_proof_is_far_off() {
    for gauge in Gauge::all() {
        let cars = garage(&gauge, 5);
        let holds = |car: &&Judged| (car.mean - car.truth).abs() <= car.expanded;
        let held = count(cars.iter().filter(holds).count()) / count(cars.len());
        let deviation = (0.95 * 0.05 / count(cars.len())).sqrt();
        assert!(0.95 - SIGMA * deviation <= held, "{}: {held}", gauge.name);
        // A proof needs the guard band and three u more: an error of 4.6 u, two in a million.
        let far = 3.0 * gauge.u();
        for car in &cars {
            let (truth, limit) = (car.truth, car.limit);
            assert!(!(car.is(Decision::Keep) && limit + far < truth), "{truth}");
            let proven = matches!(car.first, Conformity::ProvenOut(_));
            assert!(!(proven && truth < limit - far), "{truth}");
        }
    }
}

#[test]
fn rollers_that_were_not_swung_hide_play_and_let_worn_hubs_pass() {
    let gauge = &Gauge::all()[0];
    let kept_though_worn = |swings| {
        let cars = garage(gauge, swings);
        let wrong = |car: &&Judged| car.is_bad() && car.is(Decision::Keep);
        cars.iter().filter(wrong).count()
    };
    let (still, swung) = (kept_though_worn(0), kept_though_worn(5));
    assert!(4 * swung < still, "{still} unswung, {swung} swung");
}

/// Share of cars with one true play that are replaced, each against a limit of its own about
/// 0.05 mm: what counts is how far they are from it.
fn replaced(gauge: &Gauge, play: f64) -> usize {
    let is_replaced = |seed: &u64| {
        let limit = gauge.limit(*seed);
        let car = gauge.population(play - 0.05 + limit, 0.0).car(*seed);
        judge(gauge, &car, limit, 0).is(Decision::Replace)
    };
    (0..CARS_A_PLAY).filter(is_replaced).count()
}

const CARS_A_PLAY: u64 = 1000;

/// Share of good hubs with 0.04 mm of true play that are replaced against a limit of just 0.05 mm,
/// read in whole thousandths of an inch, by the scatter of the cycles in mm.
fn good_hubs_replaced(round_spread: f64) -> f64 {
    let gauge = &Gauge::all()[1];
    let population = Population {
        round_spread: mm(round_spread),
        ..gauge.population(0.04, 0.0)
    };
    let is_replaced = |seed: &u64| {
        let judged = judge_zeroed(gauge, &population.car(*seed), 0.05);
        judged.is(Decision::Replace)
    };
    count((0..CARS).filter(is_replaced).count()) / count(usize::try_from(CARS).unwrap())
}

/// The case that the README names, on a dial that is zeroed at the push. A mark of the dial lies at
/// 0.0508 mm, just over the limit, and whatever reads 2 thou in every cycle is over it. The shares
/// are what 20,000 cars gave; their binomial deviation is 0.0035, and a chance of one in two of a
/// good hub is what the README says of it.
#[test]
fn a_coarse_dial_at_a_limit_between_its_marks_condemns_good_hubs() {
    for (round_spread, share) in [(0.0, 0.48), (0.003, 0.40), (0.005, 0.35), (0.010, 0.28)] {
        let replaced = good_hubs_replaced(round_spread);
        assert!(
            (replaced - share).abs() < 0.01,
            "{round_spread}: {replaced}"
        );
    }
}

#[test]
fn the_curve_of_the_readme_is_what_the_code_of_real_jobs_does() {
    let dashes = [Dash::Whole, Dash::Dashed, Dash::Dots];
    let curves = Gauge::all().into_iter().zip(dashes).map(|(gauge, dash)| {
        let theory = theory(&gauge);
        let line = (0..=100).map(|i| f64::from(i) * curve::MOST / 100.0);
        let line = line.map(|play| (play, theory.replaced(play - 0.05)));
        let cars = (1..10)
            .map(|i| f64::from(i) * curve::MOST / 10.0)
            .map(|play| {
                let seen = replaced(&gauge, play);
                let of = usize::try_from(CARS_A_PLAY).unwrap();
                let what = format!("{} at {play:.2} mm replaced", gauge.name);
                fits(&what, seen, of, theory.replaced(play - 0.05));
                (play, count(seen) / count(of))
            });
        Curve {
            name: gauge.name,
            dash,
            line: line.collect(),
            cars: cars.collect(),
        }
    });
    let made = curve::picture(&curves.collect::<Vec<_>>(), 0.05);
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/public/sample/replace.svg");
    if std::env::var_os("HUBSLATE_WRITE_SAMPLES").is_some() {
        std::fs::write(path, &made).unwrap();
    }
    let committed = std::fs::read_to_string(path).unwrap();
    assert!(
        committed == made,
        "replace.svg is not what the code does; set HUBSLATE_WRITE_SAMPLES=1 to write it"
    );
}
