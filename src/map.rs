//! Maps and sets in the order of their keys: as the standard trees, but how they are searched and
//! kept in order is compiled once and not for each type, which weighs a tenth.

mod set;
#[cfg(test)]
mod tests;

use std::borrow::Borrow;
use std::cmp::Ordering;
use std::fmt::{self, Debug, Formatter};

use crate::sorted::put_in_places;

pub use set::OrderedSet;

/// How many places a block holds before it is halved.
const FULL: usize = 512;

/// The places of rows in the order of their keys, in blocks: what is put in moves one block, not all.
#[derive(Clone, Debug, Default)]
struct Places(Vec<Vec<usize>>);

/// Where a place stands: its block, and where in it.
type Spot = (usize, usize);

impl Places {
    /// Where the row stands of which `order` says that it is the one, or else where it would.
    #[inline(never)]
    fn find(&self, order: &mut dyn FnMut(usize) -> Ordering) -> Result<(Spot, usize), Spot> {
        let mut begins = |rows: &Vec<usize>| rows.first().is_some_and(|row| order(*row).is_le());
        let block = self.0.partition_point(&mut begins).saturating_sub(1);
        let Some(rows) = self.0.get(block) else {
            return Err((block, 0));
        };
        match rows.binary_search_by(|row| order(*row)) {
            Ok(at) => Ok(((block, at), rows.get(at).copied().unwrap_or_default())),
            Err(at) => Err((block, at)),
        }
    }

    #[inline(never)]
    fn insert(&mut self, (block, at): Spot, row: usize) {
        let Some(rows) = self.0.get_mut(block) else {
            self.0.push(vec![row]);
            return;
        };
        rows.insert(at, row);
        if rows.len() > FULL {
            let rest = rows.split_off(FULL / 2);
            self.0.insert(block + 1, rest);
        }
    }

    #[inline(never)]
    fn remove(&mut self, (block, at): Spot) {
        let Some(rows) = self.0.get_mut(block) else {
            return;
        };
        rows.remove(at);
        if rows.is_empty() {
            self.0.remove(block);
        }
    }

    fn set(&mut self, (block, at): Spot, row: usize) {
        let place = self.0.get_mut(block).and_then(|rows| rows.get_mut(at));
        if let Some(place) = place {
            *place = row;
        }
    }

    /// The one that comes after this spot's.
    #[inline(never)]
    fn next(&self, spot: &mut Spot) -> Option<usize> {
        let mut rows = self.0.get(spot.0)?;
        if spot.1 == rows.len() {
            *spot = (spot.0 + 1, 0);
            rows = self.0.get(spot.0)?;
        }
        let row = rows.get(spot.1).copied();
        spot.1 += 1;
        row
    }
}

/// Values by their keys.
#[derive(Clone)]
pub struct OrderedMap<K, V> {
    rows: Vec<(K, V)>,
    places: Places,
}

impl<K, V> Default for OrderedMap<K, V> {
    fn default() -> Self {
        Self::new()
    }
}

impl<K, V> OrderedMap<K, V> {
    /// An empty one.
    pub const fn new() -> Self {
        let places = Places(Vec::new());
        Self {
            rows: Vec::new(),
            places,
        }
    }

    /// How many there are.
    pub const fn len(&self) -> usize {
        self.rows.len()
    }

    /// Whether there is none.
    pub const fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }

    /// All, in the order of their keys.
    pub const fn iter(&self) -> Iter<'_, K, V> {
        Iter {
            map: self,
            spot: (0, 0),
        }
    }

    /// The keys in order.
    pub fn keys(&self) -> impl Iterator<Item = &K> {
        self.iter().map(|(key, _)| key)
    }

    /// The values in the order of their keys.
    pub fn values(&self) -> impl Iterator<Item = &V> {
        self.iter().map(|(_, value)| value)
    }

    /// All, to be changed, in no particular order.
    pub fn iter_mut(&mut self) -> impl Iterator<Item = (&K, &mut V)> {
        self.rows.iter_mut().map(|(key, value)| (&*key, value))
    }

    /// The values in the order of their keys.
    pub fn into_values(self) -> impl Iterator<Item = V> {
        self.into_iter().map(|(_, value)| value)
    }
}

impl<K: Ord, V> OrderedMap<K, V> {
    #[inline(never)]
    fn find<Q: Ord + ?Sized>(&self, key: &Q) -> Result<(Spot, usize), Spot>
    where
        K: Borrow<Q>,
    {
        self.places.find(&mut |row| match self.rows.get(row) {
            Some((there, _)) => there.borrow().cmp(key),
            None => Ordering::Equal,
        })
    }

    /// The value of a key.
    pub fn get<Q: Ord + ?Sized>(&self, key: &Q) -> Option<&V>
    where
        K: Borrow<Q>,
    {
        let (_, row) = self.find(key).ok()?;
        self.rows.get(row).map(|(_, value)| value)
    }

    /// The value of a key, to be changed.
    pub fn get_mut<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<&mut V>
    where
        K: Borrow<Q>,
    {
        let (_, row) = self.find(key).ok()?;
        self.rows.get_mut(row).map(|(_, value)| value)
    }

    /// Those from one key to another, both with them, in order.
    pub fn range(&self, from: K, to: K) -> impl Iterator<Item = (&K, &V)> {
        let spot = self.find(&from).map_or_else(|spot| spot, |(spot, _)| spot);
        let from_here = Iter { map: self, spot };
        from_here.take_while(move |(key, _)| **key <= to)
    }

    /// Whether a key has a value.
    pub fn contains_key<Q: Ord + ?Sized>(&self, key: &Q) -> bool
    where
        K: Borrow<Q>,
    {
        self.find(key).is_ok()
    }

    /// Puts a value in; the one that the key had before comes back.
    pub fn insert(&mut self, key: K, value: V) -> Option<V> {
        match self.find(&key) {
            Ok((_, row)) => {
                let there = self.rows.get_mut(row)?;
                Some(std::mem::replace(&mut there.1, value))
            }
            Err(spot) => {
                self.places.insert(spot, self.rows.len());
                self.rows.push((key, value));
                None
            }
        }
    }

    /// The value of a key, made where there is none yet.
    pub fn or_make(&mut self, key: K, make: impl FnOnce() -> V) -> &mut V {
        let row = match self.find(&key) {
            Ok((_, row)) => row,
            Err(spot) => {
                self.places.insert(spot, self.rows.len());
                self.rows.push((key, make()));
                self.rows.len() - 1
            }
        };
        #[expect(
            clippy::indexing_slicing,
            reason = "a row that was found or just put in"
        )]
        &mut self.rows[row].1
    }

    /// The value of a key, empty where there is none yet.
    pub fn or_default(&mut self, key: K) -> &mut V
    where
        V: Default,
    {
        self.or_make(key, V::default)
    }

    /// Takes a key out, with its value.
    pub fn remove<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<V>
    where
        K: Borrow<Q>,
    {
        let (spot, row) = self.find(key).ok()?;
        // The last row takes the free place.
        let last = self.rows.last().map(|(key, _)| self.find(key.borrow()));
        if let Some(Ok((last, _))) = last {
            self.places.set(last, row);
        }
        self.places.remove(spot);
        Some(self.rows.swap_remove(row).1)
    }

    /// Keeps those of which `keep` says so.
    pub fn retain(&mut self, mut keep: impl FnMut(&K, &mut V) -> bool) {
        let all = std::mem::take(self).into_iter();
        self.extend(
            all.filter_map(|(key, mut value)| keep(&key, &mut value).then_some((key, value))),
        );
    }
}

/// What a map holds, in the order of its keys.
#[derive(Clone)]
pub struct Iter<'a, K, V> {
    map: &'a OrderedMap<K, V>,
    spot: Spot,
}

impl<'a, K, V> Iterator for Iter<'a, K, V> {
    type Item = (&'a K, &'a V);

    fn next(&mut self) -> Option<Self::Item> {
        let row = self.map.places.next(&mut self.spot)?;
        self.map.rows.get(row).map(|(key, value)| (key, value))
    }
}

impl<'a, K, V> IntoIterator for &'a OrderedMap<K, V> {
    type Item = (&'a K, &'a V);
    type IntoIter = Iter<'a, K, V>;

    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}

impl<K, V> IntoIterator for OrderedMap<K, V> {
    type Item = (K, V);
    type IntoIter = std::vec::IntoIter<(K, V)>;

    fn into_iter(mut self) -> Self::IntoIter {
        put_in_places(&mut self.rows, self.places.0.concat());
        self.rows.into_iter()
    }
}

impl<K: Ord, V> Extend<(K, V)> for OrderedMap<K, V> {
    /// Of two with the same key the later one stays.
    fn extend<I: IntoIterator<Item = (K, V)>>(&mut self, all: I) {
        for (key, value) in all {
            self.insert(key, value);
        }
    }
}

impl<K: Ord, V> FromIterator<(K, V)> for OrderedMap<K, V> {
    fn from_iter<I: IntoIterator<Item = (K, V)>>(all: I) -> Self {
        let mut map = Self::new();
        map.extend(all);
        map
    }
}

impl<K: PartialEq, V: PartialEq> PartialEq for OrderedMap<K, V> {
    fn eq(&self, other: &Self) -> bool {
        self.len() == other.len() && self.iter().eq(other)
    }
}

impl<K: Eq, V: Eq> Eq for OrderedMap<K, V> {}

impl<K: Debug, V: Debug> Debug for OrderedMap<K, V> {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        f.debug_map().entries(self).finish()
    }
}
