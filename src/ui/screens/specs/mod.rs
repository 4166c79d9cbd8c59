//! A spec spec: offered from the spec library, typed from its page, or "not found".

mod form;
mod further;
mod not_found;
mod offer;
mod play;
mod source;
mod torque;

use crate::ui::react::spawn_local;

use crate::job::book;
use crate::job::entry::Event;
use crate::trade::fastening::{Spec, SpecItem};
use crate::ui::at::StepContext;
use crate::ui::parts::frame::frame;
use crate::ui::screens::pack::keep;
use crate::ui::screens::specs::form::SpecForm;
use crate::ui::view::prelude::*;

pub use offer::{aged, looked_up_today};
pub use source::SourceFields;

/// What the screen of a spec shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Mode {
    /// The book is being read, which takes a moment.
    Reading,
    /// A spec of the book, to be confirmed.
    Offer,
    /// The fields.
    Fields,
    /// Why it was not found.
    NotFound,
}

/// The spec of a fastener or of the play limit.
pub fn spec(at: &StepContext, item: SpecItem) -> Node {
    let mode = RwSignal::new(Mode::Reading);
    let offered = RwSignal::new(Vec::<Spec>::new());
    let form = SpecForm::new(at, item);
    let trouble = RwSignal::new(None);
    // What is only confirmed must have been on the screen whole.
    let at = &at.looked_at_while(Signal::derive(move || mode.get() == Mode::Offer));
    look_up(at, item, offered, mode);
    Effect::new(move |_| {
        if mode.get() == Mode::Fields {
            form.focus();
        }
    });
    let (for_body, for_keys) = (at.clone(), at.clone());
    let body = move || match mode.get() {
        Mode::Reading => ().into_node(),
        Mode::Offer => offer::body(&for_body, offered),
        Mode::Fields => form.body(&for_body, trouble),
        Mode::NotFound => not_found::body(&for_body),
    };
    let keys = move || match mode.get() {
        Mode::Reading => ().into_node(),
        Mode::Offer => offer::keys(&for_keys, offered, mode, form),
        Mode::Fields => form.keys(&for_keys, mode),
        Mode::NotFound => not_found::keys(&for_keys, item, mode, form),
    };
    frame(at, body, keys)
}

/// Looks into the book of the family, unless this job has the spec already or it is half typed.
fn look_up(at: &StepContext, item: SpecItem, offered: RwSignal<Vec<Spec>>, mode: RwSignal<Mode>) {
    let log = book::log_of_job(at.sheet());
    let known = at.sheet().spec(item).is_some();
    let (Some(log), false) = (log, known) else {
        mode.set(Mode::Fields);
        return;
    };
    let app = at.app;
    spawn_local(async move {
        let sheet = app.read_log(&log.0).await;
        let specs = book::offers(&sheet, item);
        let next = if specs.is_empty() {
            Mode::Fields
        } else {
            Mode::Offer
        };
        let _ = offered.try_set(specs);
        let _ = mode.try_set(next);
    });
}

/// Keeps a spec in the job and, if it was looked up for this job, in the book of its family.
fn save_spec(at: &StepContext, form: SpecForm, spec: Spec, looked_up: bool) {
    let (app, log) = (at.app, book::log_of_job(at.sheet()));
    let additions = book::additions(at.sheet(), &spec);
    let into_book = move || {
        let Some(log) = log.filter(|_| looked_up && !additions.is_empty()) else {
            return;
        };
        spawn_local(async move {
            app.append_to(log, additions).await;
        });
    };
    keep(at, form.drafts, vec![Event::Spec(spec)], into_book);
}
