//! Stub.
use crate::ui::state::App;
use leptos::prelude::*;
/// Stub.
pub fn report(_app: App) -> AnyView {
    ().into_any()
}
/// Stub: takes the open job along as a file.
pub fn export(_app: App) {}
