//! A kind of wheel end as a value: another kind is one more value in a file of its own.

use crate::trade::fastening::SpecItem;
use crate::trade::play::Limit;
use crate::trade::wheel_end::bolted_driven::BOLTED_DRIVEN;
use crate::trade::wheel_end::bolted_free::BOLTED_FREE;
use crate::trade::wheel_end::item::ItemKind;
use crate::trade::wheel_end::plan::{CornerPlan, Plan};
use crate::trade::wheel_end::planned::{Place, asked};
use crate::trade::wheel_end::pressed::PRESSED;
use crate::trade::wheel_end::pressed_free::PRESSED_FREE;
use crate::trade::wheel_end::spindle_hub::SPINDLE_HUB;
use crate::trade::wheel_end::step::{Form, PlannedStep, StepKey};
use crate::trade::wheel_end::steps::Step;
use crate::trade::wheel_end::tapered::TAPERED;
use crate::words;

words! {
    /// Kinds of wheel end that have a procedure here.
    pub enum Kind {
        /// A hub unit bolted to the knuckle, driven through a shaft with an axle nut.
        BoltedDriven = "bolted_driven",
        /// A hub unit bolted to the knuckle or the axle, not driven.
        BoltedFree = "bolted_free",
        /// A hub unit in one piece that slides onto a spindle and is held by its nut, under a cap.
        SpindleHub = "spindle_hub",
        /// A double-row bearing pressed into the knuckle, driven through a shaft with an axle nut.
        Pressed = "pressed",
        /// A double-row bearing pressed into a hub on a spindle, not driven.
        PressedFree = "pressed_free",
        /// Two rows of tapered rollers on a spindle, set by its nut.
        Tapered = "tapered",
    }
}

words! {
    /// What a kit has in it.
    pub enum KitItem {
        Hub = "hub", AxleNut = "axle_nut", SpareNut = "spare_nut", HubBolts = "hub_bolts",
        Pads = "pads", AxleSocket = "axle_socket", TorqueWrench = "torque_wrench",
        AngleGauge = "angle_gauge", Puller = "puller", DialGauge = "dial_gauge",
        Stand = "stand", Jack = "jack", Chocks = "chocks", Hook = "hook", PedalDepressor = "pedal_depressor",
        Threadlocker = "threadlocker", Gloves = "gloves", Charged = "charged",
        SpindleNut = "spindle_nut", Cap = "cap", Cones = "cones", Cotter = "cotter",
        Grease = "grease", Bearing = "bearing", PressSet = "press_set", GuidePin = "guide_pin",
    }
}

/// One kind of wheel end: what it is made of, what it needs, and the order of its steps.
pub struct WheelEnd {
    /// The specs that it needs, in the order in which they are looked up.
    pub(super) specs: &'static [Place],
    /// What has to be in the van, in runs that several kinds share.
    pub(super) kit: &'static [&'static [KitItem]],
    /// The play that is allowed where the manufacturer gives none.
    pub play: Limit,
    /// Opened for the reading, and the first set.
    pub(super) measure: &'static [Place],
    /// Taking the part out.
    pub(super) remove: &'static [Place],
    /// Putting the new one in, up to the reading after.
    pub(super) install: &'static [Place],
    /// Opening it again to measure the new part once more.
    pub(super) reopen: &'static [Place],
    /// The reading after, and closing it.
    pub(super) close: &'static [Place],
    /// Closing what was opened for the reading, nothing replaced.
    pub(super) put_back: &'static [Place],
}

/// How few, how many as a rule and how many at most there are of an item of which there are several.
const fn several(group: ItemKind) -> Option<(u8, u8, u8)> {
    match group {
        ItemKind::LugNuts => Some((3, 5, 10)),
        ItemKind::HubBolts => Some((3, 4, 4)),
        ItemKind::BracketBolts | ItemKind::CaliperPins | ItemKind::StrutBolts => Some((2, 2, 2)),
        _ => None,
    }
}

/// How many items of a group there are at a wheel end, by what was noted of the vehicle; the usual
/// number where nothing was.
pub fn usual_count(group: ItemKind, noted: Option<u8>) -> u8 {
    several(group).map_or(1, |(least, usual, most)| {
        noted.unwrap_or(usual).clamp(least, most)
    })
}

impl Kind {
    /// The value of this kind.
    pub fn wheel_end(self) -> &'static WheelEnd {
        match self {
            Self::BoltedDriven => &BOLTED_DRIVEN,
            Self::BoltedFree => &BOLTED_FREE,
            Self::SpindleHub => &SPINDLE_HUB,
            Self::Pressed => &PRESSED,
            Self::PressedFree => &PRESSED_FREE,
            Self::Tapered => &TAPERED,
        }
    }
}

impl Kind {
    /// Whether a bearing is pressed in, so that its encoder may face the wrong side.
    pub const fn is_pressed(self) -> bool {
        matches!(self, Self::Pressed | Self::PressedFree)
    }

    /// Whether shoes in a drum may brake it.
    pub const fn may_have_a_drum(self) -> bool {
        !matches!(self, Self::BoltedDriven | Self::Pressed)
    }
}

impl WheelEnd {
    /// The specs that it needs, each with the step that asks for it.
    pub fn specs(&self, plan: &Plan) -> Vec<(Step, SpecItem)> {
        let asked = asked(self.specs, plan, None).into_iter();
        let spec = |planned: PlannedStep| match planned.form {
            Form::Spec(item) => Some((planned.key.step, item)),
            _ => None,
        };
        asked.filter_map(spec).collect()
    }

    /// What has to be in the van.
    pub fn kit(&self) -> impl Iterator<Item = KitItem> {
        self.kit.iter().copied().flatten().copied()
    }

    /// The steps that open it again to measure the new part once more.
    pub fn reopening(&self, plan: &Plan, at: &CornerPlan) -> Vec<StepKey> {
        let asked = asked(self.reopen, plan, Some(at)).into_iter();
        asked.map(|planned| planned.key).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trade::wheel_end::planned::steps;

    #[test]
    fn the_specs_of_a_kind_are_asked_by_steps_that_ask_for_a_spec() {
        for kind in Kind::ALL {
            for step in steps(kind.wheel_end().specs) {
                let form = &step.row().form;
                assert!(matches!(form, Form::Spec(_)), "{kind:?} {step:?}");
            }
        }
    }
}
