//! The torque wrench, and whether the van has one for a spec.

use chrono::NaiveDate;

use super::spec::Spec;
use crate::units::{Torque, TorqueUnit, TypedTorque};

/// A torque wrench of the van kit.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct Wrench {
    /// What it is called in the van.
    pub name: String,
    /// The lowest torque marked on it.
    pub low: Torque,
    /// The highest torque marked on it.
    pub high: Torque,
    /// The unit it is set in.
    pub unit: TorqueUnit,
    /// How it is kept right.
    pub upkeep: Upkeep,
}

/// What is known of a wrench's marks and checks; what is not there is not known.
#[derive(Clone, Debug, Default, PartialEq, Hash)]
pub struct Upkeep {
    /// Its finest mark, as printed.
    pub graduation: Option<TypedTorque>,
    /// The day on which it was last checked.
    pub checked: Option<NaiveDate>,
    /// Clicks since then that no job here has counted.
    pub clicks: u32,
}

/// Which share of a wrench's range is used.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UsableShare {
    lowest: f64,
    highest: f64,
}

/// The two ends are no share of a range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoShare;

/// Why no wrench fits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WrenchError {
    /// There is no wrench in the kit.
    NoWrench,
    /// Every wrench would be used below its usable range.
    AllTooLarge {
        /// What is needed.
        target: Torque,
    },
    /// Every wrench ends below it.
    AllTooSmall {
        /// What is needed.
        target: Torque,
    },
    /// Some end below it and the others begin above it.
    BetweenWrenches {
        /// What is needed.
        target: Torque,
    },
}

/// Which wrench for which stage.
#[derive(Clone, Debug, PartialEq)]
pub enum Fit {
    /// For each torque stage in order the index of its wrench.
    Fits {
        /// Indices into the kit.
        wrenches: Vec<usize>,
    },
    /// One stage has no wrench.
    Lacks {
        /// Which torque stage, from 0.
        stage: usize,
        /// Why.
        why: WrenchError,
    },
    /// The spec has no torque.
    NothingToSet,
}

impl UsableShare {
    /// From a fifth of full scale to all of it: by custom, and where checks of wrenches begin.
    pub const DEFAULT: Self = Self {
        lowest: 0.2,
        highest: 1.0,
    };

    /// The share that a shop has set, in hundredths of full scale.
    ///
    /// # Errors
    /// [`NotFinite`] unless `lowest < highest <= 100`.
    pub fn percent(lowest: u8, highest: u8) -> Result<Self, NoShare> {
        if lowest < highest && highest <= 100 {
            Ok(Self {
                lowest: f64::from(lowest) / 100.0,
                highest: f64::from(highest) / 100.0,
            })
        } else {
            Err(NoShare)
        }
    }
}

impl Wrench {
    fn least(&self, share: UsableShare) -> Torque {
        self.low.max(self.high.times(share.lowest))
    }

    fn most(&self, share: UsableShare) -> Torque {
        self.high.times(share.highest)
    }

    /// Whether `target` is inside the usable share of its range, both ends included.
    pub fn holds(&self, target: Torque, share: UsableShare) -> bool {
        !self.is_too_large(target, share) && !self.is_too_small(target, share)
    }

    fn is_too_large(&self, target: Torque, share: UsableShare) -> bool {
        target.times(1.0 + LAST_BITS) < self.least(share)
    }

    fn is_too_small(&self, target: Torque, share: UsableShare) -> bool {
        self.most(share).times(1.0 + LAST_BITS) < target
    }
}

/// A fifth of 25 lb-ft is 5 lb-ft, whatever the last bits of the products say.
const LAST_BITS: f64 = 1e-12;

/// The wrench for each torque stage of a spec: the smallest one that holds it, since a smaller
/// wrench is finer.
pub fn fit(spec: &Spec, kit: &[Wrench], share: UsableShare) -> Fit {
    let mut wrenches = Vec::new();
    for (stage, typed) in spec.torques().enumerate() {
        match pick(typed.torque(), kit, share) {
            Ok(index) => wrenches.push(index),
            Err(why) => return Fit::Lacks { stage, why },
        }
    }
    if wrenches.is_empty() {
        Fit::NothingToSet
    } else {
        Fit::Fits { wrenches }
    }
}

/// The smallest wrench that holds a torque, by its place in the kit.
///
/// # Errors
/// The [`WrenchError`] that leaves none.
pub fn pick(target: Torque, kit: &[Wrench], share: UsableShare) -> Result<usize, WrenchError> {
    let holding = kit
        .iter()
        .enumerate()
        .filter(|(_, wrench)| wrench.holds(target, share))
        .reduce(|best, next| {
            if next.1.high < best.1.high {
                next
            } else {
                best
            }
        });
    match holding {
        Some((index, _)) => Ok(index),
        None if kit.is_empty() => Err(WrenchError::NoWrench),
        None if kit.iter().all(|wrench| wrench.is_too_large(target, share)) => {
            Err(WrenchError::AllTooLarge { target })
        }
        None if kit.iter().all(|wrench| wrench.is_too_small(target, share)) => {
            Err(WrenchError::AllTooSmall { target })
        }
        None => Err(WrenchError::BetweenWrenches { target }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trade::fastening::spec::tests::{angle, spec, torque};
    use crate::trade::fastening::spec::{SpecBody, SpecItem};

    const NM: TorqueUnit = TorqueUnit::NewtonMetre;

    fn wrench(low: f64, high: f64) -> Wrench {
        Wrench {
            name: format!("{low} to {high}"),
            low: Torque::newton_metres(low),
            high: Torque::newton_metres(high),
            unit: NM,
            upkeep: Upkeep::default(),
        }
    }

    fn fits(stages: &[&str], kit: &[Wrench]) -> Fit {
        let mut stages: Vec<_> = stages.iter().map(|text| torque(text, NM)).collect();
        stages.push(angle("45"));
        fit(&spec(SpecItem::AxleNut, stages), kit, UsableShare::DEFAULT)
    }

    #[test]
    fn the_smallest_wrench_that_holds_it_is_chosen() {
        let kit = [wrench(40.0, 340.0), wrench(20.0, 100.0), wrench(5.0, 25.0)];
        let wrenches = vec![1, 0];
        assert_eq!(fits(&["80", "245"], &kit), Fit::Fits { wrenches });
    }

    #[test]
    fn a_stage_below_a_fifth_of_the_range_does_not_fit() {
        let kit = [wrench(40.0, 340.0)];
        let target = Torque::newton_metres(50.0);
        let why = WrenchError::AllTooLarge { target };
        assert_eq!(fits(&["50"], &kit), Fit::Lacks { stage: 0, why });
        assert_eq!(fits(&["68"], &kit), Fit::Fits { wrenches: vec![0] });
        let whole = UsableShare::percent(0, 100).unwrap();
        let bolts = spec(SpecItem::HubBolts, vec![torque("50", NM)]);
        let wrenches = vec![0];
        assert_eq!(fit(&bolts, &kit, whole), Fit::Fits { wrenches });
    }

    // The lower end of a range is in it, as it is printed on the wrench (ISO 6789-1 grades the
    // range with its ends); in pound-feet the fifth of the upper end is off by its last bits.
    #[test]
    fn both_ends_of_a_range_are_in_it() {
        for unit in TorqueUnit::ALL {
            let of = |value| Torque::new(value, *unit).unwrap();
            for (low, high) in [(50.0, 250.0), (5.0, 25.0), (10.0, 50.0), (23.0, 115.0)] {
                let mut wrench = wrench(0.0, 0.0);
                (wrench.low, wrench.high) = (of(low), of(high));
                let share = UsableShare::DEFAULT;
                assert!(wrench.holds(of(low), share), "{low} {unit:?}");
                assert!(wrench.holds(of(high), share), "{high} {unit:?}");
                assert!(!wrench.holds(of(low * 0.999), share), "{low} {unit:?}");
                assert!(!wrench.holds(of(high * 1.001), share), "{high} {unit:?}");
                assert_eq!(pick(of(low), &[wrench], share), Ok(0));
            }
        }
    }

    #[test]
    fn each_misfit_has_its_name() {
        let target = Torque::newton_metres(300.0);
        let lacks = |why| Fit::Lacks { stage: 0, why };
        assert_eq!(fits(&["300"], &[]), lacks(WrenchError::NoWrench));
        assert_eq!(
            fits(&["300"], &[wrench(20.0, 200.0)]),
            lacks(WrenchError::AllTooSmall { target })
        );
        assert_eq!(
            fits(&["300"], &[wrench(20.0, 200.0), wrench(350.0, 800.0)]),
            lacks(WrenchError::BetweenWrenches { target })
        );
        let missing = Spec {
            item: SpecItem::HubBolts,
            body: SpecBody::NotFound {
                reason: "not in the book".to_owned(),
            },
        };
        assert_eq!(fit(&missing, &[], UsableShare::DEFAULT), Fit::NothingToSet);
    }

    #[test]
    fn a_share_that_is_none_is_refused() {
        assert!(UsableShare::percent(90, 25).is_err());
        assert!(UsableShare::percent(25, 101).is_err());
    }
}
