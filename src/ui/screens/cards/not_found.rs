//! "Not found" is a card too: one tap says why.

use crate::job::typed_card::not_found;
use crate::text::{self, Desk, Say};
use crate::trade::fastening::CardItem;
use crate::ui::at::StepContext;
use crate::ui::parts::key::{Look, key};
use crate::ui::screens::cards::form::CardForm;
use crate::ui::screens::cards::{Mode, keep_card};
use crate::ui::view::prelude::*;

/// The reasons, as they are printed.
const REASONS: [Desk; 3] = [Desk::NotInDocument, Desk::NoAccess, Desk::NotListed];

/// What "not found" means.
pub fn body(at: &StepContext) -> Node {
    view! {
        <h2>{at.say(Say::CardNotFound)}</h2>
        <p>{at.say(Say::NotFoundSay)}</p>
        <p>{at.say(Say::NoFigureFoundSay)}</p>
    }
}

/// One key a reason, and the way back.
pub fn keys(at: &StepContext, item: CardItem, mode: RwSignal<Mode>, form: CardForm) -> Node {
    let keys = REASONS.map(|reason| {
        let (at, reason) = (at.clone(), text::desk(at.lang, reason));
        key(Look::Plain, reason, move || {
            if let Ok(card) = not_found(item, reason) {
                keep_card(&at, form, card, false);
            }
        })
    });
    view! {
        <div class="reasons">{keys.into_iter().collect_view()}</div>
        {key(Look::Foot, text::desk(at.lang, Desk::BackToValue), move || mode.set(Mode::Fields))}
    }
}
