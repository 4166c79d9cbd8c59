//! One place of a run: its angle is typed where it is no equal step, then the needle is brought to
//! where it stands, and kept.

use leptos::prelude::*;

use crate::drawing::dial;
use crate::job::entry::What;
use crate::job::judge;
use crate::job::runout::{
    AngleSlip, Angles, Run, Spotted, angle_typed, kept, place_angle, runs, skipped,
};
use crate::report::runout::degrees;
use crate::report::scale;
use crate::text::{self, FaceWord, ReadingWord, Say};
use crate::trade::play::Dial;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::needle::{half, needle_key, unit};
use crate::ui::parts::pad::pad;
use crate::ui::parts::picture::drawn;
use crate::ui::screens::runout::setup::SETUP;
use crate::ui::screens::runout::{Bench, Rig};
use crate::units::{AngleUnit, Decimal, Format, Length, TypedAngle, Unit};

/// What is known of a needle beside the first place's: how far it went, and the ways that it may
/// have gone where its turns are asked for.
#[derive(Default)]
struct Gone {
    from_first: Option<Length>,
    ways: Vec<(i32, Length)>,
}

/// The needle being set: its number, and its whole turns with the number that they belong to.
#[derive(Clone, Copy)]
struct Needle {
    text: RwSignal<String>,
    turns: RwSignal<Option<(String, i32)>>,
}

impl Needle {
    fn at(text: &str) -> Self {
        Self {
            text: RwSignal::new(text.to_owned()),
            turns: RwSignal::new(None),
        }
    }

    /// The number and its turns; those hold for the number they were told of alone.
    fn read<T>(self, then: impl FnOnce(&str, Option<i32>) -> T) -> T {
        let text = self.text.get();
        let turns = self.turns.get().filter(|(of, _)| *of == text);
        then(&text, turns.map(|(_, turns)| turns))
    }
}

/// The first place of a new run: the dial is set to zero there.
pub(super) fn first(bench: &Bench, rig: Rig, angles: Angles, nth: u8) -> AnyView {
    let dial = judge::dial(bench.at.sheet());
    let spotted = bench.spotted(rig, nth, 1);
    let needle =
        move |bench: &Bench, spotted| shown(bench, spotted, dial, "0", |_, _| Gone::default());
    match angles {
        Angles::Equal => needle(bench, spotted),
        Angles::Typed => asked(bench, spotted, "0", angle_typed, needle),
    }
}

/// A place of a run that was begun, from where the needle stood last.
pub(super) fn one(bench: &Bench, run: &Run, place: u8) -> AnyView {
    let read = run.at(place);
    let begin = match read.and_then(|reading| reading.divisions.as_ref()) {
        Some(read) => Some(read),
        None => run.needle_before(place),
    };
    let begin = begin.map_or("0", Decimal::as_typed).to_owned();
    let radius = run.readings.first().and_then(|first| first.radius.clone());
    let mut spotted = bench.spotted((run.setup, radius), run.nth, place);
    let (corner, nth, dial) = (bench.corner, run.nth, run.dial);
    let needle = move |bench: &Bench, spotted| {
        let open = bench.at.open.clone();
        let gone = move |text: &str, turns| {
            let runs = runs(&open.sheet, corner);
            let run = runs.iter().find(|run| run.nth == nth);
            run.map_or_else(Gone::default, |run| Gone {
                from_first: run.from_first(text, turns),
                ways: run.ways(place, text),
            })
        };
        shown(bench, spotted, dial, &begin, gone)
    };
    if run.angles() == Angles::Equal {
        return needle(bench, spotted);
    }
    if place > run.setup.places {
        spotted.angle = run.at(1).and_then(|first| first.angle.clone());
        return needle(bench, spotted);
    }
    let known = read.and_then(|reading| reading.angle.as_ref());
    let known = known.map_or("", |typed| typed.number.as_typed()).to_owned();
    let open = bench.at.open.clone();
    let typed = move |text: &str| {
        let runs = runs(&open.sheet, corner);
        match runs.iter().find(|run| run.nth == nth) {
            Some(run) => run.place_typed(place, text),
            None => angle_typed(text),
        }
    };
    asked(bench, spotted, &known, typed, needle)
}

/// The angle of a place on the pad, then its needle.
fn asked(
    bench: &Bench,
    spotted: Spotted,
    begin: &str,
    typed: impl Fn(&str) -> Result<TypedAngle, AngleSlip> + Clone + Send + Sync + 'static,
    needle: impl Fn(&Bench, Spotted) -> AnyView + Send + 'static,
) -> AnyView {
    let known: RwSignal<Option<TypedAngle>> = RwSignal::new(None);
    let text = of_place(bench, &spotted).followed(ANGLE, begin);
    let bench = bench.clone();
    (move || {
        bench.at.app.lock();
        match known.get() {
            Some(angle) => needle(
                &bench,
                Spotted {
                    angle: Some(angle),
                    ..spotted.clone()
                },
            ),
            None => angle(&bench, &spotted, text, known, typed.clone()),
        }
    })
    .into_any()
}

/// What is half typed at one place of a run.
fn of_place(bench: &Bench, spotted: &Spotted) -> Drafts {
    bench.drafts(&format!("{}:{}", spotted.run, spotted.place))
}

/// A place that cannot be read; it keeps its angle where it has one.
fn skip(bench: &Bench, spotted: &Spotted) {
    keep(bench, spotted, skipped(bench.at.sheet(), spotted.clone()));
}

/// The name of the angle's draft.
const ANGLE: &str = "angle";

/// The entry of a place, and the end of what was half typed for it.
fn keep(bench: &Bench, spotted: &Spotted, what: What) {
    let angle = of_place(bench, spotted).dropping_of(&[ANGLE]);
    let setup = bench.drafts("setup").dropping_of(&SETUP);
    bench.keep(what, move || {
        angle();
        setup();
    });
}

fn angle(
    bench: &Bench,
    spotted: &Spotted,
    text: RwSignal<String>,
    known: RwSignal<Option<TypedAngle>>,
    typed: impl Fn(&str) -> Result<TypedAngle, AngleSlip> + 'static,
) -> AnyView {
    let lang = bench.at.lang;
    let slip: RwSignal<Option<AngleSlip>> = RwSignal::new(None);
    let keep = move || match text.with_untracked(|text| typed(text)) {
        Ok(angle) => known.set(Some(angle)),
        Err(why) => slip.set(Some(why)),
    };
    let told = move || {
        let why = slip.get()?;
        Some(view! { <p>{text::angle_slip(lang, why)}</p> })
    };
    // At stud 1 the dial is set to zero, so that this place is not skipped before it was read.
    let (here, spot) = (bench.clone(), spotted.clone());
    let skip_key = (spotted.place > 1).then(|| {
        let label = bench.face(FaceWord::Skip);
        key(Look::Plain, label, move || skip(&here, &spot))
    });
    let degree = view! { <span class="round__unit">{AngleUnit::Degree.symbol()}</span> };
    let thing = view! {
        <p class="hint">{bench.face(FaceWord::AngleSay)}</p>
        {pad(&bench.at, text, degree, true)}
    };
    let keys = view! {
        <div class="slip" role="alert">{told}</div>
        {key(Look::Primary, bench.face(FaceWord::AngleKeep), keep)}
        {skip_key}
    };
    let title = text::place_where(lang, spotted.place, spotted.setup.places);
    bench.frame(title, thing, keys)
}

fn shown(
    bench: &Bench,
    spotted: Spotted,
    dial: Dial,
    begin: &str,
    gone: impl Fn(&str, Option<i32>) -> Gone + Clone + Send + Sync + 'static,
) -> AnyView {
    let needle = Needle::at(begin);
    let text = needle.text;
    let (lang, fmt, places) = (bench.at.lang, bench.at.fmt, spotted.setup.places);
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
    let told = move || {
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
                <p class="round__value">
                    <output>{move || text.with(|text| fmt.marked(text))}</output>
                    <span class="round__unit">{unit(&dial, fmt)}</span>
                </p>
                <p class="round__play">{told}</p>
            </div>
            {face(bench, dial, text, begin)}
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
    bench.frame(title, thing, keys(bench, &spotted, (dial, needle), asked))
}

/// A key for each way that the needle may have gone, by how far that is from the first place.
fn ways(needle: Needle, fmt: Format, ways: Vec<(i32, Length)>) -> Option<AnyView> {
    let keys = ways.into_iter().map(|(turns, away)| {
        let label = scale::play(fmt, away).line();
        key(Look::Plain, label, move || {
            let text = needle.text.get_untracked();
            needle.turns.set(Some((text, turns)));
        })
    });
    let keys = keys.collect_view();
    (!keys.is_empty()).then(|| view! { <div class="round__turns">{keys}</div> }.into_any())
}

/// The dial as it is seen on the car, with the needle of the place before behind it.
fn face(bench: &Bench, dial: Dial, text: RwSignal<String>, last: &str) -> AnyView {
    let (lang, fmt) = (bench.at.lang, bench.at.fmt);
    let place = |text: &str| Decimal::parse(text).ok().map(|d| d.value());
    let last = place(last);
    (move || {
        let face = dial::Dial {
            divisions: dial.divisions_per_turn(),
            value: text.with(|text| place(text)).unwrap_or_default(),
            last,
            swept: None,
        };
        let title = text::dial_alt(lang, &text.with(|text| fmt.marked(text)));
        drawn(&face.drawing(), &title, "round__dial")
    })
    .into_any()
}

fn keys(
    bench: &Bench,
    spotted: &Spotted,
    (dial, needle): (Dial, Needle),
    asked: impl Fn() -> Vec<(i32, Length)> + Clone + Send + Sync + 'static,
) -> AnyView {
    let (text, ways_of) = (needle.text, asked.clone());
    let at = &bench.at;
    let (lang, fmt) = (at.lang, at.fmt);
    let put = move |typed| text.set(typed);
    let step = |label, name: Say, halves| needle_key(text, dial, label, at.say(name), halves, put);
    let (keeping, skipping) = (bench.clone(), bench.clone());
    let (kept_spot, skipped_at, nth) = (spotted.clone(), spotted.clone(), spotted.place);
    let keep = move |_| {
        let spot = kept_spot.clone();
        let sheet = keeping.at.sheet();
        let what = untrack(|| needle.read(|text, turns| kept(sheet, spot, text, turns)));
        if let Some(what) = what {
            self::keep(&keeping, &kept_spot, what);
        }
    };
    let begin = text.get_untracked();
    let label = move |text: &str| {
        let value = fmt.marked(text);
        if text == begin && nth > 1 {
            text::same_value(lang, &value)
        } else {
            text::keep_value(lang, &value)
        }
    };
    let skip = move || skip(&skipping, &skipped_at);
    view! {
        <div class="round__steps">
            {step("−5", Say::PadMinusFive, -10)} {half(text, put)} {step("+5", Say::PadPlusFive, 10)}
            {step("−1", Say::PadMinus, -2)} {key(Look::Plain, bench.face(FaceWord::Skip), skip)}
            {step("+1", Say::PadPlus, 2)}
        </div>
        {move || ways(needle, fmt, ways_of())}
        <button
            type="button"
            class="key key--primary"
            hidden=move || !asked().is_empty()
            on:click=keep
        >
            {move || text.with(|text| label(text))}
        </button>
    }
    .into_any()
}
