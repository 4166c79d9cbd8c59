//! The kit: what is missing is tapped, and one key says that the rest is on board.

use crate::ui::react::spawn_local;

use crate::job::entry::{Carried, Event, KitItem, Reply};
use crate::job::ready::missing;
use crate::job::wheel_end;
use crate::text::{self, Desk, Lang};
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::frame::frame;
use crate::ui::parts::key::{Look, key};
use crate::ui::screens::pack::keep;
use crate::ui::view::prelude::*;

/// The list; one key says that the rest is on board.
pub fn kit(at: &StepContext) -> Node {
    let lacks = RwSignal::new(missing(at.sheet()).to_vec());
    let carried = van_kit(at);
    let (here, drafts, lang) = (at.clone(), Drafts::of(at), at.lang);
    let keep_it = move || {
        let mut whats = vec![Event::Missing(lacks.get_untracked())];
        whats.extend(carried.get_value().map(Event::Carried));
        whats.push(Event::Answered(here.planned.key, Reply::Done));
        keep(&here, drafts, whats, || {});
    };
    let kit = wheel_end(at.sheet()).kit();
    let rows = kit.map(|item| row(lang, lacks, item));
    let rows = rows.collect_view();
    frame(
        at,
        view! {
            <ul class="kit">{rows}</ul>
            <p class="hint">{text::desk(lang, Desk::KitCarried)}</p>
        },
        key(Look::Primary, at.text().primary, keep_it),
    )
}

/// The instruments of the van; read within the moment in which keys are held.
fn van_kit(at: &StepContext) -> StoredValue<Option<Carried>> {
    let (app, carried) = (at.app, StoredValue::new(None));
    spawn_local(async move {
        // Counting goes through every job: the kit itself must not wait for it.
        let kit = app.van_kit().await;
        let _ = carried.try_set_value(Some(kit));
        let counted = app.kit_for_job().await;
        let _ = carried.try_set_value(Some(counted));
    });
    carried
}

fn row(lang: Lang, lacks: RwSignal<Vec<KitItem>>, item: KitItem) -> Node {
    let lacking = move || lacks.with(|all| all.contains(&item));
    let turn = move |_| {
        lacks.update(|all| {
            if all.contains(&item) {
                all.retain(|one| *one != item);
            } else {
                all.push(item);
            }
        });
    };
    // What was not tapped is on board only once the key says so.
    let word = move || {
        if lacking() {
            text::desk(lang, Desk::Missing)
        } else {
            "–"
        }
    };
    view! {
        <li>
            <button
                type="button"
                class="kit__row"
                aria-pressed={move || if lacking() { "true" } else { "false" }}
                on:click=turn
            >
                <span>{text::kit_item(lang, item)}</span>
                <b>{word}</b>
            </button>
        </li>
    }
}
