//! The way from the step at which the removed part is in hand to reading it; nobody has to.

use crate::text;
use crate::trade::wheel_end::{PlannedStep, Step};
use crate::ui::at::StepContext;
use crate::ui::parts::key::{Look, link};
use crate::ui::route::Route;
use crate::ui::view::prelude::*;

/// The way, where new and old lie next to each other; nothing at other steps.
pub fn removed_way(at: &StepContext, planned: &PlannedStep) -> Option<Node> {
    let corner = planned
        .key
        .corner
        .filter(|_| planned.key.step == Step::Compare)?;
    let label = text::read_part_at(at.lang, text::corner(at.lang, corner));
    let hash = Route::Removed(at.open.log.0.clone(), corner).to_hash();
    Some(view! { <p class="removed-way">{link(Look::Foot, label, hash)}</p> })
}
