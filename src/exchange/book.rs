//! The spec books of a phone as a file of their own.

use crate::exchange::envelope::LogKind;
use crate::exchange::export::{ExportError, export};
use crate::exchange::import::is_log_id;
use crate::job::entry::LogId;

/// Whether a log is a spec library that a file can carry.
pub fn is_book(log: &str) -> bool {
    kind_in_a_file(log) == Some(LogKind::SpecLibrary)
}

/// What a log is, if a file can carry one of this name.
pub fn kind_in_a_file(log: &str) -> Option<LogKind> {
    Some(LogKind::of(log)).filter(|kind| is_log_id(*kind, log))
}

/// The file of the spec books among these logs, each with the texts of its entries; other logs
/// stay behind. A phone that takes it in starts with this book.
///
/// # Errors
/// As [`export`].
pub fn export_book(logs: &[(LogId, Vec<String>)]) -> Result<String, ExportError> {
    let books = logs.iter().filter(|(log, _)| is_book(&log.0));
    let books: Vec<_> = books
        .map(|(log, texts)| (LogKind::SpecLibrary, log.clone(), texts.clone()))
        .collect();
    export(&books)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::exchange::{merge, read};
    use crate::job::book::{log_of, resourced};
    use crate::job::entry::{Entry, Event};
    use crate::slate::{Pen, compose, records};
    use crate::trade::fastening::spec::tests::{spec, torque};
    use crate::trade::fastening::{Spec, SpecItem};
    use crate::units::TorqueUnit;

    fn nuts(item: SpecItem, value: &str, day: &str) -> Spec {
        let spec = spec(item, vec![torque(value, TorqueUnit::NewtonMetre)]);
        resourced(&spec, |source| source.looked_up = day.parse().unwrap())
    }

    /// A family's book as one phone kept it.
    fn book(family: &str, chance: u8, specs: &[Spec]) -> (LogId, Vec<Entry>) {
        let log = log_of(family).unwrap();
        let pen = Pen {
            by: "A. Wrench".to_owned(),
            device: "van-1".to_owned(),
            n: 1,
            utc_ms: 1_772_667_000_000,
            offset_min: 0,
            recorded: None,
            chance: [chance; 10],
        };
        let whats = specs.iter().cloned().map(Event::Spec).collect();
        let entries = compose(&log, &[], &pen, whats);
        (log, entries)
    }

    fn texts((log, entries): &(LogId, Vec<Entry>)) -> (LogId, Vec<String>) {
        let records = records(entries).unwrap();
        let texts = records.into_iter().map(|record| record.text).collect();
        (log.clone(), texts)
    }

    #[test]
    fn the_whole_book_leaves_without_jobs_and_kit_and_comes_in_once() {
        let small = book(
            "2016 compact, 1.6",
            1,
            &[nuts(SpecItem::LugNuts, "110", "2026-01-02")],
        );
        let large = book(
            "2019 van, große Kabine",
            2,
            &[
                nuts(SpecItem::LugNuts, "180", "2026-01-02"),
                nuts(SpecItem::HubBolts, "90", "2026-01-02"),
            ],
        );
        let other = |name: &str| (LogId(name.to_owned()), Vec::new());
        let logs = [
            texts(&small),
            other("kit:van"),
            other("0190163d-8694-739b-aea5-966c26f8ad91"),
            other("book:an ünusual name"),
            texts(&large),
        ];
        let came = read(&export_book(&logs).unwrap()).unwrap();
        let names: Vec<&str> = came.logs.iter().map(|log| log.id.0.as_str()).collect();
        assert_eq!(
            names,
            ["book:2016-compact-1-6", "book:2019-van-gro_df_e-kabine"]
        );
        assert!(came.logs.iter().all(|log| log.kind == LogKind::SpecLibrary));
        let first = merge(&[], &came.logs[1].records);
        assert_eq!(first.add.len(), 2);
        assert_eq!(merge(&first.add, &came.logs[1].records).same, 2);
    }
}
