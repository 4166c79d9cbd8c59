//! What each answer to each question of a procedure leads to. No answer is without a consequence.
//!
//! A step's row says it of yes, no and "not done", this page of the rows of lists and of words;
//! gates, endings and screens follow them. The rules are common practice, no source.
//! `tests/answers.rs` goes through every question and every answer and fails on one whose
//! consequence does not happen, or whose hold cannot be lifted.

use crate::trade::answer::Answer;
use crate::trade::play::{Felt, StopSign};
use crate::trade::wheel_end::item::{ItemKind, ItemState};
use crate::trade::wheel_end::plan::Plan;
use crate::trade::wheel_end::row::Car;
use crate::trade::wheel_end::step::{
    Change, Check, Choice, Form, Phase, PlannedStep, StepKey, When,
};
use crate::trade::wheel_end::steps::Step;

/// One answer to a question, or to one row of a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Given {
    /// One row of a list.
    Row(Check, Answer),
    /// Yes or no.
    Said(Answer),
    /// One word.
    Picked(Choice),
    /// What the hands felt.
    Felt(Felt),
    /// It is done: a number, a photo, a spec or a signature is there.
    Done,
    /// It was not done, whatever the reason.
    NotDone,
}

/// Which steps wait until a question is answered again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scope {
    /// The question itself stays open, and all work after it waits.
    Here,
    /// The first road test.
    Drive,
    /// Everything that is loosened or removed.
    Loosen,
    /// Taking the wheel end apart for the repair.
    Repair,
    /// The dial indicator at this corner, before the work or after it as the question is.
    Dial,
    /// The same, and everything else at this corner that a wheel which is on stands in the way of.
    Bare,
    /// The car moving after the work, and any ending but "left unfinished".
    Move,
    /// Any ending but "left unfinished".
    HandOver,
}

/// What an answer is evidence of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Evidence {
    /// The decision on a corner: its reasons, or the tests that it names as not done.
    Decision,
    /// How far a dial reading can be trusted or compared.
    Reading,
    /// Whether the repair is proved.
    Proof,
}

/// Why an answer is only recorded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Noted {
    /// It is printed on the report, and nothing that is safe depends on it.
    OnReport,
    /// It is compared with what is found after the work.
    ComparedAfter,
    /// It was so before the work.
    WasSoBefore,
    /// What was not put back stays on the loose list, and the job cannot end as finished.
    StaysLoose,
    /// Without a manufacturer limit the default limit is used.
    DefaultLimit,
    /// A comparison by hand has no limit.
    NoLimitByHand,
    /// It is counted among the figures of the shop.
    Counted,
    /// The distance is unknown, so the re-torque is due by its date.
    ByDateAlone,
}

/// What follows from an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Consequence {
    /// It is as it should be.
    GoesOn,
    /// Work waits until it is put right and answered again.
    Holds(Scope),
    /// The vehicle must not be driven: the decision is STOP.
    Stops(StopSign),
    /// It counts for or against something.
    IsEvidence(Evidence),
    /// The procedure asks for something else.
    Asks,
    /// It is recorded.
    IsNoted(Noted),
}

use Consequence::{Asks, GoesOn, Holds, IsEvidence, IsNoted, Stops};

pub(super) const GO_ON: &[Consequence] = &[GoesOn];
pub(super) const ASKS: &[Consequence] = &[Asks];
pub(super) const HERE: &[Consequence] = &[Holds(Scope::Here)];
pub(super) const DECISION: &[Consequence] = &[IsEvidence(Evidence::Decision)];
pub(super) const READING: &[Consequence] = &[IsEvidence(Evidence::Reading)];
pub(super) const PROOF: &[Consequence] = &[IsEvidence(Evidence::Proof)];
pub(super) const ON_REPORT: &[Consequence] = &[IsNoted(Noted::OnReport)];
pub(super) const STAYS_LOOSE: &[Consequence] = &[IsNoted(Noted::StaysLoose)];
pub(super) const DEFAULT_LIMIT: &[Consequence] = &[IsNoted(Noted::DefaultLimit)];
pub(super) const BY_DATE_ALONE: &[Consequence] = &[IsNoted(Noted::ByDateAlone)];
pub(super) const COUNTED: &[Consequence] = &[IsNoted(Noted::Counted)];
pub(super) const NOT_YET_DRIVEN: &[Consequence] = &[Holds(Scope::Drive)];
pub(super) const NOT_LOOSENED: &[Consequence] = &[Holds(Scope::Loosen)];
/// Pads damp the movement that the dial must see.
pub(super) const NO_DIAL: &[Consequence] = &[Holds(Scope::Dial)];
/// A flange is behind its wheel.
pub(super) const BARE: &[Consequence] = &[Holds(Scope::Bare)];
pub(super) const BEFORE_IT_MOVES: &[Consequence] = &[Holds(Scope::Move)];
pub(super) const NOT_HANDED_OVER: &[Consequence] = &[Holds(Scope::HandOver)];
/// It must not be driven, and it is looked at again before the car moves after the work.
const NOT_DRIVEN: &[Consequence] = &[Holds(Scope::Drive), Asks];

/// What follows from an answer at a step of this plan.
pub fn consequences(step: StepKey, given: Given, plan: &Plan) -> &'static [Consequence] {
    follows(step, given, plan.warning_lights)
}

/// The same where `warning_lights` is the warning light that stayed on before the work.
fn follows(step: StepKey, given: Given, warning_lights: Option<Choice>) -> &'static [Consequence] {
    match given {
        Given::Done => GO_ON,
        Given::Row(_, Answer::Yes) => GO_ON,
        Given::Row(check, answer) => row(step, check, answer),
        Given::Said(Answer::Yes) => step.step.row().yes,
        Given::Said(Answer::No) => step.step.row().no,
        Given::Said(Answer::NotDone) | Given::NotDone => step.step.row().not_done,
        Given::Picked(pick) => picked(step.step, pick, warning_lights),
        Given::Felt(Felt::Nothing) => GO_ON,
        Given::Felt(_) => DECISION,
    }
}

/// Whether an answer leaves its step open until it is put right and answered again.
pub fn stays_open(step: StepKey, given: Given) -> bool {
    follows(step, given, None).contains(&Holds(Scope::Here))
}

/// The hold of an answer, if it has one.
pub fn hold(step: StepKey, given: Given, plan: &Plan) -> Option<Scope> {
    consequences(step, given, plan)
        .iter()
        .find_map(|follows| match follows {
            Holds(scope) => Some(*scope),
            _ => None,
        })
}

/// A row that is not answered with yes; whoever did not look knows no more than one who saw a no.
fn row(step: StepKey, check: Check, answer: Answer) -> &'static [Consequence] {
    match check {
        // Before the car moves what was wrong on arrival is looked at again.
        Check::NutsAsFound | Check::WheelUpright | Check::PedalFirm | Check::Tires
            if is_after(step.step) =>
        {
            BEFORE_IT_MOVES
        }
        Check::NutsAsFound if answer == Answer::No => &[
            Stops(StopSign::LooseWheelFasteners),
            Holds(Scope::Drive),
            Asks,
        ],
        Check::WheelUpright if answer == Answer::No => {
            &[Stops(StopSign::VisibleTilt), Holds(Scope::Drive), Asks]
        }
        Check::NutsAsFound | Check::WheelUpright | Check::PedalFirm | Check::Tires => NOT_DRIVEN,
        Check::Slope | Check::Surface | Check::Traffic => HERE,
        Check::JackPoint | Check::StandUnder | Check::WheelUnderRocker => HERE,
        Check::LockKey => NOT_LOOSENED,
        Check::BoxStuds | Check::BoxPlug | Check::BoxBolts => &[Holds(Scope::Repair)],
        Check::Pilot | Check::BoltCircle | Check::Splines | Check::Plug | Check::Depth => HERE,
        Check::SpindleBore | Check::PairNumbers | Check::SealSize | Check::BearingSize => HERE,
        Check::ConesSound | Check::CupsSound | Check::SpindleSound | Check::SealLand => HERE,
        Check::BoreRound | Check::BoreClean | Check::BoreNotSpun => HERE,
        Check::SpeedGone
        | Check::SwerveGone
        | Check::CoastGone
        | Check::SurfaceGone
        | Check::BrakeGone
        | Check::FullLockGone
        | Check::ShakeGone
        | Check::PulseGone
        | Check::RoadClean => PROOF,
        Check::ToolsCounted | Check::ChocksOut => BEFORE_IT_MOVES,
        Check::KeyBack => NOT_HANDED_OVER,
        Check::OldPart => ON_REPORT,
    }
}

/// Whether a step is asked after the work.
fn is_after(step: Step) -> bool {
    step.row().phase == Phase::Prove
}

fn picked(step: Step, pick: Choice, warning_lights: Option<Choice>) -> &'static [Consequence] {
    let after = is_after(step);
    match pick {
        Choice::AbsWarningLight | Choice::OtherWarningLight
            if after && warning_lights == Some(pick) =>
        {
            &[IsNoted(Noted::WasSoBefore)]
        }
        Choice::AbsWarningLight | Choice::OtherWarningLight if after => NOT_HANDED_OVER,
        Choice::AbsWarningLight | Choice::OtherWarningLight => &[IsNoted(Noted::ComparedAfter)],
        Choice::BrakeWarningLight if after => BEFORE_IT_MOVES,
        Choice::BrakeWarningLight => NOT_YET_DRIVEN,
        Choice::LouderRight | Choice::LouderLeft => ASKS,
        Choice::GrindsHot | Choice::Rough | Choice::Noisy | Choice::RoughNoisy if after => PROOF,
        Choice::GrindsHot => &[Stops(StopSign::GrindingWithHeat)],
        Choice::PlayGone
        | Choice::PlayStays
        | Choice::Rough
        | Choice::Noisy
        | Choice::RoughNoisy => DECISION,
        Choice::SlotTighter => HERE,
        Choice::NutSlack | Choice::LockGone => &[Stops(StopSign::LooseAxleNut)],
        Choice::NutRetorqued | Choice::FlexHalf | Choice::FlexOne | Choice::BaseElsewhere => {
            READING
        }
        Choice::FlexMore => HERE,
        Choice::OtherTighter | Choice::OtherLooser => &[IsNoted(Noted::NoLimitByHand)],
        Choice::SomeLoose | Choice::SameCorner | Choice::OtherCorner => COUNTED,
        Choice::RetorqueDeclined
        | Choice::RenewedBoth
        | Choice::RenewedOuter
        | Choice::RenewedInner
        | Choice::RenewedNone => ON_REPORT,
        Choice::NoWarningLights
        | Choice::NoChange
        | Choice::SmoothQuiet
        | Choice::SameAsOther
        | Choice::NutTight
        | Choice::LockHolds
        | Choice::SlotMeets
        | Choice::SlotLooser
        | Choice::FlexNone
        | Choice::NoneLoose
        | Choice::NoComeback => GO_ON,
    }
}

/// Whether a step stays open on some answer, so that no work after it may begin before it is
/// settled.
pub fn is_guard(planned: &PlannedStep) -> bool {
    let row = planned.key.step.row();
    let holds = |follows: &[Consequence]| follows.contains(&Holds(Scope::Here));
    let rows = match &planned.form {
        Form::Checks(checks) => checks
            .iter()
            .any(|check| stays_open(planned.key, Given::Row(*check, Answer::No))),
        Form::Choice(picks) => picks
            .iter()
            .any(|pick| stays_open(planned.key, Given::Picked(*pick))),
        _ => false,
    };
    holds(row.no) || rows || holds(row.not_done)
}

/// Whether a step is work on the car or a look at it, and not only something that is recorded.
pub fn is_work(planned: &PlannedStep) -> bool {
    !matches!(planned.phase, Phase::LookBack)
        && matches!(
            planned.form,
            Form::Do
                | Form::Ask
                | Form::Checks(_)
                | Form::Choice(_)
                | Form::Swing
                | Form::DialSetup(_)
                | Form::Round(..)
                | Form::Turn(_)
                | Form::Result
        )
        && planned.key.step.row().car != Some(Car::Waits)
}

/// Whether a step reads the dial before the work, or after it where the question is asked after it.
fn is_read(question: StepKey, planned: &PlannedStep) -> bool {
    let when = if is_after(question.step) {
        When::After
    } else {
        When::Before
    };
    matches!(planned.form, Form::Round(set, _) if set.when == when)
}

/// Whether a step is done at what its wheel covers.
fn is_behind_the_wheel(planned: &PlannedStep) -> bool {
    use ItemKind::{AxleNut, LugNuts, ParkingBrake, Stake, Wheel};
    let in_reach = |group| matches!(group, Wheel | LugNuts | Stake | AxleNut | ParkingBrake);
    let covered = |change: &Change| change.to < ItemState::ByHand && !in_reach(change.group);
    planned.key.step.row().behind_the_wheel || planned.changes.iter().any(covered)
}

impl Scope {
    /// Whether a step waits while `question` has an answer of this scope.
    pub fn covers(self, question: StepKey, planned: &PlannedStep) -> bool {
        let here = question.corner.is_none() || question.corner == planned.key.corner;
        let loosens = planned.changes.iter().any(|change| change.to.is_loose());
        let car = planned.key.step.row().car;
        match self {
            Self::Here => false,
            Self::Drive => car == Some(Car::Drives),
            Self::Loosen => loosens && !matches!(planned.phase, Phase::Fit | Phase::Tighten),
            Self::Repair => planned.phase == Phase::Strip && is_work(planned),
            Self::Dial => here && is_read(question, planned),
            Self::Bare => here && (is_behind_the_wheel(planned) || is_read(question, planned)),
            Self::Move => matches!(car, Some(Car::Moves | Car::Leaves)) && planned.key != question,
            Self::HandOver => car == Some(Car::Leaves),
        }
    }
}
