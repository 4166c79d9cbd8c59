//! How the dial stands for a set: what the spec requires with how to measure so, confirmed with one
//! key or corrected with a few, before the base is zeroed.

use leptos::prelude::*;

use crate::job::dial_setup::{difference, forces, recorded, required};
use crate::report::cards::way_lines;
use crate::text::{self, ReadingWord, ReportWord};
use crate::trade::play::{LimitSource, Method, Place, Rig, Way};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::SetName;
use crate::ui::at::At;
use crate::ui::parts::frame::frame;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picks::picks;
use crate::units::Force;

/// The setup of one set.
pub fn dial_setup(at: &At, set: SetName) -> AnyView {
    let Some(corner) = at.corner() else {
        return ().into_any();
    };
    let known = at.sheet().dial_setup(corner, set).map(|setup| setup.way);
    let (way, source) = required(at.sheet());
    let otherwise = RwSignal::new(known.is_some_and(|known| known != way));
    let (here, picked) = (at.clone(), Picked::new(known.unwrap_or(way)));
    (move || {
        if otherwise.get() {
            picked.shown(&here, (corner, set), otherwise)
        } else {
            as_required(&here, (corner, set), (way, source), otherwise)
        }
    })
    .into_any()
}

/// What is required, how to measure so, and the key that says that it stands so.
fn as_required(
    at: &At,
    (corner, set): (Corner, SetName),
    (way, source): (Way, LimitSource),
    otherwise: RwSignal<bool>,
) -> AnyView {
    let word = |word| text::reading(at.lang, word);
    let by = match source {
        LimitSource::Maker => ReadingWord::Required,
        LimitSource::House => ReadingWord::RequiredByDefault,
    };
    let rows = way_lines(at.lang, at.fmt, &way).into_iter();
    let rows = rows.map(|(label, value)| {
        view! { <div><dt>{label}</dt><dd>{value}</dd></div> }
    });
    let how = [
        way.rig.map(|rig| text::setup_how(at.lang, rig)),
        Some(text::place_how(at.lang, way.place)),
        Some(text::method_how(at.lang, way.method)),
    ];
    let how = how
        .into_iter()
        .flatten()
        .map(|how| view! { <li>{how}</li> });
    let here = at.clone();
    let body = view! {
        <h2>{word(by)}</h2>
        <dl class="setup">{rows.collect_view()}</dl>
        <h2>{word(ReadingWord::HowTo)}</h2>
        <ul class="setup__how">{how.collect_view()}</ul>
    };
    let keys = view! {
        {key(Look::Primary, word(ReadingWord::AsShown), move || {
            here.write_and_go_on(vec![recorded(corner, set, way)]);
        })}
        {key(Look::Plain, word(ReadingWord::Otherwise), move || otherwise.set(true))}
    };
    frame(at, body, keys)
}

/// The setup as it is picked.
#[derive(Clone, Copy)]
struct Picked {
    method: RwSignal<Method>,
    place: RwSignal<Place>,
    rig: RwSignal<Option<Rig>>,
    force: RwSignal<Option<Force>>,
}

impl Picked {
    fn new(way: Way) -> Self {
        Self {
            method: RwSignal::new(way.method),
            place: RwSignal::new(way.place),
            rig: RwSignal::new(way.rig),
            force: RwSignal::new(way.force),
        }
    }

    fn way(self) -> Way {
        Way {
            method: self.method.get(),
            place: self.place.get(),
            rig: self.rig.get(),
            force: self.force.get(),
        }
    }

    fn shown(
        self,
        at: &At,
        (corner, set): (Corner, SetName),
        otherwise: RwSignal<bool>,
    ) -> AnyView {
        let word = |word| text::reading(at.lang, word);
        let (here, saving) = (at.clone(), at.clone());
        // Said before the base is set: a reading taken so will not be compared.
        let differs = move || {
            let why = difference(here.sheet(), &self.way())?;
            let why = text::not_compared(here.lang, why);
            Some(view! { <p class="round__trouble" role="alert">{why}</p> })
        };
        let body = view! {
            <h2>{word(ReadingWord::AsDone)}</h2>
            {differs}
            {self.picks(at)}
        };
        let keys = view! {
            {key(Look::Primary, word(ReadingWord::SaveSetup), move || {
                let way = untrack(|| self.way());
                saving.write_and_go_on(vec![recorded(corner, set, way)]);
            })}
            {key(Look::Plain, word(ReadingWord::BackToRequired), move || otherwise.set(false))}
        };
        frame(at, body, keys)
    }

    fn picks(self, at: &At) -> AnyView {
        let (lang, fmt) = (at.lang, at.fmt);
        let label = |word| text::report(lang, word);
        let methods = Method::ALL.iter().map(|it| (*it, text::method(lang, *it)));
        let places = Place::ALL.iter().map(|it| (*it, text::place(lang, *it)));
        let rigs = Rig::ALL.iter().map(|it| (Some(*it), text::rig(lang, *it)));
        let forces = forces(at.sheet()).into_iter().map(|force| {
            let by_hand = || text::reading(lang, ReadingWord::ByHand).to_owned();
            (
                force,
                force.map_or_else(by_hand, |force| fmt.force(force, 0).line()),
            )
        });
        let forces: Vec<_> = forces.collect();
        let legend = text::reading(lang, ReadingWord::Force);
        let force = (forces.len() > 1).then(|| picks(legend, forces, self.force, |_| {}));
        view! {
            <div class="setup__picks">
                {picks(label(ReportWord::Method), owned(methods), self.method, |_| {})}
                {picks(label(ReportWord::Place), owned(places), self.place, |_| {})}
                {picks(label(ReportWord::Rig), owned(rigs), self.rig, |_| {})}
                {force}
            </div>
        }
        .into_any()
    }
}

fn owned<T>(words: impl Iterator<Item = (T, &'static str)>) -> Vec<(T, String)> {
    words.map(|(it, word)| (it, word.to_owned())).collect()
}
