//! The technician's pages: everything that was looked up, measured, answered and turned.

use super::block::Block;
use super::cards::{card_lines, limit_value, not_looked_up};
use super::entry_line::{corners, ended_line, number, vehicle_value};
use super::measured::{dial_rows, readings};
use super::time::when;
use super::{ReportContext, answers, fasteners, reason, record};
use crate::job::Key;
use crate::job::angled::{AngleGauge, angle_cards, angle_gauge};
use crate::job::entry::{Decided, Entry, Event, KitItem, PersonField, Reply, VehicleField};
use crate::job::evidence::as_recorded;
use crate::job::judge::limit;
use crate::text::{self, Desk, ReportWord, Say};
use crate::trade::fastening::calibration::CheckDue;
use crate::trade::fastening::{CardItem, Wrench};
use crate::trade::play::Limit;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Start, Step, StepKey};
use crate::units::{LengthUnit, Unit};

/// All of them, in the order in which they are looked for.
pub(super) fn pages(told: &ReportContext) -> Vec<Block> {
    let mut blocks = job(told);
    blocks.extend(super::paper::from_paper(told));
    blocks.extend(cards(told));
    blocks.push(told.heading(ReportWord::Decisions));
    for corner in told.corners() {
        blocks.extend(decisions(told, *corner));
    }
    blocks.push(told.heading(ReportWord::Readings));
    for corner in told.corners() {
        blocks.extend(readings(told, *corner));
    }
    blocks.extend(super::runout::runs_round(told));
    blocks.extend(super::thickness::measured_through(told));
    blocks.push(told.heading(ReportWord::Answers));
    blocks.extend(answers::answers(told));
    blocks.extend(super::old_part::old_parts(told));
    blocks.push(told.heading(ReportWord::NotDoneHead));
    blocks.push(match answers::not_done(told) {
        lines if lines.is_empty() => told.sentence(ReportWord::NothingNotDone),
        lines => Block::List(lines),
    });
    blocks.extend(fasteners::fasteners(told));
    blocks.extend(super::bill::reckoned(told));
    blocks.extend(record::record(told));
    blocks
}

fn job(told: &ReportContext) -> Vec<Block> {
    let mut rows = Vec::new();
    for field in PersonField::ALL {
        if let Some(value) = told.sheet.person(*field) {
            rows.push((
                text::person_field(told.lang, *field).to_owned(),
                value.to_owned(),
            ));
        }
    }
    rows.extend(vehicle(told));
    rows.extend(course(told));
    let mut blocks = vec![told.heading(ReportWord::Job), Block::Rows(rows)];
    if let Some(words) = told.sheet.complaint() {
        blocks.push(Block::Subheading(told.word(ReportWord::YourWords)));
        blocks.push(Block::Quote(words.to_owned()));
    }
    blocks.extend(super::cause::line(told).map(Block::Sentence));
    blocks.extend(instruments(told));
    blocks
}

fn vehicle(told: &ReportContext) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    for field in VehicleField::ALL {
        let Some(value) = told.sheet.vehicle(*field) else {
            continue;
        };
        let value = vehicle_value(told.lang, *field, value);
        rows.push((text::vehicle_field(told.lang, *field).to_owned(), value));
    }
    rows.push((
        told.word(ReportWord::Corners),
        corners(told, told.corners()),
    ));
    if let Some(Reply::Number(odometer)) = told.sheet.reply(StepKey::once(Step::Odometer)) {
        rows.push((told.say(Say::Odometer), number(told, odometer)));
    }
    rows
}

/// When an entry was written, and by whom where the phone's holder has given a name.
fn noted(told: &ReportContext, entry: &Entry) -> String {
    let time = when(told.lang, &entry.at);
    if entry.by.is_empty() {
        time
    } else {
        format!("{time}, {}", entry.by)
    }
}

/// How the job began and ended, and by whom.
fn course(told: &ReportContext) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    let opened = told
        .sheet
        .counting()
        .find(|e| matches!(e.what, Event::Opened(_)));
    if let Some(opened) = opened {
        rows.push((told.word(ReportWord::Started), noted(told, opened)));
    }
    if let Some(opened) = told.sheet.opened() {
        let from = match opened.start {
            Start::AtHome => Say::StartAtHome,
            Start::AtCar => Say::StartAtCar,
        };
        rows.push((told.word(ReportWord::StartedFrom), told.say(from)));
    }
    if let (Some(ended), Some(entry)) = (told.sheet.ended(), told.sheet.holds(&Key::Ended)) {
        let line = ended_line(told, ended);
        rows.push((
            told.word(ReportWord::Ended),
            format!("{line}, {}", noted(told, entry)),
        ));
    }
    rows
}

fn instruments(told: &ReportContext) -> Vec<Block> {
    let Some(carried) = told.sheet.carried() else {
        return Vec::new();
    };
    let mut rows = dial_rows(told, &carried.dial);
    rows.extend(
        carried
            .wrenches
            .iter()
            .map(|wrench| (wrench.name.clone(), range(told, wrench))),
    );
    rows.extend(angle_row(told));
    vec![
        Block::Subheading(told.word(ReportWord::Instruments)),
        Block::Rows(rows),
    ]
}

/// The angle gauge, where a card asks for an angle and one is on board.
fn angle_row(told: &ReportContext) -> Option<(String, String)> {
    if angle_cards(told.sheet).is_empty() || angle_gauge(told.sheet, None) == AngleGauge::Missing {
        return None;
    }
    let due = told.sheet.carried()?.more.angle_due;
    let said = text::desk(told.lang, Desk::OnBoard);
    let said = due.map_or(said.to_owned(), |day| {
        text::due_on(told.lang, said, &day.to_string())
    });
    Some((
        text::kit_item(told.lang, KitItem::AngleGauge).to_owned(),
        said,
    ))
}

fn range(told: &ReportContext, wrench: &Wrench) -> String {
    let at = |torque| told.format.torque_in(torque, wrench.unit, 0).number;
    let range = format!(
        "{} – {}\u{a0}{}",
        at(wrench.low),
        at(wrench.high),
        wrench.unit.symbol()
    );
    match wrench.upkeep.checked {
        Some(day) => format!("{range}, {}", text::checked_on(told.lang, &day.to_string())),
        None => {
            let unknown = text::check_due(told.lang, CheckDue::Unknown);
            format!("{range}, {unknown}")
        }
    }
}

fn cards(told: &ReportContext) -> Vec<Block> {
    let mut blocks = vec![
        told.heading(ReportWord::SpecCards),
        told.sentence(ReportWord::ManufacturerWins),
    ];
    let day = told.opened_day();
    let mut stale = false;
    for (_, item) in crate::job::ready::cards(told.sheet) {
        let Some(card) = told.sheet.card(item) else {
            blocks.push(Block::Rows(vec![(
                text::card_item(told.lang, item, told.plan.fitted.fixing).to_owned(),
                told.word(ReportWord::NoCard),
            )]));
            continue;
        };
        let mut lines = card_lines(told.lang, told.format, card, told.plan.fitted.fixing);
        let line = day.and_then(|day| not_looked_up(told.lang, card, day));
        if let Some(line) = line {
            stale = true;
            lines.push((told.word(ReportWord::CardAge), line));
        }
        blocks.push(Block::Rows(lines));
    }
    if !limit(told.sheet).is_manufacturers() {
        blocks.push(Block::Sentence(house_limit(
            told,
            &default_limit(told),
            false,
        )));
        blocks.push(told.sentence(ReportWord::HouseLimitSay));
    }
    if stale {
        blocks.push(told.sentence(ReportWord::NotLookedUpSay));
    }
    blocks
}

/// The default limit that a decision of this job was made by; today's before there is one.
fn default_limit(told: &ReportContext) -> Limit {
    let decided = told.corners().iter().filter_map(|c| told.sheet.decided(*c));
    let sets = decided.flat_map(|decided| &decided.inputs.sets);
    let mut recorded = sets.map(|(_, set)| set.limit);
    let recorded = recorded.find(|limit| !limit.is_manufacturers());
    recorded.unwrap_or_else(|| limit(told.sheet))
}

/// Which default limit was used, in both units, and why: no manufacturer's limit was found, or it
/// is for another method.
pub(super) fn house_limit(told: &ReportContext, limit: &Limit, apart: bool) -> String {
    let thou = told
        .format
        .length_in(limit.value, LengthUnit::Inch, 3)
        .line();
    let value = limit_value(told.lang, told.format, limit, None);
    let value = if value == thou {
        value
    } else {
        format!("{value} {}", text::also_value(told.lang, &thou))
    };
    if apart {
        text::default_limit_used(told.lang, &value)
    } else {
        text::house_limit_used(told.lang, &value)
    }
}

fn decisions(told: &ReportContext, corner: Corner) -> Vec<Block> {
    let last = told.sheet.decided(corner).map(|decided| decided.nth);
    let mut blocks = Vec::new();
    for nth in 1..=2 {
        let Some(decided) = told.sheet.decided_nth(corner, nth) else {
            continue;
        };
        blocks.push(Block::Subheading(text::corner_decision(
            told.lang,
            corner,
            decided.decision,
        )));
        blocks.push(Block::Rows(recorded(told, decided)));
        if Some(nth) == last {
            blocks.extend(grounds(told, decided));
        }
    }
    if blocks.is_empty() {
        let name = text::corner_title(told.lang, corner);
        blocks.push(Block::Sentence(format!(
            "{name}: {}",
            told.word(ReportWord::NotDecided)
        )));
    }
    blocks
}

fn recorded(told: &ReportContext, decided: &Decided) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    let key = Key::Decided(decided.corner, decided.nth);
    if let Some(entry) = told.sheet.holds(&key) {
        rows.push((told.word(ReportWord::When), noted(told, entry)));
    }
    rows.push((told.word(ReportWord::Rules), decided.rules.to_string()));
    let codes: Vec<String> = decided
        .reasons
        .iter()
        .map(|code| code.replace('_', " "))
        .collect();
    if !codes.is_empty() {
        rows.push((told.word(ReportWord::RecordedReasons), codes.join(", ")));
    }
    if decided.again {
        rows.push((told.word(ReportWord::AskedAgain), told.say(Say::Yes)));
    }
    rows
}

/// The reasons with their figures, what it rests on and what was not done, as it was recorded.
fn grounds(told: &ReportContext, decided: &Decided) -> Vec<Block> {
    let now = as_recorded(decided);
    let mut blocks = Vec::new();
    let reasons = now
        .reasons
        .iter()
        .map(|r| reason::sentence(told.lang, told.format, r));
    blocks.push(Block::List(reasons.collect()));
    let rests_on = now
        .rests_on
        .iter()
        .map(|ground| text::ground(told.lang, *ground));
    let not_done = now.not_done.iter().map(|test| text::test(told.lang, *test));
    let mut rows = vec![(
        told.word(ReportWord::RestsOn),
        rests_on.collect::<Vec<_>>().join(", "),
    )];
    if !now.not_done.is_empty() {
        rows.push((
            told.word(ReportWord::NotChecked),
            not_done.collect::<Vec<_>>().join(", "),
        ));
    }
    blocks.push(Block::Rows(rows));
    blocks
}

/// The card of the play, if the limit is the manufacturer's.
pub(super) fn limit_card<'a>(
    told: &ReportContext<'a>,
) -> Option<&'a crate::trade::fastening::SpecCard> {
    told.sheet
        .card(CardItem::PlayLimit)
        .filter(|_| limit(told.sheet).is_manufacturers())
}
