//! 17: lengths with an error in the plane.

use hubslate::trade::play::uncertainty::Contribution;
use hubslate::trade::runout::Reach;
use hubslate::units::{Length, LengthUnit};
use serde_json::{Value, json};

use crate::rows::Row;

pub fn computed(row: &Row) -> Option<Value> {
    let mm = |name| Length::new(row.number(name), LengthUnit::Millimetre).unwrap();
    let scatter = Contribution {
        u: row.number("u"),
        dof: row.dof(),
    };
    let reach = Reach::new(mm("read"), scatter, Length::ZERO).unwrap();
    let length = |of: Length| Some(json!(of.in_unit(LengthUnit::Millimetre)));
    match row.quantity() {
        "reach.conformance" => Some(json!(reach.conformance(mm("limit")))),
        "reach.estimate" => length(reach.estimate()),
        "reach.low" => length(reach.interval().0),
        "reach.high" => length(reach.interval().1),
        _ => None,
    }
}
