//! Rows of `12_interop.json`: JSON, digests, ids and calendars as other programs write them.

use hubslate::exchange::calendar::{escaped, folded};
use hubslate::exchange::canonical::{canonical, ecmascript};
use hubslate::exchange::sha256_hex;
use hubslate::job::entry::{Event, LogId};
use hubslate::slate::{Pen, compose};
use jsonschema::draft202012;
use serde_json::{Value, json};

use super::rows::Row;

/// Nothing here reads calendars.
pub const LEFT_OUT: &[&str] = &["ics.parse"];

pub fn computed(row: &Row) -> Option<Value> {
    Some(match row.quantity() {
        "jcs.number" => {
            let bits = u64::from_str_radix(row.text("ieee754"), 16).unwrap();
            json!(ecmascript(f64::from_bits(bits)))
        }
        "jcs.document" => {
            let document: Value = serde_json::from_str(row.text("json")).unwrap();
            // Two libraries give the same text.
            let ours = canonical(&document);
            let bytes = serde_json_canonicalizer::to_vec(&document).unwrap();
            assert_eq!(ours.as_bytes(), bytes);
            json!(ours)
        }
        "uuid7" => json!(uuid(row)),
        "sha256" => json!(sha256_hex(row.text("utf8").as_bytes())),
        "ics.fold" => json!(folded(row.text("line"))),
        "ics.escape" => json!(escaped(row.text("text"))),
        "json_schema.valid" => {
            let validator = draft202012::new(row.input("schema")).unwrap();
            json!(validator.is_valid(row.input("instance")))
        }
        _ => return None,
    })
}

/// The id that a tap with the row's chance gives. The last two bytes of an id are the place of its
/// entry within the tap, so that the tap is made long enough to reach the row's.
fn uuid(row: &Row) -> String {
    let bits = |name| u64::from_str_radix(row.text(name), 16).unwrap();
    let (a, b) = (bits("rand_a").to_be_bytes(), bits("rand_b").to_be_bytes());
    let mut chance = [0; 10];
    chance[..2].copy_from_slice(&a[6..]);
    chance[2..].copy_from_slice(&b);
    let pen = Pen {
        by: String::new(),
        device: String::new(),
        n: 1,
        utc_ms: row.number("unix_ms") as i64,
        offset_min: 0,
        recorded: None,
        chance,
    };
    let notes = vec![Event::Said(String::new()); 1 + usize::from(u16::from_be_bytes([b[6], b[7]]))];
    let entries = compose(&LogId(String::new()), &[], &pen, notes);
    entries.last().unwrap().id.0.clone()
}

proptest::proptest! {
    #![proptest_config(proptest::prelude::ProptestConfig::with_cases(4096))]
    /// Every double, and half of them near the whole numbers and short decimals of a real file.
    #[test]
    fn a_number_is_written_as_a_second_library_writes_it(
        bits in proptest::prelude::any::<u64>(),
        (digits, places) in (-1_000_000_000_i64..1_000_000_000, 0_i32..25),
    ) {
        for number in [f64::from_bits(bits), digits as f64 / 10_f64.powi(places), digits as f64 * 10_f64.powi(places)] {
            let theirs = serde_json_canonicalizer::to_string(&number).ok();
            proptest::prop_assert_eq!(ecmascript(number), theirs, "{:e}", number);
        }
    }

    #[test]
    fn names_and_strings_are_written_as_a_second_library_writes_them(
        names in proptest::collection::vec(proptest::prelude::any::<String>(), 0..8),
        text in proptest::prelude::any::<String>(),
    ) {
        let fields = names.into_iter().map(|name| (name, json!([text, null, true, {"b": 1, "a": -0.0}])));
        let value = Value::Object(fields.collect());
        proptest::prop_assert_eq!(canonical(&value), serde_json_canonicalizer::to_string(&value).unwrap());
    }
}
