//! A job is the set of its entries and nothing else; the sheet is folded from them.

mod act;
mod again;
pub mod also;
pub mod bill;
pub mod book;
pub mod ending;
pub mod entry;
pub mod facts;
pub mod flow;
mod fold;
mod gate;
pub mod judge;
mod key;
pub mod kit;
pub mod loose;
pub mod mishap;
mod order;
pub mod pace;
pub mod practice;
mod progress;
pub mod ready;
pub mod reason;
pub mod round;
pub mod runout;
mod sheet;
pub mod together;
#[cfg(test)]
mod told;
pub mod turn;
pub mod typed_card;

pub use act::done;
pub use again::measure_again;
pub use fold::fold;
pub use gate::{Held, held};
pub use key::Key;
pub use progress::{Status, count, group_items, is_tight, next, plan, status, was_loosened};
pub use sheet::{Problem, Sheet};
pub use together::together;
