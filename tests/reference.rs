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

#[path = "reference/fasteners.rs"]
mod fasteners;
#[path = "reference/rows.rs"]
mod rows;
#[path = "reference/uncertainty.rs"]
mod uncertainty;
#[path = "reference/units.rs"]
mod units;
#[path = "reference/vin.rs"]
mod vin;

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
fn every_row_left_out_is_named_in_the_sources() {
    let sources = std::fs::read_to_string(rows::folder().join("SOURCES.md")).unwrap();
    for quantity in fasteners::LEFT_OUT {
        assert!(sources.contains(&format!("`{quantity}`")), "{quantity}");
    }
}
