//! Views as values: what a screen shows is a [`Node`], and one function puts it into the page.
//!
//! `view!` splits markup in two. Its *plan* is a text that the compiler has made: elements, fixed
//! attributes, and holes. What stands in the holes are the values, in the order in which they are
//! written. So a screen's code makes one list of values, whatever it shows, and all that knows the
//! page is compiled once ([`shown`]).
//!
//! A closure in a hole is live: it runs again when a signal that it read changes, and what it gives
//! is patched over what it gave before. Where plan and plan are the same, elements stay (with their
//! focus, their caret and how far they are scrolled) and only values change; else the new view
//! takes the old one's place. A closure within a view that is patched begins again.
//!
//! Listeners belong to the view: they run under its owner, a patch puts another handler in the same
//! listener, and when the view goes they are silent.

pub mod plan;

#[cfg(any(test, target_arch = "wasm32"))]
mod attach;
#[cfg(any(test, target_arch = "wasm32"))]
mod markup;
#[cfg(any(test, target_arch = "wasm32"))]
mod node;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod on;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod shown;
#[cfg(any(test, target_arch = "wasm32"))]
mod value;

/// The page that views stand in: the browser's own, natively a tree of the same elements.
#[cfg(target_arch = "wasm32")]
mod page {
    pub use leptos::prelude::document;
    pub use web_sys::{Element, Node, Text};
}
#[cfg(all(test, not(target_arch = "wasm32")))]
#[path = "tree.rs"]
pub mod page;

#[cfg(any(test, target_arch = "wasm32"))]
pub(crate) use markup::{plan_of, slot_of, view};
#[cfg(any(test, target_arch = "wasm32"))]
pub use node::{CollectView, IntoNode, Node, View};

/// What screens import: Leptos' signals, effects and context, with views as values.
#[cfg(any(test, target_arch = "wasm32"))]
pub mod prelude {
    pub(crate) use super::view;
    pub use super::{CollectView, IntoNode, Node};
    pub use crate::ui::react::{
        Effect, Get, GetUntracked, GetValue, LocalStorage, Memo, NodeRef, Set, SetValue, Signal,
        StoredValue, UpdateValue, With, WithUntracked, WithValue, event_target_value, on_cleanup,
        untrack,
    };
    pub use crate::ui::signal::RwSignal;
}
