//! What each answer to each question of a procedure leads to. No answer is without a consequence.
//!
//! This is the one place that says it; gates, endings and screens follow it. The rules are common
//! practice, no source. `tests/answers.rs` goes through every question and every answer and fails
//! on one whose consequence does not happen, or whose hold cannot be lifted.

use crate::trade::answer::Answer;
use crate::trade::play::{Felt, StopSign};
use crate::trade::wheel_end::item::{ItemKind, ItemState};
use crate::trade::wheel_end::plan::Plan;
use crate::trade::wheel_end::step::{
    Change, Check, Choice, Form, Phase, Step, StepKey, StepSpec, When,
};

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

const GO_ON: &[Consequence] = &[GoesOn];
const HERE: &[Consequence] = &[Holds(Scope::Here)];
const DECISION: &[Consequence] = &[IsEvidence(Evidence::Decision)];
const READING: &[Consequence] = &[IsEvidence(Evidence::Reading)];
const PROOF: &[Consequence] = &[IsEvidence(Evidence::Proof)];
const ON_REPORT: &[Consequence] = &[IsNoted(Noted::OnReport)];
const STAYS_LOOSE: &[Consequence] = &[IsNoted(Noted::StaysLoose)];
const COUNTED: &[Consequence] = &[IsNoted(Noted::Counted)];
const BEFORE_IT_MOVES: &[Consequence] = &[Holds(Scope::Move)];
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
        Given::Said(Answer::Yes) => said_yes(step.step),
        Given::Said(Answer::No) => said_no(step.step),
        Given::Said(Answer::NotDone) | Given::NotDone => not_done(step.step),
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
            if step.step == Step::Clear =>
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
        Check::LockKey => &[Holds(Scope::Loosen)],
        Check::BoxStuds | Check::BoxPlug | Check::BoxBolts => &[Holds(Scope::Repair)],
        Check::Pilot | Check::BoltCircle | Check::Splines | Check::Plug | Check::Depth => HERE,
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
        Check::KeyBack => &[Holds(Scope::HandOver)],
        Check::OldPart => ON_REPORT,
    }
}

fn said_yes(step: Step) -> &'static [Consequence] {
    match step {
        // A sign that was there is asked for again after the work.
        Step::SignSpeed
        | Step::SignCoast
        | Step::SignSurface
        | Step::SignBrake
        | Step::SignFullLock
        | Step::SignShake
        | Step::SignPulse => &[Asks],
        _ => GO_ON,
    }
}

fn said_no(step: Step) -> &'static [Consequence] {
    match step {
        // The whole site is refused, or the inspection: the procedure takes another course.
        Step::SiteLook | Step::TeardownYes | Step::Agree => &[Asks],
        Step::RightCar
        | Step::NutsToCard
        | Step::Shove
        | Step::RockNuts
        | Step::Pedal
        | Step::ProvePedal => HERE,
        // Nothing was noticed.
        _ => GO_ON,
    }
}

fn picked(step: Step, pick: Choice, warning_lights: Option<Choice>) -> &'static [Consequence] {
    let after = step == Step::ProveWarningLights;
    match pick {
        Choice::AbsWarningLight | Choice::OtherWarningLight
            if after && warning_lights == Some(pick) =>
        {
            &[IsNoted(Noted::WasSoBefore)]
        }
        Choice::AbsWarningLight | Choice::OtherWarningLight if after => &[Holds(Scope::HandOver)],
        Choice::AbsWarningLight | Choice::OtherWarningLight => &[IsNoted(Noted::ComparedAfter)],
        Choice::BrakeWarningLight if after => BEFORE_IT_MOVES,
        Choice::BrakeWarningLight => &[Holds(Scope::Drive)],
        Choice::LouderRight | Choice::LouderLeft => &[Asks],
        Choice::GrindsHot if step == Step::ProveSpin => PROOF,
        Choice::GrindsHot => &[Stops(StopSign::GrindingWithHeat)],
        Choice::Rough | Choice::Noisy | Choice::RoughNoisy if step == Step::ProveSpin => PROOF,
        Choice::PlayGone
        | Choice::PlayStays
        | Choice::Rough
        | Choice::Noisy
        | Choice::RoughNoisy => DECISION,
        Choice::NutSlack => &[Stops(StopSign::LooseAxleNut)],
        Choice::NutRetorqued | Choice::FlexHalf | Choice::FlexOne | Choice::BaseElsewhere => {
            READING
        }
        Choice::FlexMore => HERE,
        Choice::OtherTighter | Choice::OtherLooser => &[IsNoted(Noted::NoLimitByHand)],
        Choice::SomeLoose | Choice::SameCorner | Choice::OtherCorner => COUNTED,
        Choice::RetorqueDeclined => ON_REPORT,
        Choice::NoWarningLights
        | Choice::NoChange
        | Choice::SmoothQuiet
        | Choice::SameAsOther
        | Choice::NutTight
        | Choice::FlexNone
        | Choice::NoneLoose
        | Choice::NoComeback => GO_ON,
    }
}

/// What follows where a step was not done: on a question of safety the same as from a no.
fn not_done(step: Step) -> &'static [Consequence] {
    match step {
        Step::Corners | Step::RightCar | Step::SiteLook => HERE,
        Step::LiftHold | Step::LiftStand | Step::Shove | Step::RockNuts => HERE,
        Step::Decide | Step::Agree => HERE,
        // One cannot come before the other has been removed or installed.
        Step::LoosenAxleNut | Step::StripNut | Step::StripBrake | Step::StripHub => HERE,
        Step::Compare | Step::Offer => HERE,
        Step::Pedal | Step::ProvePedal | Step::End => HERE,
        Step::WarningLights | Step::NutsToCard | Step::BeforeDriving => &[Holds(Scope::Drive)],
        Step::TeardownYes | Step::MeetLook => &[Holds(Scope::Loosen)],
        // Pads damp the movement that the dial must see, and a flange is behind its wheel.
        Step::NutFound | Step::CaliperUp | Step::CaliperUpAgain => &[Holds(Scope::Dial)],
        Step::WheelOff | Step::WheelOffAgain => &[Holds(Scope::Bare)],
        Step::Lower | Step::ProveWarningLights | Step::Clear => BEFORE_IT_MOVES,
        Step::Drive | Step::HeatHere | Step::HeatOther | Step::BrakeHeld => DECISION,
        Step::RockTwelveSix | Step::RockNineThree | Step::RockAxial => DECISION,
        Step::SpinHand | Step::OtherSide => DECISION,
        Step::RigTip | Step::RigPush | Step::RigAgain | Step::Round => READING,
        Step::ProveSpin | Step::ProveRoad | Step::ProveResult => PROOF,
        Step::Odometer => &[IsNoted(Noted::ByDateAlone)],
        Step::CardPlayLimit => &[IsNoted(Noted::DefaultLimit)],
        Step::CardAxleNut
        | Step::CardHubBolts
        | Step::CardBracketBolts
        | Step::CardCaliperPins
        | Step::CardLugNuts
        | Step::RouteSensor
        | Step::TurnHubBolts
        | Step::RotorOn
        | Step::BracketOn
        | Step::TurnBracketBolts
        | Step::CaliperOn
        | Step::NutOn
        | Step::NutFirst
        | Step::TurnAxleNut
        | Step::CaliperDown
        | Step::TurnCaliperPins
        | Step::Stake
        | Step::WheelOn
        | Step::TurnLugNuts => STAYS_LOOSE,
        Step::RetorqueDone | Step::Comeback => COUNTED,
        Step::Tools => &[Holds(Scope::HandOver)],
        Step::Booking
        | Step::Vehicle
        | Step::Price
        | Step::Kit
        | Step::Ready
        | Step::FoundPhoto
        | Step::SignSpeed
        | Step::SignSwerve
        | Step::SignCoast
        | Step::SignSurface
        | Step::SignBrake
        | Step::SignFullLock
        | Step::SignShake
        | Step::SignPulse
        | Step::StandPhoto
        | Step::LoosenLugNuts
        | Step::GaugeClean
        | Step::DeclinedPhoto
        | Step::StripSensor
        | Step::SensorPhoto
        | Step::ComparePhoto
        | Step::Seat
        | Step::MishapPhoto
        | Step::Retorque
        | Step::Sign
        | Step::Report
        | Step::LeftPhoto
        | Step::Wait => ON_REPORT,
    }
}

/// Whether a step stays open on some answer, so that no work after it may begin before it is
/// settled.
pub fn is_guard(spec: &StepSpec) -> bool {
    let no = said_no(spec.key.step).contains(&Holds(Scope::Here));
    let rows = match &spec.form {
        Form::Checks(checks) => checks
            .iter()
            .any(|check| row(spec.key, *check, Answer::No).contains(&Holds(Scope::Here))),
        Form::Choice(picks) => picks
            .iter()
            .any(|pick| stays_open(spec.key, Given::Picked(*pick))),
        _ => false,
    };
    no || rows || not_done(spec.key.step).contains(&Holds(Scope::Here))
}

/// Whether a step is work on the car or a look at it, and not only something that is recorded.
pub const fn is_work(spec: &StepSpec) -> bool {
    !matches!(spec.phase, Phase::LookBack)
        && matches!(
            spec.form,
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
        && !matches!(spec.key.step, Step::Wait)
}

/// Whether a step reads the dial before the work, or after it where the question is asked after it.
fn is_read(question: StepKey, spec: &StepSpec) -> bool {
    let again = matches!(question.step, Step::WheelOffAgain | Step::CaliperUpAgain);
    let when = if again { When::After } else { When::Before };
    matches!(spec.form, Form::Round(set, _) if set.when == when)
}

/// Whether a step is done at what its wheel covers.
fn is_behind_the_wheel(spec: &StepSpec) -> bool {
    use ItemKind::{AxleNut, LugNuts, Stake, Wheel};
    let in_reach = |group| matches!(group, Wheel | LugNuts | Stake | AxleNut);
    let covered = |change: &Change| change.to < ItemState::ByHand && !in_reach(change.group);
    spec.key.step == Step::GaugeClean || spec.changes.iter().any(covered)
}

impl Scope {
    /// Whether a step waits while `question` has an answer of this scope.
    pub fn covers(self, question: StepKey, spec: &StepSpec) -> bool {
        let here = question.corner.is_none() || question.corner == spec.key.corner;
        let loosens = spec.changes.iter().any(|change| change.to.is_loose());
        match self {
            Self::Here => false,
            Self::Drive => spec.key.step == Step::Drive,
            Self::Loosen => loosens && !matches!(spec.phase, Phase::Fit | Phase::Tighten),
            Self::Repair => spec.phase == Phase::Strip && is_work(spec),
            Self::Dial => here && is_read(question, spec),
            Self::Bare => here && (is_behind_the_wheel(spec) || is_read(question, spec)),
            Self::Move => {
                let moves = matches!(
                    spec.key.step,
                    Step::ProveWarningLights | Step::ProveRoad | Step::End
                );
                moves && spec.key != question
            }
            Self::HandOver => spec.key.step == Step::End,
        }
    }
}
