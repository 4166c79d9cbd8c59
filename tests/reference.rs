//! Published and independently computed values, row by row, against what the app computes.
//!
//! The files under `tests/reference/` are kept as they were made; `SOURCES.md` beside them says
//! where each comes from and which rows nothing here computes. Every row that is not on the list
//! of rows left out must be run, or the test fails.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

#[path = "reference/damage.rs"]
mod damage;
#[path = "reference/diagnosis.rs"]
mod diagnosis;
#[path = "reference/fasteners.rs"]
mod fasteners;
#[path = "reference/interop.rs"]
mod interop;
#[path = "reference/means.rs"]
mod means;
#[path = "reference/money.rs"]
mod money;
#[path = "reference/reach.rs"]
mod reach;
#[path = "reference/rows.rs"]
mod rows;
#[path = "reference/runout.rs"]
mod runout;
#[path = "reference/shares.rs"]
mod shares;
#[path = "reference/uncertainty.rs"]
mod uncertainty;
#[path = "reference/units.rs"]
mod units;
#[path = "reference/vin.rs"]
mod vin;
#[path = "reference/wheel_end.rs"]
mod wheel_end;

use rows::check_file;

#[test]
fn uncertainty_and_decisions_as_published() {
    check_file("01_uncertainty.json", 68, &[], uncertainty::computed);
}

#[test]
fn units_and_geometry_as_defined() {
    check_file("02_units_geometry.json", 44, &[], units::computed);
}

#[test]
fn waves_and_positions_as_computed_by_numpy() {
    check_file("03_runout.json", 23, &[], runout::computed);
}

#[test]
fn means_and_deviations_as_certified() {
    check_file("14_univariate.json", 5, &[], uncertainty::certified);
}

#[test]
fn fasteners_and_adapters_as_published() {
    check_file(
        "04_fasteners.json",
        70,
        fasteners::LEFT_OUT,
        fasteners::computed,
    );
}

#[test]
fn vehicle_numbers_as_regulated() {
    check_file("05_vin.json", 69, &[], vin::computed);
}

#[test]
fn estimates_as_reckoned_by_decimal_arithmetic() {
    check_file("13_money.json", 47, &[], money::computed);
}

#[test]
fn shares_as_reckoned_by_a_library() {
    check_file("15_shares.json", 26, &[], shares::computed);
}

#[test]
fn means_as_reckoned_by_a_library() {
    check_file("16_means.json", 30, &[], means::computed);
}

#[test]
fn lengths_with_an_error_in_the_plane_as_reckoned_by_a_library() {
    check_file("17_reach.json", 90, &[], reach::computed);
}

#[test]
fn tire_sizes_as_standardised() {
    let left_out = diagnosis::left_out(0, 2);
    check_file("06_tire.json", 75, left_out, diagnosis::tire);
}

#[test]
fn bearing_tones_as_published() {
    let left_out = diagnosis::left_out(2, 9);
    check_file("07_bearing.json", 32, left_out, diagnosis::bearing);
}

#[test]
fn sensors_as_defined() {
    let left_out = diagnosis::left_out(9, 11);
    check_file("09_wheel_speed.json", 10, left_out, diagnosis::wheel_speed);
}

#[test]
fn chances_and_gains_as_reckoned_by_a_library() {
    check_file("18_ranking.json", 125, &[], diagnosis::ranking);
}

#[test]
fn json_digests_ids_and_calendars_as_standardised() {
    check_file("12_interop.json", 35, interop::LEFT_OUT, interop::computed);
}

#[test]
fn every_row_left_out_is_named_in_the_sources() {
    let sources = std::fs::read_to_string(rows::folder().join("SOURCES.md")).unwrap();
    for quantity in fasteners::LEFT_OUT
        .iter()
        .chain(interop::LEFT_OUT)
        .chain(diagnosis::LEFT_OUT)
    {
        assert!(sources.contains(&format!("`{quantity}`")), "{quantity}");
    }
}
