//! Rows as comma-separated values (RFC 4180): phones make tables too, and the library weighs more
//! than the rule.

/// What a spreadsheet takes for UTF-8 with certainty.
pub const BYTE_ORDER_MARK: char = '\u{feff}';

/// What a spreadsheet takes for the beginning of a formula, which it would carry out.
///
/// # Source
/// The four signs, tab and null: OWASP ASVS 5.0, 1.2.10, seen second-hand. Carriage return, line
/// feed and the full-width forms of the signs: OWASP, "CSV Injection", from memory.
const BEGINS_A_FORMULA: [char; 12] = [
    '=', '+', '-', '@', '\t', '\0', '\r', '\n', '＝', '＋', '－', '＠',
];

/// A quote before a cell makes it a text.
pub(super) fn harmless(cell: String) -> String {
    if cell.starts_with(BEGINS_A_FORMULA) {
        format!("'{cell}")
    } else {
        cell
    }
}

/// Rows under their heads, each ended by a carriage return and a line feed; a cell with a comma, a
/// quote or an end of a line stands in quotes, and a quote in it twice.
pub fn written(heads: &[&str], rows: impl IntoIterator<Item = Vec<String>>) -> String {
    let mut out = String::new();
    line(&mut out, heads.iter().copied());
    for row in rows {
        line(&mut out, row.iter().map(String::as_str));
    }
    out
}

fn line<'a>(out: &mut String, cells: impl Iterator<Item = &'a str>) {
    for (place, cell) in cells.enumerate() {
        if place > 0 {
            out.push(',');
        }
        if cell.contains([',', '"', '\r', '\n']) {
            out.push('"');
            out.push_str(&cell.replace('"', "\"\""));
            out.push('"');
        } else {
            out.push_str(cell);
        }
    }
    out.push_str("\r\n");
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn no_cell_begins_as_a_formula_does() {
        for sign in "=+-@\t\0\r\n\u{ff1d}\u{ff0b}\u{ff0d}\u{ff20}".chars() {
            let cell = format!("{sign}cmd|'/c calc'!A1");
            assert_eq!(harmless(cell.clone()), format!("'{cell}"), "{sign:?}");
        }
        for cell in ["", "'=1", "KLM 4821", "\u{2212}0.02", "1=1"] {
            assert_eq!(harmless(cell.to_owned()), cell);
        }
    }

    proptest! {
        // Read again by the library.
        #[test]
        fn the_library_reads_every_cell_as_it_was(
            rows in prop::collection::vec(
                prop::collection::vec("[a-c,\"\r\n é]{0,6}", 3..=3), 0..6),
        ) {
            let text = written(&["a", "b,c", "d\"e"], rows.clone());
            let mut reader = csv::Reader::from_reader(text.as_bytes());
            let heads: Vec<String> = reader.headers().unwrap().iter().map(str::to_owned).collect();
            prop_assert_eq!(heads, ["a", "b,c", "d\"e"]);
            let read: Vec<Vec<String>> = reader
                .records()
                .map(|row| row.unwrap().iter().map(str::to_owned).collect())
                .collect();
            prop_assert_eq!(read, rows);
        }
    }
}
