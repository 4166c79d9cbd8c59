//! Each fastener with its card, the wrench and the time, and everything else that moved.

use super::ReportContext;
use super::block::Block;
use super::cards::card_value;
use super::entry_line::{entry as entry_line, item_name, items};
use super::time::when;
use crate::job::angled::{AngleBy, AngleGauge, angle_gauge, angles};
use crate::job::entry::{Entry, EntryId, Event, Moved};
use crate::job::kit;
use crate::job::loose::{Wrenches, wrenches};
use crate::job::manual_item::named;
use crate::job::turn::card_item;
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

/// The fasteners brought to their card, then the loose list as it ran and as it stands.
pub(super) fn fasteners(told: &ReportContext) -> Vec<Block> {
    let mut blocks = Vec::new();
    let used = Used {
        wrenches: wrenches(told.sheet),
        angles: angles(told.sheet),
    };
    let turned: Vec<Vec<String>> = told
        .sheet
        .counting()
        .flat_map(|entry| turned(told, &used, entry))
        .collect();
    if !turned.is_empty() {
        blocks.push(told.heading(ReportWord::Fasteners));
        blocks.push(Block::Table {
            head: [
                ReportWord::ItemHead,
                ReportWord::Target,
                ReportWord::Wrench,
                ReportWord::SetTo,
                ReportWord::When,
            ]
            .map(|word| told.word(word))
            .to_vec(),
            rows: turned,
        });
    }
    blocks.extend(mishaps(told));
    blocks.push(told.heading(ReportWord::LooseList));
    blocks.push(still_loose(told));
    let moves: Vec<Vec<String>> = told
        .sheet
        .counting()
        .filter_map(|entry| other_move(told, entry))
        .collect();
    if !moves.is_empty() {
        blocks.push(Block::Subheading(told.word(ReportWord::LooseMoves)));
        blocks.push(Block::Table {
            head: [
                ReportWord::Step,
                ReportWord::ItemHead,
                ReportWord::State,
                ReportWord::When,
            ]
            .map(|word| told.word(word))
            .to_vec(),
            rows: moves,
        });
    }
    blocks
}

/// What went wrong, with part and time, that it was mended, and with which adapter was turned.
fn mishaps(told: &ReportContext) -> Vec<Block> {
    let lines = told.sheet.counting().filter_map(|entry| match &entry.what {
        Event::Mishap(_) | Event::Mended(_) | Event::Lever(..) => {
            let line = entry_line(told, &entry.what);
            Some(format!("{line} ({})", when(told.lang, &entry.at)))
        }
        _ => None,
    });
    let lines: Vec<String> = lines.collect();
    if lines.is_empty() {
        return Vec::new();
    }
    vec![told.heading(ReportWord::WentWrong), Block::List(lines)]
}

/// What is off or loosened and not back, or that nothing is.
pub(super) fn still_loose(told: &ReportContext) -> Block {
    let loose = told.sheet.loose();
    if loose.is_empty() {
        return told.sentence(ReportWord::NothingLoose);
    }
    let rows = loose.iter().map(|(item, hold)| {
        let name = item_name(told.lang, told.sheet, *item);
        text::loose_row(told.lang, &name, text::hold_state(told.lang, *hold))
    });
    Block::List(rows.collect())
}

/// A fastener brought to its card is a row of its own; a pass that began is told between them.
fn turned(told: &ReportContext, used: &Used, entry: &Entry) -> Vec<Vec<String>> {
    match &entry.what {
        Event::Pass(step) => {
            let name = format!("{}: {}", told.step(*step), told.word(ReportWord::PassBegan));
            let empty = String::new;
            vec![vec![
                name,
                empty(),
                empty(),
                empty(),
                when(told.lang, &entry.at),
            ]]
        }
        Event::Moved(moved) if is_turn(moved) => moved
            .items
            .iter()
            .map(|item| {
                let with = used.wrenches.get(&(&entry.id, *item)).copied();
                let (mut wrench, set) = wrench(told, with);
                if let Some(due) = with.and_then(|(name, _)| overdue(told, entry, name)) {
                    wrench = format!("{wrench}; {due}");
                }
                if has_angle(told, *item) {
                    wrench = format!("{wrench}; {}", angled(told, used, entry));
                }
                vec![
                    item_name(told.lang, told.sheet, *item),
                    target(told, *item),
                    wrench,
                    set,
                    when(told.lang, &entry.at),
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

fn wrench(told: &ReportContext, used: Option<&(String, Typed<TorqueUnit>)>) -> (String, String) {
    match used {
        Some((name, set)) => {
            let twin = told.format.typed_twin(set).line();
            let set = told.format.typed(set).line();
            (
                name.clone(),
                format!("{set} {}", text::also_value(told.lang, &twin)),
            )
        }
        None => (
            told.word(ReportWord::NotRecorded),
            told.word(ReportWord::NotRecorded),
        ),
    }
}

/// That a wrench was past its check on the day it was used.
fn overdue(told: &ReportContext, entry: &Entry, name: &str) -> Option<String> {
    let due = kit::overdue(told.sheet, name, entry.at.day()?)?;
    let due = text::check_due(told.lang, due);
    Some(told.customer(Customer::WrenchOverdue(&due)))
}

/// Whether the card of a fastener ends with an angle.
fn has_angle(told: &ReportContext, item: Item) -> bool {
    let card = card_item(item.group).and_then(|card| told.sheet.card(card));
    matches!(
        card.and_then(|card| card.stages().last()),
        Some(Stage::Angle(_))
    )
}

/// By what its angle was read, as the wrench is named; a gauge that was past its day is said to be.
fn angled(told: &ReportContext, used: &Used, entry: &Entry) -> String {
    let by = used.angles.get(&entry.id).copied();
    match (by, angle_gauge(told.sheet, entry.at.day())) {
        (Some(AngleBy::Gauge), AngleGauge::PastDue(day)) => {
            text::angle_gauge_past(told.lang, &day.to_string())
        }
        (Some(by), _) => text::angled(told.lang, by).to_owned(),
        (None, _) => text::angle_not_told(told.lang).to_owned(),
    }
}

fn target(told: &ReportContext, item: Item) -> String {
    if item.group == ItemKind::Other {
        let cards = named(told.sheet, item).into_iter().filter_map(|also| {
            let (torque, document) = also.card.as_ref()?;
            Some(format!("{}, {document}", told.format.typed(torque).line()))
        });
        return cards.collect::<Vec<_>>().join("; ");
    }
    let card = card_item(item.group).and_then(|card| told.sheet.card(card));
    card.map_or_else(
        || told.word(ReportWord::NoCard),
        |card| card_value(told.lang, told.format, card),
    )
}

fn other_move(told: &ReportContext, entry: &Entry) -> Option<Vec<String>> {
    match &entry.what {
        Event::Moved(moved) if !is_turn(moved) => Some(vec![
            told.step(moved.step),
            items(told, &moved.items),
            text::hold_state(told.lang, moved.to).to_owned(),
            when(told.lang, &entry.at),
        ]),
        _ => None,
    }
}

#[cfg(test)]
mod tests;
