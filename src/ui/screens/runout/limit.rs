//! The manufacturer's limits of the bench, typed with their source: run-out, least thickness, variation.

use crate::job::entry::Event;
use crate::job::runout::{Run, limit_spec};
use crate::job::thickness;
use crate::job::typed_spec::SpecInputError;
use crate::report::thickness::limit_name;
use crate::text::{self, FaceWord, Say};
use crate::trade::fastening::{SpecItem, SpecSource};
use crate::trade::runout::Bound;
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picks::picks;
use crate::ui::screens::runout::{Bench, Mode};
use crate::ui::screens::specs::SourceFields;
use crate::ui::view::prelude::*;
use crate::units::{LengthUnit, System, TypedLength, Unit};

/// Units in which a limit is printed.
const PRINTED: [LengthUnit; 3] = [LengthUnit::Millimetre, LengthUnit::Inch, LengthUnit::Thou];

/// The form of the limit for what this run is of.
pub(super) fn limit(bench: &Bench, run: &Run) -> Node {
    let surface = run.setup.surface;
    let known = bench.at.sheet().runout_limit(surface);
    let of = text::surface(bench.at.lang, surface);
    let title = format!("{}: {of}", bench.face(FaceWord::LimitTitle));
    let name = format!("limit:{}", surface.code());
    let known = known.map(|spec| spec.most.clone());
    form(bench, &name, title, known, move |value, unit, source| {
        limit_spec(surface, value, unit, source).map(Event::RunoutLimit)
    })
}

/// The form of a limit for the thickness of this axle's rotors.
pub(super) fn bound(bench: &Bench, bound: Bound) -> Node {
    let axle = bench.corner.axle();
    let known = bench.at.sheet().thickness_limit(axle, bound);
    let title = limit_name(bench.at.lang, (axle, bound));
    let name = format!("limit:{}", bound.code());
    let known = known.map(|spec| spec.value.clone());
    form(bench, &name, title, known, move |value, unit, source| {
        let spec = thickness::limit_spec((axle, bound), value, unit, source);
        spec.map(Event::ThicknessLimit)
    })
}

/// Value, unit and source, with what makes the entry of them.
fn form(
    bench: &Bench,
    name: &str,
    title: String,
    known: Option<TypedLength>,
    made: impl Fn(&str, LengthUnit, SpecSource) -> Result<Event, SpecInputError>
    + Copy
    + Send
    + Sync
    + 'static,
) -> Node {
    let (at, mode) = (&bench.at, bench.mode);
    let drafts = bench.drafts(name);
    let common = match at.fmt.system {
        System::Metric => LengthUnit::Millimetre,
        System::Us => LengthUnit::Inch,
    };
    let value = known.as_ref().map_or("", |most| most.number.as_typed());
    let value = drafts.text("value", value);
    let unit = drafts.word("unit", known.as_ref().map_or(common, |most| most.unit));
    let source = SourceFields::new(at, drafts, SpecItem::PlayLimit);
    let tried = RwSignal::new(false);
    let spec = move || made(&value.get(), unit.get(), source.source());
    let here = bench.clone();
    let keep = move || {
        tried.set(true);
        match spec() {
            Ok(spec) => here.keep(spec, drafts.dropping()),
            Err(_) => source.open.set(true),
        }
    };
    let lang = at.lang;
    let slip = move || {
        let slip = tried.get().then(spec)?.err()?;
        Some(view! { <p>{text::spec_slip(lang, slip)}</p> })
    };
    let units = PRINTED.map(|unit| (unit, unit.symbol().to_owned()));
    let thing = view! {
        {Field::decimal("value", value).show(at.say(Say::SpecValue), "", drafts, keep.clone())}
        {picks(at.say(Say::SpecUnit), units.to_vec(), unit, move |unit: LengthUnit| {
            drafts.set("unit", unit.code());
        })}
        {source.body(at, drafts, keep.clone())}
    };
    let keys = view! {
        <div class="slip" role="alert">{slip}</div>
        {key(Look::Primary, bench.face(FaceWord::KeepLimit), keep)}
        {key(Look::Plain, at.say(Say::Back), move || mode.set(Mode::Next))}
    };
    bench.frame(title, thing, keys)
}
