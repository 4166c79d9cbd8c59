//! The one place that appends: stamps, encodes, stores, folds.

mod compose;
mod keep;
mod orphans;

pub use compose::{Pen, compose, log_id, undo};
pub use keep::{Kept, NotKept, Read, Store, keep, read, records};
pub use orphans::orphans;
