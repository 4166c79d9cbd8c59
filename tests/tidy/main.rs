//! The rules of the house that a program can check.
//!
//! Each rule is a function from a file's path and text to complaints. Its test first shows that
//! the rule catches a planted fault and lets honest text pass, then walks the tree.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

mod code;
mod outside;
mod rooms;
mod sentences;
mod style;

use std::fs;
use std::path::Path;
use std::process::Command;

/// A rule: what is wrong with this file, one sentence a fault.
type Rule = fn(path: &str, text: &str) -> Vec<String>;

/// Every file of the project, as git sees it: tracked, or new and not ignored.
fn files() -> Vec<String> {
    let root = env!("CARGO_MANIFEST_DIR");
    let list = ["ls-files", "--cached", "--others", "--exclude-standard"];
    let output = Command::new("git")
        .args(list)
        .current_dir(root)
        .output()
        .expect("git lists the files");
    assert!(
        output.status.success(),
        "git ls-files failed: {}",
        String::from_utf8_lossy(&output.stderr)
    );
    let text = String::from_utf8(output.stdout).unwrap();
    let here = |path: &&str| Path::new(root).join(path).is_file();
    let mut files: Vec<String> = text.lines().filter(here).map(str::to_owned).collect();
    files.sort();
    files.dedup();
    assert!(
        20 < files.len(),
        "only {} files were found: the walk is broken",
        files.len()
    );
    files
}

/// Checks the rule on a planted fault and on honest text, then on every file of the tree.
#[track_caller]
fn hold(rule: Rule, bad: &[(&str, &str)], good: &[(&str, &str)]) {
    for (path, text) in bad {
        assert!(
            !rule(path, text).is_empty(),
            "the rule misses a planted fault in {path}: {text}"
        );
    }
    for (path, text) in good {
        assert_eq!(
            rule(path, text),
            Vec::<String>::new(),
            "the rule refuses honest text in {path}"
        );
    }
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let complaints: Vec<String> = files()
        .iter()
        .filter_map(|path| Some((path, fs::read_to_string(root.join(path)).ok()?)))
        .flat_map(|(path, text)| rule(path, &text))
        .collect();
    assert!(complaints.is_empty(), "\n{}\n", complaints.join("\n"));
}

/// The lines that do the work, numbered: no comments, nothing under `#[cfg(test)]`.
fn working<'a>(path: &str, text: &'a str) -> Vec<(usize, &'a str)> {
    if path.ends_with("/tests.rs") || only_for_tests(path) {
        return Vec::new();
    }
    let mut lines = Vec::new();
    let mut closes: Option<String> = None;
    for (at, line) in text.lines().enumerate() {
        let indent = &line[..line.len() - line.trim_start().len()];
        match &closes {
            // The item ends at its brace, or at once if it is another file or a single line.
            Some(end) if line == end || (line.ends_with(';') && *end == format!("{indent}}}")) => {
                closes = None;
            }
            Some(_) => {}
            None if line.trim_start().starts_with("#[cfg(test)]") => {
                closes = Some(format!("{indent}}}"))
            }
            None => lines.push((at + 1, without_comment(line))),
        }
    }
    lines
}

/// Whether the module above declares this file under `#[cfg(test)]`, or is so declared itself.
fn only_for_tests(path: &str) -> bool {
    let Some((folder, name)) = path
        .strip_suffix(".rs")
        .and_then(|path| path.rsplit_once('/'))
    else {
        return false;
    };
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let above = [format!("{folder}/mod.rs"), format!("{folder}.rs")];
    let declared = format!("#[cfg(test)]\nmod {name};");
    above
        .iter()
        .any(|file| fs::read_to_string(root.join(file)).is_ok_and(|text| text.contains(&declared)))
        || only_for_tests(&format!("{folder}.rs"))
}

/// Cuts a line at `//`, unless that stands in an address such as `http://`.
fn without_comment(line: &str) -> &str {
    let starts = line.match_indices("//").map(|(at, _)| at);
    let cut = starts.filter(|at| !line[..*at].ends_with(':')).min();
    &line[..cut.unwrap_or(line.len())]
}

/// Whether `word` stands in `line` as a whole word.
fn has_word(line: &str, word: &str) -> bool {
    let part_of_name = |c: char| c.is_alphanumeric() || c == '_';
    line.match_indices(word).any(|(at, _)| {
        !line[..at].ends_with(part_of_name) && !line[at + word.len()..].starts_with(part_of_name)
    })
}

fn is_rust(path: &str, folder: &str) -> bool {
    path.starts_with(folder) && path.ends_with(".rs")
}

/// The room of a file: `trade` for `src/trade/play/mod.rs`.
fn room(path: &str) -> &str {
    let inside = path.strip_prefix("src/").unwrap_or_default();
    inside
        .split('/')
        .next()
        .unwrap_or_default()
        .trim_end_matches(".rs")
}

#[test]
fn the_top_level_holds_what_it_should_and_no_more() {
    let expected = [
        "Cargo.lock",
        "Cargo.toml",
        "DEVELOPERS.md",
        "LICENSE",
        "README.md",
        "Trunk.toml",
        "clippy.toml",
        "public",
        "src",
        "style",
        "tests",
    ];
    let all = files();
    let mut top: Vec<&str> = all
        .iter()
        .filter_map(|path| path.split('/').next())
        .collect();
    top.retain(|name| !name.starts_with('.'));
    top.dedup();
    assert_eq!(
        top, expected,
        "the top level is for what everybody must see first; move the rest down"
    );
}
