//! The trade's words as a person reads them.

use crate::job::entry::{
    Charge, DueKind, Ending, How, KitItem, PaidHow, PersonField, Scope, VehicleField,
};
use crate::trade::answer::Answer;
use crate::trade::fastening::SpecItem;
use crate::trade::money::{BilledFor, LineKind, TaxRounding};
use crate::trade::play::Felt;
use crate::trade::vehicle::{Corner, Encoder, Fixing, NutLock, Pressing, SpeedSensor, WheelBrake};
use crate::trade::wheel_end::{
    Choice, HoldPoint, Item, ItemKind, ItemState, Kind, NotDoneReason, NutPosition, Phase, Sign,
};

pub(in crate::text) fn phase(phase: Phase) -> &'static str {
    match phase {
        Phase::Pack => "Prep",
        Phase::Site => "Site",
        Phase::Meet => "Check-in",
        Phase::Listen => "Road test",
        Phase::Lift => "Lift",
        Phase::Rock => "Hand check",
        Phase::Gauge => "Measure",
        Phase::Decide => "Decide",
        Phase::Agree => "Approve",
        Phase::Strip => "Remove",
        Phase::Fit => "Install",
        Phase::Tighten => "Torque",
        Phase::Prove => "Verify",
        Phase::HandOver => "Hand over",
        Phase::LookBack => "Follow-up",
    }
}

pub(in crate::text) fn sign(sign: Sign) -> &'static str {
    match sign {
        Sign::Speed => "Noise rises with road speed",
        Sign::Swerve => "Louder in a swerve one way",
        Sign::Coast => "The same when coasting",
        Sign::Surface => "Note changes with the road surface",
        Sign::Brake => "A light brake changes it",
        Sign::FullLock => "Clicks at full lock under power",
        Sign::Shake => "Shake without braking and without hum",
        Sign::Pulse => "Pulse only while braking",
    }
}

pub(in crate::text) fn pick(pick: Choice) -> &'static str {
    match pick {
        Choice::NoWarningLights => "No lights",
        Choice::AbsWarningLight => "ABS or stability light",
        Choice::BrakeWarningLight => "Brake warning light",
        Choice::OtherWarningLight => "Another light",
        Choice::LouderRight => "Steering right",
        Choice::LouderLeft => "Steering left",
        Choice::NoChange => "No change",
        Choice::PlayGone => "The play is gone",
        Choice::PlayStays => "The play stays",
        Choice::SmoothQuiet => "Smooth and quiet",
        Choice::Rough => "Rough",
        Choice::Noisy => "Noisy",
        Choice::RoughNoisy => "Rough and noisy",
        Choice::GrindsHot => "Grinds, hot or smokes",
        Choice::SameAsOther => "Both the same",
        Choice::OtherTighter => "The other is tighter",
        Choice::OtherLooser => "The other is looser",
        Choice::NutTight => "Tight, not touched",
        Choice::NutRetorqued => "Was loosened, re-torqued",
        Choice::NutSlack => "Found slack",
        Choice::LockHolds => "Locked",
        Choice::LockGone => "Not locked",
        Choice::SlotMeets => "A slot is in line",
        Choice::SlotLooser => "Backed to looser slot",
        Choice::SlotTighter => "Only tighter would fit",
        Choice::RenewedBoth => "Inner and outer",
        Choice::RenewedOuter => "Outer only",
        Choice::RenewedInner => "Inner only",
        Choice::RenewedNone => "None, old ones sound",
        Choice::FlexNone => "It does not move",
        Choice::FlexHalf => "Half a division",
        Choice::FlexOne => "One division",
        Choice::BaseElsewhere => "Not on the knuckle",
        Choice::FlexMore => "More than one",
        Choice::NoneLoose => "None was loose",
        Choice::SomeLoose => "At least one was loose",
        Choice::RetorqueDeclined => "Customer declined",
        Choice::NoComeback => "No",
        Choice::SameCorner => "Yes, the same corner",
        Choice::OtherCorner => "Yes, another corner",
    }
}

pub(in crate::text) fn because(because: NotDoneReason) -> &'static str {
    match because {
        NotDoneReason::NotNeeded => "Not needed",
        NotDoneReason::NoTool => "No tool for it",
        NotDoneReason::NoLight => "No light, no sight",
        NotDoneReason::NotSafe => "Not safe",
        NotDoneReason::WillNotGo => "It will not go",
        NotDoneReason::CustomerSaysNo => "Customer declines",
        NotDoneReason::NoTime => "No time",
        NotDoneReason::NotFitted => "This car has none",
        NotDoneReason::DoneEarlier => "Done earlier",
        NotDoneReason::Other => "Another reason",
    }
}

pub(in crate::text) fn hold_point(hold: HoldPoint) -> (&'static str, &'static str) {
    match hold {
        HoldPoint::Stand => (
            "Jack stand and shove first",
            "The wheel comes off only when the jack stand carries the car and it was shoved.",
        ),
        HoldPoint::Before => (
            "The reading first",
            "Measure before nut or hub is loosened, or give the reason why not.",
        ),
        HoldPoint::Yes => (
            "Approval first",
            "Nothing is removed before the customer approves the repair.",
        ),
        HoldPoint::Nut => (
            "The nut first",
            "No weight on the bearing before its nut is at spec.",
        ),
        HoldPoint::Pedal => (
            "The pedal first",
            "The car does not move before the brake pedal is pumped firm.",
        ),
        HoldPoint::Loose => (
            "Something is still loose",
            "Bring every item to spec, or end the job as left unfinished.",
        ),
        HoldPoint::Down => (
            "Lower the car first",
            "The car is on its jack stand. Lower it before anything is taken from under it or it is driven.",
        ),
        HoldPoint::Ready => (
            "Something is not in place",
            "What this step rests on is off, loose or not known. Finish that step first.",
        ),
        HoldPoint::Answer => ("Put this right first", "An answer holds this step."),
        HoldPoint::TakeOver => (
            "Look the car over first",
            "It was left. Compare it with the list, shove it if it is raised, then go on.",
        ),
        HoldPoint::Order => (
            "Something comes before this",
            "An earlier step is still open. Do it first, or say why it was not done.",
        ),
    }
}

pub(in crate::text) fn group(group: ItemKind, fixing: Fixing) -> &'static str {
    match group {
        ItemKind::LugNuts if fixing == Fixing::Bolts => "Lug bolts",
        ItemKind::SpindleNut => "Spindle nut",
        ItemKind::LockNut => "Lock nut",
        ItemKind::Cap => "Cap",
        ItemKind::Drum => "Brake drum",
        ItemKind::Shoes => "Brake shoes",
        ItemKind::ParkingBrake => "Parking brake",
        ItemKind::Cones => "Cones and seal",
        ItemKind::Bearing => "Bearing",
        ItemKind::SnapRing => "Snap ring",
        ItemKind::Knuckle => "Knuckle",
        ItemKind::StrutBolts => "Strut bolts",
        ItemKind::BallJoint => "Ball joint nut",
        ItemKind::TieRod => "Tie rod nut",
        ItemKind::AxleNut => "Axle nut",
        ItemKind::HubBolts => "Hub bolts",
        ItemKind::BracketBolts => "Bracket bolts",
        ItemKind::CaliperPins => "Guide pin bolts",
        ItemKind::LugNuts => "Lug nuts",
        ItemKind::Wheel => "Wheel",
        ItemKind::Caliper => "Caliper",
        ItemKind::Pads => "Brake pads",
        ItemKind::Bracket => "Caliper bracket",
        ItemKind::Rotor => "Rotor",
        ItemKind::SensorWire => "Sensor wire",
        ItemKind::Plate => "Splash shield",
        ItemKind::Hub => "Hub",
        ItemKind::Stake => "Stake or cotter",
        ItemKind::Other => "Also off",
    }
}

pub(in crate::text) fn item(item: Item, fixing: Fixing) -> String {
    let number = item.number;
    match item.group {
        ItemKind::HubBolts => format!("Hub bolt {number}"),
        ItemKind::BracketBolts => format!("Bracket bolt {number}"),
        ItemKind::LugNuts if fixing == Fixing::Bolts => format!("Lug bolt {number}"),
        ItemKind::LugNuts => format!("Lug nut {number}"),
        ItemKind::StrutBolts => format!("Strut bolt {number}"),
        ItemKind::CaliperPins => match number {
            1 => "Guide pin bolt, upper".to_owned(),
            2 => "Guide pin bolt, lower".to_owned(),
            _ => format!("Guide pin bolt {number}"),
        },
        ItemKind::AxleNut
        | ItemKind::Wheel
        | ItemKind::Caliper
        | ItemKind::Pads
        | ItemKind::Bracket
        | ItemKind::Rotor
        | ItemKind::SensorWire
        | ItemKind::Plate
        | ItemKind::Hub
        | ItemKind::SpindleNut
        | ItemKind::LockNut
        | ItemKind::Cap
        | ItemKind::Drum
        | ItemKind::Shoes
        | ItemKind::ParkingBrake
        | ItemKind::Cones
        | ItemKind::Bearing
        | ItemKind::SnapRing
        | ItemKind::Knuckle
        | ItemKind::BallJoint
        | ItemKind::TieRod
        | ItemKind::Stake => group(item.group, fixing).to_owned(),
        ItemKind::Other => format!("{} {number}", group(item.group, fixing)),
    }
}

pub(in crate::text) fn item_at(of: Item, fixing: Fixing) -> String {
    format!("{}, {}", item(of, fixing), corner(of.corner))
}

pub(in crate::text) fn hold_state(hold: ItemState) -> &'static str {
    match hold {
        ItemState::Off => "off",
        ItemState::Loosened => "loosened",
        ItemState::ByHand => "in by hand",
        ItemState::Snug => "snug, not at spec",
        ItemState::Done => "done",
    }
}

pub(in crate::text) fn corner(corner: Corner) -> &'static str {
    match corner {
        Corner::FrontLeft => "front left",
        Corner::FrontRight => "front right",
        Corner::RearLeft => "rear left",
        Corner::RearRight => "rear right",
    }
}

pub(in crate::text) fn corner_title(corner: Corner) -> &'static str {
    match corner {
        Corner::FrontLeft => "Front left",
        Corner::FrontRight => "Front right",
        Corner::RearLeft => "Rear left",
        Corner::RearRight => "Rear right",
    }
}

pub(in crate::text) fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::BoltedDriven => "Bolted hub, driven",
        Kind::BoltedFree => "Bolted hub, not driven",
        Kind::SpindleHub => "Hub with spindle nut",
        Kind::Pressed => "Pressed-in bearing, driven",
        Kind::PressedFree => "Pressed-in, hub on spindle",
        Kind::Tapered => "Tapered rollers, set by nut",
    }
}

pub(in crate::text) fn wheel_end_is(kind: &str) -> String {
    format!("Wheel end: {kind}")
}

pub(in crate::text) fn nut_position(nut: NutPosition) -> &'static str {
    match nut {
        NutPosition::AirBrakeHeld => "In the air, brake held",
        NutPosition::AirBar => "In the air, bar across the hub",
        NutPosition::OnGround => "Wheel on the ground",
    }
}

pub(in crate::text) fn wheel_brake(brake: WheelBrake) -> &'static str {
    match brake {
        WheelBrake::Disc => "Disc",
        WheelBrake::Drum => "Drum",
        WheelBrake::None => "None",
    }
}

pub(in crate::text) fn speed_sensor(sensor: SpeedSensor) -> &'static str {
    match sensor {
        SpeedSensor::Active => "Active",
        SpeedSensor::Passive => "Passive",
        SpeedSensor::None => "None",
        SpeedSensor::NotKnown => "Not known",
    }
}

pub(in crate::text) fn encoder(encoder: Encoder) -> &'static str {
    match encoder {
        Encoder::Ring => "Toothed ring",
        Encoder::Magnetic => "Magnetic seal",
        Encoder::NotKnown => "Not known",
    }
}

pub(in crate::text) fn nut_lock(lock: NutLock) -> &'static str {
    match lock {
        NutLock::Cotter => "Castle nut, cotter",
        NutLock::LockNut => "Lock nut",
    }
}

pub(in crate::text) fn pressing(pressing: Pressing) -> &'static str {
    match pressing {
        Pressing::KnuckleOff => "Knuckle off",
        Pressing::OnCar => "On the car",
        Pressing::NotKnown => "Not known",
    }
}

pub(in crate::text) fn kit_item(item: KitItem) -> &'static str {
    match item {
        KitItem::Hub => "Hub for this car",
        KitItem::AxleNut => "New axle nut",
        KitItem::SpareNut => "Second axle nut, spare",
        KitItem::HubBolts => "New hub bolts",
        KitItem::Pads => "Brake pads",
        KitItem::AxleSocket => "Socket for the axle nut",
        KitItem::TorqueWrench => "Torque wrenches",
        KitItem::AngleGauge => "Angle gauge",
        KitItem::Puller => "Hub puller",
        KitItem::DialGauge => "Dial indicator and base",
        KitItem::Stand => "Jack stand for this car",
        KitItem::Jack => "Jack",
        KitItem::Chocks => "Chocks",
        KitItem::Hook => "Caliper hanger",
        KitItem::PedalDepressor => "Pedal depressor",
        KitItem::Threadlocker => "Threadlocker",
        KitItem::Gloves => "Gloves and glasses",
        KitItem::Charged => "Phone charged over 80 %",
        KitItem::SpindleNut => "New spindle nut",
        KitItem::Cap => "New cap",
        KitItem::Cones => "Cones and cups in pairs, new seal",
        KitItem::Cotter => "New cotter or lock washer",
        KitItem::Grease => "Bearing grease of the right kind",
        KitItem::Bearing => "Bearing for this car, new snap ring",
        KitItem::PressSet => "Press kit with plates and tubes that fit",
        KitItem::GuidePin => "Guide pin, where lug bolts hold the wheel",
    }
}

pub(in crate::text) fn person_field(field: PersonField) -> &'static str {
    match field {
        PersonField::Name => "Customer's name",
        PersonField::Phone => "Phone",
        PersonField::Address => "Address of the work",
        PersonField::Plate => "Plate",
        PersonField::Email => "E-mail",
        PersonField::Message => "Message from",
        PersonField::Witness => "Witness",
    }
}

pub(in crate::text) fn vehicle_field(field: VehicleField) -> &'static str {
    match field {
        VehicleField::Vin => "VIN",
        VehicleField::Family => "Vehicle and years",
        VehicleField::Kind => "Kind of wheel end",
        VehicleField::Studs => "Lugs, each wheel",
        VehicleField::HubBolts => "Hub bolts, each hub",
        VehicleField::Fixing => "Wheel held by",
        VehicleField::Power => "Power",
        VehicleField::ParkingBrake => "Parking brake acts on",
        VehicleField::Caliper => "Caliper",
        VehicleField::Brake => "Brake at this wheel",
        VehicleField::Sensor => "Wheel speed sensor",
        VehicleField::Encoder => "What the sensor reads",
        VehicleField::NutLock => "Lock of the setting nut",
        VehicleField::Pressing => "How it is pressed",
        VehicleField::Mass => "Curb weight: 1500 kg or 3300 lb",
    }
}

pub(in crate::text) fn ending(ending: Ending) -> (&'static str, &'static str) {
    match ending {
        Ending::Finished => (
            "Finished",
            "Everything is at spec and proved. The car may be driven.",
        ),
        Ending::NothingWrong => (
            "Nothing to repair today",
            "Nothing was found that requires repair today, and all is put back.",
        ),
        Ending::Declined => (
            "Declined, put back",
            "The customer declined. All is put back as it was found.",
        ),
        Ending::NotSafeHere => (
            "Not safe here",
            "The place is not safe for this work. Nothing was opened.",
        ),
        Ending::LeftUnfinished => (
            "Left unfinished",
            "The car stays on stands or is towed. It must not be driven.",
        ),
    }
}

pub(in crate::text) fn charge(charge: Charge) -> &'static str {
    match charge {
        Charge::CustomerOnStands => "Customer, on jack stands",
        Charge::Towed => "Towed away",
        Charge::WeComeBack => "We come back to finish",
    }
}

pub(in crate::text) fn line_kind(kind: LineKind) -> &'static str {
    match kind {
        LineKind::Part => "Part",
        LineKind::Labour => "Labor",
        LineKind::Travel => "Travel",
        LineKind::Other => "Other",
    }
}

pub(in crate::text) fn tax_rounding(rounding: TaxRounding) -> &'static str {
    match rounding {
        TaxRounding::Line => "On each line",
        TaxRounding::Total => "On the sum",
    }
}

pub(in crate::text) const fn billed_for(what: BilledFor) -> &'static str {
    match what {
        BilledFor::Repair => "Repair",
        BilledFor::Inspection => "Inspection and reassembly",
        BilledFor::Further => "Further work",
        BilledFor::Discount => "Discount",
    }
}

pub(in crate::text) fn paid_how(how: PaidHow) -> &'static str {
    match how {
        PaidHow::Cash => "Cash",
        PaidHow::Card => "Card",
        PaidHow::Transfer => "Transfer",
        PaidHow::Other => "Another way",
    }
}

pub(in crate::text) fn how(how: How) -> &'static str {
    match how {
        How::Written => "Signed here",
        How::Spoken => "Verbal",
        How::Electronic => "By message",
    }
}

pub(in crate::text) fn scope(scope: Scope) -> &'static str {
    match scope {
        Scope::Teardown => "Inspection and teardown",
        Scope::Repair => "The repair",
        Scope::Extra => "Extra work",
    }
}

pub(in crate::text) fn due_kind(due: DueKind) -> &'static str {
    match due {
        DueKind::Retorque => "Re-torque the lugs",
        DueKind::Recheck => "Check the bearing again",
    }
}

pub(in crate::text) fn answer(answer: Answer) -> &'static str {
    match answer {
        Answer::Yes => "Yes",
        Answer::No => "No",
        Answer::NotDone => "Not done",
    }
}

pub(in crate::text) fn felt(felt: Felt) -> &'static str {
    match felt {
        Felt::Nothing => "Nothing",
        Felt::JustFelt => "Just felt",
        Felt::Seen => "Seen",
        Felt::Knocks => "It knocks",
    }
}

pub(in crate::text) fn spec_item(item: SpecItem, fixing: Fixing) -> &'static str {
    match item {
        SpecItem::LugNuts if fixing == Fixing::Bolts => "Lug bolts",
        SpecItem::SpindleNut => "Spindle nut",
        SpecItem::LockNut => "Lock nut",
        SpecItem::StrutBolts => "Strut bolts",
        SpecItem::BallJoint => "Ball joint",
        SpecItem::TieRod => "Tie rod end",
        SpecItem::AxleNut => "Axle nut",
        SpecItem::HubBolts => "Hub bolts",
        SpecItem::BracketBolts => "Caliper bracket bolts",
        SpecItem::CaliperPins => "Guide pin bolts",
        SpecItem::LugNuts => "Lug nuts",
        SpecItem::PlayLimit => "Play limit",
    }
}
