//! Setting up a run: what turns, at how many places, and on which stud the rotor sits.

use crate::job::entry::Setup;
use crate::job::runout::{Angles, PLACES, Run, USUAL_PLACES, radius_typed, studs};
use crate::text::{self, FaceWord, Say};
use crate::trade::answer::Answer;
use crate::trade::runout::{Studs, Surface};
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picks::picks;
use crate::ui::screens::runout::{Bench, Mode};
use crate::ui::view::prelude::*;
use crate::units::{LengthUnit, System, Unit};

/// The drafts of a run that is being set up; they go when its first place is kept.
pub(super) const SETUP: [&str; 6] = ["surface", "places", "angles", "stud", "cleaned", "radius"];

/// The choices as they were left, else those of the last run.
pub(super) fn setup(bench: &Bench, runs: &[Run]) -> Node {
    let (lang, drafts) = (bench.at.lang, bench.drafts("setup"));
    let last = runs.last().map(|run| run.setup);
    let surface = drafts.word("surface", last.map_or(Surface::HubFace, |it| it.surface));
    let places = drafts.count("places", last.map_or(USUAL_PLACES, |it| it.places));
    let angles = drafts.word("angles", runs.last().map_or(Angles::Equal, Run::angles));
    let stud = drafts.count("stud", last.map_or(1, |it| it.stud));
    let cleaned = drafts.word("cleaned", Answer::NotDone);
    let radius = drafts.text("radius", "");
    let slip = RwSignal::new(None);
    let surfaces = Surface::ALL
        .iter()
        .map(|it| (*it, text::surface(lang, *it).to_owned()));
    let counts = PLACES.iter().map(|it| (*it, it.to_string()));
    let answers = Answer::ALL
        .iter()
        .map(|it| (*it, text::answer(lang, *it).to_owned()));
    let ways = Angles::ALL
        .iter()
        .map(|it| (*it, text::angles(lang, *it).to_owned()));
    let (mode, unit) = (bench.mode, unit_of(bench));
    let start = move || {
        let surface = surface.get_untracked();
        let is_rotor = surface == Surface::Rotor;
        let setup = Setup {
            surface,
            places: places.get_untracked(),
            stud: if is_rotor { stud.get_untracked() } else { 1 },
            cleaned: cleaned.get_untracked(),
        };
        // A pilot's run-out has nothing of a tilt in it.
        let radius = match surface {
            Surface::Pilot => Ok(None),
            _ => radius_typed(&radius.get_untracked(), unit),
        };
        match radius {
            Ok(radius) => mode.set(Mode::First(setup, angles.get_untracked(), radius)),
            Err(why) => slip.set(Some(why)),
        }
    };
    let recorded = move || {
        let why = slip.get()?;
        Some(view! { <p>{text::radius_slip(lang, why)}</p> })
    };
    let on_stud = on_stud(bench, stud, drafts);
    let thing = view! {
        <p>{bench.face(FaceWord::Say)}</p>
        <p class="step__caution">{bench.face(FaceWord::Caution)}</p>
        {corners(bench)}
        {picks(bench.face(FaceWord::Surface), surfaces.collect(), surface, move |it: Surface| {
            drafts.set("surface", it.code());
        })}
        <div hidden={move || surface.get() != Surface::Rotor}>{on_stud}</div>
        {picks(bench.face(FaceWord::Cleaned), answers.collect(), cleaned, move |it: Answer| {
            drafts.set("cleaned", it.code());
        })}
        {picks(bench.face(FaceWord::Places), counts.collect(), places, counted(drafts, "places"))}
        {picks(bench.face(FaceWord::Angles), ways.collect(), angles, move |it: Angles| {
            drafts.set("angles", it.code());
        })}
        <div hidden={move || surface.get() == Surface::Pilot}>
            {radius_field(bench, radius, unit, drafts, start)}
        </div>
    };
    let keys = view! {
        <div class="slip" role="alert">{recorded}</div>
        {key(Look::Primary, bench.face(FaceWord::Start), start)}
        {(!runs.is_empty()).then(|| {
            key(Look::Plain, bench.at.say(Say::Back), move || mode.set(Mode::Next))
        })}
        {bench.to_rotor()}
    };
    bench.frame(bench.face(FaceWord::Title).to_owned(), thing, keys)
}

/// What keeps the draft of a count.
pub(super) fn counted(drafts: Drafts, name: &'static str) -> impl Fn(u8) + Copy + 'static {
    move |count| drafts.set(name, &count.to_string())
}

/// What a radius is read in.
fn unit_of(bench: &Bench) -> LengthUnit {
    match bench.at.fmt.system {
        System::Metric => LengthUnit::Millimetre,
        System::Us => LengthUnit::Inch,
    }
}

/// How far the tip stands from the middle: one field, folded away, since most runs need none.
fn radius_field(
    bench: &Bench,
    radius: RwSignal<String>,
    unit: LengthUnit,
    drafts: Drafts,
    enter: impl Fn() + 'static,
) -> Node {
    let title = bench.face(FaceWord::Radius);
    let label = format!("{title}, {}", unit.symbol());
    view! {
        <details class="more">
            <summary class="key key--foot">{title}</summary>
            <p class="hint">{bench.face(FaceWord::RadiusSay)}</p>
            {Field::decimal("radius", radius).show(label, "", drafts, enter)}
        </details>
    }
}

/// Which stud hole 1 sits on, if the count of studs is known.
fn on_stud(bench: &Bench, stud: RwSignal<u8>, drafts: Drafts) -> Node {
    match studs(bench.at.sheet()).map(Studs::count) {
        None => view! { <p>{bench.face(FaceWord::StudsUnknown)}</p> },
        Some(count) => {
            let all = (1..=count).map(|nth| (nth, nth.to_string())).collect();
            picks(
                bench.face(FaceWord::Stud),
                all,
                stud,
                counted(drafts, "stud"),
            )
        }
    }
}

/// Which corner, where the job has several.
pub(super) fn corners(bench: &Bench) -> Option<Node> {
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
