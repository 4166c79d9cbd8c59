//! Numbers of invoices that cannot collide offline: each van has a letter and counts by itself.

use crate::map::OrderedMap;

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

/// What is wrong with the numbers of many documents.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NumberIssue {
    /// Several documents have one number.
    Twice {
        /// The number.
        number: String,
        /// The jobs that have it, one a document.
        jobs: Vec<String>,
    },
    /// Numbers between two that are known are on no document.
    Gap {
        /// The first that is missing.
        first: String,
        /// The last that is missing.
        last: String,
    },
}

/// Numbers that several documents have, and numbers that none has, of each van's letters; each
/// document with its number and its job.
pub fn number_issues<'a>(documents: impl Iterator<Item = (&'a str, &'a str)>) -> Vec<NumberIssue> {
    let mut known: OrderedMap<(&str, u32), Vec<(&str, &str)>> = OrderedMap::new();
    for (number, job) in documents {
        let count = number.trim_start_matches(|letter: char| letter.is_ascii_uppercase());
        let mark = number.strip_suffix(count).unwrap_or_default();
        if let Ok(count) = count.parse() {
            known.or_default((mark, count)).push((number, job));
        }
    }
    let mut issues = Vec::new();
    let mut before: Option<(&str, u32)> = None;
    for ((mark, count), documents) in &known {
        let next = before.filter(|(last, _)| last == mark);
        if let Some((_, last)) = next
            && last.saturating_add(1) < *count
        {
            let number = |count: u32| format!("{mark}{count:0WIDTH$}");
            issues.push(NumberIssue::Gap {
                first: number(last + 1),
                last: number(count - 1),
            });
        }
        if let [(number, _), _, ..] = documents.as_slice() {
            issues.push(NumberIssue::Twice {
                number: (*number).to_owned(),
                jobs: documents.iter().map(|(_, job)| (*job).to_owned()).collect(),
            });
        }
        before = Some((mark, *count));
    }
    issues
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_given_twice_and_a_hole_are_named_by_van() {
        let of = |all: &[(&'static str, &'static str)]| number_issues(all.iter().copied());
        assert_eq!(of(&[("N0001", "a"), ("N0002", "b"), ("K0009", "c")]), []);
        let twice = NumberIssue::Twice {
            number: "N0002".to_owned(),
            jobs: vec!["b".to_owned(), "c".to_owned()],
        };
        let gap = NumberIssue::Gap {
            first: "N0003".to_owned(),
            last: "N0005".to_owned(),
        };
        let all = [
            ("N0006", "d"),
            ("N0002", "b"),
            ("N0002", "c"),
            ("K0001", "e"),
        ];
        assert_eq!(of(&all), [twice, gap]);
        assert_eq!(of(&[("", "a"), ("?", "b")]), []);
    }

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
