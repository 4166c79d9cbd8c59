//! Stub.
use crate::ui::at::At;
use crate::ui::screens::answer;
use leptos::prelude::*;
/// Stub.
pub fn decide(at: &At, _nth: u8) -> AnyView {
    answer::act(at)
}
/// Stub.
pub fn result(at: &At) -> AnyView {
    answer::act(at)
}
