//! The command line as a value.

use std::ffi::OsString;
use std::path::PathBuf;

use hubslate::exchange::erase::Besides;
use hubslate::text::{self, Lang, Verified};

/// What the command can be asked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Order {
    /// Print the help.
    Help,
    /// Look at files again.
    Verify { files: Vec<PathBuf>, json: bool },
    /// Make one file out of many.
    Make {
        make: Make,
        files: Vec<PathBuf>,
        out: PathBuf,
        json: bool,
    },
}

/// What is made out of many files.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Make {
    /// One file of the same kind.
    Union,
    /// The same, without the customer of the job that begins so, and without these.
    Erased(String, Vec<Besides>),
    /// A calendar.
    Calendar,
    /// A table.
    Table,
    /// Invoices, credit notes and accounts.
    Invoices,
    /// Lines.
    Lines,
    /// The same in typed columns, a folder a shop and month.
    Parquet,
}

/// Why a command line is not understood.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OrderError {
    /// No such word or flag.
    Unknown(String),
    /// No file is named.
    NoFile,
    /// No file to write to is named.
    NoOut,
    /// This program was built without typed columns.
    NoParquet,
    /// The file to write to is one of those that are read.
    OutIsIn(PathBuf),
}

impl std::fmt::Display for OrderError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let mut say = |what| f.write_str(&text::verified(Lang::English, what));
        match self {
            Self::Unknown(word) => say(Verified::NotUnderstood(word)),
            Self::NoFile => say(Verified::NoFile),
            Self::NoOut => say(Verified::NoOut),
            Self::NoParquet => say(Verified::NoParquet),
            Self::OutIsIn(path) => say(Verified::OutIsIn(&path.display().to_string())),
        }
    }
}

#[derive(Default)]
struct Words {
    plain: Vec<OsString>,
    out: Option<PathBuf>,
    also: Option<Vec<Besides>>,
    parquet: bool,
    json: bool,
    help: bool,
}

/// Reads the arguments that follow the program's name.
///
/// # Errors
/// [`OrderError`] names the first thing that is not understood.
pub fn read(arguments: impl Iterator<Item = OsString>) -> Result<Order, OrderError> {
    let words = words(arguments)?;
    let mut plain = words.plain.into_iter();
    let first = plain.next();
    if words.help || first.as_ref().is_none_or(|word| word == "help") {
        return Ok(Order::Help);
    }
    let word = first.unwrap_or_default().to_string_lossy().into_owned();
    let make = match word.as_str() {
        "verify" => None,
        "merge" => Some(Make::Union),
        "erase" => {
            let job = plain.next().unwrap_or_default();
            let also = words.also.clone().unwrap_or_default();
            Some(Make::Erased(job.to_string_lossy().into_owned(), also))
        }
        "calendar" => Some(Make::Calendar),
        "table" => Some(Make::Table),
        "invoices" => Some(Make::Invoices),
        "lines" if words.parquet => Some(Make::Parquet),
        "lines" => Some(Make::Lines),
        _ => return Err(OrderError::Unknown(word)),
    };
    let (files, json): (Vec<PathBuf>, bool) = (plain.map(PathBuf::from).collect(), words.json);
    if files.is_empty() {
        return Err(OrderError::NoFile);
    }
    if words.also.is_some() && !matches!(make, Some(Make::Erased(..))) {
        return Err(OrderError::Unknown("--also".to_owned()));
    }
    if words.parquet && make != Some(Make::Parquet) {
        return Err(OrderError::Unknown("--parquet".to_owned()));
    }
    if words.parquet && !cfg!(feature = "parquet") {
        return Err(OrderError::NoParquet);
    }
    match (make, words.out) {
        (None, None) => Ok(Order::Verify { files, json }),
        (None, Some(_)) => Err(OrderError::Unknown("-o".to_owned())),
        (Some(_), None) => Err(OrderError::NoOut),
        (Some(_), Some(out)) if files.contains(&out) => Err(OrderError::OutIsIn(out)),
        (Some(make), Some(out)) => Ok(Order::Make {
            make,
            files,
            out,
            json,
        }),
    }
}

fn words(mut arguments: impl Iterator<Item = OsString>) -> Result<Words, OrderError> {
    let mut words = Words::default();
    while let Some(argument) = arguments.next() {
        match argument.to_str() {
            Some("--json") => words.json = true,
            Some("--help" | "-h") => words.help = true,
            Some("-o" | "--out") => {
                words.out = Some(
                    arguments
                        .next()
                        .map(PathBuf::from)
                        .ok_or(OrderError::NoOut)?,
                );
            }
            Some("--parquet") => {
                words.parquet = true;
                let folder = arguments.next().map(PathBuf::from);
                words.out = Some(folder.ok_or(OrderError::NoOut)?);
            }
            Some("--also") => words.also = Some(besides(arguments.next())?),
            // What follows are files, whatever they are called.
            Some("--") => words.plain.extend(arguments.by_ref()),
            Some(flag) if flag.starts_with('-') => {
                return Err(OrderError::Unknown(flag.to_owned()));
            }
            _ => words.plain.push(argument),
        }
    }
    Ok(words)
}

/// The words behind `--also`, with commas between them.
fn besides(word: Option<OsString>) -> Result<Vec<Besides>, OrderError> {
    let word = word.unwrap_or_default().to_string_lossy().into_owned();
    let each = |code: &str| Besides::from_code(code).ok_or(OrderError::Unknown(code.to_owned()));
    word.split(',').map(each).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read_line(line: &str) -> Result<Order, OrderError> {
        read(line.split_whitespace().map(OsString::from))
    }

    fn paths(names: &[&str]) -> Vec<PathBuf> {
        names.iter().map(PathBuf::from).collect()
    }

    #[test]
    fn files_and_flags_are_taken_in_any_order() {
        let verify = Order::Verify {
            files: paths(&["a", "--odd"]),
            json: true,
        };
        assert_eq!(read_line("verify a --json -- --odd"), Ok(verify));
        let made = |make, names: &[&str]| Order::Make {
            make,
            files: paths(names),
            out: PathBuf::from("c"),
            json: false,
        };
        assert_eq!(
            read_line("merge a -o c b"),
            Ok(made(Make::Union, &["a", "b"]))
        );
        let erased = |also: &[Besides]| Make::Erased("019c".to_owned(), also.to_vec());
        assert_eq!(
            read_line("erase 019c a -o c"),
            Ok(made(erased(&[]), &["a"]))
        );
        let also = [Besides::Notes, Besides::Signatures];
        assert_eq!(
            read_line("erase 019c --also notes,signatures a -o c"),
            Ok(made(erased(&also), &["a"]))
        );
        for (word, make) in [
            ("calendar", Make::Calendar),
            ("table", Make::Table),
            ("lines", Make::Lines),
        ] {
            assert_eq!(read_line(&format!("{word} a -o c")), Ok(made(make, &["a"])));
        }
        for line in ["", "help", "verify --help"] {
            assert_eq!(read_line(line), Ok(Order::Help));
        }
    }

    #[test]
    fn what_is_not_understood_is_named() {
        let unknown = |word: &str| Err(OrderError::Unknown(word.to_owned()));
        assert_eq!(read_line("dance a"), unknown("dance"));
        assert_eq!(read_line("verify --loud a"), unknown("--loud"));
        assert_eq!(read_line("verify a -o b"), unknown("-o"));
        assert_eq!(
            read_line("erase 019c a -o c --also readings"),
            unknown("readings")
        );
        assert_eq!(read_line("erase 019c a -o c --also"), unknown(""));
        assert_eq!(read_line("merge a -o c --also notes"), unknown("--also"));
        assert_eq!(read_line("verify"), Err(OrderError::NoFile));
        assert_eq!(read_line("erase 019c -o b"), Err(OrderError::NoFile));
        assert_eq!(read_line("merge a"), Err(OrderError::NoOut));
        assert_eq!(read_line("merge a -o"), Err(OrderError::NoOut));
        assert_eq!(read_line("merge a --parquet b"), unknown("--parquet"));
        assert_eq!(read_line("lines a --parquet"), Err(OrderError::NoOut));
        let typed = match cfg!(feature = "parquet") {
            true => Ok(Order::Make {
                make: Make::Parquet,
                files: paths(&["a"]),
                out: PathBuf::from("b"),
                json: false,
            }),
            false => Err(OrderError::NoParquet),
        };
        assert_eq!(read_line("lines a --parquet b"), typed);
        let over = Err(OrderError::OutIsIn(PathBuf::from("a")));
        assert_eq!(read_line("merge a -o a"), over);
    }
}
