//! The needle of one place: no number until it is brought somewhere. The keys step from where it
//! stood last, and one tap says that it stands there again.

use crate::drawing::dial;
use crate::job::runout::{Spotted, place_angle, saved};
use crate::report::runout::degrees;
use crate::report::scale;
use crate::text::{self, FaceWord, ReadingWord, Say};
use crate::trade::play::Dial;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::needle::{half, needle_key, unit};
use crate::ui::parts::picture::drawn;
use crate::ui::screens::runout::Bench;
use crate::ui::screens::runout::place;
use crate::ui::view::prelude::*;
use crate::units::{Decimal, Format, Length};

/// What is known of a needle beside the first place's: how far it went, and the ways that it may
/// have gone where its turns are asked for.
#[derive(Default)]
pub(super) struct Gone {
    pub(super) from_first: Option<Length>,
    pub(super) ways: Vec<(i32, Length)>,
}

/// Where the needle stood last, to step from, and what can be said again here; or whether this is
/// the first place that is read, where the dial is set to zero.
#[derive(Clone)]
pub(super) struct Before {
    pub(super) last: Option<String>,
    pub(super) same: Option<String>,
    pub(super) is_first: bool,
}

/// The needle being set: its number, empty until it is brought somewhere, and its whole turns with
/// the number that they belong to.
#[derive(Clone, Copy)]
struct Needle {
    text: RwSignal<String>,
    turns: RwSignal<Option<(String, i32)>>,
}

impl Needle {
    fn unread() -> Self {
        Self {
            text: RwSignal::new(String::new()),
            turns: RwSignal::new(None),
        }
    }

    fn is_unread(self) -> bool {
        self.text.with(String::is_empty)
    }

    /// The number as it is shown; a dash before there is one.
    fn shown(self, fmt: Format) -> String {
        if self.is_unread() {
            return "–".to_owned();
        }
        self.text.with(|text| fmt.marked(text))
    }

    /// The number and its turns; those hold for the number they were told of alone.
    fn read<T>(self, then: impl FnOnce(&str, Option<i32>) -> T) -> T {
        let text = self.text.get();
        let turns = self.turns.get().filter(|(of, _)| *of == text);
        then(&text, turns.map(|(_, turns)| turns))
    }
}

/// The screen of one needle.
pub(super) fn shown(
    bench: &Bench,
    spotted: Spotted,
    dial: Dial,
    before: &Before,
    gone: impl Fn(&str, Option<i32>) -> Gone + Clone + Send + Sync + 'static,
) -> Node {
    let needle = Needle::unread();
    let (lang, places) = (bench.at.lang, spotted.setup.places);
    let fmt = bench.at.fmt.first_in(dial.system());
    let title = if spotted.place > places {
        bench.face(FaceWord::FirstAgain).to_owned()
    } else {
        let step = || degrees(fmt, place_angle(spotted.place, places));
        let typed = spotted.angle.as_ref();
        let angle = typed.map_or_else(step, |typed| fmt.typed(typed).line());
        text::place_of(bench.at.lang, spotted.place, places, &angle)
    };
    let hint = bench.face(if spotted.place == 1 {
        FaceWord::Zero
    } else {
        FaceWord::TurnTo
    });
    let run = text::run_title(bench.at.lang, spotted.run, spotted.setup.surface);
    let label = bench.face(FaceWord::FromFirst);
    let known = gone.clone();
    let recorded = move || {
        let gone = needle.read(&known);
        match (gone.from_first, gone.ways.is_empty()) {
            (None, false) => text::reading(lang, ReadingWord::AskTurnsRun).to_owned(),
            (None, true) => hint.to_owned(),
            (Some(away), _) => format!("{label}: {}", scale::play(fmt, away).line()),
        }
    };
    let thing = view! {
        <div class="round">
            <div class="round__read">
                <p class="round__nth">{run}</p>
                {last(bench, before)}
                <p class="round__value">
                    <output>{move || needle.shown(fmt)}</output>
                    <span class="round__unit">{unit(&dial, fmt)}</span>
                </p>
                <p class="round__play">{recorded}</p>
            </div>
            {face(bench, dial, needle, before)}
        </div>
    };
    // The turns are told before the number can be kept.
    let asked = move || match needle.read(&gone) {
        Gone {
            from_first: None,
            ways,
        } => ways,
        _ => Vec::new(),
    };
    bench.frame(
        title,
        thing,
        keys(bench, &spotted, (dial, needle, before.clone()), asked),
    )
}

/// A key for each way that the needle may have gone, by how far that is from the first place.
fn ways(needle: Needle, fmt: Format, ways: Vec<(i32, Length)>) -> Option<Node> {
    let any = !ways.is_empty();
    let keys = ways.into_iter().map(|(turns, away)| {
        let label = scale::play(fmt, away).line();
        key(Look::Plain, label, move || {
            let text = needle.text.get_untracked();
            needle.turns.set(Some((text, turns)));
        })
    });
    any.then(|| view! { <div class="round__turns">{keys.collect_view()}</div> })
}

/// Where the needle stood last, as the number to step from.
fn last(bench: &Bench, before: &Before) -> Option<Node> {
    let last = bench.at.fmt.marked(before.last.as_deref()?);
    let label = bench.face(FaceWord::Last);
    Some(view! { <p class="round__before">{label} {" "} <b>{last}</b></p> })
}

/// The dial as it is seen on the car: no needle until it is set, and the one of last behind it.
fn face(bench: &Bench, dial: Dial, needle: Needle, before: &Before) -> Node {
    let (lang, fmt) = (bench.at.lang, bench.at.fmt);
    let place = |text: &str| Decimal::parse(text).ok().map(|d| d.value());
    let last = before.last.as_deref().and_then(place);
    (move || {
        let face = dial::Dial {
            divisions: dial.divisions_per_turn(),
            value: needle.text.with(|text| place(text)),
            last,
            swept: None,
        };
        let title = text::dial_alt(lang, &needle.shown(fmt));
        drawn(&face.drawing(), &title, "round__dial")
    })
    .into_node()
}

/// What one tap says of a needle that was not set here: that it stands where it stood last, or at
/// the first place that the dial was set to zero.
fn at_once(bench: &Bench, before: &Before, say: impl Fn(&str) + 'static) -> Option<Node> {
    let (label, number) = match &before.same {
        Some(same) => {
            let label = text::same_value(bench.at.lang, &bench.at.fmt.marked(same));
            (label, same.clone())
        }
        None if before.is_first => {
            let label = bench.face(FaceWord::ZeroedHere).to_owned();
            (label, "0".to_owned())
        }
        None => return None,
    };
    Some(key(Look::Plain, label, move || say(&number)))
}

fn keys(
    bench: &Bench,
    spotted: &Spotted,
    (dial, needle, before): (Dial, Needle, Before),
    asked: impl Fn() -> Vec<(i32, Length)> + Clone + Send + Sync + 'static,
) -> Node {
    let (text, ways_of) = (needle.text, asked.clone());
    let at = &bench.at;
    let (lang, fmt) = (at.lang, at.fmt.first_in(dial.system()));
    let put = move |typed| text.set(typed);
    let last = before.last.clone().unwrap_or_else(|| "0".to_owned());
    let last = StoredValue::new(last);
    let from = move || {
        let text = text.get_untracked();
        if text.is_empty() {
            last.get_value()
        } else {
            text
        }
    };
    let step = |label, name: Say, halves| needle_key(from, dial, label, at.say(name), halves, put);
    let (keeping, skipping, said_at) = (bench.clone(), bench.clone(), bench.clone());
    let (saved_spot, skipped_at) = (spotted.clone(), spotted.clone());
    let keep = move || {
        let (sheet, spot) = (keeping.at.sheet(), saved_spot.clone());
        let what = untrack(|| needle.read(|text, turns| saved(sheet, spot, text, turns)));
        if let Some(what) = what {
            place::keep(&keeping, &saved_spot, what);
        }
    };
    // Said at once, it is kept at once, but where its turns are still to be told.
    let (keep_said, untold) = (keep.clone(), asked.clone());
    let say = move |number: &str| {
        put(number.to_owned());
        if untrack(&untold).is_empty() {
            keep_said();
        }
    };
    let label = move |text: &str| text::keep_value(lang, &fmt.marked(text));
    let skip = move || place::skip(&skipping, &skipped_at);
    view! {
        <div class="round__steps">
            {step("−5", Say::PadMinusFive, -10)} {half(from, put)} {step("+5", Say::PadPlusFive, 10)}
            {step("−1", Say::PadMinus, -2)} {key(Look::Plain, bench.face(FaceWord::Skip), skip)}
            {step("+1", Say::PadPlus, 2)}
        </div>
        {move || ways(needle, fmt, ways_of())}
        {move || needle.is_unread().then(|| at_once(&said_at, &before, say.clone()))}
        <button
            type="button"
            class="key key--primary"
            hidden={move || needle.is_unread() || !asked().is_empty()}
            on:click={move |_| keep()}
        >
            {move || text.with(|text| label(text))}
        </button>
    }
}
