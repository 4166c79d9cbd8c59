//! The app in the browser; on a computer, a word on how to start it.

#[cfg(target_arch = "wasm32")]
fn main() {
    hubslate::ui::start();
}

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    println!(
        "Hubslate runs in a browser: `cargo run` builds it and serves it on http://localhost:8080."
    );
}
