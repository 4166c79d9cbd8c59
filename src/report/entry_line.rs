//! What an entry or an answer says, in one line.

use super::ReportContext;
use super::bill::paid_line;
use super::car_state::{left_line, mishap_words};
use super::money::money;
use super::specs::{spec_value, way_lines};
use crate::job::JobState;
use crate::job::entry::{
    DialSetup, Due, Ended, Event, Moved, Quantity, Reading, Reply, Side, VehicleField,
};
use crate::job::fitted;
use crate::job::manual_item::named;
use crate::text::{self, Flow, Lang, Paper, Pay, ReportWord, Saved, Say, paper};
use crate::trade::answer::Answer;
use crate::trade::diagnosis::Clue;
use crate::trade::fastening::TypedLever;
use crate::trade::play::After;
use crate::trade::vehicle::{Corner, Fixing, ParkingBrake, Power};
use crate::trade::wheel_end::{Item, ItemKind, Kind};
use crate::word::Word;

/// An answer; a list gives one line a row.
pub(super) fn reply(context: &ReportContext, reply: &Reply) -> Vec<String> {
    let lang = context.lang;
    let one = match reply {
        Reply::Done => context.say(Say::Done),
        Reply::NotDone(because) => format!(
            "{}: {}",
            context.say(Say::NotDone),
            text::because(lang, *because)
        ),
        Reply::Said(answer) => text::answer(lang, *answer).to_owned(),
        Reply::Felt(felt) => text::felt(lang, *felt).to_owned(),
        Reply::Picked(pick) => text::pick(lang, *pick).to_owned(),
        Reply::Number(quantity) => number(context, quantity),
        Reply::FoundLoose(count) => text::found_loose(lang, *count),
        Reply::Checked(checks) => {
            return checks
                .iter()
                .map(|(check, answer)| {
                    let row =
                        context.numerals(text::check(lang, *check, fitted(context.sheet).fixing));
                    format!("{row}: {}", text::answer(lang, *answer))
                })
                .collect();
        }
    };
    vec![one]
}

/// A typed number with its twin.
pub(super) fn number(context: &ReportContext, quantity: &Quantity) -> String {
    let (one, twin) = match quantity {
        Quantity::Distance(typed) => (
            context.format.typed(typed),
            context.format.typed_twin(typed),
        ),
        Quantity::Temperature(typed) => (
            context.format.typed(typed),
            context.format.typed_twin(typed),
        ),
    };
    format!(
        "{} {}",
        one.line(),
        text::also_value(context.lang, &twin.line())
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
pub(super) fn items(context: &ReportContext, items: &[Item]) -> String {
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
            return item_name(context.lang, context.sheet, *first);
        }
        format!(
            "{} {}–{last}, {}",
            text::group(context.lang, first.group, fitted(context.sheet).fixing),
            first.number,
            text::corner(context.lang, first.corner)
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
pub(super) fn entry(context: &ReportContext, what: &Event) -> String {
    let lang = context.lang;
    let labelled = |word: ReportWord, value: &str| format!("{}: {value}", context.word(word));
    match what {
        Event::Opened(_) => context.word(ReportWord::Started),
        Event::Person(field, value) => format!("{}: {value}", text::person_field(lang, *field)),
        Event::Erased(_) => context.word(ReportWord::EntryErased),
        Event::Said(words) => labelled(ReportWord::YourWords, words),
        Event::Vehicle(field, value) => format!(
            "{}: {}",
            text::vehicle_field(lang, *field),
            vehicle_value(lang, *field, value)
        ),
        Event::Corners(all) => labelled(ReportWord::Corners, &corners(context, all)),
        Event::Spec(spec) => format!(
            "{}: {}",
            text::spec_item(lang, spec.item, fitted(context.sheet).fixing),
            spec_value(lang, context.format, spec)
        ),
        Event::Missing(kit) => {
            let kit = kit.iter().map(|item| text::kit_item(lang, *item));
            labelled(ReportWord::KitMissing, &kit.collect::<Vec<_>>().join(", "))
        }
        Event::Carried(_) => context.word(ReportWord::Instruments),
        Event::Answered(step, answer) => {
            format!(
                "{}: {}",
                context.step(*step),
                reply(context, answer).join("; ")
            )
        }
        Event::Moved(moved) => moved_line(context, moved),
        Event::Also(also) => text::also_off(lang, &also.name),
        Event::Lever(step, lever) => {
            format!(
                "{}: {}",
                context.step(*step),
                adapter(context, lever.as_ref())
            )
        }
        Event::Angled(step, by) => {
            format!("{}: {}", context.step(*step), text::angled(lang, *by))
        }
        Event::Mishap(mishap) => {
            let item = item_name(lang, context.sheet, mishap.item);
            mishap_words(lang, &item, mishap, fitted(context.sheet).fixing)
        }
        Event::Interrupted(left) => left_line(lang, left),
        Event::Mended(item) => text::mended(lang, &item_name(lang, context.sheet, *item)),
        Event::Pass(step) => format!(
            "{}: {}",
            context.step(*step),
            context.word(ReportWord::PassBegan)
        ),
        Event::DialSetup(setup) => dial_setup_line(context, setup),
        Event::Reading(reading) => reading_line(context, reading),
        Event::Decided(decided) => text::corner_decision(lang, decided.corner, decided.decision),
        Event::Proved(proved) => {
            let corner = text::corner_title(lang, proved.corner);
            format!("{corner}: {}", proof(context, &proved.outcome))
        }
        Event::FaceFound(found) => super::runout::found_line(context, found),
        Event::RotorFound(found) => super::thickness::found_line(context, found),
        Event::Price(price) => {
            labelled(ReportWord::PriceHead, &money(context.format, &price.repair))
        }
        Event::Invoice(invoice) => super::invoice::line(context, invoice),
        Event::Discount(discount) => {
            let name = text::pay(lang, Pay::Discount);
            format!(
                "{name}: {} {}",
                money(context.format, &discount.amount),
                discount.reason
            )
        }
        Event::Paid(paid) => labelled(ReportWord::PaidHead, &paid_line(context, paid)),
        Event::Refunded(paid) => {
            format!(
                "{}: {}",
                text::pay(lang, Pay::Refunded),
                paid_line(context, paid)
            )
        }
        Event::Consent(consent) => format!(
            "{}: {}",
            text::scope(lang, consent.scope),
            context.say(if consent.yes { Say::Yes } else { Say::No })
        ),
        Event::Signed(signed) => labelled(ReportWord::Signature, &context.step(signed.step)),
        Event::Photo(photo) => labelled(ReportWord::PhotoSaved, &context.step(photo.step)),
        Event::Note(_, note) => labelled(ReportWord::Notes, note),
        Event::Remark(_, remark) => labelled(ReportWord::Notes, text::remark(lang, *remark)),
        Event::Part(part) => labelled(ReportWord::Parts, &part.number),
        Event::Due(due) => due_line(context, due),
        Event::HandedOver(_) => context.word(ReportWord::HandedOver),
        Event::Ended(ended) => ended_line(context, ended),
        Event::Strike(_) => context.word(ReportWord::TakenBack),
        Event::Runout(reading) => super::runout::reading_line(context, reading),
        Event::RunoutLimit(spec) => super::runout::limit_line(context, spec),
        Event::RemovedPart(corner, reading) => text::removed_part_line(lang, *corner, reading),
        Event::CameBackFor(cause) => text::came_back_for(lang, *cause).to_owned(),
        Event::Complaint(complaint) => text::complaint(lang, *complaint).to_owned(),
        Event::Clue(corner, clue, answer) => clue_line(lang, *corner, *clue, *answer),
        Event::Stock(stock) => {
            text::stock_line(lang, &stock.number, stock.have, stock.least, stock.cores)
        }
        Event::Thickness(reading) => super::thickness::reading_line(context, reading),
        Event::ThicknessLimit(spec) => super::thickness::limit_line(context, spec),
        Event::TipAngle(corner, _, angle) => {
            let corner = text::corner_title(lang, *corner);
            let angle = context.format.typed(angle).line();
            format!("{corner}: {}", text::tip_line(lang, &angle))
        }
        Event::Crept(corner, _, divisions) => {
            let corner = text::corner_title(lang, *corner);
            let divisions = context.format.marked(divisions.as_typed());
            format!("{corner}: {}", text::creep_line(lang, &divisions))
        }
        Event::TipRadius(place, radius) => {
            super::tip_and_drift::radius_line(context, *place, radius)
        }
        Event::Voice(voice) => super::saved::voice_line(context, voice),
        Event::Captioned(said) => {
            let head = text::saved(lang, Saved::CaptionSaid);
            format!("{head}: {}", super::saved::said(context, said))
        }
        Event::FromPaper(slip) => format!("{}: {}", paper(lang, Paper::FromPaper), slip.job),
        Event::Slot(slot) => text::slot(lang, slot),
        Event::Shop(_) => text::flow(lang, Flow::ShopTitle).to_owned(),
        Event::Confirmation(_) => text::flow(lang, Flow::Confirmation).to_owned(),
        Event::LetGo(_) => text::flow(lang, Flow::EntryLetGo).to_owned(),
        Event::Unknown(_) => context.word(ReportWord::EntryUnknown),
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

fn adapter(context: &ReportContext, lever: Option<&TypedLever>) -> String {
    let Some(lever) = lever else {
        return text::no_adapter(context.lang).to_owned();
    };
    let format = context.format;
    text::adapter(
        context.lang,
        &format.typed(&lever.wrench).line(),
        &format.typed(&lever.adapter).line(),
        &format.typed(&lever.angle).line(),
    )
}

/// Corners by name.
pub(super) fn corners(context: &ReportContext, corners: &[Corner]) -> String {
    let names = corners
        .iter()
        .map(|corner| text::corner(context.lang, *corner));
    names.collect::<Vec<_>>().join(", ")
}

fn moved_line(context: &ReportContext, moved: &Moved) -> String {
    let state = text::hold_state(context.lang, moved.to);
    text::loose_row(context.lang, &items(context, &moved.items), state)
}

/// The outcome of a proof after the work.
pub(super) fn proof(context: &ReportContext, outcome: &After) -> String {
    context.say(match outcome {
        After::Pass { .. } => Say::ProofPassed,
        After::Blocked { .. } => Say::ProofFailed,
        After::NotJudged { .. } => Say::NotDone,
    })
}

/// How the dial stood for a set.
fn dial_setup_line(context: &ReportContext, setup: &DialSetup) -> String {
    let way = way_lines(context.lang, context.format, &setup.way).into_iter();
    let way: Vec<String> = way.map(|(_, value)| value).collect();
    let corner = text::corner_title(context.lang, setup.corner);
    format!("{corner}: {}", way.join(", "))
}

fn reading_line(context: &ReportContext, reading: &Reading) -> String {
    let side = context.word(match reading.side {
        Side::Push => ReportWord::Push,
        Side::Pull => ReportWord::Pull,
    });
    format!(
        "{}, {} {}, {side}: {} {}",
        text::corner_title(context.lang, reading.corner),
        context.word(ReportWord::Round),
        reading.round,
        context.format.marked(reading.divisions.as_typed()),
        context.say(Say::Divisions)
    )
}

/// What is due, by when and after how far.
pub(super) fn due_line(context: &ReportContext, due: &Due) -> String {
    let what = text::due_kind(context.lang, due.kind);
    match &due.distance {
        Some(distance) => {
            let distance = context.format.typed(distance).line();
            format!(
                "{what}: {}",
                text::retorque_due(context.lang, &due.date, &distance)
            )
        }
        None => text::due_on(context.lang, what, &due.date),
    }
}

/// How it ended, and who took charge.
pub(super) fn ended_line(context: &ReportContext, ended: &Ended) -> String {
    let title = text::ending(context.lang, ended.ending).0;
    match ended.charge {
        Some(charge) => format!("{title}: {}", text::charge(context.lang, charge)),
        None => title.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn facts_of_the_vehicle_are_reported_in_words() {
        let context = |field, value| vehicle_value(Lang::English, field, value);
        for (field, code) in [
            (VehicleField::Kind, "bolted_driven"),
            (VehicleField::Fixing, "nuts"),
            (VehicleField::Power, "combustion"),
            (VehicleField::ParkingBrake, "rear"),
            (VehicleField::Caliper, "sliding"),
        ] {
            assert_ne!(context(field, code), code);
            assert_eq!(context(field, "typed by hand"), "typed by hand");
        }
        assert_eq!(context(VehicleField::Caliper, "sliding"), "Sliding caliper");
        assert_eq!(context(VehicleField::Studs, "5"), "5");
    }
}
