//! Steps that only some kinds of wheel end have, and how shared steps are told at those kinds.

use super::tell;
use crate::text::step::StepText;
use crate::trade::vehicle::{Encoder, Fixing, NutLock, ParkingBrake, SpeedSensor, WheelBrake};
use crate::trade::wheel_end::{Build, Kind, NutPosition, STUD_BROKE, Step, StepKey};

const CLICKED: &str = "It clicked";
const FIRST_CLICK: &str = "Stop at the first click. A second click only overtightens.";
const SPEC: &str = "Save the spec";
const THIS_FIRST: &str =
    "Take this off before the next part. Stuck for good: end as left unfinished.";
const DUST: &str = "Brake dust is harmful: keep it wet, no dry brush, no compressed air.";

pub(super) const CARD_SPINDLE_NUT: StepText = tell(
    "Spec: spindle nut",
    "Manufacturer's service information: torque and angle, or how to seat, back off and set; new nut or not.",
    SPEC,
    "Published settings differ from axle to axle. One from memory burns a bearing or lets it run loose.",
)
.caution("No value from memory or from another axle. \"Not found\" is an answer too.");
pub(super) const CARD_LOCK_NUT: StepText = tell(
    "Spec: lock nut",
    "Manufacturer's service information: torque of the lock nut, new washer or not.",
    SPEC,
    "The lock nut takes up play as it is tightened: its torque belongs to the setting.",
);
pub(super) const CARD_STRUT_BOLTS: StepText = tell(
    "Spec: strut bolts",
    "Manufacturer's service information: torque of strut to knuckle, new bolts and nuts or not.",
    SPEC,
    "These bolts hold the knuckle upright.",
);
pub(super) const CARD_BALL_JOINT: StepText = tell(
    "Spec: ball joint",
    "Manufacturer's service information: torque of the ball joint's nut or pinch bolt, new or not.",
    SPEC,
    "A ball joint that comes out lets the wheel fold under the car.",
);
pub(super) const CARD_TIE_ROD: StepText = tell(
    "Spec: tie rod end",
    "Manufacturer's service information: torque of the tie rod's nut, new nut or cotter.",
    SPEC,
    "A tie rod that comes off leaves the wheel without steering.",
);
pub(super) const RELEASE_BRAKE: StepText = tell(
    "Release parking brake",
    "From the open door: parking brake off. The other axle stays chocked on both sides.",
    "Released, chocked",
    "Shoes that are applied do not let go of their drum.",
)
.caution("Now chocks alone hold the car. No one inside. Shove it again before the wheel comes off.")
.now(
    "Set chocks both ways on the other axle, then release the parking brake (motor: service mode).",
);
const SERVICE_MODE: StepText = tell(
    "Brake in service mode",
    "Charger on the battery. Parking brake into service mode by scan tool or as the spec says. Key off.",
    "In service mode",
    "Forcing a motor's piston back breaks its gears.",
)
.caution("Key stays off until the caliper is back. Now chocks alone hold the car. No one inside.")
.now("Put the parking brake into service mode first; chock the car both ways.");
pub(super) const SHOES_BACK: StepText = tell(
    "Back off the shoes",
    "Turn the adjuster back until the drum turns free by hand.",
    "Drum turns free",
    "Shoes that drag damp the movement that the dial must see.",
)
.caution(DUST)
.now("Take the shoes off the drum before you read the dial.");
pub(super) const DRUM_OFF: StepText = tell(
    "Drum off",
    "Mark drum to hub. Drum off by its jackscrew holes, straight.",
    "Drum is off",
    "The drum hides the flange that the dial needs.",
)
.caution("Brake dust is harmful: keep it wet. Keep off the pedal: a wheel cylinder pops apart without its drum.")
.now("Take the drum off before you read the dial.");
pub(super) const CAP_OFF: StepText = tell(
    "Cap off",
    "Work the cap off evenly all around. Do not dent it.",
    "Cap is off",
    "A dented cap lets water in, and the new bearing rusts.",
)
.now("Take the cap off: the nut is looked at before you measure.");
pub(super) const LOCK_FOUND: StepText = tell(
    "Nut lock as found",
    "Look at cotter, lock nut or tab. Is the spindle nut locked? Loosen nothing.",
    "Save the answer",
    "A nut that is not locked turns off, and the wheel comes off with the hub.",
)
.caution("No cotter, or a lock that is loose: do not drive.")
.now("Look at the nut and its lock before you measure.");
pub(super) const SPINDLE_NUT_OFF: StepText = tell(
    "Spindle nut off",
    "Unstake or pull the cotter. Nut off.",
    "Nut is off",
    "From here the bearing is no longer clamped.",
)
.caution("No impact tool on a bearing that may go back. Never reuse a cotter.")
.now(THIS_FIRST);
pub(super) const HUB_OFF: StepText = tell(
    "Hub off the spindle",
    "Pull the hub straight off the spindle, with a puller if it is stuck.",
    "Hub is off",
    "Pulled crooked it scores the spindle.",
)
.caution("No hammer on the hub. The sensor wire is free first.")
.now(THIS_FIRST);
pub(super) const STRIP_KNUCKLE: StepText = tell(
    "Knuckle off",
    "Mark the strut bolts. Tie rod, ball joint, strut bolts out; knuckle off the shaft, onto the bench.",
    "Knuckle is off",
    "The marks bring camber back close to what it was.",
)
.caution("Tie the shaft up: hanging, its inner joint comes apart. No fork that tears a boot. Knuckle is heavy.")
.now(THIS_FIRST);
pub(super) const PULL_HUB: StepText = tell(
    "Hub out first",
    "Press or pull the hub out of the bearing. Inner ring stuck on the hub: off with a splitter.",
    "Hub is out",
    "The bearing comes apart here and is scrap.",
)
.caution("Glasses: a ring can burst. No torch and no cut in the hub's neck. Knuckle or plates fully supported.")
.now(THIS_FIRST);
pub(super) const SNAP_RING_OUT: StepText = tell(
    "Snap ring out",
    "Every snap ring out of the bore. Look on both sides.",
    "All are out",
    "Pressed against a ring that was left in, the knuckle cracks.",
)
.caution("Glasses: the ring springs out.")
.now(THIS_FIRST);
pub(super) const PRESS_OUT: StepText = tell(
    "Bearing out",
    "Press on the outer ring, from the side away from the shoulder, knuckle flat on its support.",
    "Bearing is out",
    "From the wrong side the shoulder breaks out of the knuckle.",
)
.caution(
    "No press, no kit that fits: stop here, get an exchange knuckle or a tow. Stand out of line.",
)
.now(THIS_FIRST);
pub(super) const TAPER_LOOK: StepText = tell(
    "Wash and look",
    "Wash cones, cups, spindle in solvent; dry with a clean rag. Look at each in good light.",
    "All are sound",
    "One pit or one blue roller is the start of the next failure.",
)
.caution("Never spin a bearing with air: it can burst. Cone and cup only as a pair, both new.")
.now("Fix or replace what is not sound, cone and cup as a pair, then look again.");
pub(super) const ROLLERS_NEW: StepText = tell(
    "Which rollers are new",
    "Which cone goes back new, each with its cup? The seal is new every time.",
    "Save the answer",
    "The report says what was replaced, and what was only cleaned and set.",
);
pub(super) const PACK_GREASE: StepText = tell(
    "Pack the grease",
    "Press grease through each cage from the wide end until it comes out. Coat the cups, fill the hub ring.",
    "Both are packed",
    "Grease only outside the cage leaves the rollers dry at first turn.",
)
.caution("One kind of grease, as the spec says: never mix two. The cap is not filled full.")
.now("Put grease through both cones before the hub goes on.");
pub(super) const SEAL_IN: StepText = tell(
    "New seal",
    "Inner cone in, new seal square and flush, lip as the old one faced. Grease on the lip.",
    "Seal is in",
    "A seal in the wrong way round lets grease out onto the brake.",
)
.caution(
    "Lip toward the grease unless the spec draws it otherwise. Seal in square, never by its lip.",
)
.now("Set a new seal before the hub goes on.");
pub(super) const HUB_ON: StepText = tell(
    "Hub on the spindle",
    "Hub straight onto the spindle by hand. New nut on by hand.",
    "Hub on, nut by hand",
    "A hub that needs force is cocked.",
)
.caution("A new nut where the spec says so. No impact tool. Nothing pulled on with the nut.")
.now("Seat the hub on its spindle before you go on.");
pub(super) const BORE_LOOK: StepText = tell(
    "Knuckle bore",
    "Clean the bore. Measure it across in four directions; look for scores and for a ring that spun.",
    "Bore is good",
    "In a worn or oval bore a new bearing spins or is squeezed.",
)
.caution("Not round within 0.001 in, scored, or spun: a new knuckle (technicians' guides).")
.now("Get a knuckle with a good bore first; the car stays on its jack stand.");
pub(super) const ENCODER_PHOTO: StepText = tell(
    "Photo: encoder side",
    "One photo: the new bearing held to the bore, card or clip on the encoder, before it is pressed.",
    "Take the photo",
    "Once pressed in, the side can no longer be seen.",
);
pub(super) const ENCODER_SIDE: StepText = tell(
    "Encoder to the sensor",
    "Viewing card or steel paper clip: find the magnetic side. Does it face the sensor?",
    "It faces the sensor",
    "The wrong way round there is no signal, and taking it out again ruins it.",
)
.no("It does not")
.caution("Keep the encoder away from magnets, chips, solvent. Nothing is pressed before this yes.")
.now("Set the bearing the other way around, find the encoder again, then answer.");
const RING_SIDE: StepText = tell(
    "Ring to the sensor",
    "Look at the toothed ring. Is it on the sensor's side, whole and clean?",
    "It is on that side",
    "The wrong way round there is no signal, and taking it out again ruins it.",
)
.no("It is not")
.caution("No bent tooth, no rust lift under the ring. Nothing is pressed before this yes.")
.now("Set it the other way around, or put the ring right, then look again.");
pub(super) const PRESS_IN: StepText = tell(
    "Press the bearing in",
    "Plate on the outer ring only. Square, one steady push, to the shoulder.",
    "It is at the shoulder",
    "Force through the rolling elements dents the rings: noise within weeks.",
)
.caution(
    "Outer ring only. No hammer, no chill-and-hammer, no turning while dry. Stand out of line.",
)
.now("Seat the bearing at its shoulder before the hub goes in.");
pub(super) const SNAP_RING_IN: StepText = tell(
    "Snap ring in",
    "New snap ring into its groove, gap away from the sensor. Turn it: it sits all around.",
    "It sits in its groove",
    "A ring that is not in its groove lets the bearing walk.",
)
.caution("Glasses: the ring springs out.")
.now("Seat the snap ring before the hub goes in.");
pub(super) const PRESS_HUB: StepText = tell(
    "Press the hub in",
    "A tube under the inner ring on the other side. Press the hub in, square, until it stops.",
    "Hub is home",
    "Without the tube the force goes through the rolling elements and dents them.",
)
.caution("Inner ring on its tube, never on the knuckle alone. Stand out of line.")
.now("Seat the hub in the bearing before you go on.");
pub(super) const KNUCKLE_ON: StepText = tell(
    "Knuckle on",
    "Shaft through the hub, ball joint, tie rod, strut bolts on their marks. All by hand.",
    "All in by hand",
    "Started by hand nothing is cross-threaded, and the marks keep camber close.",
)
.caution("No force on the splines. New nuts and bolts as the spec says. Boots untorn.")
.now("Put the knuckle on before you go on.");
pub(super) const TURN_SPINDLE_NUT: StepText = tell(
    "Spindle nut",
    "In the air, by wrench: torque, then angle, as the spec says.",
    CLICKED,
    "The torque sets the clamp of the bearing's rings. It cannot be felt or guessed.",
)
.caution("By wrench only, no impact tool. Stop at the first click. Never back the nut off.");
const SET_TAPERS: StepText = tell(
    "Seat and set the nut",
    "Turn the hub all the time. Seat, back off, set: each stage as the spec says.",
    "Stage is done",
    "Turning seats the rollers. Not turned, the play comes later, on the road.",
)
.caution("By the spec alone: settings differ. No impact tool. Too tight burns the bearing, too loose lets it knock.");
pub(super) const NUT_SLOT: StepText = tell(
    "Slot for the cotter",
    "How does the nut stand for the cotter hole?",
    "Save the answer",
    "Tightened on to a slot the end play is gone, and the bearing runs hot.",
)
.caution("No slot in line: back to the looser one, never on to the tighter one (common practice, no source).")
.now("Set the nut back to the looser slot, then answer again.");
pub(super) const LOCK_NUT_ON: StepText = tell(
    "Lock nut on",
    "Washer with its tab in the groove, lock nut on by hand. Hold the setting nut.",
    "On by hand",
    "A setting nut that turns with the lock nut is no longer set.",
);
pub(super) const TURN_LOCK_NUT: StepText = tell(
    "Lock nut",
    "Hold the setting nut. Lock nut by wrench to spec.",
    CLICKED,
    "It takes up play: the reading comes after it.",
)
.caution(FIRST_CLICK);
pub(super) const TURN_STRUT_BOLTS: StepText = tell(
    "Strut bolts",
    "On their marks, each by wrench to spec. One tap for each.",
    CLICKED,
    "These bolts hold the knuckle upright.",
)
.caution(FIRST_CLICK);
pub(super) const TURN_BALL_JOINT: StepText = tell(
    "Ball joint",
    "Nut or pinch bolt by wrench to spec, then a new cotter where there is one.",
    CLICKED,
    "A ball joint that comes out lets the wheel fold under the car.",
)
.caution("Slot not in line: on to the next within the spec's range, never back.");
pub(super) const TURN_TIE_ROD: StepText = tell(
    "Tie rod end",
    "Nut by wrench to spec, then a new cotter where there is one.",
    CLICKED,
    "A tie rod that comes off leaves the wheel without steering.",
)
.caution("Slot not in line: on to the next within the spec's range, never back.");
pub(super) const DRUM_ON: StepText = tell(
    "Drum on",
    "Hub face and drum bright. Drum on its mark, straight, until it seats.",
    "Drum is on",
    "A drum that does not sit flat makes the brake pulse later.",
)
.caution("No grease on shoes or drum.");
pub(super) const SHOES_SET: StepText = tell(
    "Set the shoes",
    "Adjuster out until the shoes just touch, then back until the drum turns free.",
    "Shoes are set",
    "Shoes too far off leave a low pedal. Too close they burn.",
)
.caution("The pedal is low until the shoes are set and it was pumped: keep off it until then.");
pub(super) const SET_BRAKE: StepText = tell(
    "Set parking brake",
    "Parking brake on and off a few times, then on. It holds by the usual travel.",
    "Parking brake is set",
    "Left released, the car can roll after you leave.",
);
const LEAVE_SERVICE_MODE: StepText = tell(
    "Leave service mode",
    "Caliper on, pedal firm: out of service mode, calibrate, then apply the brake once.",
    "Out of service mode",
    "In service mode the parking brake does not hold.",
)
.caution("Hands and tools out of the caliper while its motor runs.");
pub(super) const CAP_ON: StepText = tell(
    "Cap on",
    "New cap, or the old one undented, in straight by its rim until it seats all around.",
    "Cap is on",
    "A cap that leaks lets water into the bearing and its encoder.",
)
.caution("Drive it by the rim, never by the middle.");
pub(super) const ALIGNMENT: StepText = tell(
    "Alignment",
    "The knuckle was off: tell the customer to have the alignment checked. Was it said?",
    "It was said",
    "Marks bring camber and toe close, not right. Tires wear by the difference.",
)
.no("Not said");

const ON_THE_AXLE: StepText = tell(
    "Base on the axle",
    "Base tight on axle or spindle flange. Push the axle, not the hub: how far does the needle move?",
    "Save the answer",
    "A base that gives is the largest error of all.",
)
.caution("Never on the backing plate, strut, stand, fender.");

/// How a step is told at a kind or with fittings at which it is told otherwise.
pub(super) fn at_kind(key: StepKey, build: Build, text: StepText) -> StepText {
    let text = fitted(key, build, text);
    let text = match build.kind {
        Kind::BoltedDriven => text,
        Kind::BoltedFree => bolted_free(key.step, build, text),
        Kind::SpindleHub => spindle_hub(key.step, build, text),
        Kind::Tapered => tapered(key, build, text),
        Kind::Pressed => pressed(key.step, text),
        Kind::PressedFree => pressed_free(key.step, spindle_hub(key.step, build, text)),
    };
    match build.fitted.fixing {
        Fixing::Nuts => text,
        Fixing::Bolts => bolts(key, build, text),
    }
}

fn fitted(key: StepKey, build: Build, text: StepText) -> StepText {
    let fitted = build.fitted;
    let motor = fitted.parking == ParkingBrake::Electric;
    let drum = fitted.brake == WheelBrake::Drum;
    let rotor = fitted.brake == WheelBrake::Disc;
    match key.step {
        Step::ReleaseBrake if motor => SERVICE_MODE,
        Step::SetBrake if motor => LEAVE_SERVICE_MODE,
        Step::EncoderSide if fitted.encoder == Encoder::Ring => RING_SIDE,
        Step::BrakeHeld if drum => {
            text.caution("No one inside a raised car. Depressor out after. Shoes hold loosely: play that stays proves little.")
        }
        Step::GaugeClean if drum => text
            .say("Hub face and a spot on knuckle or axle flange clean, dry, no burrs.")
            .caution("Brake dust is harmful: keep it wet. Let a hot hub cool first."),
        Step::GaugeClean if !rotor => {
            text.say("Hub face and a spot on knuckle or axle flange clean, dry, no burrs.")
        }
        Step::RigPush if !rotor && key.nth > 1 => text.say(
            "Base and tip where they were. Push the knuckle, not the hub: how far does the needle move?",
        ),
        Step::RouteSensor if fitted.sensor == SpeedSensor::Passive => text,
        Step::RouteSensor if build.kind != Kind::BoltedDriven => {
            text.caution("An active sensor is tested by supply and live data, never by ohms.")
        }
        _ => text,
    }
}

fn bolted_free(step: Step, build: Build, text: StepText) -> StepText {
    let drum = build.fitted.brake == WheelBrake::Drum;
    match step {
        Step::LoosenLugNuts => text.caution("Loosen nothing else: the reading comes first."),
        Step::SpinHand => text.caution(FREE_SPIN),
        Step::StripHub if drum => tell(
            "Hub out",
            "Clean bolt threads. Bolts out, one back in by hand to hold the backing plate. Hub off.",
            "Hub is out",
            "Shoes, cable and brake line are not made to carry the plate.",
        )
        .caution("Shoes, cable and line carry no weight: one bolt stays in as a hanger. No hammer on the hub.")
        .now(THIS_FIRST),
        Step::StripHub => tell(
            "Hub out",
            "Clean bolt threads. Bolts out, hub straight off its seat, with a puller if it is stuck.",
            "Hub is out",
            "A slide hammer dents the rings and bends the seat.",
        )
        .caution("No hammer on a hub that may go back. Heat only well clear of the sensor.")
        .now(THIS_FIRST),
        Step::Offer => text
            .say("Shield or backing plate as in the photo. Hub straight onto its seat, bolts in by hand.")
            .caution("Never pull it in with the bolts. New bolts, threadlocker as the spec says."),
        Step::Lower => StepText {
            why: "No weight goes on a hub whose bolts are not at their torque.",
            ..text.caution("Only with the hub bolts at spec. Chocks stay until the pedal is firm.")
        },
        _ => text,
    }
}

const FREE_SPIN: &str = "Parking brake off to turn it: chocks both ways on the other axle, shove again, brake back on after.";
const NUT_LOWER: &str = "Only with the spindle nut at spec and locked, or never loosened. Chocks stay until the pedal is firm.";

fn spindle_hub(step: Step, build: Build, text: StepText) -> StepText {
    match step {
        Step::LoosenLugNuts => {
            text.caution("The spindle nut stays tight. It is loosened only after the reading.")
        }
        Step::SpinHand => text.caution(FREE_SPIN),
        Step::NutFound => tell(
            "Spindle nut as found",
            "Look at nut and stake or cotter. Loosen nothing.",
            "Save the answer",
            "The nut clamps the bearing's rings. With a slack nut the reading means nothing.",
        )
        .caution("Was loosened: torque it to spec first, then measure. Slack: do not drive the car.")
        .now("Look at the spindle nut before you measure. With a slack nut the reading means nothing."),
        Step::Seat => text.say(
            "Spindle and seat bright and dry. Rust film only as the manufacturer says.",
        ),
        Step::Stake => text.say("The reading is taken. Stake the nut into its groove, or a new cotter."),
        Step::Lower => text.caution(NUT_LOWER),
        Step::RotorOn if build.fitted.fixing == Fixing::Nuts => text,
        _ => text,
    }
}

fn tapered(key: StepKey, build: Build, text: StepText) -> StepText {
    match key.step {
        Step::LoosenLugNuts => {
            text.caution("The spindle nut stays as it is until after the reading.")
        }
        Step::SpinHand => text.caution(FREE_SPIN),
        Step::SpecPlayLimit => StepText {
            name: "Spec: end play",
            ..text.say("Manufacturer's service information: least and most end play, method, tip position, force.")
        },
        Step::GaugeClean => text.say("Hub face beside the nut and a spot on the axle clean, dry, no burrs."),
        Step::RigPush if key.nth > 1 => {
            ON_THE_AXLE.say("Base and tip where they were. Push the axle: how far does the needle move?")
        }
        Step::RigPush => ON_THE_AXLE,
        Step::RigAgain => text.say(
            "Base off, wipe, set it on another spot of the axle. Push the axle: how far does the needle move?",
        ),
        Step::Decide => text.say(
            "Read the decision. REPLACE here: open it, renew what is worn as a pair, set it again.",
        ),
        Step::SpindleNutOff => text.say(
            "Cotter or lock off, nut and washer off. Outer cone out with the hub held: catch it.",
        ),
        Step::StripBrake => text.say("Caliper off, on a hanger. Bracket off. A rotor stays on its hub."),
        Step::HubOff => text.say(
            "Pull the hub straight off the spindle. Seal and inner cone come out on the bench.",
        ),
        Step::Compare => text.say("Lay new cones, cups and seal next to the old ones. Compare and answer each."),
        Step::ComparePhoto => text.say("One photo of the old and the new parts side by side."),
        Step::HubOn => text.say(
            "Hub straight on, held so that the seal is not cut. Outer cone, washer, nut by hand.",
        ),
        Step::TurnSpindleNut => SET_TAPERS,
        Step::Stake => match build.fitted.lock {
            NutLock::Cotter => tell(
                "New cotter",
                "The reading is taken. New cotter through slot and hole, legs bent around, clear of the cap.",
                "Cotter is in",
                "A cotter that was bent before breaks, and the nut turns off.",
            )
            .caution("Never tighten the nut to reach a slot. Never close it without a cotter."),
            NutLock::LockNut => tell(
                "Lock the nut",
                "The reading is taken. Bend the tab onto a flat of the lock nut, or set its keeper.",
                "It is locked",
                "Not locked, both nuts turn off.",
            )
            .caution("A tab that was bent before breaks: a new washer. Never turn the nuts to reach a tab."),
        },
        Step::ProveSpin => text.say(
            "Turn the hub by hand and listen. It must turn free, without a tight spot, smooth and quiet.",
        ),
        Step::Lower => text.caution(NUT_LOWER),
        Step::Retorque => text.say(
            "Set date and distance, tell the customer both. At that visit the end play is checked again too.",
        ),
        _ => text,
    }
}

fn pressed(step: Step, text: StepText) -> StepText {
    match step {
        Step::Compare => text.say("Lay the new bearing next to the old one. Compare and answer."),
        Step::ComparePhoto => text.say("One photo of the old and the new bearing side by side."),
        _ => text,
    }
}

const BOLTS_WHY: &str = "Most wheels that come off do so because their lug bolts lost clamp.";

fn pressed_free(step: Step, text: StepText) -> StepText {
    match step {
        Step::HubOff => text.say(
            "Hub straight off the spindle, onto the bench. Inner ring left on the spindle: off with a puller.",
        ),
        Step::SnapRingOut => StepText {
            why: "Pressed against a ring that was left in, the hub cracks.",
            ..text
        },
        Step::PressOut => StepText {
            say: "Press on the outer ring, from the side away from the shoulder, hub flat on its support.",
            why: "From the wrong side the shoulder breaks out of the hub.",
            ..text
        }
        .caution("No press, no kit that fits: stop here, get a loaded exchange hub or a tow. Stand out of line."),
        Step::BoreLook => StepText {
            name: "Hub bore",
            ..text
        }
        .caution("Not round within 0.001 in, scored, or spun: a new hub (technicians' guides).")
        .now("Get a hub with a good bore first; the car stays on its jack stand."),
        Step::PressIn => text.now("Seat the bearing at its shoulder before the hub goes on."),
        Step::SnapRingIn => text.now("Seat the snap ring before the hub goes on."),
        Step::HubOn => text.say(
            "Hub straight onto the spindle by hand, inner rings on their seat. New nut on by hand.",
        ),
        _ => pressed(step, text),
    }
}

/// How a step is told where the wheel is held by lug bolts.
fn bolts(key: StepKey, build: Build, text: StepText) -> StepText {
    let named = |name| StepText { name, ..text };
    let bar = build.nut == NutPosition::AirBar;
    let rotor = build.fitted.brake == WheelBrake::Disc;
    let ground = build.nut == NutPosition::OnGround;
    match key.step {
        Step::SpecLugNuts => StepText {
            name: "Spec: lug bolts",
            why: BOLTS_WHY,
            ..text.say(
                "Manufacturer's service information: torque, length, seat of the lug bolts; dry unless it says otherwise.",
            )
        },
        Step::RockNuts => named("Lug bolts tight")
            .say("Try each lug bolt with the wrench. Loosen none yet.")
            .caution("Any loose or missing: do not drive until every bolt is at spec. Two or more: STOP.")
            .now("Tighten every lug bolt to spec first. Any missing: do not drive. Two or more loose: STOP."),
        Step::NutsToSpec => StepText {
            name: "Loose lug bolts to spec",
            why: "As found it is STOP. With every bolt on the car at spec the decision is made again.",
            ..text
        }
        .say("All four wheels on the ground: check seats and threads, then each lug bolt to spec in star order.")
        .caution("A bolt that ran loose wears its seat and stretches. Worn, cracked or missing: do not drive.")
        .now("Do not drive: bring every lug bolt to spec first, or skip the road test."),
        Step::LoosenLugNuts if key.nth == STUD_BROKE => text.say(
            "Loosen the other lug bolts a quarter turn. Hold and chock the car, raise it, set it back on its jack stand.",
        ),
        Step::StudIn => StepText {
            primary: "The new one runs in",
            why: "A damaged thread holds less than its torque says.",
            ..named("New lug bolt").say(
                "What is left of the old bolt out of the flange. Thread clean and sound; the new bolt runs in by hand.",
            )
            .now("Take the bolt out again: clean the thread, or replace the hub, before the wheel goes on.")
        },
        Step::LoosenLugNuts => StepText {
            name: "Loosen lug bolts",
            why: "Pulling on a tight bolt in the air can pull the car off its jack stand.",
            ..text.say(
                "Lower until the tire grips. Center cap off, each lug bolt a quarter turn. Raise, back onto the stand.",
            )
        },
        Step::WheelOff => text.say(
            "Mark wheel to hub. Guide pin in the top hole, bolts out. Wheel off; lay it under the rocker panel.",
        ),
        Step::WheelOffAgain => {
            text.say("Break lug bolts loose, raise, stand, shove. Wheel off, under the car.")
        }
        Step::WheelOn => StepText {
            primary: "All bolts are snug",
            ..text
                .say("Faces clean, wheel on the guide pin, on its mark. All bolts in by hand, then snug in star order.")
                .caution("Right length and seat: a bolt too long hits drum or sensor. No oil or grease unless the spec says so.")
        },
        Step::TurnLugNuts => StepText {
            name: "Lug bolts",
            why: BOLTS_WHY,
            ..text
        },
        Step::GaugeClean if build.kind != Kind::Tapered && rotor => text.say(
            "Rotor flat: two lug bolts, spacers. Hub pilot and knuckle spot clean, dry, no burrs.",
        ),
        Step::RotorOn => {
            text.say("Hat and flange bright. Rotor on its mark, flat under two lug bolts with spacers.")
        }
        Step::RigPush if key.nth > 1 && build.kind != Kind::Tapered && rotor => text.say(
            "Rotor flat, two lug bolts; base and tip where they were. Push the knuckle: how far does the needle move?",
        ),
        Step::LoosenAxleNut => text.say(
            "Unstake. Wheel on, lug bolts snug, down until the tire grips. Break nut loose, raise, set the stand.",
        ),
        Step::StripNut if bar => text.say(
            "Unstake. Two lug bolts in by hand to save the threads, a bar across, break the nut loose, nut off.",
        ),
        Step::NutOn if bar => text.say(
            "Clean, dry thread. Nut on by hand until it seats. Two lug bolts in by hand for the bar.",
        ),
        Step::TurnAxleNut if bar => text.say(
            "Bar across two lug bolts in by hand to save the threads. Snug, torque, angle, as the spec says.",
        ),
        Step::TurnAxleNut if ground => text
            .say("On the ground, lug bolts at spec, brake on. Final torque, then angle, as the spec says."),
        Step::Wait => text.say(
            "Do not move it. Wheel on, lug bolts at spec, down; or on its jack stand, chocked, wheel under the car.",
        ),
        Step::RetorqueDone => StepText {
            why: "A loose bolt requires a check of seat, thread and wheel.",
            ..text.say("All lug bolts to spec by wrench. Was one of them loose?")
        },
        _ => text,
    }
}
