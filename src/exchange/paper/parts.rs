//! From the lines to the texts of symbols, and back from what a camera read.

use super::{Paper, check, read, write};
use crate::exchange::wire::decode;
use crate::job::entry::{Entry, Event};
use crate::job::flow::CONFIRMATIONS_LOG;

/// The most bytes of one symbol: version 25 of ISO/IEC 18004 at level M holds 997 in byte mode
/// (its table 7), less the four bits and the byte that name the character set.
pub const MOST_BYTES: usize = 995;
/// The most symbols of one paper; what does not fit leaves the phone in a file.
pub const MOST_SYMBOLS: usize = 4;

/// What every text begins with.
const NAME: &str = "HUBSLATE";
/// The version that this program writes.
pub const VERSION: u32 = 1;
/// The first line with its end at its longest: `HUBSLATE1 4/4 0123456789abcdef`.
const HEAD_BYTES: usize = 31;

/// Why a text is no paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PaperError {
    /// It does not begin as this program writes it.
    NotOurs,
    /// Made by a newer version.
    Newer,
    /// Its lines are not those that were printed.
    Damaged,
}

/// The text of one symbol, taken apart.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Part {
    /// Which symbol, from 1.
    pub nth: usize,
    /// Of how many.
    pub of: usize,
    /// The check of all of them together; the same on each.
    pub check: String,
    body: String,
}

/// How far the symbols of one paper were gathered.
#[derive(Clone, Debug, PartialEq)]
pub enum Gathered {
    /// All of them, of a job.
    Whole(Box<Paper>),
    /// All of them, of a confirmation: its entry, byte for byte.
    Confirmation(String),
    /// Which is still missing, and of how many.
    Missing(usize, usize),
}

/// The texts of the symbols of a paper; `None` if it needs more than [`MOST_SYMBOLS`].
///
/// They are cut between lines, as even as that allows, so that all symbols are of one size.
pub fn symbols(paper: &Paper) -> Option<Vec<String>> {
    cut(&write(paper))
}

/// The same of a confirmation's entry, a line for each log and device that it holds.
///
/// The lines are parted behind `},`; an entry's text has no line ends of its own.
pub fn confirmation_symbols(entry: &str) -> Option<Vec<String>> {
    cut(&entry.replace("},", "},\n"))
}

fn cut(body: &str) -> Option<Vec<String>> {
    let room = MOST_BYTES - HEAD_BYTES;
    let least = body.len().div_ceil(room);
    let cut = (least..=MOST_SYMBOLS).find_map(|of| {
        let even = body.len().div_ceil(of);
        [even + even / 8, room]
            .into_iter()
            .map(|most| packed(body, most.min(room)))
            .find(|bodies| bodies.len() <= of && bodies.iter().all(|body| body.len() <= room))
    })?;
    let (of, check) = (cut.len(), check(body));
    let text =
        |(nth, body): (usize, &String)| format!("{NAME}{VERSION} {nth}/{of} {check}\n{body}");
    Some((1..).zip(&cut).map(text).collect())
}

/// Whole lines, as many a piece as have room in it.
fn packed(body: &str, most: usize) -> Vec<String> {
    let mut bodies: Vec<String> = Vec::new();
    for line in body.split('\n') {
        match bodies.last_mut() {
            Some(last) if last.len() + 1 + line.len() <= most => {
                last.push('\n');
                last.push_str(line);
            }
            _ => bodies.push(line.to_owned()),
        }
    }
    bodies
}

/// Takes the text of one symbol apart; spaces around it and the ends of its lines do not count.
///
/// # Errors
/// [`PaperError::NotOurs`], [`PaperError::Newer`], or [`PaperError::Damaged`] for a head that is
/// none.
pub fn part(text: &str) -> Result<Part, PaperError> {
    let mut lines = text.trim().lines().map(str::trim_end);
    let head = lines.next().unwrap_or_default();
    let head = head.strip_prefix(NAME).ok_or(PaperError::NotOurs)?;
    let (version, rest) = head.split_once(' ').ok_or(PaperError::NotOurs)?;
    match version.parse::<u32>() {
        Ok(VERSION) => {}
        Ok(newer) if newer > VERSION => return Err(PaperError::Newer),
        _ => return Err(PaperError::NotOurs),
    }
    let numbered = |rest: &str| {
        let (place, check) = rest.split_once(' ')?;
        let (nth, of) = place.split_once('/')?;
        let (nth, of) = (nth.parse().ok()?, of.parse().ok()?);
        let fits = (1..=of).contains(&nth) && of <= MOST_SYMBOLS;
        fits.then(|| (nth, of, check.to_owned()))
    };
    let (nth, of, check) = numbered(rest).ok_or(PaperError::Damaged)?;
    let body = lines.collect::<Vec<_>>().join("\n");
    Ok(Part {
        nth,
        of,
        check,
        body,
    })
}

/// The paper of these symbols, or which is missing first. Those of another paper than the last
/// one do not count.
///
/// # Errors
/// [`PaperError::Damaged`] if they are all there and the check or a line does not hold.
pub fn gather(parts: &[Part]) -> Result<Gathered, PaperError> {
    let last = parts.last().ok_or(PaperError::NotOurs)?;
    let mut bodies = Vec::with_capacity(last.of);
    for nth in 1..=last.of {
        let same =
            |part: &&Part| part.nth == nth && (part.of, &part.check) == (last.of, &last.check);
        match parts.iter().rev().find(same) {
            Some(part) => bodies.push(part.body.as_str()),
            None => return Ok(Gathered::Missing(nth, last.of)),
        }
    }
    let body = bodies.join("\n");
    if check(&body) != last.check {
        return Err(PaperError::Damaged);
    }
    if body.starts_with('{') {
        let entry = body.replace('\n', "");
        return match is_confirmation(&entry) {
            true => Ok(Gathered::Confirmation(entry)),
            false => Err(PaperError::Damaged),
        };
    }
    let paper = read(&body).ok_or(PaperError::Damaged)?;
    Ok(Gathered::Whole(Box::new(paper)))
}

fn is_confirmation(entry: &str) -> bool {
    let confirmation =
        |it: Entry| it.log.0 == CONFIRMATIONS_LOG && matches!(it.what, Event::Confirmation(_));
    decode(entry).is_ok_and(confirmation)
}
