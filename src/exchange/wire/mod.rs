//! The stored and exported form of an entry; the only types that serde knows.
