//! The van's wrenches for a job that was packed before they were entered.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::job::entry::{Carried, What};
use crate::job::kit::same_wrenches;
use crate::job::practice::is_practice;
use crate::text::{self, Desk, Say};
use crate::ui::at::At;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::route::Route;

/// The way to the van kit, and, where the van has other wrenches than the job knows, the key that
/// takes them over.
pub fn take_wrenches(at: &At) -> AnyView {
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
            here.write(vec![What::Carried(kit.clone())]);
        }))
    };
    let kit = link(Look::Plain, at.say(Say::VanKit), Route::Settings.to_hash());
    view! { {take} {kit} }.into_any()
}
