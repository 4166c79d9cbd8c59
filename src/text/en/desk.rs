//! The words of Pack, the cards and the settings.

use crate::job::kit::KitSlip;
use crate::job::typed_card::CardSlip;
use crate::text::{Desk, Lang, desk};
use crate::trade::fastening::calibration::CheckDue;
use crate::trade::fastening::card::CardFault;
use crate::trade::fastening::{Misfit, ThreadSlip};
use crate::trade::money::{AmountSlip, EstimateFault};
use crate::trade::vehicle::{CheckDigit, Fixing, ParkingBrake, Power, VinError};
use crate::units::DecimalSlip;

pub(in crate::text) fn fixing(fixing: Fixing) -> &'static str {
    match fixing {
        Fixing::Nuts => "Nuts on studs",
        Fixing::Bolts => "Bolts",
    }
}

pub(in crate::text) fn power(power: Power) -> &'static str {
    match power {
        Power::Combustion => "Engine",
        Power::Hybrid => "Hybrid",
        Power::Electric => "Electric",
    }
}

pub(in crate::text) fn parking_brake(brake: ParkingBrake) -> &'static str {
    match brake {
        ParkingBrake::Front => "Front wheels",
        ParkingBrake::Rear => "Rear wheels",
        ParkingBrake::Electric => "Electric, rear",
    }
}

pub(in crate::text) fn vin_check(check: CheckDigit) -> String {
    match check {
        CheckDigit::Passes => "The check digit is right.".to_owned(),
        CheckDigit::Differs { expected } => format!(
            "The check digit would be {expected}. Outside North America that can be right: compare again."
        ),
    }
}

pub(in crate::text) fn vin_error(error: VinError) -> String {
    match error {
        VinError::Length { found } => {
            format!("A VIN has 17 characters; this has {found}.")
        }
        VinError::Character { at, found } => {
            format!("A VIN never has \"{found}\" (place {at}).")
        }
    }
}

pub(in crate::text) fn decimal_slip(slip: DecimalSlip) -> String {
    match slip {
        DecimalSlip::Empty => "Type the number.".to_owned(),
        DecimalSlip::NoDigit => "There is no digit in it.".to_owned(),
        DecimalSlip::TwoSeparators => {
            "Two separators: leave out those between thousands.".to_owned()
        }
        DecimalSlip::Exponent => "Write it without an exponent.".to_owned(),
        DecimalSlip::SpaceInside => "There is a space between the digits.".to_owned(),
        DecimalSlip::SignInside => "The sign belongs in front.".to_owned(),
        DecimalSlip::NotADigit { found } => format!("\"{found}\" is no digit."),
        DecimalSlip::TooLong { digits } => format!("{digits} digits are too many."),
    }
}

pub(in crate::text) fn estimate_fault(fault: EstimateFault) -> String {
    match fault {
        EstimateFault::Empty => "There is no line yet.".to_owned(),
        EstimateFault::Quantity { line } => {
            format!("Line {line}: the quantity must be above zero.")
        }
        EstimateFault::Tax => "The tax lies between 0 and 100 percent.".to_owned(),
        EstimateFault::BelowNothing => "The lines come to less than nothing.".to_owned(),
        EstimateFault::TooLarge => "That is more than an amount can be.".to_owned(),
    }
}

pub(in crate::text) fn amount_slip(slip: AmountSlip) -> String {
    match slip {
        AmountSlip::NoNumber(slip) => decimal_slip(slip),
        AmountSlip::Negative => "An amount is not below zero.".to_owned(),
        AmountSlip::TooFine { digits: 0 } => "This currency has no smaller unit.".to_owned(),
        AmountSlip::TooFine { digits } => {
            format!("This currency has {digits} digits behind the mark.")
        }
        AmountSlip::TooLarge => "The amount is too large.".to_owned(),
    }
}

pub(in crate::text) fn card_slip(slip: CardSlip) -> String {
    match slip {
        CardSlip::Value(slip) => decimal_slip(slip),
        CardSlip::Angle(DecimalSlip::Empty) => {
            "Type the angle, or say that there is none.".to_owned()
        }
        CardSlip::Angle(slip) => decimal_slip(slip),
        CardSlip::Further(nth, slip) => format!("Further stage {nth}: {}", decimal_slip(slip)),
        CardSlip::Count => "How many: a whole number, or leave it empty.".to_owned(),
        CardSlip::Thread(slip) => thread_slip(slip).to_owned(),
        CardSlip::Fault(fault) => card_fault(fault).to_owned(),
    }
}

fn thread_slip(slip: ThreadSlip) -> &'static str {
    match slip {
        ThreadSlip::NotAThread => "Write the thread as M12x1.5 or 1/2-20, or leave it empty.",
        ThreadSlip::NoPitch => "The thread lacks its pitch: M12x1.5, or 1/2-20.",
        ThreadSlip::OutOfRange => "No fastener here has such a thread.",
    }
}

fn card_fault(fault: CardFault) -> &'static str {
    match fault {
        CardFault::WrongKind => "This value belongs to another spec.",
        CardFault::NoTorqueFirst => "A turn on or back needs a torque before it.",
        CardFault::NotAboveZero { .. } => "The value must be above zero.",
        CardFault::NegativeLimit => "A limit is not below zero.",
        CardFault::NoPosition => "Say how the hub is held for the last torque.",
        CardFault::NoSource => "Name the document and who looked it up.",
        CardFault::NoReason => "Say why it was not found.",
    }
}

pub(in crate::text) fn kit_slip(slip: KitSlip) -> String {
    match slip {
        KitSlip::NoName => "Give the wrench a name.".to_owned(),
        KitSlip::Number(slip) => decimal_slip(slip),
        KitSlip::Range => "The lower mark must be above zero and below the upper one.".to_owned(),
        KitSlip::Day => desk(Lang::English, Desk::DateHint).to_owned(),
        KitSlip::Share => "Two whole numbers up to 100, the lower one first.".to_owned(),
        KitSlip::Dial(_) => {
            "A division is at most 1 mm, and a turn has 10 to 1000 divisions.".to_owned()
        }
    }
}

pub(in crate::text) fn doubted(value: &str, low: &str, high: &str, fits: &[String]) -> String {
    let base = format!(
        "{value} is far from the usual for this ({low} to {high}; common practice, no source). Read the page again."
    );
    match fits {
        [] => base,
        fits => format!(
            "{base} The same digits would be usual in {}.",
            fits.join(" or ")
        ),
    }
}

pub(in crate::text) fn wrench_checked(day: &str, clicks: u32) -> String {
    if day.is_empty() {
        format!("{clicks} clicks counted")
    } else {
        format!("checked {day}, {clicks} clicks since")
    }
}

pub(in crate::text) fn check_due(due: CheckDue) -> String {
    match due {
        CheckDue::Day(day) => format!("Check due since {day} (ISO 6789-1: twelve months)"),
        CheckDue::Clicks(clicks) => {
            format!("Check due: {clicks} clicks (ISO 6789-1: 5000)")
        }
        CheckDue::Unknown => "Last check unknown".to_owned(),
    }
}

pub(in crate::text) fn misfit(item: &str, value: &str, why: Misfit) -> String {
    let why = match why {
        Misfit::NoWrench => "there is no wrench in the van kit",
        Misfit::AllTooLarge { .. } => "every van wrench is too large",
        Misfit::AllTooSmall { .. } => "every van wrench ends below it",
        Misfit::BetweenWrenches { .. } => "it lies between the van's wrenches",
    };
    format!("{item}, {value}: {why}")
}

pub(in crate::text) fn from_page(document: &str, page: &str, date: &str) -> String {
    if page.is_empty() {
        format!("{document}, looked up {date}")
    } else {
        format!("{document}, page {page}, looked up {date}")
    }
}

pub(in crate::text) fn practice_document() -> (&'static str, &'static str) {
    ("Practice sheet, invented values in N·m and mm", "1")
}
