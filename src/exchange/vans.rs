//! The vans of a shop: by which name each phone is known, and which van a job belongs to.

use crate::exchange::summary::Summary;
use crate::map::{OrderedMap, OrderedSet};

/// How a van is named: never by the id of its phone.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct VanName {
    /// The letters that its invoice numbers begin with; empty where it has none.
    pub letters: String,
    /// Its number among the vans without letters, from 1; 0 for one with letters.
    pub number: usize,
}

/// The names of the vans, by phone.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Vans(OrderedMap<String, VanName>);

impl Vans {
    /// The vans of these jobs: the letters of the invoices that a phone gave, else those of the slots
    /// that it worked. The rest is numbered, in the order of the phones' ids.
    pub fn of(jobs: &[Summary]) -> Self {
        let mut letters: OrderedMap<&str, &str> = OrderedMap::new();
        let worked = || {
            jobs.iter()
                .filter(|job| !job.practice && !job.tally.van.is_empty())
        };
        let by_slot = worked().map(|job| (job.tally.van.as_str(), job.van.as_str()));
        let by_invoice = worked().map(|job| (job.tally.van.as_str(), job.tally.letters.as_str()));
        for (phone, known) in by_slot.chain(by_invoice) {
            if !known.is_empty() {
                letters.insert(phone, known);
            }
        }
        let phones: OrderedSet<&str> = worked().map(|job| job.tally.van.as_str()).collect();
        let mut number = 0;
        let named = phones.into_iter().map(|phone| {
            let known = letters.get(phone).copied().unwrap_or_default();
            number += usize::from(known.is_empty());
            let name = VanName {
                letters: known.to_owned(),
                number: if known.is_empty() { number } else { 0 },
            };
            (phone.to_owned(), name)
        });
        Self(OrderedMap::from_iter(named))
    }

    /// The name of a phone's van; one that worked on no job comes after all the others.
    pub fn name(&self, phone: &str) -> VanName {
        let next = self.0.values().map(|name| name.number).max().unwrap_or(0) + 1;
        self.0.get(phone).cloned().unwrap_or(VanName {
            letters: String::new(),
            number: next,
        })
    }

    /// The van that did a job, or before that the one that is to do it; nothing where none is known.
    pub fn of_job(&self, job: &Summary) -> Option<VanName> {
        match (job.tally.van.as_str(), job.van.as_str()) {
            ("", "") => None,
            ("", letters) => Some(VanName {
                letters: letters.to_owned(),
                number: 0,
            }),
            (phone, _) => Some(self.name(phone)),
        }
    }

    /// The letters of all vans, of those too that only stand in a slot.
    pub fn letters(&self, jobs: &[Summary]) -> Vec<String> {
        let known = self.0.values().map(|name| name.letters.clone());
        let slots = jobs.iter().map(|job| job.van.clone());
        let all: OrderedSet<String> = known.chain(slots).filter(|it| !it.is_empty()).collect();
        all.into_iter().collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::entry::LogId;
    use crate::job::fold;

    fn job(phone: &str, letters: &str, slot: &str) -> Summary {
        let mut job = Summary::of(&LogId("job".to_owned()), &fold([]), &[], None);
        phone.clone_into(&mut job.tally.van);
        letters.clone_into(&mut job.tally.letters);
        slot.clone_into(&mut job.van);
        job
    }

    fn said(name: &VanName) -> (&str, usize) {
        (name.letters.as_str(), name.number)
    }

    #[test]
    fn a_van_is_named_by_its_letters_and_else_numbered_but_never_by_its_phone() {
        let jobs = [
            job("phone-c", "", ""),
            job("phone-a", "", ""),
            // A slot says less than an invoice, whatever comes last.
            job("phone-b", "N", ""),
            job("phone-b", "", "S"),
            job("phone-d", "", "W"),
        ];
        let vans = Vans::of(&jobs);
        assert_eq!(said(&vans.name("phone-a")), ("", 1));
        assert_eq!(said(&vans.name("phone-b")), ("N", 0));
        assert_eq!(said(&vans.name("phone-c")), ("", 2));
        assert_eq!(said(&vans.name("phone-d")), ("W", 0));
        assert_eq!(said(&vans.name("never seen")), ("", 3));
        assert_eq!(vans.letters(&jobs), ["N", "S", "W"]);
    }

    #[test]
    fn a_job_belongs_to_the_van_that_did_it_and_before_that_to_its_slot() {
        let jobs = [job("phone-b", "N", "S"), job("", "", "S"), job("", "", "")];
        let vans = Vans::of(&jobs);
        let of = |at: usize| vans.of_job(&jobs[at]).map(|name| name.letters);
        assert_eq!(of(0).as_deref(), Some("N"));
        assert_eq!(of(1).as_deref(), Some("S"));
        assert_eq!(of(2), None);
    }

    #[test]
    fn practice_names_no_van() {
        let mut jobs = [job("phone-b", "N", "")];
        jobs[0].practice = true;
        assert_eq!(said(&Vans::of(&jobs).name("phone-b")), ("", 1));
    }
}
