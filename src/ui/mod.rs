//! What a person sees and touches. No formula and no limit lives here.

pub mod route;

#[cfg(target_arch = "wasm32")]
mod at;
#[cfg(target_arch = "wasm32")]
mod beside;
#[cfg(target_arch = "wasm32")]
mod files;
#[cfg(target_arch = "wasm32")]
mod late;
#[cfg(target_arch = "wasm32")]
mod parts;
#[cfg(target_arch = "wasm32")]
mod screens;
#[cfg(target_arch = "wasm32")]
mod settings;
#[cfg(target_arch = "wasm32")]
mod shelf;
#[cfg(target_arch = "wasm32")]
mod signal;
#[cfg(target_arch = "wasm32")]
mod start;
#[cfg(target_arch = "wasm32")]
mod state;
#[cfg(target_arch = "wasm32")]
mod sweep;
#[cfg(any(test, target_arch = "wasm32"))]
mod view;
#[cfg(target_arch = "wasm32")]
mod work;

#[cfg(target_arch = "wasm32")]
pub use start::start;
