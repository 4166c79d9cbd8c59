//! Bringing in the files of many phones: the reckoning in Chromium beside `JSON.parse`, the app with
//! its storage, and a search over ten thousand jobs. The same natively is `--bench join`.
//!
//! `HUBSLATE_JOBS` sets another number than 10,000.

use std::path::Path;
use std::process::{Command, ExitCode};

fn main() -> ExitCode {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let work = root.join("target/bench-pages");
    let (app, intake) = (work.join("app"), work.join("intake"));
    let dev = || Command::new(env!("CARGO_BIN_EXE_dev"));
    let all_well = went_well(dev().arg("browsers"))
        && went_well(dev().arg("build").arg(&app))
        && went_well(dev().arg("intake").arg(&intake))
        && went_well(
            Command::new("node")
                .arg(root.join("tests/bench/intake.mjs"))
                .env("HUBSLATE_DIST_1", &app)
                .env("HUBSLATE_INTAKE", &intake),
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
