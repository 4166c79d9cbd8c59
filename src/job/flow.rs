//! What a log says of the way between the shop and its vans.

use crate::job::Key;
use crate::job::entry::{Entry, Event, Held, Shop, Slot};
use crate::job::sheet::JobState;

/// The log in which a device keeps the settings of its shop, as every log beside jobs has a colon.
pub const SHOP_LOG: &str = "shop:rules";
/// The log of the shop's confirmations.
pub const CONFIRMATIONS_LOG: &str = "confirmations:shop";

/// When, and by which van, a job is done.
pub fn slot(sheet: &JobState) -> Option<&Slot> {
    match &sheet.holds(&Key::Slot)?.what {
        Event::Slot(slot) => Some(slot),
        _ => None,
    }
}

/// The entry that noted the settings of the shop last.
pub fn shop_noted(sheet: &JobState) -> Option<&Entry> {
    sheet.holds(&Key::Shop)
}

/// The settings of the shop that were noted last.
pub fn shop(sheet: &JobState) -> Option<&Shop> {
    match &shop_noted(sheet)?.what {
        Event::Shop(shop) => Some(shop),
        _ => None,
    }
}

/// The last entry of a device. Its running numbers do not tell: after a kill one may be used twice.
pub fn last_by<'a>(sheet: &'a JobState, device: &str) -> Option<&'a Entry> {
    let mut entries = sheet.entries().iter();
    entries.rfind(|entry| entry.device == device)
}

/// What the shop's confirmations say it has; those that `not_by` gave are left out.
pub fn held(sheet: &JobState, not_by: &str) -> Vec<Held> {
    let others = sheet.counting().filter(|entry| entry.device != not_by);
    let confirmations = others.filter_map(|entry| match &entry.what {
        Event::Confirmation(confirmation) => Some(&confirmation.held),
        _ => None,
    });
    confirmations.flatten().cloned().collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::entry::{EntryId, LogId, Timestamp};
    use crate::job::fold;

    fn noted(id: &str, n: u64, after: &[&str], keep_days: u16) -> Entry {
        let shop = Shop {
            keep_days: Some(keep_days),
            ..Shop::default()
        };
        Entry {
            id: EntryId(id.to_owned()),
            log: LogId(SHOP_LOG.to_owned()),
            at: Timestamp {
                utc_ms: 0,
                offset_min: 0,
                recorded: None,
            },
            by: String::new(),
            device: "shop".to_owned(),
            n,
            after: after.iter().map(|id| EntryId((*id).to_owned())).collect(),
            what: Event::Shop(Box::new(shop)),
        }
    }

    #[test]
    fn the_last_is_the_last_in_order_neither_by_number_nor_by_id() {
        // A clock that was set back gives a lower id, a kill a lower number.
        let sheet = fold([noted("b", 40, &[], 10), noted("a", 3, &["b"], 20)]);
        assert_eq!(shop_noted(&sheet).unwrap().id.0, "a");
        assert_eq!(shop(&sheet).unwrap().keep_days, Some(20));
        assert_eq!(last_by(&sheet, "shop").unwrap().id.0, "a");
        assert_eq!(last_by(&sheet, "van"), None);
    }
}
