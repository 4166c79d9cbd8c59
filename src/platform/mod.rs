//! The only door to the browser: storage, photos, files, clock, wake lock, tone, updates.
//!
//! It keeps strings and bytes and knows no entry, no language and no rule of the trade.
//! What needs no browser is compiled everywhere and tested natively; the rest is for wasm only.

pub mod cut;
pub mod fit;
pub mod keys;
#[cfg(target_arch = "wasm32")]
pub mod media;
pub mod memory;
pub mod record;
pub mod room;
pub mod spoken;
pub mod stamp;

#[cfg(target_arch = "wasm32")]
pub mod backup;
#[cfg(target_arch = "wasm32")]
pub mod barcode;
#[cfg(target_arch = "wasm32")]
pub mod chance;
#[cfg(target_arch = "wasm32")]
pub mod clock;
#[cfg(target_arch = "wasm32")]
pub mod crash_panel;
#[cfg(target_arch = "wasm32")]
pub mod edge;
#[cfg(target_arch = "wasm32")]
pub mod event;
#[cfg(target_arch = "wasm32")]
pub mod files;
#[cfg(target_arch = "wasm32")]
pub mod journal;
#[cfg(target_arch = "wasm32")]
mod js;
#[cfg(target_arch = "wasm32")]
pub mod keep;
#[cfg(target_arch = "wasm32")]
pub mod level;
#[cfg(target_arch = "wasm32")]
pub mod local;
#[cfg(target_arch = "wasm32")]
pub mod locale;
#[cfg(target_arch = "wasm32")]
pub mod lock;
#[cfg(target_arch = "wasm32")]
pub mod page;
#[cfg(target_arch = "wasm32")]
pub mod photo;
#[cfg(target_arch = "wasm32")]
pub mod tabs;
#[cfg(target_arch = "wasm32")]
pub mod tone;
#[cfg(target_arch = "wasm32")]
mod transaction;
#[cfg(target_arch = "wasm32")]
pub mod update;
#[cfg(target_arch = "wasm32")]
pub mod voice;
#[cfg(target_arch = "wasm32")]
pub mod wake_lock;
#[cfg(target_arch = "wasm32")]
pub mod whole;
