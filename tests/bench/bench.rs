//! The numbers this project promises, measured on the release build in Chromium.
//!
//! Builds the app and the floor page, then lets `bench.mjs` measure both in one run.

mod pages;

use std::process::ExitCode;

fn main() -> ExitCode {
    pages::measured("floor", "bench.mjs")
}
