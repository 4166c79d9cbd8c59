//! Bringing in the files of many phones: the reckoning in Chromium beside `JSON.parse`, the app with
//! its storage, and a search over ten thousand jobs. The same natively is `--bench join`.
//!
//! `HUBSLATE_JOBS` sets another number than 10,000.

mod pages;

use std::process::ExitCode;

fn main() -> ExitCode {
    pages::measured("intake", "intake.mjs")
}
