//! Which room may know what, and which may name which.

use std::collections::{BTreeMap, BTreeSet};

use super::*;

/// What a pure room must not know: wire formats, the browser, the clock, randomness.
const IMPURE: [&str; 15] = [
    "serde",
    "serde_json",
    "leptos",
    "web_sys",
    "js_sys",
    "gloo",
    "gloo_storage",
    "wasm_bindgen",
    "chrono",
    "SystemTime",
    "Instant",
    "rand",
    "getrandom",
    "cfg(target_arch",
    "localStorage",
];

/// A day without a clock or a zone is a value; nothing else of chrono is let in.
fn is_a_day(line: &str) -> bool {
    let days = [
        "use chrono::NaiveDate;",
        "use chrono::{Days, NaiveDate};",
        "use chrono::{Months, NaiveDate};",
    ];
    days.contains(&line.trim())
}

fn purity(path: &str, text: &str) -> Vec<String> {
    if !is_rust(path, "src/") || !["units", "trade", "job"].contains(&room(path)) {
        return Vec::new();
    }
    let faults = working(path, text).into_iter().flat_map(|(at, line)| {
        IMPURE
            .iter()
            .filter(move |word| has_word(line, word) && !is_a_day(line))
            .map(move |word| (at, word))
    });
    faults
        .map(|(at, word)| {
            format!("{path}:{at}: `{word}` has no place here; take the value as an argument")
        })
        .collect()
}

#[test]
fn units_trade_and_job_are_pure() {
    hold(
        purity,
        &[
            ("src/trade/play/mod.rs", "use serde::Serialize;"),
            ("src/units/mod.rs", "#[cfg(target_arch = \"wasm32\")]"),
            ("src/job/fold.rs", "let now = std::time::Instant::now();"),
            (
                "src/job/fold.rs",
                "#[cfg(test)]\nmod tests {\n}\nuse chrono::Utc;",
            ),
        ],
        &[
            (
                "src/trade/play/mod.rs",
                "// serde is the business of exchange\nlet operand = 1;",
            ),
            (
                "src/job/fold.rs",
                "#[cfg(test)]\nmod tests {\n    use serde_json::Value;\n}",
            ),
            ("src/exchange/wire/mod.rs", "use serde::Serialize;"),
            ("src/trade/fastening/spec.rs", "use chrono::NaiveDate;"),
        ],
    );
}

/// Height of each room; a room may name only lower ones and itself.
const HEIGHTS: [(&str, u8); 10] = [
    ("units", 0),
    ("trade", 1),
    ("job", 2),
    ("text", 3),
    ("drawing", 3),
    ("report", 4),
    ("exchange", 5),
    ("platform", 5),
    ("slate", 6),
    ("ui", 7),
];

fn height(room: &str) -> Option<u8> {
    HEIGHTS
        .iter()
        .find(|(name, _)| *name == room)
        .map(|(_, height)| *height)
}

/// The rooms that a line of code names by `crate::…`, also inside `crate::{…}`.
fn named_rooms(code: &str) -> Vec<&str> {
    let word = |text: &'_ str| {
        text.find(|c: char| !c.is_alphanumeric() && c != '_')
            .unwrap_or(text.len())
    };
    let mut rooms = Vec::new();
    for (at, start) in code.match_indices("crate::") {
        let rest = &code[at + start.len()..];
        let Some(group) = rest.strip_prefix('{') else {
            rooms.push(&rest[..word(rest)]);
            continue;
        };
        let (mut depth, mut begins) = (0, true);
        for (at, c) in group.char_indices() {
            match c {
                '{' => depth += 1,
                '}' if depth == 0 => break,
                '}' => depth -= 1,
                ',' if depth == 0 => begins = true,
                c if begins && c.is_alphabetic() => {
                    rooms.push(&group[at..at + word(&group[at..])]);
                    begins = false;
                }
                _ => {}
            }
        }
    }
    rooms
}

fn direction(path: &str, text: &str) -> Vec<String> {
    let own = room(path);
    let (true, Some(level)) = (is_rust(path, "src/"), height(own)) else {
        return Vec::new();
    };
    let code: Vec<&str> = working(path, text)
        .into_iter()
        .map(|(_, line)| line)
        .collect();
    let code = code.join("\n");
    let wrong = |name: &&str| *name != own && height(name).is_some_and(|other| level <= other);
    let up = named_rooms(&code).into_iter().filter(wrong);
    up.map(|name| {
        format!("{path}: `{own}` must not name `{name}`; rooms use only those below them")
    })
    .collect()
}

#[test]
fn rooms_use_only_those_below_them() {
    hold(
        direction,
        &[
            ("src/trade/play/mod.rs", "use crate::job::Sheet;"),
            (
                "src/job/mod.rs",
                "use crate::{\n    trade::play,\n    ui::route,\n};",
            ),
            ("src/text/en.rs", "fn f(d: crate::drawing::Corner) {}"),
            ("src/units/mod.rs", "pub use crate::trade::{play, vehicle};"),
        ],
        &[
            (
                "src/job/mod.rs",
                "use crate::{trade::{play, ui_words}, units::Length, word};",
            ),
            ("src/ui/mod.rs", "use crate::slate::Slate;"),
            (
                "src/trade/vehicle/mod.rs",
                "use crate::trade::play;\n// crate::job is above",
            ),
        ],
    );
}

/// The modules of `job` that name one another in a circle, or name one that does.
fn in_circles(files: &[(String, String)]) -> Vec<String> {
    let module = |path: &str| {
        let inside = path.strip_prefix("src/job/")?;
        let end = inside.find(['/', '.'])?;
        Some(inside[..end].to_owned())
    };
    let mut names: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for (path, text) in files {
        let Some(own) = module(path).filter(|own| own != "mod") else {
            continue;
        };
        let lines = working(path, text).into_iter().map(|(_, line)| line);
        let code = lines.collect::<Vec<_>>().join("\n");
        // What stands in `job` is named as a room would be.
        let code = code.replace("crate::job::", "crate::");
        let named = named_rooms(&code).into_iter().map(str::to_owned);
        let others = named.filter(|name| *name != own);
        names.entry(own.clone()).or_default().extend(others);
    }
    loop {
        let left: BTreeSet<String> = names.keys().cloned().collect();
        names.retain(|_, named| named.iter().any(|name| left.contains(name)));
        if names.len() == left.len() {
            return left.into_iter().collect();
        }
    }
}

#[test]
fn the_modules_of_a_job_name_one_another_in_no_circle() {
    let file = |path: &str, text: &str| (path.to_owned(), text.to_owned());
    let sheet = file("src/job/sheet.rs", "use crate::job::{entry::What, key};");
    let key = file("src/job/key.rs", "use crate::job::entry::What;");
    let entry = file("src/job/entry/at.rs", "use crate::trade::play;");
    let honest = [sheet.clone(), key.clone(), entry];
    assert_eq!(in_circles(&honest), Vec::<String>::new());
    let planted = [sheet, key, file("src/job/entry.rs", "crate::job::key::Key")];
    assert_eq!(in_circles(&planted), ["entry", "key", "sheet"]);

    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let of_job = files().into_iter().filter(|path| is_rust(path, "src/job/"));
    let all: Vec<(String, String)> = of_job
        .filter_map(|path| {
            let text = fs::read_to_string(root.join(&path)).ok()?;
            Some((path, text))
        })
        .collect();
    assert!(50 < all.len(), "only {} files", all.len());
    assert_eq!(in_circles(&all), Vec::<String>::new());
}
