//! The keys: large, outlined or black, pressed on release.

use crate::ui::view::prelude::*;

/// How a key looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Look {
    /// Black: the one thing that comes next.
    Primary,
    /// Outlined: another way.
    Plain,
    /// Small, at the foot of a screen.
    Foot,
}

impl Look {
    const fn class(self) -> &'static str {
        match self {
            Self::Primary => "key key--primary",
            Self::Plain => "key",
            Self::Foot => "key key--foot",
        }
    }
}

/// A key with a label that says what it does.
pub fn key(look: Look, label: impl Into<String>, press: impl Fn() + 'static) -> Node {
    let label: String = label.into();
    view! {
        <button type="button" class={look.class()} on:click={move |_| press()}>
            {label}
        </button>
    }
}

/// A key that goes to a place.
pub fn link(look: Look, label: impl Into<String>, hash: String) -> Node {
    let label: String = label.into();
    view! { <a class={look.class()} href=hash>{label}</a> }
}
