//! What is seen on the old part, one word of a few; nobody has to say it.

use crate::text::{self, Ledger, Say};
use crate::trade::damage::Damage;
use crate::trade::wheel_end::{PlannedStep, Step};
use crate::ui::at::StepContext;
use crate::ui::parts::picks::toggle;
use crate::ui::view::prelude::*;

/// The words, folded away until they are asked for; nothing at other steps.
pub fn old_part(at: &StepContext, planned: &PlannedStep) -> Option<Node> {
    if planned.key.step != Step::Compare {
        return None;
    }
    let (lang, seen) = (at.lang, at.seen);
    let said = move || match seen.get() {
        Some(seen) => text::damage(lang, seen),
        None => text::say(lang, Say::NotAnswered),
    };
    let keys = Damage::ALL.iter().map(|word| {
        let word = *word;
        toggle(
            text::damage(lang, word),
            move || seen.get() == Some(word),
            move || seen.update(|now| *now = (*now != Some(word)).then_some(word)),
        )
    });
    let keys = keys.collect_view();
    Some(view! {
        <details class="more old-part">
            <summary class="key key--foot">
                {text::ledger(lang, Ledger::DamageAsk)} {":\u{a0}"} <b>{said}</b>
            </summary>
            <div class="picks__keys">{keys}</div>
        </details>
    })
}
