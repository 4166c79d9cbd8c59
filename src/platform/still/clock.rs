//! A clock for tests: it stands until it is moved on, and what waits is called then.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use chrono::NaiveDateTime;

use crate::platform::stamp::Stamp;

/// 2026-06-01T08:00:00Z.
const BEGIN_MS: i64 = 1_780_300_800_000;

struct Waiting {
    id: u64,
    at_ms: i64,
    every_ms: Option<i64>,
    call: Rc<dyn Fn()>,
}

thread_local! {
    static NOW_MS: Cell<i64> = const { Cell::new(BEGIN_MS) };
    static WAITING: RefCell<(u64, Vec<Waiting>)> = const { RefCell::new((0, Vec::new())) };
}

/// This moment.
pub fn now() -> Stamp {
    stamp_at(NOW_MS.get())
}

/// A moment; this place is at UTC.
pub const fn stamp_at(utc_ms: i64) -> Stamp {
    Stamp {
        utc_ms,
        offset_min: 0,
    }
}

/// The moment at which the clock on the wall shows this.
pub fn stamp_of_local(local: &NaiveDateTime) -> Option<Stamp> {
    Some(stamp_at(local.and_utc().timestamp_millis()))
}

/// Milliseconds since the tests began.
pub fn monotonic_ms() -> f64 {
    ticks_ms() as f64
}

/// The same in whole milliseconds.
pub fn ticks_ms() -> i64 {
    NOW_MS.get() - BEGIN_MS
}

/// A callback that is still to come; dropping it calls it off.
#[derive(Debug)]
#[must_use = "the callback is called off when the timer is dropped"]
pub struct Timer(u64);

impl Drop for Timer {
    fn drop(&mut self) {
        let _ = WAITING.try_with(|waiting| {
            waiting.borrow_mut().1.retain(|it| it.id != self.0);
        });
    }
}

fn wait(ms: i32, every_ms: Option<i64>, call: Rc<dyn Fn()>) -> u64 {
    WAITING.with_borrow_mut(|(last, waiting)| {
        *last += 1;
        waiting.push(Waiting {
            id: *last,
            at_ms: NOW_MS.get() + i64::from(ms),
            every_ms,
            call,
        });
        *last
    })
}

fn once(callback: impl FnOnce() + 'static) -> Rc<dyn Fn()> {
    let callback = Cell::new(Some(callback));
    Rc::new(move || {
        if let Some(callback) = callback.take() {
            callback();
        }
    })
}

/// Calls `callback` once, `ms` milliseconds from now.
pub fn after(ms: i32, callback: impl FnOnce() + 'static) -> Timer {
    Timer(wait(ms, None, once(callback)))
}

/// Calls `callback` every `ms` milliseconds until the timer is dropped.
pub fn every(ms: i32, callback: impl Fn() + 'static) -> Timer {
    Timer(wait(ms, Some(i64::from(ms)), Rc::new(callback)))
}

/// Calls `callback` once, `ms` milliseconds from now, and cannot be called off.
pub fn later(ms: i32, callback: impl FnOnce() + 'static) {
    let _ = wait(ms, None, once(callback));
}

/// Whoever works in pieces goes on at once.
pub async fn pause(_: i32) {}

/// Moves the clock on, and calls what was to be called until then, in its order.
pub fn move_on(ms: i64) {
    let end = NOW_MS.get() + ms;
    loop {
        let next = WAITING.with_borrow(|(_, waiting)| {
            let due = waiting.iter().filter(|it| it.at_ms <= end);
            let first = due.min_by_key(|it| (it.at_ms, it.id))?;
            Some((
                first.id,
                first.at_ms,
                first.every_ms,
                Rc::clone(&first.call),
            ))
        });
        let Some((id, at_ms, every_ms, call)) = next else {
            break NOW_MS.set(end);
        };
        NOW_MS.set(at_ms.max(NOW_MS.get()));
        WAITING.with_borrow_mut(|(_, waiting)| match every_ms {
            Some(every) => waiting
                .iter_mut()
                .filter(|it| it.id == id)
                .for_each(|it| it.at_ms += every),
            None => waiting.retain(|it| it.id != id),
        });
        call();
    }
}
