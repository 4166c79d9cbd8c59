//! Setting up a run: what turns, at how many places, and on which stud the rotor sits.

use leptos::prelude::*;

use crate::job::entry::Setup;
use crate::job::runout::{Angles, PLACES, Run, USUAL_PLACES, studs};
use crate::text::{self, FaceWord, Say};
use crate::trade::answer::Answer;
use crate::trade::runout::{Studs, Surface};
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picks::picks;
use crate::ui::screens::runout::{Bench, Mode};

/// The choices; those of the last run stand.
pub(super) fn setup(bench: &Bench, runs: &[Run]) -> AnyView {
    let lang = bench.at.lang;
    let last = runs.last().map(|run| run.setup);
    let surface = RwSignal::new(last.map_or(Surface::HubFace, |it| it.surface));
    let places = RwSignal::new(last.map_or(USUAL_PLACES, |it| it.places));
    let angles = RwSignal::new(runs.last().map_or(Angles::Equal, Run::angles));
    let stud = RwSignal::new(last.map_or(1, |it| it.stud));
    let cleaned = RwSignal::new(Answer::NotDone);
    let surfaces = Surface::ALL
        .iter()
        .map(|it| (*it, text::surface(lang, *it).to_owned()));
    let counts = PLACES.iter().map(|it| (*it, it.to_string()));
    let answers = Answer::ALL
        .iter()
        .map(|it| (*it, text::answer(lang, *it).to_owned()));
    let ways = [Angles::Equal, Angles::Typed].map(|it| (it, text::angles(lang, it).to_owned()));
    let mode = bench.mode;
    let start = move || {
        let surface = surface.get_untracked();
        let is_rotor = surface == Surface::Rotor;
        let setup = Setup {
            surface,
            places: places.get_untracked(),
            stud: if is_rotor { stud.get_untracked() } else { 1 },
            cleaned: cleaned.get_untracked(),
        };
        mode.set(Mode::First(setup, angles.get_untracked()));
    };
    let on_stud = on_stud(bench, stud);
    let thing = view! {
        <p>{bench.face(FaceWord::Say)}</p>
        <p class="step__caution">{bench.face(FaceWord::Caution)}</p>
        {corners(bench)}
        {picks(bench.face(FaceWord::Surface), surfaces.collect(), surface, |_| {})}
        <div hidden=move || surface.get() != Surface::Rotor>{on_stud}</div>
        {picks(bench.face(FaceWord::Cleaned), answers.collect(), cleaned, |_| {})}
        {picks(bench.face(FaceWord::Places), counts.collect(), places, |_| {})}
        {picks(bench.face(FaceWord::Angles), ways.to_vec(), angles, |_| {})}
    };
    let keys = view! {
        {key(Look::Primary, bench.face(FaceWord::Start), start)}
        {(!runs.is_empty()).then(|| {
            key(Look::Plain, bench.at.say(Say::Back), move || mode.set(Mode::Next))
        })}
    };
    bench.frame(bench.face(FaceWord::Title).to_owned(), thing, keys)
}

/// Which stud hole 1 sits on, if the count of studs is known.
fn on_stud(bench: &Bench, stud: RwSignal<u8>) -> AnyView {
    match studs(bench.at.sheet()).map(Studs::count) {
        None => view! { <p>{bench.face(FaceWord::StudsUnknown)}</p> }.into_any(),
        Some(count) => {
            let all = (1..=count).map(|nth| (nth, nth.to_string())).collect();
            picks(bench.face(FaceWord::Stud), all, stud, |_| {})
        }
    }
}

/// Which corner, where the job has several.
fn corners(bench: &Bench) -> Option<AnyView> {
    let corners = bench.at.sheet().corners();
    let (lang, chosen) = (bench.at.lang, bench.chosen);
    let now = RwSignal::new(bench.corner);
    let all = corners
        .iter()
        .map(|it| (*it, text::corner_title(lang, *it).to_owned()));
    (corners.len() > 1).then(|| {
        picks(
            text::say(lang, Say::AriaCorner),
            all.collect(),
            now,
            move |it| {
                chosen.set(Some(it));
            },
        )
    })
}
