//! From the entries of a corner to what the trade's rules need, and back what they say.
//!
//! Nothing is judged here: the rules stand in `trade::play`. This only gathers.

use crate::job::entry::{Quantity, Reading, Reply, Side};
use crate::job::key::Key;
use crate::job::round::begun;
use crate::job::sheet::JobState;
use crate::job::wheel_end::{corners_of, wheel_end};
use crate::trade::fastening::SpecItem;
use crate::trade::play::budget::Proof;
use crate::trade::play::geometry::true_travel;
use crate::trade::play::rules::UNSEEN_FLEX;
use crate::trade::play::{
    Dial, Divisions, IndicatorError, Limit, ReadingFlag, ReadingSet, RigFacts, Round, RoundError,
    SeriesError, can_prove,
};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{
    Choice, Item, ROUNDS, SetName, Step, StepKey, When, round_number, setup_number,
};
use crate::units::{Length, Temperature, TemperatureUnit};

pub use crate::trade::play::Measured;

/// The limit of this job: the manufacturer's where the spec gives one, else the house limit.
pub fn limit(sheet: &JobState) -> Limit {
    manufacturers_limit(sheet).unwrap_or(*default_limit(sheet))
}

/// The limit of this kind of wheel end where the manufacturer gives none.
fn default_limit(sheet: &JobState) -> &'static Limit {
    &wheel_end(sheet).play
}

/// The limit of the manufacturer's spec, if there is one.
fn manufacturers_limit(sheet: &JobState) -> Option<Limit> {
    let spec = sheet
        .spec(SpecItem::PlayLimit)
        .and_then(|spec| spec.limit());
    spec.and_then(Result::ok)
}

/// What this gauge will be able to prove against this job's limit on a base that does not give.
pub fn proof(sheet: &JobState) -> Proof {
    let dial = sheet.dial();
    let facts = RigFacts {
        indicator: indicator(sheet, &dial),
        flex: flex(&dial, Choice::FlexNone),
        temperature: None,
    };
    can_prove(&dial, &facts, usize::from(ROUNDS), &limit(sheet))
}

/// The play of one round, if both its sides were read.
///
/// # Errors
/// [`RoundError`] if the readings lie too far apart to say which way the needle went.
pub fn round_play(
    sheet: &JobState,
    corner: Corner,
    set: SetName,
    round: u8,
) -> Option<Result<Length, RoundError>> {
    let (dial, readings) = read_round(sheet, corner, set, round)?;
    let tip = sheet.tip_angle(corner, set).map(|typed| typed.angle());
    let square = |play| {
        tip.and_then(|angle| true_travel(play, angle).ok())
            .unwrap_or(play)
    };
    Some(dial?.play(readings).map(square))
}

/// A round of which both sides were read, with the dial that both were read on, if it was one.
fn read_round(
    sheet: &JobState,
    corner: Corner,
    set: SetName,
    round: u8,
) -> Option<(Option<Dial>, Round)> {
    if begun(sheet, (corner, set, round)).is_some() {
        return None;
    }
    let side = |side| sheet.reading(corner, set, round, side);
    let (push, pull) = (side(Side::Push), side(Side::Pull)?);
    let at = |reading: &Reading| Divisions::typed(&reading.divisions);
    let round = Round {
        turns: pull.turns,
        ..Round::of_two(push.map_or(Divisions::ZERO, at), at(pull))
    };
    let dials = push.into_iter().chain([pull]).map(|side| side.dial);
    Some((Dial::shared(dials), round))
}

/// Every side of every cycle of a set.
pub(super) fn readings(corner: Corner, name: SetName) -> impl Iterator<Item = Key> {
    let sides = |round| [Side::Push, Side::Pull].map(|side| (round, side));
    let all = (1..=ROUNDS).flat_map(sides);
    all.map(move |(round, side)| Key::Reading(corner, name, round, side))
}

/// Every fact that a set rests on, but for the dial itself; the limit may stand on the paper of an
/// earlier visit.
pub(super) fn rests_on(corner: Corner, name: SetName) -> Vec<Key> {
    let looks = [Step::WheelOff, Step::NutFound].map(|step| StepKey::at(step, corner));
    let before = looks.into_iter().chain(HEATS);
    let before = before.filter(|_| name.when == When::Before).map(Key::Step);
    let others = [
        Key::DialSetup(corner, name),
        Key::Step(flex_step(corner, name)),
        Key::TipAngle(corner, name),
        Key::Crept(corner, name),
        Key::Spec(SpecItem::PlayLimit),
        Key::FromPaper,
    ];
    readings(corner, name).chain(others).chain(before).collect()
}

/// A set of readings, compared with the limit in force for it. `None` before the first round.
///
/// # Errors
/// [`SeriesError`] if a round gives no play, or the rounds were read on several dials.
pub fn measured(
    sheet: &JobState,
    corner: Corner,
    name: SetName,
) -> Option<Result<Measured, SeriesError>> {
    let rounds: Vec<_> = (1..=ROUNDS)
        .filter_map(|round| read_round(sheet, corner, name, round))
        .collect();
    rounds.first()?;
    let dials = rounds
        .iter()
        .map(|(dial, _)| *dial)
        .collect::<Option<Vec<_>>>();
    let Some(dial) = dials.and_then(Dial::shared) else {
        return Some(Err(SeriesError::MixedDials));
    };
    let readings: Vec<Round> = rounds.iter().map(|(_, round)| *round).collect();
    let way = sheet.dial_setup(corner, name).map(|setup| setup.way);
    let set = ReadingSet::read(dial, way, &readings, marks(sheet, corner, name));
    Some(set.map(|set| {
        let set = with_tip(sheet, corner, name, set);
        let facts = facts(sheet, corner, name, &dial);
        let spec = manufacturers_limit(sheet);
        Measured::of(set, &facts, spec.as_ref(), default_limit(sheet))
    }))
}

/// The set with its tip as it was told; beyond what can be corrected it stays as it was read.
fn with_tip(sheet: &JobState, corner: Corner, name: SetName, set: ReadingSet) -> ReadingSet {
    match sheet.tip_angle(corner, name) {
        Some(typed) => set.clone().with_tip_at(typed.angle()).unwrap_or(set),
        None => set,
    }
}

/// The step at which the dial of a set was set up.
pub const fn setup_step(corner: Corner, name: SetName) -> StepKey {
    StepKey::at(Step::RigTip, corner).nth(setup_number(name))
}

/// The step at which the base of a set was pushed.
pub const fn flex_step(corner: Corner, name: SetName) -> StepKey {
    match (name.when, name.nth) {
        (When::After, _) => StepKey::at(Step::RigPush, corner).nth(2),
        (When::Before, 2) => StepKey::at(Step::RigAgain, corner),
        (When::Before, _) => StepKey::at(Step::RigPush, corner),
    }
}

fn facts(sheet: &JobState, corner: Corner, name: SetName, dial: &Dial) -> RigFacts {
    let picked = pick(sheet, flex_step(corner, name)).unwrap_or(Choice::FlexOne);
    RigFacts {
        indicator: indicator(sheet, dial),
        flex: flex(dial, picked),
        temperature: sheet
            .crept(corner, name)
            .map(|crept| dial.worth(Divisions::typed(crept))),
    }
}

/// The dial's own error: by the certificate of the one on board, else by its class.
pub fn indicator(sheet: &JobState, dial: &Dial) -> IndicatorError {
    let carried = sheet.carried().filter(|carried| carried.dial == *dial);
    let error = carried.and_then(|carried| carried.more.dial_error.as_ref());
    error
        .and_then(|largest| IndicatorError::certified(largest.length()))
        .unwrap_or(IndicatorError::OneDivision)
}

/// How far the needle moved at most when the knuckle was pushed.
fn flex(dial: &Dial, picked: Choice) -> Length {
    dial.graduation().times(match picked {
        Choice::FlexNone => UNSEEN_FLEX,
        Choice::FlexHalf => 0.5,
        _ => 1.0,
    })
}

fn marks(sheet: &JobState, corner: Corner, name: SetName) -> Vec<ReadingFlag> {
    let mut marks = Vec::new();
    match pick(sheet, flex_step(corner, name)) {
        Some(Choice::FlexNone | Choice::FlexHalf | Choice::FlexOne) => {}
        Some(Choice::BaseElsewhere) => marks.push(ReadingFlag::BaseNotOnKnuckle),
        _ => marks.push(ReadingFlag::FlexNotTested),
    }
    if gauge_was_overdue(sheet, corner, name) {
        marks.push(ReadingFlag::GaugeOverdue);
    }
    if name.when == When::Before {
        if matches!(
            sheet.reply(StepKey::at(Step::WheelOff, corner)),
            Some(Reply::NotDone(_))
        ) {
            marks.push(ReadingFlag::WheelFitted);
        }
        if hub_was_hot(sheet, corner) {
            marks.push(ReadingFlag::HotHub);
        }
        match pick(sheet, StepKey::at(Step::NutFound, corner)) {
            Some(Choice::NutSlack) => marks.push(ReadingFlag::NutSlack),
            Some(Choice::NutRetorqued) => marks.push(ReadingFlag::NutHadBeenLoosened),
            _ if nut_loosened_before(sheet, corner, name) => marks.push(ReadingFlag::NutSlack),
            _ => {}
        }
    }
    marks
}

/// Whether the dial was past its day when the last round of a set was read.
fn gauge_was_overdue(sheet: &JobState, corner: Corner, name: SetName) -> bool {
    let due = sheet.carried().and_then(|carried| carried.dial_due);
    let pulled = |round| sheet.holds(&Key::Reading(corner, name, round, Side::Pull));
    let read = (1..=ROUNDS).rev().find_map(pulled);
    let read = read.and_then(|entry| entry.at.day());
    matches!((due, read), (Some(due), Some(read)) if due < read)
}

/// The steps that ask for the heat of a hub: of the first corner of the job, and across from it.
const HEATS: [StepKey; 2] = [
    StepKey::once(Step::HeatHere),
    StepKey::once(Step::HeatOther),
];

/// From here no hand rests on a hub, and its play is not that of a cold one (our bound, no
/// source). The heat is that of the road test; who lets the hub cool can say so in a note.
fn hub_was_hot(sheet: &JobState, corner: Corner) -> bool {
    let hot = Temperature::new(60.0, TemperatureUnit::Celsius);
    let mut steps = HEATS.into_iter();
    let of_hub = steps.find(|step| corners_of(sheet, *step) == [corner]);
    match (of_hub.and_then(|step| sheet.reply(step)), hot) {
        (Some(Reply::Number(Quantity::Temperature(heat))), Ok(hot)) => hot <= heat.temperature(),
        _ => false,
    }
}

/// Whether the nut had been loosened when the last round of a set was read.
fn nut_loosened_before(sheet: &JobState, corner: Corner, name: SetName) -> bool {
    let is_nut = |item: &Item| item.corner == corner && item.group.holds_the_bearing();
    let read = (1..=ROUNDS)
        .rev()
        .find_map(|round| sheet.place(&Key::Reading(corner, name, round, Side::Pull)));
    let loosened = sheet.first_place(
        |what| matches!(what, crate::job::entry::Event::Moved(moved) if moved.items.iter().any(is_nut)),
    );
    matches!((loosened, read), (Some(loosened), Some(read)) if loosened < read)
}

pub(super) fn pick(sheet: &JobState, step: StepKey) -> Option<Choice> {
    match sheet.reply(step) {
        Some(Reply::Picked(pick)) => Some(*pick),
        _ => None,
    }
}

/// The key of one round's step.
pub const fn round_step(corner: Corner, set: SetName, round: u8) -> StepKey {
    StepKey::at(Step::Round, corner).nth(round_number(set, round))
}

#[cfg(test)]
#[path = "judge/tests.rs"]
mod tests;
