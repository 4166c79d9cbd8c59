//! What lies below the lower edge of a step: until its end has been on the screen no key answers.

use crate::ui::react::html::Span;

use crate::platform::edge::{Edge, page_down};
use crate::text::{self, Lang};
use crate::ui::view::prelude::*;

/// Whether the end of what a step says has been on the screen.
#[derive(Clone, Copy, PartialEq, Eq)]
enum End {
    /// The browser has not said yet.
    Unknown,
    /// It lies below the lower edge.
    Below,
    /// It has been on the screen.
    Seen,
}

/// The end of what a step says, as far as it was seen.
#[derive(Clone, Copy)]
pub struct Below {
    state: RwSignal<End>,
    asks: Signal<bool>,
}

impl Below {
    /// Where `asks` says so, the keys wait for the end to be seen.
    pub fn new(asks: Signal<bool>) -> Self {
        let state = RwSignal::new(End::Unknown);
        Self { state, asks }
    }

    /// Whether something has not been on the screen yet.
    pub fn is_open(self) -> bool {
        self.asks.get() && self.state.get() != End::Seen
    }

    /// The end itself, to stand behind everything that is to be seen.
    pub fn end(self) -> Node {
        self.end_then(|| {})
    }

    /// The same; `then` is called when an end that lay below has come on the screen.
    pub fn end_then(self, then: impl Fn() + 'static) -> Node {
        let (end, state) = (NodeRef::<Span>::new(), self.state);
        let edge = StoredValue::new_local(None);
        end.on_load(move |it| {
            let watched = Edge::watch(&it, move |seen| {
                let before = state.try_update(|state| {
                    let before = *state;
                    if before != End::Seen {
                        *state = if seen { End::Seen } else { End::Below };
                    }
                    before
                });
                if seen && before == Some(End::Below) {
                    then();
                }
            });
            if watched.is_none() {
                state.try_set(End::Seen);
            }
            let _ = edge.try_set_value(watched);
        });
        view! { <span class="step__end" node_ref=end></span> }
    }

    /// The key that brings on the screen what lies below.
    pub fn key(self, lang: Lang, hidden: impl Fn() -> bool + Send + 'static) -> Node {
        let shut = move || hidden() || !self.asks.get() || self.state.get() != End::Below;
        view! {
            <button type="button" class="key step__more" hidden=shut on:click={|_| page_down()}>
                {text::more_below(lang)}
            </button>
        }
    }
}
