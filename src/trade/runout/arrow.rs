//! A wave round a face as an arrow: as long as its height, pointing to its high spot.

use super::reach::{NoUncertainty, Reach};
use crate::trade::play::geometry::{GeometryError, scaled_by_radius};
use crate::trade::play::uncertainty::{Combined, Contribution, combine, t_two_sided};
use crate::units::{Angle, AngleUnit, Length};

/// The amplitude and high spot of one wave, and how sure they are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Arrow {
    /// Towards the first place.
    x: Length,
    /// Towards a quarter turn on.
    y: Length,
    /// Standard uncertainty in the worst direction.
    u: Length,
    /// Its degrees of freedom; `None` is infinite.
    dof: Option<f64>,
    /// What rounding alone can leave; an arrow this short points nowhere.
    rounding: Length,
}

/// Decimal arithmetic on readings of one size leaves no more than this share of it.
pub(super) const ROUNDING: f64 = 1e-12;

/// Standard uncertainty of a radius read with a rule held by hand (common practice, no source).
pub(super) const RULE: Length = Length::millimetres(1.0);

impl Arrow {
    /// An arrow from its two parts; `size` is how large the numbers were that it came from.
    pub(super) fn of_parts(x: Length, y: Length, size: Length, u: Combined) -> Self {
        Self {
            x,
            y,
            u: Length::millimetres(u.u),
            dof: u.dof,
            rounding: size.abs().times(ROUNDING),
        }
    }

    /// A known arrow, for a wobble that comes from elsewhere than a series.
    pub fn known(amplitude: Length, high_spot: Angle, u: Length) -> Self {
        let (sin, cos) = radians(high_spot).sin_cos();
        let (x, y) = (amplitude.times(cos), amplitude.times(sin));
        let u = Contribution {
            u: u.abs().mm(),
            dof: None,
        };
        Self::of_parts(x, y, amplitude, u)
    }

    /// Half of what the wave moves the needle.
    pub fn amplitude(&self) -> Length {
        Length::millimetres(self.x.mm().hypot(self.y.mm()))
    }

    /// All that the wave moves the needle: twice the amplitude.
    pub fn reach(&self) -> Length {
        self.amplitude().times(2.0)
    }

    /// Where the arrow points, from 0 to 360°; `None` if it is as short as rounding leaves it.
    pub fn phase(&self) -> Option<Angle> {
        let degrees = self.y.mm().atan2(self.x.mm()).to_degrees();
        // A negative angle too small to count would come out as 360.
        let turned = degrees.rem_euclid(360.0);
        let turned = if turned >= 360.0 { 0.0 } else { turned };
        let is_real = self.amplitude() > self.rounding;
        is_real.then(|| Angle::new(turned, AngleUnit::Degree).ok())?
    }

    /// Standard uncertainty of the amplitude.
    pub const fn u(&self) -> Length {
        self.u
    }

    /// Standard uncertainty of the reach.
    pub fn u_of_reach(&self) -> Length {
        self.u.times(2.0)
    }

    /// The reach itself, freed of what its uncertainty adds to its length.
    ///
    /// # Errors
    /// [`NoUncertainty`] for an arrow without one.
    pub fn expected(&self) -> Result<Reach, NoUncertainty> {
        let u = Contribution {
            u: self.u_of_reach().mm(),
            dof: self.dof,
        };
        Reach::new(self.reach(), u, Length::ZERO)
    }

    /// Degrees of freedom of the uncertainty; `None` is infinite.
    pub const fn dof(&self) -> Option<f64> {
        self.dof
    }

    /// How far at most the high spot is from where the arrow points, either way, with 95 %;
    /// `None` where the arrow is too short to say.
    pub fn sure_to(&self) -> Option<Angle> {
        self.phase()?;
        let share = t_two_sided(0.95, self.dof) * self.u.mm() / self.amplitude().mm();
        (share < 1.0).then(|| Angle::new(share.asin().to_degrees(), AngleUnit::Degree).ok())?
    }

    /// Both waves together.
    pub fn plus(&self, other: &Self) -> Self {
        let u = combine(&[self.contribution(), other.contribution()]);
        Self {
            x: self.x.plus(other.x),
            y: self.y.plus(other.y),
            u: Length::millimetres(u.u),
            dof: u.dof,
            rounding: self.rounding.max(other.rounding),
        }
    }

    /// What is left of this wave without the other.
    pub fn minus(&self, other: &Self) -> Self {
        self.plus(&other.scaled(-1.0))
    }

    /// The same wave on a part that was turned on.
    pub fn turned(&self, by: Angle) -> Self {
        let (sin, cos) = radians(by).sin_cos();
        Self {
            x: self.x.times(cos).minus(self.y.times(sin)),
            y: self.x.times(sin).plus(self.y.times(cos)),
            ..*self
        }
    }

    /// The wave so many times as high; a negative factor turns it round.
    pub fn scaled(&self, factor: f64) -> Self {
        Self {
            x: self.x.times(factor),
            y: self.y.times(factor),
            u: self.u.times(factor.abs()),
            dof: self.dof,
            rounding: self.rounding.times(factor.abs()),
        }
    }

    /// A wobble as it shows at another radius: a tilt moves the needle the more, the farther out.
    ///
    /// `read · wanted / at`; what a rule misses of both radii adds to its uncertainty. It holds
    /// for the face of a part that stands askew, not for a pilot and not for a warp.
    ///
    /// # Errors
    /// [`GeometryError::NoRadius`] unless both radii are above zero.
    pub fn seen_at(&self, at: Length, wanted: Length) -> Result<Self, GeometryError> {
        let one = Length::millimetres(1.0);
        let factor = scaled_by_radius(one, at, wanted)?.mm();
        let seen = self.scaled(factor);
        let missed = (RULE.mm() / at.mm()).hypot(RULE.mm() / wanted.mm());
        let by_rule = Contribution {
            u: seen.amplitude().mm() * missed,
            dof: None,
        };
        let u = combine(&[seen.contribution(), by_rule]);
        Ok(Self {
            u: Length::millimetres(u.u),
            dof: u.dof,
            ..seen
        })
    }

    fn contribution(&self) -> Contribution {
        Contribution {
            u: self.u.mm(),
            dof: self.dof,
        }
    }
}

fn radians(angle: Angle) -> f64 {
    angle.in_unit(AngleUnit::Degree).to_radians()
}
