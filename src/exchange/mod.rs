//! Files in and out: the only serde types, schema, export, import, merge.

pub mod summary;
pub mod wire;

use sha2::{Digest, Sha256};

/// SHA-256 (FIPS 180-4) of bytes, in lowercase hex.
pub fn sha256_hex(bytes: &[u8]) -> String {
    Sha256::digest(bytes)
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect()
}
