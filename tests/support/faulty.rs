//! A store in memory that fails where a test wants it, and a waker that does nothing.

use std::cell::RefCell;
use std::future::poll_fn;
use std::pin::pin;
use std::task::{Context, Poll, Waker};

use hubslate::platform::memory::Memory;
use hubslate::platform::record::{Photo, Record, StoreError};
use hubslate::slate::{Bytes, Store};

/// Three places that keep records, each by the rules of the real journal.
#[derive(Default)]
pub struct Faulty {
    journal: Memory,
    second: Memory,
    backup: Memory,
    backup_fault: RefCell<Option<StoreError>>,
    journal_fault: RefCell<Option<StoreError>>,
    second_fault: RefCell<Option<StoreError>>,
    bytes_fault: RefCell<Option<StoreError>>,
    calls: RefCell<Vec<&'static str>>,
}

impl Faulty {
    pub fn journal_fails(&self, with: Option<StoreError>) {
        *self.journal_fault.borrow_mut() = with;
    }

    pub fn second_fails(&self, with: Option<StoreError>) {
        *self.second_fault.borrow_mut() = with;
    }

    pub fn backup_fails(&self, with: Option<StoreError>) {
        *self.backup_fault.borrow_mut() = with;
    }

    pub fn bytes_fail(&self, with: Option<StoreError>) {
        *self.bytes_fault.borrow_mut() = with;
    }

    /// The bytes that are kept under a digest.
    pub fn bytes(&self, sha256: &str) -> Option<Photo> {
        self.journal.photo(sha256)
    }

    pub fn in_journal(&self) -> Vec<Record> {
        self.journal.read_all()
    }

    pub fn in_second(&self) -> Vec<Record> {
        self.second.read_all()
    }

    /// Puts records into the journal, past any fault.
    pub fn put_journal(&self, records: &[Record]) {
        self.journal.add(records).unwrap();
    }

    /// Puts records into the second copy, past any fault.
    pub fn put_second(&self, records: &[Record]) {
        self.second.add(records).unwrap();
    }

    /// Hurts a record of the journal, as a bad disk would.
    pub fn replace_in_journal(&self, hurt: &Record) {
        let replaced = self.journal.replace_body(&hurt.log, &hurt.id, &hurt.text);
        replaced.unwrap();
    }

    /// What was called, in order.
    pub fn calls(&self) -> Vec<&'static str> {
        self.calls.borrow().clone()
    }

    fn fault(fault: &RefCell<Option<StoreError>>) -> Result<(), StoreError> {
        fault.borrow().clone().map_or(Ok(()), Err)
    }
}

/// Lets the other side run once, as a transaction of the browser does.
async fn a_moment() {
    let mut waited = false;
    poll_fn(|_| {
        if waited {
            return Poll::Ready(());
        }
        waited = true;
        Poll::Pending
    })
    .await;
}

impl Bytes for Faulty {
    async fn put(&self, sha256: &str, saved: Photo) -> Result<(), StoreError> {
        self.calls.borrow_mut().push("bytes begin");
        a_moment().await;
        Self::fault(&self.bytes_fault)?;
        self.journal.put_photo(sha256, saved);
        self.calls.borrow_mut().push("bytes are durable");
        Ok(())
    }
}

impl Store for Faulty {
    fn second(&self, records: &[Record]) -> Result<(), StoreError> {
        self.calls.borrow_mut().push("second");
        Self::fault(&self.second_fault)?;
        self.second.add(records)
    }

    async fn journal(&self, records: &[Record]) -> Result<(), StoreError> {
        self.calls.borrow_mut().push("journal begins");
        a_moment().await;
        Self::fault(&self.journal_fault)?;
        self.journal.add(records)?;
        self.calls.borrow_mut().push("journal is durable");
        Ok(())
    }

    async fn backup(&self, records: &[Record]) -> Result<(), StoreError> {
        a_moment().await;
        Self::fault(&self.backup_fault)?;
        self.backup.add(records)
    }

    async fn read_journal(&self, log: &str) -> Result<Vec<Record>, StoreError> {
        a_moment().await;
        Self::fault(&self.journal_fault)?;
        Ok(self.journal.read(log))
    }

    fn read_second(&self, log: &str) -> Vec<Record> {
        let mut second = self.backup.read(log);
        second.extend(self.second.read(log));
        second
    }
}

/// Polls until it is ready; nothing here waits for anything but its next poll.
pub fn block_on<F: Future>(future: F) -> F::Output {
    let mut future = pin!(future);
    let mut context = Context::from_waker(Waker::noop());
    for _ in 0..1_000 {
        if let Poll::Ready(output) = future.as_mut().poll(&mut context) {
            return output;
        }
    }
    panic!("never ready");
}
