//! Long work in pieces: between two of them whoever waits is told how far it is, and may call it off.

use std::pin::pin;
use std::task::{Context, Poll, Waker};

/// The work was called off before it was done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CalledOff;

/// Whoever waits for long work.
pub trait Waits {
    /// `done` of `all` is done. The work goes on when this is ready.
    ///
    /// # Errors
    /// [`CalledOff`], and the work ends there.
    fn between(&self, done: usize, all: usize) -> impl Future<Output = Result<(), CalledOff>>;
}

/// Waits for all of it.
#[derive(Clone, Copy, Debug)]
pub struct InOneGo;

impl Waits for InOneGo {
    async fn between(&self, _: usize, _: usize) -> Result<(), CalledOff> {
        Ok(())
    }
}

/// Does work that waits for nothing but [`InOneGo`].
pub fn in_one_go<T>(work: impl Future<Output = T>) -> T {
    let mut work = pin!(work);
    let mut context = Context::from_waker(Waker::noop());
    loop {
        if let Poll::Ready(done) = work.as_mut().poll(&mut context) {
            return done;
        }
    }
}

/// How far a work is.
pub(super) struct Pieces<'a, W> {
    waits: &'a W,
    done: usize,
    all: usize,
}

/// So many parts are one piece: a phone takes a few milliseconds for them.
const PIECE: usize = 100;

impl<'a, W: Waits> Pieces<'a, W> {
    /// Work of so many parts, none of it done.
    pub(super) const fn of(all: usize, waits: &'a W) -> Self {
        let done = 0;
        Self { waits, done, all }
    }

    /// One more part is done.
    pub(super) async fn one_more(&mut self) -> Result<(), CalledOff> {
        self.done += 1;
        if self.done.is_multiple_of(PIECE) {
            self.waits.between(self.done, self.all).await?;
        }
        Ok(())
    }
}
