//! A runout or a variation of thickness with its interval, in rows and in one line.

use super::ReportContext;
use crate::job::entry::ReachFound;
use crate::text::{self, FaceWord, Lang, ReportWord};
use crate::units::Format;

/// The runout with its interval and what makes it unsure.
pub(super) fn how_sure(context: &ReportContext, reach: &ReachFound) -> Vec<(String, String)> {
    let face = |word| text::face(context.lang, word).to_owned();
    let (low, high) = (context.both(reach.low, 3), context.both(reach.high, 3));
    let interval = text::from_to(context.lang, &low, &high);
    vec![
        (face(FaceWord::Runout), context.both(reach.estimate, 3)),
        (face(FaceWord::Interval), interval),
        (context.word(ReportWord::Combined), context.both(reach.u, 4)),
        (face(FaceWord::OfScatter), context.both(reach.scatter, 4)),
    ]
}

/// A runout or a variation with its interval in the reader's unit.
pub fn reach_line(lang: Lang, format: Format, reach: &ReachFound) -> String {
    let line = |length| format.length(length, 3).line();
    let (low, high) = (line(reach.low), line(reach.high));
    text::with_interval(lang, &line(reach.estimate), &low, &high)
}
