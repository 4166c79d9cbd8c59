//! The uncertainty budget of a set, and what a gauge can prove before it leaves the van.

use super::conformity::CYCLES_TO_PROVE;
use super::dial::Dial;
use super::limit::Limit;
use super::rules::{INTERVAL, PROVEN};
use super::series::ReadingSet;
use super::uncertainty::{
    Contribution, combine, conforms_below_with, count, rectangle, resolution, t_one_sided,
    t_two_sided, type_a,
};
use crate::sorted::Sorted;
use crate::units::{Angle, AngleUnit, Length};
use crate::words;

words! {
    /// Where a part of the uncertainty comes from.
    pub enum Source {
        /// The rounds do not agree among themselves.
        Repeatability = "repeatability",
        /// Two sets, each on a place of its own of the base, do not agree.
        BetweenSets = "between_sets",
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
    /// The largest error, either way, that a certificate gives. A certificate of no error at all
    /// is refused: nothing is known without uncertainty, and with none everything would be proven.
    pub fn certified(largest: Length) -> Option<Self> {
        let u = Length::millimetres(rectangle(largest.abs().mm()));
        (u > Length::ZERO).then_some(Self::Certificate { u })
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
    /// One-sided 95 % factor by which a limit must be passed: 1.645 where nothing scatters.
    pub g: f64,
}

/// What a gauge will be able to prove against a limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Proof {
    /// Above this mean it proves "over".
    pub over_from: Length,
    /// Up to this mean it proves "within"; `None` if it cannot prove "within" at all.
    pub within_to: Option<Length>,
    /// A needle that moves by one division can still be proven within.
    pub settles: bool,
}

/// By hand no one repeats a round better than this (driveway value, from memory, not read).
///
/// It stands where the rounds agree to the division or there is one round alone, and never makes
/// a degree of freedom.
pub const REPEAT_FLOOR: Length = Length::millimetres(0.005);

/// No dial is taken as better than this without a certificate (from memory, not read).
pub(super) const INDICATOR_FLOOR: Length = Length::millimetres(0.005);

impl Budget {
    /// The budget of a set that was taken.
    ///
    /// # Source
    /// GUM; a difference of two readings has the resolution twice. The rounds' scatter, or
    /// [`REPEAT_FLOOR`] where that is larger, counts with n − 1 degrees of freedom: rounds that
    /// agree by chance make nobody surer of how they scatter.
    pub fn of(set: &ReadingSet, rig: &RigFacts) -> Self {
        let mm: Vec<f64> = set.plays().iter().map(|play| play.mm()).collect();
        let s = type_a(&mm).map_or(0.0, |a| a.s);
        let mut rows = rows(repeats(s, mm.len()), set.dial().graduation(), rig);
        let tip = set.off_square().map(|angle| tip_angle(set.mean(), angle));
        rows.extend(tip.map(|u| (Source::TipAngle, known(u))));
        Self::sum(rows)
    }

    /// The budget of `rounds` rounds that are still to be taken and will agree.
    pub fn in_advance(dial: &Dial, rig: &RigFacts, rounds: usize) -> Self {
        Self::of_difference(repeats(0.0, rounds.max(1)), dial.graduation(), rig)
    }

    /// The budget of the mean of two sets of one hub.
    ///
    /// The rounds' scatter is pooled, the sets' own difference counts with one degree of freedom,
    /// and of everything that both may share (the dial, its marks, the arm) the larger counts once.
    ///
    /// # Source
    /// GUM 4.2 and 5.2.2 (what is common to both does not shrink with their number).
    pub(super) fn of_both(first: (&ReadingSet, &Self), second: (&ReadingSet, &Self)) -> Self {
        let (a, b) = (first.0, second.0);
        let mut rows = vec![
            (Source::Repeatability, pooled(a, b)),
            (
                Source::BetweenSets,
                Contribution {
                    u: a.mean().minus(b.mean()).abs().mm() / 2.0,
                    dof: Some(1.0),
                },
            ),
        ];
        let parts = first.1.components.iter().chain(&second.1.components);
        for part in parts.filter(|part| part.source != Source::Repeatability) {
            match rows.iter_mut().find(|(source, _)| *source == part.source) {
                Some((_, saved)) => saved.u = saved.u.max(part.u.mm()),
                None => rows.push((part.source, known(part.u.mm()))),
            }
        }
        Self::sum(rows)
    }

    /// The budget of a difference of two readings in steps of `graduation`.
    pub(in crate::trade) fn of_difference(
        repeatability: Contribution,
        graduation: Length,
        rig: &RigFacts,
    ) -> Self {
        Self::sum(rows(repeatability, graduation, rig))
    }

    /// The factor is that of all rows together by Welch–Satterthwaite, but no less than the rows of
    /// few degrees of freedom would ask for alone: a larger known part brings degrees of freedom,
    /// and must not make the guard band smaller (the second half is ours, no source; without it 5.5
    /// and not 5 of 100 hubs at their limit were proven within by cycles that scatter by 20 µm).
    fn sum(mut rows: Vec<(Source, Contribution)>) -> Self {
        let parts: Vec<Contribution> = rows.iter().map(|(_, part)| *part).collect();
        let total = combine(&parts);
        let few = few_of(&parts);
        rows.order_by(|a, b| b.1.u.total_cmp(&a.1.u));
        let half = (t_two_sided(INTERVAL, total.dof) * total.u)
            .max(t_two_sided(INTERVAL, few.dof) * few.u);
        let band =
            (t_one_sided(PROVEN, total.dof) * total.u).max(t_one_sided(PROVEN, few.dof) * few.u);
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
            expanded95: Length::millimetres(half),
            g: band / total.u,
        }
    }

    /// Probability that the true value is at or under `upper` where `y` was read: by all rows
    /// together or by those of few degrees of freedom alone, whichever is less sure. It is 95 %
    /// just where the guard band ends.
    pub(super) fn conforms(&self, y: f64, upper: f64) -> f64 {
        let part = |part: &Component| Contribution {
            u: part.u.mm(),
            dof: part.dof,
        };
        let parts: Vec<Contribution> = self.components.iter().map(part).collect();
        let few = few_of(&parts);
        let all = conforms_below_with(y, self.u_c.mm(), upper, self.dof_eff);
        if few.dof.is_none() {
            return all;
        }
        let alone = conforms_below_with(y, few.u, upper, few.dof);
        if y <= upper {
            all.min(alone)
        } else {
            all.max(alone)
        }
    }

    /// The same with rounds that scatter by no more than the floor.
    pub(super) fn at_the_floor(&self, rounds: usize) -> Self {
        let row = |part: &Component| match part.source {
            Source::Repeatability => (part.source, repeats(0.0, rounds)),
            _ => (
                part.source,
                Contribution {
                    u: part.u.mm(),
                    dof: part.dof,
                },
            ),
        };
        Self::sum(self.components.iter().map(row).collect())
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

/// The rows that are known by few readings, together.
fn few_of(parts: &[Contribution]) -> Contribution {
    let few = parts.iter().filter(|part| part.dof.is_some()).copied();
    combine(&few.collect::<Vec<_>>())
}

const fn known(u: f64) -> Contribution {
    Contribution { u, dof: None }
}

/// An eye judges the slant of a tip to this either way (common practice, no source).
pub(super) const ANGLE_BY_EYE_DEG: f64 = 5.0;

/// `play · tan φ · u(φ)`: how much the true travel `indicated · cos φ` moves with the angle.
fn tip_angle(play: Length, angle: Angle) -> f64 {
    let slant = angle.in_unit(AngleUnit::Degree).to_radians().abs();
    play.mm() * slant.tan() * rectangle(ANGLE_BY_EYE_DEG.to_radians())
}

/// The mean of so many rounds that scatter by `s`, and no less than the floor.
///
/// One round alone has no degree of freedom; it gets one, so that its interval is a number, and
/// nothing is ever proven by it (our choice, no source).
fn repeats(s: f64, rounds: usize) -> Contribution {
    Contribution {
        u: s.max(REPEAT_FLOOR.mm()) / count(rounds).sqrt(),
        dof: Some((count(rounds) - 1.0).max(1.0)),
    }
}

/// The mean of two means whose rounds scatter alike: s² pooled over both (GUM H.3.6 for pooling).
fn pooled(a: &ReadingSet, b: &ReadingSet) -> Contribution {
    let squares = |set: &ReadingSet| {
        let mean = set.mean().mm();
        let off = set.plays().iter().map(|play| (play.mm() - mean).powi(2));
        off.sum::<f64>()
    };
    let (n, m) = (count(a.plays().len()), count(b.plays().len()));
    let dof = (n + m - 2.0).max(1.0);
    let s = ((squares(a) + squares(b)) / dof).sqrt();
    Contribution {
        u: s.max(REPEAT_FLOOR.mm()) * (1.0 / n + 1.0 / m).sqrt() / 2.0,
        dof: Some(dof),
    }
}

/// What this gauge on this rig will be able to prove against `limit` with so many rounds.
///
/// A dial does not settle a limit where a needle that moves at all, by one division, is no longer
/// proven within (the division as the measure is ours, common practice, no source).
pub fn can_prove(dial: &Dial, rig: &RigFacts, rounds: usize, limit: &Limit) -> Proof {
    let band = Budget::in_advance(dial, rig, rounds).guard_band();
    let within = limit.value.minus(band);
    // A window is proven met only where the band fits in at both of its ends.
    let least = limit.least.map_or(Length::ZERO, |least| least.plus(band));
    let proves = rounds >= CYCLES_TO_PROVE && within >= least;
    Proof {
        over_from: limit.value.plus(band),
        within_to: proves.then_some(within),
        settles: proves && dial.graduation() <= within,
    }
}

#[cfg(test)]
mod tests;
