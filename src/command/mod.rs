//! The command on a computer: files looked at again, joined, or freed of a person.
//!
//! Nothing is judged here; `exchange` does it, and this reads, prints and writes.

mod again;
mod gathering;
mod made;
mod numbers;
mod order;
mod source;

use std::io::Write;
use std::process::ExitCode;

use hubslate::exchange::ImportError;
use hubslate::text::{self, Lang, Outside, Verified};
use hubslate::units::{DecimalMark, Format, System};

use gathering::Gathering;
use order::Order;

const LANG: Lang = Lang::English;
/// Typed numbers are shown as they were typed.
const FORMAT: Format = Format {
    system: System::Metric,
    decimal: DecimalMark::Dot,
};
/// Nothing was done.
const NOTHING_DONE: u8 = 2;

/// Reads the command line and carries it out; the help says what the endings mean.
pub fn main() -> ExitCode {
    match order::read(std::env::args_os().skip(1)) {
        Ok(order) => ExitCode::from(carry_out(&order)),
        Err(slip) => {
            eprintln!("{slip}.\n{}", help());
            ExitCode::from(NOTHING_DONE)
        }
    }
}

fn carry_out(order: &Order) -> u8 {
    match order {
        Order::Help => {
            tell(help());
            0
        }
        Order::Verify { files, json } => again::verify_all(files, *json),
        Order::Make {
            make,
            files,
            out,
            json,
        } => {
            let mut gathering = Gathering::of(files, out, *json);
            let made = made::make(&mut gathering, make, out);
            made::tell_of(&gathering, made, out, *json)
        }
    }
}

fn help() -> &'static str {
    text::outside(LANG, Outside::Help)
}

fn say(what: Verified) -> String {
    text::verified(LANG, what)
}

/// Prints a line; a reader that has gone away is no fault of ours.
fn tell(line: &str) {
    let _ = writeln!(std::io::stdout(), "{line}");
}

fn why(error: &ImportError) -> String {
    match error {
        ImportError::NotOurs => say(Verified::NotOurs),
        ImportError::Newer { version } => say(Verified::Newer { version: *version }),
        ImportError::CutOff => say(Verified::CutOff),
        ImportError::Damaged { line } => say(Verified::Damaged { line: *line }),
        ImportError::Edited { .. } => say(Verified::Edited),
        ImportError::BadLog { .. }
        | ImportError::Conflict { .. }
        | ImportError::CalledOff
        | ImportError::Tangled { .. } => text::say(LANG, error.say()).to_owned(),
        ImportError::BadEntry { place, fault, .. } => say(Verified::EntryBad {
            place: *place,
            why: &format!("{fault:?}"),
        }),
    }
}
