//! How long a voice note is, as it is kept.

/// What is shorter than this was a slip of the finger, in milliseconds. Our own figure.
const SLIP_MS: f64 = 500.0;
/// The longest note in seconds; see `job::entry::Voice`.
const LONGEST_S: f64 = 60.0;

/// Whole seconds of a note, begun ones counted; `None` for a slip.
pub fn seconds(ms: f64) -> Option<u8> {
    (SLIP_MS <= ms).then(|| (ms / 1000.0).ceil().clamp(1.0, LONGEST_S) as u8)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::entry::Voice;

    #[test]
    fn begun_seconds_count_and_a_slip_is_none() {
        let cases = [
            (0.0, None),
            (499.0, None),
            (500.0, Some(1)),
            (1000.0, Some(1)),
            (1001.0, Some(2)),
            (7400.0, Some(8)),
            // A timer that comes late does not make a note longer than it may be.
            (60_900.0, Some(Voice::LONGEST_S)),
        ];
        for (ms, expected) in cases {
            assert_eq!(seconds(ms), expected, "{ms}");
        }
    }
}
