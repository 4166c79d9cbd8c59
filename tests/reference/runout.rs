//! 03: waves in a series, and the rotor on every stud.

use hubslate::trade::play::{Dial, DialKind, Divisions};
use hubslate::trade::runout::{
    Arrow, Fit, MeasuredAs, Order, Series, Spot, Studs, Undetermined, fit, positions, separate,
};
use hubslate::units::{Angle, AngleUnit, Length, LengthUnit};
use serde_json::{Map, Value, json};

use crate::rows::Row;

pub fn computed(row: &Row) -> Option<Value> {
    match row.quantity() {
        "harmonics.equal" => Some(equal(row)),
        "harmonics.least_squares" => Some(least_squares(row)),
        "indexing" => Some(indexing(row)),
        "separate_hub_and_rotor" => Some(apart(row)),
        _ => None,
    }
}

/// A dial whose division is a millimetre, so that a reading is a length.
fn dial() -> Dial {
    let graduation = Length::new(1.0, LengthUnit::Millimetre).unwrap();
    Dial::new(graduation, 1000, DialKind::Plunger).unwrap()
}

fn degrees(value: f64) -> Angle {
    Angle::new(value, AngleUnit::Degree).unwrap()
}

fn wave(recorded: &mut Map<String, Value>, nth: u8, arrow: &Arrow) {
    recorded.insert(format!("A{nth}"), json!(arrow.amplitude().mm()));
    recorded.insert(format!("phi{nth}_deg"), phase(arrow));
}

fn phase(arrow: &Arrow) -> Value {
    json!(arrow.phase().map(|phase| phase.in_unit(AngleUnit::Degree)))
}

fn waves(recorded: &mut Map<String, Value>, fit: &Fit) {
    wave(recorded, 1, &fit.first);
    if let Some(second) = &fit.second {
        wave(recorded, 2, second);
    }
}

fn equal(row: &Row) -> Value {
    let needles: Vec<_> = row
        .numbers("readings")
        .into_iter()
        .map(Divisions::new)
        .collect();
    let series = Series::equally_spaced(dial(), &needles).unwrap();
    let both = fit(&series, Order::Second);
    // Four readings have no second wave; the row says so by having none.
    let fit = both.or_else(|_| fit(&series, Order::First)).unwrap();
    assert!((fit.mean.mm() - series.mean().mm()).abs() < 1e-12);
    let mut recorded = Map::new();
    recorded.insert("mean".to_owned(), json!(series.mean().mm()));
    recorded.insert("tir".to_owned(), json!(series.tir().mm()));
    waves(&mut recorded, &fit);
    Value::Object(recorded)
}

fn least_squares(row: &Row) -> Value {
    let angles = row.numbers("theta_deg").into_iter();
    let spots = angles
        .zip(row.numbers("readings"))
        .map(|(angle, reading)| Spot {
            angle: degrees(angle),
            needle: Divisions::new(reading).unwrap(),
            left_out: None,
        });
    let series = Series::read(dial(), spots.collect()).unwrap();
    let order = if row.number("order") < 2.0 {
        Order::First
    } else {
        Order::Second
    };
    let fit = match fit(&series, order) {
        Ok(fit) => fit,
        Err(Undetermined::Rank { rank, needed }) => {
            return json!({ "rank": rank, "needed": needed, "cond": null });
        }
        Err(bunched) => panic!("{bunched:?}"),
    };
    let needed = order.unknowns();
    let mut recorded = Map::new();
    // A fit that was not refused determines all of its unknowns.
    recorded.insert("rank".to_owned(), json!(needed));
    recorded.insert("needed".to_owned(), json!(needed));
    recorded.insert("cond".to_owned(), json!(fit.condition));
    recorded.insert("c0".to_owned(), json!(fit.mean.mm()));
    recorded.insert("rms_resid".to_owned(), json!(fit.rms.mm()));
    recorded.insert("tir".to_owned(), json!(series.tir().mm()));
    waves(&mut recorded, &fit);
    Value::Object(recorded)
}

fn arrow(row: &Row, amplitude: &str, phase: &str) -> Arrow {
    let length = Length::new(row.number(amplitude), LengthUnit::Millimetre).unwrap();
    Arrow::known(length, degrees(row.number(phase)), Length::ZERO)
}

fn studs(row: &Row) -> Studs {
    Studs::new(row.number("studs") as u8).unwrap()
}

fn indexing(row: &Row) -> Value {
    let recorded = MeasuredAs::Apart {
        hub: arrow(row, "hub_A1", "hub_phi_deg"),
        rotor: arrow(row, "rotor_A1", "rotor_phi_deg"),
    };
    let best_first = positions(&recorded, studs(row)).unwrap();
    let mut by_stud = best_first.clone();
    by_stud.sort_by_key(|position| position.stud);
    let height = |stud: usize| by_stud[stud].wobble.amplitude().mm();
    // The lowest stud of those that are worst, as the file counts them.
    let worst = (0..by_stud.len()).fold(0, |worst, stud| {
        if height(stud) > height(worst) + 1e-12 {
            stud
        } else {
            worst
        }
    });
    json!({
        "A1": by_stud.iter().map(|one| one.wobble.amplitude().mm()).collect::<Vec<_>>(),
        "phi_deg": by_stud.iter().map(|one| phase(&one.wobble)).collect::<Vec<_>>(),
        "best_k": best_first[0].stud,
        "worst_k": worst,
        "best_tir_first_harmonic": best_first[0].reach().mm(),
    })
}

fn apart(row: &Row) -> Value {
    let one = (0, arrow(row, "assembled_A1_k0", "assembled_phi_k0"));
    let other = (
        row.number("k") as u8,
        arrow(row, "assembled_A1_k", "assembled_phi_k"),
    );
    let (hub, rotor) = separate(studs(row), one, other).unwrap();
    json!({
        "hub_A1": hub.amplitude().mm(),
        "hub_phi_deg": phase(&hub),
        "rotor_A1": rotor.amplitude().mm(),
        "rotor_phi_deg": phase(&rotor),
    })
}
