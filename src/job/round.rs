//! One round on the dial: stepping the needle without typing, and what a round writes.
//!
//! A place of the needle is the decimal text that will be recorded, in divisions of the face.

use crate::job::entry::{Reading, Side, What};
use crate::job::judge::{dial, way};
use crate::job::sheet::Sheet;
use crate::trade::play::{Dial, Divisions, Round, RoundError};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::SetName;
use crate::units::{Decimal, Length};

/// The place `halves` half divisions further on, round the face as the needle goes.
pub fn stepped(text: &str, halves: i64, dial: &Dial) -> String {
    let (places, hundredths) = hundredths(text);
    let turn = 100 * i64::from(dial.divisions_per_turn());
    written((hundredths + 50 * halves).rem_euclid(turn), places)
}

/// The same place with its half division added, or taken away where it has one.
pub fn halved(text: &str) -> String {
    let (places, hundredths) = hundredths(text);
    let half = if hundredths.rem_euclid(100) >= 50 {
        -50
    } else {
        50
    };
    written(hundredths + half, places)
}

/// Hundredths of a division, and how many places behind the mark were typed, two at most.
fn hundredths(text: &str) -> (usize, i64) {
    let Ok(decimal) = Decimal::parse(text) else {
        return (0, 0);
    };
    // A face has a thousand divisions at most; a cast of anything larger only saturates.
    let hundredths = (decimal.value() * 100.0).round() as i64;
    (decimal.decimals().min(2), hundredths)
}

fn written(hundredths: i64, places: usize) -> String {
    let (whole, rest) = (hundredths / 100, hundredths % 100);
    match (rest, places) {
        (0, _) => whole.to_string(),
        (rest, 0 | 1) if rest % 10 == 0 => format!("{whole}.{}", rest / 10),
        (rest, _) => format!("{whole}.{rest:02}"),
    }
}

/// What is on the glass of one round: the readings as typed, and the turns where they were asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Typing<'a> {
    /// The push reading; `None` while the dial was at zero.
    pub push: Option<&'a str>,
    /// The pull reading.
    pub pull: &'a str,
    /// Whole turns from push to pull.
    pub turns: Option<i32>,
}

impl Typing<'_> {
    /// The round; `None` while a number is not finished.
    fn round(&self) -> Option<Round> {
        let place = |text| Decimal::parse(text).ok().map(|d| Divisions::typed(&d));
        Some(Round {
            turns: self.turns,
            ..Round::of_two(place(self.push.unwrap_or("0"))?, place(self.pull)?)
        })
    }

    /// The play of a round as it would be kept now; `None` while a number is not finished.
    ///
    /// # Errors
    /// [`RoundError`] if the readings do not say which way the needle went.
    pub fn play(&self, dial: &Dial) -> Option<Result<Length, RoundError>> {
        Some(dial.play(self.round()?))
    }

    /// The ways that the needle may have gone, where the turns have to be asked.
    pub fn ways(&self, dial: &Dial) -> Vec<(i32, Length)> {
        let round = self.round().filter(|round| {
            let untold = Round {
                turns: None,
                ..*round
            };
            matches!(dial.play(untold), Err(RoundError::AskTurns { .. }))
        });
        round.map_or_else(Vec::new, |round| dial.ways(round))
    }
}

/// Whether the shorter way between the readings leads past the face's zero.
pub fn passes_zero(dial: &Dial, push: &str, pull: &str) -> bool {
    let half = 50 * i64::from(dial.divisions_per_turn());
    let (push, pull) = (hundredths(push).1, hundredths(pull).1);
    (pull - push).abs() > half
}

/// The pull reading of the round before, with which the next one can begin.
pub fn last_pull(sheet: &Sheet, corner: Corner, set: SetName, round: u8) -> Option<String> {
    let before = round.checked_sub(1)?;
    let reading = sheet.reading(corner, set, before, Side::Pull)?;
    Some(reading.divisions.as_typed().to_owned())
}

/// The entries of one round: the pull, and the push where the dial was not at zero.
///
/// A push that was kept earlier would still count, so a round that is read anew on a zeroed dial
/// says that its push is zero. `None` while a number is not finished.
pub fn kept(
    sheet: &Sheet,
    (corner, set, round): (Corner, SetName, u8),
    typing: Typing<'_>,
) -> Option<Vec<What>> {
    let reading = |side, text: &str, turns| {
        Some(What::Reading(Reading {
            corner,
            set,
            round,
            side,
            divisions: Decimal::parse(text).ok()?,
            turns,
            dial: dial(sheet),
            way: way(sheet),
        }))
    };
    let pushed_before = sheet.reading(corner, set, round, Side::Push).is_some();
    let mut whats = Vec::new();
    if let Some(text) = typing.push.or(pushed_before.then_some("0")) {
        whats.push(reading(Side::Push, text, None)?);
    }
    whats.push(reading(Side::Pull, typing.pull, typing.turns)?);
    Some(whats)
}

#[cfg(test)]
mod tests {
    #![allow(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::panic,
        clippy::indexing_slicing
    )]
    use super::*;

    use crate::job::told::sheet;
    use crate::trade::wheel_end::When;

    const SET: SetName = SetName {
        when: When::Before,
        nth: 1,
    };

    const fn typing<'a>(push: Option<&'a str>, pull: &'a str) -> Typing<'a> {
        Typing {
            push,
            pull,
            turns: None,
        }
    }

    #[test]
    fn the_needle_steps_round_the_face() {
        let step = |text, halves| stepped(text, halves, &Dial::THOU);
        assert_eq!(step("0", 2), "1");
        assert_eq!(step("6.3", 10), "11.3");
        assert_eq!(step("0", -2), "99");
        assert_eq!(step("99", 2), "0");
        assert_eq!(step("", 10), "5");
        assert_eq!(step("6.25", -2), "5.25");
        assert_eq!(step("6,5", 2), "7.5");
    }

    #[test]
    fn a_half_division_is_put_on_and_taken_off() {
        assert_eq!(halved("6"), "6.5");
        assert_eq!(halved("6.5"), "6");
        assert_eq!(halved("6.3"), "6.8");
        assert_eq!(halved(""), "0.5");
    }

    #[test]
    fn past_zero_the_shorter_way_is_taken() {
        assert!(passes_zero(&Dial::THOU, "2", "97"));
        assert!(!passes_zero(&Dial::THOU, "2", "30"));
        let near = typing(Some("2"), "97");
        let play = near.play(&Dial::THOU).unwrap().unwrap();
        assert!((play.mm() - 5.0 * 0.0254).abs() < 1e-9);
        assert_eq!(near.ways(&Dial::THOU), []);
        assert!(typing(Some(""), "3").play(&Dial::THOU).is_none());
    }

    #[test]
    fn beyond_a_quarter_turn_the_turns_are_asked_and_kept() {
        let far = typing(None, "30");
        let asked = far.play(&Dial::HUNDREDTH_MM).unwrap();
        assert!(matches!(asked, Err(RoundError::AskTurns { .. })));
        let (turns, play) = far.ways(&Dial::HUNDREDTH_MM)[1];
        assert!((play.mm() - 0.70).abs() < 1e-9);
        let told = Typing {
            turns: Some(turns),
            ..far
        };
        assert_eq!(told.play(&Dial::HUNDREDTH_MM), Some(Ok(play)));
        assert_eq!(told.ways(&Dial::HUNDREDTH_MM).len(), 3);
        let place = (Corner::FrontLeft, SET, 1);
        let kept = sheet(kept(&sheet(Vec::new()), place, told).unwrap());
        let read = crate::job::judge::round_play(&kept, Corner::FrontLeft, SET, 1);
        assert_eq!(read, Some(Ok(play)));
    }

    #[test]
    fn a_zeroed_round_read_anew_forgets_the_push_of_before() {
        let place = (Corner::FrontLeft, SET, 1);
        let two = kept(&sheet(Vec::new()), place, typing(Some("30"), "36.3")).unwrap();
        assert_eq!(two.len(), 2);
        let after = sheet(two);
        assert_eq!(
            last_pull(&after, Corner::FrontLeft, SET, 2).unwrap(),
            "36.3"
        );
        let anew = kept(&after, place, typing(None, "6")).unwrap();
        match &anew[0] {
            What::Reading(push) => {
                assert_eq!((push.side, push.divisions.as_typed()), (Side::Push, "0"));
            }
            other => panic!("{other:?}"),
        }
        let first = kept(&sheet(Vec::new()), place, typing(None, "6")).unwrap();
        assert_eq!(first.len(), 1);
        assert!(kept(&after, place, typing(None, "")).is_none());
    }
}
