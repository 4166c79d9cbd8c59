//! The part of the program that no first screen needs, put beside the first.
//!
//! The build leaves it in the folder that `HUBSLATE_LATE` names: a script that loads it, and the
//! part itself.

use std::fs;
use std::io::Error;
use std::path::{Path, PathBuf};

/// Puts the second part into the folder of the build; its script calls the glue by the name that
/// the page has for it.
///
/// # Errors
/// A file that cannot be read or written.
pub fn add(dir: &Path, page: &str) -> Result<(), (PathBuf, Error)> {
    let glue = page
        .split_once("const GLUE = \"")
        .and_then(|(_, rest)| rest.split_once('"'));
    let (Some(late), Some((glue, _))) =
        (std::env::var_os("HUBSLATE_LATE").map(PathBuf::from), glue)
    else {
        return Ok(());
    };
    if !late.is_dir() {
        return Ok(());
    }
    for entry in fs::read_dir(&late).map_err(|why| (late.clone(), why))? {
        let from = entry.map_err(|why| (late.clone(), why))?.path();
        let Some(name) = from.file_name() else {
            continue;
        };
        let to = dir.join(name);
        if from.extension().is_some_and(|end| end == "js") {
            let script = fs::read_to_string(&from).map_err(|why| (from.clone(), why))?;
            let named = script.replace("./hubslate.js", glue);
            fs::write(&to, named).map_err(|why| (to.clone(), why))?;
        } else {
            fs::copy(&from, &to).map_err(|why| (to.clone(), why))?;
        }
    }
    Ok(())
}
