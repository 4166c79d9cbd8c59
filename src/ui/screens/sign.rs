//! Stub.
use crate::ui::at::At;
use crate::ui::screens::answer;
use leptos::prelude::*;
/// Stub.
pub fn sign(at: &At) -> AnyView {
    answer::act(at)
}
