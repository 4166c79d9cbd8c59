//! What the screen of each step says.

use super::{PUT_RIGHT, kinds, tell};
use crate::text::step::StepText;
use crate::trade::wheel_end::{
    Build, NutPosition, SHOVE_FURTHER, SHOVE_WAITED, STUD_BROKE, Step, StepKey,
};

const GIVES: &str = "A base that gives is the largest error of all.";
const KEEP: &str = "Save the answer";
const COUNT: &str = "Start the count";
const HANDS: &str = "Hands on the tire only, nothing under the car.";
const NUT_WHY: &str =
    "With the nut loose the rings are no longer clamped. Weight or rolling ruins the bearing.";
const CLICKED: &str = "It clicked";
const FIRST_CLICK: &str = "Stop at the first click. A second click only overtightens.";
const DEAD: &str = "The pedal is dead until it is pumped firm: keep off it. No twist in the hose.";
const FINAL_NUT: &str =
    "By wrench only, no impact tool. Stop at the first click. Never back the nut off.";
const FINAL_WHY: &str =
    "The torque sets the clamp of the bearing's rings. It cannot be felt or guessed.";
const WHEEL_FIRST: &str = "Take the wheel off first. If the manufacturer measures with the wheel on, record that at the dial setup.";
const CALIPER_FIRST: &str =
    "Swing the caliper up, pads out, before you read the dial. Or record another dial setup.";
const THIS_FIRST: &str =
    "Take this off before the next part. Stuck for good: end as left unfinished.";
const SOFT: &str =
    "The car must not move. Pump again; still soft: look for a leak, then bleed the brake.";

/// What a step says; where the same step is told otherwise a second time, or by how the wheel end is
/// built, what it says then.
pub(in crate::text) fn step_for(key: StepKey, build: Build) -> StepText {
    let text = kinds::at_kind(key, build, by_nut(key, build.nut));
    match text.now {
        // A second time is put right as the first.
        PUT_RIGHT => text.now(step(key.step).now),
        _ => text,
    }
}

fn by_nut(key: StepKey, nut: NutPosition) -> StepText {
    let again = key.nth > 1;
    let text = step(key.step);
    match (key.step, nut) {
        (Step::StripNut, NutPosition::AirBar) => tell(
            "Axle nut off",
            "Unstake. Run lug nuts onto two studs to save the threads, a bar across, break the nut loose, nut off.",
            "Nut is off",
            NUT_WHY,
        )
        .caution("The car stays on its jack stand: keep out from under it. Once loose, it must not be rolled."),
        (Step::NutOn, NutPosition::AirBar) => text.say(
            "Clean, dry thread. Nut on by hand until it seats. Lug nuts onto two studs for the bar.",
        ),
        (Step::NutOn, NutPosition::OnGround) => text.say(
            "Clean, dry thread. Nut on by hand until it seats. Final torque comes on the ground.",
        ),
        (Step::TurnAxleNut, NutPosition::AirBar) => text.say(
            "Bar across two studs, lug nuts on them to save the threads. Snug, torque, angle, as the spec says.",
        ),
        (Step::TurnAxleNut, NutPosition::OnGround) => text
            .say("On the ground, lug nuts at spec, brake on. Final torque, then angle, as the spec says.")
            .caution("By wrench only, no impact tool. Never back it off. The car must not be rolled before this."),
        (Step::Lower, NutPosition::OnGround) if !again => StepText {
            why: "The final torque comes on the ground: no rolling before it.",
            ..text.caution(
                "An axle nut that was loosened has only its first stage: chocks and brake on, the car must not be rolled.",
            )
        },
        (Step::LoosenLugNuts, _) if key.nth == STUD_BROKE => StepText {
            name: "Raise it again",
            ..text.say(
                "Loosen the other lug nuts a quarter turn. Hold and chock the car, raise it, set it back on its jack stand.",
            )
        },
        (Step::Shove, _) if matches!(key.nth, SHOVE_WAITED | SHOVE_FURTHER) => tell(
            "Shove after waiting",
            "Stand clear, shove it hard, lengthwise and sideways.",
            "It stands firm",
            "The jack stand was set again; how it stands is not known.",
        )
        .no("It moved")
        .caution(
            "If it moved: lower it, chock again, set the jack stand again. No work goes on before this yes.",
        ),
        (Step::LiftHold, _) if again => tell(
            "Hold the car again",
            "It was left alone. In P or in gear, parking brake on, both chocks: check each again.",
            "Held and chocked",
            "Anything may have been moved since.",
        ),
        (Step::LiftStand, _) if again => tell(
            "Jack stand again",
            "Jack and jack stand at their points, wheel under the car: set it as if for the first time.",
            "On its jack stand",
            "Ground sinks and jacks leak overnight.",
        ),
        (Step::Shove, _) if again => tell(
            "Shove again",
            "Was on its wheel: stand clear and shove the car hard, lengthwise and sideways.",
            "It stands firm",
            "The jack stand was set again; how it stands is not known.",
        )
        .no("It moved")
        .caution(
            "If it moved: back on the jack, chock again, set the jack stand again. No wheel comes off before this yes.",
        ),
        (Step::RigPush, _) if again => text.say(
            "Rotor flat, nuts and washers; base and tip where they were. Push the knuckle: how far does the needle move?",
        ),
        _ => text,
    }
}

/// Matches a step with its texts, each made while compiling.
macro_rules! said {
    ($step:expr, { $($name:ident => $text:expr,)+ }) => {
        match $step { $(Step::$name => const { $text }),+ }
    };
}

pub(in crate::text) fn step(step: Step) -> StepText {
    said!(step, {
        Booking => tell(
            "Booking message",
            "Paste the message. VIN, phone, plate and address are found in it; the rest is the complaint, word for word.",
            "Save the message",
            "At the end the work is checked against the customer's own words.",
        ),
        Vehicle => tell(
            "Vehicle",
            "Check the facts: wheel end, VIN, lugs, hub bolts, power, parking brake.",
            "Facts are right",
            "The kind of wheel end, the parking brake's axle and the number of lugs change the steps.",
        ),
        Corners => tell(
            "Corners",
            "Tap each corner of this job in the order of work. Left and right are seen from the driver's seat.",
            "These corners",
            "\"Driver's side\" changes with the country. Left and right from the driver's seat do not.",
        )
        .now("Choose a corner first."),
        SpecAxleNut => tell(
            "Spec: axle nut",
            "Manufacturer's service information: torque, angle, in the air or on the ground, new nut or not.",
            "Save the spec",
            "This nut clamps the bearing's rings. Too loose or too tight ruins a new bearing.",
        )
        .caution("No value from memory or from another car. \"Not found\" is an answer too."),
        SpecHubBolts => tell(
            "Spec: hub bolts",
            "Manufacturer's service information: torque, angle, new bolts or not, threadlocker or not.",
            "Save the spec",
            "Bolts that pull unevenly bend the outer ring, and a bent ring makes noise.",
        ),
        SpecBracketBolts => tell(
            "Spec: bracket bolts",
            "Manufacturer's service information: torque of the caliper bracket, new bolts, threadlocker.",
            "Save the spec",
            "These bolts carry the full braking force of the wheel.",
        ),
        SpecCaliperPins => tell(
            "Spec: guide pin bolts",
            "Manufacturer's service information: torque of guide pin bolts, new or not.",
            "Save the spec",
            "A guide pin bolt that backs out lets the caliper hit the wheel.",
        ),
        SpecLugNuts => tell(
            "Spec: lug nuts",
            "Manufacturer's service information: torque for this wheel, threads dry unless it says otherwise.",
            "Save the spec",
            "Most wheels that come off do so because their lug nuts lost clamp.",
        ),
        SpecPlayLimit => tell(
            "Spec: play limit",
            "Manufacturer's service information: the limit, its method, tip position, how hard to pull.",
            "Save the spec",
            "\"Play\" is measured in different ways. A limit counts only for its own method and place.",
        )
        .caution("No manufacturer limit: the default limit can condemn, never clear (common practice, no source)."),
        Price => tell(
            "Price",
            "Enter two amounts: the full repair, and inspection with reassembly if it is declined.",
            "Save the price",
            "The customer must know both before disassembly.",
        ),
        Kit => tell(
            "Kit",
            "Check the van. Tap only what is missing.",
            "The rest is in the van",
            "Find what is missing here, not with the wheel off.",
        ),
        Ready => tell(
            "Before leaving",
            "Read what is missing, which wrench does not fit, and what this dial can prove.",
            "Ready to leave",
            "All of it is easier to fix here than in a driveway.",
        ),
        SiteLook => tell(
            "The ground",
            "The ground first: slope, surface, traffic.",
            "Safe to work here",
            "On a slope or soft ground a jack stand tips or sinks.",
        )
        .no("Not safe here")
        .caution("Over 3° do not raise the car (common practice, no source).")
        .now("Look at the ground before you raise the car."),
        RightCar => tell(
            "The right car",
            "Compare the last four characters of the VIN with the car.",
            "Same car",
            "Specs and parts fit this one car.",
        )
        .no("Different car")
        .now("Specs and parts are for another car. Find the right car first."),
        Odometer => tell(
            "Odometer",
            "The odometer, with its unit.",
            "Save the odometer",
            "Re-torque and warranty are counted from this number.",
        ),
        WarningLights => tell(
            "Warning lights",
            "Key on, wait for the bulb check to end. Which lights stay on?",
            "Save the answer",
            "So that a light that was on before is not blamed on the work.",
        )
        .now("Check the warning lights before you drive."),
        MeetLook => tell(
            "Key, box and car",
            "Wheel-lock key in hand. Box open, part held against the car.",
            "All answered",
            "Find a missing key or wrong part now, not with the wheel half off.",
        )
        .now("Check key and part before anything is loosened."),
        TeardownYes => tell(
            "Inspection approval",
            "Show the customer the price of inspection with reassembly. Ask for approval.",
            "Customer approves",
            "Nothing is opened without it. The repair is approved later, after the decision.",
        )
        .no("Customer declines")
        .now(
            "Ask the customer to approve the inspection before anything is loosened.",
        ),
        BeforeDriving => tell(
            "Pre-drive check",
            "Four checks before driving.",
            "All four checked",
            "A car that is not safe to drive is not road-tested.",
        )
        .caution("Not right: do not drive. Fix it, or skip the road test.")
        .now("Check all four before the car is driven."),
        NutsToSpec => tell(
            "Loose lug nuts to spec",
            "All four wheels on the ground: check seats and studs, then each lug nut to spec in star order.",
            "All at spec",
            "As found it is STOP. With every nut on the car at spec the decision is made again.",
        )
        .no("Not all of them")
        .caution("A nut that ran loose wears its seat and stretches its stud. Worn, cracked or missing: do not drive.")
        .now(
            "Do not drive: bring every lug nut to spec first, or skip the road test.",
        ),
        FoundPhoto => tell(
            "Photo: as found",
            "One photo of what is wrong, before anything is touched.",
            "Take the photo",
            "It shows how it was before you came.",
        ),
        Drive => tell(
            "Test drive",
            "Tire pressures set. Town speed, open road, gentle swerves, coast, light brake, slow circles at full lock.",
            "Back and parked",
            "Most noisy bearings have no play yet. The road shows more than the hands do.",
        )
        .caution("Hands off the phone while the car moves. The questions come when it is parked."),
        SignSpeed => tell(
            "Rises with speed",
            "Did the noise rise with road speed, the same in every gear?",
            "Yes",
            "Then it comes from the wheels or what turns with them, not from the engine.",
        ),
        SignSwerve => tell(
            "Gentle swerve",
            "In a gentle swerve, steering which way made it louder, each time again?",
            KEEP,
            "Steering right loads the left side. The loaded side is usually the loud one, not always.",
        ),
        SignCoast => tell(
            "Coasting",
            "Was it the same when coasting in neutral at the same speed?",
            "Yes",
            "Then not the engine. The final drive may be.",
        ),
        SignSurface => tell(
            "Road surface",
            "Did the note change with the road surface?",
            "Yes",
            "A note that changes with the road points to the tires.",
        ),
        SignBrake => tell(
            "Light brake",
            "Did a light brake at speed change the noise or quiet it?",
            "Yes",
            "Then a dragging brake is more likely.",
        ),
        SignFullLock => tell(
            "Full lock",
            "Did it click at full lock under power?",
            "Yes",
            "Clicking there points to the outer CV joint.",
        ),
        SignShake => tell(
            "Shake",
            "On the open road, did it shake without braking and without a hum?",
            "Yes",
            "A shake without a hum points to tire or wheel.",
        ),
        SignPulse => tell(
            "Pulse",
            "Did it pulse only while braking?",
            "Yes",
            "A pulse only under the brake points to the rotor.",
        ),
        HeatHere => tell(
            "Heat: this hub",
            "IR thermometer: this hub.",
            "Save temperature",
            "A hub clearly hotter than the other side is a clue. Sun and drag fool a reading; aim at dull tape.",
        )
        .caution("Hot: it can burn you."),
        HeatOther => tell(
            "Heat: other side",
            "Same spot, other side.",
            "Save temperature",
            "Only the difference between the two sides counts.",
        )
        .caution("Hot: it can burn you."),
        LiftHold => tell(
            "Hold the car",
            "In P or in gear, parking brake on. Chock both sides of the wheel diagonally opposite. Air suspension: jacking mode.",
            "Held and chocked",
            "A raised car rolls on the wheels still down. Brake and chocks must act on those.",
        )
        .caution(
            "To turn a driven wheel: neutral only with the other axle's parking brake, chocks both ways; shove again; then P. Parking brake on the raised axle: chocks alone hold.",
        )
        .now("Hold and chock the car before you raise it."),
        LiftStand => tell(
            "Jack and jack stand",
            "Raise the car, set the jack stand, lower it onto the stand.",
            "On the jack stand",
            "A jack raises. A jack stand holds.",
        )
        .caution("Never under or past a car that only the jack holds. Hot asphalt: a plate under it.")
        .now("Set the car on its jack stand first; keep clear until it stands."),
        StandPhoto => tell(
            "Photo: jack stand",
            "One photo: jack stand, chocks, ground.",
            "Take the photo",
            "It shows later how the car was held.",
        ),
        Shove => tell(
            "Shove",
            "Stand clear and shove the car hard, lengthwise and sideways. It must not move.",
            "It stands firm",
            "Better that it falls now, with no one near, than later.",
        )
        .no("It moved")
        .caution("If it moved: lower it, chock again, set the jack stand again.")
        .now(
            "Keep clear. Back on the jack: chock the car again, set the jack stand again, then shove again.",
        ),
        RockNuts => tell(
            "Lug nuts tight",
            "Try each lug nut with the wrench. Loosen none yet.",
            "All tight",
            "A loose wheel rocks just like a worn bearing.",
        )
        .no("Not all tight")
        .caution("Any loose or missing: do not drive until every nut is at spec. Two or more: STOP.")
        .now(
            "Tighten every lug nut to spec first. Any missing: do not drive. Two or more loose: STOP.",
        ),
        RockTwelveSix => tell(
            "Rock: 12 and 6",
            "Hands at 12 and 6. Push, then pull, swinging the wheel with the count.",
            COUNT,
            "Play here comes from the bearing or from a ball joint.",
        )
        .caution(HANDS),
        RockNineThree => tell(
            "Rock: 9 and 3",
            "Hands at 9 and 3. Push, then pull, swinging the wheel with the count.",
            COUNT,
            "Only here: usually tie rod, or toe link (rear).",
        )
        .caution(HANDS),
        RockAxial => tell(
            "Push and pull",
            "Both hands on the tire. Swing it; push straight in, then pull straight out.",
            COUNT,
            "Swinging seats the rolling elements, so that the real movement can be felt.",
        )
        .caution(HANDS),
        BrakeHeld => tell(
            "Brake held",
            "Brake held by the pedal depressor. Rock the same way again.",
            "Save the answer",
            "Play that goes away was usually in the bearing. Play that stays: a joint, or a loose wheel.",
        )
        .caution("No one inside a raised car. Take the depressor out after."),
        SpinHand => tell(
            "Spin by hand",
            "Turn the wheel, fingertips on the coil spring. Feel and listen at the knuckle.",
            "Save the answer",
            "A grumble through the spring condemns a bearing without play. A quiet spin proves little.",
        )
        .caution("Driven wheel: neutral only with the other axle's brake on and chocks both ways. Back to P afterwards."),
        OtherSide => tell(
            "Compare other side",
            "Rock and spin the wheel across this axle the same way. Which is tighter?",
            "Save the answer",
            "The other side shows what is usual for this car.",
        )
        .caution("The other side needs its own jack stand and shove."),
        LoosenLugNuts => tell(
            "Loosen lug nuts",
            "Lower until the tire grips. Center cap off; loosen each lug nut a quarter turn. Raise, back onto the jack stand.",
            "Loosened, on the stand",
            "Pulling on a tight nut in the air can pull the car off its jack stand.",
        )
        .caution("The axle nut stays tight. It is loosened only after the reading."),
        WheelOff => tell(
            "Wheel off",
            "Mark the wheel to a stud. Wheel off; lay it under the rocker panel.",
            "Wheel is off",
            "The mark puts the wheel back as it was. Under the car it is a last stop.",
        )
        .caution(
            "Brake dust is harmful: keep it wet, no dry brush, no compressed air. The rotor may be hot.",
        )
        .now(WHEEL_FIRST),
        CaliperUp => tell(
            "Caliper up",
            "Mark rotor to hub. Lower guide pin bolt out, tie caliper up, pads out. Fixed caliper: off, on a hanger.",
            "Caliper is tied up",
            "Pads damp the movement that the dial must see, or fake one.",
        )
        .caution(
            "Pedal depressor out. Keep off the pedal: a piston can come out. \
             Never hang the caliper by its hose.",
        )
        .now(CALIPER_FIRST),
        NutFound => tell(
            "Axle nut as found",
            "Look at nut and stake. Loosen nothing.",
            "Save the answer",
            "The nut clamps the bearing's rings. With a slack nut the reading means nothing.",
        )
        .caution("Broken loose: torque it to spec first, then measure. Slack: do not drive the car.")
        .now(
            "Look at the axle nut before you measure. With a slack nut the reading means nothing.",
        ),
        GaugeClean => tell(
            "Clean for the dial",
            "Rotor flat: nuts, washers. Hub pilot and knuckle spot clean, dry, no burrs.",
            "Clean and dry",
            "Dirt under the base can move the needle as much as a worn bearing does.",
        )
        .caution("Let a hot hub cool first."),
        RigPush => tell(
            "Base on the knuckle",
            "Base tight on the knuckle. Push the knuckle, not the hub: how far does the needle move?",
            "Save the answer",
            GIVES,
        )
        .caution("Never on strut, shield, stand, fender."),
        RigTip => tell(
            "Dial setup",
            "Set up the dial. Preload the tip half a turn to one turn.",
            "Set up as shown",
            "A reading is compared only with a limit for the same method, place, setup and force.",
        ),
        Round => tell(
            "Push, pull, read",
            "Push in, swing 5 times through a quarter turn, hold: bezel to zero. Pull out, swing 5 times, hold: read.",
            "Save the reading",
            "Three cycles show how far to trust the reading.",
        ),
        RigAgain => tell(
            "Set the base again",
            "Base off, wipe, set it on another spot of the knuckle. Push the knuckle: how far does the needle move?",
            "Save the answer",
            "The first set is too near the limit. A new setup tells the bearing from the base.",
        )
        .caution("Never on strut, shield, stand, fender."),
        Decide => tell(
            "Decision",
            "Read the decision and what it rests on.",
            "Save the decision",
            "No play does not clear a bearing. Noise and roughness count whatever the dial says.",
        )
        .now("Make the decision first, or end the job as left unfinished."),
        Agree => tell(
            "Customer's answer",
            "Show the customer this page: decision, reason, amount. Yes or no, and a signature.",
            "Customer approves",
            "Nothing is removed before this yes.",
        )
        .no("Customer declines")
        .now("Ask the customer, or leave the car and wait for the answer."),
        DeclinedPhoto => tell(
            "Photo: what stays",
            "One photo of the wheel end as it stays, before reassembly.",
            "Take the photo",
            "A dangerous repair was declined: it shows how it was left.",
        ),
        Wait => tell(
            "Waiting for approval",
            "Do not move it. Wheel on, lug nuts at spec, down; or on its jack stand, chocked, wheel under the car.",
            "Secured and left",
            "A customer not warned may drive off, and a car can move overnight on an unwatched jack stand.",
        )
        .caution("Pads out or caliper up: the brake pedal is dead. Tell the customer; take the key where you may."),
        TakeOver => tell(
            "Take over the car",
            "Compare the car with this list. Raised: stay out from under it, check chocks and jack stand, then shove it hard.",
            "As listed, firm",
            "What is loose is known from the list alone. What moved since is known from the shove alone.",
        )
        .no("Not as listed")
        .caution("If it moved: on the jack, chock again, set the jack stand again. Else put what differs on the loose list.")
        .now("Keep clear. Chock it, set the jack stand, shove it; put what differs on the loose list. Then answer again."),
        StudIn => tell(
            "New stud",
            "Old stud out of the flange. Draw the new one in with washers and a nut until its head seats. New nut with it.",
            "The new one is seated",
            "A stud that is not drawn in fully seats later, and its nut loses clamp.",
        )
        .caution("No hammer on the flange: it dents the bearing. The car stays on its jack stand.")
        .now("Seat the new stud before the wheel goes on."),
        LoosenAxleNut => tell(
            "Loosen axle nut",
            "Unstake. Wheel on, lug nuts snug, down until the tire grips. Break nut loose, raise, set the stand.",
            "Nut is loose",
            NUT_WHY,
        )
        .caution("Caliper clear of the wheel. Never full weight on this wheel. The car must not be rolled now.")
        .now(THIS_FIRST),
        StripNut => tell(
            "Axle nut off",
            "Wheel off, under the rocker panel. Axle nut off.",
            "Nut is off",
            NUT_WHY,
        )
        .now(THIS_FIRST),
        StripBrake => tell(
            "Brake off",
            "Caliper off, on a hanger. Bracket off, rotor off (jackscrew holes).",
            "Brake is off",
            "A hose that has carried a caliper can fail later, from the inside.",
        )
        .caution("The hose never carries the caliper. No hammer on the hub face. The pedal is dead: keep off it.")
        .now(THIS_FIRST),
        StripSensor => tell(
            "Free sensor wire",
            "Key off. Unplug the wire at its plug, open every clip.",
            "Wire is free",
            "A wire that is still clipped tears when the hub moves.",
        )
        .caution("Free it before the hub moves. Pull the plug, never the wire."),
        SensorPhoto => tell(
            "Photo: sensor wire",
            "One photo: the wire from hub to plug, its clips, the shield.",
            "Take the photo",
            "The wire goes back the way it was, clear of tire and rotor.",
        ),
        StripHub => tell(
            "Hub out",
            "Push the shaft out of the hub. Clean bolt threads, bolts out, hub off.",
            "Hub is out",
            "Blows on the axle shaft ruin its joint and thread.",
        )
        .caution(
            "No hammer on the shaft end. Support the shaft: hanging or pulled far, its joint comes apart. \
             Heat only well clear of sensor and boots.",
        )
        .now(THIS_FIRST),
        Compare => tell(
            "New next to old",
            "Lay the new hub next to the old one. Compare and answer each.",
            "All compared",
            "What is not alike here does not fit, or does not read, in the car.",
        )
        .now("Compare the new part with the old one before it is installed."),
        ComparePhoto => tell(
            "Photo: old and new",
            "One photo of the old and the new hub side by side.",
            "Take the photo",
            "It shows what came out and what went in.",
        ),
        Seat => tell(
            "Clean the seat",
            "Bore, seat, flange bright and dry. Rust film only as the manufacturer says.",
            "Seat is bright",
            "A speck of rust at the hub grows to several times that at the rotor.",
        )
        .caution("No grease on the faces."),
        Offer => tell(
            "Install the hub",
            "Shield on. Turn until splines mesh. Hub and bolts in by hand.",
            "In, bolts by hand",
            "A hub that needs force is cocked.",
        )
        .caution("No force on the splines. Threadlocker as the spec says.")
        .now("Seat the hub in the knuckle before you go on."),
        RouteSensor => tell(
            "Sensor wire back",
            "Wire into every clip, plug in until it clicks. At both locks it touches nothing.",
            "Wire is clipped in",
            "A wire that touches tire or rotor is soon worn through.",
        ),
        TurnHubBolts => tell(
            "Hub bolts",
            "Crosswise, by wrench, to spec. One tap for each.",
            CLICKED,
            "Bolts that pull unevenly bend the outer ring, and a bent ring makes noise.",
        )
        .caution(FIRST_CLICK),
        RotorOn => tell(
            "Rotor on",
            "Hat and flange bright. Rotor on its mark, flat under two lug nuts, washers.",
            "Rotor sits flat",
            "A rotor that does not sit flat makes the brake pulse later.",
        )
        .caution("No grease on the faces, none on the rotor."),
        BracketOn => tell(
            "Bracket on",
            "Bracket onto the knuckle, both bolts in by hand. Threadlocker as the spec says.",
            "Bolts in by hand",
            "A bolt started by hand is not cross-threaded.",
        ),
        TurnBracketBolts => tell(
            "Bracket bolts",
            "Each bolt by wrench to spec. One tap for each.",
            CLICKED,
            "These bolts carry the full braking force of the wheel.",
        )
        .caution(FIRST_CLICK),
        CaliperOn => tell(
            "Caliper on",
            "Pads in, caliper over the rotor, guide pin bolts by hand, then snug.",
            "Caliper is on",
            "The brake has to hold the rotor while the axle nut is tightened.",
        )
        .caution(DEAD),
        Pedal => tell(
            "Pump the pedal",
            "From the open door, by hand, pump until the pedal is firm. Hold it: it must not sink.",
            "Pedal is firm",
            "With the pistons back, the first press of the pedal goes to the floor.",
        )
        .no("Soft or sinks")
        .caution("No one inside a raised car. Electric parking brake: end service mode as the spec says.")
        .now(SOFT),
        NutOn => tell(
            "Axle nut on",
            "Clean, dry thread. Nut on by hand until it seats.",
            "Seated by hand",
            "A nut that turns hard by hand is cocked, or its thread is bad.",
        ),
        NutFirst => tell(
            "Nut: first stage",
            "In the air, brake held by the depressor: first stage, by wrench.",
            "First stage is on",
            "Some specs want only the final torque on the ground. The first stage seats the rings before.",
        )
        .caution("No one inside a raised car. No impact tool."),
        TurnAxleNut => tell(
            "Axle nut",
            "Brake held by depressor or from the door. Snug, torque, angle.",
            "Nut is at spec",
            FINAL_WHY,
        )
        .caution(FINAL_NUT),
        CaliperUpAgain => tell(
            "Caliper up again",
            "Depressor out. Lower guide pin bolt out, tie caliper up, pads out. Fixed caliper: off, on a hanger.",
            "Caliper is tied up",
            "Before and after are compared only when they were measured the same way.",
        )
        .caution("The pedal is dead again: keep off it. The hose never carries the caliper.")
        .now(CALIPER_FIRST),
        WheelOffAgain => tell(
            "Wheel off again",
            "Break lug nuts loose, raise, stand, shove. Wheel off, under the car.",
            "Off, on the stand",
            "The reading after needs the wheel and the pads off, as before.",
        )
        .caution("Never reach past a load that only the jack holds.")
        .now(WHEEL_FIRST),
        CaliperDown => tell(
            "Caliper down",
            "Pads in, caliper on bracket, guide pin bolts by hand, then snug.",
            "Caliper is on",
            "Reversed pads and pads off their clips show now.",
        )
        .caution(DEAD),
        TurnCaliperPins => tell(
            "Guide pin bolts",
            "Each bolt by wrench to spec. One tap for each.",
            CLICKED,
            "A guide pin bolt that backs out lets the caliper hit the wheel.",
        )
        .caution(FIRST_CLICK),
        Stake => tell(
            "Stake the nut",
            "The reading is taken. Stake the nut into its groove, or a new cotter, then the cap.",
            "Nut is staked",
            "Not before the reading: a staked nut that has to come off again is scrap.",
        )
        .caution("Never turn the nut back to meet a slot."),
        WheelOn => tell(
            "Wheel on",
            "Faces clean, wheel on its mark. All nuts in by hand, then snug in star order.",
            "All nuts are snug",
            "The wheel must sit flat before it carries weight.",
        )
        .caution("No oil or grease on studs and seats unless the spec says so."),
        Lower => tell(
            "Lower",
            "Raise off the jack stand; clear all from under the car; lower it onto its wheels.",
            "On its wheels",
            "No weight goes on a bearing whose nut is not at its torque.",
        )
        .caution("Only with the axle nut at spec, or never loosened. Chocks stay until the pedal is firm.")
        .now("Lower the car before it is handed over."),
        TurnLugNuts => tell(
            "Lug nuts",
            "Star order, by wrench, each to spec. One tap for each, then a paint mark.",
            CLICKED,
            "Most wheels that come off do so because their lug nuts lost clamp.",
        )
        .caution("Stop at the first click. An interrupted pass starts again at 1. One check pass after it, no more."),
        MishapPhoto => tell(
            "Photo: what went wrong",
            "One photo of the fastener and its thread as they are now.",
            "Take the photo",
            "More work needs approval: the photo shows why.",
        ),
        ProveSpin => tell(
            "Spin the hub",
            "Turn the hub by hand and listen. It must be free, smooth and quiet.",
            "Save the answer",
            "If the new part is rough or noisy, the job is not done.",
        ),
        ProvePedal => tell(
            "Pedal first",
            "Pump until the pedal is firm. Hold it: it must not sink.",
            "Pedal is firm",
            "The car moves only with a brake that holds.",
        )
        .no("Soft or sinks")
        .caution("The car does not move before this is answered with yes.")
        .now(SOFT),
        ProveWarningLights => tell(
            "Lights and sensor",
            "Key on: which lights stay on? Scan tool: all four wheel speeds at walking pace.",
            "Save the answer",
            "A light or a missing wheel speed now points to the wire, the plug or the new hub.",
        )
        .caution("Electric parking brake: out of service mode before the car moves.")
        .now("Check the warning lights before the car moves."),
        ProveRoad => tell(
            "Road test again",
            "First stops gentle, then the test loop.",
            "All answered",
            "A noise that is still there points to another corner or another part.",
        )
        .caution("Phone away while the car moves. Answer when it is parked."),
        ProveResult => tell(
            "Before and after",
            "Compare before and after: same method and place.",
            "Continue",
            "A new part out of spec: the job is not finished.",
        ),
        Clear => tell(
            "Before it moves",
            "Pedal firm: chocks, jack stands and jack out. Count the tools and look under the car.",
            "All clear",
            "What is left under a car is driven over.",
        )
        .caution("The chocks stay until the pedal is firm.")
        .now("Look under the car before it moves."),
        Tools => tell(
            "Nothing left behind",
            "Wheel-lock key back in the car; the old part shown or boxed.",
            "All there",
            "A key left in the van is missed at the roadside.",
        )
        .now("Check that the wheel-lock key is back in the car."),
        Retorque => tell(
            "Re-torque due",
            "Set date and distance and tell the customer both. Whichever comes first counts.",
            "Save the date",
            "Wheels settle. A torque check after some miles is what likely prevents lost wheels.",
        ),
        Sign => tell(
            "Signature",
            "Explain page one in a minute, then hand over the phone to sign.",
            "Save the signature",
            "It shows the customer has seen the page.",
        ),
        Report => tell(
            "Report and file",
            "Go through the report with the customer. Print or share it once the job has ended.",
            "Handed over",
            "The file holds every reading, so that another person can work it out again.",
        ),
        End => tell(
            "End of the job",
            "Choose how the job ends. With anything still loose it ends as left unfinished.",
            "End the job",
            "The ending says whether the car may be driven.",
        )
        .now("Say how the job ends: finished, or left unfinished."),
        LeftPhoto => tell(
            "Photo: as it is left",
            "One photo of the full corner as you leave it: jack stand, chocks, what is off.",
            "Take the photo",
            "Whoever comes next sees how it stood.",
        ),
        RetorqueDone => tell(
            "Re-torque result",
            "All lug nuts to spec by wrench. Was one of them loose?",
            "Save the answer",
            "A loose nut requires a check of seat, stud and wheel.",
        ),
        Comeback => tell(
            "Is it a comeback?",
            "Has this complaint come back? Which corner?",
            "Save the answer",
            "It shows whether the decision or the work was right.",
        ),
        SpecSpindleNut => kinds::CARD_SPINDLE_NUT,
        SpecLockNut => kinds::CARD_LOCK_NUT,
        SpecStrutBolts => kinds::CARD_STRUT_BOLTS,
        SpecBallJoint => kinds::CARD_BALL_JOINT,
        SpecTieRod => kinds::CARD_TIE_ROD,
        ReleaseBrake => kinds::RELEASE_BRAKE,
        ShoesBack => kinds::SHOES_BACK,
        DrumOff => kinds::DRUM_OFF,
        CapOff => kinds::CAP_OFF,
        LockFound => kinds::LOCK_FOUND,
        SpindleNutOff => kinds::SPINDLE_NUT_OFF,
        HubOff => kinds::HUB_OFF,
        StripKnuckle => kinds::STRIP_KNUCKLE,
        PullHub => kinds::PULL_HUB,
        SnapRingOut => kinds::SNAP_RING_OUT,
        PressOut => kinds::PRESS_OUT,
        TaperLook => kinds::TAPER_LOOK,
        RollersNew => kinds::ROLLERS_NEW,
        PackGrease => kinds::PACK_GREASE,
        SealIn => kinds::SEAL_IN,
        HubOn => kinds::HUB_ON,
        BoreLook => kinds::BORE_LOOK,
        EncoderPhoto => kinds::ENCODER_PHOTO,
        EncoderSide => kinds::ENCODER_SIDE,
        PressIn => kinds::PRESS_IN,
        SnapRingIn => kinds::SNAP_RING_IN,
        PressHub => kinds::PRESS_HUB,
        KnuckleOn => kinds::KNUCKLE_ON,
        TurnSpindleNut => kinds::TURN_SPINDLE_NUT,
        NutSlot => kinds::NUT_SLOT,
        LockNutOn => kinds::LOCK_NUT_ON,
        TurnLockNut => kinds::TURN_LOCK_NUT,
        TurnStrutBolts => kinds::TURN_STRUT_BOLTS,
        TurnBallJoint => kinds::TURN_BALL_JOINT,
        TurnTieRod => kinds::TURN_TIE_ROD,
        DrumOn => kinds::DRUM_ON,
        ShoesSet => kinds::SHOES_SET,
        SetBrake => kinds::SET_BRAKE,
        CapOn => kinds::CAP_ON,
        Alignment => kinds::ALIGNMENT,
    })
}
