//! The part of the program that no first screen needs, put beside the first.
//!
//! The build leaves two files in the folder that `HUBSLATE_LATE` names: the part, and a script that
//! the glue imports and that loads the part. Both get names of their contents here, as Trunk gives
//! them to the others.

use std::fs;
use std::io::Error;
use std::path::{Path, PathBuf};

use sha2::{Digest, Sha256};

/// What the glue calls the script, the script calls the glue, and both call the part.
const SCRIPT: &str = "__wasm_split.js";
const GLUE: &str = "./hubslate.js";
const PART: &str = "split_late.wasm";

/// Puts the second part into the folder of the build; a page whose program is whole stays as it is.
///
/// # Errors
/// A file that cannot be read or written.
pub fn add(dir: &Path, page: &str) -> Result<(), (PathBuf, Error)> {
    let Some(late) = std::env::var_os("HUBSLATE_LATE").map(PathBuf::from) else {
        return Ok(());
    };
    let named = page.split_once("const GLUE = \"./");
    let Some((glue, _)) = named.and_then(|(_, rest)| rest.split_once('"')) else {
        return Ok(());
    };
    let path = dir.join(glue);
    let text = read(&path)?;
    if !text.contains(SCRIPT) {
        return Ok(());
    }
    let from = late.join(PART);
    let part = fs::read(&from).map_err(|why| (from, why))?;
    let part_name = format!("late-{}_bg.wasm", short(&part));
    write(&dir.join(&part_name), &part)?;
    let script = read(&late.join(SCRIPT))?;
    let script = script
        .replace(GLUE, &format!("./{glue}"))
        .replace(PART, &part_name);
    let script_name = format!("late-{}.js", short(script.as_bytes()));
    write(&dir.join(&script_name), script.as_bytes())?;
    // In the object of imports it keeps its name: that is what the program asks for.
    let from = |name: &str| format!("from \"./{name}\"");
    if !text.contains(&from(SCRIPT)) {
        return Err((path, Error::other("the glue does not import the script")));
    }
    write(
        &path,
        text.replace(&from(SCRIPT), &from(&script_name)).as_bytes(),
    )
}

fn short(bytes: &[u8]) -> String {
    super::host::short(&Sha256::digest(bytes))
}

fn read(path: &Path) -> Result<String, (PathBuf, Error)> {
    fs::read_to_string(path).map_err(|why| (path.to_path_buf(), why))
}

fn write(path: &Path, bytes: &[u8]) -> Result<(), (PathBuf, Error)> {
    fs::write(path, bytes).map_err(|why| (path.to_path_buf(), why))
}
