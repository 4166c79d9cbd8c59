//! What the tests in Python need: an interpreter with the packages that `tests/requirements.txt`
//! pins, kept in the per-user cache by what that file says.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use super::trouble::HostError;
use super::{browsers, cache, root, step};
use hubslate::exchange::sha256_hex;

/// The oldest Python that the pinned packages run on.
const OLDEST: (u32, u32) = (3, 11);
const NETWORK: &str = "check the network, then run the same command again.";
const NAMES: [&str; 2] = ["python3", "python"];

/// Makes the packages ready and gives the interpreter that has them.
///
/// # Errors
/// The first thing that is missing or cannot be installed.
pub fn ready() -> Result<PathBuf, HostError> {
    let list = root().join("tests/requirements.txt");
    let wanted = fs::read(&list).map_err(|why| HostError::file("read", &list, &why))?;
    let version: String = sha256_hex(&wanted).chars().take(12).collect();
    let folder = cache::folder("python", &version)?;
    let _alone = cache::lock(&cache::home()?.join("python.lock"), "installs for Python")?;
    let mark = folder.join(".ready");
    let python = inside(&folder);
    if mark.is_file() && python.is_file() {
        return Ok(python);
    }
    // A run that was stopped may have left half a folder.
    let _ = fs::remove_dir_all(&folder);
    let mut make = Command::new(interpreter()?);
    make.args(["-m", "venv"]).arg(&folder);
    step::run(
        "Making room for Python's packages",
        "10 seconds, once",
        VENV,
        &mut make,
    )?;
    let mut install = Command::new(&python);
    install.args([
        "-m",
        "pip",
        "install",
        "--disable-pip-version-check",
        "--no-input",
        "-r",
    ]);
    install.arg(&list);
    step::run(
        "Installing the packages of the second opinion",
        "1 minute, once",
        NETWORK,
        &mut install,
    )?;
    fs::write(&mark, wanted).map_err(|why| HostError::file("write", &mark, &why))?;
    Ok(python)
}

const VENV: &str = "install Python's venv (for example `sudo apt-get install python3-venv`), then \
                    run the same command again.";

fn inside(folder: &Path) -> PathBuf {
    folder.join(if cfg!(windows) {
        "Scripts/python.exe"
    } else {
        "bin/python"
    })
}

fn interpreter() -> Result<&'static str, HostError> {
    if find().is_none() && browsers::may_install() {
        let names = ["python3", "python3-venv"];
        browsers::apt_get("Installing Python", "1 minute, once", &names)?;
    }
    find().ok_or_else(|| HostError::Missing {
        what: format!("Python {}.{} or newer with venv", OLDEST.0, OLDEST.1),
        mend: "install it (for example `sudo apt-get install python3-venv`), then run the same \
               command again."
            .to_owned(),
    })
}

/// A Python that is new enough and can make an environment with pip in it.
fn find() -> Option<&'static str> {
    NAMES.into_iter().find(|name| {
        let version = step::answer(name, &["--version"]).and_then(|text| number(&text));
        version.is_some_and(|version| OLDEST <= version)
            && step::answer(name, &["-c", "import venv, ensurepip"]).is_some()
    })
}

fn number(version: &str) -> Option<(u32, u32)> {
    let mut parts = version.strip_prefix("Python ")?.split('.');
    Some((parts.next()?.parse().ok()?, parts.next()?.parse().ok()?))
}

#[cfg(test)]
mod tests {
    use super::number;

    #[test]
    fn the_version_of_python_is_read() {
        assert_eq!(number("Python 3.11.7"), Some((3, 11)));
        assert_eq!(number("Python 3.9"), Some((3, 9)));
        assert_eq!(number("3.11"), None);
    }
}
