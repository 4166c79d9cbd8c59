//! Each fastener with its spec, the wrench and the time, and everything else that moved.

use super::ReportContext;
use super::block::Block;
use super::entry_line::{entry as entry_line, item_name, items};
use super::specs::spec_value;
use super::time::when;
use crate::job::angled::{AngleBy, AngleGauge, angle_gauge, angles};
use crate::job::entry::{Entry, EntryId, Event, Moved};
use crate::job::interruption::TAKE_OVER;
use crate::job::kit;
use crate::job::loose::{Wrenches, wrenches};
use crate::job::manual_item::named;
use crate::job::turn::spec_item;
use crate::map::OrderedMap;
use crate::text::{self, Customer, ReportWord};
use crate::trade::fastening::Stage;
use crate::trade::wheel_end::{Item, ItemKind, ItemState};
use crate::units::{TorqueUnit, Typed};

/// With what everything was turned.
struct Used<'a> {
    wrenches: Wrenches<'a>,
    angles: OrderedMap<&'a EntryId, AngleBy>,
}

/// The fasteners brought to their spec, then the loose list as it ran and as it stands.
pub(super) fn fasteners(context: &ReportContext) -> Vec<Block> {
    let mut blocks = Vec::new();
    let used = Used {
        wrenches: wrenches(context.sheet),
        angles: angles(context.sheet),
    };
    let turned: Vec<Vec<String>> = context
        .sheet
        .counting()
        .flat_map(|entry| turned(context, &used, entry))
        .collect();
    if !turned.is_empty() {
        blocks.push(context.heading(ReportWord::Fasteners));
        blocks.push(Block::Table {
            head: [
                ReportWord::ItemHead,
                ReportWord::Target,
                ReportWord::Wrench,
                ReportWord::SetTo,
                ReportWord::When,
            ]
            .map(|word| context.word(word))
            .to_vec(),
            rows: turned,
        });
    }
    blocks.extend(mishaps(context));
    blocks.push(context.heading(ReportWord::LooseList));
    blocks.push(still_loose(context));
    let moves: Vec<Vec<String>> = context
        .sheet
        .counting()
        .filter_map(|entry| other_move(context, entry))
        .collect();
    if !moves.is_empty() {
        blocks.push(Block::Subheading(context.word(ReportWord::LooseMoves)));
        blocks.push(Block::Table {
            head: [
                ReportWord::Step,
                ReportWord::ItemHead,
                ReportWord::State,
                ReportWord::When,
            ]
            .map(|word| context.word(word))
            .to_vec(),
            rows: moves,
        });
    }
    blocks
}

/// What went wrong, with part and time, that it was fixed, with which adapter was turned, and how the
/// car was left and taken over.
fn mishaps(context: &ReportContext) -> Vec<Block> {
    let lines = context
        .sheet
        .counting()
        .filter_map(|entry| match &entry.what {
            Event::Mishap(_)
            | Event::Mended(_)
            | Event::Lever(..)
            | Event::Interrupted(_)
            | Event::Answered(TAKE_OVER, _) => {
                let line = entry_line(context, &entry.what);
                Some(format!("{line} ({})", when(context.lang, &entry.at)))
            }
            _ => None,
        });
    let lines: Vec<String> = lines.collect();
    if lines.is_empty() {
        return Vec::new();
    }
    vec![context.heading(ReportWord::WentWrong), Block::List(lines)]
}

/// What is off or loosened and not back, or that nothing is.
pub(super) fn still_loose(context: &ReportContext) -> Block {
    let loose = context.sheet.loose();
    if loose.is_empty() {
        return context.sentence(ReportWord::NothingLoose);
    }
    let rows = loose.iter().map(|(item, hold)| {
        let name = item_name(context.lang, context.sheet, *item);
        text::loose_row(context.lang, &name, text::hold_state(context.lang, *hold))
    });
    Block::List(rows.collect())
}

/// A fastener brought to its spec is a row of its own; a pass that began is told between them.
fn turned(context: &ReportContext, used: &Used, entry: &Entry) -> Vec<Vec<String>> {
    match &entry.what {
        Event::Pass(step) => {
            let name = format!(
                "{}: {}",
                context.step(*step),
                context.word(ReportWord::PassBegan)
            );
            let empty = String::new;
            vec![vec![
                name,
                empty(),
                empty(),
                empty(),
                when(context.lang, &entry.at),
            ]]
        }
        Event::Moved(moved) if is_turn(moved) => moved
            .items
            .iter()
            .map(|item| {
                let with = used.wrenches.get(&(&entry.id, *item)).copied();
                let (mut wrench, set) = wrench(context, with);
                if let Some(due) = with.and_then(|(name, _)| overdue(context, entry, name)) {
                    wrench = format!("{wrench}; {due}");
                }
                if has_angle(context, *item) {
                    wrench = format!("{wrench}; {}", angled(context, used, entry));
                }
                vec![
                    item_name(context.lang, context.sheet, *item),
                    target(context, *item),
                    wrench,
                    set,
                    when(context.lang, &entry.at),
                ]
            })
            .collect(),
        _ => Vec::new(),
    }
}

fn is_turn(moved: &Moved) -> bool {
    let fastener = |item: &Item| {
        item.group.is_fastener() || (item.group == ItemKind::Other && moved.wrench.is_some())
    };
    moved.to == ItemState::Done && moved.items.iter().any(fastener)
}

fn wrench(context: &ReportContext, used: Option<&(String, Typed<TorqueUnit>)>) -> (String, String) {
    match used {
        Some((name, set)) => {
            let twin = context.format.typed_twin(set).line();
            let set = context.format.typed(set).line();
            (
                name.clone(),
                format!("{set} {}", text::also_value(context.lang, &twin)),
            )
        }
        None => (
            context.word(ReportWord::NotRecorded),
            context.word(ReportWord::NotRecorded),
        ),
    }
}

/// That a wrench was past its check on the day it was used.
fn overdue(context: &ReportContext, entry: &Entry, name: &str) -> Option<String> {
    let due = kit::overdue(context.sheet, name, entry.at.day()?)?;
    let due = text::check_due(context.lang, due);
    Some(context.customer(Customer::WrenchOverdue(&due)))
}

/// Whether the spec of a fastener ends with an angle.
fn has_angle(context: &ReportContext, item: Item) -> bool {
    let spec = spec_item(item.group).and_then(|spec| context.sheet.spec(spec));
    matches!(
        spec.and_then(|spec| spec.stages().last()),
        Some(Stage::Angle(_))
    )
}

/// By what its angle was read, as the wrench is named; a gauge that was past its day is said to be.
fn angled(context: &ReportContext, used: &Used, entry: &Entry) -> String {
    let by = used.angles.get(&entry.id).copied();
    match (by, angle_gauge(context.sheet, entry.at.day())) {
        (Some(AngleBy::Gauge), AngleGauge::PastDue(day)) => {
            text::angle_gauge_past(context.lang, &day.to_string())
        }
        (Some(by), _) => text::angled(context.lang, by).to_owned(),
        (None, _) => text::angle_not_recorded(context.lang).to_owned(),
    }
}

fn target(context: &ReportContext, item: Item) -> String {
    if item.group == ItemKind::Other {
        let specs = named(context.sheet, item).into_iter().filter_map(|also| {
            let (torque, document) = also.spec.as_ref()?;
            Some(format!(
                "{}, {document}",
                context.format.typed(torque).line()
            ))
        });
        return specs.collect::<Vec<_>>().join("; ");
    }
    let spec = spec_item(item.group).and_then(|spec| context.sheet.spec(spec));
    spec.map_or_else(
        || context.word(ReportWord::NoSpec),
        |spec| spec_value(context.lang, context.format, spec),
    )
}

fn other_move(context: &ReportContext, entry: &Entry) -> Option<Vec<String>> {
    match &entry.what {
        Event::Moved(moved) if !is_turn(moved) => Some(vec![
            context.step(moved.step),
            items(context, &moved.items),
            text::hold_state(context.lang, moved.to).to_owned(),
            when(context.lang, &entry.at),
        ]),
        _ => None,
    }
}

#[cfg(test)]
mod tests;
