//! A rocked play as it would be seen at other places: sentences that say what they are.

use super::ReportContext;
use crate::job::JobState;
use crate::job::judge::Measured;
use crate::job::tip_and_drift::elsewhere;
use crate::report::scale;
use crate::text::{self, Lang};
use crate::trade::play::Place;
use crate::units::{Format, TypedLength};

/// One sentence a place; none where nothing can be scaled.
pub fn lines(lang: Lang, format: Format, sheet: &JobState, of: &Measured) -> Vec<String> {
    let way = of.set.way().into_iter();
    let seen = way.flat_map(|way| elsewhere(sheet, way, of.set.mean()));
    let lines = seen.map(|(place, play)| {
        let play = scale::play(format, play).line();
        text::seen_at(lang, &play, text::place(lang, place))
    });
    lines.collect()
}

/// A radius in one line, for the list of what was taken back or told twice.
pub(super) fn radius_line(context: &ReportContext, place: Place, radius: &TypedLength) -> String {
    let place = text::place(context.lang, place);
    let radius = context.format.typed(radius).line();
    text::tip_radius(context.lang, place, &radius)
}
