//! The uncertainty budget of a set, and what a gauge can prove before it leaves the van.

use super::dial::Dial;
use super::limit::Limit;
use super::series::ReadingSet;
use super::uncertainty::{
    Contribution, combine, count, rectangle, resolution, t_one_sided, t_two_sided, type_a,
};
use crate::units::{Angle, AngleUnit, Length};
use crate::words;

words! {
    /// Where a part of the uncertainty comes from.
    pub enum Source {
        /// The rounds do not agree among themselves.
        Repeatability = "repeatability",
        /// Two readings, each to the division.
        Resolution = "resolution",
        /// The dial's own error.
        Indicator = "indicator",
        /// The base gives when it is pushed.
        BaseFlex = "base_flex",
        /// The gauge's arm warms while it is used.
        Temperature = "temperature",
        /// The tip stands off square, by an angle that an eye judged.
        TipAngle = "tip_angle",
    }
}

impl IndicatorError {
    /// The largest error, either way, that a certificate gives.
    pub fn certified(largest: Length) -> Self {
        Self::Certificate {
            u: Length::millimetres(rectangle(largest.abs().mm())),
        }
    }

    /// Standard uncertainty of a difference that a dial with this division shows.
    pub(in crate::trade) fn u(self, graduation: Length) -> Length {
        match self {
            Self::OneDivision => {
                Length::millimetres(rectangle(graduation.max(INDICATOR_FLOOR).mm()))
            }
            Self::Certificate { u } => u.abs(),
        }
    }
}

/// What is known of the dial's own error.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum IndicatorError {
    /// No certificate: within one division either way, and no better than 5 µm. Gives 6 µm for a
    /// 0.01 mm dial and 15 µm for a 0.001 in dial. From memory of gauge classes, not read.
    OneDivision,
    /// Standard uncertainty from the gauge's certificate.
    Certificate {
        /// Standard uncertainty.
        u: Length,
    },
}

/// What is known of the rig beside its rounds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RigFacts {
    /// The dial's own error.
    pub indicator: IndicatorError,
    /// How far at most the needle moved when the knuckle was pushed.
    pub flex: Length,
    /// Half width of the drift by warming, if it was judged.
    pub temperature: Option<Length>,
}

/// One row of the budget.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Component {
    /// Where it comes from.
    pub source: Source,
    /// Standard uncertainty.
    pub u: Length,
    /// Degrees of freedom; `None` is infinite.
    pub dof: Option<f64>,
}

/// How sure a play is.
#[derive(Clone, Debug, PartialEq)]
pub struct Budget {
    /// The rows, the largest first: which part to mend first.
    pub components: Vec<Component>,
    /// Combined standard uncertainty.
    pub u_c: Length,
    /// Effective degrees of freedom by Welch–Satterthwaite; `None` is infinite.
    pub dof_eff: Option<f64>,
    /// Half width of the two-sided 95 % interval; printed and drawn, it never decides.
    pub expanded95: Length,
    /// One-sided 95 % factor by which a limit must be passed: 1.645 for infinite freedom.
    pub g: f64,
}

/// What a gauge will be able to prove against a limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Proof {
    /// Above this mean it proves "over".
    pub over_from: Length,
    /// Up to this mean it proves "within"; `None` if it cannot prove "within" at all.
    pub within_to: Option<Length>,
}

/// By hand no one repeats a round better than this (driveway value, from memory, not read).
///
/// It stands where the rounds agree to the division or there is one round alone.
pub const REPEAT_FLOOR: Length = Length::millimetres(0.005);

/// No dial is taken as better than this without a certificate (from memory, not read).
const INDICATOR_FLOOR: Length = Length::millimetres(0.005);

impl Budget {
    /// The budget of a set that was taken.
    ///
    /// # Source
    /// GUM; a difference of two readings has the resolution twice. The rounds' scatter counts
    /// with n − 1 degrees of freedom, or as [`REPEAT_FLOOR`] where it is smaller.
    pub fn of(set: &ReadingSet, rig: &RigFacts) -> Self {
        let mm: Vec<f64> = set.plays().iter().map(|play| play.mm()).collect();
        let floor = floor_of(mm.len());
        let repeatability = match type_a(&mm) {
            Ok(a) if a.s > REPEAT_FLOOR.mm() => Contribution {
                u: a.u,
                dof: Some(count(a.n) - 1.0),
            },
            _ => floor,
        };
        let mut rows = rows(repeatability, set.dial().graduation(), rig);
        let tip = set.off_square().map(|angle| tip_angle(set.mean(), angle));
        rows.extend(tip.map(|u| (Source::TipAngle, known(u))));
        Self::sum(rows)
    }

    /// The budget of `rounds` rounds that are still to be taken and will agree.
    pub fn in_advance(dial: &Dial, rig: &RigFacts, rounds: usize) -> Self {
        Self::of_difference(floor_of(rounds.max(1)), dial.graduation(), rig)
    }

    /// The budget of a difference of two readings in steps of `graduation`.
    pub(in crate::trade) fn of_difference(
        repeatability: Contribution,
        graduation: Length,
        rig: &RigFacts,
    ) -> Self {
        Self::sum(rows(repeatability, graduation, rig))
    }

    fn sum(mut rows: Vec<(Source, Contribution)>) -> Self {
        let parts: Vec<Contribution> = rows.iter().map(|(_, part)| *part).collect();
        let total = combine(&parts);
        rows.sort_by(|a, b| b.1.u.total_cmp(&a.1.u));
        Self {
            components: rows
                .into_iter()
                .map(|(source, part)| Component {
                    source,
                    u: Length::millimetres(part.u),
                    dof: part.dof,
                })
                .collect(),
            u_c: Length::millimetres(total.u),
            dof_eff: total.dof,
            expanded95: Length::millimetres(t_two_sided(0.95, total.dof) * total.u),
            g: t_one_sided(0.95, total.dof),
        }
    }

    /// How far beyond a limit a mean must be to be proven: g · u.
    pub fn guard_band(&self) -> Length {
        self.u_c.times(self.g)
    }
}

/// The rows of a difference of two readings in steps of `graduation`.
fn rows(
    repeatability: Contribution,
    graduation: Length,
    rig: &RigFacts,
) -> Vec<(Source, Contribution)> {
    let two_readings = resolution(graduation.mm()) * 2_f64.sqrt();
    let mut rows = vec![
        (Source::Repeatability, repeatability),
        (Source::Resolution, known(two_readings)),
        (Source::Indicator, known(rig.indicator.u(graduation).mm())),
        (Source::BaseFlex, known(rectangle(rig.flex.mm()))),
    ];
    if let Some(half_width) = rig.temperature {
        rows.push((Source::Temperature, known(rectangle(half_width.mm()))));
    }
    rows
}

const fn known(u: f64) -> Contribution {
    Contribution { u, dof: None }
}

/// An eye judges the slant of a tip to this either way (common practice, no source).
const ANGLE_BY_EYE_DEG: f64 = 5.0;

/// `play · tan φ · u(φ)`: how much the true travel `indicated · cos φ` moves with the angle.
fn tip_angle(play: Length, angle: Angle) -> f64 {
    let slant = angle.in_unit(AngleUnit::Degree).to_radians().abs();
    play.mm() * slant.tan() * rectangle(ANGLE_BY_EYE_DEG.to_radians())
}

fn floor_of(rounds: usize) -> Contribution {
    Contribution {
        u: REPEAT_FLOOR.mm() / count(rounds).sqrt(),
        dof: None,
    }
}

/// What this gauge on this rig will be able to prove against `limit` with so many rounds.
pub fn can_prove(dial: &Dial, rig: &RigFacts, rounds: usize, limit: &Limit) -> Proof {
    let band = Budget::in_advance(dial, rig, rounds).guard_band();
    let within = limit.value.minus(band);
    Proof {
        over_from: limit.value.plus(band),
        within_to: (within >= Length::ZERO).then_some(within),
    }
}

#[cfg(test)]
mod tests {
    #![allow(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::panic,
        clippy::indexing_slicing
    )]
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
        assert_eq!(budget.dof_eff, None);
        assert!((budget.g - 1.645).abs() < 0.0005);
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
        let one = Budget::of(&set(Dial::HUNDREDTH_MM, &[5.0]), &rig(0.0));
        is_about(part(&one, Source::Repeatability).u, 0.005, 1e-12);
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
        let limit = Limit::maker(Length::millimetres(0.05), Way::DEFAULT).unwrap();
        let fine = can_prove(&Dial::HUNDREDTH_MM, &rig(0.005), 3, &limit);
        assert!(fine.within_to.is_some_and(|to| to.mm() > 0.03));
        let zero = Limit::maker(Length::ZERO, Way::DEFAULT).unwrap();
        assert_eq!(
            can_prove(&Dial::THOU, &rig(0.0254), 3, &zero).within_to,
            None
        );
        let coarse = can_prove(
            &Dial::THOU,
            &rig(0.0254),
            3,
            &Limit::maker(Length::millimetres(0.03), Way::DEFAULT).unwrap(),
        );
        assert_eq!(coarse.within_to, None);
        assert!(coarse.over_from.mm() > 0.06);
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
        let IndicatorError::Certificate { u } = certified else {
            panic!("{certified:?}");
        };
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
}
