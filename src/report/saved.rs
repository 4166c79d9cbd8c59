//! What is kept as bytes: each picture with what it shows, each voice note with its length.

use super::block::Block;
use super::time::when;
use super::{ReportContext, front};
use crate::job::caption::caption;
use crate::job::entry::{Caption, Captioned, Event, Photo, Voice};
use crate::text::{self, ReportWord, Saved};

/// How many characters of a digest stand beside what it belongs to.
const SHORT: usize = 12;

/// The pictures that count, each with its caption, or that there is none.
pub(super) fn photos(context: &ReportContext) -> Vec<Block> {
    let photos = context
        .sheet
        .counting()
        .filter_map(|entry| match &entry.what {
            Event::Photo(photo) => Some((photo, when(context.lang, &entry.at))),
            _ => None,
        });
    let shown = photos.map(|(photo, time)| Block::Photo {
        sha256: photo.sha256.clone(),
        caption: line(context, photo, &time),
    });
    let mut blocks: Vec<Block> = shown.collect();
    if blocks.is_empty() {
        blocks.push(context.sentence(ReportWord::NoPhoto));
    }
    blocks.insert(0, context.heading(ReportWord::Photos));
    blocks
}

/// What a picture shows, its step, its time and how its digest begins.
fn line(context: &ReportContext, photo: &Photo, time: &str) -> String {
    let place = text::photo_caption(context.lang, &context.step(photo.step), time);
    let place = format!("{place} ({})", front(&photo.sha256, SHORT));
    match words(context, caption(context.sheet, &photo.sha256)) {
        Some(words) => format!("{words}. {place}"),
        None => place,
    }
}

/// The words of a caption; none where the step says it.
fn words(context: &ReportContext, caption: &Caption) -> Option<String> {
    match caption {
        Caption::Step => None,
        Caption::Word(word) => Some(text::caption_word(context.lang, *word).to_owned()),
        Caption::Words(words) => Some(words.clone()),
    }
}

/// The caption that an entry gives, with how its picture's digest begins.
pub(super) fn said(context: &ReportContext, said: &Captioned) -> String {
    let step = || text::saved(context.lang, Saved::AsTheStep).to_owned();
    let words = words(context, &said.caption).unwrap_or_else(step);
    format!("{words} ({})", front(&said.sha256, SHORT))
}

/// A voice note in one line.
pub(super) fn voice_line(context: &ReportContext, voice: &Voice) -> String {
    let name = text::saved(context.lang, Saved::VoiceNote);
    let length = text::seconds(context.lang, voice.seconds);
    let digest = front(&voice.sha256, SHORT);
    format!("{name}: {}, {length} ({digest})", context.step(voice.step))
}

/// The voice notes that count: where, when, how long, and the digest of the sound.
pub(super) fn voices(context: &ReportContext) -> Vec<Block> {
    let rows = context.sheet.counting().filter_map(|entry| {
        let Event::Voice(voice) = &entry.what else {
            return None;
        };
        Some(vec![
            context.step(voice.step),
            text::seconds(context.lang, voice.seconds),
            when(context.lang, &entry.at),
            front(&voice.sha256, SHORT).to_owned(),
        ])
    });
    let rows: Vec<Vec<String>> = rows.collect();
    if rows.is_empty() {
        return Vec::new();
    }
    let word = |word| text::saved(context.lang, word).to_owned();
    vec![
        Block::Heading(word(Saved::VoiceNotes)),
        Block::Table {
            head: [Saved::Step, Saved::Length, Saved::When, Saved::Digest]
                .map(word)
                .to_vec(),
            rows,
        },
    ]
}
