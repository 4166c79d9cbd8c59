//! Storage of a browser that grants nothing, for the tests of screens: all of it is in memory.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use super::Backing;
use crate::exchange::backup::Backup;
use crate::platform::memory::Memory;
use crate::platform::record::StoreError;
use crate::ui::shelf::{BrowserStore, Inner};

impl BrowserStore {
    /// Nothing is in it yet.
    pub fn in_memory() -> Self {
        Self(Rc::new(Inner {
            journal: RefCell::new(Err(StoreError::Denied)),
            backing: Backing {
                files: Err(StoreError::Denied),
                says: RefCell::new(Backup::read(&[])),
                size: Cell::new(0),
            },
            on_closed: Rc::new(|_| {}),
            local: Err(StoreError::Denied),
            memory: Memory::new(),
            passing: RefCell::default(),
            drafts: RefCell::default(),
            lines: RefCell::default(),
        }))
    }
}
