//! The instruments on board as they are stored.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use crate::exchange::wire::card::{Gauge, TypedText, lower_dial, raise_dial, raise_typed, typed};
use crate::exchange::wire::what::{Event, StandText};
use crate::job::entry::Carried;
use crate::job::kit::MoreKit;
use crate::trade::fastening::{Upkeep, Wrench};
use crate::units::{Torque, TorqueUnit};

/// A wrench: its range as numbers in its own unit.
#[derive(Serialize, Deserialize)]
pub(super) struct WrenchText {
    name: String,
    low: f64,
    high: f64,
    unit: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    graduation: Option<TypedText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    checked: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    clicks: Option<u32>,
}

/// The stored form of the instruments.
pub(super) fn lower_carried(carried: &Carried) -> Event {
    let wrench = |wrench: &Wrench| WrenchText {
        name: wrench.name.clone(),
        low: as_marked(wrench.low, wrench.unit),
        high: as_marked(wrench.high, wrench.unit),
        unit: wrench.unit.code().to_owned(),
        graduation: wrench.upkeep.graduation.as_ref().map(typed),
        checked: wrench.upkeep.checked.map(|day| day.to_string()),
        clicks: (wrench.upkeep.clicks > 0).then_some(wrench.upkeep.clicks),
    };
    let more = &carried.more;
    Event::Carried {
        wrenches: carried.wrenches.iter().map(wrench).collect(),
        dial: lower_dial(&carried.dial),
        dials: more.dials.iter().map(lower_dial).collect(),
        stands: more
            .stands
            .iter()
            .map(|stand| StandText {
                name: stand.name.clone(),
                rating: typed(&stand.rating),
            })
            .collect(),
        angle_gauge: more.angle_gauge,
        share: more.share.map(|(low, high)| [low, high]),
        dial_due: carried.dial_due.map(|day| day.to_string()),
        dial_error: more.dial_error.as_ref().map(typed),
        angle_due: more.angle_due.map(|day| day.to_string()),
    }
}

/// The number that stands on the wrench: converting there and back leaves a last bit over, so that
/// the short number is taken wherever it means the same torque.
fn as_marked(torque: Torque, unit: TorqueUnit) -> f64 {
    let exact = torque.in_unit(unit);
    let short: f64 = format!("{exact:.11e}").parse().unwrap_or(exact);
    if Torque::new(short, unit) == Ok(torque) {
        short
    } else {
        exact
    }
}

/// The instruments of a stored form.
pub(super) fn raise_carried(
    wrenches: Vec<WrenchText>,
    dial: &Gauge,
    more: MoreKit,
    dial_due: Option<String>,
) -> Option<Carried> {
    let wrench = |stored: WrenchText| {
        let unit = TorqueUnit::from_code(&stored.unit)?;
        let graduation = match stored.graduation {
            Some(typed) => Some(raise_typed::<TorqueUnit>(typed)?),
            None => None,
        };
        let checked = match stored.checked {
            Some(day) => Some(day.parse::<NaiveDate>().ok()?),
            None => None,
        };
        Some(Wrench {
            name: stored.name,
            low: Torque::new(stored.low, unit).ok()?,
            high: Torque::new(stored.high, unit).ok()?,
            unit,
            upkeep: Upkeep {
                graduation,
                checked,
                clicks: stored.clicks.unwrap_or(0),
            },
        })
    };
    Some(Carried {
        wrenches: wrenches.into_iter().map(wrench).collect::<Option<_>>()?,
        dial: raise_dial(dial)?,
        more,
        dial_due: match dial_due {
            Some(day) => Some(day.parse().ok()?),
            None => None,
        },
    })
}
