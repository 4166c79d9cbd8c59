//! Stub.
use crate::ui::state::App;
use leptos::prelude::*;
/// Stub.
pub fn import(_app: App) -> AnyView {
    ().into_any()
}
