//! The loose list: everything that is off or loosened, in words a second technician understands.

use leptos::prelude::*;

use crate::text::{self, Say};
use crate::ui::parts::key::{Look, link};
use crate::ui::parts::strip::banners;
use crate::ui::route::Route;
use crate::ui::state::App;

/// The loose list of the open job.
pub fn loose(app: App) -> AnyView {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    (move || {
        let Some(open) = app.open.get() else {
            return ().into_any();
        };
        let loose = open.sheet.loose();
        let rows = loose.iter().map(|(item, hold)| {
            view! {
                <li>
                    <b>{text::item_at(lang, *item)}</b>
                    <span>{text::hold_state(lang, *hold)}</span>
                </li>
            }
        });
        let rows = rows.collect_view();
        let none = loose.is_empty();
        view! {
            <main class="desk loose">
                <h1>{text::say(lang, Say::LooseTitle)}</h1>
                {banners(app)}
                <p>{text::say(lang, if none { Say::NothingLoose } else { Say::LooseSay })}</p>
                <ol class="loose__list">{rows}</ol>
                {(!none).then(|| view! { <p>{text::say(lang, Say::LooseBlocks)}</p> })}
                {link(
                    Look::Primary,
                    text::say(lang, Say::Resume),
                    Route::Job(open.log.0.clone()).to_hash(),
                )}
            </main>
        }
        .into_any()
    })
    .into_any()
}
