//! The steps that jobs ask for: of each its name, the code it is stored under, and all that is true
//! of it wherever it is asked. In which order they are asked is said by a wheel end.

use crate::trade::fastening::SpecItem;
use crate::trade::wheel_end::consequence::*;
use crate::trade::wheel_end::item::ItemKind;
use crate::trade::wheel_end::plan::Sign;
use crate::trade::wheel_end::row::{
    Again, Car, Meets, More, Row, act, ask, choice, form, list, moves, spec, steps, turn,
};
use crate::trade::wheel_end::shown::{CaptionWord as Shows, StepDrawing};
use crate::trade::wheel_end::step::HoldPoint::{Before, Down, Loose, Nut, Stand, Yes};
use crate::trade::wheel_end::step::Phase::{
    Fit, Gauge, HandOver, Lift, Listen, LookBack, Meet, Pack, Prove, Rock, Site, Strip, Tighten,
};
use crate::trade::wheel_end::step::{
    Change, Check, Choice, Form, HoldPoint, Measured, Phase, SetName,
};

/// What is looked at before the car is driven.
pub const LOOKS: [Check; 4] = [
    Check::NutsAsFound,
    Check::WheelUpright,
    Check::PedalFirm,
    Check::Tires,
];
const NEW_PART: &[Check] = &[
    Check::LockKey,
    Check::BoxStuds,
    Check::BoxPlug,
    Check::BoxBolts,
];
const OLD_AND_NEW: &[Check] = &[
    Check::Pilot,
    Check::Depth,
    Check::BoltCircle,
    Check::Splines,
    Check::Plug,
];
/// What is delivered in the box, whatever the kind of wheel end.
const DELIVERED: &[ItemKind] = &[ItemKind::Hub, ItemKind::Bearing, ItemKind::Cones];
const WARNING_LIGHTS: &[Choice] = &[
    Choice::NoWarningLights,
    Choice::AbsWarningLight,
    Choice::BrakeWarningLight,
    Choice::OtherWarningLight,
];
const SWERVE: &[Choice] = &[Choice::LouderRight, Choice::LouderLeft, Choice::NoChange];
const SPIN: &[Choice] = &[
    Choice::SmoothQuiet,
    Choice::Rough,
    Choice::Noisy,
    Choice::RoughNoisy,
    Choice::GrindsHot,
];
const ROLLERS: &[Choice] = &[
    Choice::RenewedBoth,
    Choice::RenewedOuter,
    Choice::RenewedInner,
    Choice::RenewedNone,
];
const FLEX: &[Choice] = &[
    Choice::FlexNone,
    Choice::FlexHalf,
    Choice::FlexOne,
    Choice::FlexMore,
    Choice::BaseElsewhere,
];

const CALIPER_UP: &[Change] =
    moves![CaliperPins 2: Off, CaliperPins 1: Loosened, Caliper: Off, Pads: Off];
const CALIPER_DOWN: &[Change] = moves![Pads: Done, Caliper: Done, CaliperPins: Snug];
const NEW_HUB: &[ItemKind] = &[
    ItemKind::Hub,
    ItemKind::HubBolts,
    ItemKind::AxleNut,
    ItemKind::SpindleNut,
    ItemKind::LockNut,
    ItemKind::Bearing,
    ItemKind::SnapRing,
    ItemKind::Knuckle,
    ItemKind::StrutBolts,
    ItemKind::BallJoint,
    ItemKind::TieRod,
];
/// What carries the weight once the wheel stands.
const UNDER_WEIGHT: &[ItemKind] = &[
    ItemKind::Hub,
    ItemKind::HubBolts,
    ItemKind::Bracket,
    ItemKind::BracketBolts,
    ItemKind::Rotor,
    ItemKind::Wheel,
    ItemKind::Drum,
    ItemKind::LockNut,
    ItemKind::Knuckle,
    ItemKind::StrutBolts,
    ItemKind::BallJoint,
    ItemKind::TieRod,
];
const KNUCKLE: &[ItemKind] = &[ItemKind::Knuckle];
const TAPERS: &[Check] = &[
    Check::ConesSound,
    Check::CupsSound,
    Check::SpindleSound,
    Check::SealLand,
];
const BORE: &[Check] = &[Check::BoreRound, Check::BoreClean, Check::BoreNotSpun];
const TO_MOVE: &[HoldPoint] = &[HoldPoint::Pedal, Loose, Down];

const STANDING: &[Shows] = &[
    Shows::StandAndGround,
    Shows::Chocks,
    Shows::AsFound,
    Shows::Damage,
];
const WIRE: &[Shows] = &[
    Shows::WireRoute,
    Shows::PlateSeat,
    Shows::AsFound,
    Shows::Damage,
];
const PARTS: &[Shows] = &[
    Shows::OldPart,
    Shows::NewPart,
    Shows::PartLabel,
    Shows::Damage,
    Shows::Rust,
];
const SEAT: &[Shows] = &[
    Shows::Seat,
    Shows::Rust,
    Shows::Damage,
    Shows::OldPart,
    Shows::NewPart,
];
const LEFT: &[Shows] = &[Shows::Finished, Shows::AsLeft, Shows::OldPart];

/// A sign of the road: one that was there is asked for again after the work.
const fn sign(sign: Sign) -> Row {
    ask(Listen, GO_ON, ON_REPORT)
        .yes(ASKS)
        .with_next()
        .meets(Meets::Sign(sign))
}

steps! {
    Booking = "booking": form(Pack, Form::Booking, ON_REPORT);
    Vehicle = "vehicle": form(Pack, Form::Vehicle, ON_REPORT);
    Corners = "corners": form(Pack, Form::Corners, HERE);
    SpecAxleNut = "spec_axle_nut": spec(SpecItem::AxleNut, STAYS_LOOSE);
    SpecHubBolts = "spec_hub_bolts": spec(SpecItem::HubBolts, STAYS_LOOSE);
    SpecBracketBolts = "spec_bracket_bolts": spec(SpecItem::BracketBolts, STAYS_LOOSE);
    SpecCaliperPins = "spec_caliper_pins": spec(SpecItem::CaliperPins, STAYS_LOOSE);
    SpecLugNuts = "spec_lug_nuts": spec(SpecItem::LugNuts, STAYS_LOOSE);
    SpecSpindleNut = "spec_spindle_nut": spec(SpecItem::SpindleNut, STAYS_LOOSE);
    SpecLockNut = "spec_lock_nut": spec(SpecItem::LockNut, STAYS_LOOSE);
    SpecStrutBolts = "spec_strut_bolts": spec(SpecItem::StrutBolts, STAYS_LOOSE);
    SpecBallJoint = "spec_ball_joint": spec(SpecItem::BallJoint, STAYS_LOOSE);
    SpecTieRod = "spec_tie_rod": spec(SpecItem::TieRod, STAYS_LOOSE);
    SpecPlayLimit = "spec_play_limit": spec(SpecItem::PlayLimit, DEFAULT_LIMIT);
    Price = "price": form(Pack, Form::Price, ON_REPORT);
    Kit = "kit": form(Pack, Form::Kit, ON_REPORT);
    Ready = "ready": form(Pack, Form::Ready, ON_REPORT);

    SiteLook = "site_look":
        list(Site, &[Check::Slope, Check::Surface, Check::Traffic], HERE).no(ASKS);

    RightCar = "right_car": ask(Meet, HERE, HERE);
    Odometer = "odometer": form(Meet, Form::Number(Measured::Odometer), BY_DATE_ALONE)
        .photo(&[Shows::Odometer, Shows::WarningLightsOn]);
    WarningLights = "warning_lights": choice(Meet, WARNING_LIGHTS, NOT_YET_DRIVEN).photo(&[Shows::WarningLightsOn, Shows::Odometer]);
    MeetLook = "meet_look": list(Meet, NEW_PART, NOT_LOOSENED);
    TeardownYes = "teardown_yes": form(Meet, Form::Consent, NOT_LOOSENED).no(ASKS);

    BeforeDriving = "before_driving": list(Listen, &LOOKS, NOT_YET_DRIVEN).meets(Meets::NutsAsFound);
    NutsToSpec = "nuts_to_spec": ask(Listen, HERE, NOT_YET_DRIVEN);
    FoundPhoto = "found_photo": form(Listen, Form::Photo, ON_REPORT).owed_in(&[Listen, Lift]);
    Drive = "drive": act(Listen, DECISION).needs(&[Loose, Down]).car(Car::Drives);
    SignSpeed = "sign_speed": sign(Sign::Speed);
    SignSwerve = "sign_swerve": choice(Listen, SWERVE, ON_REPORT).with_next().meets(Meets::Swerve);
    SignCoast = "sign_coast": sign(Sign::Coast);
    SignSurface = "sign_surface": sign(Sign::Surface);
    SignBrake = "sign_brake": sign(Sign::Brake);
    SignFullLock = "sign_full_lock": sign(Sign::FullLock);
    SignShake = "sign_shake": sign(Sign::Shake);
    SignPulse = "sign_pulse": sign(Sign::Pulse);
    HeatHere = "heat_here": form(Listen, Form::Number(Measured::HubHeat), DECISION).meets(Meets::Heat { here: true });
    HeatOther = "heat_other": form(Listen, Form::Number(Measured::HubHeat), DECISION).meets(Meets::Heat { here: false });

    LiftHold = "lift_hold": act(Lift, HERE).photo(STANDING).drawn(StepDrawing::Chocks);
    LiftStand = "lift_stand":
        list(Lift, &[Check::JackPoint, Check::StandUnder, Check::WheelUnderRocker], HERE)
            .with_next().photo(STANDING).drawn(StepDrawing::Stand);
    StandPhoto = "stand_photo":
        form(Lift, Form::Photo, ON_REPORT).photo(STANDING).drawn(StepDrawing::Stand);
    Shove = "shove":
        ask(Lift, HERE, HERE).proves(Stand).photo(STANDING).drawn(StepDrawing::Shove);

    RockNuts = "rock_nuts": ask(Rock, HERE, HERE).meets(Meets::NutsTried);
    RockTwelveSix = "rock_twelve_six": form(Rock, Form::Swing, DECISION).drawn(StepDrawing::TwelveSix).meets(Meets::Play);
    RockNineThree = "rock_nine_three": form(Rock, Form::Swing, DECISION).drawn(StepDrawing::NineThree).meets(Meets::Play);
    RockAxial = "rock_axial": form(Rock, Form::Swing, DECISION).drawn(StepDrawing::PushPull).meets(Meets::Play);
    BrakeHeld = "brake_held": choice(Rock, &[Choice::PlayGone, Choice::PlayStays], DECISION).meets(Meets::BrakeHeld);
    SpinHand = "spin_hand": choice(Rock, SPIN, DECISION).drawn(StepDrawing::PushPull).meets(Meets::OldSpin);
    OtherSide = "other_side":
        choice(Rock, &[Choice::SameAsOther, Choice::OtherTighter, Choice::OtherLooser], DECISION).meets(Meets::OtherSide);

    LoosenLugNuts = "loosen_lug_nuts": act(Gauge, ON_REPORT)
        .moves(moves![LugNuts: Loosened]).car(Car::Grips)
        .with_next().drawn(StepDrawing::StarOrder);
    WheelOff = "wheel_off": act(Gauge, BARE).needs(&[Stand])
        .moves(moves![LugNuts: Off, Wheel: Off]).bare(&[ItemKind::Hub]);
    CaliperUp = "caliper_up":
        act(Gauge, NO_DIAL).moves(CALIPER_UP).with_next().drawn(StepDrawing::Hook);
    ReleaseBrake = "release_brake":
        act(Gauge, HERE).moves(moves![ParkingBrake: Off]).drawn(StepDrawing::Chocks);
    ShoesBack = "shoes_back": act(Gauge, NO_DIAL).moves(moves![Shoes: Loosened])
        .with_next().drawn(StepDrawing::DrumOff);
    DrumOff = "drum_off": act(Gauge, NO_DIAL).moves(moves![Drum: Off]).drawn(StepDrawing::DrumOff);
    CapOff = "cap_off": act(Gauge, NO_DIAL).moves(moves![Cap: Off]).drawn(StepDrawing::TaperStack);
    LockFound = "lock_found": choice(Gauge, &[Choice::LockHolds, Choice::LockGone], NO_DIAL)
        .drawn(StepDrawing::CastleSlot);
    NutFound = "nut_found":
        choice(Gauge, &[Choice::NutTight, Choice::NutRetorqued, Choice::NutSlack], NO_DIAL)
            .drawn(StepDrawing::NutStake).meets(Meets::Nut);
    GaugeClean = "gauge_clean":
        act(Gauge, ON_REPORT).behind_the_wheel().with_next().drawn(StepDrawing::DialRig);
    RigPush = "rig_push": choice(Gauge, FLEX, READING).drawn(StepDrawing::DialRig).meets(Meets::Base);
    RigTip = "rig_tip": form(Gauge, Form::DialSetup(SetName::FIRST), READING)
        .rests_on(NEW_HUB).drawn(StepDrawing::DialRig);
    Round = "round": form(Gauge, Form::Round(SetName::FIRST, 1), READING)
        .proves(Before).rests_on(NEW_HUB).photo(&[Shows::DialReading]).meets(Meets::Needle);
    RigAgain = "rig_again": choice(Gauge, FLEX, READING).drawn(StepDrawing::DialRig).meets(Meets::Base);

    Decide = "decide": form(Phase::Decide, Form::Decide(1), HERE);
    Agree = "agree": form(Phase::Agree, Form::Consent, HERE).no(ASKS).proves(Yes);
    DeclinedPhoto = "declined_photo": form(Phase::Agree, Form::Photo, ON_REPORT)
        .owed_in(&[Tighten]).photo(&[Shows::AsFound, Shows::Damage, Shows::Heat, Shows::Leak]);

    LoosenAxleNut = "loosen_axle_nut": act(Strip, HERE).needs(&[Before, Yes])
        .moves(moves![Stake: Off, AxleNut: Loosened])
        .with_next().drawn(StepDrawing::NutStake);
    StripNut = "strip_nut": act(Strip, HERE).needs(&[Yes, Stand])
        .moves(moves![AxleNut: Off]).with_next().drawn(StepDrawing::NutStake);
    StripBrake = "strip_brake": act(Strip, HERE).needs(&[Yes])
        .moves(moves![CaliperPins: Off, BracketBolts: Off, Bracket: Off, Rotor: Off])
        .bare(&[ItemKind::Hub, ItemKind::Knuckle]).with_next().drawn(StepDrawing::Hook);
    StripSensor = "strip_sensor": act(Strip, ON_REPORT).needs(&[Yes])
        .moves(moves![SensorWire: Off])
        .with_next().photo(WIRE).drawn(StepDrawing::SensorRoute);
    SensorPhoto = "sensor_photo":
        form(Strip, Form::Photo, ON_REPORT).photo(WIRE).drawn(StepDrawing::SensorRoute);
    StripHub = "strip_hub": act(Strip, HERE).needs(&[Yes])
        .moves(moves![HubBolts: Off, Hub: Off, Plate: Off])
        .bare(&[ItemKind::Knuckle]).photo(SEAT).drawn(StepDrawing::Puller);

    SpindleNutOff = "spindle_nut_off": act(Strip, HERE).needs(&[Before, Yes])
        .moves(moves![Stake: Off, SpindleNut: Off]).drawn(StepDrawing::TaperStack);
    HubOff = "hub_off": act(Strip, HERE).needs(&[Before, Yes])
        .moves(moves![Hub: Off]).photo(SEAT).drawn(StepDrawing::TaperStack);
    StripKnuckle = "strip_knuckle": act(Strip, HERE).needs(&[Yes])
        .moves(moves![StrutBolts: Off, BallJoint: Off, TieRod: Off, Knuckle: Off]).photo(SEAT);
    PullHub = "pull_hub": act(Strip, HERE).needs(&[Yes])
        .moves(moves![Hub: Off]).photo(SEAT);
    SnapRingOut = "snap_ring_out":
        act(Strip, HERE).needs(&[Yes]).moves(moves![SnapRing: Off]).with_next();
    PressOut = "press_out": act(Strip, HERE).needs(&[Yes])
        .moves(moves![Bearing: Off]).photo(SEAT).drawn(StepDrawing::PressOuter);

    TaperLook = "taper_look": list(Fit, TAPERS, HERE).photo(PARTS).drawn(StepDrawing::TaperStack);
    RollersNew = "rollers_new": choice(Fit, ROLLERS, ON_REPORT).photo(PARTS)
        .drawn(StepDrawing::TaperStack);
    PackGrease = "pack_grease": act(Fit, HERE).with_next().drawn(StepDrawing::TaperStack);
    SealIn = "seal_in": act(Fit, HERE);
    HubOn = "hub_on": act(Fit, HERE).moves(moves![Hub: Done, SpindleNut: ByHand])
        .rests_on(&[ItemKind::Bearing, ItemKind::SnapRing])
        .photo(SEAT).drawn(StepDrawing::TaperStack);
    BoreLook = "bore_look": list(Fit, BORE, HERE).photo(SEAT);
    EncoderPhoto = "encoder_photo":
        form(Fit, Form::Photo, ON_REPORT).photo(PARTS).drawn(StepDrawing::EncoderSide);
    EncoderSide = "encoder_side": ask(Fit, HERE, HERE).photo(PARTS).drawn(StepDrawing::EncoderSide);
    PressIn = "press_in": act(Fit, HERE).moves(moves![Bearing: Done])
        .photo(SEAT).drawn(StepDrawing::PressOuter);
    SnapRingIn = "snap_ring_in": act(Fit, HERE).moves(moves![SnapRing: Done]);
    PressHub = "press_hub": act(Fit, HERE).moves(moves![Hub: Done])
        .rests_on(&[ItemKind::Bearing, ItemKind::SnapRing]).drawn(StepDrawing::PressInner);
    KnuckleOn = "knuckle_on": act(Fit, HERE)
        .moves(moves![Knuckle: Done, StrutBolts: ByHand, BallJoint: ByHand, TieRod: ByHand]);
    Compare = "compare": list(Fit, OLD_AND_NEW, HERE).compares(DELIVERED)
        .with_next().photo(PARTS).drawn(StepDrawing::Splines);
    ComparePhoto = "compare_photo":
        form(Fit, Form::Photo, ON_REPORT).photo(PARTS).drawn(StepDrawing::Splines);
    Seat = "seat": act(Fit, ON_REPORT).bare(&[ItemKind::Knuckle]).with_next().photo(SEAT).drawn(StepDrawing::HubBehind);
    Offer = "offer": act(Fit, HERE)
        .moves(moves![Plate: Done, Hub: Done, HubBolts: ByHand])
        .bare(&[ItemKind::Knuckle]).with_next().photo(SEAT).drawn(StepDrawing::Splines);
    RouteSensor = "route_sensor": act(Fit, STAYS_LOOSE).moves(moves![SensorWire: Done])
        .photo(WIRE).drawn(StepDrawing::SensorRoute);

    TurnHubBolts = "turn_hub_bolts": turn(ItemKind::HubBolts, &[ItemKind::Hub]);
    RotorOn = "rotor_on":
        act(Tighten, STAYS_LOOSE).moves(moves![Rotor: Done]).with_next();
    BracketOn = "bracket_on": act(Tighten, STAYS_LOOSE)
        .moves(moves![Bracket: Done, BracketBolts: ByHand]);
    TurnBracketBolts = "turn_bracket_bolts": turn(ItemKind::BracketBolts, &[ItemKind::Bracket]);
    CaliperOn = "caliper_on": act(Tighten, STAYS_LOOSE).moves(CALIPER_DOWN).with_next();
    Pedal = "pedal": ask(Tighten, HERE, HERE)
        .proves(HoldPoint::Pedal).again(Again::Reopened);
    NutOn = "nut_on": act(Tighten, STAYS_LOOSE)
        .moves(moves![AxleNut: ByHand]).with_next().drawn(StepDrawing::NutStake);
    NutFirst = "nut_first": act(Tighten, STAYS_LOOSE)
        .moves(moves![AxleNut: Snug]).drawn(StepDrawing::NutStake);
    TurnSpindleNut = "turn_spindle_nut":
        turn(ItemKind::SpindleNut, &[ItemKind::Hub]).proves(Nut).drawn(StepDrawing::TaperStack);
    NutSlot = "nut_slot": choice(Tighten,
        &[Choice::SlotMeets, Choice::SlotLooser, Choice::SlotTighter], HERE)
        .drawn(StepDrawing::CastleSlot);
    LockNutOn = "lock_nut_on":
        act(Tighten, STAYS_LOOSE).moves(moves![LockNut: ByHand]).drawn(StepDrawing::TaperStack);
    TurnLockNut = "turn_lock_nut": turn(ItemKind::LockNut, &[ItemKind::Hub]);
    TurnStrutBolts = "turn_strut_bolts": turn(ItemKind::StrutBolts, KNUCKLE);
    TurnBallJoint = "turn_ball_joint": turn(ItemKind::BallJoint, KNUCKLE);
    TurnTieRod = "turn_tie_rod": turn(ItemKind::TieRod, KNUCKLE);
    DrumOn = "drum_on": act(Tighten, STAYS_LOOSE).moves(moves![Drum: Done])
        .with_next().again(Again::Reopened).drawn(StepDrawing::DrumOff);
    ShoesSet = "shoes_set": act(Tighten, STAYS_LOOSE).moves(moves![Shoes: Done])
        .again(Again::Reopened).drawn(StepDrawing::DrumOff);
    SetBrake = "set_brake": act(Tighten, STAYS_LOOSE).moves(moves![ParkingBrake: Done])
        .again(Again::Reopened);
    CapOn = "cap_on": act(Tighten, STAYS_LOOSE).moves(moves![Cap: Done])
        .again(Again::Reopened).drawn(StepDrawing::TaperStack);
    TurnAxleNut = "turn_axle_nut": turn(ItemKind::AxleNut, &[ItemKind::Hub]).proves(Nut);
    CaliperUpAgain = "caliper_up_again":
        act(Prove, NO_DIAL).moves(CALIPER_UP).drawn(StepDrawing::Hook);
    WheelOffAgain = "wheel_off_again": act(Prove, BARE).needs(&[Stand])
        .moves(moves![LugNuts: Off, Wheel: Off]);
    CaliperDown = "caliper_down": act(Tighten, STAYS_LOOSE).moves(CALIPER_DOWN)
        .with_next().again(Again::Reopened).drawn(StepDrawing::Hook);
    TurnCaliperPins = "turn_caliper_pins":
        turn(ItemKind::CaliperPins, &[ItemKind::Caliper]).again(Again::Reopened);
    Stake = "stake": act(Tighten, STAYS_LOOSE)
        .moves(moves![Stake: Done]).with_next().drawn(StepDrawing::NutStake);
    WheelOn = "wheel_on": act(Tighten, STAYS_LOOSE)
        .moves(moves![Wheel: Done, LugNuts: Snug])
        .with_next().again(Again::Reopened).drawn(StepDrawing::StarOrder);
    Lower = "lower": act(Tighten, BEFORE_IT_MOVES).needs(&[Nut]).proves(Down)
        .rests_on(UNDER_WEIGHT)
        .again(Again::Reopened).drawn(StepDrawing::StarOrder);
    TurnLugNuts = "turn_lug_nuts":
        turn(ItemKind::LugNuts, &[ItemKind::Wheel]).again(Again::Reopened);
    StudIn = "stud_in": act(Tighten, HERE);
    MishapPhoto = "mishap_photo": form(Tighten, Form::Photo, ON_REPORT)
        .photo(&[Shows::Thread, Shows::Damage, Shows::Rust, Shows::OldPart]);

    ProveSpin = "prove_spin": choice(Prove, SPIN, PROOF).rests_on(NEW_HUB).meets(Meets::NewSpin);
    ProvePedal = "prove_pedal": ask(Prove, HERE, HERE)
        .proves(HoldPoint::Pedal).again(Again::Reopened);
    Clear = "clear": list(Prove, &[Check::ToolsCounted, Check::ChocksOut], BEFORE_IT_MOVES)
        .more(More::WrongLooks).needs(TO_MOVE).must_be_seen().again(Again::Loosened);
    ProveWarningLights = "prove_warning_lights": choice(Prove, WARNING_LIGHTS, BEFORE_IT_MOVES).needs(TO_MOVE)
        .car(Car::Moves).must_be_seen().photo(&[Shows::WarningLightsOn, Shows::Odometer]);
    ProveRoad = "prove_road": list(Prove, &[Check::RoadClean], PROOF)
        .more(More::Signs).needs(TO_MOVE).car(Car::Moves).meets(Meets::RoadAfter);
    ProveResult = "prove_result": form(Prove, Form::Result, PROOF).again(Again::Reopened);

    Alignment = "alignment": ask(HandOver, ON_REPORT, ON_REPORT);
    Tools = "tools":
        list(HandOver, &[Check::KeyBack, Check::OldPart], NOT_HANDED_OVER).photo(LEFT);
    Retorque = "retorque": form(HandOver, Form::Retorque, ON_REPORT).with_next();
    Sign = "sign": form(HandOver, Form::Sign, ON_REPORT);
    Report = "report": form(HandOver, Form::Report, ON_REPORT).with_next().photo(LEFT);
    End = "end": form(HandOver, Form::End, HERE).needs(&[HoldPoint::Pedal, Loose])
        .car(Car::Leaves).photo(LEFT);
    LeftPhoto = "left_photo": form(HandOver, Form::Photo, ON_REPORT)
        .photo(&[Shows::AsLeft, Shows::StandAndGround, Shows::Chocks]);

    RetorqueDone = "retorque_done":
        choice(LookBack, &[Choice::NoneLoose, Choice::SomeLoose, Choice::RetorqueDeclined], COUNTED);
    Comeback = "comeback":
        choice(LookBack, &[Choice::NoComeback, Choice::SameCorner, Choice::OtherCorner], COUNTED);

    Wait = "wait": act(Phase::Agree, ON_REPORT).car(Car::Waits);
    TakeOver = "take_over": ask(Lift, HERE, HERE);
}
