//! The part of the program that no first screen needs: it is loaded right after that, in one piece.
//!
//! What only [`screen`] reaches stands in a file of its own, which the build takes out of the
//! program (`bin/dev/host/split.rs`).

use std::pin::pin;
use std::task::{Context, Poll, Waker};

use crate::text::{self, Say};
use crate::ui::parts::key::{Look, key, link};
use crate::ui::react::spawn_local;
use crate::ui::route::Route;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

#[cfg(target_arch = "wasm32")]
mod part {
    use wasm_split_helpers::{SplitLoaderError, wasm_split};

    use super::{App, Node, Route};
    use crate::ui::screens;

    /// The screens of the second part.
    #[wasm_split(late, fallible, preload(fetch))]
    pub fn screen(app: App, route: Route) -> Result<Node, SplitLoaderError> {
        Ok(screens::late(app, &route))
    }
}

/// On a computer the program is in one piece.
#[cfg(not(target_arch = "wasm32"))]
mod part {
    use super::{App, Node, Route};
    use crate::ui::screens;

    pub async fn fetch() -> Result<(), ()> {
        Ok(())
    }

    pub async fn screen(app: App, route: Route) -> Result<Node, ()> {
        Ok(screens::late(app, &route))
    }
}

/// How far the second part of the program is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Late {
    /// On its way.
    Coming,
    /// It can be shown.
    Here,
    /// It could not be loaded.
    NotLoaded,
}

impl Late {
    /// At the start of the page.
    pub const START: Self = if cfg!(target_arch = "wasm32") {
        Self::Coming
    } else {
        Self::Here
    };
}

/// Loads the second part, and says how that went.
pub async fn load(app: App) {
    app.late.set(match part::fetch().await {
        Ok(()) => Late::Here,
        Err(_) => Late::NotLoaded,
    });
}

/// What belongs to a route of the second part, or how far that part is.
pub fn shown(app: App, route: Route) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    match app.late.get() {
        Late::Here => {
            // It is loaded: the first look finds it.
            let looked =
                pin!(part::screen(app, route)).poll(&mut Context::from_waker(Waker::noop()));
            match looked {
                Poll::Ready(Ok(node)) => node,
                _ => Node::default(),
            }
        }
        Late::Coming => view! {
            <main class="desk loading">
                <p>{text::say(lang, Say::Loading)}</p>
                <progress></progress>
            </main>
        },
        Late::NotLoaded => view! {
            <main class="desk">
                <p role="alert">{text::say(lang, Say::LateNotLoaded)}</p>
                {key(Look::Primary, text::say(lang, Say::TryAgain), move || {
                    app.late.set(Late::Coming);
                    spawn_local(load(app));
                })}
                {link(Look::Foot, text::say(lang, Say::ShopSheet), Route::Home.to_hash())}
            </main>
        },
    }
}
