//! The words of Pack, the cards and the settings.

use crate::job::kit::KitSlip;
use crate::job::typed_card::CardSlip;
use crate::text::desk::Desk;
use crate::trade::fastening::Misfit;
use crate::trade::fastening::card::CardFault;
use crate::trade::money::AmountSlip;
use crate::trade::vehicle::{CheckDigit, Fixing, ParkingBrake, Power, VinError};
use crate::units::DecimalSlip;

pub(in crate::text) fn desk(desk: Desk) -> &'static str {
    match desk {
        Desk::DialDue => "Dial to be checked by (year-month-day)",
        Desk::KeepDay => "Keep the day",
        Desk::BookingNothing => "Nothing is pasted yet.",
        Desk::Families => "Cards are kept for",
        Desk::FamilyHint => "Year, body, engine, drive: 2016 compact, 1.6, front drive",
        Desk::OtherCount => "Other",
        Desk::ThenAngle => "Then an angle",
        Desk::NoAngle => "No angle",
        Desk::AngleDegrees => "Angle after the torque, degrees",
        Desk::Conditions => "New, dry, threadlocker…",
        Desk::HowMeasured => "How it is measured",
        Desk::From => "From",
        Desk::ChangeSource => "Change the source",
        Desk::KeepAsPrinted => "Keep as printed",
        Desk::OtherValue => "Another value",
        Desk::BackToValue => "Back to the value",
        Desk::NotInDocument => "Not in the document",
        Desk::NoAccess => "No access to the document",
        Desk::NotListed => "This vehicle is not listed",
        Desk::ByHand => "By hand",
        Desk::NoRig => "The page names none",
        Desk::Setup => "What is off the car",
        Desk::PagePictured => "A picture of the page is kept.",
        Desk::PagesNotPictured => "No picture of the page",
        Desk::CardsNotFound => "Cards not found",
        Desk::Storage => "Storage",
        Desk::WrenchesFit => "Every card has a wrench that fits.",
        Desk::NoWrenchOnBoard => "There is no wrench in the van kit.",
        Desk::KitCarried => "The wrenches and the dial of the van kit go with this job.",
        Desk::OnBoard => "On board",
        Desk::Missing => "Missing",
        Desk::English => "English",
        Desk::DialHundredth => "0.01 mm",
        Desk::DialThou => "0.001 in",
        Desk::DialHalfThou => "0.0005 in",
        Desk::DialOther => "Another dial",
        Desk::KeepDial => "Keep the dial",
        Desk::DivisionUnit => "Unit of the division",
        Desk::WrenchRange => "From a fifth of its full scale up a wrench is used here.",
        Desk::KitNoName => "Give the wrench a name.",
        Desk::KitRange => "The lower mark must be above zero and below the upper one.",
        Desk::KitDial => "A division is at most 1 mm, and a turn has 10 to 1000 divisions.",
        Desk::StorageUnknown => "This browser does not tell how much room there is.",
        Desk::DateHint => "Year, month, day: 2026-03-31",
        Desk::CurrencyHint => "Three letters: USD, EUR, GBP",
    }
}

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
        CardSlip::Fault(fault) => card_fault(fault).to_owned(),
    }
}

fn card_fault(fault: CardFault) -> &'static str {
    match fault {
        CardFault::WrongKind => "This figure belongs to another card.",
        CardFault::NoTorqueFirst => "An angle needs a torque before it.",
        CardFault::NotAboveZero { .. } => "The value must be above zero.",
        CardFault::LowerThanBefore { .. } => "A later torque is lower than the one before it.",
        CardFault::NegativeLimit => "A limit is not below zero.",
        CardFault::NoPosition => "Say how the hub is held for the last torque.",
        CardFault::NoSource => "Name the document and who looked it up.",
        CardFault::NoReason => "Say why it was not found.",
    }
}

pub(in crate::text) fn kit_slip(slip: KitSlip) -> String {
    match slip {
        KitSlip::NoName => desk(Desk::KitNoName).to_owned(),
        KitSlip::Number(slip) => decimal_slip(slip),
        KitSlip::Range => desk(Desk::KitRange).to_owned(),
        KitSlip::Dial(_) => desk(Desk::KitDial).to_owned(),
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

pub(in crate::text) fn misfit(item: &str, value: &str, why: Misfit) -> String {
    let why = match why {
        Misfit::NoWrench => "there is no wrench in the van kit",
        Misfit::AllTooLarge { .. } => "every wrench on board is too large",
        Misfit::AllTooSmall { .. } => "every wrench on board ends below it",
        Misfit::BetweenWrenches { .. } => "it lies between the wrenches on board",
    };
    format!("{item}, {value}: {why}")
}

pub(in crate::text) fn wrench_for(item: &str, value: &str, wrench: &str) -> String {
    format!("{item}, {value}: {wrench}")
}

pub(in crate::text) fn wrench_range(name: &str, low: &str, high: &str) -> String {
    format!("{name}, {low} to {high}")
}

pub(in crate::text) fn dial_is(division: &str, turn: u32, kind: &str) -> String {
    format!("{division} a division, {turn} a turn, {kind}")
}

pub(in crate::text) fn from_page(document: &str, page: &str, date: &str) -> String {
    if page.is_empty() {
        format!("{document}, looked up {date}")
    } else {
        format!("{document}, page {page}, looked up {date}")
    }
}

pub(in crate::text) fn order_of_work(nth: usize) -> String {
    format!("{nth}.")
}

pub(in crate::text) fn amount_in(label: &str, currency: &str) -> String {
    format!("{label}, {currency}")
}

pub(in crate::text) fn practice_document() -> (&'static str, &'static str) {
    ("Practice sheet, invented figures in N·m and mm", "1")
}
