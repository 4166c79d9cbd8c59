//! The spec spec: one value from service information, or the statement that none was found.
//!
//! It has no number without a unit and none without a source; the manufacturer's value always wins.

use chrono::NaiveDate;

use crate::trade::fastening::strength::PropertyClass;
use crate::trade::fastening::thread::Thread;
use crate::trade::play::limit::{Limit, NegativeLimit};
use crate::trade::play::way::Way;
use crate::units::{Length, TypedAngle, TypedLength, TypedTorque};
use crate::words;

words! {
    /// What a spec is for.
    pub enum SpecItem {
        /// The axle nut.
        AxleNut = "axle_nut",
        /// Hub to knuckle.
        HubBolts = "hub_bolts",
        /// Caliper bracket to knuckle.
        BracketBolts = "bracket_bolts",
        /// Caliper pins.
        CaliperPins = "caliper_pins",
        /// Lug nuts or bolts.
        LugNuts = "lug_nuts",
        /// The nut on the spindle: how it is torqued, or how tapered rollers are seated and set.
        SpindleNut = "spindle_nut",
        /// The lock nut over it.
        LockNut = "lock_nut",
        /// Strut to knuckle.
        StrutBolts = "strut_bolts",
        /// Ball joint to knuckle.
        BallJoint = "ball_joint",
        /// Tie rod end to knuckle.
        TieRod = "tie_rod",
        /// The most play, with its way.
        PlayLimit = "play_limit",
    }
}

impl SpecItem {
    /// Whether it can be "not found" and the job still be finished by agreement: never for the
    /// axle nut, the hub bolts, the caliper and the wheel.
    pub const fn may_close_without_figure(self) -> bool {
        matches!(self, Self::PlayLimit)
    }
}

words! {
    /// How the hub is held for the last torque of the axle nut.
    pub enum Position {
        /// In the air, the brake held.
        AirBrakeHeld = "air_brake_held",
        /// In the air, a bar across two studs.
        AirBar = "air_bar",
        /// The last torque with the wheel on the ground.
        OnGround = "on_ground",
    }
}

words! {
    /// In what state the thread is to be, and what else the spec asks for.
    pub enum Condition {
        /// Clean and dry.
        Dry = "dry",
        /// Oiled.
        Oiled = "oiled",
        /// With threadlocker.
        Threadlocker = "threadlocker",
        /// A new fastener, every time.
        NewFastener = "new_fastener",
        /// The prevailing torque of a self-locking nut is in the figure.
        PrevailingIncluded = "prevailing_included",
        /// The prevailing torque is to be added.
        PrevailingExtra = "prevailing_extra",
        /// To be staked or pinned afterwards.
        Stake = "stake",
    }
}

impl Condition {
    /// The condition that this one rules out. Where neither of two is given, it is not known.
    pub const fn rival(self) -> Option<Self> {
        match self {
            Self::Dry => Some(Self::Oiled),
            Self::Oiled => Some(Self::Dry),
            Self::PrevailingIncluded => Some(Self::PrevailingExtra),
            Self::PrevailingExtra => Some(Self::PrevailingIncluded),
            Self::Threadlocker | Self::NewFastener | Self::Stake => None,
        }
    }
}

words! {
    /// In which order the page has the fasteners of a group tightened.
    pub enum Pattern {
        /// In a star.
        Star = "star",
        /// Crosswise.
        Cross = "cross",
        /// One after the other, round the circle.
        Round = "round",
        /// By the numbers that are drawn on the page.
        AsNumbered = "as_numbered",
    }
}

/// One stage of tightening, as printed.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum Stage {
    /// Until it sits, without a figure.
    Snug,
    /// To this torque.
    Torque(TypedTorque),
    /// On by this angle.
    Angle(TypedAngle),
    /// Back again, by this angle or, without one, until it is loose.
    Back(Option<TypedAngle>),
}

words! {
    /// How a doubted value was settled.
    pub enum Settled {
        /// Read twice, and it is printed so.
        ReadTwice = "read_twice",
        /// A second document says the same.
        SecondDocument = "second_document",
        /// The manufacturer was asked.
        AskedManufacturer = "asked_manufacturer",
    }
}

/// Where a value was read, and by whom.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct SpecSource {
    /// Title of the document.
    pub document: String,
    /// Page or procedure; may be empty where the document has none.
    pub page: String,
    /// The day on which it was looked up.
    pub looked_up: NaiveDate,
    /// Who looked it up.
    pub who: String,
    /// Why the value was kept although it was doubted: the code of a [`Settled`], or words.
    pub override_reason: Option<String>,
}

/// What a page says of the fasteners themselves; what it does not say is not known.
#[derive(Clone, Debug, Default, PartialEq, Hash)]
pub struct Printed {
    /// How many there are.
    pub count: Option<u8>,
    /// Their thread.
    pub thread: Option<Thread>,
    /// Their class.
    pub class: Option<PropertyClass>,
    /// In which order they are tightened.
    pub pattern: Option<Pattern>,
    /// The threadlocker's grade, as printed.
    pub threadlocker: Option<String>,
}

/// A tightening.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct TorqueBody {
    /// Its stages in order.
    pub stages: Vec<Stage>,
    /// How the hub is held; asked for the axle nut alone.
    pub position: Option<Position>,
    /// What else it asks for.
    pub conditions: Vec<Condition>,
    /// What the page says of the fasteners.
    pub printed: Printed,
    /// Where it was read.
    pub source: SpecSource,
}

/// What a spec says.
#[derive(Clone, Debug, PartialEq, Hash)]
pub enum SpecBody {
    /// How to tighten.
    Torque(TorqueBody),
    /// How much play is allowed.
    Play {
        /// The most play, as printed.
        most: TypedLength,
        /// The least, as printed, of a bearing that is set with play.
        least: Option<TypedLength>,
        /// How it is to be measured.
        way: Way,
        /// Where it was read.
        source: SpecSource,
    },
    /// It was looked for and not found: that is a value, and it is said.
    NotFound {
        /// Where was looked and why nothing was found.
        reason: String,
    },
}

/// A spec.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct Spec {
    /// What it is for.
    pub item: SpecItem,
    /// What it says.
    pub body: SpecBody,
}

/// What makes a spec unusable.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SpecError {
    /// A limit on a fastener's spec, or a torque on the spec of the play.
    WrongKind,
    /// No torque, or an angle or a turn back before any torque.
    NoTorqueFirst,
    /// A stage that is zero or below.
    NotAboveZero {
        /// Which stage, from 0.
        stage: usize,
    },
    /// A limit below zero.
    NegativeLimit,
    /// A least play that is not below the most, or not above zero.
    EmptyWindow,
    /// The axle nut's spec does not say how the hub is held.
    NoPosition,
    /// The document is not named, or nobody looked it up.
    NoSource,
    /// "Not found" without a reason.
    NoReason,
}

impl Spec {
    /// What makes this spec unusable, if anything does.
    pub fn fault(&self) -> Option<SpecError> {
        let plays = self.item == SpecItem::PlayLimit;
        match &self.body {
            SpecBody::Torque(_) if plays => Some(SpecError::WrongKind),
            SpecBody::Play { .. } if !plays => Some(SpecError::WrongKind),
            SpecBody::Torque(body) => torque_fault(self.item, body),
            SpecBody::Play {
                most,
                least,
                source,
                ..
            } => {
                let negative = most.number.is_negative() && most.number.value() < 0.0;
                negative
                    .then_some(SpecError::NegativeLimit)
                    .or_else(|| window_fault(most, least.as_ref()))
                    .or_else(|| source_fault(source))
            }
            SpecBody::NotFound { reason } => {
                reason.trim().is_empty().then_some(SpecError::NoReason)
            }
        }
    }

    /// The last torque to which the wrench is set; an angle may follow it.
    pub fn final_torque(&self) -> Option<&TypedTorque> {
        self.torques().last()
    }

    /// What it asks for, stage by stage; nothing where it gives no torque.
    pub fn stages(&self) -> &[Stage] {
        match &self.body {
            SpecBody::Torque(body) => &body.stages,
            _ => &[],
        }
    }

    /// The torque stages in order.
    pub fn torques(&self) -> impl Iterator<Item = &TypedTorque> {
        self.stages().iter().filter_map(|stage| match stage {
            Stage::Torque(torque) => Some(torque),
            Stage::Snug | Stage::Angle(_) | Stage::Back(_) => None,
        })
    }

    /// The manufacturer's limit of play, if the spec gives one.
    ///
    /// # Errors
    /// [`NegativeLimit`] for a value below zero.
    pub fn limit(&self) -> Option<Result<Limit, NegativeLimit>> {
        match &self.body {
            SpecBody::Play {
                most, least, way, ..
            } => {
                let limit = Limit::manufacturer(most.length(), *way);
                let least = least.as_ref().map(|least| least.length());
                Some(limit.map(|limit| limit.with_least(least)))
            }
            _ => None,
        }
    }
}

fn torque_fault(item: SpecItem, body: &TorqueBody) -> Option<SpecError> {
    let turns = body.stages.iter().find(|stage| **stage != Stage::Snug);
    // Tapered rollers may be seated until they bind, without a figure, and then backed off.
    let seated = item == SpecItem::SpindleNut && body.stages.first() == Some(&Stage::Snug);
    let backed = seated && matches!(turns, Some(Stage::Back(_)));
    if !matches!(turns, Some(Stage::Torque(_))) && !backed {
        return Some(SpecError::NoTorqueFirst);
    }
    if item == SpecItem::AxleNut && body.position.is_none() {
        return Some(SpecError::NoPosition);
    }
    stage_fault(&body.stages).or_else(|| source_fault(&body.source))
}

fn window_fault(most: &TypedLength, least: Option<&TypedLength>) -> Option<SpecError> {
    let least = least?.length();
    let window = Length::ZERO < least && least < most.length();
    (!window).then_some(SpecError::EmptyWindow)
}

fn stage_fault(stages: &[Stage]) -> Option<SpecError> {
    let above_zero = |stage: &Stage| match stage {
        Stage::Torque(torque) => torque.number.value() > 0.0,
        Stage::Angle(angle) | Stage::Back(Some(angle)) => angle.number.value() > 0.0,
        Stage::Snug | Stage::Back(None) => true,
    };
    let stage = stages.iter().position(|stage| !above_zero(stage))?;
    Some(SpecError::NotAboveZero { stage })
}

fn source_fault(source: &SpecSource) -> Option<SpecError> {
    let missing = source.document.trim().is_empty() || source.who.trim().is_empty();
    missing.then_some(SpecError::NoSource)
}

#[cfg(test)]
pub(crate) mod tests;
