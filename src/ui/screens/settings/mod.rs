//! The settings: how numbers read, who holds the phone, what is in the van, where data lives.

pub(super) mod choices;
mod more;
mod stock;
mod storage;
pub(super) mod van;

use crate::text::{self, Say};
use crate::ui::parts::key::{Look, link};
use crate::ui::parts::strip::banners;
use crate::ui::route::Route;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// The settings of this phone.
pub fn settings(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    view! {
        <main class="desk settings">
            <header class="desk__head">
                <h1>{text::say(lang, Say::SettingsTitle)}</h1>
                {link(Look::Foot, text::say(lang, Say::Back), Route::Home.to_hash())}
            </header>
            {banners(app)}
            {choices::choices(app)}
            {van::van(app)}
            {stock::stock(app)}
            {storage::storage(app)}
        </main>
    }
}
