//! 15: shares with their intervals.

use hubslate::trade::share::share;
use serde_json::{Value, json};

use crate::rows::Row;

pub fn computed(row: &Row) -> Option<Value> {
    let count = |name| usize::try_from(row.input(name).as_u64().unwrap()).unwrap();
    let share = share(count("k"), count("n"), row.number("confidence")).unwrap();
    match row.quantity() {
        "share.low" => Some(json!(share.low)),
        "share.high" => Some(json!(share.high)),
        _ => None,
    }
}
