//! What was seen on the parts that came off, and why the job came back.

use super::ReportContext;
use super::block::Block;
use crate::text::{self, Ledger};

/// The old part of each corner, and the cause of a comeback; nothing where nothing was said.
pub(super) fn old_parts(context: &ReportContext) -> Vec<Block> {
    let lang = context.lang;
    let seen = context.corners().iter();
    let seen = seen.filter_map(|at| Some(text::seen_damage(lang, *at, context.sheet.damage(*at)?)));
    let cause = context.sheet.came_back_for().map(|cause| {
        let ask = text::ledger(lang, Ledger::CauseAsk);
        format!("{ask} {}", text::came_back_for(lang, cause))
    });
    let lines: Vec<String> = seen.chain(cause).collect();
    if lines.is_empty() {
        return Vec::new();
    }
    let title = text::ledger(lang, Ledger::SeenOnOld).to_owned();
    vec![Block::Subheading(title), Block::List(lines)]
}
