//! Stub.
use crate::ui::state::App;
use leptos::prelude::*;
/// Stub.
pub fn report(_app: App) -> AnyView {
    ().into_any()
}
