//! The spec library: specs of one vehicle family, kept in a log of their own and offered again.
//!
//! A job copies what it uses, so that it stands by itself when the book changes.

use chrono::NaiveDate;

use crate::job::entry::{Event, LogId, VehicleField};
use crate::job::key::Key;
use crate::job::practice::is_practice;
use crate::job::sheet::JobState;
use crate::job::turn::group_of;
use crate::job::wheel_end::count;
use crate::letters::small;
use crate::sorted::Sorted;
use crate::trade::fastening::{
    Doubt, Spec, SpecBody, SpecItem, SpecSource, Stage, doubts, other_count,
};
use crate::units::{TorqueUnit, TypedAngle};

/// What the log of every spec library begins with; job logs hold no colon.
pub const PREFIX: &str = "book:";

/// How long the identity of a log may be in a file.
const MOST: usize = 64;
/// How much of a longer name stays in it, before its sum.
const KEPT: usize = 40;

/// The log of a family's book: letters and digits in lower case, all else as one hyphen.
///
/// A file carries plain letters only and 64 of them: any other letter stands as its number, and a
/// longer name ends with a sum over the whole of it. `None` for a family without a letter or digit.
pub fn log_of(family: &str) -> Option<LogId> {
    let lower = family.chars().map(small);
    let plain: String = lower
        .map(|c| if c.is_alphanumeric() { c } else { ' ' })
        .collect();
    let parts: Vec<&str> = plain.split_whitespace().collect();
    if parts.is_empty() {
        return None;
    }
    let mut name = String::new();
    for c in parts.join("-").chars() {
        if c.is_ascii() {
            name.push(c);
        } else {
            name.push_str(&format!("_{:x}_", u32::from(c)));
        }
    }
    if PREFIX.len() + name.len() > MOST {
        let sum = sum(&name);
        name.truncate(KEPT);
        name = format!("{name}-{sum:016x}");
    }
    Some(LogId(format!("{PREFIX}{name}")))
}

/// FNV-1a over the bytes of a name: it only keeps two long names apart.
fn sum(name: &str) -> u64 {
    name.bytes().fold(0xcbf2_9ce4_8422_2325, |sum, byte| {
        (sum ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
    })
}

/// The book of a job's family; none for practice, whose document is invented.
pub fn log_of_job(sheet: &JobState) -> Option<LogId> {
    if is_practice(sheet) {
        return None;
    }
    log_of(sheet.vehicle(VehicleField::Family)?)
}

/// What a kept spec adds to its family's book; "not found" is a matter of one job.
pub fn additions(sheet: &JobState, spec: &Spec) -> Vec<Event> {
    let family = sheet.vehicle(VehicleField::Family).unwrap_or_default();
    if source_of(spec).is_none() {
        return Vec::new();
    }
    vec![
        Event::Vehicle(VehicleField::Family, family.to_owned()),
        Event::Spec(spec.clone()),
    ]
}

/// Where a spec was read.
pub const fn source_of(spec: &Spec) -> Option<&SpecSource> {
    match &spec.body {
        SpecBody::Torque(body) => Some(&body.source),
        SpecBody::Play { source, .. } => Some(source),
        SpecBody::NotFound { .. } => None,
    }
}

/// The same spec with another source: looked up again, or by somebody else.
pub fn resourced(spec: &Spec, change: impl FnOnce(&mut SpecSource)) -> Spec {
    let mut spec = spec.clone();
    match &mut spec.body {
        SpecBody::Torque(body) => change(&mut body.source),
        SpecBody::Play { source, .. } => change(source),
        SpecBody::NotFound { .. } => {}
    }
    spec
}

/// What is odd about a spec in this job: its figures, and how many fasteners it speaks of.
pub fn doubts_in(sheet: &JobState, spec: &Spec) -> Vec<Doubt> {
    let known = group_of(spec.item).map(|group| count(sheet, group));
    let other = known.and_then(|known| other_count(spec, known));
    doubts(spec).into_iter().chain(other).collect()
}

/// What a book says of one thing: the spec that was looked up last, then every other one that
/// another phone put beside it and that says something else.
pub fn offers(book: &JobState, item: SpecItem) -> Vec<Spec> {
    let mut offers: Vec<Spec> = Vec::new();
    let key = Key::Spec(item);
    let mut specs: Vec<&Spec> = book
        .stated(&key)
        .filter_map(|entry| match &entry.what {
            Event::Spec(spec) => Some(spec),
            _ => None,
        })
        .collect();
    // Of two of one day the one that was noted last stands first.
    specs.reverse();
    specs.order_by_key(|spec| std::cmp::Reverse(source_of(spec).map(|source| source.looked_up)));
    for spec in specs {
        if !offers.iter().any(|other| says_the_same(other, spec)) {
            offers.push(spec.clone());
        }
    }
    offers
}

/// Whether two specs ask for the same, wherever they were read.
pub fn says_the_same(one: &Spec, other: &Spec) -> bool {
    let plain = |spec: &Spec| {
        resourced(spec, |source| {
            *source = SpecSource {
                document: String::new(),
                page: String::new(),
                looked_up: NaiveDate::MIN,
                who: String::new(),
                override_reason: None,
            };
        })
    };
    plain(one) == plain(other)
}

/// How many days ago a spec was looked up; `None` for a spec without a source, and none below
/// zero where a clock was wrong.
pub fn age(spec: &Spec, today: NaiveDate) -> Option<i64> {
    let looked_up = source_of(spec)?.looked_up;
    Some(today.signed_duration_since(looked_up).num_days().max(0))
}

fn specs(sheet: &JobState) -> impl DoubleEndedIterator<Item = &Spec> {
    let specs: Vec<&Spec> = sheet
        .counting()
        .filter_map(|entry| match &entry.what {
            Event::Spec(spec) => Some(spec),
            _ => None,
        })
        .collect();
    specs.into_iter()
}

/// The source of this job's last spec, which the next one carries over.
pub fn last_source(sheet: &JobState) -> Option<&SpecSource> {
    specs(sheet).rev().find_map(source_of)
}

/// The unit of this job's last torque.
pub fn last_torque_unit(sheet: &JobState) -> Option<TorqueUnit> {
    let torque = |spec: &Spec| spec.final_torque().map(|typed| typed.unit);
    specs(sheet).rev().find_map(torque)
}

/// Whether an angle may follow the torque on this spec: it does on clamped bearings alone.
pub const fn may_have_angle(item: SpecItem) -> bool {
    matches!(
        item,
        SpecItem::AxleNut | SpecItem::HubBolts | SpecItem::SpindleNut | SpecItem::StrutBolts
    )
}

/// The angle right behind the first torque, as typed.
pub fn angle_of(spec: &Spec) -> Option<&TypedAngle> {
    let SpecBody::Torque(body) = &spec.body else {
        return None;
    };
    let first = |stage: &Stage| matches!(stage, Stage::Torque(_));
    let place = body.stages.iter().position(first)?;
    match body.stages.get(place.saturating_add(1))? {
        Stage::Angle(angle) => Some(angle),
        Stage::Snug | Stage::Torque(_) | Stage::Back(_) => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_family_has_one_book_however_it_is_typed() {
        let log = |family: &str| log_of(family).map(|log| log.0);
        let book = Some("book:2016-compact-1-6-front-drive".to_owned());
        assert_eq!(log("2016 compact, 1.6 front drive"), book);
        assert_eq!(log("  2016 Compact 1,6 / FRONT drive "), book);
        assert_ne!(log("2016 compact, 1.4 front drive"), book);
        assert_eq!(log(" -- "), None);
    }

    #[test]
    fn a_file_carries_the_name_of_every_family() {
        let name = |family: &str| log_of(family).unwrap().0;
        let long = "2016 compact, 1.6 front drive, sports seats, second facelift";
        let names = [
            name("Große 2016"),
            name("Grüße 2016"),
            name("İ 4"),
            name(&format!("{long}, manual transmission")),
            name(&format!("{long}, automatic")),
        ];
        for name in &names {
            let plain = |c: char| c.is_ascii_alphanumeric() || matches!(c, '-' | '_' | ':');
            assert!(name.len() <= MOST && name.chars().all(plain), "{name}");
        }
        let apart: std::collections::BTreeSet<_> = names.iter().collect();
        assert_eq!(apart.len(), names.len());
        // The published test value of FNV-1a for "a" in 64 bits.
        assert_eq!(sum("a"), 0xaf63_dc4c_8601_ec8c);
    }

    fn nuts(torque: &str, day: &str) -> Spec {
        use crate::trade::fastening::spec::tests::{spec, torque as typed};
        let spec = spec(
            SpecItem::LugNuts,
            vec![typed(torque, TorqueUnit::NewtonMetre)],
        );
        resourced(&spec, |source| source.looked_up = day.parse().unwrap())
    }

    #[test]
    fn the_spec_that_was_looked_up_last_is_offered_and_what_differs_is_not_hidden() {
        use crate::job::recorded::sheet;
        let book = sheet(&[Event::Spec(nuts("110", "2026-01-02"))]);
        let other = sheet(&[Event::Spec(nuts("103", "2026-03-04"))]);
        // Two phones that had not seen each other.
        let mut entries = book.entries().to_vec();
        entries.extend(other.entries().iter().cloned().map(|mut entry| {
            entry.id.0.push('b');
            entry
        }));
        let both = crate::job::fold(entries);
        let offered = offers(&both, SpecItem::LugNuts);
        assert_eq!(
            offered,
            [nuts("103", "2026-03-04"), nuts("110", "2026-01-02")]
        );
        let again = sheet(&[
            Event::Spec(nuts("110", "2026-01-02")),
            Event::Spec(nuts("110", "2026-05-06")),
        ]);
        assert_eq!(
            offers(&again, SpecItem::LugNuts),
            [nuts("110", "2026-05-06")]
        );
        assert_eq!(offers(&again, SpecItem::AxleNut), []);
        let day = |text: &str| text.parse().unwrap();
        assert_eq!(age(&nuts("110", "2026-01-02"), day("2026-01-31")), Some(29));
        assert_eq!(age(&nuts("110", "2026-01-02"), day("2025-12-31")), Some(0));
    }

    #[test]
    fn a_spec_for_another_number_of_studs_is_doubted_in_this_job() {
        use crate::job::recorded::sheet;
        let mut spec = nuts("110", "2026-01-02");
        if let SpecBody::Torque(body) = &mut spec.body {
            body.printed.count = Some(5);
        }
        let with = |studs: &str| {
            let studs = Event::Vehicle(VehicleField::Studs, studs.to_owned());
            doubts_in(&sheet(&[studs]), &spec)
        };
        assert_eq!(with("5"), []);
        let doubt = Doubt::Count {
            printed: 5,
            known: 4,
        };
        assert_eq!(with("4"), [doubt]);
    }

    #[test]
    fn a_book_is_never_taken_for_a_job() {
        assert!(log_of("Marten").is_some_and(|log| log.0.contains(':')));
    }
}
