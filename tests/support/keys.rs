//! What the keys of a step write.

use hubslate::job::entry::{Event, Moved, Quantity, Reply, Signed};
use hubslate::job::{JobState, group_items};
use hubslate::trade::fastening::SpecItem;
use hubslate::trade::wheel_end::{Form, Item, ItemKind, ItemState, Measured, PlannedStep, StepKey};

/// What a key of a step writes: the answer, and what it does to the loose list.
pub fn done(sheet: &JobState, planned: &PlannedStep, reply: Reply) -> Vec<Event> {
    let mut whats = vec![Event::Answered(planned.key, reply)];
    for change in &planned.changes {
        let all = group_items(sheet, planned.key.corner.unwrap(), change.group);
        let items = all
            .into_iter()
            .filter(|item| change.only.is_none_or(|only| only == item.number));
        whats.push(moved(planned.key, items.collect(), change.to));
    }
    whats
}

pub fn moved(step: StepKey, items: Vec<Item>, to: ItemState) -> Event {
    Event::Moved(Moved {
        step,
        items,
        to,
        wrench: None,
    })
}

pub fn signed(step: StepKey) -> Event {
    Event::Signed(Signed {
        step,
        strokes: "M24 84C40 30 62 30 66 78C70 108 92 46 118 60C140 72 150 96 176 70L232 62"
            .to_owned(),
    })
}

/// Whether a reply is of the kind that a form asks for.
pub fn fits(form: &Form, reply: &Reply) -> bool {
    match (form, reply) {
        (Form::Choice(picks), Reply::Picked(pick)) => picks.contains(pick),
        (Form::Number(Measured::Odometer), Reply::Number(Quantity::Distance(_)))
        | (Form::Number(Measured::HubHeat), Reply::Number(Quantity::Temperature(_)))
        | (Form::Swing, Reply::Felt(_)) => true,
        _ => false,
    }
}

/// The spec by which a group is tightened.
pub fn spec_of(group: ItemKind) -> SpecItem {
    match group {
        ItemKind::AxleNut => SpecItem::AxleNut,
        ItemKind::HubBolts => SpecItem::HubBolts,
        ItemKind::BracketBolts => SpecItem::BracketBolts,
        ItemKind::CaliperPins => SpecItem::CaliperPins,
        ItemKind::LugNuts => SpecItem::LugNuts,
        other => panic!("{} is no fastener", other.code()),
    }
}
