//! One invented car: its code, and what is true of it and stays hidden until the end.

use super::population::Population;
use crate::units::Length;
use crate::words;

words! {
    /// The cars that have a name, in the order in which they are offered.
    pub enum Named {
        /// A noisy bearing without play; the first, and the one that was there before the others.
        Marten = "first",
        /// A healthy hub; its tires hum.
        Curlew = "healthy",
        /// A loose wheel that rocks like a worn bearing.
        Dormouse = "loose_wheel",
        /// A good bearing, and a first place for the base that gives.
        Stoat = "flexing_base",
        /// A worn bearing, and a spec whose wheel torque was kept in the wrong unit.
        Lapwing = "unit_slip",
        /// A worn bearing, and a new hub that is bad out of its box.
        Newt = "bad_new_hub",
    }
}

/// What a job stores of its practice car.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Code {
    /// One of the named cars.
    Named(Named),
    /// A car drawn from a seed.
    Seed(u64),
}

/// Before the seed of a drawn car.
const SEED: &str = "seed-";

impl Code {
    /// The text that is stored: a name's code, or `seed-` with sixteen hexadecimal digits.
    pub fn code(self) -> String {
        match self {
            Self::Named(named) => named.code().to_owned(),
            Self::Seed(seed) => format!("{SEED}{seed:016x}"),
        }
    }

    /// The code that was stored; `None` for a car that this version does not know.
    pub fn from_code(code: &str) -> Option<Self> {
        match code.strip_prefix(SEED) {
            Some(seed) => u64::from_str_radix(seed, 16).ok().map(Self::Seed),
            None => Named::from_code(code).map(Self::Named),
        }
    }
}

words! {
    /// How a hub turns by hand.
    pub enum Finish {
        /// Smooth.
        Smooth = "smooth",
        /// It catches and grinds.
        Rough = "rough",
    }
}

words! {
    /// Where the noise on the road comes from.
    pub enum NoiseCause {
        /// There is none.
        Nothing = "nothing",
        /// This corner's bearing.
        Bearing = "bearing",
        /// The tires.
        Tires = "tires",
    }
}

words! {
    /// What is wrong on a spec.
    pub enum SpecTrap {
        /// The wheel torque was kept in lb-ft; its page says the same number of N·m.
        LugNutsInPoundFeet = "lug_nuts_in_pound_feet",
    }
}

/// What is true of a car.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Truth {
    /// Play of the hub that is on the car, axial at the pilot, its nut at its torque.
    pub play: Length,
    /// Play of the hub that is fitted.
    pub new_play: Length,
    /// How far the first place of the base gives, where that is the car's trouble.
    pub flex: Option<Length>,
    /// How much the dial reads too far, or too short below zero.
    pub dial_error: Length,
    /// How much of the play is hidden before the bearing was swung.
    pub unseated: Length,
    /// How the hub turns.
    pub finish: Finish,
    /// How the hub that is fitted turns.
    pub new_finish: Finish,
    /// Where the noise comes from.
    pub noise: NoiseCause,
    /// Lug nuts that are loose when the car comes.
    pub loose_nuts: u8,
    /// What is wrong on a spec.
    pub slip: Option<SpecTrap>,
}

/// An invented car.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Car {
    /// What the job stores of it.
    pub code: Code,
    /// What is hidden.
    pub truth: Truth,
    /// The spreads of its rig.
    pub(super) population: Population,
    /// Where its small differences are drawn from.
    pub(super) seed: u64,
}

/// A car with nothing wrong at all; the named ones differ from it.
const SOUND: Truth = Truth {
    play: Length::millimetres(0.01),
    new_play: Length::millimetres(0.01),
    flex: None,
    dial_error: Length::millimetres(0.002),
    unseated: Length::millimetres(0.008),
    finish: Finish::Smooth,
    new_finish: Finish::Smooth,
    noise: NoiseCause::Nothing,
    loose_nuts: 0,
    slip: None,
};

impl Car {
    /// The car that a seed gives out of the ordinary garage.
    pub fn from_seed(seed: u64) -> Self {
        Population::GARAGE.car(seed)
    }

    /// The car of a code.
    pub fn of(code: Code) -> Self {
        match code {
            Code::Named(named) => Self::named(named),
            Code::Seed(seed) => Self::from_seed(seed),
        }
    }

    /// One of the named cars.
    pub fn named(named: Named) -> Self {
        let mm = Length::millimetres;
        let truth = match named {
            Named::Marten => Truth {
                finish: Finish::Rough,
                noise: NoiseCause::Bearing,
                ..SOUND
            },
            Named::Curlew => Truth {
                noise: NoiseCause::Tires,
                ..SOUND
            },
            Named::Dormouse => Truth {
                loose_nuts: 3,
                ..SOUND
            },
            Named::Stoat => Truth {
                play: mm(0.03),
                flex: Some(mm(0.06)),
                ..SOUND
            },
            Named::Lapwing => Truth {
                play: mm(0.14),
                unseated: mm(0.03),
                noise: NoiseCause::Bearing,
                finish: Finish::Rough,
                slip: Some(SpecTrap::LugNutsInPoundFeet),
                ..SOUND
            },
            Named::Newt => Truth {
                play: mm(0.12),
                unseated: mm(0.03),
                new_play: mm(0.11),
                new_finish: Finish::Rough,
                ..SOUND
            },
        };
        Self {
            code: Code::Named(named),
            truth,
            population: Population::GARAGE,
            // Any number does; each named car has its own.
            seed: named as u64,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_code_survives_and_the_first_car_keeps_its_own() {
        let codes = Named::ALL.iter().map(|named| Code::Named(*named));
        for code in codes.chain([Code::Seed(0), Code::Seed(u64::MAX), Code::Seed(77)]) {
            assert_eq!(Code::from_code(&code.code()), Some(code));
            assert_eq!(Car::of(code).code, code);
        }
        assert_eq!(Code::from_code("first"), Some(Code::Named(Named::ALL[0])));
        assert_eq!(Code::from_code("grey estate"), None);
        assert_eq!(Code::from_code("seed-nothing"), None);
    }

    #[test]
    fn a_seed_gives_one_car_and_another_seed_another() {
        assert_eq!(Car::from_seed(5), Car::from_seed(5));
        assert_ne!(Car::from_seed(5).truth, Car::from_seed(6).truth);
    }

    #[test]
    fn the_garage_has_every_trouble_and_no_play_below_nothing() {
        let cars: Vec<Truth> = (0..400).map(|seed| Car::from_seed(seed).truth).collect();
        let has = |is: &dyn Fn(&Truth) -> bool| cars.iter().filter(|car| is(car)).count();
        assert_eq!(has(&|car| car.play < Length::ZERO), 0);
        for count in [
            has(&|car| car.finish == Finish::Rough),
            has(&|car| car.noise == NoiseCause::Tires),
            has(&|car| car.flex.is_some()),
            has(&|car| car.loose_nuts > 0),
            has(&|car| car.slip.is_some()),
            has(&|car| car.new_finish == Finish::Rough),
        ] {
            assert!((5..200).contains(&count), "{count}");
        }
    }
}
