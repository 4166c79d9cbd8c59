//! Numbers from a seed: the same seed gives the same car on every phone, for ever.

use statrs::distribution::{ContinuousCDF, Normal};

/// SplitMix64, a generator of 64 bits of state.
///
/// # Source
/// Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014; its
/// constants and the first numbers of the test are from memory of the public-domain C code.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Chance(u64);

impl Chance {
    /// The numbers of a seed.
    pub const fn of(seed: u64) -> Self {
        Self(seed)
    }

    /// Numbers of their own for one place under a seed, whatever was drawn elsewhere.
    pub fn at(seed: u64, place: u64) -> Self {
        Self(Self(seed ^ Self(place).bits()).bits())
    }

    /// The next 64 bits.
    pub const fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A number above 0 and below 1, every one alike.
    pub fn share(&mut self) -> f64 {
        // The upper 32 bits are exact in the number; half a step keeps 0 and 1 out.
        let upper = u32::try_from(self.bits() >> 32).unwrap_or(u32::MAX);
        (f64::from(upper) + 0.5) / (f64::from(u32::MAX) + 1.0)
    }

    /// A number of the normal distribution around 0 with deviation 1.
    pub fn normal(&mut self) -> f64 {
        Normal::standard().inverse_cdf(self.share())
    }

    /// Whether something happens that happens in `share` of all cases.
    pub fn happens(&mut self, share: f64) -> bool {
        self.share() < share
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_numbers_are_the_published_ones() {
        let mut chance = Chance::of(1_234_567);
        let first = [(); 5].map(|()| chance.bits());
        let published = [
            6_457_827_717_110_365_317,
            3_203_168_211_198_807_973,
            9_817_491_932_198_370_423,
            4_593_380_528_125_082_431,
            16_408_922_859_458_223_821,
        ];
        assert_eq!(first, published);
    }

    #[test]
    fn normal_numbers_have_their_mean_deviation_and_tails() {
        let mut chance = Chance::of(7);
        let n = 20_000;
        let drawn: Vec<f64> = (0..n).map(|_| chance.normal()).collect();
        let count = f64::from(n);
        let mean = drawn.iter().sum::<f64>() / count;
        let variance = drawn.iter().map(|x| (x - mean).powi(2)).sum::<f64>() / count;
        let beyond = drawn.iter().filter(|x| x.abs() > 1.959_964).count() as f64 / count;
        // 4.5 deviations of each statistic; the tail of 5 % is in every table of the normal.
        assert!(mean.abs() < 4.5 / count.sqrt(), "{mean}");
        assert!((variance - 1.0).abs() < 4.5 * (2.0 / count).sqrt());
        assert!((beyond - 0.05).abs() < 4.5 * (0.05 * 0.95 / count).sqrt());
    }

    #[test]
    fn places_under_one_seed_do_not_repeat_each_other() {
        let first = |seed, place| Chance::at(seed, place).bits();
        let mut all: Vec<u64> = (0..50)
            .flat_map(|seed| (0..50).map(move |place| first(seed, place)))
            .collect();
        all.sort_unstable();
        all.dedup();
        assert_eq!(all.len(), 2500);
        assert_eq!(first(3, 4), first(3, 4));
    }
}
