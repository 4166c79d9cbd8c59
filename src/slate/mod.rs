//! The one place that appends: stamps, encodes, stores, folds.

mod bytes;
mod compose;
mod keep;
mod orphans;

pub use bytes::{Bytes, keep_bytes};
pub use compose::{Pen, compose, digest_of, is_one_tap, log_id, sealed, undo};
pub use keep::{Kept, NotKept, Read, Store, keep, read, records};
pub use orphans::orphans;
