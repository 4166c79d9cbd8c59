//! 05: check digits and model years.

use hubslate::trade::vehicle::vin::{CheckDigit, Vin, VinError, model_years};
use serde_json::{Value, json};

use crate::rows::Row;

pub fn computed(row: &Row) -> Option<Value> {
    match row.quantity() {
        "check" => Some(check(row.text("vin"))),
        "year.candidates" => {
            Some(model_years(letter(row, "code")).map_or(Value::Null, |(a, b)| json!([a, b])))
        }
        "year.light_vehicle" => Some(json!(light_vehicle_year(row)?)),
        _ => None,
    }
}

fn letter(row: &Row, name: &str) -> char {
    row.text(name).chars().next().unwrap()
}

fn check(text: &str) -> Value {
    let vin = match Vin::parse(text) {
        Ok(vin) => vin,
        Err(VinError::Length { .. }) => return json!({"valid": false, "reason": "length"}),
        Err(VinError::Character { at, .. }) => {
            return json!({"valid": false, "reason": "character", "at": at});
        }
    };
    match vin.check() {
        CheckDigit::Passes => json!({
            "valid": true,
            "check_digit": vin.expected_check_digit().to_string(),
            "weighted_sum": vin.weighted_sum(),
        }),
        CheckDigit::Differs { expected } => json!({
            "valid": false,
            "reason": "check digit",
            "expected_check_digit": expected.to_string(),
        }),
    }
}

/// The row gives two places of a number; the others do not matter for the year.
fn light_vehicle_year(row: &Row) -> Option<u16> {
    let (seventh, tenth) = (letter(row, "position7"), letter(row, "code"));
    Vin::parse(&format!("111111{seventh}11{tenth}1111111"))
        .unwrap()
        .light_vehicle_year()
}
