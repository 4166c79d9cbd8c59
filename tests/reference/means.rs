//! 16: means with their intervals.

use hubslate::trade::mean::mean;
use serde_json::{Value, json};

use crate::rows::Row;

pub fn computed(row: &Row) -> Option<Value> {
    let mean = mean(&row.numbers("values")).unwrap();
    match row.quantity() {
        "mean.low" => Some(json!(mean.low)),
        "mean.mean" => Some(json!(mean.mean)),
        "mean.high" => Some(json!(mean.high)),
        _ => None,
    }
}
