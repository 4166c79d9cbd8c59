//! What is half typed or half set, and the settings beside it, as the journal keeps them.

use super::BrowserStore;
use crate::map::OrderedMap;

/// The settings that hold the next running numbers: of work, and of practice.
pub const COUNTERS: [&str; 2] = ["n", "practice_n"];

/// Under which name the journal keeps a setting among what is half typed; no log's id is so short.
pub(super) fn setting(name: &str) -> String {
    format!("setting:{name}")
}

impl BrowserStore {
    /// Reads what is half typed, as the journal has it.
    pub async fn read_drafts(&self) {
        let Ok(journal) = self.journal() else { return };
        if let Ok(drafts) = journal.drafts().await {
            self.take_drafts(drafts);
        }
    }

    /// Takes what was read of the drafts.
    pub(super) fn take_drafts(&self, drafts: Vec<(String, String)>) {
        let mut here = self.0.drafts.borrow_mut();
        let before = std::mem::replace(&mut *here, OrderedMap::from_iter(drafts));
        // A running number never goes back: another tab, or this one meanwhile, took it.
        for name in COUNTERS.map(setting) {
            let number = |of: &OrderedMap<String, String>| of.get(&name)?.parse::<u64>().ok();
            if let (Some(was), now) = (number(&before), number(&here))
                && now < Some(was)
            {
                here.insert(name, was.to_string());
            }
        }
    }

    /// The draft of a field. Without a journal the second copy has it, or this page alone.
    pub fn draft(&self, name: &str) -> Option<String> {
        let here = self.0.drafts.borrow().get(name).cloned();
        match (self.journal(), self.local()) {
            (Err(_), Some(local)) => local.draft(name).ok().flatten(),
            _ => here,
        }
    }

    /// Keeps the drafts of fields, or drops those without a text. A refusal is harmless: what is
    /// half typed is on the screen.
    pub fn set_drafts(&self, drafts: &[(&str, Option<&str>)]) {
        let mut here = self.0.drafts.borrow_mut();
        for (name, text) in drafts {
            match text {
                Some(text) => here.insert((*name).to_owned(), (*text).to_owned()),
                None => here.remove(*name),
            };
        }
        match (self.journal(), self.local()) {
            (Ok(journal), _) => {
                let _ = journal.put_drafts(drafts);
            }
            (Err(_), Some(local)) => {
                for (name, text) in drafts {
                    let _ = match text {
                        Some(text) => local.set_draft(name, text),
                        None => local.remove_draft(name),
                    };
                }
            }
            (Err(_), None) => {}
        }
    }

    /// Drops drafts by their names.
    pub fn drop_drafts(&self, names: &[String]) {
        let drafts: Vec<_> = names.iter().map(|name| (name.as_str(), None)).collect();
        if !drafts.is_empty() {
            self.set_drafts(&drafts);
        }
    }

    /// Drops what is half typed for a job.
    pub(in crate::ui) fn drop_drafts_of(&self, log: &str) {
        let of_job = format!("{log}:");
        let names: Vec<String> = {
            let here = self.0.drafts.borrow();
            here.keys()
                .filter(|name| name.starts_with(&of_job))
                .cloned()
                .collect()
        };
        self.drop_drafts(&names);
    }
}
