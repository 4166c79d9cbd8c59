//! The technician's pages: everything that was looked up, measured, answered and turned.

use super::block::Block;
use super::entry_line::{corners, ended_line, number, vehicle_value};
use super::measured::{dial_rows, readings};
use super::specs::{limit_value, not_looked_up, spec_lines};
use super::time::when;
use super::{ReportContext, answers, fasteners, reason, record};
use crate::job::Key;
use crate::job::angled::{AngleGauge, angle_gauge, angle_specs};
use crate::job::entry::{Decided, Entry, Event, KitItem, PersonField, Reply, VehicleField};
use crate::job::evidence::as_recorded;
use crate::job::judge::limit;
use crate::text::{self, Desk, ReportWord, Say};
use crate::trade::fastening::calibration::CheckDue;
use crate::trade::fastening::{SpecItem, Wrench};
use crate::trade::play::Limit;
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{Start, Step, StepKey};
use crate::units::{LengthUnit, Unit};

/// All of them, in the order in which they are looked for.
pub(super) fn pages(context: &ReportContext) -> Vec<Block> {
    let mut blocks = job(context);
    blocks.extend(super::paper::from_paper(context));
    blocks.extend(specs(context));
    blocks.push(context.heading(ReportWord::Decisions));
    for corner in context.corners() {
        blocks.extend(decisions(context, *corner));
    }
    blocks.push(context.heading(ReportWord::Readings));
    for corner in context.corners() {
        blocks.extend(readings(context, *corner));
    }
    blocks.extend(super::runout::runs_round(context));
    blocks.extend(super::thickness::measured_through(context));
    blocks.push(context.heading(ReportWord::Answers));
    blocks.extend(answers::answers(context));
    blocks.extend(super::removed_part::removed_parts(context));
    blocks.push(context.heading(ReportWord::NotDoneHead));
    blocks.push(match answers::not_done(context) {
        lines if lines.is_empty() => context.sentence(ReportWord::NothingNotDone),
        lines => Block::List(lines),
    });
    blocks.extend(fasteners::fasteners(context));
    blocks.extend(super::bill::reckoned(context));
    blocks.extend(record::record(context));
    blocks
}

fn job(context: &ReportContext) -> Vec<Block> {
    let mut rows = Vec::new();
    for field in PersonField::ALL {
        if let Some(value) = context.sheet.person(*field) {
            rows.push((
                text::person_field(context.lang, *field).to_owned(),
                value.to_owned(),
            ));
        }
    }
    rows.extend(vehicle(context));
    rows.extend(course(context));
    let mut blocks = vec![context.heading(ReportWord::Job), Block::Rows(rows)];
    if let Some(words) = context.sheet.complaint() {
        blocks.push(Block::Subheading(context.word(ReportWord::YourWords)));
        blocks.push(Block::Quote(words.to_owned()));
    }
    blocks.extend(super::cause::line(context).map(Block::Sentence));
    blocks.extend(instruments(context));
    blocks
}

fn vehicle(context: &ReportContext) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    for field in VehicleField::ALL {
        let Some(value) = context.sheet.vehicle(*field) else {
            continue;
        };
        let value = vehicle_value(context.lang, *field, value);
        rows.push((text::vehicle_field(context.lang, *field).to_owned(), value));
    }
    rows.push((
        context.word(ReportWord::Corners),
        corners(context, context.corners()),
    ));
    if let Some(Reply::Number(odometer)) = context.sheet.reply(StepKey::once(Step::Odometer)) {
        rows.push((context.say(Say::Odometer), number(context, odometer)));
    }
    rows
}

/// When an entry was written, and by whom where the phone's holder has given a name.
fn noted(context: &ReportContext, entry: &Entry) -> String {
    let time = when(context.lang, &entry.at);
    if entry.by.is_empty() {
        time
    } else {
        format!("{time}, {}", entry.by)
    }
}

/// How the job began and ended, and by whom.
fn course(context: &ReportContext) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    let opened = context
        .sheet
        .counting()
        .find(|e| matches!(e.what, Event::Opened(_)));
    if let Some(opened) = opened {
        rows.push((context.word(ReportWord::Started), noted(context, opened)));
    }
    if let Some(opened) = context.sheet.opened() {
        let from = match opened.start {
            Start::AtHome => Say::StartAtHome,
            Start::AtCar => Say::StartAtCar,
        };
        rows.push((context.word(ReportWord::StartedFrom), context.say(from)));
    }
    if let (Some(ended), Some(entry)) = (context.sheet.ended(), context.sheet.holds(&Key::Ended)) {
        let line = ended_line(context, ended);
        rows.push((
            context.word(ReportWord::Ended),
            format!("{line}, {}", noted(context, entry)),
        ));
    }
    rows
}

fn instruments(context: &ReportContext) -> Vec<Block> {
    let Some(carried) = context.sheet.carried() else {
        return Vec::new();
    };
    let mut rows = dial_rows(context, &carried.dial);
    rows.extend(
        carried
            .wrenches
            .iter()
            .map(|wrench| (wrench.name.clone(), range(context, wrench))),
    );
    rows.extend(angle_row(context));
    vec![
        Block::Subheading(context.word(ReportWord::Instruments)),
        Block::Rows(rows),
    ]
}

/// The angle gauge, where a spec asks for an angle and one is on board.
fn angle_row(context: &ReportContext) -> Option<(String, String)> {
    if angle_specs(context.sheet).is_empty()
        || angle_gauge(context.sheet, None) == AngleGauge::Missing
    {
        return None;
    }
    let due = context.sheet.carried()?.more.angle_due;
    let said = text::desk(context.lang, Desk::OnBoard);
    let said = due.map_or(said.to_owned(), |day| {
        text::due_on(context.lang, said, &day.to_string())
    });
    Some((
        text::kit_item(context.lang, KitItem::AngleGauge).to_owned(),
        said,
    ))
}

fn range(context: &ReportContext, wrench: &Wrench) -> String {
    let at = |torque| context.format.torque_in(torque, wrench.unit, 0).number;
    let range = format!(
        "{} – {}\u{a0}{}",
        at(wrench.low),
        at(wrench.high),
        wrench.unit.symbol()
    );
    match wrench.upkeep.checked {
        Some(day) => format!(
            "{range}, {}",
            text::checked_on(context.lang, &day.to_string())
        ),
        None => {
            let unknown = text::check_due(context.lang, CheckDue::Unknown);
            format!("{range}, {unknown}")
        }
    }
}

fn specs(context: &ReportContext) -> Vec<Block> {
    let mut blocks = vec![
        context.heading(ReportWord::Specs),
        context.sentence(ReportWord::ManufacturerWins),
    ];
    let day = context.opened_day();
    let mut stale = false;
    for (_, item) in crate::job::ready::specs(context.sheet) {
        let Some(spec) = context.sheet.spec(item) else {
            blocks.push(Block::Rows(vec![(
                text::spec_item(context.lang, item, context.plan.fitted.fixing).to_owned(),
                context.word(ReportWord::NoSpec),
            )]));
            continue;
        };
        let mut lines = spec_lines(
            context.lang,
            context.format,
            spec,
            context.plan.fitted.fixing,
        );
        let line = day.and_then(|day| not_looked_up(context.lang, spec, day));
        if let Some(line) = line {
            stale = true;
            lines.push((context.word(ReportWord::SpecAge), line));
        }
        blocks.push(Block::Rows(lines));
    }
    if !limit(context.sheet).is_manufacturers() {
        blocks.push(Block::Sentence(house_limit(
            context,
            &default_limit(context),
            false,
        )));
        blocks.push(context.sentence(ReportWord::HouseLimitSay));
    }
    if stale {
        blocks.push(context.sentence(ReportWord::NotLookedUpSay));
    }
    blocks
}

/// The default limit that a decision of this job was made by; today's before there is one.
fn default_limit(context: &ReportContext) -> Limit {
    let decided = context
        .corners()
        .iter()
        .filter_map(|c| context.sheet.decided(*c));
    let sets = decided.flat_map(|decided| &decided.inputs.sets);
    let mut recorded = sets.map(|(_, set)| set.limit);
    let recorded = recorded.find(|limit| !limit.is_manufacturers());
    recorded.unwrap_or_else(|| limit(context.sheet))
}

/// Which default limit was used, in both units, and why: no manufacturer's limit was found, or it
/// is for another method.
pub(super) fn house_limit(context: &ReportContext, limit: &Limit, apart: bool) -> String {
    let thou = context
        .format
        .length_in(limit.value, LengthUnit::Inch, 3)
        .line();
    let value = limit_value(context.lang, context.format, limit, None);
    let value = if value == thou {
        value
    } else {
        format!("{value} {}", text::also_value(context.lang, &thou))
    };
    if apart {
        text::default_limit_used(context.lang, &value)
    } else {
        text::house_limit_used(context.lang, &value)
    }
}

fn decisions(context: &ReportContext, corner: Corner) -> Vec<Block> {
    let last = context.sheet.decided(corner).map(|decided| decided.nth);
    let mut blocks = Vec::new();
    for nth in 1..=2 {
        let Some(decided) = context.sheet.decided_nth(corner, nth) else {
            continue;
        };
        blocks.push(Block::Subheading(text::corner_decision(
            context.lang,
            corner,
            decided.decision,
        )));
        blocks.push(Block::Rows(recorded(context, decided)));
        if Some(nth) == last {
            blocks.extend(grounds(context, decided));
        }
    }
    if blocks.is_empty() {
        let name = text::corner_title(context.lang, corner);
        blocks.push(Block::Sentence(format!(
            "{name}: {}",
            context.word(ReportWord::NotDecided)
        )));
    }
    blocks
}

fn recorded(context: &ReportContext, decided: &Decided) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    let key = Key::Decided(decided.corner, decided.nth);
    if let Some(entry) = context.sheet.holds(&key) {
        rows.push((context.word(ReportWord::When), noted(context, entry)));
    }
    rows.push((context.word(ReportWord::Rules), decided.rules.to_string()));
    let codes: Vec<String> = decided
        .reasons
        .iter()
        .map(|code| code.replace('_', " "))
        .collect();
    if !codes.is_empty() {
        rows.push((context.word(ReportWord::RecordedReasons), codes.join(", ")));
    }
    if decided.again {
        rows.push((context.word(ReportWord::AskedAgain), context.say(Say::Yes)));
    }
    rows
}

/// The reasons with their figures, what it rests on and what was not done, as it was recorded.
fn grounds(context: &ReportContext, decided: &Decided) -> Vec<Block> {
    let now = as_recorded(decided);
    let mut blocks = Vec::new();
    let reasons = now
        .reasons
        .iter()
        .map(|r| reason::sentence(context.lang, context.format, r));
    blocks.push(Block::List(reasons.collect()));
    let rests_on = now
        .rests_on
        .iter()
        .map(|ground| text::ground(context.lang, *ground));
    let not_done = now
        .not_done
        .iter()
        .map(|test| text::test(context.lang, *test));
    let mut rows = vec![(
        context.word(ReportWord::RestsOn),
        rests_on.collect::<Vec<_>>().join(", "),
    )];
    if !now.not_done.is_empty() {
        rows.push((
            context.word(ReportWord::NotChecked),
            not_done.collect::<Vec<_>>().join(", "),
        ));
    }
    blocks.push(Block::Rows(rows));
    blocks
}

/// The spec of the play, if the limit is the manufacturer's.
pub(super) fn limit_spec<'a>(
    context: &ReportContext<'a>,
) -> Option<&'a crate::trade::fastening::Spec> {
    context
        .sheet
        .spec(SpecItem::PlayLimit)
        .filter(|_| limit(context.sheet).is_manufacturers())
}
