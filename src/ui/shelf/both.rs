//! Two waits at once.

use std::future::poll_fn;
use std::pin::pin;
use std::task::Poll;

/// Waits for two things at once.
pub(super) async fn both<A, B>(
    one: impl Future<Output = A>,
    other: impl Future<Output = B>,
) -> (A, B) {
    let (mut one, mut other) = (pin!(one), pin!(other));
    let (mut first, mut second) = (None, None);
    poll_fn(move |context| {
        if first.is_none() {
            first = done(one.as_mut().poll(context));
        }
        if second.is_none() {
            second = done(other.as_mut().poll(context));
        }
        match (first.take(), second.take()) {
            (Some(first), Some(second)) => Poll::Ready((first, second)),
            (one, other) => {
                (first, second) = (one, other);
                Poll::Pending
            }
        }
    })
    .await
}

/// Waits for `slow`, and does `work` as soon as that has been begun.
pub async fn beside<S, W>(slow: impl Future<Output = S>, work: impl FnOnce() -> W) -> (S, W) {
    let mut slow = pin!(slow);
    let early = poll_fn(|context| Poll::Ready(slow.as_mut().poll(context))).await;
    let done = work();
    match early {
        Poll::Ready(outcome) => (outcome, done),
        Poll::Pending => (slow.await, done),
    }
}

fn done<T>(polled: Poll<T>) -> Option<T> {
    match polled {
        Poll::Ready(done) => Some(done),
        Poll::Pending => None,
    }
}
