//! The one place that appends: stamps, encodes, stores, folds.

mod compose;
mod keep;

pub use compose::{Pen, compose, log_id, undo};
pub use keep::{Kept, NotKept, Read, Store, keep, read, records};
