//! A share of a few: how often of how many, and how sure that is.

use statrs::distribution::{Beta, ContinuousCDF};

/// The ends between which a share lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Share {
    /// The lower end, 0 to 1.
    pub low: f64,
    /// The upper end, 0 to 1.
    pub high: f64,
}

/// Why there is no interval.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShareError {
    /// Nothing was counted.
    None,
    /// More of them than there are.
    MoreThanAll,
    /// A confidence lies between 0 and 1.
    Confidence,
}

/// The exact interval of a share: `k` of `n`, at a `confidence` between 0 and 1.
///
/// `low = B⁻¹(α/2; k, n−k+1)`, `high = B⁻¹(1−α/2; k+1, n−k)` with the beta distribution, `α` what
/// is left of 1; 0 and 1 where `k` is nothing or all.
///
/// # Errors
/// [`ShareError`] for nothing counted, more than all, or no confidence.
///
/// # Source
/// Clopper and Pearson, 1934; checked against scipy in `tests/reference/15_shares.json`.
///
/// ```
/// use hubslate::trade::share::share;
///
/// // Of ten, none: the upper end is 1 − 0.025^(1/10).
/// let none = share(0, 10, 0.95).unwrap();
/// assert!((none.high - (1.0 - 0.025_f64.powf(0.1))).abs() < 1e-9);
/// ```
pub fn share(k: usize, n: usize, confidence: f64) -> Result<Share, ShareError> {
    if n == 0 {
        return Err(ShareError::None);
    }
    if k > n {
        return Err(ShareError::MoreThanAll);
    }
    if !(0.0 < confidence && confidence < 1.0) {
        return Err(ShareError::Confidence);
    }
    let tail = (1.0 - confidence) / 2.0;
    let (of, rest) = (count(k), count(n - k));
    Ok(Share {
        low: quantile(of, rest + 1.0, tail).unwrap_or(0.0),
        high: quantile(of + 1.0, rest, 1.0 - tail).unwrap_or(1.0),
    })
}

/// Jobs are counted in thousands: exact as a double.
#[allow(clippy::cast_precision_loss, reason = "far below 2^53")]
const fn count(n: usize) -> f64 {
    n as f64
}

/// Where the beta distribution reaches `p`; `None` where it is no distribution.
fn quantile(a: f64, b: f64, p: f64) -> Option<f64> {
    let beta = Beta::new(a, b).ok()?;
    Some(beta.inverse_cdf(p))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_share_is_reported() {
        assert_eq!(share(0, 0, 0.95), Err(ShareError::None));
        assert_eq!(share(3, 2, 0.95), Err(ShareError::MoreThanAll));
        for confidence in [0.0, 1.0, -0.5, 2.0, f64::NAN] {
            assert_eq!(share(1, 2, confidence), Err(ShareError::Confidence));
        }
    }

    #[test]
    fn nothing_and_all_reach_the_ends() {
        assert_eq!(share(0, 7, 0.95).unwrap().low, 0.0);
        assert_eq!(share(7, 7, 0.95).unwrap().high, 1.0);
    }

    #[test]
    fn more_of_the_same_is_surer() {
        let width = |n: usize| {
            let share = share(n / 5, n, 0.95).unwrap();
            share.high - share.low
        };
        assert!(width(50) < width(10) && width(500) < width(50));
    }
}
