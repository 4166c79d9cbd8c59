//! The report as a pure value.
