//! The step at which the dial of one set of readings is set up.

use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::spec::at_corner;
use crate::trade::wheel_end::step::{Form, Phase, SetName, Step, StepSpec, When};

/// How the dial stands for a set: asked before its base is pushed and zeroed.
pub(super) fn dial_setup(corner: Corner, set: SetName, phase: Phase) -> StepSpec {
    let mut spec = at_corner(phase, Step::RigTip, corner, Form::DialSetup(set));
    spec.key = spec.key.nth(setup_number(set));
    spec
}

/// Which time the dial is set up, so that each set's setup has a key. The set after the work is
/// the second, as it is of the base's push.
pub const fn setup_number(set: SetName) -> u8 {
    match (set.when, set.nth) {
        (When::After, _) => 2,
        (When::Before, 2) => 3,
        (When::Before, _) => 1,
    }
}
