//! The signs of the road: the question before the work, and the check that each is gone after it.

use crate::trade::wheel_end::plan::Sign;
use crate::trade::wheel_end::step::Check;
use crate::trade::wheel_end::steps::Step;

/// The sign that a question asks for.
pub fn sign_of(step: Step) -> Option<Sign> {
    Sign::ALL
        .iter()
        .copied()
        .find(|sign| sign_step(*sign) == step)
}

/// The question that asks for a sign.
pub const fn sign_step(sign: Sign) -> Step {
    match sign {
        Sign::Speed => Step::SignSpeed,
        Sign::Swerve => Step::SignSwerve,
        Sign::Coast => Step::SignCoast,
        Sign::Surface => Step::SignSurface,
        Sign::Brake => Step::SignBrake,
        Sign::FullLock => Step::SignFullLock,
        Sign::Shake => Step::SignShake,
        Sign::Pulse => Step::SignPulse,
    }
}

/// The check that a sign is gone after the work.
pub const fn sign_gone(sign: Sign) -> Check {
    match sign {
        Sign::Speed => Check::SpeedGone,
        Sign::Swerve => Check::SwerveGone,
        Sign::Coast => Check::CoastGone,
        Sign::Surface => Check::SurfaceGone,
        Sign::Brake => Check::BrakeGone,
        Sign::FullLock => Check::FullLockGone,
        Sign::Shake => Check::ShakeGone,
        Sign::Pulse => Check::PulseGone,
    }
}
