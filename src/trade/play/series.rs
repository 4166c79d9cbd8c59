//! A set of rounds on one rig: its mean, and whether the rollers and the rig have settled.

use super::dial::{Dial, Round, RoundError};
use super::geometry::{GeometryError, true_travel};
use super::uncertainty::count;
use super::way::{Rig, Way};
use crate::sorted::Sorted;
use crate::units::{Angle, Length};
use crate::words;

words! {
    /// What was not as it should be while the set was taken. The first five forbid a comparison.
    pub enum ReadingFlag {
        /// The axle nut was slack: the rings are not clamped and the reading is no play.
        NutSlack = "nut_slack",
        /// The wheel was fitted though the way has it off.
        WheelFitted = "wheel_fitted",
        /// The base stood on something else than the knuckle.
        BaseNotOnKnuckle = "base_not_on_knuckle",
        /// Nobody pushed the knuckle to see whether the needle moves.
        FlexNotTested = "flex_not_tested",
        /// How the dial was set up was not recorded, so that no limit is known to fit.
        MethodNotRecorded = "method_not_recorded",
        /// The nut had been loosened before, and was brought back to torque.
        NutHadBeenLoosened = "nut_had_been_loosened",
        /// The hub was hot.
        HotHub = "hot_hub",
        /// The gauge is past its due date.
        GaugeOverdue = "gauge_overdue",
    }
}

impl ReadingFlag {
    /// Whether a set with this mark may not be compared with any limit.
    pub const fn forbids_comparison(self) -> bool {
        matches!(
            self,
            Self::NutSlack
                | Self::WheelFitted
                | Self::BaseNotOnKnuckle
                | Self::FlexNotTested
                | Self::MethodNotRecorded
        )
    }
}

words! {
    /// What the rounds say of rollers and rig.
    pub enum Trend {
        /// Nothing to see.
        Steady = "steady",
        /// Each round no smaller than the last: rollers not seated, or a base that creeps.
        Rising = "rising",
        /// Each round no larger than the last: rollers just seating; oscillate more.
        Falling = "falling",
        /// Up and down: tip, base or force differs from round to round.
        Scattered = "scattered",
    }
}

/// Whether the set stands, or the rig is to be set again.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Settling {
    /// Largest less smallest play.
    pub spread: Length,
    /// Last less first play.
    pub drift: Length,
    /// What the rounds do.
    pub trend: Trend,
    /// The spread is over one division.
    pub over_a_division: bool,
    /// The spread is over a fifth of the limit.
    pub over_a_fifth_of_limit: bool,
}

impl Settling {
    /// Whether the rig should be set again before the value is used.
    pub const fn asks_to_rig_again(&self) -> bool {
        self.over_a_division || self.over_a_fifth_of_limit
    }
}

/// A set of rounds with one dial, in one way, on one rig.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadingSet {
    dial: Dial,
    way: Option<Way>,
    plays: Vec<Length>,
    marks: Vec<ReadingFlag>,
    off_square: Option<Angle>,
}

/// Why rounds make no set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SeriesError {
    /// There is no round.
    NoRound,
    /// The rounds were read on more than one dial.
    MixedDials,
    /// One round gives no play.
    Round {
        /// Which one, from 0.
        index: usize,
        /// Why.
        fault: RoundError,
    },
}

impl ReadingSet {
    /// Takes the play of every round; `way` is how the dial was set up, as recorded there.
    ///
    /// A set without a recorded way is marked here, so that no caller can forget it.
    ///
    /// # Errors
    /// [`SeriesError`] if there is no round or one of them gives no play.
    pub fn read(
        dial: Dial,
        way: impl Into<Option<Way>>,
        rounds: &[Round],
        mut marks: Vec<ReadingFlag>,
    ) -> Result<Self, SeriesError> {
        if rounds.is_empty() {
            return Err(SeriesError::NoRound);
        }
        let plays = rounds
            .iter()
            .enumerate()
            .map(|(index, round)| {
                dial.play(*round)
                    .map_err(|fault| SeriesError::Round { index, fault })
            })
            .collect::<Result<_, _>>()?;
        let way = way.into();
        if way.is_none() {
            marks.push(ReadingFlag::MethodNotRecorded);
        }
        Ok(Self {
            dial,
            way,
            plays,
            marks,
            off_square: None,
        })
    }

    /// The same set, its tip off square by a known angle: what the dial showed is too much by
    /// 1 / cos.
    ///
    /// # Errors
    /// [`GeometryError::TooSteep`] beyond 60° either way.
    pub fn with_tip_at(mut self, angle: Angle) -> Result<Self, GeometryError> {
        for play in &mut self.plays {
            *play = true_travel(*play, angle)?;
        }
        self.off_square = Some(angle);
        Ok(self)
    }

    /// How far off square the tip stood, if that was told.
    pub const fn off_square(&self) -> Option<Angle> {
        self.off_square
    }

    /// The dial it was read on.
    pub const fn dial(&self) -> &Dial {
        &self.dial
    }

    /// The way it was taken; `None` where that was not recorded.
    pub const fn way(&self) -> Option<&Way> {
        self.way.as_ref()
    }

    /// The play of each round, in order.
    pub fn plays(&self) -> &[Length] {
        &self.plays
    }

    /// What was not as it should be.
    pub fn marks(&self) -> &[ReadingFlag] {
        &self.marks
    }

    /// The first mark that forbids a comparison.
    pub fn refusal(&self) -> Option<ReadingFlag> {
        let rig = self.way.and_then(|way| way.rig);
        let wheel_where_it_belongs = rig == Some(Rig::WheelOn);
        self.marks.iter().copied().find(|mark| match mark {
            ReadingFlag::WheelFitted => !wheel_where_it_belongs,
            other => other.forbids_comparison(),
        })
    }

    /// The value of record.
    pub fn mean(&self) -> Length {
        let sum = self.plays.iter().fold(Length::ZERO, |a, b| a.plus(*b));
        sum.times(1.0 / count(self.plays.len()))
    }

    /// The middle play, a check of the rig: far from the mean, one round was another story.
    pub fn median(&self) -> Length {
        let mut sorted = self.plays.clone();
        sorted.order_by(|a, b| a.mm().total_cmp(&b.mm()));
        let middle = |index: usize| sorted.get(index).copied().unwrap_or(Length::ZERO);
        let half = sorted.len() / 2;
        if sorted.len() % 2 == 1 {
            middle(half)
        } else {
            middle(half.saturating_sub(1)).plus(middle(half)).times(0.5)
        }
    }

    /// The median, where it lies more than half a division from the mean: then one round tells
    /// another story than the rest (the half is ours, common practice, no source).
    pub fn median_apart(&self) -> Option<Length> {
        let median = self.median();
        let apart = median.minus(self.mean()).abs();
        exceeds(apart, self.dial.graduation().times(0.5)).then_some(median)
    }

    /// Whether every round reads as nothing at the dial's resolution.
    pub fn nothing_moved(&self) -> bool {
        let half = self.dial.graduation().times(0.5);
        self.plays.iter().all(|play| *play < half)
    }

    /// Spread and drift over the rounds, against one division and against the limit if known.
    pub fn settling(&self, limit: Option<Length>) -> Settling {
        let largest = self.plays.iter().fold(Length::ZERO, |a, b| a.max(*b));
        let smallest = self.plays.iter().fold(largest, |a, b| a.min(*b));
        let spread = largest.minus(smallest);
        let over_a_division = exceeds(spread, self.dial.graduation());
        let over_a_fifth_of_limit = limit
            .filter(|limit| *limit > Length::ZERO)
            .is_some_and(|limit| exceeds(spread, limit.times(0.2)));
        Settling {
            spread,
            drift: self.drift(),
            trend: if over_a_division || over_a_fifth_of_limit {
                self.trend()
            } else {
                Trend::Steady
            },
            over_a_division,
            over_a_fifth_of_limit,
        }
    }

    fn drift(&self) -> Length {
        match (self.plays.first(), self.plays.last()) {
            (Some(first), Some(last)) => last.minus(*first),
            _ => Length::ZERO,
        }
    }

    fn trend(&self) -> Trend {
        let steps = || self.plays.iter().zip(self.plays.iter().skip(1));
        if self.plays.len() < 3 {
            Trend::Scattered
        } else if steps().all(|(a, b)| a <= b) {
            Trend::Rising
        } else if steps().all(|(a, b)| a >= b) {
            Trend::Falling
        } else {
            Trend::Scattered
        }
    }
}

/// More than `bound` by more than arithmetic on decimals leaves behind.
fn exceeds(value: Length, bound: Length) -> bool {
    value.mm() > bound.mm() + 1e-9
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trade::play::dial::Divisions;
    use crate::units::AngleUnit;

    fn set(pulls: &[f64]) -> ReadingSet {
        let rounds: Vec<_> = pulls
            .iter()
            .map(|d| Round::zeroed(Divisions::new(*d).unwrap()))
            .collect();
        ReadingSet::read(Dial::HUNDREDTH_MM, Way::DEFAULT, &rounds, vec![]).unwrap()
    }

    #[track_caller]
    fn settles(pulls: &[f64], limit_mm: Option<f64>, asks: bool, trend: Trend) {
        let settling = set(pulls).settling(limit_mm.map(Length::millimetres));
        assert_eq!(
            (settling.asks_to_rig_again(), settling.trend),
            (asks, trend),
            "{pulls:?}"
        );
    }

    #[test]
    fn mean_and_median_of_a_set() {
        let three = set(&[3.0, 4.0, 8.0]);
        assert!((three.mean().mm() - 0.05).abs() < 1e-12);
        assert!((three.median().mm() - 0.04).abs() < 1e-12);
        assert!((set(&[3.0, 4.0]).median().mm() - 0.035).abs() < 1e-12);
    }

    #[test]
    fn one_round_apart_shows_in_the_median() {
        // Mean 5 divisions, median 4: a whole division apart.
        let median = set(&[3.0, 4.0, 8.0]).median_apart().unwrap();
        assert!((median.mm() - 0.04).abs() < 1e-12);
        // 5.33 and 5: a third of a division.
        assert_eq!(set(&[5.0, 6.0, 5.0]).median_apart(), None);
        assert_eq!(set(&[5.0]).median_apart(), None);
    }

    // The cosine of 60° is a half.
    #[test]
    fn a_tip_off_square_shows_too_much() {
        let degrees = |d| Angle::new(d, AngleUnit::Degree).unwrap();
        let square = set(&[6.0, 8.0]);
        assert_eq!(square.off_square(), None);
        let slanted = square.clone().with_tip_at(degrees(60.0)).unwrap();
        assert!((slanted.mean().mm() - 0.035).abs() < 1e-12);
        assert_eq!(slanted.off_square(), Some(degrees(60.0)));
        assert!(square.with_tip_at(degrees(61.0)).is_err());
    }

    #[test]
    fn a_spread_over_a_division_or_a_fifth_of_the_limit_asks() {
        settles(&[5.0, 5.0, 5.0], Some(0.05), false, Trend::Steady);
        settles(&[5.0, 6.0, 5.0], Some(0.05), false, Trend::Steady);
        settles(&[5.0, 6.0, 5.0], Some(0.04), true, Trend::Scattered);
        settles(&[5.0, 6.0, 7.5], None, true, Trend::Rising);
        settles(&[8.0, 6.0, 5.0], None, true, Trend::Falling);
        settles(&[5.0, 8.0, 5.0], None, true, Trend::Scattered);
        settles(&[5.0, 8.0], None, true, Trend::Scattered);
        settles(&[5.0], None, false, Trend::Steady);
    }

    #[test]
    fn a_zero_limit_gives_no_fifth() {
        settles(&[0.0, 1.0, 0.0], Some(0.0), false, Trend::Steady);
    }

    #[test]
    fn marks_refuse_only_where_they_must() {
        let marked = |mark, rig| {
            let way = Way {
                rig: Some(rig),
                ..Way::DEFAULT
            };
            let round = [Round::zeroed(Divisions::ZERO)];
            ReadingSet::read(Dial::THOU, way, &round, vec![mark])
                .unwrap()
                .refusal()
        };
        assert_eq!(
            marked(ReadingFlag::NutSlack, Rig::CaliperUp),
            Some(ReadingFlag::NutSlack)
        );
        assert_eq!(
            marked(ReadingFlag::WheelFitted, Rig::CaliperUp),
            Some(ReadingFlag::WheelFitted)
        );
        assert_eq!(marked(ReadingFlag::WheelFitted, Rig::WheelOn), None);
        assert_eq!(marked(ReadingFlag::HotHub, Rig::CaliperUp), None);
        assert_eq!(
            marked(ReadingFlag::NutHadBeenLoosened, Rig::CaliperUp),
            None
        );
    }

    #[test]
    fn no_round_and_a_bad_round_are_named() {
        let read = |rounds: &[Round]| ReadingSet::read(Dial::THOU, Way::DEFAULT, rounds, vec![]);
        assert_eq!(read(&[]), Err(SeriesError::NoRound));
        let far = Round::zeroed(Divisions::new(40.0).unwrap());
        let near = Round::zeroed(Divisions::new(4.0).unwrap());
        let shortest = Divisions::new(40.0).unwrap();
        assert_eq!(
            read(&[near, far]),
            Err(SeriesError::Round {
                index: 1,
                fault: RoundError::AskTurns { shortest }
            })
        );
    }
}
