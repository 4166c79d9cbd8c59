//! Building the app and another page, and letting a script measure both in one run.

use std::path::Path;
use std::process::{Command, ExitCode};

/// Builds the page that `dev` calls `other`, and runs `script` with the folders of both.
pub fn measured(other: &str, script: &str) -> ExitCode {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let work = root.join("target/bench-pages");
    let (app, page) = (work.join("app"), work.join(other));
    let dev = || Command::new(env!("CARGO_BIN_EXE_dev"));
    let all_well = went_well(dev().arg("browsers"))
        && went_well(dev().arg("build").arg(&app))
        && went_well(dev().arg(other).arg(&page))
        && went_well(
            Command::new("node")
                .arg(root.join("tests/bench").join(script))
                .env("HUBSLATE_DIST_1", &app)
                .env("HUBSLATE_OTHER", &page),
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
