//! A job is the set of its entries and nothing else; the sheet is folded from them.

pub mod entry;
