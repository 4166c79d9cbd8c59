//! One merge sort for every type: the standard one is compiled again for each type and each key, at
//! 4 kB apiece.

use std::cmp::Ordering;

/// Puts things in order; those that are equal stay as they came.
pub trait Sorted<T> {
    /// By what `by` says of two of them.
    fn order_by(&mut self, by: impl FnMut(&T, &T) -> Ordering);

    /// By what `key` says of each.
    fn order_by_key<K: Ord>(&mut self, mut key: impl FnMut(&T) -> K) {
        self.order_by(|a, b| key(a).cmp(&key(b)));
    }

    /// By their own order.
    fn order(&mut self)
    where
        T: Ord,
    {
        self.order_by(T::cmp);
    }
}

impl<T> Sorted<T> for [T] {
    fn order_by(&mut self, mut by: impl FnMut(&T, &T) -> Ordering) {
        let places = places(self.len(), &mut |a, b| {
            let pair = self.get(a).zip(self.get(b));
            pair.is_some_and(|(a, b)| by(a, b) == Ordering::Less)
        });
        put_in_places(self, places);
    }
}

/// Puts things in the places in which they come: at each the number of what belongs there.
pub fn put_in_places<T>(all: &mut [T], places: Vec<usize>) {
    for (a, b) in swaps(places) {
        all.swap(a, b);
    }
}

/// The swaps, one after the other, that bring to each place what comes there.
fn swaps(mut places: Vec<usize>) -> Vec<(usize, usize)> {
    let mut swaps = Vec::new();
    for start in 0..places.len() {
        // What belongs at `at` lies at `from`; what lay first in a circle goes round with it.
        let mut at = start;
        while let Some(from) = places.get_mut(at) {
            let from = std::mem::replace(from, at);
            if from == start || from == at {
                break;
            }
            swaps.push((at, from));
            at = from;
        }
    }
    swaps
}

/// From which place each of `count` things in order comes.
fn places(count: usize, before: &mut dyn FnMut(usize, usize) -> bool) -> Vec<usize> {
    let mut now: Vec<usize> = (0..count).collect();
    let mut next = now.clone();
    let mut width = 1;
    while width < count {
        let pairs = now.chunks(2 * width).zip(next.chunks_mut(2 * width));
        for (pair, merged) in pairs {
            let (left, right) = pair.split_at(width.min(pair.len()));
            merge(left, right, merged, before);
        }
        std::mem::swap(&mut now, &mut next);
        width *= 2;
    }
    now
}

fn merge<'a>(
    mut left: &'a [usize],
    mut right: &'a [usize],
    merged: &mut [usize],
    before: &mut dyn FnMut(usize, usize) -> bool,
) {
    for place in merged {
        let from_right = match (left.first(), right.first()) {
            (Some(left), Some(right)) => before(*right, *left),
            (left, _) => left.is_none(),
        };
        let from = if from_right { &mut right } else { &mut left };
        if let Some((first, rest)) = from.split_first() {
            *place = *first;
            *from = rest;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_turned_row_takes_one_swap_each() {
        // The last one goes to the front: a walk that looks for each again would take n² steps.
        let mut all: Vec<usize> = (1..2000).collect();
        all.push(0);
        let made = swaps(places(all.len(), &mut |a, b| all.get(a) < all.get(b)));
        assert_eq!(made.len(), 1999);
        assert!(swaps(places(3, &mut |a, b| a < b)).is_empty());
        assert!(swaps(places(0, &mut |_, _| true)).is_empty());
    }

    proptest! {
        // Held to the standard library's stable sort.
        #[test]
        fn it_orders_as_the_standard_library_does(
            all in prop::collection::vec((0_u8..9, any::<u16>()), 0..70)
        ) {
            let (mut ours, mut standard) = (all.clone(), all.clone());
            ours.order_by_key(|it| it.0);
            standard.sort_by_key(|it| it.0);
            prop_assert_eq!(&ours, &standard);
            ours.order();
            standard.sort();
            prop_assert_eq!(ours, standard);
        }
    }
}
