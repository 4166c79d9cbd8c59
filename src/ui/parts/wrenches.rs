//! The van's wrenches in a job: that none is known, that one is past its check, and those that were
//! entered after the job was packed.

use crate::ui::react::spawn_local;

use crate::job::entry::{Carried, Event};
use crate::job::kit::{self, same_wrenches};
use crate::job::practice::is_practice;
use crate::job::turn::Turning;
use crate::text::{self, Customer, Desk, Say};
use crate::trade::day::day_of;
use crate::ui::at::StepContext;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::today;
use crate::ui::route::Route;
use crate::ui::view::prelude::*;

/// The key that takes over the van's wrenches, where they are others than the job knows; else the
/// way to the van kit.
pub fn take_wrenches(at: &StepContext) -> Node {
    let van = RwSignal::new(None::<Carried>);
    let (app, here) = (at.app, at.clone());
    spawn_local(async move {
        let kit = app.kit_for_job().await;
        let known = here.sheet().carried();
        let other = known.is_none_or(|known| !same_wrenches(known, &kit));
        if other && !kit.wrenches.is_empty() && !is_practice(here.sheet()) {
            let _ = van.try_set(Some(kit));
        }
    });
    let here = at.clone();
    let take = move || {
        let kit = van.get()?;
        let here = here.clone();
        let label = text::desk(here.lang, Desk::TakeWrenches);
        Some(key(Look::Plain, label, move || {
            here.write(vec![Event::Carried(kit.clone())]);
        }))
    };
    let kit = text::say(at.lang, Say::VanKit);
    let kit = move || {
        let none = van.with(Option::is_none);
        none.then(|| link(Look::Plain, kit, Route::Settings.to_hash()))
    };
    view! { {take} {kit} }
}

/// That the wrench in the hand is past its check.
pub fn overdue(at: &StepContext, turning: &Turning) -> Option<Node> {
    let wrench = turning.wrench().filter(|_| turning.uses_wrench())?;
    let due = kit::overdue(at.sheet(), &wrench.name, day_of(&today())?)?;
    let due = text::check_due(at.lang, due);
    let line = text::customer(at.lang, Customer::WrenchOverdue(&due));
    Some(view! { <p class="turn__overdue" role="alert">{line}</p> })
}

/// Whether nobody has entered a wrench.
pub fn has_no_wrench(at: &StepContext) -> bool {
    at.sheet()
        .carried()
        .is_none_or(|kit| kit.wrenches.is_empty())
}
