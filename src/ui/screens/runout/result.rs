//! What a run says: the drawing, one sentence, the limit, the next step, the rotor on every stud.

use crate::drawing::polar::position;
use crate::job::entry::{FaceFound, ReachFound, RunoutReading};
use crate::job::found::face;
use crate::job::runout::{Found, Run, found, marked, studs};
use crate::report::reach::reach_line;
use crate::report::runout::{answer, high_spot, most, place_angle_in, polar, runout};
use crate::text::{self, FaceWord, Say};
use crate::trade::runout::{LeftOut, Studs};
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picture::drawn;
use crate::ui::screens::runout::{Bench, Mode};
use crate::ui::view::prelude::*;

/// The result of the last run.
pub(super) fn result(bench: &Bench, runs: &[Run], run: &Run) -> Node {
    let (lang, mode) = (bench.at.lang, bench.mode);
    let title = text::run_title(lang, run.nth, run.setup.surface);
    let said = match face(bench.at.sheet(), bench.corner, run) {
        Ok(face) => {
            let live = found(bench.at.sheet(), runs, run).ok();
            says(bench, run, &face, live.as_ref())
        }
        Err(fault) => view! { <p>{text::series_fault(lang, fault)}</p> },
    };
    let thing = view! { {said} {readings(bench, run)} };
    let again = run.setup.places + 1;
    let to = |word, to: Mode| key(Look::Plain, bench.face(word), move || mode.set(to.clone()));
    let keys = view! {
        {key(Look::Primary, bench.face(FaceWord::AnotherRun), move || mode.set(Mode::Setup))}
        {run.at(again).is_none().then(|| to(FaceWord::ReadFirstAgain, Mode::Place(again)))}
        {to(FaceWord::TypeLimit, Mode::Limit)}
        {bench.to_rotor()}
    };
    bench.frame(title, thing, keys)
}

/// What was found, with the curve as it is drawn today.
fn says(bench: &Bench, run: &Run, found: &FaceFound, live: Option<&Found>) -> Node {
    let (lang, fmt) = (bench.at.lang, bench.at.fmt);
    let count = studs(bench.at.sheet());
    let shape = match &found.shape {
        Err(why) => view! { <p role="alert">{text::undetermined(lang, *why)}</p> },
        Ok(shape) => {
            let alt = text::polar_alt(lang, &runout(lang, fmt, found), shape.form);
            let curve = live.map(|live| drawn(&polar(run, live, count), &alt, "bench__polar"));
            view! {
                <p class="bench__answer">{answer(lang, fmt, found)}</p>
                {curve}
                <p class="bench__high">{high_spot(lang, fmt, shape, count)}</p>
            }
        }
    };
    let next = view! {
        <p class="bench__next">
            <b>{bench.face(FaceWord::Next)} {": "}</b>
            {text::next_at_face(lang, found.next)}
        </p>
        <p class="hint">{bench.face(FaceWord::Common)}</p>
    };
    let limit = found.against.as_ref().map(|against| {
        let (spec, source) = (&against.spec, &against.spec.source);
        let day = source.looked_up.to_string();
        let from = text::from_page(lang, &source.document, &source.page, &day);
        view! {
            <p>
                <b>{bench.face(FaceWord::LimitTitle)} {": "}</b>
                {most(lang, fmt, spec)} {". "} {from}
            </p>
        }
    });
    view! { {shape} {next} {limit} {positions(bench, run, found, count)} }
}

/// The best position drawn, and every other in order.
fn positions(bench: &Bench, run: &Run, found: &FaceFound, count: Option<Studs>) -> Option<Node> {
    let (basis, all) = found.positions.as_ref()?;
    let ((best, _), count) = (all.first()?, count?.count());
    let title = text::hole_on_stud(bench.at.lang, best + 1);
    let now = run.setup.stud.saturating_sub(1);
    let rows = all
        .iter()
        .map(|one| row(bench, one, *best, now))
        .collect_view();
    Some(view! {
        <h2>{bench.face(FaceWord::Positions)}</h2>
        <p>{text::basis(bench.at.lang, *basis)}</p>
        {drawn(&position(count, *best), &title, "bench__position")}
        <ol class="bench__positions">{rows}</ol>
    })
}

fn row(bench: &Bench, (stud, wobble): &(u8, ReachFound), best: u8, now: u8) -> Node {
    let (lang, fmt) = (bench.at.lang, bench.at.fmt);
    let notes = [(best, FaceWord::Best), (now, FaceWord::Now)];
    let notes = notes.into_iter().filter(|(at, _)| at == stud);
    let notes: Vec<_> = notes.map(|(_, word)| bench.face(word)).collect();
    view! {
        <li>
            <b>{text::hole_on_stud(lang, stud + 1)}</b>
            <span>{reach_line(lang, fmt, wobble)}</span>
            <span>{notes.join(", ")}</span>
        </li>
    }
}

/// Every place; a tap shows what can be done with it.
fn readings(bench: &Bench, run: &Run) -> Node {
    let rows = run
        .readings
        .iter()
        .map(|reading| place(bench, run, reading));
    view! {
        <h2>{bench.face(FaceWord::Readings)}</h2>
        <ol class="bench__readings">{rows.collect_view()}</ol>
    }
}

fn place(bench: &Bench, run: &Run, reading: &RunoutReading) -> Node {
    let (lang, fmt, chosen) = (bench.at.lang, bench.at.fmt, bench.marked);
    let nth = reading.place;
    let needle = match &reading.divisions {
        Some(needle) => format!(
            "{} {}",
            fmt.marked(needle.as_typed()),
            bench.at.say(Say::Divisions)
        ),
        None => bench.face(FaceWord::Skipped).to_owned(),
    };
    let why = reading.left_out.map(|why| text::left_out(lang, why));
    let press = move |_| chosen.update(|now| *now = (*now != Some(nth)).then_some(nth));
    let (keyed, of) = (bench.clone(), reading.clone());
    view! {
        <li>
            <button
                type="button"
                class="bench__place"
                aria-expanded={move || if chosen.get() == Some(nth) { "true" } else { "false" }}
                on:click=press
            >
                <b>{bench.face(FaceWord::Place)} {" "} {nth.to_string()} {", "} {place_angle_in(fmt, run, reading)}</b>
                <span>{needle}</span>
                <span>{why}</span>
            </button>
            {move || (chosen.get() == Some(nth)).then(|| place_keys(&keyed, &of))}
        </li>
    }
}

fn place_keys(bench: &Bench, reading: &RunoutReading) -> Node {
    let (mode, nth) = (bench.mode, reading.place);
    let mark = |label: &'static str, why: Option<LeftOut>| {
        let (bench, reading) = (bench.clone(), reading.clone());
        key(Look::Plain, label, move || {
            bench.keep(marked(&reading, why), || {})
        })
    };
    let reasons = LeftOut::ALL
        .iter()
        .map(|why| mark(text::left_out(bench.at.lang, *why), Some(*why)));
    let counts = reading.left_out.is_none();
    let marks = match counts {
        true => reasons.collect_view(),
        false => mark(bench.face(FaceWord::CountAgain), None),
    };
    let read = reading.divisions.is_some();
    view! {
        <div class="keys-grid">
            {key(Look::Plain, bench.face(FaceWord::ReadAgain), move || mode.set(Mode::Place(nth)))}
            {read.then_some(marks)}
        </div>
    }
}
