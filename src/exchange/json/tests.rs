//! Held to serde_json, which reads and writes the same standard (RFC 8259).
use proptest::prelude::*;
use serde_json::Value;

use super::form::Form;
use super::*;

/// A text with everything that JSON knows.
const ALL: &str = r#"{"a" : [1, -0.5e+3, true, false, null, {}, [ ]], "b\u00e9\ud83d\ude97": "\"\\\/\b\f\n\r\t ä" }"#;

/// Text of pieces that JSON is made of, whole or not.
fn scraps() -> impl Strategy<Value = String> {
    const SCRAPS: &[&str] = &[
        "{", "}", "[", "]", ",", ":", "\"", "\\", "\\u", "\\ud83d", "\\ude97", "0041", "\"a\"",
        "1", "-", "0", ".", "e", "E+", "5", "true", "fals", "null", " ", "\n", "\u{c}", "\u{1}",
        "ä",
    ];
    prop::collection::vec(prop::sample::select(SCRAPS), 0..9).prop_map(|all| all.concat())
}

/// The same value by way of the reader.
fn value(json: &Json<'_>) -> Value {
    if let Some(members) = json.map() {
        let member =
            |(name, json): &Member<'_>| (unquoted(name).unwrap().into_owned(), value(json));
        return members.iter().map(member).collect();
    }
    match (json.list(), json.text()) {
        (Some(all), _) => all.iter().map(value).collect(),
        (None, Some(text)) => Value::String(text.into_owned()),
        (None, None) => serde_json::from_str(json.raw()).unwrap(),
    }
}

#[test]
fn every_part_of_json_is_read_and_every_cut_is_seen() {
    let json = parse(ALL).unwrap();
    assert_eq!(value(&json), serde_json::from_str::<Value>(ALL).unwrap());
    for (at, _) in ALL.char_indices() {
        assert!(parse(&ALL[..at]).unwrap_err().cut_off, "cut at {at}");
        assert!(parse_to(&ALL[..at], 0).unwrap_err().cut_off, "cut at {at}");
    }
    let damaged = NotJson {
        line: 2,
        cut_off: false,
    };
    assert_eq!(parse("[1,\n2;3]\n").unwrap_err(), damaged);
}

#[test]
fn a_deep_text_is_saved_and_not_taken_apart() {
    let deep = |n: usize| format!("{}1{}", "[".repeat(n), "]".repeat(n));
    let text = deep(200_000);
    assert_eq!(parse(&text).unwrap().raw(), text);
    assert!(parse(&text[1..]).is_err());
}

#[test]
fn of_two_values_under_one_name_none_stands() {
    let json = parse(r#"{"a":1,"b":2,"\u0061":3,"c":null}"#).unwrap();
    assert_eq!(json.field::<u8>("a"), None);
    assert_eq!(json.field::<u8>("b"), Some(2));
    assert_eq!(json.field::<Option<u8>>("c"), Some(None));
    assert_eq!(json.field::<Option<u8>>("d"), Some(None));
    assert_eq!(json.field::<u8>("d"), None);
    assert_eq!(parse("[]").unwrap().field::<Option<u8>>("a"), None);
}

#[test]
fn a_number_is_read_only_where_it_fits() {
    assert_eq!(read::<u64>("18446744073709551615"), Some(u64::MAX));
    for text in ["18446744073709551616", "-1", "1.0", "1e2", "\"1\""] {
        assert_eq!(read::<u64>(text), None, "{text}");
        assert!(serde_json::from_str::<u64>(text).is_err());
    }
    assert_eq!(read::<f64>("1e400"), None);
    assert_eq!(read::<f64>("7"), Some(7.0));
}

#[test]
fn of_two_equally_near_the_even_one_is_written() {
    // In the middle between .2 and .3: ECMA-262, `Number::toString`, note 2.
    let middle = 3_237_926_311_014_921.0 / 4.0;
    assert_eq!(ecmascript(middle).unwrap(), "809481577753730.2");
    assert_eq!(written(&middle), serde_json::to_string(&middle).unwrap());
    for power in -1074..1024 {
        let number = 2f64.powi(power);
        assert_eq!(written(&number), serde_json::to_string(&number).unwrap());
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn what_is_json_is_the_same_for_both(text in scraps()) {
        let theirs = serde_json::from_str::<Box<serde_json::value::RawValue>>(&text);
        let ours = parse(&text);
        prop_assert_eq!(ours.is_ok(), theirs.is_ok());
        prop_assert_eq!(parse_to(&text, 0).is_ok(), theirs.is_ok());
        if let (Ok(json), Ok(same)) = (&ours, serde_json::from_str::<Value>(&text)) {
            prop_assert_eq!(value(json), same);
        }
    }

    #[test]
    fn a_text_comes_back(text in any::<String>()) {
        prop_assert_eq!(quoted(&text), serde_json::to_string(&text).unwrap());
        prop_assert_eq!(String::read(&parse(&quoted(&text)).unwrap()), Some(text));
    }

    #[test]
    fn a_double_is_written_as_serde_json_does(bits in any::<u64>(), short in -1e9..1e9) {
        // Whole numbers and quarters near 2^50 lie between two sixteen-digit ones.
        let middle = f64::from_bits(0x430 << 52 | bits >> 12);
        for number in [f64::from_bits(bits), middle, short, (short * 1e6).round() / 1e6, short.round()] {
            prop_assert_eq!(written(&number), serde_json::to_string(&number).unwrap());
        }
    }
}
