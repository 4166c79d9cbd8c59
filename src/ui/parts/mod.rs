//! What fingers touch and eyes read, used by every screen.

pub mod below;
pub mod bytes;
pub mod camera;
pub mod draft;
pub mod field;
pub mod frame;
pub mod hold;
pub mod intake;
pub mod key;
pub mod needle;
pub mod pad;
pub mod panel;
pub mod picks;
pub mod picture;
pub mod practice;
pub mod press;
pub mod removed_way;
pub mod rows;
pub mod scan;
pub mod shares;
pub mod strip;
pub mod talk;
pub mod visits;
pub mod wrenches;

use crate::platform::clock;

/// The first day of this month on this phone, `YYYY-MM-DD`.
pub fn month_begins() -> String {
    let today = today();
    let month = today.get(..8).unwrap_or_default();
    format!("{month}01")
}

/// The time on this phone, `HH:MM`.
pub fn now_time() -> String {
    clock::now()
        .local()
        .and_then(|local| Some(local.time().to_string().get(..5)?.to_owned()))
        .unwrap_or_default()
}

/// The day on this phone, `YYYY-MM-DD`.
pub fn today() -> String {
    clock::now()
        .local()
        .map(|local| local.date().to_string())
        .unwrap_or_default()
}
