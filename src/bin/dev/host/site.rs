//! Building the release of the app into a folder.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::Instant;

use super::trouble::HostError;
use super::{cache, root, split, tools};

/// The page of the app.
pub const APP: &str = "public/index.html";
/// The empty page that the benchmarks compare the app with.
pub const FLOOR: &str = "tests/bench/floor.html";

/// What an import reckons, without a screen, for the benchmarks.
pub const INTAKE: &str = "tests/bench/intake.html";

/// What the compiler is told for the browser alone: the hook that runs in the same build is compiled
/// for the computer and keeps its own.
const FLAGS: &str = "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS";

/// Builds `page` into `dir`, making the tools ready first.
///
/// # Errors
/// A missing tool, a folder that is not ours to replace, or a build that fails.
pub fn build(page: &str, dir: &Path) -> Result<(), HostError> {
    let dir = whole_path(dir)?;
    may_replace(&dir)?;
    let mut first = tools::ready()?;
    // Two builds would share Trunk's working folders inside `target`.
    let _alone = cache::lock(&root().join("target/web.lock"), "builds this checkout")?;
    println!("Building {page} (about 2 minutes the first time, less than 1 after) …");
    let begun = Instant::now();
    let mut trunk = Command::new("trunk");
    trunk
        .args(["build", "--offline", "--dist"])
        .arg(&dir)
        .arg(page)
        .current_dir(root());
    let real = first
        .iter()
        .map(|folder| folder.join("wasm-bindgen"))
        .find(|file| file.is_file());
    if let Some(real) = real {
        first.insert(0, split::stand_in(&mut trunk, &real)?);
    }
    trunk.env("PATH", path_with(first)).stdin(Stdio::null());
    tools::clean(&mut trunk);
    trunk.env(FLAGS, flags());
    match trunk.status() {
        Ok(status) if status.success() => {
            println!(
                "Built into {} in {} s.",
                dir.display(),
                begun.elapsed().as_secs()
            );
            Ok(())
        }
        _ => Err(HostError::Failed {
            step: "Building the app".to_owned(),
            log: None,
            mend: "fix what the lines above name.".to_owned(),
        }),
    }
}

/// Leptos keeps elements and attributes behind pointers instead of as one type a screen: a tenth
/// less to load. What a panic names is a crate, not a folder of this computer.
fn flags() -> String {
    let erased = "--cfg=erase_components -Clink-arg=--emit-relocs";
    let saved = std::env::var_os("CARGO_HOME")
        .map(PathBuf::from)
        .or_else(|| std::env::home_dir().map(|home| home.join(".cargo")));
    match saved.as_deref().and_then(Path::to_str) {
        // The variable knows no quotes: a folder with a blank in its name stays as it is.
        Some(saved) if !saved.contains(char::is_whitespace) => {
            format!("{erased} --remap-path-prefix={saved}=cargo")
        }
        _ => erased.to_owned(),
    }
}

fn whole_path(dir: &Path) -> Result<PathBuf, HostError> {
    std::path::absolute(dir).map_err(|why| HostError::file("find", dir, &why))
}

/// Trunk empties the folder it builds into: only an empty one or an earlier build may be emptied.
fn may_replace(dir: &Path) -> Result<(), HostError> {
    fs::create_dir_all(dir).map_err(|why| HostError::file("make the folder", dir, &why))?;
    let mut inside = fs::read_dir(dir).map_err(|why| HostError::file("read", dir, &why))?;
    let earlier_build = dir.join("index.html").is_file() && dir.join("sw.js").is_file();
    // Trunk's own working folder alone is what a build that was broken off leaves.
    let strange = inside.any(|entry| entry.is_ok_and(|entry| entry.file_name() != ".stage"));
    if strange && !earlier_build {
        return Err(HostError::NotOurs {
            dir: dir.to_path_buf(),
        });
    }
    Ok(())
}

fn path_with(first: Vec<PathBuf>) -> std::ffi::OsString {
    let before = std::env::var_os("PATH").unwrap_or_default();
    let all = first.into_iter().chain(std::env::split_paths(&before));
    std::env::join_paths(all).unwrap_or(before)
}
