//! What a log says of the way between the yard and its vans.

use crate::job::Key;
use crate::job::entry::{Held, Shop, Slot, What};
use crate::job::sheet::Sheet;

/// The log in which a device keeps the settings of its shop, as every log beside jobs has a colon.
pub const SHOP_LOG: &str = "shop:rules";
/// The log of the yard's receipts.
pub const YARD_LOG: &str = "yard:receipts";

/// When, and by which van, a job is done.
pub fn slot(sheet: &Sheet) -> Option<&Slot> {
    match &sheet.holds(&Key::Slot)?.what {
        What::Slot(slot) => Some(slot),
        _ => None,
    }
}

/// The settings of the shop that were noted last.
pub fn shop(sheet: &Sheet) -> Option<&Shop> {
    match &sheet.holds(&Key::Shop)?.what {
        What::Shop(shop) => Some(shop),
        _ => None,
    }
}

/// What the yard's receipts say it has; those that `not_by` gave are left out.
pub fn held(sheet: &Sheet, not_by: &str) -> Vec<Held> {
    let others = sheet.counting().filter(|entry| entry.device != not_by);
    let receipts = others.filter_map(|entry| match &entry.what {
        What::Receipt(receipt) => Some(&receipt.held),
        _ => None,
    });
    receipts.flatten().cloned().collect()
}
