//! What a procedure depends on: the facts of one job, already decided.

use crate::trade::vehicle::{
    Axle, Corner, Encoder, Fixing, NutLock, ParkingBrake, Pressing, SpeedSensor, WheelBrake,
};
use crate::trade::wheel_end::kind::Kind;
use crate::trade::wheel_end::step::{Check, Choice, StepKey};
use crate::words;

/// Where the axle nut gets its last torque, as its spec says.
pub use crate::trade::fastening::Position as NutPosition;

words! {
    /// What comes of a corner after it was measured.
    pub enum Course {
        /// Not decided yet.
        Open = "open",
        /// Nothing is replaced: put it back.
        PutBack = "put_back",
        /// A decision that asks the customer stands, and the customer has not answered.
        Asking = "asking",
        /// The customer said no: put it back.
        Declined = "declined",
        /// The customer said yes: replace it.
        Replace = "replace",
    }
}

words! {
    /// Where a job was started.
    pub enum Start {
        /// At home, before leaving.
        AtHome = "at_home",
        /// At the car: what Pack would have asked is asked where it is first needed.
        AtCar = "at_car",
    }
}

words! {
    /// The signs of a road test, in the order in which they are asked.
    pub enum Sign {
        Speed = "speed", Swerve = "swerve", Coast = "coast", Surface = "surface", Brake = "brake",
        FullLock = "full_lock", Shake = "shake", Pulse = "pulse",
    }
}

/// What a wheel end has beside its bearing, as it was asked in Pack.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fitted {
    /// How the wheel is fixed.
    pub fixing: Fixing,
    /// What brakes it.
    pub brake: WheelBrake,
    /// What the parking brake acts on.
    pub parking: ParkingBrake,
    /// What reads its speed.
    pub sensor: SpeedSensor,
    /// What the sensor reads.
    pub encoder: Encoder,
    /// What locks the setting nut.
    pub lock: NutLock,
    /// How a bearing is pressed.
    pub pressing: Pressing,
}

impl Fitted {
    /// What most cars have; of the sensor nothing is known.
    pub const COMMON: Self = Self {
        fixing: Fixing::Nuts,
        brake: WheelBrake::Disc,
        parking: ParkingBrake::Rear,
        sensor: SpeedSensor::NotKnown,
        encoder: Encoder::NotKnown,
        lock: NutLock::Cotter,
        pressing: Pressing::NotKnown,
    };

    /// Whether the parking brake of this corner has to be let go before its brake is opened: shoes
    /// do not clear their drum else, and a motor's piston is not forced back.
    pub fn is_released(&self, corner: Corner) -> bool {
        let acts_on = match self.parking {
            ParkingBrake::Front => Axle::Front,
            ParkingBrake::Rear | ParkingBrake::Electric => Axle::Rear,
        };
        let opened = match self.brake {
            WheelBrake::Drum => true,
            WheelBrake::Disc => self.parking == ParkingBrake::Electric,
            WheelBrake::None => false,
        };
        opened && acts_on == corner.axle()
    }
}

/// All by which steps are told otherwise.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Build {
    /// The kind of wheel end.
    pub kind: Kind,
    /// Where the axle nut gets its last torque.
    pub nut: NutPosition,
    /// What it has beside its bearing.
    pub fitted: Fitted,
}

/// What is known of one corner, as far as the procedure needs it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CornerPlan {
    /// Which corner.
    pub corner: Corner,
    /// What comes of it.
    pub course: Course,
    /// Whether the decision that stands is STOP.
    pub stop: bool,
    /// Whether play was felt, so that the brake-held test is worth asking.
    pub play_felt: bool,
    /// Whether a second set of readings was asked for.
    pub second_set: bool,
    /// Whether the proof after the work speaks against the new part.
    pub blocked: bool,
    /// Whether the closed wheel end was opened again to measure the new part once more.
    pub reopened: bool,
    /// Whether the car was left while the customer thought about the repair.
    pub waited: bool,
    /// The step at which lug nuts were turned on the ground when a stud or bolt broke that is
    /// replaced.
    pub broken_stud: Option<StepKey>,
}

/// The facts that pick and order the steps.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// The kind of wheel end.
    pub kind: Kind,
    /// What it has beside its bearing.
    pub fitted: Fitted,
    /// Where the job was started.
    pub start: Start,
    /// The corners, in the order in which they are worked.
    pub corners: Vec<CornerPlan>,
    /// Where the axle nut gets its last torque.
    pub nut: NutPosition,
    /// Whether the site was refused.
    pub site_refused: bool,
    /// Whether the customer refused to have it taken apart for the reading.
    pub teardown_refused: bool,
    /// Whether lug nuts were found loose at the looks before driving.
    pub nuts_loose: bool,
    /// The looks before driving that were not right or not done; they come again before the car
    /// moves after the work.
    pub wrong_looks: Vec<Check>,
    /// Which warning light stayed on before the work.
    pub warning_lights: Option<Choice>,
    /// Whether the road test was driven.
    pub driven: bool,
    /// Whether the first five questions left it open.
    pub more_questions: bool,
    /// The signs that were there before the work.
    pub signs: Vec<Sign>,
    /// Whether the job has ended.
    pub ended: bool,
}

impl Plan {
    /// All by which its steps are told otherwise.
    pub const fn build(&self) -> Build {
        Build {
            kind: self.kind,
            nut: self.nut,
            fitted: self.fitted,
        }
    }

    /// Whether the car is still held and chocked when the corner at `place` is raised: as it was for
    /// another corner of the same axle, of which nobody waited for an answer since. Both wheels of
    /// the other axle are chocked for it.
    ///
    /// # Source
    /// Common practice, no source.
    pub fn is_still_held(&self, place: usize) -> bool {
        let before = self.corners.get(..place).unwrap_or_default();
        let Some(here) = self.corners.get(place) else {
            return false;
        };
        let held = |at: &CornerPlan| {
            let left = at.waited || at.course == Course::Asking;
            at.corner.axle() == here.corner.axle() && !left
        };
        !before.is_empty() && before.iter().all(held)
    }

    /// Whether the lug nuts were torqued on this job, on a car that may be driven: then they are
    /// due to be checked again.
    pub fn retorque_is_due(&self) -> bool {
        let parked = |at: &CornerPlan| at.blocked || at.stop && at.course != Course::Replace;
        let torqued = !self.teardown_refused || self.nuts_loose;
        torqued && !self.corners.iter().any(parked)
    }
}

impl Sign {
    /// Whether this sign belongs to the five that are asked first.
    pub const fn is_first(self) -> bool {
        matches!(
            self,
            Self::Speed | Self::Swerve | Self::Coast | Self::Surface | Self::Brake
        )
    }
}
