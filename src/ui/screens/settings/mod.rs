//! The settings: how numbers read, who holds the phone, what is in the van, where data lives.

pub(super) mod choices;
mod more;
mod stock;
mod storage;
pub(super) mod van;

use crate::text::{self, Desk, Ledger, Say};
use crate::ui::parts::key::{Look, link};
use crate::ui::parts::strip::banners;
use crate::ui::route::Route;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// The settings of this phone: a section each, what is used most first and open.
pub fn settings(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let van = van::read(app);
    let (say, desk) = (|say| text::say(lang, say), |desk| text::desk(lang, desk));
    view! {
        <main class="desk settings">
            <header class="desk__head">
                <h1>{say(Say::SettingsTitle)}</h1>
                {link(Look::Foot, say(Say::Back), Route::Home.to_hash())}
            </header>
            {banners(app)}
            {section(say(Say::Wrenches), true, van::torque_wrenches(van))}
            {section(say(Say::ScreenPart), false, choices::screen(app))}
            {section(say(Say::DialTitle), false, van::dials(van))}
            {section(desk(Desk::StandsPart), false, more::stands_and_angle(van))}
            {section(say(Say::NamePart), false, choices::names(app))}
            {section(say(Say::PricePart), false, choices::prices(app))}
            {section(text::ledger(lang, Ledger::StockTitle), false, stock::stock(app))}
            {section(desk(Desk::Storage), false, storage::storage(app))}
        </main>
    }
}

/// A section under its title, which opens and closes it.
fn section(title: &'static str, open: bool, body: Node) -> Node {
    view! {
        <details class="more settings__part" open=open>
            <summary class="key key--foot"><h2>{title}</h2></summary>
            <div class="van">{body}</div>
        </details>
    }
}
