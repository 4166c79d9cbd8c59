//! Stub.
use crate::ui::at::At;
use crate::ui::screens::answer;
use leptos::prelude::*;
/// Stub.
pub fn booking(at: &At) -> AnyView {
    answer::act(at)
}
/// Stub.
pub fn vehicle(at: &At) -> AnyView {
    answer::act(at)
}
/// Stub.
pub fn corners(at: &At) -> AnyView {
    answer::act(at)
}
/// Stub.
pub fn price(at: &At) -> AnyView {
    answer::act(at)
}
/// Stub.
pub fn kit(at: &At) -> AnyView {
    answer::act(at)
}
/// Stub.
pub fn ready(at: &At) -> AnyView {
    answer::act(at)
}
