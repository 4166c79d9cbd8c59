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
            size: Size::Small,
            svg,
        },
        Block::Sentence(text::finding_line(context.lang, finding, suspected)),
    ]
}

#[cfg(test)]
mod tests {
    use crate::job::entry::Event;
    use crate::report::Block;
    use crate::report::sample::{self, AT, Job};
    use crate::report::tests::report;
    use crate::trade::damage::{Finding, Inspected, PartReading};

    /// What the technician's pages say under the heading of the removed part; nothing without it.
    fn said(job: &Job) -> Vec<String> {
        let blocks = report(job).technician;
        let heading = |block: &Block| block.texts() == ["Removed part"];
        let from = blocks.iter().position(heading);
        let part = from.and_then(|from| blocks.get(from + 1..)).unwrap_or(&[]);
        let sentences = part.iter().map_while(|block| match block {
            Block::Sentence(text) => Some(Some(text.clone())),
            Block::Drawing { .. } => Some(None),
            _ => None,
        });
        sentences.flatten().collect()
    }

    fn with(reading: PartReading) -> Job {
        let mut job = sample::finished(None);
        job.tap(vec![Event::RemovedPart(AT, reading)]);
        job
    }

    #[test]
    fn a_closed_part_is_suspected_and_one_that_was_cut_open_is_not() {
        let closed = PartReading::new(Inspected::Closed).turned(Finding::RedGrease);
        let lines = said(&with(closed.clone()));
        assert_eq!(lines[0], "Front left: Closed, as it came off");
        assert!(lines[1].starts_with(
            "Red grease or water at the seal. Suspected: moisture corrosion (ISO 15243:2017)."
        ));
        assert_eq!(lines.len(), 2);
        let lines = said(&with(closed.looked_at(Inspected::CutOpen)));
        assert_eq!(lines[0], "Front left: Cut open, customer approved");
        assert!(lines[1].contains("Failure mode: moisture corrosion"));
        assert!(!lines[1].contains("Suspected"));
    }

    #[test]
    fn nothing_is_said_where_nobody_looked_and_nothing_visible_is_said() {
        assert_eq!(said(&sample::finished(None)), [""; 0]);
        let looked = said(&with(PartReading::new(Inspected::Closed)));
        assert_eq!(
            looked,
            ["Front left: Closed, as it came off. Nothing visible."]
        );
        let not = said(&with(PartReading::new(Inspected::NotInspected)));
        assert_eq!(not, ["Front left: Not inspected"]);
    }

    #[test]
    fn what_a_closed_part_cannot_show_is_not_printed() {
        let forged = PartReading {
            inspected: Inspected::Closed,
            seen: vec![Finding::Flaked],
        };
        assert_eq!(said(&with(forged)).len(), 1);
    }
}
