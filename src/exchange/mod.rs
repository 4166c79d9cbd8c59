//! Files in and out: JSON and its forms, schema, export, import, merge, verification.

pub mod backup;
mod belongs;
pub mod board;
pub mod book;
pub mod bundle;
pub mod calendar;
pub mod canonical;
pub mod checks;
pub mod confirmation;
pub mod counted;
pub mod csv;
pub mod customers;
pub mod day;
pub mod envelope;
pub mod erase;
pub mod export;
pub mod find;
pub mod gaps;
#[cfg(not(target_arch = "wasm32"))]
pub mod gather;
pub mod import;
pub mod invoices;
pub mod job_list;
pub(crate) mod json;
pub mod merge;
pub mod paper;
pub mod pieces;
pub mod reach;
pub mod rescue;
pub mod shop_lists;
pub mod stock;
pub mod summary;
pub mod sums;
#[cfg(not(target_arch = "wasm32"))]
pub mod table;
pub mod tally;
pub mod vans;
#[cfg(not(target_arch = "wasm32"))]
pub mod verify;
pub mod wire;

pub use book::export_book;
pub use canonical::canonical_digest;
pub use envelope::{LogKind, SavedText, digest, entry_digest, sha256_hex};
pub use export::{ExportError, export, export_in_pieces};
pub use import::{EntryError, ImportError, Incoming, IncomingLog, read, read_in_pieces};
pub use merge::{Merge, merge};
pub use rescue::Rescue;
