//! The words of Pack, the cards and the settings.

use crate::job::kit::KitSlip;
use crate::job::typed_card::CardSlip;
use crate::text::desk::Desk;
use crate::trade::fastening::calibration::CheckDue;
use crate::trade::fastening::card::CardFault;
use crate::trade::fastening::{Misfit, ThreadSlip};
use crate::trade::money::{AmountSlip, EstimateFault};
use crate::trade::vehicle::{CheckDigit, Fixing, ParkingBrake, Power, VinError};
use crate::units::DecimalSlip;

pub(in crate::text) fn desk(desk: Desk) -> &'static str {
    match desk {
        Desk::DialDue => "Dial to be checked by (year-month-day)",
        Desk::KeepDay => "Keep the day",
        Desk::DialError => "Largest error in the dial's certificate, either way",
        Desk::KeepError => "Keep the error",
        Desk::ErrorSlip => {
            "An error is a number above zero; the field is empty where there is no certificate."
        }
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
        Desk::ReadTwice => "Read twice, printed so",
        Desk::SecondDocument => "A second document agrees",
        Desk::AskedMaker => "Asked the maker",
        Desk::MoreStages => "More stages, thread, count…",
        Desk::SeatedFirst => "First until it sits",
        Desk::AddTorque => "+ torque",
        Desk::AddAngle => "+ angle",
        Desk::AddBack => "+ back",
        Desk::TakeStageOut => "Take the last one out",
        Desk::FurtherTorque => "then to",
        Desk::FurtherAngle => "then on by, degrees",
        Desk::FurtherBack => "then back by, degrees; empty: until it is loose",
        Desk::Count => "How many",
        Desk::Thread => "Thread: M12x1.5 or 1/2-20",
        Desk::Class => "Class on the head",
        Desk::PatternLegend => "Order on the page",
        Desk::NotSaid => "Not said",
        Desk::ThreadlockerGrade => "Threadlocker's grade",
        Desk::Adapter => "Adapter",
        Desk::LeverWrench => "Wrench: middle of the grip to its square",
        Desk::LeverAdapter => "Adapter: square to fastener",
        Desk::LeverAngle => "Degrees between them: 0 straight on, 90 changes nothing",
        Desk::LeverUnit => "Unit of the lengths",
        Desk::LeverNoLength => "The wrench has a length above zero, the adapter none below.",
        Desk::LeverNotLonger => {
            "Folded back past the grip: no setting. Turn the adapter, or take a longer wrench."
        }
        Desk::LeverOutOfRange => {
            "With the adapter this wrench would be set outside its range. Turn the adapter to 90 degrees."
        }
        Desk::AlsoOff => "Also off: add it",
        Desk::AlsoName => "What it is: hose bracket, undertray clip 3",
        Desk::AlsoTorque => "Its torque, if it has a card",
        Desk::AtCorner => "At which corner",
        Desk::PutOnList => "Put it on the list",
        Desk::BackInPlace => "Back in place",
        Desk::AtItsCard => "At its card",
        Desk::WrenchMark => "Finest mark on it, if known",
        Desk::WrenchChecked => "Last checked: 2026-03-31",
        Desk::WrenchClicks => "Clicks since then, before this phone",
        Desk::WrenchChecks => "Wrenches to be checked",
        Desk::ShareTitle => "Share of a wrench's range",
        Desk::ShareLow => "From, percent of full scale",
        Desk::ShareHigh => "To, percent of full scale",
        Desk::Stands => "Stands",
        Desk::AddStand => "Add a stand",
        Desk::StandName => "Name of the stand",
        Desk::StandRating => "One of them carries",
        Desk::StandUnit => "Unit of the rating",
        Desk::RemoveStand => "Remove the stand",
        Desk::AngleGauge => "Angle gauge on board",
        Desk::OtherDials => "Dials on board",
        Desk::LayDialBy => "Keep this dial beside others",
        Desk::FirstTitle => "Before the first job",
        Desk::FirstSay => {
            "Your name and the shop's appear on every report. Your torque wrenches decide which torques you can set."
        }
        Desk::FirstWrenches => "Add each torque wrench in the van. No wrench is assumed.",
        Desk::FirstStart => "Save and start",
        Desk::FirstLater => "Not now",
        Desk::ShopName => "Shop's name",
        Desk::NoWrenchKnown => "No wrench is known yet. Enter yours in the van kit.",
        Desk::NoWrenchKnownSay => "No wrench is known.",
        Desk::TakeWrenches => "Use the van's wrenches now",
        Desk::AskWithoutPrice => "Ask without a price",
        Desk::SavePrice => "Save the price",
        Desk::NoWrenchNoLeaving => "No wrench on board fits a card. Do not leave like this.",
        Desk::LeaveWithout => "Leave without it",
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
        Desk::KitShare => "Two whole numbers up to 100, the lower one first.",
        Desk::KitDial => "A division is at most 1 mm, and a turn has 10 to 1000 divisions.",
        Desk::StorageUnknown => "This browser does not tell how much room there is.",
        Desk::DateHint => "Year, month, day: 2026-03-31",
        Desk::CurrencyHint => "Three letters: USD, EUR, GBP",
        Desk::BillTitle => "Price and payment",
        Desk::BillLines => "The repair in lines",
        Desk::BillHint => {
            "Lines are added up, with the tax of the settings; the sum becomes the price."
        }
        Desk::LastLines => "The lines of the last job",
        Desk::NextLine => "Next line",
        Desk::Taxed => "Tax is added",
        Desk::KeepLine => "Keep the line",
        Desk::RemoveLine => "Take away",
        Desk::InLines => "Write it out in lines",
        Desk::BillPayment => "Invoice and payment",
        Desk::StillToPay => "Still to pay",
        Desk::GiveInvoice => "Give the invoice its number",
        Desk::VanMarkNeeded => "An invoice number begins with this van's letters: see Settings.",
        Desk::VanMark => "Letters of this van",
        Desk::OnTheReport => "Printed on every report; empty for nothing.",
        Desk::VanMarkHint => {
            "One to three, no other van has them: two phones never give one number."
        }
        Desk::TaxPercent => "Tax, percent",
        Desk::TaxHint => "As your tax office has it; empty for none.",
        Desk::TaxRounded => "Tax is rounded",
        Desk::PartNumber => "Part number",
        Desk::PartLot => "Lot or date code",
        Desk::KeepPart => "Keep the part",
        Desk::YardTitle => "Yard",
        Desk::YardNothing => "Nothing is due, nothing waits.",
        Desk::YardOverdue => "Wheel nuts overdue",
        Desk::YardDue => "Wheel nuts to check",
        Desk::YardDeclined => "Said no to a STOP",
        Desk::YardUnfinished => "Left unfinished",
        Desk::YardRecheck => "To be looked at again",
        Desk::YardWaiting => "Waiting for a yes",
        Desk::YardUnpaid => "Not paid",
        Desk::YardParts => "Parts, and what came back",
        Desk::YardPartsSay => {
            "The share that comes back lies between the two ends, at 95 percent. Few jobs say little: the ends lie far apart."
        }
        Desk::PartAndLot => "Part and lot",
        Desk::FittedOn => "Fitted",
        Desk::CameBack => "Came back",
        Desk::ShareHead => "Share",
        Desk::StandsOut => "Stands out",
        Desk::Call => "Call",
        Desk::Write => "Write",
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

pub(in crate::text) fn counted(title: &str, n: usize) -> String {
    format!("{title} ({n})")
}

pub(in crate::text) fn of_asked(n: usize, asked: usize) -> String {
    format!("{n} of {asked}")
}

pub(in crate::text) fn share_between(low: &str, high: &str) -> String {
    format!("{low} to {high}")
}

pub(in crate::text) fn retorque_message(plate: &str, date: &str) -> String {
    format!(
        "A wheel was off your car {plate}. The lug-nut torque must be checked by {date}. What time works for you?"
    )
}

pub(in crate::text) fn above_agreed(agreed: &str) -> String {
    format!("The owner said yes to {agreed}. More needs a further yes before it is done.")
}

pub(in crate::text) fn times(quantity: &str, each: &str) -> String {
    format!("{quantity} × {each}")
}

pub(in crate::text) fn tax_of(percent: &str) -> String {
    format!("Tax, {percent}\u{a0}%")
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
        CardFault::WrongKind => "This figure belongs to another card.",
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
        KitSlip::NoName => desk(Desk::KitNoName).to_owned(),
        KitSlip::Number(slip) => decimal_slip(slip),
        KitSlip::Range => desk(Desk::KitRange).to_owned(),
        KitSlip::Day => desk(Desk::DateHint).to_owned(),
        KitSlip::Share => desk(Desk::KitShare).to_owned(),
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

pub(in crate::text) fn wrench_checked(day: &str, clicks: u32) -> String {
    if day.is_empty() {
        format!("{clicks} clicks counted")
    } else {
        format!("checked {day}, {clicks} clicks since")
    }
}

pub(in crate::text) fn checked_on(day: &str) -> String {
    format!("checked {day}")
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

pub(in crate::text) fn share_used(low: u8, high: u8) -> String {
    format!("From {low} to {high} percent of its full scale a wrench is used here.")
}

pub(in crate::text) fn weak_stands(stands: &str, axle: &str) -> String {
    format!(
        "{stands}: marked for less than one axle may weigh here, {axle} (six tenths of the mass; common practice, no source)."
    )
}

pub(in crate::text) fn past_proof(value: &str, bolt: &str, most: &str) -> String {
    format!(
        "{value} would stretch {bolt} past its proof load, which about {most} reaches (nut factor 0.2, or 0.18 oiled). Read the page and the bolt's head again."
    )
}

pub(in crate::text) fn odd_for_stud(value: &str, thread: &str, low: &str, high: &str) -> String {
    format!(
        "{value} is far from what wheels on {thread} commonly get ({low} to {high}; common practice, no source). Read the page again."
    )
}

pub(in crate::text) fn lower_stage(value: &str, before: &str) -> String {
    format!("{value} comes after {before} and is lower. Is a turn back missing between them?")
}

pub(in crate::text) fn kept_because(reason: &str) -> String {
    format!("Doubted, and kept: {reason}")
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
