//! Stub.
use crate::trade::wheel_end::StepKey;
use crate::ui::at::At;
use crate::ui::screens::answer;
use crate::ui::state::{App, Open};
use leptos::prelude::*;
use std::sync::Arc;
/// Stub.
pub fn retorque(at: &At) -> AnyView {
    answer::act(at)
}
/// Stub.
pub fn report(at: &At) -> AnyView {
    answer::act(at)
}
/// Stub.
pub fn end(at: &At) -> AnyView {
    answer::act(at)
}
/// The end, asked for from a step where the procedure does not have it yet.
pub fn end_from_anywhere(app: App, _open: Arc<Open>, _key: StepKey) -> AnyView {
    crate::ui::screens::wherever::wherever(app)
}
