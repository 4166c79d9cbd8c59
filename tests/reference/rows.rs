//! The one checker: reads a file, runs its rows, counts them, and prints the row that fails.

use std::path::PathBuf;

use serde_json::Value;

/// Where the files are.
pub fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/reference")
}

/// A row of a file.
pub struct Row<'a> {
    row: &'a Value,
}

impl<'a> Row<'a> {
    pub fn quantity(&self) -> &'a str {
        self.row["quantity"].as_str().unwrap()
    }

    pub fn unit(&self) -> &'a str {
        self.row["unit"].as_str().unwrap()
    }

    pub fn input(&self, name: &str) -> &'a Value {
        let value = &self.row["in"][name];
        assert!(!value.is_null(), "{}: no input {name}", self.row["id"]);
        value
    }

    pub fn has(&self, name: &str) -> bool {
        !self.row["in"][name].is_null()
    }

    pub fn number(&self, name: &str) -> f64 {
        self.input(name).as_f64().unwrap()
    }

    pub fn text(&self, name: &str) -> &'a str {
        self.input(name).as_str().unwrap()
    }

    pub fn numbers(&self, name: &str) -> Vec<f64> {
        let list = self.input(name).as_array().unwrap();
        list.iter().map(|v| v.as_f64().unwrap()).collect()
    }

    /// A number that may be `null`, which stands for infinite.
    pub fn dof(&self) -> Option<f64> {
        self.row["in"].get("dof").unwrap().as_f64()
    }
}

/// Runs every row of `name` whose quantity is not left out; there must be `count` rows in all.
pub fn check_file(
    name: &str,
    count: usize,
    left_out: &[&str],
    computed: impl Fn(&Row) -> Option<Value>,
) {
    let text = std::fs::read_to_string(folder().join(name)).unwrap();
    let file: Value = serde_json::from_str(&text).unwrap();
    let rows = file["rows"].as_array().unwrap();
    assert_eq!(rows.len(), count, "{name}");
    let is_left_out = |row: &&Value| left_out.contains(&row["quantity"].as_str().unwrap());
    let skipped = rows.iter().filter(is_left_out).count();
    let mut run = 0;
    for row in rows.iter().filter(|row| !is_left_out(row)) {
        let got = computed(&Row { row })
            .unwrap_or_else(|| panic!("{name} {}: nothing computes it", row["id"]));
        let agrees = within(&got, &row["expected"], &row["tol"], "");
        assert!(agrees, "{name} {}: got {got}, row {row}", row["id"]);
        if let (Some(got), Some(printed)) = (got.as_f64(), row["published"].as_f64()) {
            let half_a_digit = row["published_tol"].as_f64().unwrap() * (1.0 + 1e-9);
            let as_printed = (got - printed).abs() <= half_a_digit;
            assert!(
                as_printed,
                "{name} {}: got {got}, printed {printed}",
                row["id"]
            );
        }
        run += 1;
    }
    assert_eq!(run + skipped, count, "{name}");
    assert!(run > 0, "{name}");
    for quantity in left_out {
        let there = rows.iter().any(|row| row["quantity"] == **quantity);
        assert!(there, "{name}: {quantity} is left out but not in the file");
    }
}

/// Numbers within the row's own absolute tolerance, everything else equal.
///
/// Lists and objects are held to it part by part. A row with several tolerances names them by the
/// part or by its kind: `deg` for what ends in it, where 360 is 0, and `length` for the rest.
fn within(got: &Value, expected: &Value, tol: &Value, name: &str) -> bool {
    match (got, expected) {
        (Value::Array(got), Value::Array(expected)) => {
            let mut pairs = got.iter().zip(expected);
            got.len() == expected.len() && pairs.all(|(got, one)| within(got, one, tol, name))
        }
        (Value::Object(got), Value::Object(expected)) => {
            let mut parts = expected.iter();
            got.len() == expected.len()
                && parts
                    .all(|(name, one)| got.get(name).is_some_and(|got| within(got, one, tol, name)))
        }
        (Value::Number(got), Value::Number(expected)) => {
            let apart = (got.as_f64().unwrap() - expected.as_f64().unwrap()).abs();
            let is_angle = name.ends_with("deg") || name.contains("phi");
            let kind = if is_angle { "deg" } else { "length" };
            let own = [&tol[name], &tol[kind], tol];
            let tol = own.into_iter().find_map(Value::as_f64).unwrap();
            apart <= tol || is_angle && (360.0 - apart).abs() <= tol
        }
        _ => got == expected,
    }
}
