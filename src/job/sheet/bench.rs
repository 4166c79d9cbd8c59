//! What was read on the bench: runs round a face, and the thickness of rotors.

use super::JobState;
use crate::job::entry::{
    DialSetup, Event, RunoutReading, RunoutSpec, ThicknessReading, ThicknessSpec,
};
use crate::job::key::Key;
use crate::trade::play::Place;
use crate::trade::runout::{Bound, Surface};
use crate::trade::vehicle::{Axle, Corner};
use crate::trade::wheel_end::SetName;
use crate::units::{Decimal, TypedAngle, TypedLength};

impl JobState {
    /// Every place that was read or skipped round a face of a corner, run by run.
    pub fn runout(&self, corner: Corner) -> impl Iterator<Item = &RunoutReading> {
        let last = Key::Runout(corner, u8::MAX, u8::MAX);
        self.registers
            .range(Key::Runout(corner, 0, 0), last)
            .filter_map(|(key, _)| match self.fact(key) {
                Some(Event::Runout(reading)) => Some(reading),
                _ => None,
            })
    }

    /// Every place of a corner's rotor that was measured or skipped, measurement by measurement.
    pub fn thickness(&self, corner: Corner) -> impl Iterator<Item = &ThicknessReading> {
        let last = Key::Thickness(corner, u8::MAX, u8::MAX);
        self.registers
            .range(Key::Thickness(corner, 0, 0), last)
            .filter_map(|(key, _)| match self.fact(key) {
                Some(Event::Thickness(reading)) => Some(reading),
                _ => None,
            })
    }

    /// A limit of the thickness of an axle's rotors, if it was looked up.
    pub fn thickness_limit(&self, axle: Axle, bound: Bound) -> Option<&ThicknessSpec> {
        match self.fact(&Key::ThicknessLimit(axle, bound)) {
            Some(Event::ThicknessLimit(spec)) => Some(spec),
            _ => None,
        }
    }

    /// How the dial was set up for a set, if that was recorded.
    pub fn dial_setup(&self, corner: Corner, set: SetName) -> Option<&DialSetup> {
        match self.fact(&Key::DialSetup(corner, set)) {
            Some(Event::DialSetup(setup)) => Some(setup),
            _ => None,
        }
    }

    /// How far off square the tip stood while a set was taken, if anybody told.
    pub fn tip_angle(&self, corner: Corner, set: SetName) -> Option<&TypedAngle> {
        match self.fact(&Key::TipAngle(corner, set)) {
            Some(Event::TipAngle(_, _, angle)) => Some(angle),
            _ => None,
        }
    }

    /// By how many divisions the needle crept during a set, if anybody told.
    pub fn crept(&self, corner: Corner, set: SetName) -> Option<&Decimal> {
        match self.fact(&Key::Crept(corner, set)) {
            Some(Event::Crept(_, _, divisions)) => Some(divisions),
            _ => None,
        }
    }

    /// How far a place of the tip is from the axle's middle, if anybody told.
    pub fn tip_radius(&self, place: Place) -> Option<&TypedLength> {
        match self.fact(&Key::TipRadius(place)) {
            Some(Event::TipRadius(_, radius)) => Some(radius),
            _ => None,
        }
    }

    /// The most run-out that the manufacturer allows on a surface, if it was looked up.
    pub fn runout_limit(&self, surface: Surface) -> Option<&RunoutSpec> {
        match self.fact(&Key::RunoutLimit(surface)) {
            Some(Event::RunoutLimit(spec)) => Some(spec),
            _ => None,
        }
    }
}
