//! The risk integrals of JCGM 106:2012, clause 9, by quadrature of our own over statrs' normal.
//!
//! Plays are told as their distance from the limit, in mm; every error is normal.

use statrs::distribution::{Continuous, ContinuousCDF, Normal, StudentsT};

fn below(z: f64) -> f64 {
    Normal::standard().cdf(z)
}

/// Midpoint rule; its error for these smooth integrands is far below one car in 20,000.
fn integral(slices: u32, from: f64, to: f64, of: impl Fn(f64) -> f64) -> f64 {
    let width = (to - from) / f64::from(slices);
    let middles = (0..slices).map(|i| from + (f64::from(i) + 0.5) * width);
    middles.map(of).sum::<f64>() * width
}

/// Cars around the limit and the gauge they are read with.
#[derive(Clone, Copy)]
pub struct Theory {
    /// Mean of the true plays less the limit.
    pub mean: f64,
    /// Deviation of the true plays.
    pub spread: f64,
    /// Standard uncertainty of a set.
    pub u: f64,
    /// The part of it that is common to two sets.
    pub u_shared: f64,
    /// One-sided 95 % factor.
    pub g: f64,
}

/// Factor of Student's t for a one-sided bound that holds with probability `p`, halved down from
/// the distribution function.
pub fn student(p: f64, dof: f64) -> f64 {
    let t = StudentsT::new(0.0, 1.0, dof).unwrap();
    let (mut low, mut high) = (0.0, 100.0);
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if t.cdf(middle) < p {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
}

/// Share of a normal distribution within so many deviations either way.
pub fn within_deviations(k: f64) -> f64 {
    below(k) - below(-k)
}

impl Theory {
    fn among(&self, from: f64, to: f64, chance: impl Fn(f64) -> f64) -> f64 {
        let density = |x: f64| Normal::standard().pdf((x - self.mean) / self.spread) / self.spread;
        integral(1000, from, to, |x| density(x) * chance(x))
    }

    /// Over all cars that are over the limit (9.5.2, the consumer's).
    pub fn over(&self, chance: impl Fn(f64) -> f64) -> f64 {
        self.among(0.0, self.mean.abs() + 9.0 * self.spread, chance)
    }

    /// Over all cars that are within the limit (9.5.3, the producer's).
    pub fn within(&self, chance: impl Fn(f64) -> f64) -> f64 {
        self.among(-self.mean.abs() - 9.0 * self.spread, 0.0, chance)
    }

    /// Chance that a set of a car at `x` reads `bound` or less.
    pub fn reads_below(&self, x: f64, bound: f64) -> f64 {
        below((bound - x) / self.u)
    }

    /// Chance of REPLACE for a car at `x`: proven over at once, or over and with the mean of two
    /// sets over again.
    ///
    /// Two sets share a part of their errors, so it is integrated over that part, and over what the
    /// first set read.
    pub fn replaced(&self, x: f64) -> f64 {
        let apart = (self.u.powi(2) - self.u_shared.powi(2)).sqrt();
        let band = self.g * self.u;
        integral(40, -6.0, 6.0, |z| {
            let shown = x + z * self.u_shared;
            let proven = 1.0 - below((band - shown) / apart);
            let again = integral(16, 0.0, band, |read| {
                let density = Normal::standard().pdf((read - shown) / apart) / apart;
                density * (1.0 - below((-read - shown) / apart))
            });
            Normal::standard().pdf(z) * (proven + again)
        })
    }

    /// Specific risk (9.3): chance that a car read at `y` is over the limit, given where the cars
    /// come from; the normal prior and the normal error give a normal between them (7.2).
    pub fn over_if_read(&self, y: f64) -> f64 {
        let (prior, read) = (self.spread.powi(2), self.u.powi(2));
        let best = (y * prior + self.mean * read) / (prior + read);
        below(best / (prior * read / (prior + read)).sqrt())
    }
}
