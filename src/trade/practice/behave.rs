//! What hands, ears and the dial meet on a practice car, in the words that a job is answered in.

use super::car::{Car, Finish, NoiseCause};
use super::chance::Chance;
use crate::trade::answer::Answer;
use crate::trade::play::{Dial, Divisions, Felt};
use crate::trade::wheel_end::{Choice, Sign};
use crate::units::{Length, Temperature, TemperatureUnit};
use crate::words;

words! {
    /// Which way the hub is held.
    pub enum Hands {
        /// Pushed in.
        Push = "push",
        /// Pulled out.
        Pull = "pull",
    }
}

words! {
    /// Which hub is on the car.
    pub enum Hub {
        /// The one it came with.
        Old = "old",
        /// The one that was fitted.
        New = "new",
    }
}

/// The dial where it was set, and which hub it stands at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rig {
    /// The gauge.
    pub dial: Dial,
    /// Where its needle rests while the hub is pushed in; zero on a zeroed dial.
    pub rests_at: Divisions,
    /// Which hub.
    pub hub: Hub,
    /// The first, second or later place of the base.
    pub place: u8,
}

/// A tire rocks about five times as far as the hub's rim (radius ratio 310/65, geometry).
const TIRE: f64 = 5.0;
/// What hands just feel, what eyes see, what knocks, at the tire: our bounds, no source.
const FEEL: [(Length, Felt); 3] = [
    (Length::millimetres(4.0), Felt::Knocks),
    (Length::millimetres(1.5), Felt::Seen),
    (Length::millimetres(0.5), Felt::JustFelt),
];

impl Car {
    /// Where the needle stands, read to the division, after so many swings of the bearing.
    ///
    /// Each swing halves what the rollers still hide of the play, at the push and at the pull.
    pub fn needle(&self, rig: &Rig, hands: Hands, round: u8, swings: u8) -> Divisions {
        let hidden = self.truth.unseated.min(self.play(rig.hub));
        let hidden = hidden.times(0.5 * 0.5_f64.powi(swings.into()));
        let travel = match hands {
            Hands::Push => hidden,
            Hands::Pull => self.shown(rig, round).minus(hidden),
        };
        self.on_the_face(rig, travel)
    }

    /// Where the needle goes when the knuckle is pushed instead of the hub.
    pub fn needle_of_base(&self, rig: &Rig) -> Divisions {
        self.on_the_face(rig, self.flex(rig).abs())
    }

    /// The true play of the hub that is on.
    pub const fn play(&self, hub: Hub) -> Length {
        match hub {
            Hub::Old => self.truth.play,
            Hub::New => self.truth.new_play,
        }
    }

    /// What the dial shows of the play with rollers seated: with all errors, before it is read.
    fn shown(&self, rig: &Rig, round: u8) -> Length {
        let spread = |draws: &mut Chance, by: Length| by.times(draws.normal());
        let of_set = spread(&mut self.drawn(rig, 1, 0), self.population.set_spread);
        let of_round = spread(&mut self.drawn(rig, 2, round), self.population.round_spread);
        self.play(rig.hub)
            .plus(self.truth.dial_error)
            .plus(self.flex(rig))
            .plus(of_set)
            .plus(of_round)
    }

    /// What the base gives, which adds to the play or takes from it.
    fn flex(&self, rig: &Rig) -> Length {
        match self.truth.flex {
            Some(flex) if rig.hub == Hub::Old && rig.place == 1 => flex,
            _ => self
                .population
                .flex_spread
                .times(self.drawn(rig, 3, 0).normal()),
        }
    }

    fn drawn(&self, rig: &Rig, what: u64, round: u8) -> Chance {
        let hub = u64::from(rig.hub == Hub::New);
        let place = what << 24 | hub << 16 | u64::from(rig.place) << 8 | u64::from(round);
        Chance::at(self.seed, place)
    }

    fn on_the_face(&self, rig: &Rig, travel: Length) -> Divisions {
        let divisions = travel.mm() / rig.dial.graduation().mm();
        let read = (rig.rests_at.count() + divisions).round();
        Divisions::new(read).unwrap_or(rig.rests_at)
    }

    /// What the base does when it is pushed, as the word that the step asks for.
    pub fn base_gives(&self, rig: &Rig) -> Choice {
        let divisions = self.flex(rig).abs().mm() / rig.dial.graduation().mm();
        match divisions {
            ..0.25 => Choice::FlexNone,
            ..0.75 => Choice::FlexHalf,
            ..1.5 => Choice::FlexOne,
            _ => Choice::FlexMore,
        }
    }

    /// What hands feel at the tire.
    pub fn rocked(&self, nuts_tight: bool) -> Felt {
        if self.wheel_is_loose(nuts_tight) {
            return Felt::Seen;
        }
        let at_tire = self.truth.play.times(TIRE);
        let felt = FEEL.into_iter().find(|(least, _)| *least <= at_tire);
        felt.map_or(Felt::Nothing, |(_, felt)| felt)
    }

    /// What the felt movement does with the brake held.
    pub fn brake_held(&self, nuts_tight: bool) -> Choice {
        if self.wheel_is_loose(nuts_tight) {
            Choice::PlayStays
        } else {
            Choice::PlayGone
        }
    }

    fn wheel_is_loose(&self, nuts_tight: bool) -> bool {
        self.truth.loose_nuts > 0 && !nuts_tight
    }

    /// What hand and ear find when it is spun: a bearing that hums here is rough and heard too.
    pub fn spun(&self, hub: Hub) -> Choice {
        let (finish, noisy) = match hub {
            Hub::Old => (self.truth.finish, self.truth.noise == NoiseCause::Bearing),
            Hub::New => (self.truth.new_finish, false),
        };
        match (finish, noisy) {
            (Finish::Smooth, false) => Choice::SmoothQuiet,
            (Finish::Smooth, true) => Choice::Noisy,
            (Finish::Rough, false) => Choice::Rough,
            (Finish::Rough, true) => Choice::RoughNoisy,
        }
    }

    /// The other side of the axle, which is sound on every practice car.
    pub fn other_side(&self, nuts_tight: bool) -> Choice {
        if self.rocked(nuts_tight) == Felt::Nothing {
            Choice::SameAsOther
        } else {
            Choice::OtherTighter
        }
    }

    /// Whether a sign is there on the road; the swerve is answered by [`Car::swerve`].
    pub fn sign(&self, sign: Sign) -> Answer {
        let noise = self.truth.noise;
        let there = match sign {
            Sign::Speed | Sign::Coast => noise != NoiseCause::Nothing,
            Sign::Swerve => noise == NoiseCause::Bearing,
            Sign::Surface => noise == NoiseCause::Tires,
            Sign::Shake => self.truth.loose_nuts > 0,
            Sign::Brake | Sign::FullLock | Sign::Pulse => false,
        };
        if there { Answer::Yes } else { Answer::No }
    }

    /// Which swerve is louder: the corner is a left one, which steering right loads.
    pub fn swerve(&self) -> Choice {
        if self.truth.noise == NoiseCause::Bearing {
            Choice::LouderRight
        } else {
            Choice::NoChange
        }
    }

    /// How warm the hub is after the road, this side or the other: a grinding one is 20 °C hotter.
    pub fn heat(&self, this_side: bool) -> Temperature {
        let hotter = this_side && self.truth.finish == Finish::Rough;
        let celsius = 38.0 + (6.0 * Chance::at(self.seed, u64::from(this_side)).share()).round();
        let celsius = if hotter { celsius + 20.0 } else { celsius };
        Temperature::new(celsius, TemperatureUnit::Celsius).unwrap_or(Temperature::ZERO)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trade::practice::Named;

    const FIRST: Rig = Rig {
        dial: Dial::HUNDREDTH_MM,
        rests_at: Divisions::ZERO,
        hub: Hub::Old,
        place: 1,
    };
    const LIMIT: Length = Length::millimetres(0.05);

    fn read(car: &Car, rig: &Rig, swings: u8) -> Length {
        let at = |hands| car.needle(rig, hands, 1, swings).count();
        rig.dial
            .worth(Divisions::new(at(Hands::Pull) - at(Hands::Push)).unwrap())
    }

    #[test]
    fn swinging_brings_out_the_play_and_the_needle_stands_on_a_mark() {
        let car = Car::named(Named::Lapwing);
        let plays: Vec<f64> = (0..7).map(|n| read(&car, &FIRST, n).mm()).collect();
        assert!(plays.windows(2).all(|two| two[0] <= two[1]), "{plays:?}");
        assert!(plays[0] + 0.015 < plays[6], "{plays:?}");
        assert!((plays[6] - 0.14).abs() < 0.025, "{plays:?}");
        let pull = car.needle(&FIRST, Hands::Pull, 2, 5).count();
        assert_eq!(pull.fract(), 0.0);
    }

    #[test]
    fn a_loose_wheel_rocks_with_the_brake_held_until_its_nuts_are_tight() {
        let car = Car::named(Named::Dormouse);
        assert_eq!(car.rocked(false), Felt::Seen);
        assert_eq!(car.brake_held(false), Choice::PlayStays);
        assert_eq!(car.rocked(true), Felt::Nothing);
        assert!(read(&car, &FIRST, 6) < LIMIT);
    }

    #[test]
    fn the_first_place_of_a_base_that_gives_shows_play_that_is_not_there() {
        let car = Car::named(Named::Stoat);
        let again = Rig { place: 2, ..FIRST };
        assert_eq!(car.base_gives(&FIRST), Choice::FlexMore);
        assert!(LIMIT < read(&car, &FIRST, 6));
        assert_ne!(car.base_gives(&again), Choice::FlexMore);
        assert!(read(&car, &again, 6) < LIMIT);
        assert!(car.needle_of_base(&FIRST).count() >= 3.0);
    }

    #[test]
    fn noise_has_its_signs_on_the_road_and_at_the_spring() {
        let (bad, tires) = (Car::named(Named::Marten), Car::named(Named::Curlew));
        for car in [bad, tires] {
            assert_eq!(car.sign(Sign::Speed), Answer::Yes);
            assert!(read(&car, &FIRST, 6) < LIMIT);
        }
        assert_eq!(
            (bad.swerve(), bad.spun(Hub::Old)),
            (Choice::LouderRight, Choice::RoughNoisy)
        );
        assert_eq!(
            (tires.swerve(), tires.spun(Hub::Old)),
            (Choice::NoChange, Choice::SmoothQuiet)
        );
        assert_eq!(bad.sign(Sign::Surface), Answer::No);
        assert_eq!(tires.sign(Sign::Surface), Answer::Yes);
        let warmer = |car: &Car| {
            car.heat(true).in_unit(TemperatureUnit::Celsius)
                - car.heat(false).in_unit(TemperatureUnit::Celsius)
        };
        assert!(warmer(&bad) > 12.0 && warmer(&tires) < 8.0);
    }

    #[test]
    fn a_new_hub_can_be_bad_out_of_its_box() {
        let car = Car::named(Named::Newt);
        let new = Rig {
            hub: Hub::New,
            ..FIRST
        };
        assert!(LIMIT < read(&car, &new, 6));
        assert_eq!(car.spun(Hub::New), Choice::Rough);
        let sound = Car::named(Named::Lapwing);
        assert!(read(&sound, &new, 6) < LIMIT);
        assert_eq!(sound.spun(Hub::New), Choice::SmoothQuiet);
    }
}
