//! The per-user folder of tools: built once, kept by name and version, shared by every checkout.

use std::fs::{self, File, TryLockError};
use std::path::{Path, PathBuf};

use super::trouble::HostError;

/// Where the tool `name` of `version` is kept.
///
/// # Errors
/// [`HostError::Missing`] if the computer names no home folder.
pub fn folder(name: &str, version: &str) -> Result<PathBuf, HostError> {
    Ok(home()?.join(format!("{name}-{version}")))
}

/// `$XDG_CACHE_HOME/hubslate`, or `~/.cache/hubslate`.
///
/// # Errors
/// [`HostError::Missing`] if neither variable is set.
pub fn home() -> Result<PathBuf, HostError> {
    let set = |name: &str| {
        std::env::var_os(name)
            .filter(|v| !v.is_empty())
            .map(PathBuf::from)
    };
    set("XDG_CACHE_HOME")
        .or_else(|| {
            set("HOME")
                .or_else(|| set("USERPROFILE"))
                .map(|home| home.join(".cache"))
        })
        .map(|cache| cache.join("hubslate"))
        .ok_or_else(|| HostError::Missing {
            what: "A home folder for the tools".to_owned(),
            mend: "set XDG_CACHE_HOME to a folder that may be written.".to_owned(),
        })
}

/// Keeps other runs out for as long as the file lives; the system lets go when the process ends.
///
/// # Errors
/// [`HostError::File`] if the lock cannot be made or taken.
pub fn lock(path: &Path, what_others_do: &str) -> Result<File, HostError> {
    if let Some(parent) = path.parent() {
        fs::create_dir_all(parent)
            .map_err(|why| HostError::file("make the folder", parent, &why))?;
    }
    let file = File::create(path).map_err(|why| HostError::file("make the lock", path, &why))?;
    match file.try_lock() {
        Ok(()) => Ok(file),
        Err(TryLockError::WouldBlock) => {
            println!("Waiting: another run {what_others_do}.");
            file.lock()
                .map_err(|why| HostError::file("take the lock", path, &why))?;
            Ok(file)
        }
        Err(TryLockError::Error(why)) => Err(HostError::file("take the lock", path, &why)),
    }
}
