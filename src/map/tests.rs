use super::*;
use proptest::prelude::*;
use std::collections::BTreeMap;

#[derive(Clone, Debug)]
enum Act {
    Insert(u16, u8),
    Make(u16),
    Remove(u16),
    Retain(u8),
}

fn act() -> impl Strategy<Value = Act> {
    let key = 0_u16..2000;
    prop_oneof![
        6 => (key.clone(), any::<u8>()).prop_map(|(key, value)| Act::Insert(key, value)),
        2 => key.clone().prop_map(Act::Make),
        3 => key.prop_map(Act::Remove),
        1 => (0_u8..9).prop_map(Act::Retain),
    ]
}

proptest! {
    // Held to the standard library's tree, over what is done to both.
    #[test]
    fn it_does_what_a_tree_does(
        first in 0_u16..1500,
        step in prop_oneof![Just(1_u16), Just(7), Just(1499)],
        acts in prop::collection::vec(act(), 0..60),
    ) {
        let (mut ours, mut tree) = (OrderedMap::new(), BTreeMap::new());
        for row in 0..first {
            let key = row.wrapping_mul(step) % 2000;
            prop_assert_eq!(ours.insert(key, 1), tree.insert(key, 1));
        }
        for act in acts {
            match act {
                Act::Insert(key, value) => {
                    prop_assert_eq!(ours.insert(key, value), tree.insert(key, value));
                }
                Act::Make(key) => {
                    let (ours, tree) = (ours.or_default(key), tree.entry(key).or_default());
                    prop_assert_eq!(&ours, &tree);
                    (*ours, *tree) = (7, 7);
                }
                Act::Remove(key) => prop_assert_eq!(ours.remove(&key), tree.remove(&key)),
                Act::Retain(odd) => {
                    ours.retain(|key, value| key % 9 != u16::from(odd) || *value == 7);
                    tree.retain(|key, value| key % 9 != u16::from(odd) || *value == 7);
                }
            }
            prop_assert_eq!(ours.len(), tree.len());
        }
        prop_assert!(ours.iter().eq(&tree));
        for from in (0..2000).step_by(97) {
            prop_assert!(ours.range(from, 1700).eq(tree.range(from..=1700.max(from))) || 1700 < from);
        }
        for key in 0..2000 {
            prop_assert_eq!(ours.get(&key), tree.get(&key));
        }
        let again: OrderedMap<u16, u8> = tree.clone().into_iter().rev().collect();
        prop_assert_eq!(&again, &ours);
        prop_assert!(ours.into_iter().eq(tree));
    }
}

#[test]
fn one_that_was_in_is_not_new() {
    let mut set: OrderedSet<&str> = ["b", "a", "b"].into_iter().collect();
    assert!(!set.insert("a") && set.insert("c") && set.contains("b"));
    assert!(set.remove("b") && !set.remove("b"));
    assert_eq!(set.into_iter().collect::<Vec<_>>(), ["a", "c"]);
}

#[test]
fn rows_that_come_backwards_take_no_longer_each() {
    // Were all places one row of memory, this would move 2 · 10^10 of them.
    let map: OrderedMap<u32, ()> = (0..200_000).rev().map(|key| (key, ())).collect();
    assert!(map.keys().copied().eq(0..200_000));
}
