//! The only door to the browser: storage, photos, files, clock, wake lock, tone, updates.
