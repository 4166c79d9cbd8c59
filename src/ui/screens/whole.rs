//! Stub.
use leptos::prelude::*;
use crate::ui::state::App;
/// Stub.
pub fn report(_app: App) -> AnyView { ().into_any() }
