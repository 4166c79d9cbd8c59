//! Python with the packages that `tests/requirements.txt` pins, made ready by the project itself.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// The interpreter.
pub fn interpreter() -> PathBuf {
    let output = Command::new(env!("CARGO_BIN_EXE_dev"))
        .arg("python")
        .output()
        .unwrap();
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    assert!(
        output.status.success(),
        "{text}{}",
        String::from_utf8_lossy(&output.stderr)
    );
    PathBuf::from(text.lines().last().unwrap())
}

fn start(script: &str, arguments: &[&Path]) -> Output {
    let tests = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests");
    Command::new(interpreter())
        .arg(tests.join(script))
        .args(arguments)
        .env("PYTHONDONTWRITEBYTECODE", "1")
        .output()
        .unwrap()
}

/// What a script of `tests/` prints, whether or not it is content.
pub fn answer(script: &str, arguments: &[&Path]) -> String {
    let output = start(script, arguments);
    String::from_utf8_lossy(&output.stdout).into_owned()
}

/// What a script of `tests/` prints; it must end well.
#[track_caller]
pub fn run(script: &str, arguments: &[&Path]) -> String {
    let output = start(script, arguments);
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    let errors = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{script}: {text}{errors}");
    text
}
