//! What the browser tests need: Node, its packages and a Chromium.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use super::trouble::HostError;
use super::{cache, root, step};

/// The oldest Node that the browser tests and wasm-opt run on.
const NODE: u32 = 20;
const NETWORK: &str = "check the network, then run the same command again.";
const CHROMIUMS: [&str; 4] = [
    "chromium",
    "chromium-browser",
    "google-chrome",
    "google-chrome-stable",
];

/// Makes Node, the packages of tests/e2e and Chromium ready.
///
/// # Errors
/// The first thing that is missing or cannot be installed.
pub fn ready() -> Result<(), HostError> {
    node()?;
    packages(&root().join("tests/e2e"))?;
    println!("Browser: {}", chromium()?.display());
    Ok(())
}

/// Checks for Node and npm, installing them where that is allowed.
///
/// # Errors
/// [`HostError::Missing`] if they are not here or too old.
pub fn node() -> Result<(), HostError> {
    if !node_is_here() && may_install() {
        apt_get("Installing Node", "1 minute, once", &["nodejs", "npm"])?;
    }
    if node_is_here() {
        return Ok(());
    }
    Err(HostError::Missing {
        what: format!("Node {NODE} or newer with npm"),
        mend: "install it (for example `brew install node`, or `sudo apt-get install nodejs npm` where \
               that gives Node 20), then run the same command again."
            .to_owned(),
    })
}

fn node_is_here() -> bool {
    let version = step::answer("node", &["--version"]).and_then(|text| major(&text));
    version.is_some_and(|major| NODE <= major) && step::answer("npm", &["--version"]).is_some()
}

fn major(version: &str) -> Option<u32> {
    version.strip_prefix('v')?.split('.').next()?.parse().ok()
}

/// Installs the packages of `folder` unless those that its lock names are already there.
fn packages(folder: &Path) -> Result<(), HostError> {
    let _alone = cache::lock(
        &root().join("target/npm.lock"),
        "installs the Node packages",
    )?;
    let lock = folder.join("package-lock.json");
    let mark = folder.join("node_modules/.installed-lock");
    let wanted = fs::read(&lock).map_err(|why| HostError::file("read", &lock, &why))?;
    if fs::read(&mark).is_ok_and(|had| had == wanted) {
        return Ok(());
    }
    let mut install = Command::new("npm");
    install
        .args(["ci", "--no-audit", "--no-fund"])
        .current_dir(folder);
    step::run(
        "Installing the packages of the browser tests",
        "20 seconds, once",
        NETWORK,
        &mut install,
    )?;
    fs::write(&mark, wanted).map_err(|why| HostError::file("write", &mark, &why))
}

/// The Chromium to test in: `$HUBSLATE_CHROMIUM`, or the first one on PATH.
fn chromium() -> Result<PathBuf, HostError> {
    if let Some(named) = std::env::var_os("HUBSLATE_CHROMIUM").map(PathBuf::from) {
        return if named.is_file() {
            Ok(named)
        } else {
            Err(no_chromium(&named))
        };
    }
    if find_chromium().is_none() && may_install() {
        apt_get("Installing Chromium", "2 minutes, once", &["chromium"])?;
    }
    find_chromium().ok_or_else(|| HostError::Missing {
        what: "Chromium".to_owned(),
        mend: "install it (for example `sudo apt-get install chromium`), or set HUBSLATE_CHROMIUM \
               to the path of a Chrome."
            .to_owned(),
    })
}

fn no_chromium(named: &Path) -> HostError {
    HostError::Missing {
        what: format!("The browser {}", named.display()),
        mend: "set HUBSLATE_CHROMIUM to the path of a Chromium, or unset it.".to_owned(),
    }
}

fn find_chromium() -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    let folders: Vec<PathBuf> = std::env::split_paths(&path).collect();
    CHROMIUMS
        .iter()
        .flat_map(|name| folders.iter().map(move |folder| folder.join(name)))
        .find(|program| program.is_file())
}

/// Packages of the system are installed only where nobody has to be asked: Debian, as root.
pub fn may_install() -> bool {
    Path::new("/etc/debian_version").is_file()
        && step::answer("id", &["-u"]).is_some_and(|user| user == "0")
}

/// Installs packages of the system.
///
/// # Errors
/// [`HostError::Failed`] if the system refuses.
pub fn apt_get(step_name: &str, about: &str, names: &[&str]) -> Result<(), HostError> {
    let script = format!(
        "apt-get update && apt-get install -y --no-install-recommends {}",
        names.join(" ")
    );
    let mut install = Command::new("sh");
    install
        .args(["-c", &script])
        .env("DEBIAN_FRONTEND", "noninteractive");
    step::run(step_name, about, NETWORK, &mut install)
}

#[cfg(test)]
mod tests {
    use super::major;

    #[test]
    fn major_version_of_node_is_read() {
        assert_eq!(major("v20.20.2"), Some(20));
        assert_eq!(major("20.20.2"), None);
        assert_eq!(major("vnext"), None);
    }
}
