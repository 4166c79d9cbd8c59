//! The order of steps as data: which step stands at a place, under which facts of a job, and what
//! is different there from what its row says of it everywhere.

use crate::trade::vehicle::{NutLock, Pressing, SpeedSensor, WheelBrake};
use crate::trade::wheel_end::kind::Kind;
use crate::trade::wheel_end::plan::{CornerPlan, Course, NutPosition, Plan, Sign, Start};
use crate::trade::wheel_end::road::sign_gone;
use crate::trade::wheel_end::row::{More, Row};
use crate::trade::wheel_end::step::{
    Change, Check, Form, HoldPoint, Phase, PlannedStep, SetName, StepKey, When,
};
use crate::trade::wheel_end::steps::Step;

/// How many rounds one set of readings has.
pub const ROUNDS: u8 = 3;

/// One place in an order of steps: a step, or a run of them that several orders share.
#[derive(Clone, Copy)]
pub(super) struct Place {
    stands: Stands,
    /// Which time it is asked; of a reading its set says that.
    nth: u8,
    set: SetName,
    only: &'static [If],
    phase: Option<Phase>,
    needs: Option<&'static [HoldPoint]>,
    changes: Option<&'static [Change]>,
    checks: Option<&'static [Check]>,
    alone: bool,
}

/// What stands at a place.
#[derive(Clone, Copy)]
enum Stands {
    Step(Step),
    /// The places of a run, under the facts of the place that it stands at.
    Run(&'static [Place]),
}

/// A fact of a job under which a step is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum If {
    /// The job was started at home.
    AtHome,
    /// It was started at the car.
    AtCar,
    /// The axle nut gets its last torque in the air, the brake held or the wheel on the ground.
    NotBar,
    /// In the air, a bar across two studs.
    Bar,
    /// With the wheel on the ground.
    OnGround,
    /// In the air.
    InAir,
    /// Play was felt by hand.
    PlayFelt,
    /// The proof after the work speaks against the new part.
    Blocked,
    /// Lug nuts were found loose.
    NutsLoose,
    /// The road test was driven.
    Driven,
    /// The first five questions of the road left it open.
    MoreQuestions,
    /// They did not.
    NoMoreQuestions,
    /// Something is replaced on this job.
    Replaced,
    /// Nothing is.
    NotReplaced,
    /// Lug nuts are due to be checked again.
    RetorqueDue,
    /// The job has ended.
    Ended,
    /// A caliper brakes this wheel.
    Disc,
    /// Shoes do.
    Drum,
    /// Something does.
    Braked,
    /// The parking brake has to be let go here before the brake is opened.
    Released,
    /// It has not.
    NotReleased,
    /// There is a wheel speed sensor, or nobody knows of none.
    Sensor,
    /// There is none.
    NoSensor,
    /// A cotter pin locks the setting nut.
    Cotter,
    /// A lock nut does.
    LockNut,
    /// The bearing is pressed with the knuckle off, or nobody looked up how.
    KnuckleOff,
    /// The knuckle comes off, so that the wheel's angles may be others after it.
    Realigned,
}

impl If {
    fn holds(self, plan: &Plan, at: Option<&CornerPlan>) -> bool {
        let replaced = || plan.corners.iter().any(|at| at.course == Course::Replace);
        match self {
            Self::AtHome => plan.start == Start::AtHome,
            Self::AtCar => plan.start == Start::AtCar,
            Self::NotBar => plan.nut != NutPosition::AirBar,
            Self::Bar => plan.nut == NutPosition::AirBar,
            Self::OnGround => plan.nut == NutPosition::OnGround,
            Self::InAir => plan.nut != NutPosition::OnGround,
            Self::PlayFelt => at.is_some_and(|at| at.play_felt),
            Self::Blocked => at.is_some_and(|at| at.blocked),
            Self::NutsLoose => plan.nuts_loose,
            Self::Driven => plan.driven,
            Self::MoreQuestions => plan.more_questions,
            Self::NoMoreQuestions => !plan.more_questions,
            Self::Replaced => replaced(),
            Self::NotReplaced => !replaced(),
            Self::RetorqueDue => plan.retorque_is_due(),
            Self::Ended => plan.ended,
            Self::Disc => plan.fitted.brake == WheelBrake::Disc,
            Self::Drum => plan.fitted.brake == WheelBrake::Drum,
            Self::Braked => plan.fitted.brake != WheelBrake::None,
            Self::Released => at.is_some_and(|at| plan.fitted.is_released(at.corner)),
            Self::NotReleased => !at.is_some_and(|at| plan.fitted.is_released(at.corner)),
            Self::Sensor => plan.fitted.sensor != SpeedSensor::None,
            Self::NoSensor => plan.fitted.sensor == SpeedSensor::None,
            Self::Cotter => plan.fitted.lock == NutLock::Cotter,
            Self::LockNut => plan.fitted.lock == NutLock::LockNut,
            Self::Realigned => {
                plan.kind == Kind::Pressed && plan.fitted.pressing != Pressing::OnCar
            }
            Self::KnuckleOff => plan.fitted.pressing != Pressing::OnCar,
        }
    }
}

/// A step at its place, as its row says.
pub(super) const fn place(step: Step) -> Place {
    stands(Stands::Step(step))
}

/// A run of places; all but [`Place::only`] is said at the places in it.
pub(super) const fn run(places: &'static [Place]) -> Place {
    stands(Stands::Run(places))
}

const fn stands(stands: Stands) -> Place {
    Place {
        stands,
        nth: 1,
        set: SetName::FIRST,
        only: &[],
        phase: None,
        needs: None,
        changes: None,
        checks: None,
        alone: false,
    }
}

/// The steps of an order that a job asks for, at a corner or of the whole vehicle.
pub(super) fn asked(order: &[Place], plan: &Plan, at: Option<&CornerPlan>) -> Vec<PlannedStep> {
    let here = |place: &&Place| place.only.iter().all(|only| only.holds(plan, at));
    let places = order.iter().filter(here);
    let planned = |place: &Place| match place.stands {
        Stands::Step(step) => place.planned_steps(step, plan, at),
        Stands::Run(run) => asked(run, plan, at),
    };
    places.flat_map(planned).collect()
}

/// Every step of an order, whatever it is asked under.
#[cfg(test)]
pub(super) fn steps(order: &[Place]) -> Vec<Step> {
    let of = |place: &Place| match place.stands {
        Stands::Step(step) => vec![step],
        Stands::Run(run) => steps(run),
    };
    order.iter().flat_map(of).collect()
}

impl Place {
    /// Asked only where all of these hold.
    pub(super) const fn only(mut self, only: &'static [If]) -> Self {
        self.only = only;
        self
    }

    /// Asked for the `nth` time.
    pub(super) const fn nth(mut self, nth: u8) -> Self {
        self.nth = nth;
        self
    }

    /// A reading of this set.
    pub(super) const fn of(mut self, set: SetName) -> Self {
        self.set = set;
        self
    }

    /// Told under this phase.
    pub(super) const fn under(mut self, phase: Phase) -> Self {
        self.phase = Some(phase);
        self
    }

    /// Behind these hold points instead.
    pub(super) const fn needs(mut self, needs: &'static [HoldPoint]) -> Self {
        self.needs = Some(needs);
        self
    }

    /// Changing these items instead.
    pub(super) const fn moves(mut self, changes: &'static [Change]) -> Self {
        self.changes = Some(changes);
        self
    }

    /// With these rows instead.
    pub(super) const fn rows(mut self, checks: &'static [Check]) -> Self {
        self.checks = Some(checks);
        self
    }

    /// Never on one screen with the step after it.
    pub(super) const fn alone(mut self) -> Self {
        self.alone = true;
        self
    }

    fn planned_steps(&self, step: Step, plan: &Plan, at: Option<&CornerPlan>) -> Vec<PlannedStep> {
        let row = step.row();
        let planned = |form, nth| PlannedStep {
            key: StepKey {
                step,
                corner: at.map(|at| at.corner),
                nth,
            },
            phase: self.phase.unwrap_or(row.phase),
            form,
            holds: self.needs.unwrap_or(row.needs).to_vec(),
            changes: self.changes.unwrap_or(row.changes).to_vec(),
            joins: row.joins && !self.alone,
        };
        let set = self.set;
        match &row.form {
            Form::Round(..) => (1..=ROUNDS)
                .map(|round| planned(Form::Round(set, round), round_number(set, round)))
                .collect(),
            Form::DialSetup(_) => vec![planned(Form::DialSetup(set), setup_number(set))],
            Form::Decide(_) => vec![planned(Form::Decide(self.nth), self.nth)],
            Form::Checks(_) => vec![planned(Form::Checks(self.recorded(row, plan)), self.nth)],
            form => vec![planned(form.clone(), self.nth)],
        }
    }

    /// The rows of a list, with those that the job adds.
    fn recorded(&self, row: &Row, plan: &Plan) -> Vec<Check> {
        let signs: &[Sign] = match row.more {
            More::Signs => &plan.signs,
            More::Nothing | More::WrongLooks => &[],
        };
        let looks: &[Check] = match row.more {
            More::WrongLooks => &plan.wrong_looks,
            More::Nothing | More::Signs => &[],
        };
        let signs = signs.iter().map(|sign| sign_gone(*sign));
        let checks = self.checks.unwrap_or(row.checks);
        signs.chain([checks, looks].concat()).collect()
    }
}

/// The running number of a round over all sets of a corner, so that each round has a key.
pub const fn round_number(set: SetName, round: u8) -> u8 {
    let block = match set.when {
        When::Before => set.nth.saturating_sub(1),
        When::After => set.nth.saturating_add(1),
    };
    block.saturating_mul(10).saturating_add(round)
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
