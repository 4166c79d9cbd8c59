//! What the keys of a step write.

use hubslate::job::entry::{Moved, Quantity, Reply, Signed, What};
use hubslate::job::{Sheet, group_items};
use hubslate::trade::fastening::CardItem;
use hubslate::trade::wheel_end::{Form, Group, Hold, Item, Measured, StepKey, StepSpec};

/// What a key of a step writes: the answer, and what it does to the loose list.
pub fn done(sheet: &Sheet, spec: &StepSpec, reply: Reply) -> Vec<What> {
    let mut whats = vec![What::Answered(spec.key, reply)];
    for change in &spec.changes {
        let all = group_items(sheet, spec.key.corner.unwrap(), change.group);
        let items = all
            .into_iter()
            .filter(|item| change.only.is_none_or(|only| only == item.number));
        whats.push(moved(spec.key, items.collect(), change.to));
    }
    whats
}

pub fn moved(step: StepKey, items: Vec<Item>, to: Hold) -> What {
    What::Moved(Moved {
        step,
        items,
        to,
        wrench: None,
    })
}

pub fn signed(step: StepKey) -> What {
    What::Signed(Signed {
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

/// The card by which a group is tightened.
pub fn card_of(group: Group) -> CardItem {
    match group {
        Group::AxleNut => CardItem::AxleNut,
        Group::HubBolts => CardItem::HubBolts,
        Group::BracketBolts => CardItem::BracketBolts,
        Group::CaliperPins => CardItem::CaliperPins,
        Group::WheelNuts => CardItem::WheelNuts,
        other => panic!("{} is no fastener", other.code()),
    }
}
