//! Hubslate: the slate that a mobile wheel-bearing technician works from.
//!
//! The modules below stand in reading order; each may use those above it and none below.

pub mod word;

pub mod sorted;

pub mod map;

pub mod letters;

pub mod units;

pub mod trade;

pub mod job;

pub mod text;

pub mod drawing;

pub mod report;

pub mod exchange;

pub mod platform;

pub mod slate;

pub mod ui;

// The tests of views work whole jobs with the hands that all other tests have.
#[cfg(test)]
extern crate self as hubslate;

#[cfg(test)]
#[path = "../tests/support/record.rs"]
#[allow(dead_code, reason = "each test uses a part of it")]
mod record;
