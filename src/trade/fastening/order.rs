//! The order in which fasteners are drawn down, numbered clockwise from 1.

/// Why there is no order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OrderError {
    /// No pattern for so many.
    Count {
        /// How many were asked for.
        count: u8,
    },
}

/// The star order of 3 to 10 wheel fasteners: each once, far from the one before.
///
/// From five on no two in a row are neighbours. With 4, 6, 8 and 10 the opposite one follows.
///
/// # Errors
/// [`OrderError::Count`] for another count.
///
/// # Source
/// 4, 5, 6 and 8 are the common patterns, from memory; 7, 9 and 10 follow the same rule.
///
/// ```
/// use hubslate::trade::fastening::star_order;
///
/// assert_eq!(star_order(5), Ok([1, 3, 5, 2, 4].as_slice())); // the five-point star
/// ```
pub const fn star_order(count: u8) -> Result<&'static [u8], OrderError> {
    match count {
        3 => Ok(&[1, 2, 3]),
        4 => Ok(&[1, 3, 2, 4]),
        5 => Ok(&[1, 3, 5, 2, 4]),
        6 => Ok(&[1, 4, 2, 5, 3, 6]),
        7 => Ok(&[1, 4, 7, 3, 6, 2, 5]),
        8 => Ok(&[1, 5, 3, 7, 2, 6, 4, 8]),
        9 => Ok(&[1, 5, 9, 4, 8, 3, 7, 2, 6]),
        10 => Ok(&[1, 6, 2, 7, 3, 8, 4, 9, 5, 10]),
        _ => Err(OrderError::Count { count }),
    }
}

/// The cross order of 3 or 4 hub bolts, so that the ring is not drawn in crooked.
///
/// # Errors
/// [`OrderError::Count`] for another count.
pub const fn cross_order(count: u8) -> Result<&'static [u8], OrderError> {
    match count {
        3 | 4 => star_order(count),
        _ => Err(OrderError::Count { count }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_counts_that_exist_have_an_order() {
        for count in [0, 1, 2, 11, 255] {
            assert_eq!(star_order(count), Err(OrderError::Count { count }));
        }
        for count in [2, 5] {
            assert_eq!(cross_order(count), Err(OrderError::Count { count }));
        }
        assert_eq!(cross_order(4), Ok(&[1, 3, 2, 4][..]));
    }
}
