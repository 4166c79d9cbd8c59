//! The photos and voice notes of this phone, and those that no entry names.

use super::BrowserStore;
use crate::platform::record::{Photo, Record};
use crate::slate::{Store, orphans};

impl BrowserStore {
    /// A photo or a voice note, if this phone has it.
    pub async fn photo(&self, sha: &str) -> Option<Photo> {
        match self.journal() {
            Ok(journal) => journal.photo(sha).await.ok().flatten(),
            Err(_) => self.0.memory.photo(sha),
        }
    }

    /// The photos that no entry of this phone names; none where not everything could be read.
    pub async fn orphans(&self) -> Vec<String> {
        let Ok(journal) = self.journal() else {
            return Vec::new();
        };
        // Photos first: one whose entry comes while the entries are read is not listed.
        let Ok(mut photos) = journal.photo_keys().await else {
            return Vec::new();
        };
        let Ok(logs) = journal.logs().await else {
            return Vec::new();
        };
        // Log by log: thousands of jobs at once would not fit into a phone's memory.
        for log in logs {
            if photos.is_empty() {
                return Vec::new();
            }
            let Ok(saved) = journal.read(&log).await else {
                return Vec::new();
            };
            photos = orphans(photos, saved.iter().map(|record| record.text.as_str()));
        }
        let Ok(asides) = journal.asides().await else {
            return Vec::new();
        };
        let second: Vec<Record> = self
            .local()
            .and_then(|local| local.logs().ok())
            .unwrap_or_default()
            .iter()
            .flat_map(|log| self.read_second(log))
            .collect();
        let entries = second.iter().map(|record| record.text.as_str());
        orphans(
            photos,
            entries.chain(asides.iter().map(|aside| aside.text.as_str())),
        )
    }

    /// Drops photos by their digest.
    pub async fn drop_photos(&self, shas: &[String]) {
        let Ok(journal) = self.journal() else { return };
        for sha in shas {
            // What cannot be dropped is found again at the next start.
            let _ = journal.delete_photo(sha).await;
        }
    }
}
