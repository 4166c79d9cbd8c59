//! The words of the report: plain for the customer on page one, exact on the pages after it.

use super::words;
use crate::job::Repair;
use crate::trade::play::Decision;
use crate::trade::vehicle::{Corner, Fixing};
use crate::trade::wheel_end::Choice;

pub(in crate::text) fn repaired_customer(corner: Corner, repair: Repair) -> String {
    let corner = words::corner(corner);
    let Repair::Set(new) = repair else {
        return format!("We replaced the {corner} wheel bearing.");
    };
    let rollers = match new {
        Some(Choice::RenewedBoth) => "Both roller bearings in it are new.",
        Some(Choice::RenewedOuter) => {
            "The outer roller bearing in it is new; the inner one was sound."
        }
        Some(Choice::RenewedInner) => {
            "The inner roller bearing in it is new; the outer one was sound."
        }
        Some(Choice::RenewedNone) => "Its roller bearings were sound and were not replaced.",
        _ => "Which of its roller bearings are new was not recorded.",
    };
    format!(
        "We opened and cleaned the {corner} wheel bearing, packed it with grease, put in a new seal and set it by its nut. {rollers}"
    )
}

pub(in crate::text) fn put_back_customer(corner: Corner) -> String {
    format!(
        "We inspected the {} wheel bearing and put everything back.",
        words::corner(corner)
    )
}

pub(in crate::text) fn recheck_customer(corner: Corner, date: &str) -> String {
    format!(
        "Have the {} wheel bearing checked again no later than {date}.",
        words::corner(corner)
    )
}

pub(in crate::text) fn consent_line(scope: &str, how: &str, name: &str, time: &str) -> String {
    let parts = [how, name, time];
    let said: Vec<&str> = parts.into_iter().filter(|it| !it.is_empty()).collect();
    format!("{scope}: {}", said.join(", "))
}

pub(in crate::text) fn source_line(document: &str, page: &str, date: &str, who: &str) -> String {
    if page.is_empty() {
        return format!("{document}, looked up {date} by {who}");
    }
    format!("{document}, page {page}, looked up {date} by {who}")
}

pub(in crate::text) fn was_found_customer(decision: Decision) -> &'static str {
    match decision {
        Decision::Keep => "Before the work, no fault was found in this wheel bearing.",
        Decision::Watch => "Before the work, this wheel bearing had to be watched.",
        Decision::Replace => "Before the work, this wheel bearing failed our check.",
        Decision::Stop => "Before the work, this car was not safe to drive.",
    }
}

pub(in crate::text) fn steps_not_done_customer(n: usize) -> String {
    match n {
        1 => "1 step of the work was not done. It is named on the technician's pages.".to_owned(),
        _ => format!(
            "{n} steps of the work were not done. They are named on the technician's pages."
        ),
    }
}

pub(in crate::text) fn foot(job: &str, digest: &str) -> String {
    if digest.is_empty() {
        return format!("Job {job}");
    }
    format!("Job {job} · digest {digest}")
}

/// What the customer has checked after a wheel was off.
const fn lug_torque(fixing: Fixing) -> &'static str {
    match fixing {
        Fixing::Nuts => "Have the lug-nut torque checked",
        Fixing::Bolts => "Have the lug-bolt torque checked",
    }
}

pub(in crate::text) fn retorque_customer(
    fixing: Fixing,
    distance: Option<&str>,
    odometer: Option<&str>,
    date: Option<&str>,
) -> String {
    let mut say = lug_torque(fixing).to_owned();
    say.extend(distance.map(|distance| format!(" after {distance},")));
    say.extend(odometer.map(|odometer| format!(" when the odometer shows {odometer},")));
    match date {
        Some(date) => say + &format!(" no later than {date}."),
        None => say + ". No date was set for it. Ask for one.",
    }
}

pub(in crate::text) const fn retorque_why(fixing: Fixing) -> &'static str {
    match fixing {
        Fixing::Nuts => {
            "A wheel that has been off can settle and its lug nuts lose clamp. Loose lug nuts can let a wheel come off."
        }
        Fixing::Bolts => {
            "A wheel that has been off can settle and its lug bolts lose clamp. Loose lug bolts can let a wheel come off."
        }
    }
}
