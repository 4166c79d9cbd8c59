//! The only source of randomness: the browser's own, good enough for ids.

use super::js;

/// The browser has no source of randomness.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoChance;

/// `N` random bytes.
///
/// # Errors
/// [`NoChance`] where the browser has no `crypto`; no id may be made then.
pub fn random<const N: usize>() -> Result<[u8; N], NoChance> {
    let crypto = js::window()
        .and_then(|window| window.crypto().ok())
        .ok_or(NoChance)?;
    let mut bytes = [0; N];
    crypto
        .get_random_values_with_u8_array(&mut bytes)
        .map_err(|_| NoChance)?;
    Ok(bytes)
}
