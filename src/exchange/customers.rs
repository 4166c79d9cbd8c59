//! The customers of a shop: whose jobs are whose, by telephone and by name.

use crate::exchange::summary::Summary;
use crate::letters::plain;
use crate::sorted::Sorted;

/// With fewer digits a number is none that a person is reached under.
const FEWEST_DIGITS: usize = 7;

/// The digits by which two telephone numbers are held to be one, North America's own country code
/// left out; nothing where there are too few.
fn number(typed: &str) -> Option<String> {
    let digits: String = typed.chars().filter(char::is_ascii_digit).collect();
    let national = digits.strip_prefix('1').filter(|it| it.len() == 10);
    let digits = national.map(str::to_owned).unwrap_or(digits);
    (FEWEST_DIGITS <= digits.len()).then_some(digits)
}

/// Whether two jobs are of one customer: one telephone number, or one name where not both have a
/// number. Practice and a job without either are nobody's.
pub fn is_same(one: &Summary, other: &Summary) -> bool {
    if one.practice || other.practice {
        return false;
    }
    match (number(&one.phone), number(&other.phone)) {
        (Some(one), Some(other)) => one == other,
        _ => {
            let name = plain(&one.name);
            !name.is_empty() && name == plain(&other.name)
        }
    }
}

/// All jobs of the customer of this one, itself among them; the latest first.
pub fn visits<'a>(jobs: &'a [Summary], log: &str) -> Vec<&'a Summary> {
    let Some(of) = jobs.iter().find(|job| job.log == log) else {
        return Vec::new();
    };
    let same = |job: &&Summary| job.log == log || is_same(of, job);
    let mut visits: Vec<&Summary> = jobs.iter().filter(same).collect();
    visits.order_by(|a, b| (&b.on, &b.log).cmp(&(&a.on, &a.log)));
    visits
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::entry::LogId;
    use crate::job::fold;

    fn job(log: &str, name: &str, phone: &str, on: &str) -> Summary {
        let mut job = Summary::of(&LogId(log.to_owned()), &fold([]), &[], None);
        (job.name, job.phone, job.on) = (name.to_owned(), phone.to_owned(), on.to_owned());
        job
    }

    #[test]
    fn visits_are_found_by_telephone_and_where_one_is_missing_by_name() {
        let jobs = [
            job("first", "Ada Nobody", "+1 (555) 010-0199", "2026-01-02"),
            job("married", "Ada Nowhere", "555 010 0199", "2026-03-04"),
            job("no number", "ada nobody", "", "2026-02-03"),
            job("namesake", "Ada Nobody", "555 010 0042", "2026-04-05"),
            job("short", "Ben", "0199", "2026-04-05"),
            job("unknown", "", "", "2026-04-05"),
        ];
        let found = |log: &str| -> Vec<&str> {
            visits(&jobs, log)
                .iter()
                .map(|job| job.log.as_str())
                .collect()
        };
        assert_eq!(found("first"), ["married", "no number", "first"]);
        assert_eq!(found("married"), ["married", "first"]);
        assert_eq!(found("namesake"), ["namesake", "no number"]);
        assert_eq!(found("short"), ["short"]);
        assert_eq!(found("unknown"), ["unknown"]);
        assert_eq!(found("nowhere"), [""; 0]);
    }

    #[test]
    fn practice_is_no_customers() {
        let mut jobs = [job("a", "Ada", "", ""), job("b", "Ada", "", "")];
        jobs[1].practice = true;
        assert_eq!(visits(&jobs, "a").len(), 1);
    }
}
