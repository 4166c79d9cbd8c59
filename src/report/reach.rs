//! A runout or a variation of thickness with its interval, in rows and in one line.

use super::Told;
use crate::text::{self, FaceWord, Lang, ReportWord};
use crate::trade::runout::{Position, Reach};
use crate::units::Format;

/// The runout with its interval and what makes it unsure.
pub(super) fn how_sure(told: &Told, reach: &Reach) -> Vec<(String, String)> {
    let face = |word| text::face(told.lang, word).to_owned();
    let (low, high) = reach.interval();
    let interval = text::from_to(told.lang, &told.both(low, 3), &told.both(high, 3));
    vec![
        (face(FaceWord::Runout), told.both(reach.estimate(), 3)),
        (face(FaceWord::Interval), interval),
        (told.word(ReportWord::Combined), told.both(reach.u(), 4)),
        (face(FaceWord::OfScatter), told.both(reach.scatter(), 4)),
    ]
}

/// A runout or a variation with its interval in the reader's unit.
pub fn reach_line(lang: Lang, format: Format, reach: &Reach) -> String {
    let line = |length| format.length(length, 3).line();
    let (low, high) = reach.interval();
    text::with_interval(lang, &line(reach.estimate()), &line(low), &line(high))
}

/// The wobble to expect in a position, with its interval.
pub fn position(lang: Lang, format: Format, of: &Position) -> String {
    of.wobble.expected().map_or_else(
        |_| format.length(of.reach(), 3).line(),
        |reach| reach_line(lang, format, &reach),
    )
}
