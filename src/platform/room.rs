//! How much room there is for this app, and when that is said.

/// Room for this app in bytes, as the browser estimates it; localStorage is not counted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// Bytes in use.
    pub used: f64,
    /// Bytes that may be used in all.
    pub quota: f64,
}

/// It is said when less than this is left, in megabytes: some hundred pictures. Our own figure.
const FEW_MB: u64 = 200;
/// Or when this share of all is in use. Our own figure.
const MUCH: f64 = 0.8;

impl Room {
    /// Megabytes in use, rounded up.
    pub fn used_mb(&self) -> u64 {
        megabytes(self.used).ceil() as u64
    }

    /// Megabytes that may be used in all, rounded up.
    pub fn quota_mb(&self) -> u64 {
        megabytes(self.quota).ceil() as u64
    }

    /// Megabytes that are left, rounded down.
    pub fn left_mb(&self) -> u64 {
        megabytes(self.quota - self.used).floor() as u64
    }

    /// Whether it is time to make room: before it is full, so that no picture is refused.
    pub fn is_tight(&self) -> bool {
        self.left_mb() < FEW_MB || MUCH * self.quota <= self.used
    }
}

/// Exact for every size that a phone has; a cast stays at the ends of its range.
fn megabytes(bytes: f64) -> f64 {
    bytes.max(0.0) / 1_000_000.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(used: f64, quota: f64, tight: bool, left: u64) {
        let room = Room { used, quota };
        assert_eq!((room.is_tight(), room.left_mb()), (tight, left));
    }

    #[test]
    fn it_is_said_before_it_is_full() {
        const MB: f64 = 1_000_000.0;
        check(10.0 * MB, 2000.0 * MB, false, 1990);
        // Four fifths of all are in use, though much is left.
        check(1599.0 * MB, 2000.0 * MB, false, 401);
        check(1600.0 * MB, 2000.0 * MB, true, 400);
        // Less than 200 MB are left, though little is in use.
        check(100.0 * MB, 300.0 * MB, false, 200);
        check(100.1 * MB, 300.0 * MB, true, 199);
        // A browser that gave more than it now allows has nothing left.
        check(3.0 * MB, 1.0 * MB, true, 0);
        check(0.0, 0.0, true, 0);
    }
}
