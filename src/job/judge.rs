//! From the entries of a corner to what the trade's rules need, and back what they say.
//!
//! Nothing is judged here: the rules stand in `trade::play`. This only gathers.

use crate::job::entry::{Quantity, Reading, Reply, Side};
use crate::job::key::Key;
use crate::job::nuts::{looked_wrong, nuts_are_loose};
use crate::job::round::begun;
use crate::job::sheet::Sheet;
use crate::trade::answer::Answer;
use crate::trade::fastening::CardItem;
use crate::trade::play::budget::Proof;
use crate::trade::play::geometry::true_travel;
use crate::trade::play::{
    After, BrakeHeld, Budget, Conformity, Dial, Divisions, Evidence, Felt, IndicatorError, Limit,
    Mark, ReadingSet, RigFacts, Round, RoundError, SeriesFault, StopSign, Test, Verdict, can_prove,
    compare, decide, pass_after,
};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{
    Check, Group, Item, Pick, ROUNDS, SetName, Step, StepKey, When, round_number, setup_number,
};
use crate::units::{Length, Temperature, TemperatureUnit};

/// A set of readings with everything that follows from it.
#[derive(Clone, Debug, PartialEq)]
pub struct Measured {
    /// The rounds.
    pub set: ReadingSet,
    /// How sure they are.
    pub budget: Budget,
    /// What they were compared with.
    pub limit: Limit,
    /// What the comparison says.
    pub conformity: Conformity,
}

/// The limit of this job: the maker's where the card gives one, else the house limit.
pub fn limit(sheet: &Sheet) -> Limit {
    let card = sheet
        .card(CardItem::PlayLimit)
        .and_then(|card| card.limit());
    card.and_then(Result::ok).unwrap_or(Limit::HOUSE)
}

/// The dial on board; the common one of its unit where none was named.
pub fn dial(sheet: &Sheet) -> Dial {
    sheet
        .carried()
        .map_or(Dial::HUNDREDTH_MM, |carried| carried.dial)
}

/// What this gauge will be able to prove against this job's limit on a base that does not give.
pub fn proof(sheet: &Sheet) -> Proof {
    let dial = dial(sheet);
    let facts = RigFacts {
        indicator: indicator(sheet, &dial),
        flex: flex(&dial, Pick::FlexNone),
        temperature: None,
    };
    can_prove(&dial, &facts, usize::from(ROUNDS), &limit(sheet))
}

/// The play of one round, if both its sides were read.
///
/// # Errors
/// [`RoundError`] if the readings lie too far apart to say which way the needle went.
pub fn round_play(
    sheet: &Sheet,
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
    sheet: &Sheet,
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

/// The set that counts before the work: the second where the first was asked again.
pub fn before(sheet: &Sheet, corner: Corner) -> Option<Measured> {
    let set = |nth| {
        let when = When::Before;
        measured(sheet, corner, SetName { when, nth })?.ok()
    };
    set(2).or_else(|| set(1))
}

/// A set of readings, compared with the job's limit. `None` before the first round.
///
/// # Errors
/// [`SeriesFault`] if a round gives no play, or the rounds were read on several dials.
pub fn measured(
    sheet: &Sheet,
    corner: Corner,
    name: SetName,
) -> Option<Result<Measured, SeriesFault>> {
    let rounds: Vec<_> = (1..=ROUNDS)
        .filter_map(|round| read_round(sheet, corner, name, round))
        .collect();
    rounds.first()?;
    let dials = rounds
        .iter()
        .map(|(dial, _)| *dial)
        .collect::<Option<Vec<_>>>();
    let Some(dial) = dials.and_then(Dial::shared) else {
        return Some(Err(SeriesFault::MixedDials));
    };
    let readings: Vec<Round> = rounds.iter().map(|(_, round)| *round).collect();
    let way = sheet.dial_setup(corner, name).map(|setup| setup.way);
    let set = ReadingSet::read(dial, way, &readings, marks(sheet, corner, name));
    Some(set.map(|set| {
        let set = with_tip(sheet, corner, name, set);
        let budget = Budget::of(&set, &facts(sheet, corner, name, &dial));
        let limit = limit(sheet);
        let conformity = compare(&set, &budget, &limit);
        Measured {
            set,
            budget,
            limit,
            conformity,
        }
    }))
}

/// The set with its tip as it was told; beyond what can be corrected it stays as it was read.
fn with_tip(sheet: &Sheet, corner: Corner, name: SetName, set: ReadingSet) -> ReadingSet {
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

fn facts(sheet: &Sheet, corner: Corner, name: SetName, dial: &Dial) -> RigFacts {
    let picked = pick(sheet, flex_step(corner, name)).unwrap_or(Pick::FlexOne);
    RigFacts {
        indicator: indicator(sheet, dial),
        flex: flex(dial, picked),
        temperature: sheet
            .crept(corner, name)
            .map(|crept| dial.worth(Divisions::typed(crept))),
    }
}

/// The dial's own error: by the certificate of the one on board, else by its class.
pub fn indicator(sheet: &Sheet, dial: &Dial) -> IndicatorError {
    let carried = sheet.carried().filter(|carried| carried.dial == *dial);
    let error = carried.and_then(|carried| carried.more.dial_error.as_ref());
    error.map_or(IndicatorError::OneDivision, |largest| {
        IndicatorError::certified(largest.length())
    })
}

/// How far the needle moved at most when the knuckle was pushed.
///
/// A needle that does not seem to move may still have moved a quarter of a division, which no
/// eye sees in a driveway (common practice, no source).
fn flex(dial: &Dial, picked: Pick) -> Length {
    dial.graduation().times(match picked {
        Pick::FlexNone => 0.25,
        Pick::FlexHalf => 0.5,
        _ => 1.0,
    })
}

fn marks(sheet: &Sheet, corner: Corner, name: SetName) -> Vec<Mark> {
    let mut marks = Vec::new();
    match pick(sheet, flex_step(corner, name)) {
        Some(Pick::FlexNone | Pick::FlexHalf | Pick::FlexOne) => {}
        Some(Pick::BaseElsewhere) => marks.push(Mark::BaseNotOnKnuckle),
        _ => marks.push(Mark::FlexNotTested),
    }
    if gauge_was_overdue(sheet, corner, name) {
        marks.push(Mark::GaugeOverdue);
    }
    if name.when == When::Before {
        if matches!(
            sheet.reply(StepKey::at(Step::WheelOff, corner)),
            Some(Reply::NotDone(_))
        ) {
            marks.push(Mark::WheelFitted);
        }
        if hub_was_hot(sheet) {
            marks.push(Mark::HotHub);
        }
        match pick(sheet, StepKey::at(Step::NutFound, corner)) {
            Some(Pick::NutSlack) => marks.push(Mark::NutSlack),
            Some(Pick::NutRetorqued) => marks.push(Mark::NutHadBeenLoosened),
            _ if nut_loosened_before(sheet, corner, name) => marks.push(Mark::NutSlack),
            _ => {}
        }
    }
    marks
}

/// Whether the dial was past its day when the last round of a set was read.
fn gauge_was_overdue(sheet: &Sheet, corner: Corner, name: SetName) -> bool {
    let due = sheet.carried().and_then(|carried| carried.dial_due);
    let pulled = |round| sheet.holds(&Key::Reading(corner, name, round, Side::Pull));
    let read = (1..=ROUNDS).rev().find_map(pulled);
    let read = read.and_then(|entry| entry.at.day());
    matches!((due, read), (Some(due), Some(read)) if due < read)
}

/// From here no hand rests on a hub, and its play is not that of a cold one (our bound, no
/// source). The heat is that of the road test; who lets the hub cool can say so in a note.
fn hub_was_hot(sheet: &Sheet) -> bool {
    let hot = Temperature::new(60.0, TemperatureUnit::Celsius);
    match (sheet.reply(StepKey::once(Step::HeatHere)), hot) {
        (Some(Reply::Number(Quantity::Temperature(heat))), Ok(hot)) => hot <= heat.temperature(),
        _ => false,
    }
}

/// Whether the nut had been loosened when the last round of a set was read.
fn nut_loosened_before(sheet: &Sheet, corner: Corner, name: SetName) -> bool {
    let nut = Item {
        corner,
        group: Group::AxleNut,
        number: 1,
    };
    let read = (1..=ROUNDS)
        .rev()
        .find_map(|round| sheet.place(&Key::Reading(corner, name, round, Side::Pull)));
    let loosened = sheet.first_place(
        |what| matches!(what, crate::job::entry::What::Moved(moved) if moved.items.contains(&nut)),
    );
    matches!((loosened, read), (Some(loosened), Some(read)) if loosened < read)
}

fn pick(sheet: &Sheet, step: StepKey) -> Option<Pick> {
    match sheet.reply(step) {
        Some(Reply::Picked(pick)) => Some(*pick),
        _ => None,
    }
}

fn felt(sheet: &Sheet, corner: Corner) -> Option<Felt> {
    let steps = [Step::RockTwelveSix, Step::RockNineThree, Step::RockAxial];
    let felt = steps
        .into_iter()
        .filter_map(|step| match sheet.reply(StepKey::at(step, corner)) {
            Some(Reply::Felt(felt)) => Some(*felt),
            _ => None,
        });
    felt.max()
}

fn spun(sheet: &Sheet, step: StepKey) -> (Answer, Answer) {
    match pick(sheet, step) {
        Some(Pick::SmoothQuiet) => (Answer::No, Answer::No),
        Some(Pick::Rough) => (Answer::Yes, Answer::No),
        Some(Pick::Noisy) => (Answer::No, Answer::Yes),
        Some(Pick::RoughNoisy | Pick::GrindsHot) => (Answer::Yes, Answer::Yes),
        _ => (Answer::NotDone, Answer::NotDone),
    }
}

/// What a decision on this corner can rest on now.
pub fn evidence(sheet: &Sheet, corner: Corner) -> Evidence {
    let (roughness, noise) = spun(sheet, StepKey::at(Step::SpinHand, corner));
    let sets = (1..=2)
        .filter_map(|nth| {
            measured(
                sheet,
                corner,
                SetName {
                    when: When::Before,
                    nth,
                },
            )
        })
        .filter_map(Result::ok)
        .map(|measured| measured.conformity)
        .collect();
    let brake_held = match pick(sheet, StepKey::at(Step::BrakeHeld, corner)) {
        Some(Pick::PlayGone) => BrakeHeld::Gone,
        Some(Pick::PlayStays) => BrakeHeld::Stays,
        _ => BrakeHeld::NotDone,
    };
    Evidence {
        sets,
        roughness,
        noise,
        felt: felt(sheet, corner),
        brake_held,
        stop_signs: stop_signs(sheet, corner),
        not_done: not_done(sheet, corner),
    }
}

fn stop_signs(sheet: &Sheet, corner: Corner) -> Vec<StopSign> {
    let signs = [
        (
            StopSign::VisibleTilt,
            looked_wrong(sheet, Check::WheelUpright),
        ),
        (StopSign::LooseWheelFasteners, nuts_are_loose(sheet)),
        (
            StopSign::LooseAxleNut,
            pick(sheet, StepKey::at(Step::NutFound, corner)) == Some(Pick::NutSlack),
        ),
        (
            StopSign::GrindingWithHeat,
            pick(sheet, StepKey::at(Step::SpinHand, corner)) == Some(Pick::GrindsHot),
        ),
    ];
    signs
        .into_iter()
        .filter_map(|(sign, seen)| seen.then_some(sign))
        .collect()
}

fn not_done(sheet: &Sheet, corner: Corner) -> Vec<Test> {
    let done = |step| !matches!(sheet.reply(step), None | Some(Reply::NotDone(_)));
    let heat = done(StepKey::once(Step::HeatHere)) && done(StepKey::once(Step::HeatOther));
    let rocks = [Step::RockTwelveSix, Step::RockNineThree, Step::RockAxial];
    let tests = [
        (
            Test::Rock,
            rocks.iter().all(|step| done(StepKey::at(*step, corner))),
        ),
        (Test::OtherSide, done(StepKey::at(Step::OtherSide, corner))),
        (Test::Road, done(StepKey::once(Step::Drive))),
        (Test::Temperatures, heat),
    ];
    tests
        .into_iter()
        .filter_map(|(test, done)| (!done).then_some(test))
        .collect()
}

/// The verdict on a corner as the entries stand.
pub fn verdict(sheet: &Sheet, corner: Corner) -> Verdict {
    decide(&evidence(sheet, corner))
}

/// What the proof after the work says of a corner.
pub fn after(sheet: &Sheet, corner: Corner) -> After {
    let name = SetName {
        when: When::After,
        nth: 1,
    };
    let set = measured(sheet, corner, name).and_then(Result::ok);
    let (roughness, noise) = spun(sheet, StepKey::at(Step::ProveSpin, corner));
    pass_after(
        set.as_ref().map(|measured| &measured.conformity),
        roughness,
        noise,
    )
}

/// The key of one round's step.
pub const fn round_step(corner: Corner, set: SetName, round: u8) -> StepKey {
    StepKey::at(Step::Round, corner).nth(round_number(set, round))
}
