//! A job is the set of its entries and nothing else; the sheet is folded from them.

mod act;
pub mod book;
pub mod ending;
pub mod entry;
pub mod facts;
mod fold;
mod gate;
pub mod judge;
mod key;
pub mod kit;
mod order;
pub mod pace;
pub mod practice;
mod progress;
pub mod ready;
pub mod reason;
pub mod round;
mod sheet;
pub mod turn;
pub mod typed_card;

pub use act::done;
pub use fold::fold;
pub use gate::{Held, held};
pub use key::Key;
pub use progress::{Status, count, group_items, is_tight, next, plan, status, was_loosened};
pub use sheet::{Problem, Sheet};
