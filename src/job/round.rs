//! One round on the dial: stepping the needle without typing, and what a round writes.
//!
//! A place of the needle is the decimal text that will be recorded, in divisions of the face.

use crate::job::entry::{Event, Reading, Side};
use crate::job::key::Key;
use crate::job::sheet::JobState;
use crate::trade::play::{Dial, Divisions, Round, RoundError};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{ROUNDS, SetName};
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

/// What is on the screen of one round: the readings as typed, and the turns where they were asked.
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

/// One round of one set at one corner.
pub type Place = (Corner, SetName, u8);

/// The push of a round that was begun: its pull was not read since.
pub fn begun(sheet: &JobState, (corner, set, round): Place) -> Option<&Reading> {
    let key = |side| Key::Reading(corner, set, round, side);
    let place = |side| sheet.place(&key(side));
    let push = sheet.reading(corner, set, round, Side::Push)?;
    // Another phone's push beside a whole reading does not begin it again.
    let several = sheet.stated(&key(Side::Push)).nth(1).is_some();
    if several && sheet.reading(corner, set, round, Side::Pull).is_some() {
        return None;
    }
    (place(Side::Pull) < place(Side::Push)).then_some(push)
}

/// The whole reading of the round before: push, pull and turns.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Last {
    /// The push as typed; `None` where the dial was at zero.
    pub push: Option<String>,
    /// The pull as typed.
    pub pull: String,
    /// Whole turns from push to pull, where they were asked for.
    pub turns: Option<i32>,
}

impl Last {
    /// The reading of the round before, if both its sides were read.
    pub fn before(sheet: &JobState, (corner, set, round): Place) -> Option<Self> {
        let place = (corner, set, round.checked_sub(1)?);
        if begun(sheet, place).is_some() {
            return None;
        }
        let side = |side| sheet.reading(corner, set, place.2, side);
        let pull = side(Side::Pull)?;
        let zero = |push: &&Reading| Divisions::typed(&push.divisions) == Divisions::ZERO;
        let push = side(Side::Push).filter(|push| !zero(push));
        Some(Self {
            push: push.map(|push| push.divisions.as_typed().to_owned()),
            pull: pull.divisions.as_typed().to_owned(),
            turns: pull.turns,
        })
    }

    /// The whole reading, to be repeated.
    pub fn typing(&self) -> Typing<'_> {
        Typing {
            push: self.push.as_deref(),
            pull: &self.pull,
            turns: self.turns,
        }
    }

    /// Whether it can be said again of the round at `place`: a push that was read in this round
    /// is the same one, and the dial is the one of the rounds before.
    pub fn can_repeat(&self, sheet: &JobState, place: Place) -> bool {
        let number = |text: &str| Decimal::parse(text).ok().map(|d| Divisions::typed(&d));
        let before = number(self.push.as_deref().unwrap_or("0"));
        let same = begun(sheet, place)
            .is_none_or(|push| before == Some(Divisions::typed(&push.divisions)));
        same && other_dial(sheet, place).is_none()
    }
}

/// The dial of the other rounds of a set, where it is not the one on board now: a set is read on
/// one dial.
pub fn other_dial(sheet: &JobState, (corner, set, round): Place) -> Option<Dial> {
    let here = sheet.dial();
    let sides = |nth| [Side::Push, Side::Pull].map(|side| (nth, side));
    let mut read = (1..=ROUNDS)
        .filter(|nth| *nth != round)
        .flat_map(sides)
        .chain(begun(sheet, (corner, set, round)).map(|push| (round, push.side)))
        .filter_map(|(nth, side)| sheet.reading(corner, set, nth, side));
    read.find_map(|reading| (reading.dial != here).then_some(reading.dial))
}

/// Takes back every round of a set, so that it is read again on the dial at hand.
pub fn read_again(sheet: &JobState, corner: Corner, set: SetName) -> Event {
    let sides = |nth| [Side::Push, Side::Pull].map(|side| Key::Reading(corner, set, nth, side));
    let keys: Vec<Key> = (1..=ROUNDS).flat_map(sides).collect();
    let entries = keys.iter().flat_map(|key| sheet.stated(key));
    Event::Strike(entries.map(|entry| entry.id.clone()).collect())
}

fn reading(
    sheet: &JobState,
    (corner, set, round): Place,
    (side, text): (Side, &str),
    turns: Option<i32>,
) -> Option<Event> {
    Some(Event::Reading(Reading {
        corner,
        set,
        round,
        side,
        divisions: Decimal::parse(text).ok()?,
        turns,
        dial: sheet.dial(),
    }))
}

/// The entry of a push on a dial that was not at zero, on its own: its pull comes after.
/// `None` while the number is not finished.
pub fn pushed(sheet: &JobState, place: Place, text: &str) -> Option<Event> {
    reading(sheet, place, (Side::Push, text), None)
}

/// The entries that a round still lacks: the pull, and the push where it was not recorded yet.
///
/// A push that was recorded earlier would still count, so a round that is read again on a zeroed
/// dial says that its push is zero. `None` while a number is not finished.
pub fn saved(sheet: &JobState, place: Place, typing: Typing<'_>) -> Option<Vec<Event>> {
    let (corner, set, round) = place;
    let push = match (typing.push, begun(sheet, place)) {
        (Some(text), Some(push)) if push.divisions.as_typed() == text => None,
        (Some(text), _) => Some(text),
        (None, _) => {
            let before = sheet.reading(corner, set, round, Side::Push);
            before.map(|_| "0")
        }
    };
    let mut whats = Vec::new();
    if let Some(text) = push {
        whats.push(pushed(sheet, place, text)?);
    }
    let pull = (Side::Pull, typing.pull);
    whats.push(reading(sheet, place, pull, typing.turns)?);
    Some(whats)
}

#[cfg(test)]
mod tests {
    use super::*;

    use crate::job::recorded::sheet;
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
    fn beyond_a_quarter_turn_the_turns_are_asked_and_saved() {
        let far = typing(None, "30");
        let asked = far.play(&Dial::HUNDREDTH_MM).unwrap();
        assert!(matches!(asked, Err(RoundError::AskTurns { .. })));
        let (turns, play) = far.ways(&Dial::HUNDREDTH_MM)[1];
        assert!((play.mm() - 0.70).abs() < 1e-9);
        let recorded = Typing {
            turns: Some(turns),
            ..far
        };
        assert_eq!(recorded.play(&Dial::HUNDREDTH_MM), Some(Ok(play)));
        assert_eq!(recorded.ways(&Dial::HUNDREDTH_MM).len(), 3);
        let place = (Corner::FrontLeft, SET, 1);
        let saved = sheet(saved(&sheet(Vec::new()), place, recorded).unwrap());
        let read = crate::job::judge::round_play(&saved, Corner::FrontLeft, SET, 1);
        assert_eq!(read, Some(Ok(play)));
    }

    const PLACE: Place = (Corner::FrontLeft, SET, 1);
    const NEXT: Place = (Corner::FrontLeft, SET, 2);

    fn read(sheet: &JobState, place: Place) -> Option<Length> {
        let (corner, set, round) = place;
        crate::job::judge::round_play(sheet, corner, set, round)?.ok()
    }

    #[test]
    fn a_zeroed_round_read_again_forgets_the_push_of_before() {
        let two = saved(&sheet(Vec::new()), PLACE, typing(Some("30"), "36.3")).unwrap();
        assert_eq!(two.len(), 2);
        let after = sheet(two);
        let anew = saved(&after, PLACE, typing(None, "6")).unwrap();
        match &anew[0] {
            Event::Reading(push) => {
                assert_eq!((push.side, push.divisions.as_typed()), (Side::Push, "0"));
            }
            other => panic!("{other:?}"),
        }
        let first = saved(&sheet(Vec::new()), PLACE, typing(None, "6")).unwrap();
        assert_eq!(first.len(), 1);
        assert!(saved(&after, PLACE, typing(None, "")).is_none());
    }

    #[test]
    fn a_push_on_its_own_is_a_round_half_read() {
        let mut whats = vec![pushed(&sheet(Vec::new()), PLACE, "98.5").unwrap()];
        let half = sheet(&whats);
        assert_eq!(begun(&half, PLACE).unwrap().divisions.as_typed(), "98.5");
        assert_eq!(read(&half, PLACE), None);
        // The push is there already: only the pull is written.
        let rest = saved(&half, PLACE, typing(Some("98.5"), "2.0")).unwrap();
        assert_eq!(rest.len(), 1);
        whats.extend(rest);
        let whole = sheet(&whats);
        assert_eq!(begun(&whole, PLACE), None);
        assert!((read(&whole, PLACE).unwrap().mm() - 0.035).abs() < 1e-12);
        // Pushed once more, the pull of before says nothing of this round.
        whats.push(pushed(&whole, PLACE, "10").unwrap());
        assert_eq!(read(&sheet(&whats), PLACE), None);
    }

    // 98.5 and then 2.0 on a face of 100 is 3.5 divisions: 0.035 mm.
    #[test]
    fn the_same_again_is_the_whole_reading() {
        let whats = saved(&sheet(Vec::new()), PLACE, typing(Some("98.5"), "2.0")).unwrap();
        let first = sheet(&whats);
        let last = Last::before(&first, NEXT).unwrap();
        assert!(last.can_repeat(&first, NEXT));
        let again = saved(&first, NEXT, last.typing()).unwrap();
        let both = sheet([whats, again].concat());
        for place in [PLACE, NEXT] {
            assert!((read(&both, place).unwrap().mm() - 0.035).abs() < 1e-12);
        }
        assert_eq!(Last::before(&first, PLACE), None);
    }

    #[test]
    fn another_push_or_another_dial_is_not_the_same_again() {
        let mut whats = saved(&sheet(Vec::new()), PLACE, typing(Some("98.5"), "2.0")).unwrap();
        for (push, same) in [("98,50", true), ("97", false)] {
            let pushed = pushed(&sheet(&whats), NEXT, push).unwrap();
            let begun = sheet([&whats[..], &[pushed]].concat());
            let last = Last::before(&begun, NEXT).unwrap();
            assert_eq!(last.can_repeat(&begun, NEXT), same, "{push}");
        }
        whats.push(Event::Carried(crate::job::entry::Carried {
            wrenches: Vec::new(),
            dial: Dial::THOU,
            more: crate::job::kit::MoreKit::default(),
            dial_due: None,
        }));
        let other = sheet(&whats);
        assert_eq!(other_dial(&other, NEXT), Some(Dial::HUNDREDTH_MM));
        // The round itself can be read again on the dial at hand while no other was read.
        assert_eq!(other_dial(&other, PLACE), None);
        assert!(!Last::before(&other, NEXT).unwrap().can_repeat(&other, NEXT));
        whats.push(read_again(&other, Corner::FrontLeft, SET));
        let again = sheet(&whats);
        assert_eq!(other_dial(&again, NEXT), None);
        assert_eq!(Last::before(&again, NEXT), None);
    }
}
