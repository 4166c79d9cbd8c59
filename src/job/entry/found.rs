//! What a run round a face or a measured rotor said, as it was recorded.
//!
//! It is kept for the same reason as a decision: a later version of the rules never changes what a
//! finished job says. All that report and screens print is here; the drawn curve is not.

use core::hash::{Hash, Hasher};

use super::decided::{length, round};
use super::{RunoutSpec, ThicknessSpec};
use crate::trade::play::conformity::Judged;
use crate::trade::runout::{Arrow, Form, Next, Reach, RotorNext, Shape, Surface, Undetermined};
use crate::trade::vehicle::Corner;
use crate::units::{Angle, AngleUnit, Length};
use crate::words;

words! {
    /// What the rotor on every stud is told from.
    pub enum Basis {
        /// The rotor on the hub in two positions.
        TwoPositions = "two_positions",
        /// The hub's face, seen at the rotor's radius, and the rotor on it.
        HubAndRotor = "hub_and_rotor",
    }
}

/// What one run round a face said.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct FaceFound {
    /// Which corner.
    pub corner: Corner,
    /// Which run at this corner, from 1.
    pub run: u8,
    /// The version of the rules that it was found by.
    pub rules: u32,
    /// What turned under the tip.
    pub surface: Surface,
    /// Total indicator reading, scatter and all.
    pub tir: Length,
    /// How far the needle came back beside where it was, if a place was read again.
    pub closure: Option<Length>,
    /// The waves and the shape, or why the places do not tell them.
    pub shape: Result<ShapeFound, Undetermined>,
    /// The runout itself and how sure it is; none while the shape cannot be told.
    pub reach: Option<ReachFound>,
    /// Against the limit, if one was looked up.
    pub against: Option<AgainstLimit<RunoutSpec>>,
    /// The rotor on every stud by the stud from 0, the best first, and what that is told from.
    pub positions: Option<(Basis, Vec<(u8, ReachFound)>)>,
    /// What comes next.
    pub next: Next,
}

/// What one measurement of a rotor said.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct RotorFound {
    /// Which corner.
    pub corner: Corner,
    /// Which measurement at this corner, from 1.
    pub run: u8,
    /// The version of the rules that it was found by.
    pub rules: u32,
    /// The thinnest reading.
    pub thinnest: Length,
    /// Its place, from 1.
    pub place: u8,
    /// Standard uncertainty of the thinnest reading.
    pub u: Length,
    /// The guard band of the thinnest reading.
    pub guard_band: Length,
    /// The thickest reading.
    pub thickest: Length,
    /// How much it varies beyond scatter, or why the places do not tell.
    pub varies: Result<ReachFound, Undetermined>,
    /// Against the least thickness, if that was looked up; "over" is "too thin".
    pub least: Option<AgainstLimit<ThicknessSpec>>,
    /// Against the most variation, if that was looked up.
    pub variation: Option<AgainstLimit<ThicknessSpec>>,
    /// What comes next.
    pub next: RotorNext,
}

/// A value against its limit.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct AgainstLimit<C> {
    /// The limit as printed, with its source.
    pub spec: C,
    /// What the comparison says; none where the value cannot be told.
    pub judged: Option<Judged>,
}

/// The shape of a run with its waves.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct ShapeFound {
    /// Which one.
    pub form: Form,
    /// The needle's middle.
    pub mean: Length,
    /// Once round.
    pub wobble: WaveFound,
    /// Twice round, if it is more than scatter.
    pub warp: Option<WaveFound>,
    /// Root mean square of what the waves do not explain.
    pub rms: Length,
    /// How far the one place stands out; nothing for other shapes.
    pub stands_out: Option<Length>,
    /// Where it is highest, if it can be said.
    pub high_spot: Option<Angle>,
    /// Of a wobble: within which angle either way that is sure to 95 %, if it is.
    pub sure_to: Option<Angle>,
}

/// How far one wave moves the needle.
#[derive(Clone, Copy, Debug, PartialEq, Hash)]
pub struct WaveFound {
    /// From lowest to highest.
    pub reach: Length,
    /// Standard uncertainty of it.
    pub u: Length,
}

/// A runout or a variation of thickness with its 95 % interval.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReachFound {
    /// What the readings show, scatter and all.
    pub read: Length,
    /// Combined standard uncertainty.
    pub u: Length,
    /// The part of it that the readings' own scatter makes.
    pub scatter: Length,
    /// Effective degrees of freedom; `None` is infinite.
    pub dof: Option<f64>,
    /// The value itself.
    pub estimate: Length,
    /// The lower end of the interval.
    pub low: Length,
    /// The upper end.
    pub high: Length,
}

impl Hash for ReachFound {
    fn hash<H: Hasher>(&self, state: &mut H) {
        let Self {
            read,
            u,
            scatter,
            dof,
            estimate,
            low,
            high,
        } = self;
        (read, u, scatter, dof.map(f64::to_bits), estimate, low, high).hash(state);
    }
}

impl RotorFound {
    /// Thickest less thinnest reading, scatter and all.
    pub fn range(&self) -> Length {
        self.thickest.minus(self.thinnest)
    }
}

impl ReachFound {
    /// As it is stored.
    pub fn of(reach: &Reach) -> Self {
        let (low, high) = reach.interval();
        Self {
            read: length(reach.read()),
            u: length(reach.u()),
            scatter: length(reach.scatter()),
            dof: reach.dof().map(round),
            estimate: length(reach.estimate()),
            low: length(low),
            high: length(high),
        }
    }
}

impl ShapeFound {
    /// As it is stored.
    pub fn of(shape: &Shape) -> Self {
        let fit = &shape.fit;
        let wave = |arrow: &Arrow| WaveFound {
            reach: length(arrow.reach()),
            u: length(arrow.u_of_reach()),
        };
        let sure_to = match shape.form {
            Form::Wobble => fit.first.sure_to(),
            _ => None,
        };
        Self {
            form: shape.form,
            mean: length(fit.mean),
            wobble: wave(&fit.first),
            warp: fit.second.as_ref().map(wave),
            rms: length(fit.rms),
            stands_out: shape.stands_out.map(length),
            high_spot: shape.high_spot.map(angle),
            sure_to: sure_to.map(angle),
        }
    }
}

impl<C> AgainstLimit<C> {
    /// As it is stored.
    pub fn of(spec: C, judged: Option<Judged>) -> Self {
        let judged = judged.map(|judged| Judged {
            conformance: round(judged.conformance),
            ..judged
        });
        Self { spec, judged }
    }

    /// Whether it is over its limit, proven or not.
    pub fn is_over(&self) -> bool {
        self.judged.is_some_and(|judged| judged.is_over())
    }
}

/// A millionth of a degree.
fn angle(angle: Angle) -> Angle {
    let degrees = round(angle.in_unit(AngleUnit::Degree));
    Angle::new(degrees, AngleUnit::Degree).unwrap_or(angle)
}
