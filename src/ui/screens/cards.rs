//! Stub.
use crate::ui::at::At;
use crate::ui::screens::answer;
use leptos::prelude::*;
/// Stub.
pub fn card(at: &At, _item: crate::trade::fastening::CardItem) -> AnyView {
    answer::act(at)
}
