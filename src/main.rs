//! The app in the browser; on a computer, the command for its files.

#[cfg(not(target_arch = "wasm32"))]
mod command;

#[cfg(target_arch = "wasm32")]
fn main() {
    hubslate::ui::start();
}

#[cfg(not(target_arch = "wasm32"))]
fn main() -> std::process::ExitCode {
    command::main()
}
