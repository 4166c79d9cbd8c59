//! How the parts that came off were read, and why the job came back.

use super::ReportContext;
use super::block::{Block, Size};
use crate::text::{self, Ledger, RemovedWord};
use crate::trade::damage::{Finding, PartReading};

/// The removed part of each corner, and the cause of a comeback; nothing where nothing was said.
pub(super) fn removed_parts(context: &ReportContext) -> Vec<Block> {
    let lang = context.lang;
    let parts = context.corners().iter().filter_map(|at| {
        let reading = context.sheet.removed_part(*at)?;
        let mut blocks = vec![Block::Sentence(text::part_inspected(lang, *at, reading))];
        blocks.extend(
            reading
                .findings()
                .flat_map(|it| found(context, reading, it)),
        );
        Some(blocks)
    });
    let mut blocks: Vec<Block> = parts.flatten().collect();
    let cause = context.sheet.came_back_for().map(|cause| {
        let ask = text::ledger(lang, Ledger::CauseAsk);
        format!("{ask} {}", text::came_back_for(lang, cause))
    });
    blocks.extend(cause.map(Block::Sentence));
    if !blocks.is_empty() {
        let title = text::removed(lang, RemovedWord::OnReport).to_owned();
        blocks.insert(0, Block::Subheading(title));
    }
    blocks
}

/// One finding: its drawing, and what it points to.
fn found(context: &ReportContext, reading: &PartReading, finding: Finding) -> [Block; 2] {
    let suspected = reading.inspected.is_suspected();
    let svg = finding
        .drawing()
        .to_svg(text::finding(context.lang, finding));
    [
        Block::Drawing {
            size: Size::Beside,
            svg,
        },
        Block::Sentence(text::finding_line(context.lang, finding, suspected)),
    ]
}
