//! The rotor under the micrometer: set up, then one place after another, one number at a time.

use crate::job::entry::Gauging;
use crate::job::runout::PLACES;
use crate::job::thickness::{Measurement, Placed, ThicknessInputError, measurements, places_of};
use crate::report::thickness::{angle, step};
use crate::text::{self, FaceWord, Say, ThickWord};
use crate::trade::runout::Micrometer;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::pad::pad;
use crate::ui::parts::picks::picks;
use crate::ui::screens::runout::setup::{corners, counted};
use crate::ui::screens::runout::{Bench, Mode, limit, micrometer};
use crate::ui::view::prelude::*;
use crate::units::{System, Unit};

/// What the record and the mode say: set up, a place, a limit, or the result.
pub(super) fn shown(bench: &Bench) -> Node {
    let all = measurements(bench.at.sheet(), bench.corner);
    match (bench.mode.get(), all.last()) {
        (Mode::Bound(bound), _) => limit::bound(bench, bound),
        (Mode::Measure(gauging), last) => {
            let run = last.map_or(1, |last| last.nth.saturating_add(1));
            place(bench, placed(bench, run, gauging, 1))
        }
        (Mode::Place(nth), Some(last)) => place(bench, placed(bench, last.nth, last.gauging, nth)),
        (Mode::Next, Some(last)) => match last.next_place() {
            Some(nth) => place(bench, placed(bench, last.nth, last.gauging, nth)),
            None => micrometer::result(bench, last),
        },
        _ => setup(bench, all.last()),
    }
}

impl Bench {
    pub(super) fn thick(&self, word: ThickWord) -> &'static str {
        text::thick(self.at.lang, word)
    }
}

const fn placed(bench: &Bench, run: u8, gauging: Gauging, place: u8) -> Placed {
    Placed {
        corner: bench.corner,
        run,
        gauging,
        place,
    }
}

/// The drafts of a measurement that is being set up.
const SETUP: [&str; 2] = ["micrometer", "places"];

/// The micrometer and the places: those of the last time, else of the rotor's run-out.
fn setup(bench: &Bench, last: Option<&Measurement>) -> Node {
    let (fmt, mode) = (bench.at.fmt, bench.mode);
    let drafts = bench.drafts("rotor");
    let common = match fmt.system {
        System::Metric => Micrometer::HundredthMm,
        System::Us => Micrometer::Thou,
    };
    let micrometer = drafts.word(
        "micrometer",
        last.map_or(common, |it| it.gauging.micrometer),
    );
    let usual = places_of(bench.at.sheet(), bench.corner);
    let places = drafts.count("places", last.map_or(usual, |it| it.gauging.places));
    let steps = Micrometer::ALL.iter().map(|it| (*it, step(fmt, *it)));
    let counts = PLACES.iter().map(|it| (*it, it.to_string()));
    let start = move || {
        mode.set(Mode::Measure(Gauging {
            micrometer: micrometer.get_untracked(),
            places: places.get_untracked(),
        }));
    };
    let thing = view! {
        <p>{bench.thick(ThickWord::Say)}</p>
        <p class="step__caution">{bench.face(FaceWord::Caution)}</p>
        {corners(bench)}
        {picks(bench.thick(ThickWord::Micrometer), steps.collect(), micrometer, move |it: Micrometer| {
            drafts.set("micrometer", it.code());
        })}
        {picks(bench.face(FaceWord::Places), counts.collect(), places, counted(drafts, "places"))}
    };
    let keys = view! {
        {key(Look::Primary, bench.face(FaceWord::Start), start)}
        {last.is_some().then(|| {
            key(Look::Plain, bench.at.say(Say::Back), move || mode.set(Mode::Next))
        })}
        {bench.to_rotor()}
    };
    bench.frame(bench.thick(ThickWord::Title).to_owned(), thing, keys)
}

/// One place: the number on the pad, and how far it is from the first one while it is typed. It
/// begins empty, also where it is measured again: nobody should read what is expected.
fn place(bench: &Bench, at: Placed) -> Node {
    let (lang, fmt) = (bench.at.lang, bench.at.fmt);
    let Gauging { micrometer, places } = at.gauging;
    let drafts = bench.drafts(&format!("rotor:{}:{}", at.run, at.place));
    let text = drafts.followed("number", "");
    let slip: RwSignal<Option<ThicknessInputError>> = RwSignal::new(None);
    let keep = {
        let here = bench.clone();
        move || match text.with_untracked(|text| at.saved(text)) {
            Ok(what) => here.keep(what, dropping(&here, at)),
            Err(why) => slip.set(Some(why)),
        }
    };
    let skip = {
        let here = bench.clone();
        move || here.keep(at.skipped(), dropping(&here, at))
    };
    let recorded = move || {
        let why = slip.get()?;
        Some(view! { <p>{text::thickness_slip(lang, why)}</p> })
    };
    // Who measures a place again may have meant another one.
    let mode = bench.mode;
    let again = matches!(mode.get_untracked(), Mode::Place(_));
    let back = again.then(|| {
        key(Look::Plain, bench.at.say(Say::Back), move || {
            mode.set(Mode::Next)
        })
    });
    let unit = view! { <span class="round__unit">{micrometer.unit().symbol()}</span> };
    let thing = view! {
        <p class="hint">{hint(bench, at, text)}</p>
        {pad(&bench.at, text, unit, true)}
    };
    let keys = view! {
        <div class="slip" role="alert">{recorded}</div>
        {key(Look::Primary, bench.thick(ThickWord::Keep), keep)}
        {key(Look::Plain, bench.face(FaceWord::Skip), skip)}
        {back}
    };
    let angle = angle(fmt, bench.at.sheet(), at.corner, at.gauging, at.place);
    bench.frame(text::place_of(lang, at.place, places, &angle), thing, keys)
}

/// What to do here; while a number is typed, how far it is from the first.
fn hint(
    bench: &Bench,
    at: Placed,
    text: RwSignal<String>,
) -> impl Fn() -> String + Send + Sync + 'static {
    let (open, fmt) = (bench.at.open.clone(), bench.at.fmt);
    let say = bench.thick(if at.place == 1 {
        ThickWord::Zero
    } else {
        ThickWord::Measure
    });
    let label = bench.face(FaceWord::FromFirst);
    move || {
        let all = measurements(&open.sheet, at.corner);
        let of = all.iter().find(|of| of.nth == at.run && at.place > 1);
        let away = of.and_then(|of| text.with(|text| of.from_first(text)));
        match away {
            Some(away) => format!("{label}: {}", fmt.length(away, 3).line()),
            None => say.to_owned(),
        }
    }
}

fn dropping(bench: &Bench, at: Placed) -> impl FnOnce() + 'static {
    let place = bench.drafts(&format!("rotor:{}:{}", at.run, at.place));
    let (place, setup) = (
        place.dropping_of(&["number"]),
        bench.drafts("rotor").dropping_of(&SETUP),
    );
    move || {
        place();
        setup();
    }
}
