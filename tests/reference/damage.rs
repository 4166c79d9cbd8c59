//! 11: the headings of ISO 15243:2017. A term is printed only where the standard has a heading for it:
//! every mode of the app is held against its row; headings that nothing leads to are named in
//! `SOURCES.md`.

use hubslate::text::{self, Lang};
use hubslate::trade::damage::{FailureMode, Finding};
use serde_json::Value;

use crate::rows::folder;

/// Families, and headings that no finding leads to.
const LEFT_OUT: [&str; 9] = [
    "O-11-001", "O-11-004", "O-11-005", "O-11-007", "O-11-009", "O-11-012", "O-11-013", "O-11-018",
    "O-11-021",
];
/// What the edition of 2004 called some of them.
const RENAMED: &str = "O-11-022";

fn rows() -> Vec<Value> {
    let text = std::fs::read_to_string(folder().join("11_iso15243_terms.json")).unwrap();
    let file: Value = serde_json::from_str(&text).unwrap();
    file["rows"].as_array().unwrap().clone()
}

/// The row of a heading.
fn heading(mode: FailureMode) -> Value {
    let of = |row: &Value| row["in"]["clause"] == mode.clause();
    let mut rows = rows().into_iter().filter(of);
    let row = rows
        .next()
        .unwrap_or_else(|| panic!("no heading of {mode:?}"));
    assert!(rows.next().is_none(), "{mode:?}");
    row
}

/// A mode as it is printed: with a finding that leads to it alone.
fn printed(mode: FailureMode) -> String {
    let alone = Finding::ALL.iter().find(|it| it.modes() == [mode]);
    let alone = alone.unwrap_or_else(|| panic!("no finding of {mode:?} alone"));
    let said = text::points_to(Lang::English, *alone, true);
    let term = said.strip_prefix("Suspected: ").unwrap();
    term.strip_suffix(" (ISO 15243:2017).").unwrap().to_owned()
}

#[test]
fn every_mode_is_a_heading_of_the_standard_in_its_own_words() {
    for mode in FailureMode::ALL {
        let row = heading(*mode);
        assert_eq!(row["quantity"], "term");
        assert_eq!(printed(*mode), row["expected"], "{row}");
    }
}

#[test]
fn every_heading_is_a_mode_or_named_as_left_out() {
    let rows = rows();
    assert_eq!(rows.len(), 22);
    let sources = std::fs::read_to_string(folder().join("SOURCES.md")).unwrap();
    let used: Vec<Value> = FailureMode::ALL.iter().map(|mode| heading(*mode)).collect();
    assert_eq!(used.len() + LEFT_OUT.len() + 1, rows.len());
    for row in &rows {
        let id = row["id"].as_str().unwrap();
        let is_used = used.iter().any(|it| it["id"] == id) || id == RENAMED;
        assert!(is_used != LEFT_OUT.contains(&id), "{id}");
        assert!(is_used || sources.contains(&format!("`{id}`")), "{id}");
    }
}

#[test]
fn no_name_of_the_edition_of_2004_is_printed() {
    let rows = rows();
    let row = rows.iter().find(|row| row["id"] == RENAMED).unwrap();
    let pairs = row["expected"].as_array().unwrap();
    assert_eq!(pairs.len(), 6);
    for pair in pairs {
        let old = pair[0].as_str().unwrap();
        for mode in FailureMode::ALL {
            assert_ne!(printed(*mode), old);
        }
    }
}

#[test]
fn the_standard_is_named_where_it_has_a_heading_and_nowhere_else() {
    for finding in Finding::ALL {
        for suspected in [true, false] {
            let said = text::points_to(Lang::English, *finding, suspected);
            let named = said.contains("ISO 15243:2017");
            assert_eq!(named, !finding.modes().is_empty(), "{said}");
            assert_eq!(
                named && suspected,
                said.starts_with("Suspected: "),
                "{said}"
            );
            for mode in finding.modes() {
                let term = heading(*mode)["expected"].as_str().unwrap().to_owned();
                assert!(said.contains(&term), "{said}");
            }
        }
    }
}
