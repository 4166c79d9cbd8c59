//! How the dial stands for a set: what the spec requires and how to measure so, confirmed with one
//! key or corrected with a few, before the base is zeroed.

use crate::job::dial_setup::{difference, forces, recorded, required};
use crate::text::{self, ReadingWord, ReportWord};
use crate::trade::play::{LimitSource, Method, Place, Rig, Way};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::SetName;
use crate::ui::at::StepContext;
use crate::ui::parts::frame::{frame, instead};
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picks::picks;
use crate::ui::view::prelude::*;
use crate::units::Force;

/// The setup of one set.
pub fn dial_setup(at: &StepContext, set: SetName) -> Node {
    let Some(corner) = at.corner() else {
        return ().into_node();
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
    .into_node()
}

/// What is required, how to measure so, and the key that says that it stands so.
fn as_required(
    at: &StepContext,
    (corner, set): (Corner, SetName),
    (way, source): (Way, LimitSource),
    otherwise: RwSignal<bool>,
) -> Node {
    let (lang, word) = (at.lang, |word| text::reading(at.lang, word));
    let by = match source {
        LimitSource::Manufacturer => ReadingWord::Required,
        LimitSource::House => ReadingWord::RequiredByDefault,
    };
    let label = |word| text::report(lang, word);
    let setup = way.rig.map_or("", |rig| text::setup_how(lang, rig));
    let rows = [
        (
            label(ReportWord::Method),
            text::method_how(lang, way.method),
        ),
        (label(ReportWord::Place), text::place_how(lang, way.place)),
        (label(ReportWord::Rig), setup),
    ];
    let rows = rows.map(|(label, how)| row(label, how.to_owned()));
    let here = at.clone();
    let body = view! {
        <h2 class="setup__by">{word(by)}</h2>
        <dl class="setup">
            {rows.into_iter().collect_view()}
            {row(word(ReadingWord::Force), force_name(at, way.force))}
        </dl>
    };
    let keys = view! {
        {key(Look::Primary, word(ReadingWord::AsShown), move || {
            here.write_and_go_on(vec![recorded(corner, set, way)]);
        })}
        {key(Look::Plain, word(ReadingWord::Otherwise), move || otherwise.set(true))}
    };
    frame(at, body, keys)
}

fn row(label: &'static str, how: String) -> Node {
    view! { <div><dt>{label}</dt><dd>{how}</dd></div> }
}

fn force_name(at: &StepContext, force: Option<Force>) -> String {
    let by_hand = || text::reading(at.lang, ReadingWord::ByHand).to_owned();
    force.map_or_else(by_hand, |force| at.fmt.force(force, 0).line())
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
        at: &StepContext,
        (corner, set): (Corner, SetName),
        otherwise: RwSignal<bool>,
    ) -> Node {
        let word = |word| text::reading(at.lang, word);
        let (here, saving) = (at.clone(), at.clone());
        // Said before the base is set: a reading taken so will not be compared.
        let differs = move || {
            let why = difference(here.sheet(), &self.way())?;
            let why = text::not_compared(here.lang, why);
            Some(view! { <p>{why}</p> })
        };
        let body = view! {
            <h1 class="step__say">{word(ReadingWord::AsDone)}</h1>
            {self.picks(at)}
        };
        let keys = view! {
            <div class="slip" role="alert">{differs}</div>
            {key(Look::Primary, word(ReadingWord::SaveSetup), move || {
                let way = untrack(|| self.way());
                saving.write_and_go_on(vec![recorded(corner, set, way)]);
            })}
            {key(Look::Plain, word(ReadingWord::BackToRequired), move || otherwise.set(false))}
        };
        instead(at, body, keys)
    }

    fn picks(self, at: &StepContext) -> Node {
        let lang = at.lang;
        let label = |word| text::report(lang, word);
        let methods = Method::ALL.iter();
        let methods = methods.map(|it| (*it, text::method_key(lang, *it)));
        let places = Place::ALL.iter();
        let places = places.map(|it| (*it, text::place_key(lang, *it)));
        let rigs = Rig::ALL.iter();
        let rigs = rigs.map(|it| (Some(*it), text::setup_key(lang, *it)));
        let forces = forces(at.sheet()).into_iter();
        let forces: Vec<_> = forces.map(|it| (it, force_name(at, it))).collect();
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
    }
}

fn owned<T>(words: impl Iterator<Item = (T, &'static str)>) -> Vec<(T, String)> {
    words.map(|(it, word)| (it, word.to_owned())).collect()
}
