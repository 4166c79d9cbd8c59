//! The files in `public` say what the table of texts says, and nothing else.

use hubslate::text::{Lang, Outside, outside};
use std::fs;
use std::path::Path;

fn table(rows: &[Outside]) -> Vec<String> {
    let mut rows: Vec<String> = rows
        .iter()
        .map(|row| outside(Lang::English, *row).to_owned())
        .collect();
    rows.sort();
    rows
}

fn public(name: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("public")
        .join(name);
    fs::read_to_string(path).unwrap()
}

/// What a page says between its tags, each text once; scripts and comments say nothing.
fn said_by_page(page: &str) -> Vec<String> {
    let mut rest = page;
    let mut said = Vec::new();
    while let Some((text, tail)) = rest.split_once('<') {
        said.push(text.trim().trim_end_matches('.').to_owned());
        let end = match tail {
            it if it.starts_with("!--") => "-->",
            it if it.starts_with("script>") => "</script>",
            _ => ">",
        };
        rest = tail.split_once(end).map_or("", |(_, tail)| tail);
    }
    said.retain(|text| !text.is_empty());
    said.sort();
    said.dedup();
    said
}

/// The literals of a script that are written into the page: whole sentences, with a capital.
fn said_by_script(script: &str) -> Vec<String> {
    let mut said: Vec<String> = Vec::new();
    for line in script
        .lines()
        .filter(|line| !line.trim_start().starts_with("//"))
    {
        for quote in ['"', '`'] {
            let parts = line.split(quote).skip(1).step_by(2);
            let sentence = |text: &&str| {
                let capital = text.starts_with(|c: char| c.is_uppercase() || c == '$');
                capital && text.ends_with('.') && text.contains(' ')
            };
            said.extend(parts.filter(sentence).map(str::to_owned));
        }
    }
    said.sort();
    said
}

/// A row as a page shows it, without the full stop that a link may leave behind it.
fn bare(rows: Vec<String>) -> Vec<String> {
    let mut rows: Vec<String> = rows
        .into_iter()
        .map(|row| row.trim_end_matches('.').to_owned())
        .collect();
    rows.sort();
    rows
}

#[test]
fn what_stands_outside_the_program_stands_in_the_table_too() {
    let planted =
        "<!doctype html><title>One</title><!-- no --><script>no</script><p>Two <a>three</a>.</p>";
    assert_eq!(said_by_page(planted), ["One", "Two", "three"]);
    let script = "// \"No one.\"\nsay(`Some ${more}.`); id(\"byId\");";
    assert_eq!(said_by_script(script), ["Some ${more}."]);

    assert_eq!(
        said_by_page(&public("index.html")),
        bare(table(Outside::PAGE))
    );
    assert_eq!(said_by_script(&public("crash.js")), table(Outside::CRASH));
    let worker = public("sw.js");
    let page = worker.split_once("`<!doctype").unwrap().1;
    let page = page.split_once("</html>").unwrap().0;
    assert_eq!(
        said_by_page(&format!("<!doctype{page}<")),
        bare(table(Outside::WORKER))
    );
    let manifest: serde_json::Value =
        serde_json::from_str(&public("manifest.webmanifest")).unwrap();
    assert_eq!(
        manifest["description"],
        table(Outside::MANIFEST)[0].as_str()
    );
    assert_eq!(manifest["name"], outside(Lang::English, Outside::Name));
}
