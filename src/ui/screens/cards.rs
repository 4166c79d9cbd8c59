//! Stub.
use leptos::prelude::*;
use crate::ui::at::At;
use crate::ui::screens::answer;
/// Stub.
pub fn card(at: &At, _item: crate::trade::fastening::CardItem) -> AnyView { answer::act(at) }
