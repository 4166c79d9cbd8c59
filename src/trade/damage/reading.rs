//! A part as it was read: how it was looked at, and what was seen that way.

use super::{Finding, LikelyCause, Spot};
use crate::words;

words! {
    /// How a removed part was looked at.
    pub enum Inspected {
        /// It was not.
        NotInspected = "not_inspected",
        /// Closed, as it came off.
        Closed = "closed",
        /// It came apart, or its kind does: races are seen in part.
        CameApart = "came_apart",
        /// Cut open, which the customer approved.
        CutOpen = "cut_open",
    }
}

impl Inspected {
    /// Whether a finding can be seen on a part that was looked at in this way.
    pub const fn shows(self, finding: Finding) -> bool {
        match self {
            Self::NotInspected => false,
            Self::Closed => matches!(finding.spot(), Spot::Outside),
            Self::CameApart | Self::CutOpen => true,
        }
    }

    /// Whether what a finding points to is only suspected.
    pub const fn is_suspected(self) -> bool {
        !matches!(self, Self::CutOpen)
    }
}

/// A removed part as it was read.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct PartReading {
    /// How it was looked at.
    pub inspected: Inspected,
    /// What was seen; nothing where it was looked at and nothing shows.
    pub seen: Vec<Finding>,
}

impl PartReading {
    /// The reading of a part that was looked at in this way, with nothing seen.
    pub const fn new(inspected: Inspected) -> Self {
        let seen = Vec::new();
        Self { inspected, seen }
    }

    /// The findings in their order: each once, and only those that could be seen.
    pub fn findings(&self) -> impl Iterator<Item = Finding> + '_ {
        let all = Finding::ALL.iter().copied();
        all.filter(|it| self.seen.contains(it) && self.inspected.shows(*it))
    }

    /// The causes that it points to, each once.
    pub fn causes(&self) -> Vec<LikelyCause> {
        let found: Vec<LikelyCause> = self.findings().map(Finding::cause).collect();
        let in_order = LikelyCause::ALL.iter().filter(|it| found.contains(it));
        in_order.copied().collect()
    }

    /// The same with one finding turned: seen or not seen.
    pub fn turned(&self, finding: Finding) -> Self {
        let is_seen = |it: Finding| self.findings().any(|seen| seen == it);
        let turned = |it: &Finding| is_seen(*it) != (*it == finding);
        Self {
            inspected: self.inspected,
            seen: Finding::ALL.iter().copied().filter(turned).collect(),
        }
    }

    /// The same looked at in another way: what cannot be seen that way was not seen.
    pub fn looked_at(&self, inspected: Inspected) -> Self {
        let seen = self.findings().filter(|it| inspected.shows(*it)).collect();
        Self { inspected, seen }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn reading(inspected: Inspected, seen: &[Finding]) -> PartReading {
        PartReading {
            inspected,
            seen: seen.to_vec(),
        }
    }

    #[test]
    fn a_closed_part_shows_nothing_of_its_races() {
        let seen = [Finding::Flaked, Finding::RedGrease];
        let closed = reading(Inspected::Closed, &seen);
        assert!(closed.findings().eq([Finding::RedGrease]));
        assert_eq!(closed.causes(), [LikelyCause::Water]);
        let open = reading(Inspected::CutOpen, &seen);
        assert!(open.findings().eq([Finding::RedGrease, Finding::Flaked]));
        assert!(reading(Inspected::NotInspected, &seen).findings().eq([]));
    }

    #[test]
    fn all_but_a_part_that_was_cut_open_is_suspected() {
        let sure = Inspected::ALL.iter().filter(|it| !it.is_suspected());
        assert!(sure.eq(&[Inspected::CutOpen]));
    }

    #[test]
    fn a_finding_is_turned_alone_and_back() {
        let before = reading(Inspected::CutOpen, &[Finding::Flaked, Finding::Washboard]);
        let with = before.turned(Finding::SealCut);
        let all = [Finding::SealCut, Finding::Flaked, Finding::Washboard];
        assert!(with.findings().eq(all));
        assert_eq!(with.turned(Finding::SealCut), before);
        let without = before.turned(Finding::Flaked);
        assert!(without.findings().eq([Finding::Washboard]));
    }

    #[test]
    fn looking_less_far_takes_back_what_it_does_not_show() {
        let open = reading(Inspected::CutOpen, &[Finding::SealCut, Finding::Flaked]);
        let closed = open.looked_at(Inspected::Closed);
        assert_eq!(closed, reading(Inspected::Closed, &[Finding::SealCut]));
        assert!(open.looked_at(Inspected::NotInspected).seen.is_empty());
        // What was taken back does not come again by itself.
        let again = closed.looked_at(Inspected::CutOpen);
        assert!(again.findings().eq([Finding::SealCut]));
    }

    #[test]
    fn a_cause_that_two_findings_point_to_counts_once() {
        let both = [Finding::EncoderScratched, Finding::SealCut];
        let causes = reading(Inspected::Closed, &both).causes();
        assert_eq!(causes, [LikelyCause::ToolSlip]);
        let twice = reading(Inspected::Closed, &[Finding::SealCut, Finding::SealCut]);
        assert_eq!(twice.findings().count(), 1);
    }
}
