//! Rules about style sheets.

use super::*;

fn style(path: &str, text: &str) -> Vec<String> {
    if !path.starts_with("style/") || !path.ends_with(".css") {
        return Vec::new();
    }
    let text = without_css_comments(text);
    let mut complaints = Vec::new();
    for (word, why) in [
        ("!important", "layers decide what wins"),
        ("@import", "Trunk hashes names; link the file in index.html"),
    ] {
        if text.contains(word) {
            complaints.push(format!("{path}: `{word}`; {why}"));
        }
    }
    if path != "style/layers.css" && !outside_layers(&text).is_empty() {
        complaints.push(format!(
            "{path}: outside any @layer: {}",
            outside_layers(&text)
        ));
    }
    complaints
}

fn without_css_comments(text: &str) -> String {
    let mut parts = text.split("/*");
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |all, part| {
        all + part.split_once("*/").map_or("", |(_, rest)| rest)
    })
}

/// What of a style sheet stands in no `@layer` block; `@page` cannot stand in one.
fn outside_layers(text: &str) -> String {
    let (mut depth, mut head, mut outside) = (0, String::new(), Vec::new());
    for c in text.chars() {
        match c {
            '{' if depth == 0 => {
                let rule = head.trim();
                if !rule.starts_with("@layer ") && !rule.starts_with("@page") {
                    outside.push(rule.to_owned());
                }
                head.clear();
                depth = 1;
            }
            '{' => depth += 1,
            '}' => depth -= 1,
            c if depth == 0 => head.push(c),
            _ => {}
        }
    }
    outside.push(head.trim().to_owned());
    outside.concat()
}

#[test]
fn every_style_stands_in_its_layer() {
    hold(
        style,
        &[
            (
                "style/base.css",
                "@layer base { p { color: red !important; } }",
            ),
            ("style/base.css", "@import \"x.css\";"),
            (
                "style/base.css",
                "@layer base { p { margin: 0; } }\na { margin: 0; }",
            ),
        ],
        &[
            (
                "style/base.css",
                "/* never !important */\n@layer base { @media print { p { margin: 0; } } }",
            ),
            ("style/print.css", "@page { margin: 1cm; }"),
            ("style/layers.css", "@layer reset, base;"),
        ],
    );
}

#[test]
fn every_style_sheet_is_linked_once_and_layers_come_first() {
    let page = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("public/index.html"))
        .unwrap();
    let linked: Vec<&str> = page
        .match_indices("rel=\"css\" href=\"../")
        .map(|(at, start)| page[at + start.len()..].split('"').next().unwrap())
        .collect();
    assert_eq!(
        linked.first(),
        Some(&"style/layers.css"),
        "the order of layers must be read first"
    );
    let mut sorted = linked.clone();
    sorted.sort_unstable();
    let all = files();
    let there: Vec<&str> = all
        .iter()
        .map(String::as_str)
        .filter(|path| path.starts_with("style/"))
        .collect();
    assert_eq!(
        sorted, there,
        "link each file of style/ once in public/index.html"
    );
}
