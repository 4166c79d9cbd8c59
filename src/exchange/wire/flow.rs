//! Slots, confirmations and the shop's settings as they are stored.

use serde::{Deserialize, Serialize};

use crate::exchange::wire::card::{TypedText, raise_typed, typed};
use crate::exchange::wire::money::{
    LineText, TaxText, lower_line, lower_tax, raise_line, raise_tax,
};
use crate::job::entry::{Confirmation, DayTime, Held, LogId, Shop, ShopRetorque, Slot, Template};
use crate::trade::wheel_end::Kind;

/// When, and by which van.
#[derive(Serialize, Deserialize)]
pub(super) struct SlotText {
    day: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    time: Option<String>,
    van: String,
}

/// What the shop has of one device in one log.
#[derive(Serialize, Deserialize)]
pub(super) struct HeldText {
    log: String,
    device: String,
    through: u64,
    count: u64,
    digest: String,
}

/// The shop's settings.
#[derive(Serialize, Deserialize)]
pub(super) struct ShopText {
    currency: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    tax: Option<TaxText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    labour: Option<i64>,
    warranty: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    share: Option<[u8; 2]>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    retorque: Option<RetorqueText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    keep_days: Option<u16>,
    templates: Vec<TemplateText>,
}

#[derive(Serialize, Deserialize)]
struct RetorqueText {
    after: TypedText,
    days: u16,
}

#[derive(Serialize, Deserialize)]
struct TemplateText {
    kind: String,
    lines: Vec<LineText>,
}

pub(super) fn lower_slot(slot: &Slot) -> SlotText {
    SlotText {
        day: slot.day.to_string(),
        time: slot.time.map(|time| time.to_string()),
        van: slot.van.clone(),
    }
}

pub(super) fn raise_slot(stored: &SlotText) -> Option<Slot> {
    Some(Slot {
        day: stored.day.parse().ok()?,
        time: match &stored.time {
            Some(time) => Some(DayTime::parse(time)?),
            None => None,
        },
        van: stored.van.clone(),
    })
}

pub(super) fn lower_confirmation(confirmation: &Confirmation) -> Vec<HeldText> {
    let held = |held: &Held| HeldText {
        log: held.log.0.clone(),
        device: held.device.clone(),
        through: held.through,
        count: held.count,
        digest: held.digest.clone(),
    };
    confirmation.held.iter().map(held).collect()
}

pub(super) fn raise_confirmation(stored: Vec<HeldText>) -> Confirmation {
    let held = |stored: HeldText| Held {
        log: LogId(stored.log),
        device: stored.device,
        through: stored.through,
        count: stored.count,
        digest: stored.digest,
    };
    Confirmation {
        held: stored.into_iter().map(held).collect(),
    }
}

pub(super) fn lower_shop(shop: &Shop) -> ShopText {
    let template = |template: &Template| TemplateText {
        kind: template.kind.code().to_owned(),
        lines: template.lines.iter().map(lower_line).collect(),
    };
    ShopText {
        currency: shop.currency.clone(),
        tax: shop.tax.as_ref().map(lower_tax),
        labour: shop.labour,
        warranty: shop.warranty.clone(),
        share: shop.share.map(|(low, high)| [low, high]),
        retorque: shop.retorque.as_ref().map(|rule| RetorqueText {
            after: typed(&rule.after),
            days: rule.days,
        }),
        keep_days: shop.keep_days,
        templates: shop.templates.iter().map(template).collect(),
    }
}

pub(super) fn raise_shop(stored: ShopText) -> Option<Shop> {
    let template = |stored: TemplateText| {
        Some(Template {
            kind: Kind::from_code(&stored.kind)?,
            lines: stored
                .lines
                .into_iter()
                .map(raise_line)
                .collect::<Option<_>>()?,
        })
    };
    let templates = stored.templates.into_iter().map(template);
    Some(Shop {
        currency: stored.currency,
        tax: match stored.tax {
            Some(tax) => Some(raise_tax(&tax)?),
            None => None,
        },
        labour: stored.labour,
        warranty: stored.warranty,
        share: stored.share.map(|[low, high]| (low, high)),
        retorque: match stored.retorque {
            Some(rule) => Some(ShopRetorque {
                after: raise_typed(rule.after)?,
                days: rule.days,
            }),
            None => None,
        },
        keep_days: stored.keep_days,
        templates: templates.collect::<Option<_>>()?,
    })
}
