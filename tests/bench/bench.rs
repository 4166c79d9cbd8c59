//! The numbers this project promises, measured on the release build in Chromium.
//!
//! Builds the app and the floor page, then lets `bench.mjs` measure both in one run. Thousands of
//! jobs are put straight into the database there: the line of each comes from here, by the app's own
//! code.

mod pages;

use std::fs;
use std::path::Path;
use std::process::ExitCode;

use hubslate::exchange::read;
use hubslate::exchange::summary::Summary;
use hubslate::job::{fold, next, plan};
use hubslate::trade::wheel_end::procedure;

/// The jobs of which there are thousands.
const SAMPLES: [&str; 3] = ["replaced-hub", "declined-stop", "nothing-wrong"];

fn main() -> ExitCode {
    match write_lines() {
        Ok(()) => pages::measured("floor", "bench.mjs"),
        Err(why) => {
            eprintln!("the lines of the samples: {why}");
            ExitCode::FAILURE
        }
    }
}

/// Writes what the list of jobs keeps of each sample, by its name.
fn write_lines() -> Result<(), String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let work = root.join("target/bench-pages");
    let mut lines = serde_json::Map::new();
    for name in SAMPLES {
        lines.insert(name.to_owned(), line(root, name)?.into());
    }
    fs::create_dir_all(&work).map_err(|why| why.to_string())?;
    let text = serde_json::Value::Object(lines).to_string();
    fs::write(work.join("lines.json"), text).map_err(|why| why.to_string())
}

fn line(root: &Path, name: &str) -> Result<String, String> {
    let path = root.join(format!("public/sample/{name}.json"));
    let text = fs::read_to_string(path).map_err(|why| why.to_string())?;
    let file = read(&text).map_err(|why| format!("{name}: {why:?}"))?;
    let job = file.logs.into_iter().next().ok_or("a sample is empty")?;
    let sheet = fold(job.entries);
    let steps = procedure(&plan(&sheet));
    Ok(Summary::of(&job.id, &sheet, &steps, next(&sheet, &steps)).to_text())
}
