//! The maker's limit of run-out, typed with its source.

use leptos::prelude::*;

use crate::job::entry::What;
use crate::job::runout::{Run, limit_card};
use crate::text::{self, FaceWord, Say};
use crate::trade::fastening::CardItem;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picks::picks;
use crate::ui::screens::cards::SourceFields;
use crate::ui::screens::runout::{Bench, Mode};
use crate::units::{LengthUnit, System, Unit};

/// Units in which a limit is printed.
const PRINTED: [LengthUnit; 3] = [LengthUnit::Millimetre, LengthUnit::Inch, LengthUnit::Thou];

/// The form of the limit for what this run is of.
pub(super) fn limit(bench: &Bench, run: &Run) -> AnyView {
    let (at, mode) = (&bench.at, bench.mode);
    let surface = run.setup.surface;
    let name = format!("{}:runout-limit:{}", at.open.log.0, surface.code());
    let drafts = Drafts::named(at.app, name);
    let known = at.sheet().runout_limit(surface);
    let common = match at.fmt.system {
        System::Metric => LengthUnit::Millimetre,
        System::Us => LengthUnit::Inch,
    };
    let value = known.map_or("", |card| card.most.number.as_typed());
    let value = drafts.text("value", value);
    let unit = drafts.word("unit", known.map_or(common, |card| card.most.unit));
    let source = SourceFields::new(at, drafts, CardItem::PlayLimit);
    let tried = RwSignal::new(false);
    let card = move || limit_card(surface, &value.get(), unit.get(), source.source());
    let app = at.app;
    let keep = move || {
        tried.set(true);
        match card() {
            Ok(card) => {
                let drop = drafts.dropping();
                app.append_then(vec![What::RunoutLimit(card)], move || {
                    drop();
                    mode.try_set(Mode::Next);
                });
            }
            Err(_) => source.open.set(true),
        }
    };
    let lang = at.lang;
    let slip = move || {
        let slip = tried.get().then(card)?.err()?;
        Some(view! { <p>{text::card_slip(lang, slip)}</p> })
    };
    let units = PRINTED.map(|unit| (unit, unit.symbol().to_owned()));
    let title = format!(
        "{}: {}",
        bench.face(FaceWord::LimitTitle),
        text::surface(lang, surface)
    );
    let thing = view! {
        {Field::decimal("value", value).show(at.say(Say::CardValue), "", drafts, keep)}
        {picks(at.say(Say::CardUnit), units.to_vec(), unit, move |unit: LengthUnit| {
            drafts.set("unit", unit.code());
        })}
        {source.body(at, drafts, keep)}
    };
    let keys = view! {
        <div class="slip" role="alert">{slip}</div>
        {key(Look::Primary, bench.face(FaceWord::KeepLimit), keep)}
        {key(Look::Plain, at.say(Say::Back), move || mode.set(Mode::Next))}
    };
    bench.frame(title, thing, keys)
}
