//! One place of a run: its angle is typed where it is no equal step, then its needle is read.

use crate::job::entry::Event;
use crate::job::runout::{AngleError, Angles, Run, Spotted, angle_typed, runs, skipped};
use crate::text::{self, FaceWord};
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::pad::pad;
use crate::ui::screens::runout::needle::{Before, Gone, shown};
use crate::ui::screens::runout::setup::SETUP;
use crate::ui::screens::runout::{Bench, Rig};
use crate::ui::view::prelude::*;
use crate::units::{AngleUnit, Decimal, TypedAngle, Unit};

/// The first place of a new run: the dial is set to zero there.
pub(super) fn first(bench: &Bench, rig: Rig, angles: Angles, nth: u8) -> Node {
    let dial = bench.at.sheet().dial();
    let spotted = bench.spotted(rig, nth, 1);
    let needle = move |bench: &Bench, spotted| {
        let before = Before {
            last: None,
            same: None,
            is_first: true,
        };
        shown(bench, spotted, dial, &before, |_, _| Gone::default())
    };
    match angles {
        Angles::Equal => needle(bench, spotted),
        Angles::Typed => asked(bench, spotted, "0", angle_typed, needle),
    }
}

/// A place of a run that was begun.
pub(super) fn one(bench: &Bench, run: &Run, place: u8) -> Node {
    let typed = |needle: &Decimal| needle.as_typed().to_owned();
    let before = Before {
        last: run.stood_last(place).map(typed),
        same: run.same(place).map(typed),
        is_first: run.is_first(place),
    };
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
        shown(bench, spotted, dial, &before, gone)
    };
    if run.angles() == Angles::Equal {
        return needle(bench, spotted);
    }
    if place > run.setup.places {
        spotted.angle = run.at(1).and_then(|first| first.angle.clone());
        return needle(bench, spotted);
    }
    let known = run.at(place).and_then(|read| read.angle.as_ref());
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
    typed: impl Fn(&str) -> Result<TypedAngle, AngleError> + Clone + Send + Sync + 'static,
    needle: impl Fn(&Bench, Spotted) -> Node + Send + 'static,
) -> Node {
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
    .into_node()
}

/// What is half typed at one place of a run.
fn of_place(bench: &Bench, spotted: &Spotted) -> Drafts {
    bench.drafts(&format!("{}:{}", spotted.run, spotted.place))
}

/// A place that cannot be read; it keeps its angle where it has one.
pub(super) fn skip(bench: &Bench, spotted: &Spotted) {
    keep(bench, spotted, skipped(bench.at.sheet(), spotted.clone()));
}

/// The name of the angle's draft.
const ANGLE: &str = "angle";

/// The entry of a place, and the end of what was half typed for it.
pub(super) fn keep(bench: &Bench, spotted: &Spotted, what: Event) {
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
    typed: impl Fn(&str) -> Result<TypedAngle, AngleError> + 'static,
) -> Node {
    let lang = bench.at.lang;
    let slip: RwSignal<Option<AngleError>> = RwSignal::new(None);
    let keep = move || match text.with_untracked(|text| typed(text)) {
        Ok(angle) => known.set(Some(angle)),
        Err(why) => slip.set(Some(why)),
    };
    let recorded = move || {
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
        <div class="slip" role="alert">{recorded}</div>
        {key(Look::Primary, bench.face(FaceWord::AngleKeep), keep)}
        {skip_key}
    };
    let title = text::place_where(lang, spotted.place, spotted.setup.places);
    bench.frame(title, thing, keys)
}
