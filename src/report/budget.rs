//! What makes a reading unsure, as bars: which part to mend first.

use super::scale;
use crate::drawing::Drawing;
use crate::drawing::bars::{Bar, bars};
use crate::job::judge::Measured;
use crate::text::{self, Lang};
use crate::units::Format;

/// The parts of a set's uncertainty, the largest first.
pub fn picture(lang: Lang, format: Format, measured: &Measured) -> Drawing {
    let parts = &measured.budget.components;
    let values: Vec<String> = parts
        .iter()
        .map(|part| scale::play(format, part.u).line())
        .collect();
    let rows: Vec<Bar<'_>> = parts
        .iter()
        .zip(&values)
        .map(|(part, value)| Bar {
            name: text::budget_source(lang, part.source),
            value,
            size: part.u.mm(),
        })
        .collect();
    bars(&rows)
}

/// What to do about the largest part.
pub fn mend_first(lang: Lang, measured: &Measured) -> Option<&'static str> {
    let largest = measured.budget.components.first()?;
    Some(text::mend_first(lang, largest.source))
}
