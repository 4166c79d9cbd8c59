//! 04: adapters, and the scatter of preload at equal torque.

use hubslate::trade::fastening::{Lever, applied_torque, wrench_setting};
use hubslate::trade::play::uncertainty::type_a;
use hubslate::units::{Angle, AngleUnit, Length, LengthUnit, Torque, TorqueUnit};
use serde_json::{Value, json};

use crate::rows::Row;

/// Nothing here computes these yet; `SOURCES.md` says why.
pub const LEFT_OUT: &[&str] = &[
    "stress_area",
    "stress_area_inch",
    "proof_load",
    "j429.proof_yield_tensile_psi",
    "clamp_75pct_proof",
    "torque_KDF",
    "preload_stress",
    "joint_stiffness_constant",
    "service_stress",
    "torque_friction_model",
    "lead_angle",
    "nut_factor_K",
    "iso6789.deviation_over_10_Nm_percent",
    "iso6789.deviation_10_Nm_and_below_percent",
    "iso6789.interval_cycles",
    "iso6789.interval_months",
    "ac4313.calibrate_torque_wrench_at_least_every_months",
    "ac4313.table_7_1_tension_nut",
];

pub fn computed(row: &Row) -> Option<Value> {
    let number = match row.quantity() {
        "adapter_setting" => nm(wrench_setting(torque(row, "T"), lever(row)).unwrap()),
        "adapter_applied" => nm(applied_torque(torque(row, "setting"), lever(row)).unwrap()),
        "preload_mean" => type_a(&row.numbers("preload_kN")).unwrap().mean,
        "preload_sd" => type_a(&row.numbers("preload_kN")).unwrap().s,
        _ => return None,
    };
    Some(json!(number))
}

/// The formula is homogeneous: rows in any one unit of torque and of length may be run as these.
fn torque(row: &Row, name: &str) -> Torque {
    Torque::new(row.number(name), TorqueUnit::NewtonMetre).unwrap()
}

fn nm(torque: Torque) -> f64 {
    torque.in_unit(TorqueUnit::NewtonMetre)
}

fn lever(row: &Row) -> Lever {
    let length = |name| Length::new(row.number(name), LengthUnit::Millimetre).unwrap();
    Lever {
        wrench: length("L"),
        adapter: length("E"),
        angle: Angle::new(row.number("angle_deg"), AngleUnit::Degree).unwrap(),
    }
}
