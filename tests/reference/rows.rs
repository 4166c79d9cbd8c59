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
        let agrees = within(&got, &row["expected"], row["tol"].as_f64().unwrap());
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
fn within(got: &Value, expected: &Value, tol: f64) -> bool {
    match (got.as_f64(), expected.as_f64()) {
        (Some(got), Some(expected)) => (got - expected).abs() <= tol,
        (None, None) => got == expected,
        _ => false,
    }
}
