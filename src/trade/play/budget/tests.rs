//! One test for each row of the budget.
use super::*;
use crate::trade::play::dial::{Divisions, Round};
use crate::trade::play::way::Way;

fn rig(flex_mm: f64) -> RigFacts {
    RigFacts {
        indicator: IndicatorError::OneDivision,
        flex: Length::millimetres(flex_mm),
        temperature: None,
    }
}

fn set(dial: Dial, pulls: &[f64]) -> ReadingSet {
    let rounds: Vec<_> = pulls
        .iter()
        .map(|d| Round::zeroed(Divisions::new(*d).unwrap()))
        .collect();
    ReadingSet::read(dial, Way::DEFAULT, &rounds, vec![]).unwrap()
}

#[track_caller]
fn is_about(value: Length, mm: f64, within: f64) {
    assert!((value.mm() - mm).abs() <= within, "{} not {mm}", value.mm());
}

fn part(budget: &Budget, source: Source) -> Component {
    *budget
        .components
        .iter()
        .find(|c| c.source == source)
        .unwrap()
}

// The driveway values that the trade quotes: 6 µm and 15 µm for the dial, 15 µm for a base
// that gave one division of 0.001 in, about 0.02 mm and 0.04 to 0.05 mm expanded.
#[test]
fn a_fine_dial_on_a_stiff_rig_is_sure_to_two_hundredths() {
    let budget = Budget::in_advance(&Dial::HUNDREDTH_MM, &rig(0.005), 3);
    is_about(part(&budget, Source::Indicator).u, 0.006, 0.0005);
    is_about(budget.expanded95, 0.02, 0.005);
    // GUM G.4.1: u² = (100 + 50 + 25 + 25)/3 µm², of the rounds 25/3 µm²: 2 · 8² = 128.
    assert!((budget.dof_eff.unwrap() - 128.0).abs() < 1e-9);
    // t(0.95; 128), any table: 1.657.
    assert!((budget.g - 1.657).abs() < 0.0005);
}

#[test]
fn a_coarse_dial_on_a_base_that_just_passed_is_sure_to_a_twentieth() {
    let budget = Budget::in_advance(&Dial::THOU, &rig(0.0254), 3);
    is_about(part(&budget, Source::Indicator).u, 0.015, 0.0005);
    is_about(part(&budget, Source::BaseFlex).u, 0.015, 0.0005);
    is_about(budget.expanded95, 0.045, 0.005);
}

#[test]
fn rounds_that_agree_still_have_the_floor_and_the_resolution() {
    let budget = Budget::of(&set(Dial::HUNDREDTH_MM, &[5.0, 5.0, 5.0]), &rig(0.0));
    is_about(
        part(&budget, Source::Repeatability).u,
        0.005 / 3_f64.sqrt(),
        1e-12,
    );
    is_about(
        part(&budget, Source::Resolution).u,
        0.01 / 6_f64.sqrt(),
        1e-12,
    );
    assert_eq!(part(&budget, Source::Repeatability).dof, Some(2.0));
    let one = Budget::of(&set(Dial::HUNDREDTH_MM, &[5.0]), &rig(0.0));
    is_about(part(&one, Source::Repeatability).u, 0.005, 1e-12);
    assert_eq!(part(&one, Source::Repeatability).dof, Some(1.0));
}

#[test]
fn rounds_that_scatter_count_with_their_few_degrees_of_freedom() {
    let budget = Budget::of(&set(Dial::HUNDREDTH_MM, &[2.0, 6.0, 10.0]), &rig(0.0));
    let repeat = part(&budget, Source::Repeatability);
    is_about(repeat.u, 0.04 / 3_f64.sqrt(), 1e-12);
    assert_eq!(repeat.dof, Some(2.0));
    assert_eq!(budget.components[0].source, Source::Repeatability);
    assert!(budget.g > 1.645 && budget.g < 2.92);
}

#[test]
fn a_coarse_dial_cannot_prove_a_small_limit_within() {
    let limit = Limit::manufacturer(Length::millimetres(0.05), Way::DEFAULT).unwrap();
    let fine = can_prove(&Dial::HUNDREDTH_MM, &rig(0.005), 3, &limit);
    assert!(fine.within_to.is_some_and(|to| to.mm() > 0.03));
    let zero = Limit::manufacturer(Length::ZERO, Way::DEFAULT).unwrap();
    assert_eq!(
        can_prove(&Dial::THOU, &rig(0.0254), 3, &zero).within_to,
        None
    );
    let coarse = can_prove(
        &Dial::THOU,
        &rig(0.0254),
        3,
        &Limit::manufacturer(Length::millimetres(0.03), Way::DEFAULT).unwrap(),
    );
    assert_eq!(coarse.within_to, None);
    assert!(coarse.over_from.mm() > 0.06);
    assert!(fine.settles && !coarse.settles);
    assert_eq!(
        can_prove(&Dial::HUNDREDTH_MM, &rig(0.005), 2, &limit).within_to,
        None
    );
}

// Half a hundredth of a millimetre is well within what the finer dials prove; a thousandth of an
// inch is not: 0.05 mm less 1.65 · 18.5 µm is 0.0195 mm.
#[test]
fn a_dial_in_thousandths_of_an_inch_does_not_settle_five_hundredths() {
    let limit = |mm| Limit::manufacturer(Length::millimetres(mm), Way::DEFAULT).unwrap();
    let settles = |dial: &Dial, limit: &Limit| {
        let still = rig(dial.graduation().mm() / 4.0);
        can_prove(dial, &still, 3, limit).settles
    };
    assert!(!settles(&Dial::THOU, &limit(0.05)));
    assert!(settles(&Dial::HALF_THOU, &limit(0.05)));
    assert!(settles(&Dial::HUNDREDTH_MM, &limit(0.05)));
    assert!(settles(&Dial::THOU, &Limit::HOUSE));
    assert!(!settles(&Dial::HUNDREDTH_MM, &limit(0.0)));
}

// GUM 5.1.2 with f = indicated · cos φ: |∂f/∂φ| = indicated · sin φ; 45°, so that both halves of
// it are alike: 0.1 mm · 1 · (π/36)/√3.
#[test]
fn a_slanted_tip_has_its_row() {
    let slant = Angle::new(45.0, AngleUnit::Degree).unwrap();
    let pulls = [10.0 * 2_f64.sqrt(); 3];
    let set = set(Dial::HUNDREDTH_MM, &pulls).with_tip_at(slant).unwrap();
    is_about(set.mean(), 0.1, 1e-12);
    let u = part(&Budget::of(&set, &rig(0.0)), Source::TipAngle).u;
    is_about(u, 0.1 * std::f64::consts::PI / 36.0 / 3_f64.sqrt(), 1e-12);
}

// A rectangle of half width a has the standard uncertainty a/√3 (GUM 4.4.5).
#[test]
fn a_certificate_gives_its_largest_error() {
    let certified = IndicatorError::certified(Length::millimetres(0.003));
    let Some(IndicatorError::Certificate { u }) = certified else {
        panic!("{certified:?}");
    };
    assert_eq!(IndicatorError::certified(Length::ZERO), None);
    is_about(u, 0.003 / 3_f64.sqrt(), 1e-15);
}

#[test]
fn a_certificate_and_a_warm_arm_have_their_rows() {
    let facts = RigFacts {
        indicator: IndicatorError::Certificate {
            u: Length::millimetres(0.002),
        },
        flex: Length::ZERO,
        temperature: Some(Length::millimetres(0.018)),
    };
    let budget = Budget::in_advance(&Dial::HUNDREDTH_MM, &facts, 3);
    is_about(part(&budget, Source::Indicator).u, 0.002, 1e-12);
    is_about(
        part(&budget, Source::Temperature).u,
        0.018 / 3_f64.sqrt(),
        1e-12,
    );
}

// Three rounds that scatter by 10 µm: 2.92 · 10/√3 = 16.9 µm by themselves (t(0.95; 2) of any
// table). Welch–Satterthwaite alone would ask for less as the base gives more.
#[test]
fn a_worse_base_never_makes_the_guard_band_smaller() {
    let certified = |flex_um: f64| RigFacts {
        indicator: IndicatorError::certified(Length::millimetres(0.001)).unwrap(),
        flex: Length::millimetres(flex_um / 1000.0),
        temperature: None,
    };
    let fine = Dial::new(
        Length::millimetres(0.002),
        300,
        crate::trade::play::dial::DialKind::Plunger,
    );
    let set = set(fine.unwrap(), &[20.0, 25.0, 30.0]);
    let band = |flex| Budget::of(&set, &certified(flex)).guard_band().mm();
    assert!((band(0.0) - 0.016_86).abs() < 0.000_05, "{}", band(0.0));
    let mut last = 0.0;
    for flex in 0..60 {
        let next = band(f64::from(flex));
        assert!(last <= next + 1e-12, "{flex} µm: {last} {next}");
        last = next;
    }
    assert!(band(59.0) > 2.0 * band(0.0));
}
