//! The lower edge of a screen for tests: an end is below it until somebody looks.

use std::cell::RefCell;
use std::rc::{Rc, Weak};

type Seen = dyn Fn(bool);

thread_local! {
    static ENDS: RefCell<Vec<Weak<Seen>>> = const { RefCell::new(Vec::new()) };
}

/// Hears when the end is looked at; stops when it is dropped.
#[must_use = "watching stops when the guard is dropped"]
pub struct Edge(#[expect(dead_code, reason = "it is held, so that the end is heard of")] Rc<Seen>);

impl Edge {
    /// The end lies below the edge for now.
    pub fn watch<E>(_: &E, seen: impl Fn(bool) + 'static) -> Option<Self> {
        let seen: Rc<Seen> = Rc::new(seen);
        seen(false);
        ENDS.with_borrow_mut(|ends| ends.push(Rc::downgrade(&seen)));
        Some(Self(seen))
    }
}

/// Every end that there is has come on the screen.
pub fn see_all() {
    let ends = ENDS.with_borrow_mut(|ends| {
        ends.retain(|end| end.strong_count() > 0);
        ends.clone()
    });
    for end in ends {
        if let Some(seen) = end.upgrade() {
            seen(true);
        }
    }
}

/// A finger that pushes the page up sees all of it.
pub fn page_down() {
    see_all();
}

/// The same.
pub fn page_end() {
    see_all();
}
