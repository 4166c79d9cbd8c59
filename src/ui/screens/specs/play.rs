//! The fields of the play limit: number, unit, and the way it is measured.

use crate::job::typed_spec::{SpecInputError, play_spec};
use crate::text::{self, Desk, Say};
use crate::trade::fastening::{Spec, SpecBody, SpecItem, SpecSource};
use crate::trade::play::{Method, Place, Rig, Way};
use crate::trade::wheel_end::Kind;
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::picks::picks;
use crate::ui::screens::specs::form::VALUE;
use crate::ui::view::prelude::*;
use crate::units::{LengthUnit, System, TypedLength, Unit};

const LEAST: &str = "least";

/// Units in which a limit is printed.
const PRINTED: [LengthUnit; 3] = [LengthUnit::Millimetre, LengthUnit::Inch, LengthUnit::Thou];

/// The fields.
#[derive(Clone, Copy)]
pub struct PlayFields {
    value: RwSignal<String>,
    least: RwSignal<String>,
    /// Whether the bearing is set with play, so that it has a least one.
    is_set: bool,
    unit: RwSignal<LengthUnit>,
    method: RwSignal<Method>,
    place: RwSignal<Place>,
    rig: RwSignal<Option<Rig>>,
}

impl PlayFields {
    /// The fields as the job has them, or empty with axial, at the pilot, by hand.
    pub fn new(at: &StepContext, drafts: Drafts) -> Self {
        let known = at.sheet().spec(SpecItem::PlayLimit);
        let (most, least, way) = match known.map(|spec| &spec.body) {
            Some(SpecBody::Play {
                most, least, way, ..
            }) => (Some(most), least.as_ref(), *way),
            _ => (
                None,
                None,
                Way {
                    rig: None,
                    ..Way::DEFAULT
                },
            ),
        };
        let common = match at.fmt.system {
            System::Metric => LengthUnit::Millimetre,
            System::Us => LengthUnit::Inch,
        };
        let value = most.map_or("", |most| most.number.as_typed());
        Self {
            value: drafts.text(VALUE, value),
            least: drafts.text(LEAST, least.map_or("", |least| least.number.as_typed())),
            is_set: at.open.plan.kind == Kind::Tapered,
            unit: drafts.word("unit", most.map_or(common, |most| most.unit)),
            method: drafts.word("method", way.method),
            place: drafts.word("place", way.place),
            rig: RwSignal::new(Rig::from_code(&drafts.text("rig", "").get_untracked()).or(way.rig)),
        }
    }

    /// The spec as the fields stand.
    pub fn spec(self, source: SpecSource) -> Result<Spec, SpecInputError> {
        let way = Way {
            method: self.method.get(),
            place: self.place.get(),
            rig: self.rig.get(),
            force: None,
        };
        let least = self.least.get();
        play_spec(&self.value.get(), &least, self.unit.get(), way, source)
    }

    /// The fields on the screen.
    pub fn body(
        self,
        at: &StepContext,
        drafts: Drafts,
        enter: impl Fn() + Clone + 'static,
    ) -> Node {
        let units = PRINTED.map(|unit| (unit, unit.symbol().to_owned()));
        let (lang, fmt) = (at.lang, at.fmt);
        let twin = move || {
            let typed = TypedLength::parse(&self.value.get(), self.unit.get()).ok()?;
            Some(text::also_value(lang, &fmt.typed_twin(&typed).line()))
        };
        let least = self.is_set.then(|| {
            let label = text::desk(lang, Desk::LeastPlay);
            Field::decimal(LEAST, self.least).show(label, "", drafts, enter.clone())
        });
        let most = match self.is_set {
            true => text::desk(lang, Desk::MostPlay),
            false => at.say(Say::SpecValue),
        };
        view! {
            {least}
            <div class="spec-form__figure">
                {Field::decimal(VALUE, self.value).show(most, "", drafts, enter)}
                <p class="spec-form__twin">{twin}</p>
            </div>
            {picks(at.say(Say::SpecUnit), units.to_vec(), self.unit, move |unit| {
                drafts.set("unit", unit.code());
            })}
            {self.way(at, drafts)}
        }
    }

    /// The way in one line, folded open to change it.
    fn way(self, at: &StepContext, drafts: Drafts) -> Node {
        let lang = at.lang;
        let line = move || {
            let rig = self.rig.get().map(|rig| text::rig(lang, rig));
            let parts = [
                Some(text::method(lang, self.method.get())),
                Some(text::place(lang, self.place.get())),
                rig,
                Some(text::desk(lang, Desk::ByHand)),
            ];
            parts.into_iter().flatten().collect::<Vec<_>>().join(" · ")
        };
        let methods = Method::ALL.iter().map(|it| (*it, text::method(lang, *it)));
        let places = Place::ALL.iter().map(|it| (*it, text::place(lang, *it)));
        let rigs = Rig::ALL.iter().map(|it| (Some(*it), text::rig(lang, *it)));
        let rigs = [(None, text::desk(lang, Desk::NoRig))]
            .into_iter()
            .chain(rigs);
        let legend = text::desk(lang, Desk::HowMeasured);
        view! {
            <p class="hint">{line}</p>
            <details class="more">
                <summary class="key key--foot">{legend}</summary>
                {picks(at.say(Say::SpecMethod), owned(methods), self.method, move |it| {
                    drafts.set("method", it.code());
                })}
                {picks(at.say(Say::SpecPlace), owned(places), self.place, move |it| {
                    drafts.set("place", it.code());
                })}
                {picks(text::desk(lang, Desk::Setup), owned(rigs), self.rig, move |it| {
                    drafts.set("rig", it.map_or("", Rig::code));
                })}
            </details>
        }
    }
}

fn owned<T>(words: impl Iterator<Item = (T, &'static str)>) -> Vec<(T, String)> {
    words.map(|(it, word)| (it, word.to_owned())).collect()
}
