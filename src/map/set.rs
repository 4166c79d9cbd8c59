//! Sets in their order: maps that say nothing of their keys.

use std::borrow::Borrow;
use std::fmt::{self, Debug, Formatter};

use super::{Iter, OrderedMap};

/// Things, each once.
#[derive(Clone, PartialEq, Eq)]
pub struct OrderedSet<T>(OrderedMap<T, ()>);

impl<T> Default for OrderedSet<T> {
    fn default() -> Self {
        Self::new()
    }
}

impl<T> OrderedSet<T> {
    /// An empty one.
    pub const fn new() -> Self {
        Self(OrderedMap::new())
    }

    /// How many there are.
    pub const fn len(&self) -> usize {
        self.0.len()
    }

    /// Whether there is none.
    pub const fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// All in order.
    pub const fn iter(&self) -> Members<'_, T> {
        Members(self.0.iter())
    }
}

impl<T: Ord> OrderedSet<T> {
    /// Puts one in; whether it is new.
    pub fn insert(&mut self, one: T) -> bool {
        self.0.insert(one, ()).is_none()
    }

    /// Whether one is in it.
    pub fn contains<Q: Ord + ?Sized>(&self, one: &Q) -> bool
    where
        T: Borrow<Q>,
    {
        self.0.contains_key(one)
    }

    /// Takes one out; whether it was there.
    pub fn remove<Q: Ord + ?Sized>(&mut self, one: &Q) -> bool
    where
        T: Borrow<Q>,
    {
        self.0.remove(one).is_some()
    }
}

/// What a set holds, in order.
#[derive(Clone)]
pub struct Members<'a, T>(Iter<'a, T, ()>);

impl<'a, T> Iterator for Members<'a, T> {
    type Item = &'a T;

    fn next(&mut self) -> Option<&'a T> {
        self.0.next().map(|(one, ())| one)
    }
}

impl<'a, T> IntoIterator for &'a OrderedSet<T> {
    type Item = &'a T;
    type IntoIter = Members<'a, T>;

    fn into_iter(self) -> Members<'a, T> {
        self.iter()
    }
}

impl<T> IntoIterator for OrderedSet<T> {
    type Item = T;
    type IntoIter = std::iter::Map<std::vec::IntoIter<(T, ())>, fn((T, ())) -> T>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter().map(|(one, ())| one)
    }
}

impl<T: Ord> Extend<T> for OrderedSet<T> {
    fn extend<I: IntoIterator<Item = T>>(&mut self, all: I) {
        self.0.extend(all.into_iter().map(|one| (one, ())));
    }
}

impl<T: Ord> FromIterator<T> for OrderedSet<T> {
    fn from_iter<I: IntoIterator<Item = T>>(all: I) -> Self {
        let mut set = Self::new();
        set.extend(all);
        set
    }
}

impl<T: Debug> Debug for OrderedSet<T> {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        f.debug_set().entries(self).finish()
    }
}
