//! The sets of one corner, each against the limit in force for it, and what two of them say
//! together.

use super::budget::{Budget, RigFacts};
use super::conformity::{Conformity, Mean, WhyNot, compare};
use super::limit::Limit;
use super::series::ReadingSet;
use super::way::{Difference, Way};
use crate::units::Length;

/// A set of readings with everything that follows from it.
#[derive(Clone, Debug, PartialEq)]
pub struct Measured {
    /// The rounds.
    pub set: ReadingSet,
    /// How sure they are.
    pub budget: Budget,
    /// What they were compared with.
    pub limit: Limit,
    /// Why that is not the limit of the manufacturer's spec, where there is such a spec.
    pub apart: Option<Difference>,
    /// What the comparison says.
    pub conformity: Conformity,
}

/// The limit in force for a reading taken in this way, `default` where there is no spec, and how the
/// spec's way differs; a reading whose way was not recorded is compared with none.
///
/// A spec wins wherever its way is that of the reading. Where it is not, the default limit stays
/// in force if its own way fits: a spec for another method takes nothing away.
pub fn in_force(
    spec: Option<&Limit>,
    default: &Limit,
    way: Option<&Way>,
) -> (Limit, Option<Difference>) {
    let (Some(spec), Some(way)) = (spec, way) else {
        return (*spec.unwrap_or(default), None);
    };
    let apart = way.differs_from(&spec.way);
    let falls_back = apart.is_some() && way.differs_from(&default.way).is_none();
    (*if falls_back { default } else { spec }, apart)
}

impl Measured {
    /// A set against the limit in force: the manufacturer's, if there is one, else `default`.
    pub fn of(set: ReadingSet, rig: &RigFacts, spec: Option<&Limit>, default: &Limit) -> Self {
        let budget = Budget::of(&set, rig);
        let (limit, apart) = in_force(spec, default, set.way());
        let conformity = compare(&set, &budget, &limit);
        Self {
            set,
            budget,
            limit,
            apart,
            conformity,
        }
    }

    /// The mean that was compared.
    pub fn mean(&self) -> Length {
        let compared = self.conformity.comparison();
        compared.map_or_else(|| self.set.mean(), |comparison| comparison.play)
    }

    /// What it says, without its rounds.
    pub fn figures(&self) -> Figures {
        Figures {
            play: self.set.mean(),
            cycles: self.set.plays().len(),
            budget: self.budget.clone(),
            limit: self.limit,
            apart: self.apart,
            conformity: self.conformity,
        }
    }

    /// The same rounds with what was said of them once.
    pub fn recorded_as(self, figures: &Figures) -> Self {
        Self {
            set: self.set,
            budget: figures.budget.clone(),
            limit: figures.limit,
            apart: figures.apart,
            conformity: figures.conformity,
        }
    }

    /// Whether it was compared with its limit at all.
    pub const fn is_compared(&self) -> bool {
        self.conformity.is_compared()
    }
}

/// What a mean of one set or of two says, without its rounds.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct Figures {
    /// The mean.
    pub play: Length,
    /// From how many cycles.
    pub cycles: usize,
    /// How sure it is.
    pub budget: Budget,
    /// What it was compared with.
    pub limit: Limit,
    /// Why that is not the limit of the manufacturer's spec, where there is such a spec.
    pub apart: Option<Difference>,
    /// What the comparison says.
    pub conformity: Conformity,
}

/// The mean of the first two sets that were compared with one and the same limit; `None` where
/// there are no two. A set that cannot be compared does not speak.
pub fn join(sets: &[Measured]) -> Option<Figures> {
    let mut compared = sets.iter().filter(|set| set.is_compared());
    let (a, b) = (compared.next()?, compared.next()?);
    if a.limit != b.limit {
        return None;
    }
    let budget = Budget::of_both((&a.set, &a.budget), (&b.set, &b.budget));
    let mean = Mean {
        play: a.set.mean().plus(b.set.mean()).times(0.5),
        cycles: a.set.plays().len() + b.set.plays().len(),
        still: [a, b]
            .iter()
            .all(|one| one.set.nothing_moved())
            .then(|| a.set.dial().graduation().max(b.set.dial().graduation())),
    };
    Some(Figures {
        play: mean.play,
        cycles: mean.cycles,
        conformity: mean.against(&budget, &a.limit),
        limit: a.limit,
        apart: a.apart,
        budget,
    })
}

/// Why no set was compared with the spec's limit, where there is a spec and there are sets that
/// were compared with the default one.
pub fn spec_apart(sets: &[Measured]) -> Option<WhyNot> {
    let mut compared = sets.iter().filter(|set| set.is_compared());
    let first = compared.next()?.apart?;
    compared
        .all(|set| set.apart.is_some())
        .then_some(WhyNot::Way(first))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trade::play::budget::{IndicatorError, Source};
    use crate::trade::play::dial::{Dial, Divisions, Round};
    use crate::trade::play::series::ReadingFlag;
    use crate::trade::play::way::{Method, Place};

    const RIG: RigFacts = RigFacts {
        indicator: IndicatorError::OneDivision,
        flex: Length::millimetres(0.005),
        temperature: None,
    };

    fn set(way: Way, pulls: &[f64], spec: Option<&Limit>) -> Measured {
        let rounds: Vec<_> = pulls
            .iter()
            .map(|d| Round::zeroed(Divisions::new(*d).unwrap()))
            .collect();
        let set = ReadingSet::read(Dial::HUNDREDTH_MM, way, &rounds, vec![]).unwrap();
        Measured::of(set, &RIG, spec, &Limit::HOUSE)
    }

    fn manufacturer(mm: f64, way: Way) -> Limit {
        Limit::manufacturer(Length::millimetres(mm), way).unwrap()
    }

    const ROCKED: Way = Way {
        method: Method::Rock,
        place: Place::RotorEdge,
        ..Way::DEFAULT
    };

    #[test]
    fn a_spec_for_another_way_leaves_the_default_limit_in_force_where_that_fits() {
        let rocked = manufacturer(0.5, ROCKED);
        let pulled = set(Way::DEFAULT, &[20.0; 3], Some(&rocked));
        assert_eq!(pulled.limit, Limit::HOUSE);
        assert_eq!(pulled.conformity.code(), "proven_out");
        assert_eq!(
            spec_apart(std::slice::from_ref(&pulled)),
            Some(WhyNot::Way(Difference::Method))
        );
        let by_spec = set(ROCKED, &[20.0; 3], Some(&rocked));
        assert_eq!((by_spec.limit, by_spec.apart), (rocked, None));
        assert_eq!(spec_apart(&[pulled, by_spec]), None);
        // The default limit is axial at the pilot: a rock at the edge has no limit at all.
        let pulled_spec = manufacturer(0.05, Way::DEFAULT);
        let rocked = set(ROCKED, &[20.0; 3], Some(&pulled_spec));
        assert_eq!(rocked.conformity.code(), "no_comparison");
    }

    // s² pooled over (4, 6, 8) and (8, 10, 12) is 4, so that s is 20 µm with 4 degrees of freedom
    // and the mean of both has 20/√6; the means lie 40 µm apart: 20 µm with one.
    #[test]
    fn two_sets_are_joined_by_their_mean_with_what_lies_between_them() {
        let spec = manufacturer(0.05, Way::DEFAULT);
        let sets = [[4.0, 6.0, 8.0], [8.0, 10.0, 12.0]];
        let sets = sets.map(|pulls| set(Way::DEFAULT, &pulls, Some(&spec)));
        let joined = join(&sets).unwrap();
        assert!((joined.play.mm() - 0.08).abs() < 1e-12);
        assert_eq!(joined.cycles, 6);
        let part = |source| {
            let parts = &joined.budget.components;
            *parts.iter().find(|part| part.source == source).unwrap()
        };
        let (within, between) = (part(Source::Repeatability), part(Source::BetweenSets));
        assert!((within.u.mm() - 0.02 / 6_f64.sqrt()).abs() < 1e-12);
        assert_eq!((within.dof, between.dof), (Some(4.0), Some(1.0)));
        assert!((between.u.mm() - 0.02).abs() < 1e-12);
        // What both share counts once, and does not shrink.
        assert_eq!(
            part(Source::Indicator),
            *sets[0]
                .budget
                .components
                .iter()
                .find(|part| part.source == Source::Indicator)
                .unwrap()
        );
    }

    #[test]
    fn a_set_that_cannot_be_compared_does_not_speak() {
        let spec = manufacturer(0.05, Way::DEFAULT);
        let over = set(Way::DEFAULT, &[6.0; 3], Some(&spec));
        let round = [Round::zeroed(Divisions::ZERO); 3];
        let marks = vec![ReadingFlag::FlexNotTested];
        let bad = ReadingSet::read(Dial::HUNDREDTH_MM, Way::DEFAULT, &round, marks).unwrap();
        let bad = Measured::of(bad, &RIG, Some(&spec), &Limit::HOUSE);
        assert_eq!(bad.conformity.code(), "no_comparison");
        assert_eq!(join(&[over, bad]), None);
    }
}
