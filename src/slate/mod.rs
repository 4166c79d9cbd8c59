//! The one place that appends: stamps, encodes, stores, folds.

mod bytes;
mod compose;
mod keep;
mod orphans;

pub use bytes::{Bytes, keep_bytes};
pub use compose::{Pen, compose, digest_of, is_one_tap, log_id, sealed, undo};
pub use keep::{
    MOST_ENTRIES, Read, SaveError, Saved, Store, is_too_long, keep, read, read_all, records,
};
pub use orphans::orphans;
