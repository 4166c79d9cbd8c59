//! The steps of a job by name, and how each is answered.
//!
//! A step has a name, never an index; a phase is a label on a step.

use crate::trade::fastening::SpecItem;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::item::{ItemKind, ItemState};
use crate::trade::wheel_end::steps::Step;
use crate::words;

words! {
    /// The phases of a visit, as a technician names them.
    pub enum Phase {
        Pack = "pack", Site = "site", Meet = "meet", Listen = "listen", Lift = "lift",
        Rock = "rock", Gauge = "gauge", Decide = "decide", Agree = "agree", Strip = "strip",
        Fit = "fit", Tighten = "tighten", Prove = "prove", HandOver = "hand_over",
        LookBack = "look_back",
    }
}

/// One step of one job: its name, the corner it is at, and which time it is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct StepKey {
    /// The step's name.
    pub step: Step,
    /// The corner, for steps that belong to one.
    pub corner: Option<Corner>,
    /// Which time, counted from 1: rounds of a reading, second passes, second sets.
    pub nth: u8,
}

impl StepKey {
    /// A step that belongs to the whole vehicle.
    pub const fn once(step: Step) -> Self {
        Self {
            step,
            corner: None,
            nth: 1,
        }
    }

    /// A step at one corner.
    pub const fn at(step: Step, corner: Corner) -> Self {
        Self {
            step,
            corner: Some(corner),
            nth: 1,
        }
    }

    /// The same step, asked for the `nth` time.
    pub const fn nth(self, nth: u8) -> Self {
        Self { nth, ..self }
    }

    /// The stable code, for storage and for the route: `round@front_left.2`.
    pub fn code(self) -> String {
        let mut code = self.step.code().to_owned();
        if let Some(corner) = self.corner {
            code.push('@');
            code.push_str(corner.code());
        }
        if self.nth != 1 {
            code.push('.');
            code.push_str(&self.nth.to_string());
        }
        code
    }

    /// The step of a code made by [`StepKey::code`].
    pub fn from_code(code: &str) -> Option<Self> {
        let (rest, nth) = match code.split_once('.') {
            Some((rest, nth)) => (rest, nth.parse().ok()?),
            None => (code, 1),
        };
        let (step, corner) = match rest.split_once('@') {
            Some((step, corner)) => (step, Some(Corner::from_code(corner)?)),
            None => (rest, None),
        };
        Some(Self {
            step: Step::from_code(step)?,
            corner,
            nth,
        })
    }
}

words! {
    /// One thing of a list that is looked at together.
    pub enum Check {
        Slope = "slope", Surface = "surface", Traffic = "traffic",
        LockKey = "lock_key", BoxStuds = "box_studs", BoxPlug = "box_plug", BoxBolts = "box_bolts",
        NutsAsFound = "nuts_as_found", WheelUpright = "wheel_upright", PedalFirm = "pedal_firm",
        Tires = "tires",
        JackPoint = "jack_point", StandUnder = "stand_under", WheelUnderRocker = "wheel_under_rocker",
        Pilot = "pilot", BoltCircle = "bolt_circle", Splines = "splines", Plug = "plug",
        Depth = "depth",
        SpindleBore = "spindle_bore", PairNumbers = "pair_numbers", SealSize = "seal_size",
        BearingSize = "bearing_size",
        ConesSound = "cones_sound", CupsSound = "cups_sound", SpindleSound = "spindle_sound",
        SealLand = "seal_land",
        BoreRound = "bore_round", BoreClean = "bore_clean", BoreNotSpun = "bore_not_spun",
        SpeedGone = "speed_gone", SwerveGone = "swerve_gone", CoastGone = "coast_gone",
        SurfaceGone = "surface_gone", BrakeGone = "brake_gone", FullLockGone = "full_lock_gone",
        ShakeGone = "shake_gone", PulseGone = "pulse_gone",
        RoadClean = "road_clean",
        ToolsCounted = "tools_counted", KeyBack = "key_back", ChocksOut = "chocks_out",
        OldPart = "old_part",
    }
}

words! {
    /// A word picked out of a short list.
    pub enum Choice {
        NoWarningLights = "no_warning_lights", AbsWarningLight = "abs_warning_light", BrakeWarningLight = "brake_warning_light", OtherWarningLight = "other_warning_light",
        LouderRight = "louder_right", LouderLeft = "louder_left", NoChange = "no_change",
        PlayGone = "play_gone", PlayStays = "play_stays",
        SmoothQuiet = "smooth_quiet", Rough = "rough", Noisy = "noisy", RoughNoisy = "rough_noisy",
        GrindsHot = "grinds_hot",
        SameAsOther = "same_as_other", OtherTighter = "other_tighter", OtherLooser = "other_looser",
        NutTight = "nut_tight", NutRetorqued = "nut_retorqued", NutSlack = "nut_slack",
        LockHolds = "lock_holds", LockGone = "lock_gone",
        SlotMeets = "slot_meets", SlotLooser = "slot_looser", SlotTighter = "slot_tighter",
        RenewedBoth = "renewed_both", RenewedOuter = "renewed_outer",
        RenewedInner = "renewed_inner", RenewedNone = "renewed_none",
        FlexNone = "flex_none", FlexHalf = "flex_half", FlexOne = "flex_one", FlexMore = "flex_more",
        BaseElsewhere = "base_elsewhere",
        NoneLoose = "none_loose", SomeLoose = "some_loose", RetorqueDeclined = "retorque_declined",
        NoComeback = "no_comeback", SameCorner = "same_corner", OtherCorner = "other_corner",
    }
}

words! {
    /// Why something was not done.
    pub enum NotDoneReason {
        NotNeeded = "not_needed", NoTool = "no_tool", NoLight = "no_light", NotSafe = "not_safe",
        WillNotGo = "will_not_go", CustomerSaysNo = "customer_says_no", NoTime = "no_time",
        NotFitted = "not_fitted", DoneEarlier = "done_earlier", Other = "other",
    }
}

words! {
    /// Whether a set of readings was taken before the work or after it.
    pub enum When { Before = "before", After = "after" }
}

/// One set of rounds with one rig.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SetName {
    /// Before or after the work.
    pub when: When,
    /// 1, or 2 for the set that was taken again with the base set elsewhere.
    pub nth: u8,
}

impl SetName {
    /// The first set before the work.
    pub const FIRST: Self = Self {
        when: When::Before,
        nth: 1,
    };
    /// The set before the work that was taken again.
    pub const SECOND: Self = Self {
        when: When::Before,
        nth: 2,
    };
    /// The set after the work.
    pub const AFTER: Self = Self {
        when: When::After,
        nth: 1,
    };
}

/// What a number at a step measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measured {
    /// The odometer, in km or miles.
    Odometer,
    /// A hub's temperature.
    HubHeat,
}

/// How a step is answered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Form {
    /// Paste the booking message.
    Booking,
    /// The vehicle's facts.
    Vehicle,
    /// Which corners.
    Corners,
    /// One spec spec.
    Spec(SpecItem),
    /// The price of the repair and of putting it back.
    Price,
    /// What is missing from the kit.
    Kit,
    /// What still stands in the way of leaving.
    Ready,
    /// One key says that it is done.
    Do,
    /// Yes, no or not done.
    Ask,
    /// A list looked at together, each with its own answer.
    Checks(Vec<Check>),
    /// One word out of a list.
    Choice(&'static [Choice]),
    /// A number with its unit.
    Number(Measured),
    /// A picture, or why there is none.
    Photo,
    /// Paced swings, then what the hands felt.
    Swing,
    /// How the dial stands for a set, confirmed or corrected.
    DialSetup(SetName),
    /// One round on the dial.
    Round(SetName, u8),
    /// The decision on a corner.
    Decide(u8),
    /// The customer's yes or no.
    Consent,
    /// One key a fastener, in order.
    Turn(ItemKind),
    /// Before and after, side by side.
    Result,
    /// When the lug nuts are due again.
    Retorque,
    /// A signature.
    Sign,
    /// The report and the file.
    Report,
    /// How the job ends.
    End,
}

words! {
    /// The places where work must not go on without an answer.
    pub enum HoldPoint {
        /// Stand and shove before the wheel comes off.
        Stand = "stand",
        /// A reading, or a reason, before the nut is loosened.
        Before = "before",
        /// A yes before anything is stripped.
        Yes = "yes",
        /// The nut at its spec before weight.
        Nut = "nut",
        /// A firm pedal before the vehicle moves.
        Pedal = "pedal",
        /// Nothing loose, or "left unfinished".
        Loose = "loose",
        /// The vehicle on its wheels before anything under it is taken away or it is driven.
        Down = "down",
        /// What it rests on in its place and tight: the part that bolts hold, the bolts under weight.
        Ready = "ready",
        /// An answer was given that holds this step; see `consequence`.
        Answer = "answer",
        /// What comes before it is still open.
        Order = "order",
        /// The car was left, and nobody has looked it over since.
        TakeOver = "take_over",
    }
}

/// What doing a step does to the loose list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Change {
    /// Which items.
    pub group: ItemKind,
    /// The one item, counted from 1, or all of the group.
    pub only: Option<u8>,
    /// What they are afterwards.
    pub to: ItemState,
}

/// One step of a procedure.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlannedStep {
    /// Its name.
    pub key: StepKey,
    /// The phase it is told under.
    pub phase: Phase,
    /// How it is answered.
    pub form: Form,
    /// The hold points that stand before it.
    pub holds: Vec<HoldPoint>,
    /// What doing it does to the loose list.
    pub changes: Vec<Change>,
    /// Whether one screen may tell it together with the step after it: the same hands do both at
    /// the same place, and the screen is touched after the second.
    pub joins: bool,
}
