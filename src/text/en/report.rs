//! The words of the report: plain for the owner on page one, exact on the pages after it.

use super::words;
use crate::text::report::ReportWord;
use crate::trade::play::Decision;
use crate::trade::vehicle::Corner;

pub(in crate::text) fn report(word: ReportWord) -> &'static str {
    match word {
        // Page one, for the owner.
        ReportWord::Title => "Wheel bearing report",
        ReportWord::ForOwner => "For the customer",
        ReportWord::YourWords => "What you told us",
        ReportWord::WhatWeFound => "What we found",
        ReportWord::WhatWeDid => "What we did",
        ReportWord::Parts => "Parts",
        ReportWord::YouDeclined => "What you declined",
        ReportWord::YouDeclinedSay => "We advised this work, and you declined it.",
        ReportWord::WhatCanHappen => "What can happen",
        ReportWord::YouMustDo => "What to do",
        ReportWord::RetorqueHead => "Have the lug-nut torque checked",
        ReportWord::RetorqueWhy => {
            "A wheel that has been off can settle and its lug nuts lose clamp. Loose lug nuts can let a wheel come off."
        }
        ReportWord::StopFor => "Stop the car in a safe place and call us if",
        ReportWord::StopForNoise => "it knocks, grinds or hums more than before",
        ReportWord::StopForWobble => "the wheel or the steering wobbles",
        ReportWord::StopForSmell => "you smell heat or see smoke at a wheel",
        ReportWord::StopForPedal => "the brake pedal is soft or goes down",
        ReportWord::StopForLamp => "a brake or ABS warning light comes on",
        ReportWord::DoNotDrive => "Do not drive this car.",
        ReportWord::PriceHead => "Price",
        ReportWord::PriceRefit => "Inspection and reassembly",
        ReportWord::PriceRepair => "The whole repair",
        ReportWord::LineFor => "For",
        ReportWord::LineQuantity => "Quantity",
        ReportWord::LineEach => "Price of one",
        ReportWord::BeforeTax => "Before tax",
        ReportWord::Tax => "Tax",
        ReportWord::InvoiceHead => "Invoice number",
        ReportWord::PaidHead => "Paid",
        ReportWord::Signature => "Signature",
        ReportWord::SignatureRefused => "Would not sign",
        ReportWord::Contact => "How to reach us",
        ReportWord::Warranty => "Warranty",
        ReportWord::TearOff => "Cut off here and keep in the car",
        ReportWord::Practice => "Practice, not a real job. The car is invented.",
        // Limits, honestly named.
        ReportWord::NoMakerLimit => "No maker limit found",
        ReportWord::HouseLimit => "House limit (common practice, no source)",
        ReportWord::HouseLimitSay => {
            "It can show that a bearing is worn. It can never show that one is good."
        }
        ReportWord::WithinNotProven => {
            "Within the limit, but not proven: it lies closer to the limit than this gauge can tell."
        }
        ReportWord::NothingClears => {
            "No play does not prove a bearing good. Noise and roughness often come first."
        }
        ReportWord::NotComparedSay => "Measured by different methods, so not compared.",
        ReportWord::NotMeasured => "Not measured",
        ReportWord::CommonPractice => "Common practice, no source",
        ReportWord::CardAge => "Age",
        ReportWord::NotLookedUpSay => {
            "These figures were taken from an earlier job and not looked up again."
        }
        ReportWord::RetorqueDefault => "The earliest of the published figures: common practice.",
        ReportWord::MakerWins => {
            "The vehicle manufacturer's service information takes precedence over everything on these pages."
        }
        ReportWord::Disclaimer => {
            "This report says what was seen and measured on the day. It is no promise of how long a part will last."
        }
        ReportWord::Cautions => "Cautions",
        ReportWord::NotChecked => "What was not checked",
        ReportWord::NotDoneHead => "Not done, and why",
        ReportWord::NothingNotDone => "Every step that was asked for was done.",
        ReportWord::NotedLater => "Noted later",
        ReportWord::NotedLaterSay => "These were done first and written down later.",
        // The technician's pages.
        ReportWord::ForTechnician => "The technician's pages",
        ReportWord::Job => "Job",
        ReportWord::Vehicle => "Vehicle",
        ReportWord::Corners => "Corners",
        ReportWord::Decisions => "Decisions",
        ReportWord::RestsOn => "It rests on",
        ReportWord::Rules => "Rules, version",
        ReportWord::SpecCards => "Spec cards",
        ReportWord::Source => "Source",
        ReportWord::Method => "Method",
        ReportWord::Place => "Place",
        ReportWord::Condition => "Condition",
        ReportWord::Readings => "Readings",
        ReportWord::Round => "Round",
        ReportWord::Push => "Pushed in",
        ReportWord::Pull => "Pulled out",
        ReportWord::Play => "Play",
        ReportWord::Uncertainty => "Expanded uncertainty",
        ReportWord::Budget => "What the uncertainty is made of",
        ReportWord::Dial => "Dial gauge",
        ReportWord::Rig => "Setup",
        ReportWord::SetOne => "First set",
        ReportWord::SetTwo => "Second set",
        ReportWord::NutLoosened => "The axle nut had been loosened before this reading.",
        ReportWord::HandTests => "Hands and ears",
        ReportWord::RoadSigns => "Road test",
        ReportWord::SignBefore => "Before",
        ReportWord::SignAfter => "After",
        ReportWord::Heat => "Hub temperatures",
        ReportWord::Fasteners => "Fasteners",
        ReportWord::Wrench => "Wrench",
        ReportWord::Target => "On the card",
        ReportWord::SetTo => "Wrench set to",
        ReportWord::NewFastener => "New",
        ReportWord::WentWrong => "Mishaps, extra work, adapters",
        ReportWord::LooseList => "Loose list",
        ReportWord::NothingLoose => "Nothing was left loose.",
        ReportWord::Consents => "Approvals and refusals, in order",
        ReportWord::Notes => "Notes",
        ReportWord::Pictures => "Pictures",
        ReportWord::NoPicture => "No picture",
        ReportWord::Lamps => "Warning lamps",
        ReportWord::Site => "Place of work",
        ReportWord::HandedOver => "Handed over",
        ReportWord::LookBack => "Afterwards",
        ReportWord::Problems => "To be settled",
        ReportWord::TwoAnswers => "Told differently on two phones; the safer one counts here.",
        ReportWord::Entries => "Entries",
        ReportWord::TakenBack => "Taken back",
        ReportWord::Digest => "Digest",
        ReportWord::Recompute => {
            "Every number here can be worked out again from the exported file."
        }
        // Labels and sentences of the pages themselves.
        ReportWord::NotDecided => "No decision was recorded.",
        ReportWord::TowIt => "Have it towed, or leave it where it stands.",
        ReportWord::TookCharge => "Who took charge of the car",
        ReportWord::RetorqueNoDate => "No date was set for it. Ask for one.",
        ReportWord::Date => "Date",
        ReportWord::Step => "Step",
        ReportWord::Answer => "Answer",
        ReportWord::When => "When",
        ReportWord::By => "By",
        ReportWord::What => "What",
        ReportWord::ItemHead => "Part or fastener",
        ReportWord::State => "State",
        ReportWord::Value => "Value",
        ReportWord::NoCard => "No card was filled in",
        ReportWord::Limit => "Limit",
        ReportWord::Mean => "Mean of the rounds",
        ReportWord::Combined => "Combined standard uncertainty",
        ReportWord::Standard => "Standard uncertainty",
        ReportWord::Freedom => "Degrees of freedom",
        ReportWord::Unlimited => "not limited",
        ReportWord::GuardBand => "Proven from this far beyond the limit",
        ReportWord::Probability => "Probability that the play is within the limit",
        ReportWord::Result => "Result",
        ReportWord::Division => "One division",
        ReportWord::DivisionsTurn => "Divisions in one turn",
        ReportWord::Force => "Force",
        ReportWord::ByHand => "By hand",
        ReportWord::Marked => "Marked",
        ReportWord::DialZeroed => "dial set to zero",
        ReportWord::NoSet => "No reading was taken",
        ReportWord::Instruments => "Instruments on board",
        ReportWord::KitMissing => "Missing from the kit",
        ReportWord::NotRecorded => "Not recorded",
        ReportWord::Answers => "Every answer",
        ReportWord::OtherAnswers => "Answers to steps beside the plan",
        ReportWord::Untouched => "never answered",
        ReportWord::LooseMoves => "Loosened and refitted",
        ReportWord::PassBegan => "The pass began",
        ReportWord::Started => "Started",
        ReportWord::Ended => "Ended",
        ReportWord::Scope => "For",
        ReportWord::HowGiven => "How it was given",
        ReportWord::Amount => "Amount",
        ReportWord::TooFewCycles => "Fewer than three cycles prove nothing.",
        ReportWord::RecordedReasons => "Reasons as recorded",
        ReportWord::AskedAgain => "A second set was asked for before it stands",
        ReportWord::EntriesLost => "The phone had more entries of this job and lost them",
        ReportWord::EntryMissing => "An entry that others name is not here",
        ReportWord::EntryEdited => {
            "Two different entries carry one name: one of them was changed outside the app"
        }
        ReportWord::EntryUnknown => "An entry of a kind that this version does not know",
        ReportWord::EntryCircle => {
            "An entry claims to have seen what came after it: forged or broken"
        }
        ReportWord::EntryErased => "A personal entry was erased",
        ReportWord::Device => "Device",
        ReportWord::Due => "Due",
        ReportWord::Signed => "Signed",
        ReportWord::PictureKept => "Picture",
        ReportWord::StartedFrom => "Started from",
    }
}

pub(in crate::text) fn replaced_owner(corner: Corner) -> String {
    format!("We replaced the {} wheel bearing.", words::corner(corner))
}

pub(in crate::text) fn put_back_owner(corner: Corner) -> String {
    format!(
        "We inspected the {} wheel bearing and put everything back.",
        words::corner(corner)
    )
}

pub(in crate::text) fn before_after_owner(before: &str, after: &str) -> String {
    format!("The hub moved {before} before the repair and {after} after it.")
}

pub(in crate::text) fn found_owner(play: &str) -> String {
    format!("The hub moved {play}.")
}

pub(in crate::text) fn limit_owner(limit: &str, source: &str) -> String {
    format!("The limit is {limit} ({source}).")
}

pub(in crate::text) fn default_limit_used(limit: &str) -> String {
    format!(
        "The manufacturer's limit is for another method. Default limit {limit} used (common practice, no source)."
    )
}

pub(in crate::text) fn house_limit_used(limit: &str) -> String {
    format!("No manufacturer limit found. Default limit {limit} used (common practice, no source).")
}

pub(in crate::text) fn retorque_owner(distance: &str, date: &str) -> String {
    format!("Have the lug-nut torque checked after {distance}, no later than {date}.")
}

pub(in crate::text) fn retorque_owner_at(distance: &str, odometer: &str, date: &str) -> String {
    format!(
        "Have the lug-nut torque checked after {distance}, when the odometer shows {odometer}, no later than {date}."
    )
}

pub(in crate::text) fn due_at(what: &str, odometer: &str) -> String {
    format!("{what} (at {odometer})")
}

pub(in crate::text) fn recheck_owner(corner: Corner, date: &str) -> String {
    format!(
        "Have the {} wheel bearing checked again no later than {date}.",
        words::corner(corner)
    )
}

pub(in crate::text) fn declined_owner(what: &str, amount: &str, date: &str) -> String {
    format!("{what} for {amount}: you declined it on {date}.")
}

pub(in crate::text) fn consent_line(scope: &str, how: &str, name: &str, time: &str) -> String {
    let parts = [how, name, time];
    let said: Vec<&str> = parts.into_iter().filter(|it| !it.is_empty()).collect();
    format!("{scope}: {}", said.join(", "))
}

pub(in crate::text) fn fastener_line(item: &str, value: &str, wrench: &str) -> String {
    format!("{item}: {value} with {wrench}")
}

pub(in crate::text) fn source_line(document: &str, page: &str, date: &str, who: &str) -> String {
    if page.is_empty() {
        return format!("{document}, looked up {date} by {who}");
    }
    format!("{document}, page {page}, looked up {date} by {who}")
}

pub(in crate::text) fn not_looked_up(date: &str) -> String {
    format!("Not looked up since {date}")
}

pub(in crate::text) fn round_line(n: u8, push: &str, pull: &str, play: &str) -> String {
    format!("Round {n}: {push} pushed in, {pull} pulled out, play {play}")
}

pub(in crate::text) fn play_line(play: &str, uncertainty: &str) -> String {
    format!("{play} ± {uncertainty}")
}

pub(in crate::text) fn left_loose(items: &str) -> String {
    format!("Still loose or off: {items}.")
}

pub(in crate::text) fn page_of(n: usize, of: usize) -> String {
    format!("Page {n} of {of}")
}

pub(in crate::text) fn made_by(name: &str, time: &str) -> String {
    format!("Made by {name}, {time}")
}

pub(in crate::text) fn digest_line(digest: &str) -> String {
    format!("Made from the entries with digest {digest}")
}

pub(in crate::text) fn uncertainty_k(k: &str) -> String {
    format!("Expanded uncertainty, k = {k}")
}

pub(in crate::text) fn was_found_owner(decision: Decision) -> &'static str {
    match decision {
        Decision::Keep => "Before the work, no fault was found in this wheel bearing.",
        Decision::Watch => "Before the work, this wheel bearing had to be watched.",
        Decision::Replace => "Before the work, this wheel bearing failed our check.",
        Decision::Stop => "Before the work, this car was not safe to drive.",
    }
}

pub(in crate::text) fn declined_owner_open(what: &str, date: &str) -> String {
    format!("{what}: you declined it on {date}.")
}

pub(in crate::text) fn retorque_owner_by(date: &str) -> String {
    format!("Have the lug-nut torque checked no later than {date}.")
}

pub(in crate::text) fn steps_not_done_owner(n: usize) -> String {
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

pub(in crate::text) fn strip_alt(rows: &str, limit: &str) -> String {
    format!("Play on a scale. {rows}. {limit}")
}
