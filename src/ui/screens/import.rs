//! Opening files of other phones: each file says what became of it, and a bad one changes nothing.

use crate::text::{self, Say};
use crate::ui::parts::intake::intake;
use crate::ui::parts::key::{Look, link};
use crate::ui::parts::strip::banners;
use crate::ui::route::Route;
use crate::ui::screens::paper::from_paper;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// The screen that opens files.
pub fn import(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    view! {
        <main class="desk import">
            <h1>{text::say(lang, Say::Import)}</h1>
            {banners(app)}
            {intake(app, text::say(lang, Say::Import))}
            {from_paper(app)}
            {link(Look::Plain, text::say(lang, Say::Back), Route::Home.to_hash())}
        </main>
    }
}
