//! "Not found" is a spec too: one tap says why.

use crate::job::typed_spec::not_found;
use crate::text::{self, Desk, Say};
use crate::trade::fastening::SpecItem;
use crate::ui::at::StepContext;
use crate::ui::parts::key::{Look, key};
use crate::ui::screens::specs::form::SpecForm;
use crate::ui::screens::specs::{Mode, save_spec};
use crate::ui::view::prelude::*;

/// The reasons, as they are printed.
const REASONS: [Desk; 3] = [Desk::NotInDocument, Desk::NoAccess, Desk::NotListed];

/// What "not found" means.
pub fn body(at: &StepContext) -> Node {
    view! {
        <h2>{at.say(Say::SpecNotFound)}</h2>
        <p>{at.say(Say::NotFoundSay)}</p>
        <p>{at.say(Say::NoFigureFoundSay)}</p>
    }
}

/// One key a reason, and the way back.
pub fn keys(at: &StepContext, item: SpecItem, mode: RwSignal<Mode>, form: SpecForm) -> Node {
    let keys = REASONS.map(|reason| {
        let (at, reason) = (at.clone(), text::desk(at.lang, reason));
        key(Look::Plain, reason, move || {
            if let Ok(spec) = not_found(item, reason) {
                save_spec(&at, form, spec, false);
            }
        })
    });
    view! {
        <div class="reasons">{keys.into_iter().collect_view()}</div>
        {key(Look::Foot, text::desk(at.lang, Desk::BackToValue), move || mode.set(Mode::Fields))}
    }
}
