//! The only door to the browser: storage, photos, files, clock, wake lock, tone, updates.
//!
//! It keeps strings and bytes and knows no entry, no language and no rule of the trade.
//! What needs no browser is compiled everywhere and tested natively; the rest is for wasm only.

#![cfg_attr(
    not(target_arch = "wasm32"),
    allow(dead_code, reason = "the tests of views use a part of the browser")
)]

pub mod cut;
pub mod fit;
pub mod keys;
pub mod memory;
pub mod record;
pub mod room;
pub mod spoken;
pub mod stamp;

#[cfg(any(test, target_arch = "wasm32"))]
pub mod backup;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod barcode;
#[cfg(target_arch = "wasm32")]
pub mod chance;
#[cfg(all(test, not(target_arch = "wasm32")))]
#[path = "still/chance.rs"]
pub mod chance;
#[cfg(target_arch = "wasm32")]
pub mod clock;
#[cfg(all(test, not(target_arch = "wasm32")))]
#[path = "still/clock.rs"]
pub mod clock;
#[cfg(target_arch = "wasm32")]
pub mod crash_panel;
#[cfg(target_arch = "wasm32")]
pub mod edge;
#[cfg(all(test, not(target_arch = "wasm32")))]
#[path = "still/edge.rs"]
pub mod edge;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod event;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod files;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod journal;
#[cfg(any(test, target_arch = "wasm32"))]
mod js;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod keep;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod level;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod local;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod locale;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod lock;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod media;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod page;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod photo;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod tabs;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod tone;
#[cfg(any(test, target_arch = "wasm32"))]
mod transaction;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod update;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod voice;
#[cfg(any(test, target_arch = "wasm32"))]
pub mod wake_lock;
#[cfg(target_arch = "wasm32")]
pub mod whole;
