//! 02: conversions and the geometry at the dial.

use hubslate::trade::play::geometry::{cosine_factor, scaled_by_radius, true_travel};
use hubslate::units::{
    Angle, AngleUnit, Distance, DistanceUnit, Force, ForceUnit, Length, LengthUnit, Mass, MassUnit,
    Pressure, PressureUnit, Speed, SpeedUnit, Temperature, TemperatureUnit, Torque, TorqueUnit,
};
use serde_json::{Value, json};

use crate::rows::Row;

pub fn computed(row: &Row) -> Option<Value> {
    let number = match row.quantity() {
        "convert" => convert(row.number("value"), row.text("from"), row.text("to"))?,
        "cosine_factor" => cosine_factor(angle(row)).unwrap(),
        "true_from_indicated" => true_travel(mm(row.number("indicated")), angle(row))
            .unwrap()
            .mm(),
        "face_runout.scale_radius" => scaled_by_radius(
            mm(row.number("tir")),
            mm(row.number("r_measured")),
            mm(row.number("r_wanted")),
        )
        .unwrap()
        .mm(),
        _ => return None,
    };
    Some(json!(number))
}

fn mm(value: f64) -> Length {
    Length::new(value, LengthUnit::Millimetre).unwrap()
}

fn angle(row: &Row) -> Angle {
    Angle::new(row.number("angle_deg"), AngleUnit::Degree).unwrap()
}

/// The file calls the pound-force "pound" wherever it is a force or a torque.
fn convert(value: f64, from: &str, to: &str) -> Option<f64> {
    use LengthUnit::{Inch, Micrometre, Millimetre};
    use TorqueUnit::{KilogramMetre, NewtonMetre, PoundFoot, PoundInch};
    let length = |from, to| Length::new(value, from).unwrap().in_unit(to);
    let torque = |from, to| Torque::new(value, from).unwrap().in_unit(to);
    let speed = |from, to| Speed::new(value, from).unwrap().in_unit(to);
    Some(match (from, to) {
        ("inch", "millimeter") => length(Inch, Millimetre),
        ("inch", "micrometer") => length(Inch, Micrometre),
        ("millimeter", "inch") => length(Millimetre, Inch),
        ("mile", "kilometer") => Distance::new(value, DistanceUnit::Mile)
            .unwrap()
            .in_unit(DistanceUnit::Kilometre),
        ("pound", "newton") => Force::new(value, ForceUnit::Pound)
            .unwrap()
            .in_unit(ForceUnit::Newton),
        ("pound", "kilogram") => Mass::new(value, MassUnit::Pound)
            .unwrap()
            .in_unit(MassUnit::Kilogram),
        ("psi", "kilopascal") => Pressure::new(value, PressureUnit::Psi)
            .unwrap()
            .in_unit(PressureUnit::Kilopascal),
        ("pound*foot", "newton*meter") => torque(PoundFoot, NewtonMetre),
        ("pound*inch", "newton*meter") => torque(PoundInch, NewtonMetre),
        ("kilogram_force*meter", "newton*meter") => torque(KilogramMetre, NewtonMetre),
        ("kilogram_force*meter", "force_pound*foot") => torque(KilogramMetre, PoundFoot),
        ("newton*meter", "force_pound*foot") => torque(NewtonMetre, PoundFoot),
        ("mile/hour", "meter/second") => speed(SpeedUnit::MilePerHour, SpeedUnit::MetrePerSecond),
        ("mile/hour", "kilometer/hour") => {
            speed(SpeedUnit::MilePerHour, SpeedUnit::KilometrePerHour)
        }
        ("kilometer/hour", "mile/hour") => {
            speed(SpeedUnit::KilometrePerHour, SpeedUnit::MilePerHour)
        }
        ("degF", "degC") => Temperature::new(value, TemperatureUnit::Fahrenheit)
            .unwrap()
            .in_unit(TemperatureUnit::Celsius),
        _ => return None,
    })
}
