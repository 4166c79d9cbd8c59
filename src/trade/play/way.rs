//! The way in which a play is taken: a number without it means nothing.

use crate::units::{Force, ForceUnit};
use crate::words;

words! {
    /// In which direction the hub is moved.
    pub enum Method {
        /// Pushed and pulled along the axle.
        Axial = "axial",
        /// Rocked: pushed at the top, or top against bottom.
        Rock = "rock",
    }
}

words! {
    /// Where the tip stands.
    pub enum Place {
        /// Hub centre: the wheel pilot, or the flange close to it.
        Pilot = "pilot",
        /// The flange face at its rim.
        FlangeRim = "flange_rim",
        /// The rotor, about 13 mm inside its edge.
        RotorFace = "rotor_face",
        /// The rotor's outer edge.
        RotorEdge = "rotor_edge",
        /// The wheel beside its top stud.
        WheelStud = "wheel_stud",
    }
}

words! {
    /// What is off the car while it is measured.
    pub enum Rig {
        /// Pads out, caliper swung up and tied, rotor held flat by two nuts: the default, method A.
        CaliperUp = "caliper_up",
        /// Caliper and rotor off: method B.
        RotorOff = "rotor_off",
        /// Wheel on.
        WheelOn = "wheel_on",
    }
}

/// Method, place, rig and force of a limit or of a reading.
#[derive(Clone, Copy, Debug, PartialEq, Hash)]
pub struct Way {
    /// Direction.
    pub method: Method,
    /// Where the tip stands.
    pub place: Place,
    /// What is off the car; `None` on a spec that names none.
    pub rig: Option<Rig>,
    /// The force that the spec names, or that was used; `None` is by hand.
    pub force: Option<Force>,
}

/// How two ways differ.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Difference {
    /// Not the same direction.
    Method,
    /// Not the same place.
    Place,
    /// The spec names a rig and this was another.
    Rig,
    /// One with a stated force and one by hand, or forces more than a tenth apart.
    Force,
}

impl Way {
    /// The default way where the spec names none: axial, by hand, at the pilot, caliper up.
    pub const DEFAULT: Self = Self {
        method: Method::Axial,
        place: Place::Pilot,
        rig: Some(Rig::CaliperUp),
        force: None,
    };

    /// The first difference that forbids comparing a reading taken this way with `limit`.
    pub fn differs_from(&self, limit: &Self) -> Option<Difference> {
        if self.method != limit.method {
            Some(Difference::Method)
        } else if self.place != limit.place {
            Some(Difference::Place)
        } else if limit.rig.is_some() && self.rig != limit.rig {
            Some(Difference::Rig)
        } else if !same_force(self.force, limit.force) {
            Some(Difference::Force)
        } else {
            None
        }
    }
}

/// A spring scale by hand holds no better than a tenth (common practice, no source).
pub(super) const FORCE_SHARE: f64 = 0.1;

fn same_force(used: Option<Force>, named: Option<Force>) -> bool {
    let newtons = |force: Force| force.in_unit(ForceUnit::Newton);
    match (used.map(newtons), named.map(newtons)) {
        (None, None) => true,
        (Some(used), Some(named)) => (used - named).abs() <= FORCE_SHARE * named.abs(),
        _ => false,
    }
}
