//! A job is the set of its entries and nothing else; the sheet is folded from them.

mod act;
mod again;
pub mod agreed;
pub mod angled;
pub mod answers;
pub mod backdate;
pub mod bill;
pub mod book;
pub mod caption;
pub mod combined_steps;
pub mod dial_setup;
pub mod eased;
pub mod ending;
pub mod entry;
pub mod evidence;
pub mod facts;
pub mod flow;
mod fold;
pub mod found;
mod gate;
pub mod judge;
mod key;
pub mod kit;
mod line;
pub mod loose;
pub mod loose_lug_nuts;
pub mod manual_item;
pub mod mishap;
mod order;
pub mod pace;
pub mod picture;
pub mod practice;
mod problem;
mod progress;
pub mod proof;
pub mod ready;
pub mod reason;
pub mod round;
pub mod runout;
mod sheet;
pub mod slip;
pub mod spec_diff;
pub mod tally;
pub mod thickness;
pub mod tip_and_drift;
#[cfg(test)]
mod told;
pub mod turn;
pub mod typed_card;

pub use act::done;
pub use again::{is_closed_again, measure_again};
pub use combined_steps::combined_steps;
pub use fold::fold;
pub use gate::{Held, end_holding, held};
pub use key::Key;
pub use order::is_tangled;
pub use problem::Problem;
pub use progress::{
    Status, count, group_items, is_tight, next, plan, status, was_loosened, wheel_end,
};
pub use sheet::JobState;
