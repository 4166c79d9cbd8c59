//! What an entry or an answer says, in one line.

use super::Told;
use super::bill::paid_line;
use super::cards::{card_value, way_lines};
use super::money::money;
use crate::job::Sheet;
use crate::job::also::named;
use crate::job::entry::{
    DialSetup, Due, Ended, Moved, Quantity, Reading, Reply, Side, VehicleField, What,
};
use crate::text::{self, Flow, Kept, Lang, Paper, ReportWord, Say, paper};
use crate::trade::damage::Damage;
use crate::trade::fastening::TypedLever;
use crate::trade::play::After;
use crate::trade::vehicle::{Corner, Fixing, ParkingBrake, Power};
use crate::trade::wheel_end::{Group, Item, Kind};

/// An answer; a list gives one line a row.
pub(super) fn reply(told: &Told, reply: &Reply) -> Vec<String> {
    let lang = told.lang;
    let one = match reply {
        Reply::Done => told.say(Say::Done),
        Reply::NotDone(because) => format!(
            "{}: {}",
            told.say(Say::NotDone),
            text::because(lang, *because)
        ),
        Reply::Said(answer) => text::answer(lang, *answer).to_owned(),
        Reply::Felt(felt) => text::felt(lang, *felt).to_owned(),
        Reply::Picked(pick) => text::pick(lang, *pick).to_owned(),
        Reply::Number(quantity) => number(told, quantity),
        Reply::FoundLoose(count) => text::found_loose(lang, *count),
        Reply::Checked(checks) => {
            return checks
                .iter()
                .map(|(check, answer)| {
                    let row = told.numerals(text::check(lang, *check));
                    format!("{row}: {}", text::answer(lang, *answer))
                })
                .collect();
        }
    };
    vec![one]
}

/// A typed number with its twin.
pub(super) fn number(told: &Told, quantity: &Quantity) -> String {
    let (one, twin) = match quantity {
        Quantity::Distance(typed) => (told.format.typed(typed), told.format.typed_twin(typed)),
        Quantity::Temperature(typed) => (told.format.typed(typed), told.format.typed_twin(typed)),
    };
    format!(
        "{} {}",
        one.line(),
        text::also_value(told.lang, &twin.line())
    )
}

/// An item by its name with its corner; what was named by hand by that name.
pub fn item_name(lang: Lang, sheet: &Sheet, item: Item) -> String {
    let names: Vec<&str> = named(sheet, item)
        .iter()
        .map(|also| also.name.as_str())
        .collect();
    if names.is_empty() {
        return text::item_at(lang, item);
    }
    format!("{}, {}", names.join(" + "), text::corner(lang, item.corner))
}

/// Items of one group together: "Wheel nuts 1–5, front left".
pub(super) fn items(told: &Told, items: &[Item]) -> String {
    let mut runs: Vec<(Item, u8)> = Vec::new();
    for item in items {
        match runs.last_mut() {
            Some((first, last))
                if first.group == item.group
                    && first.group != Group::Other
                    && first.corner == item.corner
                    && item.number == last.saturating_add(1) =>
            {
                *last = item.number;
            }
            _ => runs.push((*item, item.number)),
        }
    }
    let one = |(first, last): &(Item, u8)| {
        if first.number == *last {
            return item_name(told.lang, told.sheet, *first);
        }
        format!(
            "{} {}–{last}, {}",
            text::group(told.lang, first.group),
            first.number,
            text::corner(told.lang, first.corner)
        )
    };
    runs.iter().map(one).collect::<Vec<_>>().join("; ")
}

/// A fact of the vehicle in words; what is no code of ours is shown as it was typed.
pub(super) fn vehicle_value(lang: Lang, field: VehicleField, value: &str) -> String {
    let word = match field {
        VehicleField::Kind => Kind::from_code(value).map(|kind| text::kind(lang, kind)),
        VehicleField::Fixing => Fixing::from_code(value).map(|fixing| text::fixing(lang, fixing)),
        VehicleField::Power => Power::from_code(value).map(|power| text::power(lang, power)),
        VehicleField::ParkingBrake => {
            ParkingBrake::from_code(value).map(|brake| text::parking_brake(lang, brake))
        }
        VehicleField::Caliper => match value {
            "sliding" => Some(text::say(lang, Say::CaliperSliding)),
            "fixed" => Some(text::say(lang, Say::CaliperFixed)),
            _ => None,
        },
        VehicleField::Vin
        | VehicleField::Family
        | VehicleField::Studs
        | VehicleField::HubBolts
        | VehicleField::Mass => None,
    };
    word.unwrap_or(value).to_owned()
}

/// What an entry says, in one line, for the list of what was taken back or told twice.
pub(super) fn entry(told: &Told, what: &What) -> String {
    let lang = told.lang;
    let labelled = |word: ReportWord, value: &str| format!("{}: {value}", told.word(word));
    match what {
        What::Opened(_) => told.word(ReportWord::Started),
        What::Person(field, value) => format!("{}: {value}", text::person_field(lang, *field)),
        What::Erased(_) => told.word(ReportWord::EntryErased),
        What::Said(words) => labelled(ReportWord::YourWords, words),
        What::Vehicle(field, value) => format!(
            "{}: {}",
            text::vehicle_field(lang, *field),
            vehicle_value(lang, *field, value)
        ),
        What::Corners(all) => labelled(ReportWord::Corners, &corners(told, all)),
        What::Card(card) => format!(
            "{}: {}",
            text::card_item(lang, card.item),
            card_value(lang, told.format, card)
        ),
        What::Missing(kit) => {
            let kit = kit.iter().map(|item| text::kit_item(lang, *item));
            labelled(ReportWord::KitMissing, &kit.collect::<Vec<_>>().join(", "))
        }
        What::Carried(_) => told.word(ReportWord::Instruments),
        What::Answered(step, answer) => {
            format!("{}: {}", told.step(*step), reply(told, answer).join("; "))
        }
        What::Moved(moved) => moved_line(told, moved),
        What::Also(also) => text::also_off(lang, &also.name),
        What::Lever(step, lever) => {
            format!("{}: {}", told.step(*step), adapter(told, lever.as_ref()))
        }
        What::Angled(step, by) => {
            format!("{}: {}", told.step(*step), text::angled(lang, *by))
        }
        What::Mishap(mishap) => {
            let item = item_name(lang, told.sheet, mishap.item);
            let what = text::mishap(lang, mishap.kind);
            text::mishap_line(lang, &item, what, &mishap.part, mishap.minutes)
        }
        What::Mended(item) => text::mended(lang, &item_name(lang, told.sheet, *item)),
        What::Pass(step) => format!("{}: {}", told.step(*step), told.word(ReportWord::PassBegan)),
        What::DialSetup(setup) => dial_setup_line(told, setup),
        What::Reading(reading) => reading_line(told, reading),
        What::Decided(decided) => text::corner_decision(lang, decided.corner, decided.decision),
        What::Proved(proved) => {
            let corner = text::corner_title(lang, proved.corner);
            format!("{corner}: {}", proof(told, &proved.outcome))
        }
        What::FaceFound(found) => super::runout::found_line(told, found),
        What::RotorFound(found) => super::thickness::found_line(told, found),
        What::Price(price) => labelled(ReportWord::PriceHead, &money(told.format, &price.repair)),
        What::Invoice(number) => labelled(ReportWord::InvoiceHead, number),
        What::Paid(paid) => labelled(ReportWord::PaidHead, &paid_line(told, paid)),
        What::Consent(consent) => format!(
            "{}: {}",
            text::scope(lang, consent.scope),
            told.say(if consent.yes { Say::Yes } else { Say::No })
        ),
        What::Signed(signed) => labelled(ReportWord::Signature, &told.step(signed.step)),
        What::Photo(photo) => labelled(ReportWord::PictureKept, &told.step(photo.step)),
        What::Note(_, note) => labelled(ReportWord::Notes, note),
        What::Part(part) => labelled(ReportWord::Parts, &part.number),
        What::Due(due) => due_line(told, due),
        What::HandedOver(_) => told.word(ReportWord::HandedOver),
        What::Ended(ended) => ended_line(told, ended),
        What::Strike(_) => told.word(ReportWord::TakenBack),
        What::Runout(reading) => super::runout::reading_line(told, reading),
        What::RunoutLimit(card) => super::runout::limit_line(told, card),
        What::Damage(corner, seen) => seen_damage(told, *corner, *seen),
        What::CameBackFor(cause) => text::came_back_for(lang, *cause).to_owned(),
        What::Stock(stock) => {
            text::stock_line(lang, &stock.number, stock.have, stock.least, stock.cores)
        }
        What::Thickness(reading) => super::thickness::reading_line(told, reading),
        What::ThicknessLimit(card) => super::thickness::limit_line(told, card),
        What::TipAngle(corner, _, angle) => {
            let corner = text::corner_title(lang, *corner);
            let angle = told.format.typed(angle).line();
            format!("{corner}: {}", text::tip_line(lang, &angle))
        }
        What::Crept(corner, _, divisions) => {
            let corner = text::corner_title(lang, *corner);
            let divisions = told.format.marked(divisions.as_typed());
            format!("{corner}: {}", text::creep_line(lang, &divisions))
        }
        What::TipRadius(place, radius) => super::seen::radius_line(told, *place, radius),
        What::Voice(voice) => super::kept::voice_line(told, voice),
        What::Captioned(said) => {
            let head = text::kept(lang, Kept::CaptionSaid);
            format!("{head}: {}", super::kept::said(told, said))
        }
        What::FromPaper(slip) => format!("{}: {}", paper(lang, Paper::FromPaper), slip.job),
        What::Slot(slot) => text::slot(lang, slot),
        What::Shop(_) => text::flow(lang, Flow::ShopTitle).to_owned(),
        What::Receipt(_) => text::flow(lang, Flow::Receipt).to_owned(),
        What::LetGo(_) => text::flow(lang, Flow::EntryLetGo).to_owned(),
        What::Unknown(_) => told.word(ReportWord::EntryUnknown),
    }
}

/// What was seen on the old part of a corner, with the standard's term.
pub(super) fn seen_damage(told: &Told, corner: Corner, seen: Damage) -> String {
    let lang = told.lang;
    text::seen_damage(
        lang,
        text::corner_title(lang, corner),
        text::damage(lang, seen),
        text::damage_term(lang, seen),
    )
}

fn adapter(told: &Told, lever: Option<&TypedLever>) -> String {
    let Some(lever) = lever else {
        return text::no_adapter(told.lang).to_owned();
    };
    let format = told.format;
    text::adapter(
        told.lang,
        &format.typed(&lever.wrench).line(),
        &format.typed(&lever.adapter).line(),
        &format.typed(&lever.angle).line(),
    )
}

/// Corners by name.
pub(super) fn corners(told: &Told, corners: &[Corner]) -> String {
    let names = corners
        .iter()
        .map(|corner| text::corner(told.lang, *corner));
    names.collect::<Vec<_>>().join(", ")
}

fn moved_line(told: &Told, moved: &Moved) -> String {
    let state = text::hold_state(told.lang, moved.to);
    text::loose_row(told.lang, &items(told, &moved.items), state)
}

/// The outcome of a proof after the work.
pub(super) fn proof(told: &Told, outcome: &After) -> String {
    told.say(match outcome {
        After::Pass { .. } => Say::ProofPassed,
        After::Blocked { .. } => Say::ProofFailed,
        After::NotJudged { .. } => Say::NotDone,
    })
}

/// How the dial stood for a set.
fn dial_setup_line(told: &Told, setup: &DialSetup) -> String {
    let way = way_lines(told.lang, told.format, &setup.way).into_iter();
    let way: Vec<String> = way.map(|(_, value)| value).collect();
    let corner = text::corner_title(told.lang, setup.corner);
    format!("{corner}: {}", way.join(", "))
}

fn reading_line(told: &Told, reading: &Reading) -> String {
    let side = told.word(match reading.side {
        Side::Push => ReportWord::Push,
        Side::Pull => ReportWord::Pull,
    });
    format!(
        "{}, {} {}, {side}: {} {}",
        text::corner_title(told.lang, reading.corner),
        told.word(ReportWord::Round),
        reading.round,
        told.format.marked(reading.divisions.as_typed()),
        told.say(Say::Divisions)
    )
}

/// What is due, by when and after how far.
pub(super) fn due_line(told: &Told, due: &Due) -> String {
    let what = text::due_kind(told.lang, due.kind);
    match &due.distance {
        Some(distance) => {
            let distance = told.format.typed(distance).line();
            format!(
                "{what}: {}",
                text::retorque_due(told.lang, &due.date, &distance)
            )
        }
        None => text::due_on(told.lang, what, &due.date),
    }
}

/// How it ended, and who took charge.
pub(super) fn ended_line(told: &Told, ended: &Ended) -> String {
    let title = text::ending(told.lang, ended.ending).0;
    match ended.charge {
        Some(charge) => format!("{title}: {}", text::charge(told.lang, charge)),
        None => title.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn facts_of_the_vehicle_are_told_in_words() {
        let told = |field, value| vehicle_value(Lang::English, field, value);
        for (field, code) in [
            (VehicleField::Kind, "bolted_driven"),
            (VehicleField::Fixing, "nuts"),
            (VehicleField::Power, "combustion"),
            (VehicleField::ParkingBrake, "rear"),
            (VehicleField::Caliper, "sliding"),
        ] {
            assert_ne!(told(field, code), code);
            assert_eq!(told(field, "typed by hand"), "typed by hand");
        }
        assert_eq!(told(VehicleField::Caliper, "sliding"), "Sliding caliper");
        assert_eq!(told(VehicleField::Studs, "5"), "5");
    }
}
