//! 13: estimates in lines, with tax by line or on the sum.

use hubslate::trade::money::{Estimate, Line, LineKind, TaxRounding, TaxRule, totals};
use hubslate::units::Decimal;
use serde_json::{Value, json};

use crate::rows::Row;

pub fn computed(row: &Row) -> Option<Value> {
    let decimal = |text: &str| Decimal::parse(text).unwrap();
    let line = |line: &Value| Line {
        kind: LineKind::Other,
        text: String::new(),
        quantity: decimal(line["quantity"].as_str().unwrap()),
        each: line["each"].as_i64().unwrap(),
        taxed: line["taxed"].as_bool().unwrap(),
        rate: line["rate"].as_str().map(decimal),
        corner: None,
    };
    let lines = row.input("lines").as_array().unwrap();
    let tax = TaxRule {
        percent: decimal(row.text("percent")),
        rounding: TaxRounding::from_code(row.text("rounding")).unwrap(),
    };
    let estimate = Estimate {
        lines: lines.iter().map(line).collect(),
        tax: Some(tax),
    };
    let totals = totals(&estimate).unwrap();
    Some(json!({"net": totals.net, "tax": totals.tax, "gross": totals.gross}))
}
