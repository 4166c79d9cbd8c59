//! Numbers of invoices that cannot collide offline: each van has a letter and counts by itself.

/// How many digits the count is written with, at least.
const WIDTH: usize = 4;

/// Whether a text is a van's mark: one to three letters.
pub fn is_van_mark(text: &str) -> bool {
    (1..=3).contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_uppercase())
}

/// The number after all that this van has given: `N0042`.
///
/// `known` are the numbers found anywhere; those of other vans do not count.
///
/// ```
/// use hubslate::trade::money::next_invoice;
///
/// assert_eq!(next_invoice("N", ["N0041", "S0100"].into_iter()), "N0042");
/// ```
pub fn next_invoice<'a>(mark: &str, known: impl Iterator<Item = &'a str>) -> String {
    let last = known
        .filter_map(|number| number.strip_prefix(mark))
        .filter(|count| count.bytes().all(|byte| byte.is_ascii_digit()))
        .filter_map(|count| count.parse::<u32>().ok())
        .max();
    let next = last.unwrap_or(0).saturating_add(1);
    format!("{mark}{next:0WIDTH$}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_van_counts_its_own_numbers_only() {
        let next = |mark, known: &[&str]| next_invoice(mark, known.iter().copied());
        assert_eq!(next("N", &[]), "N0001");
        assert_eq!(
            next("N", &["N0041", "K0099", "N0007", "NB0100", ""]),
            "N0042"
        );
        assert_eq!(next("NB", &["N0041", "NB0100"]), "NB0101");
        assert_eq!(next("N", &["N9999"]), "N10000");
        assert_eq!(next("N", &["N 12", "Nine"]), "N0001");
    }

    #[test]
    fn a_mark_is_a_few_capitals() {
        for (text, is) in [
            ("N", true),
            ("ABC", true),
            ("", false),
            ("n", false),
            ("A1", false),
            ("ABCD", false),
        ] {
            assert_eq!(is_van_mark(text), is, "{text}");
        }
    }
}
