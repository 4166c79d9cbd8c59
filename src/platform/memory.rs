//! The journal when the browser denies all storage: the same rules, gone with the page.
//!
//! No tap may read as kept while this is all there is.

use crate::map::OrderedMap;
use std::cell::RefCell;

use super::record::{Photo, Record, StoreError};

/// Records and photos in memory.
#[derive(Debug, Default)]
pub struct Memory {
    records: RefCell<OrderedMap<(String, String), String>>,
    photos: RefCell<OrderedMap<String, Photo>>,
}

impl Memory {
    /// Nothing kept yet.
    pub fn new() -> Self {
        Self::default()
    }

    /// Keeps all records or none; one that is there with the same text counts as kept.
    ///
    /// # Errors
    /// [`StoreError::Differs`] if a record is there with another text.
    pub fn add(&self, records: &[Record]) -> Result<(), StoreError> {
        let mut saved = self.records.borrow_mut();
        let mut added = OrderedMap::new();
        for record in records {
            let key = (record.log.clone(), record.id.clone());
            let there = saved.get(&key).or_else(|| added.get(&key));
            if there.is_some_and(|text| *text != record.text) {
                return Err(StoreError::Differs {
                    log: key.0,
                    id: key.1,
                });
            }
            added.insert(key, record.text.clone());
        }
        saved.extend(added);
        Ok(())
    }

    /// Every record of one log, by id.
    pub fn read(&self, log: &str) -> Vec<Record> {
        self.read_all()
            .into_iter()
            .filter(|record| record.log == log)
            .collect()
    }

    /// Every record, by log and id.
    pub fn read_all(&self) -> Vec<Record> {
        let saved = self.records.borrow();
        let record = |((log, id), text): (&(String, String), &String)| Record {
            log: log.clone(),
            id: id.clone(),
            text: text.clone(),
        };
        saved.iter().map(record).collect()
    }

    /// The ids of all logs, each once.
    pub fn logs(&self) -> Vec<String> {
        let mut logs: Vec<String> = self
            .records
            .borrow()
            .keys()
            .map(|(log, _)| log.clone())
            .collect();
        logs.dedup();
        logs
    }

    /// Throws a log away; for practice jobs only.
    pub fn delete_log(&self, log: &str) {
        self.records.borrow_mut().retain(|(of, _), _| of != log);
    }

    /// Replaces the text of one record; only for erasing a person.
    ///
    /// # Errors
    /// [`StoreError::Missing`] if there is no such record.
    pub fn replace_body(&self, log: &str, id: &str, text: &str) -> Result<(), StoreError> {
        let mut saved = self.records.borrow_mut();
        match saved.get_mut(&(log.to_owned(), id.to_owned())) {
            Some(body) => {
                text.clone_into(body);
                Ok(())
            }
            None => Err(StoreError::Missing {
                log: log.to_owned(),
                id: id.to_owned(),
            }),
        }
    }

    /// Keeps a picture under its SHA-256.
    pub fn put_photo(&self, sha: &str, photo: Photo) {
        self.photos.borrow_mut().insert(sha.to_owned(), photo);
    }

    /// The picture under this SHA-256; `None` if there is none.
    pub fn photo(&self, sha: &str) -> Option<Photo> {
        self.photos.borrow().get(sha).cloned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn record(log: &str, id: &str, text: &str) -> Record {
        Record {
            log: log.to_owned(),
            id: id.to_owned(),
            text: text.to_owned(),
        }
    }

    #[test]
    fn what_was_added_is_read_back_by_log() {
        let memory = Memory::new();
        memory
            .add(&[
                record("b", "1", "x"),
                record("a", "2", "y"),
                record("a", "1", "z"),
            ])
            .unwrap();
        assert_eq!(
            memory.read("a"),
            [record("a", "1", "z"), record("a", "2", "y")]
        );
        assert_eq!(memory.logs(), ["a", "b"]);
    }

    #[test]
    fn the_same_text_again_counts_as_saved() {
        let memory = Memory::new();
        memory.add(&[record("a", "1", "x")]).unwrap();
        assert_eq!(memory.add(&[record("a", "1", "x")]), Ok(()));
        assert_eq!(memory.read_all().len(), 1);
    }

    #[test]
    fn another_text_is_refused_and_nothing_of_the_batch_is_saved() {
        let memory = Memory::new();
        memory.add(&[record("a", "1", "x")]).unwrap();
        let problem = memory.add(&[record("a", "2", "new"), record("a", "1", "other")]);
        assert_eq!(
            problem,
            Err(StoreError::Differs {
                log: "a".to_owned(),
                id: "1".to_owned()
            })
        );
        assert_eq!(memory.read_all(), [record("a", "1", "x")]);
    }

    #[test]
    fn a_batch_that_contradicts_itself_is_refused() {
        let problem = Memory::new().add(&[record("a", "1", "x"), record("a", "1", "y")]);
        assert_eq!(
            problem,
            Err(StoreError::Differs {
                log: "a".to_owned(),
                id: "1".to_owned()
            })
        );
    }

    #[test]
    fn only_what_is_there_can_be_replaced() {
        let memory = Memory::new();
        memory.add(&[record("a", "1", "x")]).unwrap();
        assert_eq!(memory.replace_body("a", "1", "erased"), Ok(()));
        assert_eq!(memory.read("a"), [record("a", "1", "erased")]);
        let missing = StoreError::Missing {
            log: "a".to_owned(),
            id: "9".to_owned(),
        };
        assert_eq!(memory.replace_body("a", "9", "erased"), Err(missing));
    }

    #[test]
    fn deleting_a_log_leaves_the_others() {
        let memory = Memory::new();
        memory
            .add(&[record("a", "1", "x"), record("ab", "1", "y")])
            .unwrap();
        memory.delete_log("a");
        assert_eq!(memory.read_all(), [record("ab", "1", "y")]);
    }
}
