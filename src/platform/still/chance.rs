//! Bytes that are never the same twice, for tests.

use std::cell::Cell;

/// There is always some.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoChance;

thread_local! {
    static GIVEN: Cell<u64> = const { Cell::new(0) };
}

/// `N` bytes that were not given before.
///
/// # Errors
/// None.
pub fn random<const N: usize>() -> Result<[u8; N], NoChance> {
    GIVEN.set(GIVEN.get() + 1);
    let mut bytes = [0; N];
    for (byte, given) in bytes.iter_mut().zip(GIVEN.get().to_le_bytes()) {
        *byte = given;
    }
    Ok(bytes)
}
