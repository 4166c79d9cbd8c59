//! Files in and out: the only serde types, schema, export, import, merge.

pub mod envelope;
pub mod export;
pub mod import;
pub mod merge;
pub mod reach;
pub mod summary;
pub mod wire;
pub mod yard;

pub use envelope::{KeptText, LogKind, digest, entry_digest, sha256_hex};
pub use export::{ExportError, export};
pub use import::{EntryFault, ImportError, Incoming, IncomingLog, read};
pub use merge::{Merge, merge};
