//! The words of Pack, the specs and the settings.

use super::count;
use crate::job::kit::KitError;
use crate::job::typed_spec::SpecInputError;
use crate::text::{Desk, Lang, desk};
use crate::trade::fastening::calibration::CheckDue;
use crate::trade::fastening::spec::SpecError;
use crate::trade::fastening::{Settled, ThreadError, WrenchError};
use crate::trade::money::{AmountError, EstimateError};
use crate::trade::vehicle::{CheckDigit, Fixing, ParkingBrake, Power, VinError};
use crate::units::DecimalError;

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

pub(in crate::text) fn decimal_slip(slip: DecimalError) -> String {
    match slip {
        DecimalError::Empty => "Type the number.".to_owned(),
        DecimalError::NoDigit => "There is no digit in it.".to_owned(),
        DecimalError::TwoSeparators => {
            "Two separators: leave out those between thousands.".to_owned()
        }
        DecimalError::Exponent => "Write it without an exponent.".to_owned(),
        DecimalError::SpaceInside => "There is a space between the digits.".to_owned(),
        DecimalError::SignInside => "The sign belongs in front.".to_owned(),
        DecimalError::NotADigit { found } => format!("\"{found}\" is no digit."),
        DecimalError::TooLong { digits } => format!("{digits} digits are too many."),
    }
}

pub(in crate::text) fn estimate_fault(fault: EstimateError) -> String {
    match fault {
        EstimateError::Empty => "There is no line yet.".to_owned(),
        EstimateError::Quantity { line } => {
            format!("Line {line}: the quantity must be above zero.")
        }
        EstimateError::Tax => "The tax lies between 0 and 100 percent.".to_owned(),
        EstimateError::BelowNothing => "The lines come to less than nothing.".to_owned(),
        EstimateError::TooLarge => "That is more than an amount can be.".to_owned(),
    }
}

pub(in crate::text) fn amount_slip(slip: AmountError) -> String {
    match slip {
        AmountError::NoNumber(slip) => decimal_slip(slip),
        AmountError::Negative => "An amount is not below zero.".to_owned(),
        AmountError::TooFine { digits: 0 } => "This currency has no smaller unit.".to_owned(),
        AmountError::TooFine { digits } => {
            format!("This currency has {digits} digits behind the mark.")
        }
        AmountError::TooLarge => "The amount is too large.".to_owned(),
    }
}

pub(in crate::text) fn spec_slip(slip: SpecInputError) -> String {
    match slip {
        SpecInputError::Value(slip) => decimal_slip(slip),
        SpecInputError::Angle(DecimalError::Empty) => {
            "Type the angle, or say that there is none.".to_owned()
        }
        SpecInputError::Angle(slip) => decimal_slip(slip),
        SpecInputError::Further(nth, slip) => {
            format!("Further stage {nth}: {}", decimal_slip(slip))
        }
        SpecInputError::Count => "How many: a whole number, or leave it empty.".to_owned(),
        SpecInputError::Thread(slip) => thread_slip(slip).to_owned(),
        SpecInputError::Fault(fault) => spec_fault(fault).to_owned(),
    }
}

fn thread_slip(slip: ThreadError) -> &'static str {
    match slip {
        ThreadError::NotAThread => "Write the thread as M12x1.5 or 1/2-20, or leave it empty.",
        ThreadError::NoPitch => "The thread lacks its pitch: M12x1.5, or 1/2-20.",
        ThreadError::OutOfRange => "No fastener here has such a thread.",
    }
}

fn spec_fault(fault: SpecError) -> &'static str {
    match fault {
        SpecError::WrongKind => "This value belongs to another spec.",
        SpecError::NoTorqueFirst => "A turn on or back needs a torque before it.",
        SpecError::NotAboveZero { .. } => "The value must be above zero.",
        SpecError::EmptyWindow => "The least play lies above zero and below the most.",
        SpecError::NegativeLimit => "A limit is not below zero.",
        SpecError::NoPosition => "Say how the hub is held for the last torque.",
        SpecError::NoSource => "Name the document and who looked it up.",
        SpecError::NoReason => "Say why it was not found.",
    }
}

pub(in crate::text) fn kit_slip(slip: KitError) -> String {
    match slip {
        KitError::NoName => "Give the wrench a name.".to_owned(),
        KitError::Number(slip) => decimal_slip(slip),
        KitError::Range => "The lower mark must be above zero and below the upper one.".to_owned(),
        KitError::Day => desk(Lang::English, Desk::DateHint).to_owned(),
        KitError::Share => "Two whole numbers up to 100, the lower one first.".to_owned(),
        KitError::Dial(_) => {
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
            "{base} The same digits would be usual in: {}.",
            fits.join(", ")
        ),
    }
}

pub(in crate::text) fn wrench_checked(day: &str, clicks: u32) -> String {
    let clicks = count(clicks.try_into().unwrap_or(usize::MAX), "click", "clicks");
    if day.is_empty() {
        format!("{clicks} counted")
    } else {
        format!("checked {day}, {clicks} since")
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

pub(in crate::text) fn misfit(item: &str, value: &str, why: WrenchError) -> String {
    let why = match why {
        WrenchError::NoWrench => "there is no wrench in the van kit",
        WrenchError::AllTooLarge { .. } => "every van wrench is too large",
        WrenchError::AllTooSmall { .. } => "every van wrench ends below it",
        WrenchError::BetweenWrenches { .. } => "it lies between the van's wrenches",
    };
    format!("{item}, {value}: {why}")
}

pub(in crate::text) const fn settled(settled: Settled) -> &'static str {
    match settled {
        Settled::ReadTwice => "Read twice, printed so",
        Settled::SecondDocument => "A second document agrees",
        Settled::AskedManufacturer => "Asked manufacturer",
    }
}

pub(in crate::text) fn override_reason(reason: &str) -> String {
    match Settled::from_code(reason) {
        Some(code) => format!("Doubted, saved: {}", settled(code)),
        None => format!("Doubted, saved: {reason}"),
    }
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
