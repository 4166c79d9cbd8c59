//! The paced counter: what the hands do at each beat, while nobody touches the screen.

/// Swings each way, five pushing and five pulling: common practice, no source.
const SWINGS: i32 = 5;
/// Beats to look at the needle, to bring the bezel to zero, to remember a number.
const READS: i32 = 4;

/// What is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pace {
    /// Hands at the tire: push and swing, pull and swing.
    Rock,
    /// A round on the dial: push, read, pull, read.
    Gauge,
}

/// What the hands do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Beat {
    /// Push and swing.
    Push,
    /// Keep pushing and read.
    ReadPush,
    /// Pull and swing.
    Pull,
    /// Keep pulling and read.
    ReadPull,
}

impl Pace {
    /// What is done at a beat, the first being 0, and its count: swings up, and what is left of
    /// the reading down. The count of 0 says where to begin. `None` when all is done.
    pub fn beat(self, beat: i32) -> Option<(Beat, i32)> {
        let reads = match self {
            Self::Rock => 0,
            Self::Gauge => READS,
        };
        let first = SWINGS + 1 + reads;
        let (way, read, at) = if beat < first {
            (Beat::Push, Beat::ReadPush, beat)
        } else {
            // The change of hands has no beat of its own: the first pull is a swing.
            (Beat::Pull, Beat::ReadPull, beat - first + 1)
        };
        match at - SWINGS {
            ..0 | 0 => Some((way, at)),
            over if over <= reads => Some((read, reads + 1 - over)),
            _ => None,
        }
    }

    /// Whether something else begins at a beat, which has a tone of its own.
    pub fn turns_at(self, beat: i32) -> bool {
        let doing = |beat| self.beat(beat).map(|(doing, _)| doing);
        beat <= 0 || doing(beat) != doing(beat - 1)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn recorded(pace: Pace) -> Vec<(Beat, i32)> {
        (0..).map_while(|beat| pace.beat(beat)).collect()
    }

    #[test]
    fn rocking_is_five_swings_each_way() {
        let recorded = recorded(Pace::Rock);
        assert_eq!(recorded.len(), 11);
        assert_eq!(recorded.first(), Some(&(Beat::Push, 0)));
        assert_eq!(recorded.last(), Some(&(Beat::Pull, 5)));
        let turns = (0..11).filter(|beat| Pace::Rock.turns_at(*beat));
        assert_eq!(turns.collect::<Vec<_>>(), [0, 6]);
    }

    #[test]
    fn a_round_is_push_read_pull_read_with_time_to_read() {
        let recorded = recorded(Pace::Gauge);
        let mut order: Vec<Beat> = recorded.iter().map(|(beat, _)| *beat).collect();
        order.dedup();
        assert_eq!(
            order,
            [Beat::Push, Beat::ReadPush, Beat::Pull, Beat::ReadPull]
        );
        let of = |beat: Beat| {
            recorded
                .iter()
                .filter(move |(is, _)| *is == beat)
                .map(|(_, n)| *n)
        };
        assert_eq!(of(Beat::Push).collect::<Vec<_>>(), [0, 1, 2, 3, 4, 5]);
        assert_eq!(of(Beat::Pull).collect::<Vec<_>>(), [1, 2, 3, 4, 5]);
        for read in [Beat::ReadPush, Beat::ReadPull] {
            assert_eq!(of(read).collect::<Vec<_>>(), [4, 3, 2, 1]);
        }
    }
}
