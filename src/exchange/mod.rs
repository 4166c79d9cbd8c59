//! Files in and out: the only serde types, schema, export, import, merge.

pub mod summary;
pub mod wire;
