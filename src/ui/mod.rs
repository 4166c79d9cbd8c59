//! What a person sees and touches. No formula and no limit lives here.

#![cfg_attr(
    not(target_arch = "wasm32"),
    allow(dead_code, reason = "the start of the page is for the browser alone"),
    allow(
        clippy::large_enum_variant,
        reason = "a phone's pointers are half as long"
    )
)]

pub mod route;

#[cfg(any(test, target_arch = "wasm32"))]
mod at;
#[cfg(any(test, target_arch = "wasm32"))]
mod beside;
#[cfg(any(test, target_arch = "wasm32"))]
mod files;
#[cfg(any(test, target_arch = "wasm32"))]
mod late;
#[cfg(any(test, target_arch = "wasm32"))]
mod parts;
#[cfg(any(test, target_arch = "wasm32"))]
mod react;
#[cfg(any(test, target_arch = "wasm32"))]
mod screens;
#[cfg(any(test, target_arch = "wasm32"))]
mod settings;
#[cfg(any(test, target_arch = "wasm32"))]
mod shelf;
#[cfg(any(test, target_arch = "wasm32"))]
mod signal;
#[cfg(target_arch = "wasm32")]
mod start;
#[cfg(any(test, target_arch = "wasm32"))]
mod state;
#[cfg(any(test, target_arch = "wasm32"))]
mod sweep;
#[cfg(any(test, target_arch = "wasm32"))]
mod view;
#[cfg(any(test, target_arch = "wasm32"))]
mod work;

#[cfg(target_arch = "wasm32")]
pub use start::start;

#[cfg(test)]
mod tests;
