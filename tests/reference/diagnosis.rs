//! 06 tires, 07 bearings, 09 wheel speeds, 18 the ranking of causes.

use hubslate::trade::answer::Answer;
use hubslate::trade::diagnosis::{
    Bearing, Cause, Clue, Complaint, Findings, TABLE, Test, Tones, Turning, coil_at_20, next_tests,
    pulses_per_second, rank,
};
use hubslate::trade::vehicle::TireSize;
use hubslate::units::{
    Angle, AngleUnit, Length, LengthUnit, Speed, SpeedUnit, Temperature, TemperatureUnit,
};
use serde_json::{Map, Value, json};

use crate::rows::Row;

/// What the app has no use for at a wheel end, by quantity.
pub const LEFT_OUT: &[&str] = &[
    "load_index_kg",
    "speed_symbol",
    "life_multiple",
    "C10_required_ball",
    "C10_weibull_ball",
    "C10_required_roller",
    "L10_ball",
    "L10h",
    "a1",
    "copper_resistivity",
    "copper_inferred_zero_resistance_degC",
];

/// Those of [`LEFT_OUT`] that stand in a file.
pub fn left_out(from: usize, to: usize) -> &'static [&'static str] {
    &LEFT_OUT[from..to]
}

pub fn tire(row: &Row) -> Option<Value> {
    let size = TireSize::parse(row.text("text")).unwrap();
    let circumference = size.circumference().mm();
    let per_mile = 1_609_344.0 / circumference;
    match row.quantity() {
        "size" => Some(json!({
            "width_mm": size.width_mm,
            "aspect": size.aspect,
            "rim_in": size.rim_in,
            "load_index": size.load_index,
            "speed_symbol": size.speed_symbol,
            "section_height_mm": size.section_height().mm(),
            "overall_diameter_mm": size.diameter().mm(),
            "circumference_mm": circumference,
            "rev_per_km": 1e6 / circumference,
            "rev_per_mile": per_mile,
        })),
        "size.rev_per_mile" => Some(json!(per_mile)),
        "size.listed_overall_diameter" => Some(json!(size.diameter().mm())),
        _ => None,
    }
}

pub fn bearing(row: &Row) -> Option<Value> {
    let length = |name| Length::new(row.number(name), LengthUnit::Millimetre).unwrap();
    let one = Bearing {
        elements: row.input("n").as_u64()?.try_into().unwrap(),
        element: length("d"),
        pitch: length("D"),
        contact: Angle::new(row.number("contact_deg"), AngleUnit::Degree).unwrap(),
    };
    let tones = |turning| one.tones(turning).unwrap();
    let Tones {
        outer,
        inner,
        element,
        cage,
    } = tones(Turning::Inner);
    match row.quantity() {
        "BPFO" => Some(json!(outer)),
        "BPFI" => Some(json!(inner)),
        "BSF" => Some(json!(element)),
        "2xBSF" => Some(json!(2.0 * element)),
        "FTF" => Some(json!(cage)),
        "BPFO_Hz" => Some(json!(outer * row.number("shaft_Hz"))),
        "BPFI_Hz" => Some(json!(inner * row.number("shaft_Hz"))),
        "orders" => Some(json!({"BPFO": outer, "BPFI": inner, "BSF": element, "FTF": cage})),
        "both_rings" => {
            let (turns, turning) = match row.number("inner_Hz") {
                0.0 => (row.number("outer_Hz"), Turning::Outer),
                turns => (turns, Turning::Inner),
            };
            let tones = tones(turning);
            Some(json!({
                "BPFO_Hz": tones.outer * turns,
                "BPFI_Hz": tones.inner * turns,
                "FTF_Hz": tones.cage * turns,
            }))
        }
        _ => None,
    }
}

pub fn wheel_speed(row: &Row) -> Option<Value> {
    match row.quantity() {
        "tone_ring_Hz" => {
            let round = row.number("overall_diameter_mm") * std::f64::consts::PI;
            let speed = Speed::new(row.number("km_h"), SpeedUnit::KilometrePerHour).unwrap();
            let turns = speed.in_unit(SpeedUnit::MetrePerSecond) * 1000.0 / round;
            let teeth = row.input("teeth").as_u64()?.try_into().unwrap();
            Some(json!(pulses_per_second(teeth, turns)))
        }
        "coil_R20_ohm" => {
            let coil = Temperature::new(row.number("T_degC"), TemperatureUnit::Celsius).unwrap();
            Some(json!(coil_at_20(row.number("R_ohm"), coil)))
        }
        _ => None,
    }
}

pub fn ranking(row: &Row) -> Option<Value> {
    let start = Findings::of(Complaint::from_code(row.text("complaint"))?);
    let found = row
        .input("found")
        .as_object()?
        .iter()
        .fold(start, |found, (clue, answer)| {
            let answer = Answer::from_code(answer.as_str().unwrap()).unwrap();
            found.with(Clue::from_code(clue).unwrap(), answer)
        });
    match row.quantity() {
        "chances" => {
            let all = rank(&TABLE, &found);
            let each = all
                .iter()
                .map(|one| (Cause::code(one.cause).to_owned(), json!(one.chance)));
            Some(Value::Object(each.collect::<Map<_, _>>()))
        }
        "gain_bits" => {
            let test = Test::from_code(row.text("test"))?;
            let all = next_tests(&TABLE, &found);
            all.iter()
                .find(|worth| worth.test == test)
                .map(|worth| json!(worth.bits))
        }
        _ => None,
    }
}
