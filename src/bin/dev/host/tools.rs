//! What a build needs: the wasm target, Trunk, wasm-bindgen, wasm-opt and the crates themselves.
//!
//! Every version is pinned here or in Cargo.lock, so that two computers build the same bytes.

use std::path::PathBuf;
use std::process::Command;

use super::trouble::HostError;
use super::{browsers, cache, root, step};

const TRUNK: &str = "0.21.14";
const BINARYEN: &str = "132.0.0";
const WASM: &str = "wasm32-unknown-unknown";
const NETWORK: &str = "check the network, then run the same command again.";

/// Makes every tool of a build ready and gives the folders to put first on PATH.
///
/// # Errors
/// The first thing that is missing or cannot be installed.
pub fn ready() -> Result<Vec<PathBuf>, HostError> {
    let _alone = cache::lock(&cache::home()?.join("tools.lock"), "installs the tools")?;
    wasm_target()?;
    crates()?;
    let trunk = cargo_tool(&CargoTool {
        name: "trunk",
        program: "trunk",
        version: TRUNK,
        options: &["--locked", "--no-default-features", "--features", "rustls"],
        about: "6 minutes, once",
    })?;
    // Its own lock file does not build with every release, so it is installed without it.
    let bindgen = cargo_tool(&CargoTool {
        name: "wasm-bindgen-cli",
        program: "wasm-bindgen",
        version: &locked_version("wasm-bindgen")?,
        options: &[],
        about: "3 minutes, once",
    })?;
    let split = cargo_tool(&CargoTool {
        name: "wasm_split_cli_support",
        program: "wasm-split-cli",
        version: &locked_version("wasm_split_helpers")?,
        options: &["--locked", "--features", "build-binary"],
        about: "1 minute, once",
    })?;
    browsers::node()?;
    Ok(vec![trunk, bindgen, split, wasm_opt()?])
}

/// A program that `cargo install` builds.
struct CargoTool<'a> {
    name: &'a str,
    program: &'a str,
    version: &'a str,
    options: &'a [&'a str],
    about: &'a str,
}

fn cargo_tool(tool: &CargoTool) -> Result<PathBuf, HostError> {
    let folder = cache::folder(tool.name, tool.version)?;
    let bin = folder.join("bin");
    let program = bin.join(format!("{}{}", tool.program, std::env::consts::EXE_SUFFIX));
    if program.is_file() {
        return Ok(bin);
    }
    let mut install = Command::new("cargo");
    install
        .args(["install", tool.name, "--version", tool.version])
        .args(tool.options);
    install
        .arg("--root")
        .arg(&folder)
        .current_dir(cache::home()?);
    clean(&mut install);
    step::run(
        &format!("Installing {} {}", tool.name, tool.version),
        tool.about,
        NETWORK,
        &mut install,
    )?;
    Ok(bin)
}

fn wasm_target() -> Result<(), HostError> {
    let sysroot = step::answer("rustc", &["--print", "sysroot"]).unwrap_or_default();
    if PathBuf::from(sysroot)
        .join("lib/rustlib")
        .join(WASM)
        .is_dir()
    {
        return Ok(());
    }
    if step::answer("rustup", &["--version"]).is_none() {
        return Err(HostError::Missing {
            what: format!("The Rust target {WASM}"),
            mend: "install Rust with rustup, or this target from where your Rust came from."
                .to_owned(),
        });
    }
    let mut add = Command::new("rustup");
    add.args(["target", "add", WASM]);
    step::run(
        "Adding the Rust target for the browser",
        "20 seconds, once",
        NETWORK,
        &mut add,
    )
}

/// The build itself runs without the network, so the crates must be here before.
fn crates() -> Result<(), HostError> {
    let fetch = |offline: &[&str]| {
        let mut fetch = Command::new("cargo");
        fetch
            .args(["fetch", "--locked", "--target", WASM])
            .args(offline)
            .current_dir(root());
        fetch
    };
    let here = fetch(&["--offline", "--quiet"])
        .stderr(std::process::Stdio::null())
        .status();
    if here.is_ok_and(|status| status.success()) {
        return Ok(());
    }
    step::run(
        "Fetching the crates",
        "1 minute, once",
        NETWORK,
        &mut fetch(&[]),
    )
}

fn wasm_opt() -> Result<PathBuf, HostError> {
    let folder = cache::folder("binaryen", BINARYEN)?;
    let bin = folder.join("node_modules/.bin");
    if bin.join("wasm-opt").is_file() {
        return Ok(bin);
    }
    let mut install = Command::new("npm");
    install
        .args(["install", "--no-audit", "--no-fund", "--prefix"])
        .arg(&folder);
    install
        .arg(format!("binaryen@{BINARYEN}"))
        .current_dir(cache::home()?);
    step::run(
        &format!("Installing wasm-opt {BINARYEN}"),
        "20 seconds, once",
        NETWORK,
        &mut install,
    )?;
    Ok(bin)
}

/// The version of `name` that Cargo.lock holds; the tool must be of exactly the same.
fn locked_version(name: &str) -> Result<String, HostError> {
    let path = root().join("Cargo.lock");
    let text =
        std::fs::read_to_string(&path).map_err(|why| HostError::file("read", &path, &why))?;
    version_in(&text, name).ok_or_else(|| HostError::Missing {
        what: format!("`{name}` in Cargo.lock"),
        mend: "run `git checkout Cargo.lock`.".to_owned(),
    })
}

fn version_in(lock: &str, name: &str) -> Option<String> {
    let head = format!("name = \"{name}\"\nversion = \"");
    let (_, rest) = lock.split_once(&head)?;
    rest.split_once('"').map(|(version, _)| version.to_owned())
}

/// Takes away what a shell or an outer cargo would force on the children.
pub fn clean(command: &mut Command) {
    for name in [
        "NO_COLOR",
        "RUSTFLAGS",
        "CARGO_ENCODED_RUSTFLAGS",
        "CARGO_BUILD_TARGET",
    ] {
        command.env_remove(name);
    }
    command.env("RUST_BACKTRACE", "0");
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn version_is_that_of_the_very_name() {
        let lock = "[[package]]\nname = \"wasm-bindgen-futures\"\nversion = \"0.4.9\"\n\n\
                    [[package]]\nname = \"wasm-bindgen\"\nversion = \"0.2.1\"\n";
        assert_eq!(version_in(lock, "wasm-bindgen"), Some("0.2.1".to_owned()));
        assert_eq!(version_in(lock, "wasm"), None);
    }
}
