//! What an entry or an answer says, in one line.

use super::ReportContext;
use super::bill::paid_line;
use super::cards::{card_value, way_lines};
use super::money::money;
use crate::job::JobState;
use crate::job::entry::{
    DialSetup, Due, Ended, Event, Moved, Quantity, Reading, Reply, Side, VehicleField,
};
use crate::job::fitted;
use crate::job::manual_item::named;
use crate::text::{self, Flow, Kept, Lang, Paper, Pay, ReportWord, Say, paper};
use crate::trade::answer::Answer;
use crate::trade::diagnosis::Clue;
use crate::trade::fastening::TypedLever;
use crate::trade::play::After;
use crate::trade::vehicle::{Corner, Fixing, ParkingBrake, Power};
use crate::trade::wheel_end::{Item, ItemKind, Kind};
use crate::word::Word;

/// An answer; a list gives one line a row.
pub(super) fn reply(told: &ReportContext, reply: &Reply) -> Vec<String> {
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
pub(super) fn number(told: &ReportContext, quantity: &Quantity) -> String {
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
pub fn item_name(lang: Lang, sheet: &JobState, item: Item) -> String {
    let names: Vec<&str> = named(sheet, item)
        .iter()
        .map(|also| also.name.as_str())
        .collect();
    if names.is_empty() {
        return text::item_at(lang, item, fitted(sheet).fixing);
    }
    format!("{}, {}", names.join(" + "), text::corner(lang, item.corner))
}

/// Items of one group together: "Lug nuts 1–5, front left".
pub(super) fn items(told: &ReportContext, items: &[Item]) -> String {
    let mut runs: Vec<(Item, u8)> = Vec::new();
    for item in items {
        match runs.last_mut() {
            Some((first, last))
                if first.group == item.group
                    && first.group != ItemKind::Other
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
            text::group(told.lang, first.group, fitted(told.sheet).fixing),
            first.number,
            text::corner(told.lang, first.corner)
        )
    };
    runs.iter().map(one).collect::<Vec<_>>().join("; ")
}

fn word_of<W: Word>(
    code: &str,
    say: fn(Lang, W) -> &'static str,
    lang: Lang,
) -> Option<&'static str> {
    W::of_code(code).map(|word| say(lang, word))
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
        VehicleField::Brake => word_of(value, text::wheel_brake, lang),
        VehicleField::Sensor => word_of(value, text::speed_sensor, lang),
        VehicleField::Encoder => word_of(value, text::encoder, lang),
        VehicleField::NutLock => word_of(value, text::nut_lock, lang),
        VehicleField::Pressing => word_of(value, text::pressing, lang),
        VehicleField::Vin
        | VehicleField::Family
        | VehicleField::Studs
        | VehicleField::HubBolts
        | VehicleField::Mass => None,
    };
    word.unwrap_or(value).to_owned()
}

/// What an entry says, in one line, for the list of what was taken back or told twice.
pub(super) fn entry(told: &ReportContext, what: &Event) -> String {
    let lang = told.lang;
    let labelled = |word: ReportWord, value: &str| format!("{}: {value}", told.word(word));
    match what {
        Event::Opened(_) => told.word(ReportWord::Started),
        Event::Person(field, value) => format!("{}: {value}", text::person_field(lang, *field)),
        Event::Erased(_) => told.word(ReportWord::EntryErased),
        Event::Said(words) => labelled(ReportWord::YourWords, words),
        Event::Vehicle(field, value) => format!(
            "{}: {}",
            text::vehicle_field(lang, *field),
            vehicle_value(lang, *field, value)
        ),
        Event::Corners(all) => labelled(ReportWord::Corners, &corners(told, all)),
        Event::Card(card) => format!(
            "{}: {}",
            text::card_item(lang, card.item, fitted(told.sheet).fixing),
            card_value(lang, told.format, card)
        ),
        Event::Missing(kit) => {
            let kit = kit.iter().map(|item| text::kit_item(lang, *item));
            labelled(ReportWord::KitMissing, &kit.collect::<Vec<_>>().join(", "))
        }
        Event::Carried(_) => told.word(ReportWord::Instruments),
        Event::Answered(step, answer) => {
            format!("{}: {}", told.step(*step), reply(told, answer).join("; "))
        }
        Event::Moved(moved) => moved_line(told, moved),
        Event::Also(also) => text::also_off(lang, &also.name),
        Event::Lever(step, lever) => {
            format!("{}: {}", told.step(*step), adapter(told, lever.as_ref()))
        }
        Event::Angled(step, by) => {
            format!("{}: {}", told.step(*step), text::angled(lang, *by))
        }
        Event::Mishap(mishap) => {
            let item = item_name(lang, told.sheet, mishap.item);
            let what = text::mishap(lang, mishap.kind);
            text::mishap_line(lang, &item, what, &mishap.part, mishap.minutes)
        }
        Event::Mended(item) => text::mended(lang, &item_name(lang, told.sheet, *item)),
        Event::Pass(step) => format!("{}: {}", told.step(*step), told.word(ReportWord::PassBegan)),
        Event::DialSetup(setup) => dial_setup_line(told, setup),
        Event::Reading(reading) => reading_line(told, reading),
        Event::Decided(decided) => text::corner_decision(lang, decided.corner, decided.decision),
        Event::Proved(proved) => {
            let corner = text::corner_title(lang, proved.corner);
            format!("{corner}: {}", proof(told, &proved.outcome))
        }
        Event::FaceFound(found) => super::runout::found_line(told, found),
        Event::RotorFound(found) => super::thickness::found_line(told, found),
        Event::Price(price) => labelled(ReportWord::PriceHead, &money(told.format, &price.repair)),
        Event::Invoice(invoice) => super::invoice::line(told, invoice),
        Event::Discount(discount) => {
            let name = text::pay(lang, Pay::Discount);
            format!(
                "{name}: {} {}",
                money(told.format, &discount.amount),
                discount.reason
            )
        }
        Event::Paid(paid) => labelled(ReportWord::PaidHead, &paid_line(told, paid)),
        Event::Refunded(paid) => {
            format!(
                "{}: {}",
                text::pay(lang, Pay::Refunded),
                paid_line(told, paid)
            )
        }
        Event::Consent(consent) => format!(
            "{}: {}",
            text::scope(lang, consent.scope),
            told.say(if consent.yes { Say::Yes } else { Say::No })
        ),
        Event::Signed(signed) => labelled(ReportWord::Signature, &told.step(signed.step)),
        Event::Photo(photo) => labelled(ReportWord::PictureKept, &told.step(photo.step)),
        Event::Note(_, note) => labelled(ReportWord::Notes, note),
        Event::Remark(_, remark) => labelled(ReportWord::Notes, text::remark(lang, *remark)),
        Event::Part(part) => labelled(ReportWord::Parts, &part.number),
        Event::Due(due) => due_line(told, due),
        Event::HandedOver(_) => told.word(ReportWord::HandedOver),
        Event::Ended(ended) => ended_line(told, ended),
        Event::Strike(_) => told.word(ReportWord::TakenBack),
        Event::Runout(reading) => super::runout::reading_line(told, reading),
        Event::RunoutLimit(card) => super::runout::limit_line(told, card),
        Event::Damage(corner, seen) => text::seen_damage(lang, *corner, *seen),
        Event::CameBackFor(cause) => text::came_back_for(lang, *cause).to_owned(),
        Event::Complaint(complaint) => text::complaint(lang, *complaint).to_owned(),
        Event::Clue(corner, clue, answer) => clue_line(lang, *corner, *clue, *answer),
        Event::Stock(stock) => {
            text::stock_line(lang, &stock.number, stock.have, stock.least, stock.cores)
        }
        Event::Thickness(reading) => super::thickness::reading_line(told, reading),
        Event::ThicknessLimit(card) => super::thickness::limit_line(told, card),
        Event::TipAngle(corner, _, angle) => {
            let corner = text::corner_title(lang, *corner);
            let angle = told.format.typed(angle).line();
            format!("{corner}: {}", text::tip_line(lang, &angle))
        }
        Event::Crept(corner, _, divisions) => {
            let corner = text::corner_title(lang, *corner);
            let divisions = told.format.marked(divisions.as_typed());
            format!("{corner}: {}", text::creep_line(lang, &divisions))
        }
        Event::TipRadius(place, radius) => super::tip_and_drift::radius_line(told, *place, radius),
        Event::Voice(voice) => super::kept::voice_line(told, voice),
        Event::Captioned(said) => {
            let head = text::kept(lang, Kept::CaptionSaid);
            format!("{head}: {}", super::kept::said(told, said))
        }
        Event::FromPaper(slip) => format!("{}: {}", paper(lang, Paper::FromPaper), slip.job),
        Event::Slot(slot) => text::slot(lang, slot),
        Event::Shop(_) => text::flow(lang, Flow::ShopTitle).to_owned(),
        Event::Confirmation(_) => text::flow(lang, Flow::Confirmation).to_owned(),
        Event::LetGo(_) => text::flow(lang, Flow::EntryLetGo).to_owned(),
        Event::Unknown(_) => told.word(ReportWord::EntryUnknown),
    }
}

/// What was found of a clue.
fn clue_line(lang: Lang, corner: Option<Corner>, clue: Clue, answer: Answer) -> String {
    let line = format!("{}: {}", text::clue(lang, clue), text::answer(lang, answer));
    match corner {
        Some(corner) => format!("{}: {line}", text::corner_title(lang, corner)),
        None => line,
    }
}

fn adapter(told: &ReportContext, lever: Option<&TypedLever>) -> String {
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
pub(super) fn corners(told: &ReportContext, corners: &[Corner]) -> String {
    let names = corners
        .iter()
        .map(|corner| text::corner(told.lang, *corner));
    names.collect::<Vec<_>>().join(", ")
}

fn moved_line(told: &ReportContext, moved: &Moved) -> String {
    let state = text::hold_state(told.lang, moved.to);
    text::loose_row(told.lang, &items(told, &moved.items), state)
}

/// The outcome of a proof after the work.
pub(super) fn proof(told: &ReportContext, outcome: &After) -> String {
    told.say(match outcome {
        After::Pass { .. } => Say::ProofPassed,
        After::Blocked { .. } => Say::ProofFailed,
        After::NotJudged { .. } => Say::NotDone,
    })
}

/// How the dial stood for a set.
fn dial_setup_line(told: &ReportContext, setup: &DialSetup) -> String {
    let way = way_lines(told.lang, told.format, &setup.way).into_iter();
    let way: Vec<String> = way.map(|(_, value)| value).collect();
    let corner = text::corner_title(told.lang, setup.corner);
    format!("{corner}: {}", way.join(", "))
}

fn reading_line(told: &ReportContext, reading: &Reading) -> String {
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
pub(super) fn due_line(told: &ReportContext, due: &Due) -> String {
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
pub(super) fn ended_line(told: &ReportContext, ended: &Ended) -> String {
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
