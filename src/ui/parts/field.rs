//! A field with its label: text in, raw as typed; Enter keeps the spec it stands on.

use web_sys::KeyboardEvent;

use crate::platform::{clock, page};
use crate::ui::parts::draft::Drafts;
use crate::ui::view::prelude::*;

/// Which keyboard a phone offers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Board {
    /// Words of a sentence.
    Words,
    /// Letters and digits in capitals.
    Capitals,
    /// Digits with a decimal mark.
    Decimal,
}

impl Board {
    const fn input_mode(self) -> &'static str {
        match self {
            Self::Words | Self::Capitals => "text",
            Self::Decimal => "decimal",
        }
    }

    const fn capitals(self) -> &'static str {
        match self {
            Self::Words => "sentences",
            Self::Capitals => "characters",
            Self::Decimal => "off",
        }
    }
}

/// A field: its name is its id, and its draft's name.
#[derive(Clone, Copy)]
pub struct Field {
    /// The name.
    pub name: &'static str,
    /// The text as typed.
    pub text: RwSignal<String>,
    /// The keyboard.
    pub board: Board,
}

impl Field {
    /// A field of words.
    pub const fn words(name: &'static str, text: RwSignal<String>) -> Self {
        let board = Board::Words;
        Self { name, text, board }
    }

    /// A field of letters and digits in capitals.
    pub const fn capitals(name: &'static str, text: RwSignal<String>) -> Self {
        let board = Board::Capitals;
        Self { name, text, board }
    }

    /// A field of a number.
    pub const fn decimal(name: &'static str, text: RwSignal<String>) -> Self {
        let board = Board::Decimal;
        Self { name, text, board }
    }

    /// The field on the screen; `list` names the datalist that offers words, empty for none.
    pub fn show(
        self,
        label: impl Into<String>,
        list: &'static str,
        drafts: Drafts,
        enter: impl Fn() + 'static,
    ) -> Node {
        let label: String = label.into();
        let Self { name, text, board } = self;
        let typed = move |event| {
            let now = event_target_value(&event);
            drafts.set(name, &now);
            text.set(now);
        };
        let on_enter = move |event: KeyboardEvent| {
            if event.key() == "Enter" && !event.is_composing() {
                event.prevent_default();
                enter();
            }
        };
        view! {
            <label class="field">
                <span>{label}</span>
                <input
                    id=name
                    type="text"
                    inputmode={board.input_mode()}
                    autocapitalize={board.capitals()}
                    autocomplete="off"
                    spellcheck="false"
                    enterkeyhint="done"
                    list={(!list.is_empty()).then_some(list)}
                    prop:value={move || text.get()}
                    on:input=typed
                    on:keydown=on_enter
                />
            </label>
        }
    }
}

/// Puts the cursor into a field once the screen stands.
pub fn focus(name: &'static str) {
    clock::later(0, move || {
        page::focus(name);
    });
}
