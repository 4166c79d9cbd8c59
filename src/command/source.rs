//! A file as it lies on the disk: the text of a job, or a zip with its pictures beside it.

use std::fs;
use std::path::Path;

use hubslate::exchange::bundle::{self, BundleError, Held, Opened};
use hubslate::text::{self, Say, Verified};
use serde_json::{Value, json};

use super::{LANG, say};

/// The bytes of a file.
pub struct Source(Vec<u8>);

/// What a file holds.
pub struct Content<'a> {
    /// The text of the job's file.
    pub text: String,
    /// Its pictures and voice notes, where the file is a zip.
    pub held: Option<Held<'a>>,
}

/// Reads a file whole.
pub fn read(path: &Path) -> Result<Source, String> {
    let bytes = fs::read(path).map_err(|why| say(Verified::NotRead(&why.to_string())))?;
    Ok(Source(bytes))
}

impl Source {
    /// Where a piece of it begins.
    pub fn place_of(&self, piece: &[u8]) -> usize {
        piece.as_ptr().addr() - self.0.as_ptr().addr()
    }

    /// The job's file and, from a zip, how its pictures stand to what the job names.
    pub fn content(&self) -> Result<Content<'_>, String> {
        if !bundle::is_zip(&self.0) {
            let text = std::str::from_utf8(&self.0).map_err(|_| say(Verified::NotOurs))?;
            return Ok(Content {
                text: text.to_owned(),
                held: None,
            });
        }
        let Opened { text, pieces } = bundle::open(&self.0).map_err(|error| match error {
            BundleError::Packed => say(Verified::NotUnpacked),
            BundleError::NotZip => say(Verified::CutOff),
            BundleError::Overlap => text::say(LANG, Say::ImportOverlap).to_owned(),
            BundleError::NoJob | BundleError::NotWritten => say(Verified::NotOurs),
        })?;
        let held = bundle::held(&bundle::wanted_in(&text), &pieces);
        Ok(Content {
            text,
            held: Some(held),
        })
    }
}

/// What is to be said of the pictures of a zip.
pub fn recorded(held: &Held) -> Vec<String> {
    let mut recorded = vec![say(Verified::PhotosThere(held.there.len()))];
    let changed = held.changed.iter();
    recorded.extend(changed.map(|name| say(Verified::PhotoChanged(name))));
    recorded.extend(held.missing.iter().map(|one| {
        let step = one.step.code();
        let sha256 = &one.sha256;
        say(Verified::PhotoMissing {
            sha256,
            step: &step,
        })
    }));
    recorded
}

/// The same for a script.
pub fn value(held: &Held) -> Value {
    let there = held.there.iter().map(|(one, _)| &one.sha256);
    json!({
        "there": there.collect::<Vec<_>>(),
        "changed": held.changed,
        "missing": held.missing.iter().map(|one| &one.sha256).collect::<Vec<_>>(),
    })
}
