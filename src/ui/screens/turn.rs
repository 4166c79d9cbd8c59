//! Stub.
use crate::ui::at::At;
use crate::ui::screens::answer;
use leptos::prelude::*;
/// Stub.
pub fn turn(at: &At, _group: crate::trade::wheel_end::Group) -> AnyView {
    answer::act(at)
}
