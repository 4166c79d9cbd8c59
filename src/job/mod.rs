//! A job is the set of its entries and nothing else; the sheet is folded from them.

mod act;
pub mod ending;
pub mod entry;
mod fold;
mod gate;
pub mod judge;
mod key;
mod order;
mod progress;
pub mod reason;
pub mod round;
mod sheet;
pub mod turn;

pub use act::done;
pub use fold::fold;
pub use gate::{Held, held};
pub use key::Key;
pub use progress::{Status, count, group_items, is_tight, next, plan, status, was_loosened};
pub use sheet::{Problem, Sheet};
