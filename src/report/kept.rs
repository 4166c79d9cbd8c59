//! What is kept as bytes: each picture with what it shows, each voice note with its length.

use super::block::Block;
use super::time::when;
use super::{ReportContext, front};
use crate::job::caption::caption;
use crate::job::entry::{Caption, Captioned, Event, Photo, Voice};
use crate::text::{self, Kept, ReportWord};

/// How many characters of a digest stand beside what it belongs to.
const SHORT: usize = 12;

/// The pictures that count, each with its caption, or that there is none.
pub(super) fn pictures(told: &ReportContext) -> Vec<Block> {
    let photos = told.sheet.counting().filter_map(|entry| match &entry.what {
        Event::Photo(photo) => Some((photo, when(told.lang, &entry.at))),
        _ => None,
    });
    let shown = photos.map(|(photo, time)| Block::Photo {
        sha256: photo.sha256.clone(),
        caption: line(told, photo, &time),
    });
    let mut blocks: Vec<Block> = shown.collect();
    if blocks.is_empty() {
        blocks.push(told.sentence(ReportWord::NoPicture));
    }
    blocks.insert(0, told.heading(ReportWord::Pictures));
    blocks
}

/// What a picture shows, its step, its time and how its digest begins.
fn line(told: &ReportContext, photo: &Photo, time: &str) -> String {
    let place = text::photo_caption(told.lang, &told.step(photo.step), time);
    let place = format!("{place} ({})", front(&photo.sha256, SHORT));
    match words(told, caption(told.sheet, &photo.sha256)) {
        Some(words) => format!("{words}. {place}"),
        None => place,
    }
}

/// The words of a caption; none where the step says it.
fn words(told: &ReportContext, caption: &Caption) -> Option<String> {
    match caption {
        Caption::Step => None,
        Caption::Word(word) => Some(text::caption_word(told.lang, *word).to_owned()),
        Caption::Words(words) => Some(words.clone()),
    }
}

/// The caption that an entry gives, with how its picture's digest begins.
pub(super) fn said(told: &ReportContext, said: &Captioned) -> String {
    let step = || text::kept(told.lang, Kept::AsTheStep).to_owned();
    let words = words(told, &said.caption).unwrap_or_else(step);
    format!("{words} ({})", front(&said.sha256, SHORT))
}

/// A voice note in one line.
pub(super) fn voice_line(told: &ReportContext, voice: &Voice) -> String {
    let name = text::kept(told.lang, Kept::VoiceNote);
    let length = text::seconds(told.lang, voice.seconds);
    let digest = front(&voice.sha256, SHORT);
    format!("{name}: {}, {length} ({digest})", told.step(voice.step))
}

/// The voice notes that count: where, when, how long, and the digest of the sound.
pub(super) fn voices(told: &ReportContext) -> Vec<Block> {
    let rows = told.sheet.counting().filter_map(|entry| {
        let Event::Voice(voice) = &entry.what else {
            return None;
        };
        Some(vec![
            told.step(voice.step),
            text::seconds(told.lang, voice.seconds),
            when(told.lang, &entry.at),
            front(&voice.sha256, SHORT).to_owned(),
        ])
    });
    let rows: Vec<Vec<String>> = rows.collect();
    if rows.is_empty() {
        return Vec::new();
    }
    let word = |word| text::kept(told.lang, word).to_owned();
    vec![
        Block::Heading(word(Kept::VoiceNotes)),
        Block::Table {
            head: [Kept::Step, Kept::Length, Kept::When, Kept::Digest]
                .map(word)
                .to_vec(),
            rows,
        },
    ]
}
