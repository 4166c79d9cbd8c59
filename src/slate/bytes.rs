//! Keeping a picture or a voice note: the bytes first, and an entry only for bytes that are kept.

use crate::exchange::sha256_hex;
use crate::platform::record::{Photo, StoreError};

/// Where bytes are kept under their digest.
pub trait Bytes {
    /// Keeps bytes; resolves only once they are durable.
    ///
    /// # Errors
    /// What the storage refused; nothing of them was kept then.
    fn put(&self, sha256: &str, saved: Photo) -> impl Future<Output = Result<(), StoreError>>;
}

/// Keeps bytes and gives the digest that an entry may name. Where they are refused there is no
/// digest, and so no entry: nothing that was kept before is touched.
///
/// # Errors
/// What the storage refused.
pub async fn keep_bytes<B: Bytes>(place: &B, saved: Photo) -> Result<String, StoreError> {
    let sha256 = sha256_hex(&saved.bytes);
    place.put(&sha256, saved).await?;
    Ok(sha256)
}
