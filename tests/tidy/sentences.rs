//! No sentence is written that nothing says.

use crate::{files, working};
use std::fs;
use std::path::Path;

/// What the tables of `src/text` declare, as the rest of the program has to name it.
fn declared(text: &str) -> Vec<String> {
    let mut theme = None;
    let mut names = Vec::new();
    for line in text.lines() {
        let row = line.trim_start();
        if let Some(head) = row.strip_prefix("pub enum ") {
            theme = Some(word(head));
        } else if line.starts_with('}') {
            theme = None;
        } else if let Some(theme) = theme
            && row.starts_with(|c: char| c.is_uppercase())
            && row.contains("=>")
        {
            names.push(format!("{theme}::{}", word(row)));
        } else if theme.is_none()
            && let Some(name) = function(line)
        {
            names.push(format!("text::{name}"));
        }
    }
    names
}

/// The name of a row that is a function: `name(...) => ...` or `theme::name(...) -> ...;`.
fn function(line: &str) -> Option<&str> {
    let row = line.strip_prefix("    ")?;
    if !row.starts_with(|c: char| c.is_lowercase()) {
        return None;
    }
    let (head, tail) = row.split_once('(')?;
    let recorded = head != "pub"
        && head.split("::").all(|part| word(part) == part)
        && (tail.contains("=>") || tail.contains("->"));
    recorded.then(|| head.rsplit("::").next())?
}

fn word(text: &str) -> &str {
    let end = text.find(|c: char| !c.is_alphanumeric() && c != '_');
    &text[..end.unwrap_or(text.len())]
}

/// Whether `text` names it, and not merely something that begins like it.
fn names(text: &str, name: &str) -> bool {
    let ends = text.match_indices(name).map(|(at, _)| at + name.len());
    let mut next = ends.map(|end| text[end..].chars().next());
    next.any(|next| next.is_none_or(|c| !c.is_alphanumeric() && c != '_'))
}

fn unsaid(tables: &str, program: &str) -> Vec<String> {
    let mut rows = declared(tables);
    rows.retain(|row| !names(program, row));
    rows
}

#[test]
fn every_sentence_is_said_somewhere() {
    let tables = "sentences! {\n    pub enum Say, say {\n        KEYS {\n            Yes => \"Yes\",\n            No =>\n                \"No\",\n        }\n    }\n}\n\nphrases! {\n    keep(value: &str) => \"Keep {value}\",\n}\n\nspoken! {\n    words::item(item: Item) -> String;\n}\n";
    let all = "Say::Yes Say::No text::keep(lang, text::item(";
    assert_eq!(unsaid(tables, all), Vec::<String>::new());
    let few = "Say::Yesterday text::keeper(";
    let missed = ["Say::Yes", "Say::No", "text::keep", "text::item"];
    assert_eq!(unsaid(tables, few), missed);

    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let (mut tables, mut program) = (String::new(), String::new());
    for path in files().iter().filter(|path| path.starts_with("src/")) {
        let Ok(text) = fs::read_to_string(root.join(path)) else {
            continue;
        };
        let of_text = path.starts_with("src/text/");
        let apart = ["src/text/table.rs", "src/text/outside.rs"].contains(&path.as_str());
        if of_text && path.matches('/').count() == 2 && !apart {
            tables.push_str(&text);
        } else if !of_text && path.ends_with(".rs") {
            for (_, line) in working(path, &text) {
                program.push_str(line);
                program.push('\n');
            }
        }
    }
    let known = declared(&tables).len();
    assert!(500 < known, "only {known} sentences were found");
    let unsaid = unsaid(&tables, &program);
    assert!(unsaid.is_empty(), "nothing says {}", unsaid.join(", "));
}
