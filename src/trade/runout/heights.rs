//! Heights round a part: what a fit needs of readings, whatever they were read with.

use super::series::Series;
use crate::units::{Angle, Length};

/// How high the part stands at each place, read to one division.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Heights {
    places: Vec<(Angle, Length)>,
    division: Length,
}

impl Heights {
    pub(super) const fn new(places: Vec<(Angle, Length)>, division: Length) -> Self {
        Self { places, division }
    }

    pub(super) fn places(&self) -> &[(Angle, Length)] {
        &self.places
    }

    pub(super) const fn division(&self) -> Length {
        self.division
    }

    /// The largest less the smallest.
    pub(super) fn range(&self) -> Length {
        let all = || self.places.iter().map(|(_, height)| *height);
        match (all().reduce(Length::max), all().reduce(Length::min)) {
            (Some(highest), Some(lowest)) => highest.minus(lowest),
            _ => Length::ZERO,
        }
    }

    /// All but one.
    pub(super) fn without(&self, index: usize) -> Self {
        let mut places = self.places.clone();
        if index < places.len() {
            places.remove(index);
        }
        Self {
            places,
            division: self.division,
        }
    }
}

impl From<&Series> for Heights {
    fn from(series: &Series) -> Self {
        Self::new(series.saved().collect(), series.dial().graduation())
    }
}
