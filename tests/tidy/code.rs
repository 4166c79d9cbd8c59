//! Rules about single lines and single files of code.

use super::*;

fn size(path: &str, text: &str) -> Vec<String> {
    let excepted = path.starts_with("src/text/");
    let lines = text.lines().count();
    if !is_rust(path, "src/") || excepted || lines <= 400 {
        return Vec::new();
    }
    vec![format!(
        "{path}: {lines} lines; split it by what it is about (400 at most, about 250 is good)"
    )]
}

#[test]
fn no_file_is_too_long() {
    let (long, short) = ("x\n".repeat(401), "x\n".repeat(400));
    hold(
        size,
        &[("src/job/fold.rs", &long)],
        &[("src/job/fold.rs", &short), ("src/text/en.rs", &long)],
    );
}

fn screens(path: &str, text: &str) -> Vec<String> {
    if !is_rust(path, "src/ui/") {
        return Vec::new();
    }
    let mut complaints = Vec::new();
    for (at, line) in working(path, text) {
        if has_word(line, "f64") || has_word(line, "f32") {
            complaints.push(format!(
                "{path}:{at}: a bare number; formulas and limits belong in `trade`"
            ));
        }
        if line.contains(" style=\"") || line.trim_start().starts_with("style=\"") {
            complaints.push(format!(
                "{path}:{at}: the security policy drops style attributes; use a class"
            ));
        }
    }
    complaints
}

#[test]
fn screens_hold_no_numbers_and_no_style_attributes() {
    hold(
        screens,
        &[
            ("src/ui/app.rs", "fn width(v: f64) {}"),
            ("src/ui/app.rs", "<p style=\"color: red\">"),
        ],
        &[
            ("src/ui/app.rs", "let f64_like = 1; // not an f64"),
            ("src/trade/play/mod.rs", "fn mean(v: f64) {}"),
        ],
    );
}

fn panics(path: &str, text: &str) -> Vec<String> {
    if !is_rust(path, "src/") {
        return Vec::new();
    }
    let calls = [
        ".unwrap()",
        ".expect(",
        "panic!(",
        "todo!(",
        "unimplemented!(",
        "unreachable!(",
    ];
    let faults = working(path, text).into_iter().flat_map(|(at, line)| {
        calls
            .iter()
            .filter(move |call| line.contains(**call))
            .map(move |call| (at, call))
    });
    faults
        .map(|(at, call)| {
            format!("{path}:{at}: `{call}` can take the screen away; return an error")
        })
        .collect()
}

#[test]
fn nothing_panics_on_purpose() {
    hold(
        panics,
        &[
            ("src/job/mod.rs", "let x = y.unwrap();"),
            ("src/main.rs", "    panic!(\"no\")"),
            (
                "src/job/mod.rs",
                "#[cfg(test)]\nmod check;\nfn f() { todo!() }",
            ),
            (
                "src/job/mod.rs",
                "mod inner {\n    #[cfg(test)]\n    mod tests {\n    }\n    fn f() { todo!() }\n}",
            ),
        ],
        &[
            (
                "src/job/mod.rs",
                "let x = y.unwrap_or(1); // never panic!(\"\")",
            ),
            (
                "src/job/mod.rs",
                "#[cfg(test)]\nmod tests {\n    fn f() { y.unwrap() }\n}",
            ),
            ("src/job/tests.rs", "fn f() { y.unwrap() }"),
        ],
    );
}

/// Words that make a test say less than it seems to; put together here so as not to meet themselves.
fn hollow_words(path: &str) -> Vec<String> {
    let rust = [["#[", "ignore"], ["#[", "should_panic"]];
    let script = [
        ["test.", "skip"],
        ["test.", "only"],
        ["test.", "fixme"],
        [".", "waitForTimeout"],
        [".innerH", "TML"],
    ];
    let both = |pairs: &[[&str; 2]]| pairs.iter().map(|pair| pair.concat()).collect();
    match path.rsplit('.').next() {
        Some("rs") => both(&rust),
        Some("mjs" | "js") if !path.starts_with("public/") => both(&script),
        _ => Vec::new(),
    }
}

fn hollow(path: &str, text: &str) -> Vec<String> {
    let words = hollow_words(path);
    let faults = text.lines().enumerate().flat_map(|(at, line)| {
        words
            .iter()
            .filter(move |word| line.contains(word.as_str()))
            .map(move |word| (at + 1, word))
    });
    faults
        .map(|(at, word)| format!("{path}:{at}: `{word}`; a test runs whole, or it is not there"))
        .collect()
}

#[test]
fn no_test_is_switched_off() {
    let ignored = format!("#[{}]\nfn f() {{}}", "ignore");
    let only = format!("test.{}(\"x\")", "only");
    hold(
        hollow,
        &[
            ("tests/x.rs", &ignored),
            ("src/job/mod.rs", &ignored),
            ("tests/e2e/x.spec.mjs", &only),
        ],
        &[
            ("tests/x.rs", "// ignored values"),
            ("tests/e2e/x.spec.mjs", "test(\"only this\")"),
        ],
    );
}

fn raw_html(path: &str, text: &str) -> Vec<String> {
    // The one door for drawings of our own; what it inserts is escaped where it is made.
    if path == "src/ui/parts/picture.rs" {
        return Vec::new();
    }
    let ours = is_rust(path, "src/") || (path.starts_with("public/") && path.ends_with(".js"));
    let ways = [
        "innerHTML",
        "inner_html",
        "outerHTML",
        "insertAdjacentHTML",
        "document.write",
        "eval(",
    ];
    let faults = text
        .lines()
        .enumerate()
        .filter(|(_, line)| ours && ways.iter().any(|way| line.contains(way)));
    faults
        .map(|(at, _)| {
            format!(
                "{path}:{}: text becomes markup here; build nodes instead",
                at + 1
            )
        })
        .collect()
}

#[test]
fn no_text_becomes_markup() {
    hold(
        raw_html,
        &[
            ("src/ui/app.rs", "<p inner_html=name/>"),
            ("public/crash.js", "p.innerHTML = name;"),
        ],
        &[("public/crash.js", "p.textContent = name;")],
    );
}

/// The only addresses that may stand in the source: our own host and names that are no addresses.
const NAMES: [&str; 4] = [
    "http://localhost",
    "https://localhost",
    "http://www.w3.org/",
    "https://json-schema.org/draft/",
];

fn addresses(path: &str, text: &str) -> Vec<String> {
    let mut complaints = Vec::new();
    for (at, line) in text
        .lines()
        .enumerate()
        .filter(|_| path.starts_with("src/"))
    {
        let starts = line.match_indices("http").filter(|(at, _)| {
            line[*at..].starts_with("http://") || line[*at..].starts_with("https://")
        });
        for (start, _) in starts {
            if !NAMES.iter().any(|name| line[start..].starts_with(name)) {
                complaints.push(format!(
                    "{path}:{}: the app knows no host; name sources by title",
                    at + 1
                ));
            }
        }
    }
    complaints
}

#[test]
fn the_source_names_no_host() {
    hold(
        addresses,
        &[(
            "src/report/mod.rs",
            "const X: &str = \"https://example.org/\";",
        )],
        &[
            ("src/drawing/mod.rs", "xmlns=\"http://www.w3.org/2000/svg\""),
            ("src/main.rs", "http://localhost:8080"),
        ],
    );
}
