//! One round on the dial: the eye is on the needle, one thumb on the glass.
//!
//! The needle is brought to where it stands with a few large keys; the number pad is the second
//! way, and there the two readings of a dial that was not at zero are typed.

use leptos::prelude::*;

use crate::drawing::dial;
use crate::job::entry::Side;
use crate::job::judge;
use crate::job::pace::Pace;
use crate::job::round::{Typing, kept, last_pull, passes_zero};
use crate::report::scale;
use crate::text::{self, Say};
use crate::trade::play::{Dial, RoundError};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{ROUNDS, SetName, When};
use crate::ui::at::At;
use crate::ui::parts::frame::frame;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::needle::{half, needle_key, unit};
use crate::ui::parts::pad::pad;
use crate::ui::parts::picture::drawn;
use crate::ui::parts::practice;
use crate::ui::screens::swing::{Begin, pacer};
use crate::units::{Decimal, Format, Length};

/// What is on the glass of one round.
#[derive(Clone)]
struct Reading {
    at: At,
    place: (Corner, SetName, u8),
    dial: Dial,
    /// The number being set, in divisions, as text.
    text: RwSignal<String>,
    /// The push reading of a dial that was not at zero; none while it is at zero.
    push: RwSignal<Option<String>>,
    /// Whole turns of the needle where they were asked for, and the pull they belong to.
    turns: RwSignal<Option<(String, i32)>>,
    /// Which of the two readings is being set.
    side: RwSignal<Side>,
    typing: RwSignal<bool>,
    /// Whether the needle was brought anywhere: where it stands by itself nobody has read it.
    set: RwSignal<bool>,
    last: Option<String>,
}

/// One round of a set.
pub fn round(at: &At, set: SetName, nth: u8) -> AnyView {
    let Some(corner) = at.corner() else {
        return ().into_any();
    };
    let last = last_pull(at.sheet(), corner, set, nth);
    let reading = Reading {
        place: (corner, set, nth),
        dial: judge::dial(at.sheet()),
        text: RwSignal::new(last.clone().unwrap_or_else(|| "0".to_owned())),
        push: RwSignal::new(None),
        turns: RwSignal::new(None),
        side: RwSignal::new(Side::Pull),
        typing: RwSignal::new(false),
        set: RwSignal::new(last.is_some()),
        last,
        at: at.clone(),
    };
    frame(at, body(&reading), keys(&reading))
}

impl Reading {
    /// The play as it would be kept now.
    fn play(&self) -> Option<Result<Length, RoundError>> {
        self.typed(|typing| typing.play(&self.dial))
    }

    /// What is on the glass; the turns hold for the number they were told of alone.
    fn typed<T>(&self, then: impl FnOnce(Typing<'_>) -> T) -> T {
        let (push, pull) = (self.push.get(), self.text.get());
        let turns = self.turns.get().filter(|(of, _)| *of == pull);
        then(Typing {
            push: push.as_deref(),
            pull: &pull,
            turns: turns.map(|(_, turns)| turns),
        })
    }

    fn is_pushing(&self) -> bool {
        self.side.get() == Side::Push
    }

    /// Whether there is a reading: the needle was set, or a number is being typed.
    fn is_read(&self) -> bool {
        self.set.get() || self.typing.get()
    }

    /// Brings the needle to a place.
    fn put(&self, text: String) {
        self.text.set(text);
        self.set.set(true);
    }

    fn can_keep(&self) -> bool {
        if !self.is_read() {
            return false;
        }
        if self.is_pushing() {
            return self.text.with(|text| Decimal::parse(text).is_ok());
        }
        matches!(self.play(), Some(Ok(_)))
    }

    /// Keeps the push for a moment, or the round for good.
    fn keep(&self) {
        let text = self.text.get_untracked();
        if self.side.get_untracked() == Side::Push {
            self.push.set(Some(text));
            self.side.set(Side::Pull);
            self.text.set(String::new());
            return;
        }
        let whats = self.typed(|typing| kept(self.at.sheet(), self.place, typing));
        if let Some(whats) = whats {
            self.at.write_and_go_on(whats);
        }
    }

    fn primary(&self) -> String {
        let lang = self.at.lang;
        if self.is_pushing() {
            return self.at.say(Say::PushReading).to_owned();
        }
        let text = self.text.get();
        let value = self.at.fmt.marked(&text);
        if self.last == Some(text) {
            text::same_value(lang, &value)
        } else {
            text::keep_value(lang, &value)
        }
    }

    /// The number as it is read; a dash before there is one.
    fn shown(&self, fmt: Format) -> String {
        let text = self.text.get();
        if text.is_empty() || !self.is_read() {
            return "–".to_owned();
        }
        fmt.marked(&text)
    }

    /// The second way; the number begins anew.
    fn show_pad(&self) {
        self.text.set(String::new());
        self.typing.set(true);
    }

    /// Back from the pad to the needle, which stands somewhere.
    fn show_dial(&self) {
        if self.text.with_untracked(String::is_empty) {
            let start = self.last.clone().unwrap_or_else(|| "0".to_owned());
            self.text.set(start);
        } else {
            self.set.set(true);
        }
        self.typing.set(false);
    }

    /// The dial was not at zero: push first, then pull. Or it was, after all.
    fn turn_zeroed(&self) {
        let two = self.push.get_untracked().is_none() && self.side.get_untracked() == Side::Pull;
        self.push.set(None);
        self.side.set(if two { Side::Push } else { Side::Pull });
        self.text.set(String::new());
    }
}

fn body(reading: &Reading) -> AnyView {
    let (left, typed) = (reading.clone(), reading.clone());
    let (typing, ways) = (reading.typing, ways(reading));
    view! {
        <div class="round" hidden=move || typing.get()>
            <div class="round__read">
                {heading(&left)}
                {before(&left)}
                {value(&left)}
                {told(&left)}
            </div>
            {face(&left)}
        </div>
        {move || typing.get().then(|| pad_of(&typed))}
        {ways}
    }
    .into_any()
}

fn heading(reading: &Reading) -> AnyView {
    let round = text::round_of(reading.at.lang, reading.place.2, ROUNDS);
    view! { <p class="round__nth">{round}</p> }.into_any()
}

/// Beside a reading after the work stands what was read before it.
fn before(reading: &Reading) -> Option<AnyView> {
    let (corner, set, _) = reading.place;
    if set.when == When::Before {
        return None;
    }
    let mean = judge::before(reading.at.sheet(), corner)?.set.mean();
    let shown = scale::play(reading.at.fmt, mean).line();
    let label = reading.at.say(Say::BeforeLabel);
    Some(view! { <p class="round__before">{label} " " <b>{shown}</b></p> }.into_any())
}

/// The dial as it is seen on the car, with the needle of the last round behind it.
fn face(reading: &Reading) -> AnyView {
    let reading = reading.clone();
    let place = |text: &str| Decimal::parse(text).ok().map(|d| d.value());
    (move || {
        let value = reading.text.with(|text| place(text)).unwrap_or_default();
        let push = reading.push.with(|push| push.as_deref().and_then(place));
        let face = dial::Dial {
            divisions: reading.dial.divisions_per_turn(),
            value,
            last: reading.last.as_deref().and_then(place),
            swept: matches!(reading.play(), Some(Ok(_)))
                .then_some((push.unwrap_or_default(), value)),
        };
        let shown = reading.text.with(|text| reading.at.fmt.marked(text));
        let title = text::dial_alt(reading.at.lang, &shown);
        drawn(&face.drawing(), &title, "round__dial")
    })
    .into_any()
}

/// The number in the dial's divisions; a tap on it opens the number pad.
fn value(reading: &Reading) -> AnyView {
    let (number, pressed, fmt) = (reading.clone(), reading.clone(), reading.at.fmt);
    view! {
        <button
            type="button"
            class="round__value"
            title=reading.at.say(Say::PadKeys)
            on:click=move |_| pressed.show_pad()
        >
            <output>{move || number.shown(fmt)}</output>
            <span class="round__unit">{unit(&reading.dial, reading.at.fmt)}</span>
        </button>
    }
    .into_any()
}

/// What follows from the number: the play in both systems, or why it is none.
fn told(reading: &Reading) -> AnyView {
    let reading = reading.clone();
    (move || {
        let (at, fmt) = (&reading.at, reading.at.fmt);
        match reading.play() {
            _ if reading.is_pushing() => line(at.say(Say::FirstReading).to_owned()),
            Some(Ok(_)) if !reading.is_read() => line(at.say(Say::SecondReading).to_owned()),
            None => line(at.say(Say::SecondReading).to_owned()),
            Some(Err(fault)) => {
                let say = match fault {
                    RoundError::AskTurns { .. } => Say::AskTurns,
                    RoundError::OffTheDial { .. } => Say::TooFar,
                };
                view! { <p class="round__trouble" role="alert">{at.say(say)}</p> }.into_any()
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
                    {wraps.then(|| line(at.say(Say::WrapSay).to_owned()))}
                }
                .into_any()
            }
        }
    })
    .into_any()
}

/// The needle may have gone another way round: a key for each way, by the play that it would be.
fn ways(reading: &Reading) -> AnyView {
    let reading = reading.clone();
    (move || {
        let ways = reading.typed(|typing| typing.ways(&reading.dial));
        let keys = ways.into_iter().map(|(turns, play)| {
            let here = reading.clone();
            let label = scale::play(reading.at.fmt, play).line();
            key(Look::Plain, label, move || {
                here.turns.set(Some((here.text.get_untracked(), turns)));
            })
        });
        let keys = keys.collect_view();
        (!reading.is_pushing() && !keys.is_empty())
            .then(|| view! { <div class="round__turns">{keys}</div> })
    })
    .into_any()
}

fn line(text: String) -> AnyView {
    view! { <p class="round__play">{text}</p> }.into_any()
}

/// The second way: the number as typed, and the dial that was not at zero.
fn pad_of(reading: &Reading) -> AnyView {
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
    let unit = view! { <span class="round__unit">{unit}</span> {told(reading)} };
    view! {
        {pad(at, reading.text, unit, true)}
        <div class="keys-grid">
            <button type="button" class="key" on:click=move |_| turn.turn_zeroed()>
                {zeroed}
            </button>
            {key(Look::Plain, at.say(Say::PadDial), move || back.show_dial())}
        </div>
    }
    .into_any()
}

fn keys(reading: &Reading) -> AnyView {
    let (can, press, label) = (reading.clone(), reading.clone(), reading.clone());
    let (zero, read) = (reading.clone(), reading.clone());
    let typing = reading.typing;
    let halving = reading.clone();
    view! {
        <div class="round__steps" hidden=move || typing.get()>
            {step(reading, "−5", Say::PadMinusFive, -10)}
            {half(reading.text, move |text| halving.put(text))}
            {step(reading, "+5", Say::PadPlusFive, 10)}
            {step(reading, "−1", Say::PadMinus, -2)}
            {by_hand(&reading.at)}
            {step(reading, "+1", Say::PadPlus, 2)}
        </div>
        {at_zero(&zero)}
        <button
            type="button"
            class="key key--primary"
            hidden=move || !read.is_read()
            prop:disabled=move || !can.can_keep()
            on:click=move |_| press.keep()
        >
            {move || label.primary()}
        </button>
    }
    .into_any()
}

/// The hands on the hub: a paced count for one's own, the practice car where there is one.
fn by_hand(at: &At) -> AnyView {
    if practice::shows(at) {
        practice::try_it(at)
    } else {
        pacer(at, Pace::Gauge, Look::Plain, Begin::ByKey)
    }
}

/// A needle that did not move is a reading too, and it is said: until then nothing can be kept.
/// A bounce must not keep it as well.
fn at_zero(reading: &Reading) -> AnyView {
    let (here, read) = (reading.clone(), reading.clone());
    let still = key(Look::Plain, reading.at.say(Say::StillAtZero), move || {
        here.put("0".to_owned());
        here.at.app.lock();
    });
    view! { <div class="round__zero" hidden=move || read.is_read()>{still}</div> }.into_any()
}

fn step(reading: &Reading, label: &'static str, name: Say, halves: i64) -> AnyView {
    let name = reading.at.say(name);
    let here = reading.clone();
    let put = move |text| here.put(text);
    needle_key(reading.text, reading.dial, label, name, halves, put)
}
