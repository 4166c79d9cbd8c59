//! Why the command cannot go on, each with the one thing that mends it.

use std::fmt;
use std::path::{Path, PathBuf};

/// Everything that stops the command.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum HostError {
    /// The command line was not understood.
    Usage(String),
    /// Something this computer lacks and the command may not install by itself.
    Missing { what: String, mend: String },
    /// A child process ended badly.
    Failed {
        step: String,
        log: Option<PathBuf>,
        mend: String,
    },
    /// A file or folder could not be read or written.
    File {
        doing: &'static str,
        path: PathBuf,
        why: String,
    },
    /// Another program listens on the port.
    PortTaken { port: u16 },
    /// The folder holds something that is no build of this app, so a build must not replace it.
    NotOurs { dir: PathBuf },
}

impl HostError {
    /// A file system error with what was being done to which path.
    pub fn file(doing: &'static str, path: &Path, why: &std::io::Error) -> Self {
        Self::File {
            doing,
            path: path.to_path_buf(),
            why: why.to_string(),
        }
    }
}

impl fmt::Display for HostError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Usage(what) => write!(f, "{what}.\n{}", super::order::HELP),
            Self::Missing { what, mend } => write!(f, "{what} is missing: {mend}"),
            Self::Failed {
                step,
                log: Some(log),
                mend,
            } => {
                write!(
                    f,
                    "{step} failed: {mend} (its output is in {})",
                    log.display()
                )
            }
            Self::Failed {
                step,
                log: None,
                mend,
            } => write!(f, "{step} failed: {mend}"),
            Self::File { doing, path, why } => {
                write!(f, "Could not {doing} {}: {why}.", path.display())
            }
            Self::PortTaken { port } => write!(
                f,
                "Port {port} is taken by another program: run `cargo run -- --port {}`.",
                port.checked_add(1).unwrap_or(8080)
            ),
            Self::NotOurs { dir } => write!(
                f,
                "{} holds files that are no build of this app: name an empty or new folder.",
                dir.display()
            ),
        }
    }
}
