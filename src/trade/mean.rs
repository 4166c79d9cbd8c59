//! A mean of a few, and between which ends it lies.

use crate::trade::play::uncertainty::{count, t_two_sided, type_a};

/// A mean with its ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mean {
    /// Of how many.
    pub n: usize,
    /// The mean, in the unit of the values.
    pub mean: f64,
    /// Its lower end at 95 %.
    pub low: f64,
    /// Its upper end at 95 %.
    pub high: f64,
}

/// The mean of some values between its ends at 95 %; `None` for fewer than two, which have no
/// scatter, and for what is no finite number.
///
/// `mean ± t(0.95, n−1) · s / √n`
///
/// # Source
/// Student, 1908; checked against scipy in `tests/reference/16_means.json`.
///
/// ```
/// use hubslate::trade::mean::mean;
///
/// // t(0.95, 2) = 4.303, GUM Table G.2 (4.30), and s = 1.
/// let mean = mean(&[1.0, 2.0, 3.0]).unwrap();
/// assert!((mean.high - (2.0 + 4.303 / 3_f64.sqrt())).abs() < 0.001);
/// ```
pub fn mean(values: &[f64]) -> Option<Mean> {
    let series = type_a(values).ok()?;
    let half = t_two_sided(0.95, Some(count(series.n) - 1.0)) * series.u;
    Some(Mean {
        n: series.n,
        mean: series.mean,
        low: series.mean - half,
        high: series.mean + half,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_says_nothing_and_no_number_is_no_value() {
        assert_eq!(mean(&[]), None);
        assert_eq!(mean(&[90.0]), None);
        assert_eq!(mean(&[1.0, f64::NAN]), None);
        assert_eq!(mean(&[1.0, f64::INFINITY]), None);
    }

    #[test]
    fn equal_values_leave_no_doubt() {
        let even = mean(&[60.0; 4]);
        assert_eq!(
            even.map(|it| (it.low, it.mean, it.high)),
            Some((60.0, 60.0, 60.0))
        );
    }
}
