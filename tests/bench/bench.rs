//! The numbers this project promises, measured on the release build in Chromium.
//!
//! Builds the app and the floor page, then lets `bench.mjs` measure both in one run.

use std::path::Path;
use std::process::{Command, ExitCode};

fn main() -> ExitCode {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let work = root.join("target/bench-pages");
    let (app, floor) = (work.join("app"), work.join("floor"));
    let dev = || Command::new(env!("CARGO_BIN_EXE_dev"));
    let all_well = went_well(dev().arg("browsers"))
        && went_well(dev().arg("build").arg(&app))
        && went_well(dev().arg("floor").arg(&floor))
        && went_well(
            Command::new("node")
                .arg(root.join("tests/bench/bench.mjs"))
                .env("HUBSLATE_DIST_1", &app)
                .env("HUBSLATE_FLOOR", &floor),
        );
    if all_well {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}

fn went_well(command: &mut Command) -> bool {
    match command.status() {
        Ok(status) => status.success(),
        Err(why) => {
            eprintln!("{}: {why}", command.get_program().display());
            false
        }
    }
}
