//! Stub.
use crate::ui::state::App;
use leptos::prelude::*;
/// Stub.
pub fn report(_app: App) -> AnyView {
    ().into_any()
}
/// Stub.
pub fn export_all(_app: App) {}
