//! How large a picture is drawn so that its longer side fits.

/// Width and height of a picture in pixels.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PhotoSize {
    /// Pixels from left to right.
    pub width: u32,
    /// Pixels from top to bottom.
    pub height: u32,
}

impl PhotoSize {
    /// The same shape with neither side longer than `longest`; never larger than it was.
    ///
    /// A side never falls below one pixel, or a panorama would have no picture at all.
    pub fn fit(self, longest: u32) -> Self {
        let side = self.width.max(self.height);
        if side <= longest {
            return self;
        }
        let scaled = |length: u32| {
            let exact =
                (u64::from(length) * u64::from(longest) + u64::from(side) / 2) / u64::from(side);
            u32::try_from(exact).unwrap_or(longest).max(1)
        };
        Self {
            width: scaled(self.width),
            height: scaled(self.height),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(from: (u32, u32), expected: (u32, u32)) {
        let got = PhotoSize {
            width: from.0,
            height: from.1,
        }
        .fit(1600);
        assert_eq!((got.width, got.height), expected);
    }

    #[test]
    fn the_longer_side_becomes_the_limit() {
        check((4000, 3000), (1600, 1200));
        check((3000, 4000), (1200, 1600));
        check((1601, 1601), (1600, 1600));
    }

    #[test]
    fn a_small_photo_stays_as_it_is() {
        check((1600, 900), (1600, 900));
        check((1, 1), (1, 1));
    }

    #[test]
    fn a_sliver_keeps_one_pixel() {
        check((100_000, 1), (1600, 1));
        check((u32::MAX, u32::MAX), (1600, 1600));
    }
}
