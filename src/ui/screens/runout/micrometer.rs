//! What the micrometer says of a rotor: how thin, how even, what comes next.

use crate::job::entry::{AgainstLimit, RotorFound, ThicknessReading, ThicknessSpec};
use crate::job::found::rotor;
use crate::job::thickness::Measurement;
use crate::report::thickness::{angle, answers, drawing, limit_name, printed, typed};
use crate::text::{self, FaceWord, ThickWord};
use crate::trade::runout::Bound;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picture::drawn;
use crate::ui::screens::runout::{Bench, Mode};
use crate::ui::view::prelude::*;

/// The result of the last measurement.
pub(super) fn result(bench: &Bench, of: &Measurement) -> Node {
    let (lang, mode) = (bench.at.lang, bench.mode);
    let said = match rotor(bench.at.sheet(), bench.corner, of) {
        Ok(found) => says(bench, of, &found),
        Err(fault) => view! { <p role="alert">{text::thickness_fault(lang, fault)}</p> },
    };
    let rows = of.readings.iter().map(|reading| place(bench, of, reading));
    let thing = view! {
        {said}
        <h2>{bench.face(FaceWord::Readings)}</h2>
        <ol class="bench__readings">{rows.collect_view()}</ol>
    };
    let limits = Bound::ALL.iter().map(|bound| {
        let bound = *bound;
        key(Look::Plain, text::type_bound(lang, bound), move || {
            mode.set(Mode::Bound(bound))
        })
    });
    let keys = view! {
        {key(Look::Primary, bench.thick(ThickWord::Another), move || mode.set(Mode::Setup))}
        {limits.collect_view()}
        {bench.to_rotor()}
    };
    bench.frame(text::measurement_title(lang, of.nth), thing, keys)
}

fn says(bench: &Bench, of: &Measurement, found: &RotorFound) -> Node {
    let (lang, fmt) = (bench.at.lang, bench.at.fmt);
    let answers = answers(lang, fmt, found)
        .into_iter()
        .map(|line| view! { <p class="bench__answer">{line}</p> });
    let variation = fmt.length(found.range(), 3).line();
    let alt = text::thickness_alt(lang, &variation);
    let limits = [&found.least, &found.variation];
    let limits = limits
        .into_iter()
        .flatten()
        .map(|against| limit(bench, against));
    view! {
        {answers.collect_view()}
        {drawn(&drawing(lang, fmt, of, found), &alt, "bench__strip")}
        <p class="bench__next">
            <b>{bench.face(FaceWord::Next)} {": "}</b>
            {text::next_of_rotor(lang, found.next)}
        </p>
        {limits.collect_view()}
        <p class="hint">{bench.thick(ThickWord::Common)}</p>
    }
}

fn limit(bench: &Bench, against: &AgainstLimit<ThicknessSpec>) -> Node {
    let (lang, fmt) = (bench.at.lang, bench.at.fmt);
    let (spec, source) = (&against.spec, &against.spec.source);
    let day = source.looked_up.to_string();
    let from = text::from_page(lang, &source.document, &source.page, &day);
    view! {
        <p>
            <b>{limit_name(lang, (spec.axle, spec.bound))} {": "}</b>
            {printed(lang, fmt, spec)} {". "} {from}
        </p>
    }
}

/// One place; a tap measures it again.
fn place(bench: &Bench, of: &Measurement, reading: &ThicknessReading) -> Node {
    let (lang, fmt, mode) = (bench.at.lang, bench.at.fmt, bench.mode);
    let nth = reading.place;
    let angle = angle(fmt, bench.at.sheet(), bench.corner, of.gauging, nth);
    view! {
        <li>
            <button
                type="button"
                class="bench__place"
                title={bench.thick(ThickWord::Again)}
                on:click={move |_| mode.set(Mode::Place(nth))}
            >
                <b>{bench.face(FaceWord::Place)} {" "} {nth.to_string()} {", "} {angle}</b>
                <span>{typed(lang, fmt, reading)}</span>
            </button>
        </li>
    }
}
