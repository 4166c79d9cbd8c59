//! One round on the dial: the eye is on the needle, one thumb on the screen.
//!
//! Each round begins empty. The needle is brought to where it stands with a few large keys; the
//! number pad is the second way, and there the two readings of a dial that was not at zero are
//! typed: the push is an entry of its own. What is half set is a draft, kept at each key.

mod state;

use state::Reading;

use crate::drawing::dial;
use crate::job::pace::Pace;
use crate::job::round::{Place, other_dial, passes_zero, read_again, saved};
use crate::job::sets;
use crate::report::scale;
use crate::text::{self, ReadingWord, Say};
use crate::trade::play::RoundError;
use crate::trade::wheel_end::{ROUNDS, SetName, When};
use crate::ui::at::StepContext;
use crate::ui::parts::frame::frame;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::needle::{half, needle_key, unit};
use crate::ui::parts::pad::pad;
use crate::ui::parts::picture::drawn;
use crate::ui::parts::practice;
use crate::ui::screens::swing::{Begin, pacer};
use crate::ui::view::prelude::*;
use crate::units::Decimal;

/// One round of a set.
pub fn round(at: &StepContext, set: SetName, nth: u8) -> Node {
    let Some(corner) = at.corner() else {
        return ().into_node();
    };
    let place = (corner, set, nth);
    if other_dial(at.sheet(), place).is_some() {
        return refused(at, place);
    }
    let reading = Reading::begin(at, place);
    reading.keep_draft();
    frame(at, body(&reading), keys(&reading))
}

/// The other rounds were read on another dial: one set, one dial.
fn refused(at: &StepContext, (corner, set, _): Place) -> Node {
    let (here, lang) = (at.clone(), at.lang);
    let again = key(
        Look::Primary,
        text::reading(lang, ReadingWord::ReadSetAgain),
        move || here.write_and_go_on(vec![read_again(here.sheet(), corner, set)]),
    );
    let body = view! {
        <aside class="hold" role="alert">
            <p>{text::reading(lang, ReadingWord::OtherDial)}</p>
        </aside>
    };
    frame(at, body, again)
}

fn body(reading: &Reading) -> Node {
    let (left, typed) = (reading.clone(), reading.clone());
    let (typing, ways) = (reading.typing, ways(reading));
    view! {
        <div class="round" hidden={move || typing.get()}>
            <div class="round__read">
                {heading(&left)}
                {before(&left)}
                {value(&left)}
                {recorded(&left)}
            </div>
            {face(&left)}
        </div>
        {move || typing.get().then(|| pad_of(&typed))}
        {ways}
    }
}

fn heading(reading: &Reading) -> Node {
    let round = text::round_of(reading.at.lang, reading.place.2, ROUNDS);
    view! { <p class="round__nth">{round}</p> }
}

/// Beside a reading after the work stands what was read before it.
fn before(reading: &Reading) -> Option<Node> {
    let (corner, set, _) = reading.place;
    if set.when == When::Before {
        return None;
    }
    let mean = sets::before(reading.at.sheet(), corner)?.set.mean();
    let shown = scale::play(reading.fmt(), mean).line();
    let label = reading.at.say(Say::BeforeLabel);
    Some(view! { <p class="round__before">{label} {" "} <b>{shown}</b></p> })
}

/// The dial as it is seen on the car, with the needle of the last round behind it.
fn face(reading: &Reading) -> Node {
    let reading = reading.clone();
    let place = |text: &str| Decimal::parse(text).ok().map(|d| d.value());
    (move || {
        let value = reading.text.with(|text| place(text)).unwrap_or_default();
        let push = reading.push.with(|push| push.as_deref().and_then(place));
        let face = dial::Dial {
            divisions: reading.dial.divisions_per_turn(),
            value: Some(value),
            last: reading.last.as_ref().and_then(|last| place(&last.pull)),
            swept: matches!(reading.play(), Some(Ok(_)))
                .then_some((push.unwrap_or_default(), value)),
        };
        let shown = reading.text.with(|text| reading.at.fmt.marked(text));
        let title = text::dial_alt(reading.at.lang, &shown);
        drawn(&face.drawing(), &title, "round__dial")
    })
    .into_node()
}

/// The number in the dial's divisions; a tap on it opens the number pad.
fn value(reading: &Reading) -> Node {
    let (number, pressed, fmt) = (reading.clone(), reading.clone(), reading.at.fmt);
    view! {
        <button
            type="button"
            class="round__value"
            title={reading.at.say(Say::PadKeys)}
            on:click={move |_| pressed.show_pad()}
        >
            <output>{move || number.shown(fmt)}</output>
            <span class="round__unit">{unit(&reading.dial, reading.at.fmt)}</span>
        </button>
    }
}

/// What follows from the number: the play in both systems, or why it is none.
fn recorded(reading: &Reading) -> Node {
    let reading = reading.clone();
    (move || {
        let (at, fmt) = (&reading.at, reading.fmt());
        match reading.play() {
            _ if reading.is_pushing() => line(at.say(Say::FirstReading).to_owned()),
            Some(Ok(_)) if !reading.is_read() => line(pulling(&reading)),
            None => line(pulling(&reading)),
            Some(Err(fault)) => {
                let say = match fault {
                    RoundError::AskTurns { .. } => Say::AskTurns,
                    RoundError::OffTheDial { .. } => Say::TooFar,
                };
                view! { <p class="round__trouble" role="alert">{at.say(say)}</p> }
            }
            Some(Ok(play)) => {
                let both = format!(
                    "{} {} {}",
                    at.say(Say::PlayLabel),
                    scale::play(fmt, play).line(),
                    text::also_value(at.lang, &scale::play_twin(fmt, play).line()),
                );
                let push = reading.push.get().unwrap_or_else(|| "0".to_owned());
                let wraps = reading
                    .text
                    .with(|pull| passes_zero(&reading.dial, &push, pull))
                    && reading.typed(|typing| typing.turns.is_none());
                view! {
                    {line(both)}
                    {wraps.then(|| {
                        let say = at.say(Say::WrapSay);
                        view! { <p class="round__play round__wrap">{say}</p> }
                    })}
                }
            }
        }
    })
    .into_node()
}

/// That the pull comes now, after the push where one was recorded.
fn pulling(reading: &Reading) -> String {
    let pull = reading.at.say(Say::SecondReading);
    let push = reading.push.get();
    let push = push.map(|push| text::pushed_at(reading.at.lang, &reading.at.fmt.marked(&push)));
    push.into_iter()
        .chain([pull.to_owned()])
        .collect::<Vec<_>>()
        .join(". ")
}

/// The needle may have gone another way round: a key for each way, by the play that it would be.
fn ways(reading: &Reading) -> Node {
    let reading = reading.clone();
    (move || {
        let ways = reading.typed(|typing| typing.ways(&reading.dial));
        let shown = !reading.is_pushing() && !ways.is_empty();
        let keys = ways.into_iter().map(|(turns, play)| {
            let here = reading.clone();
            let label = scale::play(reading.fmt(), play).line();
            key(Look::Plain, label, move || {
                here.turns.set(Some((here.text.get_untracked(), turns)));
            })
        });
        shown.then(|| view! { <div class="round__turns">{keys.collect_view()}</div> })
    })
    .into_node()
}

fn line(text: String) -> Node {
    view! { <p class="round__play">{text}</p> }
}

/// The second way: the number as typed, and the dial that was not at zero.
fn pad_of(reading: &Reading) -> Node {
    let (turn, back) = (reading.clone(), reading.clone());
    let at = &reading.at;
    let two = reading.clone();
    let zeroed = move || {
        two.at.say(if two.is_pushing() || two.push.get().is_some() {
            Say::Zeroed
        } else {
            Say::NotZeroed
        })
    };
    let unit = unit(&reading.dial, reading.at.fmt);
    // A column of its own beside the number, as wide as the screen can spare.
    let unit = view! {
        <span class="round__unit">{unit}</span>
        <div class="round__told">{recorded(reading)}</div>
    };
    view! {
        {pad(at, reading.text, unit, true)}
        <div class="keys-grid">
            <button type="button" class="key" on:click={move |_| turn.turn_zeroed()}>
                {zeroed}
            </button>
            {key(Look::Plain, at.say(Say::PadDial), move || back.show_dial())}
        </div>
    }
}

fn keys(reading: &Reading) -> Node {
    let (can, press, label) = (reading.clone(), reading.clone(), reading.clone());
    let (zero, read) = (reading.clone(), reading.clone());
    let typing = reading.typing;
    let (text, halving) = (reading.text, reading.clone());
    view! {
        <div class="round__steps" hidden={move || typing.get()}>
            {step(reading, "−5", Say::PadMinusFive, -10)}
            {half(move || text.get_untracked(), move |text| halving.put(text))}
            {step(reading, "+5", Say::PadPlusFive, 10)}
            {step(reading, "−1", Say::PadMinus, -2)}
            {by_hand(reading)}
            {step(reading, "+1", Say::PadPlus, 2)}
        </div>
        {same(reading)}
        {at_zero(&zero)}
        <button
            type="button"
            class="key key--primary"
            hidden={move || !read.is_read() || read.same().is_some()}
            prop:disabled={move || !can.can_keep()}
            on:click={move |_| press.keep()}
        >
            {move || label.primary()}
        </button>
    }
}

/// The hands on the hub: a paced count for one's own, the practice car where there is one.
fn by_hand(reading: &Reading) -> Node {
    let (at, moved) = (&reading.at, reading.moved);
    if practice::shows(at) {
        practice::try_it(at)
    } else {
        let ended = move || moved.set(true);
        pacer(at, (Pace::Gauge, Look::Plain), Begin::ByKey, ended)
    }
}

/// The whole reading of the round before, said again: once the hub was moved in this round, and
/// before another number is set.
fn same(reading: &Reading) -> Node {
    let reading = reading.clone();
    (move || {
        let last = reading.same()?;
        let fmt = reading.at.fmt;
        let push = last.push.as_deref().map(|push| fmt.marked(push));
        let pull = fmt.marked(&last.pull);
        let label = text::same_reading(reading.at.lang, push.as_deref(), &pull);
        let (here, last) = (reading.clone(), last.clone());
        Some(key(Look::Plain, label, move || {
            here.write(saved(here.at.sheet(), here.place, last.typing()));
        }))
    })
    .into_node()
}

/// A needle that did not move is a reading too, and it is said: until then nothing can be kept.
/// A bounce must not keep it as well.
fn at_zero(reading: &Reading) -> Node {
    let (here, read) = (reading.clone(), reading.clone());
    let still = key(Look::Plain, reading.at.say(Say::StillAtZero), move || {
        here.put("0".to_owned());
        here.at.app.lock();
    });
    view! { <div class="round__zero" hidden={move || read.is_read()}>{still}</div> }
}

fn step(reading: &Reading, label: &'static str, name: Say, halves: i64) -> Node {
    let name = reading.at.say(name);
    let here = reading.clone();
    let (text, put) = (reading.text, move |text| here.put(text));
    let from = move || text.get_untracked();
    needle_key(from, reading.dial, label, name, halves, put)
}
