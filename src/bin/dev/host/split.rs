//! What the build does between the compiler and wasm-bindgen: it takes the part of the program that
//! no first screen needs out into a file of its own.
//!
//! Trunk has no hook there, but it finds wasm-bindgen on PATH. A copy of this program under that
//! name stands first on it, divides, and calls the real one.

use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode};

use super::root;
use super::trouble::HostError;

/// The name that Trunk calls.
const NAME: &str = "wasm-bindgen";
/// Which file the real one is.
const REAL: &str = "HUBSLATE_WASM_BINDGEN";
/// Where the build's last step finds the second part.
pub const LATE: &str = "HUBSLATE_LATE";

/// What the page asks of wasm-opt for the first part (`public/index.html`).
const SMALLER: [&str; 9] = [
    "--enable-bulk-memory",
    "--enable-bulk-memory-opt",
    "--enable-nontrapping-float-to-int",
    "--enable-sign-ext",
    "--enable-mutable-globals",
    "--enable-reference-types",
    "--enable-multivalue",
    "--enable-call-indirect-overlong",
    "-Oz",
];

/// Whether this program was called as wasm-bindgen.
pub fn is_called() -> bool {
    let called = std::env::args_os().next().map(PathBuf::from);
    called.is_some_and(|path| path.file_stem().is_some_and(|stem| stem == NAME))
}

/// Makes Trunk call this program instead of `real`, and gives the folder to put first on PATH.
///
/// # Errors
/// A file that cannot be written.
pub fn stand_in(trunk: &mut Command, real: &Path) -> Result<PathBuf, HostError> {
    let folder = root().join("target/stand-in");
    let late = root().join("target/late");
    fs::create_dir_all(&folder).map_err(|why| HostError::file("make", &folder, &why))?;
    let me = std::env::current_exe().map_err(|why| HostError::file("find", &folder, &why))?;
    let name = folder.join(format!("{NAME}{}", std::env::consts::EXE_SUFFIX));
    fs::copy(&me, &name).map_err(|why| HostError::file("write", &name, &why))?;
    trunk.env(REAL, real).env(LATE, &late);
    Ok(folder)
}

/// Divides the program and hands the first part to the real wasm-bindgen; any other call goes there
/// as it came.
pub fn main() -> ExitCode {
    let arguments: Vec<OsString> = std::env::args_os().skip(1).collect();
    match divided(&arguments) {
        Some(status) if status.success() => ExitCode::SUCCESS,
        _ => ExitCode::FAILURE,
    }
}

fn divided(arguments: &[OsString]) -> Option<std::process::ExitStatus> {
    let real = std::env::var_os(REAL)?;
    let value = |name: &str| {
        let mut texts = arguments.iter().filter_map(|argument| argument.to_str());
        texts.find_map(|text| text.strip_prefix(name))
    };
    if value("--out-name=") != Some("hubslate") {
        return Command::new(real).args(arguments).status().ok();
    }
    let late = PathBuf::from(std::env::var_os(LATE)?);
    let _ = fs::remove_dir_all(&late);
    fs::create_dir_all(&late).ok()?;
    let whole = arguments
        .iter()
        .find(|text| Path::new(text).extension().is_some_and(|end| end == "wasm"))?;
    let split = Command::new("wasm-split-cli")
        .args(["--target", "web", "--out-name", "hubslate"])
        .arg(whole)
        .arg(&late)
        .status()
        .ok()?;
    if !split.success() {
        return Some(split);
    }
    let first = late.join("hubslate.wasm");
    let others = arguments.iter().map(|argument| {
        if argument == whole {
            first.as_os_str()
        } else {
            argument.as_os_str()
        }
    });
    let bound = Command::new(real)
        .arg("--keep-lld-exports")
        .args(others)
        .status()
        .ok()?;
    fs::remove_file(&first).ok()?;
    let second = late.join("split_late.wasm");
    let smaller = Command::new("wasm-opt")
        .args(SMALLER)
        .arg(&second)
        .arg("-o")
        .arg(&second)
        .status()
        .ok()?;
    Some(if bound.success() { smaller } else { bound })
}
