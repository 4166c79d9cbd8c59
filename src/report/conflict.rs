//! Values that two phones recorded differently: which fact, each value, who and when.

use super::block::Block;
use super::entry_line;
use super::time::when;
use super::{Reader, ReportContext};
use crate::job::JobState;
use crate::job::conflict::{Conflict, conflicts};
use crate::job::entry::{Entry, EntryId};
use crate::text::{self, ConflictWord, Lang};
use crate::units::Format;

/// One fact, told.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ConflictText {
    /// Each value: its entry, what it says, and with who and when.
    pub values: Vec<(EntryId, String, String)>,
    /// The entry that counts until one is chosen.
    pub winner: EntryId,
}

/// Every fact of a job that is recorded differently, in words.
pub fn conflict_texts(sheet: &JobState, lang: Lang, format: Format) -> Vec<ConflictText> {
    let reader = Reader::default();
    let context = ReportContext::new(sheet, lang, format, &reader);
    let all = conflicts(sheet);
    all.iter().map(|conflict| one(&context, conflict)).collect()
}

fn one(context: &ReportContext, conflict: &Conflict) -> ConflictText {
    let value = |entry: &&Entry| {
        let line = entry_line::entry(context, &entry.what);
        let at = when(context.lang, &entry.at);
        let full = text::recorded_by(context.lang, &line, &entry.by, &entry.device, &at);
        (entry.id.clone(), line, full)
    };
    ConflictText {
        values: conflict.candidates.iter().map(value).collect(),
        winner: conflict.winner.id.clone(),
    }
}

/// A value with its author and time, and whether it counts now.
pub fn value_line(lang: Lang, full: &str, counts: bool) -> String {
    match counts {
        true => format!("{full}: {}", text::conflict(lang, ConflictWord::CountsNow)),
        false => full.to_owned(),
    }
}

/// The notices of page one.
pub(super) fn notices(context: &ReportContext) -> Vec<Block> {
    let notice = |conflict: &Conflict| {
        let ConflictText { values, winner } = one(context, conflict);
        let lines = values
            .iter()
            .map(|(id, _, full)| value_line(context.lang, full, *id == winner));
        let lines = lines.collect::<Vec<_>>().join(" / ");
        Block::Notice(text::differs_on_page(context.lang, &lines))
    };
    conflicts(context.sheet).iter().map(notice).collect()
}
