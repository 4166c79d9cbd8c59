//! The one command of the project: `cargo run` makes everything ready, builds and serves the app.
//!
//! It runs on the developer's computer only; compiled for the browser it is empty.

#[cfg(not(target_arch = "wasm32"))]
mod host;

#[cfg(not(target_arch = "wasm32"))]
fn main() -> std::process::ExitCode {
    host::main()
}

#[cfg(target_arch = "wasm32")]
fn main() {}
