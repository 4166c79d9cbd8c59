//! The first start: who works here, for which shop, and with which torque wrenches.

use crate::text::{self, Desk, Say};
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::strip::banners;
use crate::ui::screens::home::{offline, try_practice};
use crate::ui::screens::settings::choices::{Typed, change, typed};
use crate::ui::screens::settings::van::own_wrenches;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// The questions, asked once; they can be put off, and then no wrench is known.
pub fn first(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let desk = |desk| text::desk(lang, desk);
    let (wrenches, add) = own_wrenches(app);
    let done = move || change(app, |settings| settings.introduced = true);
    // What is half typed in the form is a wrench, or says why it is none.
    let start = move || {
        if add() {
            done();
        }
    };
    let nameless = move || app.settings.with(|settings| settings.by.is_empty());
    view! {
        <main class="desk settings">
            <h1>{desk(Desk::FirstTitle)}</h1>
            {banners(app)}
            {offline(app, lang)}
            <p>{text::say(lang, Say::AppSay)}</p>
            {try_practice(app, lang)}
            <p>{desk(Desk::FirstSay)}</p>
            {typed(app, Typed::Name, text::say(lang, Say::SettingsName).to_owned(), String::new())}
            {typed(app, Typed::Shop, desk(Desk::ShopName).to_owned(), String::new())}
            <h2>{text::say(lang, Say::Wrenches)}</h2>
            <p class="hint">{desk(Desk::FirstWrenches)}</p>
            {wrenches}
            <button
                type="button"
                class="key key--primary"
                prop:disabled=nameless
                on:click={move |_| start()}
            >
                {desk(Desk::FirstStart)}
            </button>
            {key(Look::Foot, desk(Desk::FirstLater), done)}
        </main>
    }
}
