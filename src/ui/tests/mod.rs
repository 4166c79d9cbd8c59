//! What each screen shows, which of its keys are live and what each writes, without a browser.

mod answers;
mod endings;
mod kinds;
mod phone;
mod screens;
#[path = "../../../tests/support/technician.rs"]
#[allow(dead_code, reason = "each test uses a part of it")]
mod technician;
mod together;
mod walk;
