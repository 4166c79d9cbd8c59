//! 04: threads and what they bear, torque and clamp, adapters, preload scatter, calibration.

use hubslate::trade::fastening::calibration::{CYCLES, MONTHS, permitted_percent};
use hubslate::trade::fastening::clamp::{Finish, common_clamp, nut_factor, torque_for};
use hubslate::trade::fastening::strength::{grade_strengths, printed_area, proof_load};
use hubslate::trade::fastening::{Lever, PropertyClass, Thread, applied_torque, wrench_setting};
use hubslate::trade::play::uncertainty::type_a;
use hubslate::units::{
    Angle, AngleUnit, AreaUnit, Force, ForceUnit, Length, LengthUnit, PressureUnit, Torque,
    TorqueUnit,
};
use serde_json::{Value, json};

use crate::rows::Row;

/// Nothing here computes these yet; `SOURCES.md` says why.
pub const LEFT_OUT: &[&str] = &[
    "preload_stress",
    "joint_stiffness_constant",
    "service_stress",
    "torque_friction_model",
    "lead_angle",
    "ac4313.table_7_1_tension_nut",
];

pub fn computed(row: &Row) -> Option<Value> {
    let number = match row.quantity() {
        "adapter_setting" => nm(wrench_setting(torque(row, "T"), lever(row)).unwrap()),
        "adapter_applied" => nm(applied_torque(torque(row, "setting"), lever(row)).unwrap()),
        "stress_area" => metric(row)
            .stress_area()
            .in_unit(AreaUnit::SquareMillimetre),
        "stress_area_inch" => {
            let thread = Thread::parse(row.text("thread")).unwrap();
            thread.stress_area().in_unit(AreaUnit::SquareInch)
        }
        "proof_load" => proof(row),
        "j429.proof_yield_tensile_psi" => return Some(strengths(row)),
        "clamp_75pct_proof" => {
            let proof = pounds(row.number("At_in2") * row.number("Sp_psi"));
            common_clamp(proof).in_unit(ForceUnit::Pound)
        }
        "torque_KDF" => {
            let diameter = Length::new(row.number("d_in"), LengthUnit::Inch).unwrap();
            let torque = torque_for(row.number("K"), diameter, pounds(row.number("F_lbf")));
            torque.in_unit(torque_unit(row.unit()))
        }
        "nut_factor_K" => nut_factor(finish(row.text("condition"))),
        "iso6789.deviation_over_10_Nm_percent" => f64::from(permitted_percent(newton_metres(10.1))),
        "iso6789.deviation_10_Nm_and_below_percent" => {
            f64::from(permitted_percent(newton_metres(10.0)))
        }
        "iso6789.interval_cycles" => f64::from(CYCLES),
        "iso6789.interval_months" | "ac4313.calibrate_torque_wrench_at_least_every_months" => {
            f64::from(MONTHS)
        }
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

fn newton_metres(value: f64) -> Torque {
    Torque::new(value, TorqueUnit::NewtonMetre).unwrap()
}

fn pounds(value: f64) -> Force {
    Force::new(value, ForceUnit::Pound).unwrap()
}

fn torque_unit(printed: &str) -> TorqueUnit {
    match printed {
        "lbf*ft" => TorqueUnit::PoundFoot,
        "lbf*in" => TorqueUnit::PoundInch,
        other => panic!("{other}"),
    }
}

fn metric(row: &Row) -> Thread {
    let printed = format!("M{}x{}", row.number("d_mm"), row.number("P_mm"));
    Thread::parse(&printed).unwrap()
}

/// The row's own inputs are held against the table's: area to its printed digits.
fn proof(row: &Row) -> f64 {
    let thread = metric(row);
    let area = printed_area(&thread).in_unit(AreaUnit::SquareMillimetre);
    assert!((area - row.number("As_nom_mm2")).abs() < 1e-9, "{area}");
    let class = PropertyClass::from_code(row.text("class")).unwrap();
    proof_load(&thread, class)
        .unwrap()
        .in_unit(ForceUnit::Newton)
}

fn strengths(row: &Row) -> Value {
    let grade = row.text("grade").split(' ').next().unwrap();
    let class = PropertyClass::from_code(&format!("grade_{grade}")).unwrap();
    let psi = grade_strengths(class)
        .unwrap()
        .map(|it| it.in_unit(PressureUnit::Psi));
    // There and back through kPa leaves a last bit over; the printed figures are whole.
    assert!(psi.iter().all(|value| (value - value.round()).abs() < 1e-6));
    json!(psi.map(|value| value.round() as u64))
}

fn finish(printed: &str) -> Finish {
    match printed {
        "nonplated, black finish" => Finish::Black,
        "zinc-plated" => Finish::Zinc,
        "lubricated" => Finish::Lubricated,
        "cadmium-plated" => Finish::Cadmium,
        "anti-seize" => Finish::AntiSeize,
        other => panic!("{other}"),
    }
}
