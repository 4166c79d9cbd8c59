//! The command line as a value.

use std::path::PathBuf;

use super::trouble::HostError;

/// What `--help` prints.
pub const HELP: &str = "\
cargo run                        make ready what is missing, build, serve on http://localhost:8080
cargo run -- --port N --dir DIR  the same on another port, built into another folder
cargo run -- serve --dir DIR     serve a folder as it is, without building
cargo run -- build DIR           build the release of the app into DIR
cargo run -- floor DIR           build the empty page that `cargo bench` compares with into DIR
cargo run -- intake DIR          build the page on which `cargo bench` imports into DIR
cargo run -- tools               make ready what a build needs
cargo run -- browsers            make ready what the browser tests need
cargo run -- python              make ready what the tests in Python need, and name the interpreter";

/// The port that is served when none is named.
const PORT: u16 = 8080;

/// One thing that the command can be asked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Order {
    /// Print [`HELP`].
    Help,
    /// Build into `dir`, replacing an earlier build there.
    Build { dir: PathBuf },
    /// Build the empty page that the benchmarks compare with into `dir`.
    Floor { dir: PathBuf },
    /// Build the page on which the benchmarks import into `dir`.
    Intake { dir: PathBuf },
    /// Make Node's packages and Chromium ready.
    Browsers,
    /// Make Python's packages ready.
    Python,
    /// Make the tools of a build ready.
    Tools,
    /// Serve `dir` (`dist` if none is named), after a build if `build`.
    Serve {
        dir: Option<PathBuf>,
        port: u16,
        build: bool,
    },
}

/// Reads the arguments that follow the program's name.
///
/// # Errors
/// [`HostError::Usage`] names the first argument that is not understood.
pub fn read(arguments: impl Iterator<Item = String>) -> Result<Order, HostError> {
    let mut arguments = arguments.peekable();
    let word = match arguments.peek() {
        Some(first) if !first.starts_with("--") => arguments.next().unwrap_or_default(),
        _ => String::new(),
    };
    match word.as_str() {
        "" => serve(arguments, true),
        "serve" => serve(arguments, false),
        "build" => folder(arguments).map(|dir| Order::Build { dir }),
        "floor" => folder(arguments).map(|dir| Order::Floor { dir }),
        "intake" => folder(arguments).map(|dir| Order::Intake { dir }),
        "browsers" => nothing_more(arguments, Order::Browsers),
        "python" => nothing_more(arguments, Order::Python),
        "tools" => nothing_more(arguments, Order::Tools),
        "help" => nothing_more(arguments, Order::Help),
        other => Err(unknown(other)),
    }
}

fn serve(mut rest: impl Iterator<Item = String>, build: bool) -> Result<Order, HostError> {
    let (mut dir, mut port) = (None, PORT);
    while let Some(flag) = rest.next() {
        match (flag.as_str(), rest.next()) {
            ("--help", _) => return Ok(Order::Help),
            ("--dir", Some(value)) => dir = Some(PathBuf::from(value)),
            ("--port", Some(value)) => {
                port = value
                    .parse()
                    .map_err(|_| HostError::Usage(format!("`{value}` is not a port number")))?;
            }
            ("--dir" | "--port", None) => {
                return Err(HostError::Usage(format!("`{flag}` needs a value after it")));
            }
            (other, _) => return Err(unknown(other)),
        }
    }
    Ok(Order::Serve { dir, port, build })
}

fn folder(mut rest: impl Iterator<Item = String>) -> Result<PathBuf, HostError> {
    match (rest.next(), rest.next()) {
        (Some(dir), None) => Ok(PathBuf::from(dir)),
        (None, _) => Err(HostError::Usage(
            "the folder to build into is not named".to_owned(),
        )),
        (_, Some(more)) => Err(unknown(&more)),
    }
}

fn nothing_more(mut rest: impl Iterator<Item = String>, order: Order) -> Result<Order, HostError> {
    match rest.next() {
        Some(more) => Err(unknown(&more)),
        None => Ok(order),
    }
}

fn unknown(word: &str) -> HostError {
    HostError::Usage(format!("`{word}` is not understood"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read_line(line: &str) -> Result<Order, HostError> {
        read(line.split_whitespace().map(str::to_owned))
    }

    #[test]
    fn nothing_said_builds_and_serves() {
        let expected = Order::Serve {
            dir: None,
            port: 8080,
            build: true,
        };
        assert_eq!(read_line(""), Ok(expected));
    }

    #[test]
    fn port_and_folder_are_taken() {
        let expected = Order::Serve {
            dir: Some(PathBuf::from("/x")),
            port: 9,
            build: true,
        };
        assert_eq!(read_line("--port 9 --dir /x"), Ok(expected));
    }

    #[test]
    fn build_needs_a_folder_and_nothing_else() {
        assert_eq!(
            read_line("build out"),
            Ok(Order::Build {
                dir: PathBuf::from("out")
            })
        );
        assert!(matches!(read_line("build"), Err(HostError::Usage(_))));
        assert!(matches!(
            read_line("build out more"),
            Err(HostError::Usage(_))
        ));
    }

    #[test]
    fn what_is_not_understood_is_refused() {
        for line in ["frobnicate", "--port", "--port many", "serve --loud yes"] {
            assert!(
                matches!(read_line(line), Err(HostError::Usage(_))),
                "{line}"
            );
        }
    }
}
