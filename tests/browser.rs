//! The browser tests, as one test binary: builds the release of the app twice, runs Playwright in
//! Chromium over it, and closes with a line in cargo's own form.
//!
//! `cargo test --test browser -- WORDS` runs the tests with these words in their names.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode};
use std::time::Instant;

/// What one run of Playwright says of itself.
#[derive(Default)]
struct Count {
    passed: u64,
    failed: u64,
    skipped: u64,
    filtered: u64,
}

fn main() -> ExitCode {
    let asked: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = asked
        .iter()
        .map(String::as_str)
        .filter(|a| !a.starts_with('-'))
        .collect();
    let begun = Instant::now();
    if asked.iter().any(|argument| argument == "--list") {
        let names = names();
        names.iter().for_each(|name| println!("{name}: test"));
        println!("\n{} tests, 0 benchmarks", names.len());
        return ExitCode::SUCCESS;
    }
    let names = names();
    let asked_for =
        |name: &String| words.is_empty() || words.iter().any(|word| name.contains(word));
    let filtered = names.iter().filter(|name| !asked_for(name)).count() as u64;
    // `cargo test SOMETHING` hands the word to every test binary: nothing to build for nothing.
    if !words.is_empty() && filtered == names.len() as u64 {
        return close(
            &Count {
                filtered,
                ..Count::default()
            },
            begun,
        );
    }
    match run(&words) {
        Ok(count) => close(&Count { filtered, ..count }, begun),
        Err(why) => {
            println!("browser: {why}");
            close(
                &Count {
                    failed: 1,
                    ..Count::default()
                },
                begun,
            )
        }
    }
}

fn run(words: &[&str]) -> Result<Count, String> {
    let work = root().join("target/browser");
    let (first, second, results) = (
        work.join("dist-1"),
        work.join("dist-2"),
        work.join("results"),
    );
    timed("browser and packages", || dev(&["browsers"]))?;
    timed("build", || dev(&["build", path_text(&first)?]))?;
    // A quick look may be built by another profile, which weighs what nobody promised.
    if std::env::var_os("CARGO_PROFILE_WEB_OPT_LEVEL").is_none() {
        weigh(&first)?;
    }
    timed("second build", || second_build(&first, &second))?;
    let (report, failed) = (results.join("report.json"), results.join("failed.txt"));
    let _ = fs::remove_file(&failed);
    // An old report must not speak for a run that died.
    let _ = fs::remove_file(&report);
    let mut playwright = Command::new("npx");
    playwright
        .args(["--no-install", "playwright", "test"])
        .current_dir(root().join("tests/e2e"));
    if !words.is_empty() {
        let patterns: Vec<String> = words.iter().map(|word| literal(word)).collect();
        playwright.args(["--grep", &patterns.join("|")]);
    }
    playwright
        .env("HUBSLATE_DIST_1", &first)
        .env("HUBSLATE_DIST_2", &second)
        .env("HUBSLATE_COMMAND", env!("CARGO_BIN_EXE_hubslate"));
    playwright
        .env("HUBSLATE_RESULTS", &results)
        .env_remove("NO_COLOR");
    let ended_well = timed("playwright", || {
        playwright
            .status()
            .map(|status| status.success())
            .map_err(|why| format!("npx: {why}"))
    })?;
    let count = read_report(&report, &failed)?;
    if ended_well != (count.failed == 0) {
        return Err("Playwright's exit and its report disagree".to_owned());
    }
    Ok(count)
}

/// What the first screen loads, packed, and what comes after it must not grow; the budgets are 450 kB
/// for the first screen and 750 for all.
fn weigh(build: &Path) -> Result<(), String> {
    const MOST_AT_FIRST: u64 = 710_000;
    const MOST_IN_ALL: u64 = 975_000;
    let (mut at_first, mut in_all) = (0, 0);
    for file in fs::read_dir(build)
        .map_err(|why| why.to_string())?
        .flatten()
    {
        let name = file.file_name().to_string_lossy().into_owned();
        if !name.ends_with(".gz") {
            continue;
        }
        let bytes = file.metadata().map_err(|why| why.to_string())?.len();
        in_all += bytes;
        // The script that loads the second part is there from the start.
        if !name.starts_with("late-") || name.ends_with(".js.gz") {
            at_first += bytes;
        }
    }
    println!("browser: {at_first} bytes gzip to the first screen, {in_all} in all");
    if at_first == 0 || at_first == in_all {
        return Err("the build is not packed, or not divided".to_owned());
    }
    // A build that is made in a hurry is larger than what is hosted.
    let hurried = env::var_os("CARGO_PROFILE_WEB_OPT_LEVEL").is_some();
    if !hurried && (MOST_AT_FIRST < at_first || MOST_IN_ALL < in_all) {
        return Err(format!(
            "{MOST_AT_FIRST} bytes to the first screen and {MOST_IN_ALL} in all at most"
        ));
    }
    Ok(())
}

/// A copy with one byte more in one style sheet: what an honest update looks like.
fn second_build(first: &Path, second: &Path) -> Result<(), String> {
    let _ = fs::remove_dir_all(second);
    copy(first, second).map_err(|why| format!("copying the build: {why}"))?;
    let style = file_named(second, "base-", ".css").ok_or("the build has no base style sheet")?;
    let mut text = fs::read_to_string(&style).map_err(|why| why.to_string())?;
    text.push('\n');
    fs::write(&style, text).map_err(|why| why.to_string())?;
    drop_integrity(&second.join("index.html"), &style)?;
    let mut precache = Command::new(env!("CARGO_BIN_EXE_precache"));
    ended_well("precache", precache.arg(second).status())
}

/// The page names the hash of the unchanged style sheet; the second build does without.
fn drop_integrity(page: &Path, style: &Path) -> Result<(), String> {
    let name = style
        .file_name()
        .and_then(|name| name.to_str())
        .ok_or("a name that is no text")?;
    let text = fs::read_to_string(page).map_err(|why| why.to_string())?;
    let (before, after) = text
        .split_once(name)
        .ok_or("the page does not link its style sheet")?;
    let (quote, rest) = after
        .split_once(" integrity=\"")
        .ok_or("the link has no integrity")?;
    let (_, rest) = rest.split_once('"').ok_or("the integrity has no end")?;
    fs::write(page, format!("{before}{name}{quote}{rest}")).map_err(|why| why.to_string())
}

/// Counts what the report says, and leaves what failed, with why, in a file of its own.
fn read_report(path: &Path, failed: &Path) -> Result<Count, String> {
    let text = fs::read_to_string(path).map_err(|_| "Playwright wrote no report".to_owned())?;
    let report: serde_json::Value = serde_json::from_str(&text).map_err(|why| why.to_string())?;
    let number = |name: &str| {
        let found = report
            .pointer(&format!("/stats/{name}"))
            .and_then(serde_json::Value::as_u64);
        found.ok_or(format!("the report has no count of {name}"))
    };
    let mut names = Vec::new();
    failures(&report, &mut names);
    fs::write(failed, names.join("\n")).map_err(|why| why.to_string())?;
    // Faults outside any test, such as a spec that does not load, are counted as failures.
    let outside = report
        .pointer("/errors")
        .and_then(|errors| errors.as_array())
        .map_or(0, Vec::len);
    Ok(Count {
        passed: number("expected")?,
        failed: number("unexpected")? + number("flaky")? + outside as u64,
        skipped: number("skipped")?,
        filtered: 0,
    })
}

/// The names of the specs that failed, each with its file and why, anywhere in a suite.
fn failures(suite: &serde_json::Value, names: &mut Vec<String>) {
    let text = |of: &serde_json::Value, name| of.get(name).map(ToString::to_string);
    let list = |name| {
        suite
            .get(name)
            .and_then(|it| it.as_array())
            .into_iter()
            .flatten()
    };
    for spec in list("specs").filter(|spec| spec.get("ok") == Some(&false.into())) {
        let of = [text(spec, "file"), text(spec, "title")];
        names.push(of.map(Option::unwrap_or_default).join(" "));
        let results = spec.pointer("/tests/0/results");
        let results = results.and_then(|it| it.as_array()).into_iter().flatten();
        let why = results.filter_map(|result| text(result.pointer("/error")?, "message"));
        names.extend(why);
    }
    list("suites").for_each(|inner| failures(inner, names));
}

fn close(count: &Count, begun: Instant) -> ExitCode {
    let word = if count.failed == 0 { "ok" } else { "FAILED" };
    println!(
        "\ntest result: {word}. {} passed; {} failed; {} ignored; 0 measured; {} filtered out; \
         finished in {:.2}s\n",
        count.passed,
        count.failed,
        count.skipped,
        count.filtered,
        begun.elapsed().as_secs_f64()
    );
    if count.failed == 0 {
        ExitCode::SUCCESS
    } else {
        ExitCode::from(101)
    }
}

/// The names of all tests, each with its file before it, as Playwright's own filter sees them.
///
/// A test begins a line with `test("its name"`; tests in a loop or a group would not be seen.
fn names() -> Vec<String> {
    let specs = fs::read_dir(root().join("tests/e2e")).expect("tests/e2e is here");
    let mut names = Vec::new();
    for path in specs.flatten().map(|entry| entry.path()) {
        let file = path
            .file_name()
            .unwrap_or_default()
            .to_string_lossy()
            .into_owned();
        if file.ends_with(".spec.mjs") {
            let text = fs::read_to_string(&path).expect("a spec is text");
            let named = text
                .lines()
                .filter_map(|line| line.strip_prefix("test(\"")?.split_once('"'));
            names.extend(named.map(|(name, _)| format!("{file} {name}")));
        }
    }
    names.sort();
    names
}

/// `word` as a regular expression that means the word itself.
fn literal(word: &str) -> String {
    word.chars()
        .flat_map(|c| {
            if c.is_alphanumeric() || c == ' ' {
                vec![c]
            } else {
                vec!['\\', c]
            }
        })
        .collect()
}

fn timed<T>(what: &str, act: impl FnOnce() -> Result<T, String>) -> Result<T, String> {
    let begun = Instant::now();
    let outcome = act();
    println!(
        "browser: {what} took {:.1} s",
        begun.elapsed().as_secs_f64()
    );
    outcome
}

fn dev(arguments: &[&str]) -> Result<(), String> {
    ended_well(
        "dev",
        Command::new(env!("CARGO_BIN_EXE_dev"))
            .args(arguments)
            .status(),
    )
}

fn ended_well(what: &str, status: std::io::Result<std::process::ExitStatus>) -> Result<(), String> {
    match status {
        Ok(status) if status.success() => Ok(()),
        Ok(status) => Err(format!("{what} ended with {status}")),
        Err(why) => Err(format!("{what} could not be run: {why}")),
    }
}

fn copy(from: &Path, to: &Path) -> std::io::Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let path = entry?.path();
        let target = to.join(path.file_name().unwrap_or_default());
        if path.is_dir() {
            copy(&path, &target)?;
        } else {
            fs::copy(&path, &target)?;
        }
    }
    Ok(())
}

fn file_named(dir: &Path, start: &str, end: &str) -> Option<PathBuf> {
    let files = fs::read_dir(dir).ok()?.flatten();
    files.map(|entry| entry.path()).find(|path| {
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        name.starts_with(start) && name.ends_with(end)
    })
}

fn path_text(path: &Path) -> Result<&str, String> {
    path.to_str()
        .ok_or_else(|| "the project's path is no text".to_owned())
}

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}
