//! The dial: its face, the shortest way round it, and what a push and a pull reading say.

use crate::sorted::Sorted;
use crate::units::{Decimal, Length, System};
use crate::words;

words! {
    /// How the tip moves the needle.
    pub enum DialKind {
        /// A plunger along its own axis.
        Plunger = "plunger",
        /// A lever that swings.
        Lever = "lever",
    }
}

/// A dial gauge as it is in the van.
#[derive(Clone, Copy, Debug, PartialEq, Hash)]
pub struct Dial {
    graduation: Length,
    divisions_per_turn: u32,
    kind: DialKind,
}

/// Why something is no dial.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DialError {
    /// A division must be above zero and no more than a millimetre.
    Graduation {
        /// What was given.
        graduation: Length,
    },
    /// A face has between 10 and 1000 divisions.
    Divisions {
        /// What was given.
        divisions_per_turn: u32,
    },
}

/// A place on the dial's face in its own divisions, from the zero of the bezel.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Divisions(f64);

impl Divisions {
    /// The zero of the bezel: the push reading of a zeroed dial.
    pub const ZERO: Self = Self(0.0);

    /// A place read from typed digits.
    pub fn typed(decimal: &Decimal) -> Self {
        Self(decimal.value())
    }

    /// A place from a number of divisions; `None` if it is no finite number.
    pub fn new(divisions: f64) -> Option<Self> {
        divisions.is_finite().then_some(Self(divisions))
    }

    /// The number of divisions.
    pub const fn count(self) -> f64 {
        self.0
    }

    /// A needle on its way to another place: half of what is left each time, and there at once
    /// when hardly anything is.
    pub fn towards(self, to: Self) -> Self {
        let left = to.0 - self.0;
        if left.abs() < 0.2 {
            to
        } else {
            Self(self.0 + 0.5 * left)
        }
    }
}

/// One round: pushed in and read, pulled out and read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Round {
    /// Reading while pushing; zero on a zeroed dial.
    pub push: Divisions,
    /// Reading while pulling.
    pub pull: Divisions,
    /// Whole turns that the small pointer counted from push to pull, if it was asked for.
    pub turns: Option<i32>,
}

/// Why a round gives no play.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum RoundError {
    /// More than a quarter turn, or a dial whose whole turn is no more than a worn hub may move:
    /// the needle may have gone the other way or round; ask the turns.
    AskTurns {
        /// The shortest way between the two readings.
        shortest: Divisions,
    },
    /// A reading that is not on this dial's face.
    OffTheDial {
        /// The reading.
        reading: Divisions,
    },
}

/// A turn that is worth less than this can be gone round unseen by a hub that still passes for
/// firm by hand (our bound, no source).
pub(super) const UNSEEN: Length = Length::millimetres(0.5);

/// Beyond this share of a turn the shortest way may be the wrong one (our bound, no source).
pub(super) const QUARTER_TURN: f64 = 0.25;

impl Round {
    /// A round on a dial zeroed at the push.
    pub const fn zeroed(pull: Divisions) -> Self {
        Self {
            push: Divisions::ZERO,
            pull,
            turns: None,
        }
    }

    /// A round of two readings.
    pub const fn of_two(push: Divisions, pull: Divisions) -> Self {
        Self {
            push,
            pull,
            turns: None,
        }
    }
}

impl Dial {
    /// The common metric dial: 0.01 mm, 100 divisions a turn.
    pub const HUNDREDTH_MM: Self = Self::plunger(Length::millimetres(0.01), 100);
    /// The common inch dial: 0.001 in, 100 divisions a turn.
    pub const THOU: Self = Self::plunger(Length::thou(1.0), 100);
    /// The finer inch dial: 0.0005 in, 100 divisions a turn.
    pub const HALF_THOU: Self = Self::plunger(Length::thou(0.5), 100);

    const fn plunger(graduation: Length, divisions_per_turn: u32) -> Self {
        Self {
            graduation,
            divisions_per_turn,
            kind: DialKind::Plunger,
        }
    }

    /// A dial of the van kit.
    ///
    /// # Errors
    /// [`DialError`] for a face that cannot be.
    pub fn new(
        graduation: Length,
        divisions_per_turn: u32,
        kind: DialKind,
    ) -> Result<Self, DialError> {
        if !(Length::ZERO < graduation && graduation <= Length::millimetres(1.0)) {
            return Err(DialError::Graduation { graduation });
        }
        if !(10..=1000).contains(&divisions_per_turn) {
            return Err(DialError::Divisions { divisions_per_turn });
        }
        Ok(Self {
            graduation,
            divisions_per_turn,
            kind,
        })
    }

    /// What one division is worth.
    pub const fn graduation(&self) -> Length {
        self.graduation
    }

    /// The system that its divisions belong to: what is read on it is told in that first.
    pub fn system(&self) -> System {
        let inch = [Self::THOU, Self::HALF_THOU].map(|dial| dial.graduation);
        if inch.contains(&self.graduation) {
            System::Us
        } else {
            System::Metric
        }
    }

    /// Divisions once round the face.
    pub const fn divisions_per_turn(&self) -> u32 {
        self.divisions_per_turn
    }

    /// Plunger or lever.
    pub const fn kind(&self) -> DialKind {
        self.kind
    }

    /// What so many divisions are worth.
    pub fn worth(&self, divisions: Divisions) -> Length {
        self.graduation.times(divisions.count())
    }

    /// A reading told so that it lies within half a turn of another: on a dial zeroed at 0 the
    /// needle at 98 of 100 stands at −2.
    pub fn nearest(&self, reading: Divisions, to: Divisions) -> Divisions {
        let face = f64::from(self.divisions_per_turn);
        let way = (reading.0 - to.0 + face / 2.0).rem_euclid(face) - face / 2.0;
        Divisions(to.0 + way)
    }

    /// The one dial that every reading was taken on; `None` without a reading, or with several dials.
    pub fn shared(readings: impl IntoIterator<Item = Self>) -> Option<Self> {
        let mut readings = readings.into_iter();
        let first = readings.next()?;
        readings.all(|other| other == first).then_some(first)
    }

    /// Whether a whole turn is worth so little that a needle can go round unseen.
    pub fn has_short_turn(&self) -> bool {
        self.worth(Divisions(f64::from(self.divisions_per_turn))) < UNSEEN
    }

    /// The ways that the needle may have gone from push to pull, the shortest three first: how
    /// many whole turns beside the readings, and the play that it would be.
    pub fn ways(&self, round: Round) -> Vec<(i32, Length)> {
        let recorded = |turns| {
            let turns = Some(turns);
            Some((turns?, self.play(Round { turns, ..round }).ok()?))
        };
        let mut ways: Vec<_> = (-2..=2).filter_map(recorded).collect();
        ways.order_by(|a, b| a.1.mm().total_cmp(&b.1.mm()));
        ways.dedup_by(|a, b| (a.1.mm() - b.1.mm()).abs() < 1e-9);
        ways.truncate(3);
        ways
    }

    /// Play of one round: the shortest way round the face from push to pull, either way.
    ///
    /// With the turns counted it is the whole way, `(pull − push) + turns · divisions`.
    ///
    /// # Errors
    /// [`RoundError::AskTurns`] beyond a quarter turn, or on a dial with a short turn, if the turns
    /// are not told;
    /// [`RoundError::OffTheDial`] for a reading of more than one turn.
    pub fn play(&self, round: Round) -> Result<Length, RoundError> {
        let face = f64::from(self.divisions_per_turn);
        for reading in [round.push, round.pull] {
            if reading.0.abs() > face {
                return Err(RoundError::OffTheDial { reading });
            }
        }
        let way = round.pull.0 - round.push.0;
        if let Some(turns) = round.turns {
            return Ok(self.worth(Divisions((way + f64::from(turns) * face).abs())));
        }
        let once = way.rem_euclid(face);
        let shortest = Divisions(once.min(face - once));
        if shortest.0 > face * QUARTER_TURN || self.has_short_turn() {
            return Err(RoundError::AskTurns { shortest });
        }
        Ok(self.worth(shortest))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{DecimalMark, Format};

    fn at(divisions: f64) -> Divisions {
        Divisions::new(divisions).unwrap()
    }

    #[track_caller]
    fn plays(push: f64, pull: f64, divisions: f64) {
        let dial = Dial::HUNDREDTH_MM;
        let play = dial.play(Round::of_two(at(push), at(pull))).unwrap();
        assert!(
            (play.mm() - divisions * 0.01).abs() < 1e-12,
            "{push} to {pull}"
        );
    }

    #[test]
    fn a_dial_is_reported_in_the_unit_of_its_divisions() {
        let reader = Format {
            system: System::Us,
            decimal: DecimalMark::Dot,
        };
        let recorded = |dial: Dial| {
            let format = reader.first_in(dial.system());
            format.length(dial.worth(at(5.0)), 3).line()
        };
        assert_eq!(recorded(Dial::HUNDREDTH_MM), "0.050\u{a0}mm");
        assert_eq!(recorded(Dial::THOU), "0.0050\u{a0}in");
        assert_eq!(recorded(Dial::HALF_THOU), "0.0025\u{a0}in");
    }

    #[test]
    fn a_needle_past_zero_stands_below_it() {
        let near = |reading, to| {
            Dial::THOU
                .nearest(Divisions(reading), Divisions(to))
                .count()
        };
        assert_eq!(near(98.0, 0.0), -2.0);
        assert_eq!(near(-2.0, 0.0), -2.0);
        assert_eq!(near(2.5, 99.0), 102.5);
        assert_eq!(near(30.0, 0.0), 30.0);
    }

    #[test]
    fn the_way_round_past_zero_is_the_short_one() {
        plays(98.5, 2.0, 3.5);
        plays(2.0, 98.5, 3.5);
        plays(-1.5, 2.0, 3.5);
        plays(0.0, 3.0, 3.0);
        plays(0.0, -3.0, 3.0);
        plays(0.0, 100.0, 0.0);
        plays(0.0, 25.0, 25.0);
    }

    #[test]
    fn a_needle_arrives_from_either_side_and_stays() {
        for (from, to) in [(0.0, 14.0), (9.0, 2.0)] {
            let arrived = (0..8).fold(at(from), |needle, _| needle.towards(at(to)));
            assert_eq!(arrived, at(to));
            assert_eq!(arrived.towards(at(to)), at(to));
            let once = at(from).towards(at(to)).count();
            assert_eq!(once, f64::midpoint(from, to));
        }
    }

    #[test]
    fn more_than_a_quarter_turn_asks_for_the_turns() {
        let dial = Dial::HUNDREDTH_MM;
        let round = Round::of_two(at(10.0), at(36.0));
        assert_eq!(
            dial.play(round),
            Err(RoundError::AskTurns { shortest: at(26.0) })
        );
        let recorded = |turns| {
            dial.play(Round {
                turns: Some(turns),
                ..round
            })
        };
        assert_eq!(recorded(0).unwrap(), dial.worth(at(26.0)));
        assert_eq!(recorded(1).unwrap(), dial.worth(at(126.0)));
        assert_eq!(recorded(-1).unwrap(), dial.worth(at(74.0)));
        let ways = dial.ways(round);
        let divisions = ways
            .iter()
            .map(|(turns, play)| (*turns, (play.mm() * 100.0).round()));
        assert_eq!(
            divisions.collect::<Vec<_>>(),
            [(0, 26.0), (-1, 74.0), (1, 126.0)]
        );
        assert_eq!(dial.ways(Round::zeroed(at(0.0))).len(), 3);
    }

    // A lever dial of 0.002 mm goes round at 0.2 mm: 0.162 mm of play would pass for 0.038 mm.
    #[test]
    fn a_dial_with_a_short_turn_always_asks_for_the_turns() {
        let lever = Dial::new(Length::millimetres(0.002), 100, DialKind::Lever).unwrap();
        let round = Round::of_two(at(0.0), at(81.0));
        let shortest = at(19.0);
        assert_eq!(lever.play(round), Err(RoundError::AskTurns { shortest }));
        let recorded = Round {
            turns: Some(0),
            ..round
        };
        assert!((lever.play(recorded).unwrap().mm() - 0.162).abs() < 1e-12);
        for dial in [Dial::HUNDREDTH_MM, Dial::THOU, Dial::HALF_THOU] {
            assert!(dial.play(Round::zeroed(at(19.0))).is_ok());
        }
    }

    #[test]
    fn a_reading_off_the_face_and_a_face_that_cannot_be_are_refused() {
        let dial = Dial::THOU;
        let reading = at(101.0);
        assert_eq!(
            dial.play(Round::zeroed(reading)),
            Err(RoundError::OffTheDial { reading })
        );
        let graduation = Length::ZERO;
        assert_eq!(
            Dial::new(graduation, 100, DialKind::Lever),
            Err(DialError::Graduation { graduation })
        );
        assert_eq!(
            Dial::new(Length::thou(1.0), 3, DialKind::Lever),
            Err(DialError::Divisions {
                divisions_per_turn: 3
            })
        );
    }
}
