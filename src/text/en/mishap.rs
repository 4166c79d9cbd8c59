//! What goes wrong with a fastener or a part, what else is off, and how a car is left.

use crate::job::car_state::{Leaving, Standing};
use crate::job::entry::{Interruption, Remark};
use crate::trade::fastening::MishapKind;
use crate::trade::vehicle::Fixing;

pub(in crate::text) const fn mishap(kind: MishapKind, fixing: Fixing) -> &'static str {
    match kind {
        MishapKind::Sheared if matches!(fixing, Fixing::Bolts) => "Bolt broke",
        MishapKind::Sheared => "Stud or bolt broke",
        MishapKind::ThreadCrossed => "Thread crossed",
        MishapKind::TurnsOn => "Turns, never tightens",
        MishapKind::WouldNotStart => "It would not start",
        MishapKind::ClickedEarly => "Clicked too early",
        MishapKind::LockKeyMissing => "Lock key missing",
        MishapKind::WrongSeat => "Wrong seat",
        MishapKind::BoltTooLong => "Bolt too long",
        MishapKind::Cracked => "Cracked",
        MishapKind::Seized => "Seized",
        MishapKind::Stuck => "Will not come out",
        MishapKind::Leaking => "Leaking",
        MishapKind::HoseTwisted => "Hose twisted",
        MishapKind::SensorBroken => "Sensor broken",
        MishapKind::SeatDamaged => "Spline, seat damaged",
        MishapKind::BoreWorn => "Knuckle bore worn",
        MishapKind::WrongPart => "Wrong part",
        MishapKind::DamagedPart => "New part damaged",
    }
}

pub(in crate::text) const fn mishap_say(kind: MishapKind, fixing: Fixing) -> &'static str {
    if let (Fixing::Bolts, Some(say)) = (fixing, bolt_say(kind)) {
        return say;
    }
    match kind {
        MishapKind::Sheared => {
            "Stop. A broken stud is replaced, with its nut. The neighbors of one that ran loose are replaced too. Never drive on one less."
        }
        MishapKind::ThreadCrossed => {
            "Stop, back it out by hand. A damaged thread is not cut again: new stud and nut, or new bolt and a sound thread."
        }
        MishapKind::TurnsOn => {
            "It turns and does not click: stop. Bolt or thread is giving way. Take it off; new stud and nut, or new bolt."
        }
        MishapKind::WouldNotStart => {
            "Back off, clean the thread, start by hand. Never force it with the wrench. If it still binds: new part."
        }
        MishapKind::ClickedEarly => {
            "Clicked before it seated: check thread, nut, wrench setting. Back it off, look, run it in by hand, start again. Early again: new part."
        }
        MishapKind::LockKeyMissing => {
            "Look in glove box, trunk and spare wheel with the customer. No key: do not turn it; removal costs time and a new nut."
        }
        MishapKind::WrongSeat => {
            "Stop. Cone, ball and flat seats do not mix: torque reads false, the wheel works loose. Use the seat the wheel requires."
        }
        MishapKind::Cracked => {
            "Stop here. A cracked flange, knuckle or stud means STOP: do not drive the car until the part is replaced."
        }
        MishapKind::BoltTooLong => {
            "Stop. It reaches what turns behind the flange. Compare with the old one; use the right length."
        }
        MishapKind::Seized => {
            "Stop before it rounds or shears. Clean the thread, soak it, six-point socket, steady pull. Heat only clear of boots, seals and hose."
        }
        MishapKind::Stuck => {
            "Clean and soak the seat, then push straight with the puller. No hammer on a hub or shaft that stays; heat only clear of boots and sensor."
        }
        MishapKind::Leaking => {
            "Stop. Find where it comes from, wipe it up, keep it off pads and rotor. Do not drive before it is dry and the pedal is firm."
        }
        MishapKind::HoseTwisted => {
            "Turn the caliper back until the hose hangs straight and touches nothing. A hose that is kinked or chafed is replaced."
        }
        MishapKind::SensorBroken => {
            "Do not pry at the ring. What stays in the bore comes out with the hub. Without a sensor ABS is off and its warning light is on."
        }
        MishapKind::SeatDamaged => {
            "Stop. Nothing is drawn together over a damaged spline or seat. Replace the part: hub, axle shaft or knuckle."
        }
        MishapKind::BoreWorn => {
            "Stop. A bore in which the bearing turns or rocks is not shimmed, punched or glued: new knuckle."
        }
        MishapKind::WrongPart => {
            "Do not install it. Keep it clean, in its box: it goes back. The car stays as it is, STOP, until the right part is here."
        }
        MishapKind::DamagedPart => {
            "Do not install it. Keep it with its box: it goes back. The car stays as it is, STOP, until a sound part is here."
        }
    }
}

/// What is said otherwise of a wheel that lug bolts hold: their thread is in the hub, and there is
/// no stud to replace (common practice, no source).
const fn bolt_say(kind: MishapKind) -> Option<&'static str> {
    Some(match kind {
        MishapKind::Sheared => {
            "Stop. A broken bolt is replaced and what is left of it taken out of its thread. The neighbors of one that ran loose are replaced too. Never drive on one less."
        }
        MishapKind::ThreadCrossed => {
            "Stop, back it out by hand. A damaged thread is not cut again: new bolt; a damaged thread in the hub means a new hub."
        }
        MishapKind::TurnsOn => {
            "It turns and does not click: stop. Bolt or thread is giving way. Take it off; new bolt, and a sound thread for it."
        }
        MishapKind::ClickedEarly => {
            "Clicked before it seated: check thread, length, wrench setting. Back it off, look, run it in by hand, start again. Early again: new part."
        }
        MishapKind::LockKeyMissing => {
            "Look in glove box, trunk and spare wheel with the customer. No key: do not turn it; removal costs time and a new bolt."
        }
        MishapKind::Cracked => {
            "Stop here. A cracked flange, knuckle or bolt means STOP: do not drive the car until the part is replaced."
        }
        // What is said of these names neither nut nor stud.
        MishapKind::WouldNotStart
        | MishapKind::WrongSeat
        | MishapKind::BoltTooLong
        | MishapKind::Seized
        | MishapKind::Stuck
        | MishapKind::Leaking
        | MishapKind::HoseTwisted
        | MishapKind::SensorBroken
        | MishapKind::SeatDamaged
        | MishapKind::BoreWorn
        | MishapKind::WrongPart
        | MishapKind::DamagedPart => return None,
    })
}

pub(in crate::text) const fn mishap_part(kind: MishapKind, fixing: Fixing) -> &'static str {
    let bolts = matches!(fixing, Fixing::Bolts);
    match kind {
        MishapKind::LockKeyMissing if bolts => "lock key, or plain bolt",
        MishapKind::WrongSeat if bolts => "bolt with the right seat",
        MishapKind::Cracked if bolts => "hub, knuckle or bolt",
        MishapKind::LockKeyMissing => "lock key, or plain nut",
        MishapKind::WrongSeat => "nut or bolt, right seat",
        MishapKind::BoltTooLong => "bolt of the right length",
        MishapKind::Cracked => "hub, knuckle, stud or bolt",
        MishapKind::WrongPart | MishapKind::DamagedPart => "hub or bearing",
        MishapKind::Stuck => "penetrating oil",
        MishapKind::Leaking => "caliper, hose or seal",
        MishapKind::HoseTwisted => "brake hose",
        MishapKind::SensorBroken => "wheel speed sensor",
        MishapKind::SeatDamaged => "hub, axle shaft or knuckle",
        MishapKind::BoreWorn => "knuckle",
        MishapKind::Sheared
        | MishapKind::ThreadCrossed
        | MishapKind::TurnsOn
        | MishapKind::WouldNotStart
        | MishapKind::Seized
        | MishapKind::ClickedEarly
            if bolts =>
        {
            "bolt, and hub where its thread is damaged"
        }
        MishapKind::Sheared
        | MishapKind::ThreadCrossed
        | MishapKind::TurnsOn
        | MishapKind::WouldNotStart
        | MishapKind::Seized
        | MishapKind::ClickedEarly => "stud and nut, or bolt",
    }
}

pub(in crate::text) const fn remark(remark: Remark) -> &'static str {
    match remark {
        Remark::WillNotGo => "It won't go",
        Remark::RefusedToSign => "Refused to sign",
        Remark::ClickedEarly => mishap(MishapKind::ClickedEarly, Fixing::Nuts),
        Remark::WouldNotStart => mishap(MishapKind::WouldNotStart, Fixing::Nuts),
        Remark::NoRoom => "No photo: the phone's storage was full.",
    }
}

pub(in crate::text) fn mishap_line(item: &str, what: &str, part: &str, minutes: u16) -> String {
    let part = if part.is_empty() {
        String::new()
    } else {
        format!("; part: {part}")
    };
    format!("{item}: {what}{part}; {minutes} min more")
}

/// What is done once the customer approved, or at once where the customer is not asked.
pub(in crate::text) const fn fix_now(kind: MishapKind, part: bool) -> &'static str {
    match kind {
        MishapKind::WrongPart | MishapKind::DamagedPart => {
            "The job is held, the car stays at STOP. Go on here once the right part has come."
        }
        MishapKind::HoseTwisted => "Straighten it now",
        _ if part => {
            "The customer approved. Replace the part; what else comes off goes on the loose list."
        }
        _ => {
            "The customer approved. Install the part, start it by hand. Then re-torque the full set."
        }
    }
}

pub(in crate::text) const fn interruption(why: Interruption) -> &'static str {
    match why {
        Interruption::Call => "A call",
        Interruption::Rain => "Rain",
        Interruption::Dark => "Too dark",
        Interruption::Part => "Waiting for a part",
        Interruption::Other => "Something else",
    }
}

pub(in crate::text) const fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::OnWheel => "On its wheel",
        Standing::OnStand => "On its jack stand",
        Standing::NotProved => "Raised, not shoved",
    }
}

pub(in crate::text) const fn leaving(leaving: Leaving) -> &'static str {
    match leaving {
        Leaving::Raised => {
            "Key out. Keep everyone out of the car and from under it. Chocks, jack stand and the wheel under the car stay. Do not drive."
        }
        Leaving::Loose => {
            "Do not drive: something is loose. Key out, parking brake on, chocks stay."
        }
        Leaving::Closed => "On its wheels, nothing loose. Key out, parking brake on.",
    }
}

pub(in crate::text) const fn no_adapter() -> &'static str {
    "Without an adapter"
}

pub(in crate::text) fn found_loose(count: u8) -> String {
    match count {
        0 => "None was loose".to_owned(),
        1 => "One was loose, re-torqued".to_owned(),
        more => format!("{more} were loose, re-torqued"),
    }
}

pub(in crate::text) fn who_when(who: &str, when: &str) -> String {
    if who.is_empty() {
        when.to_owned()
    } else {
        format!("{who}, {when}")
    }
}
