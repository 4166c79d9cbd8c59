//! What must happen next on a job, as a list of jobs sorts it.

use crate::trade::wheel_end::Phase;

/// What a job asks for next, the most pressing first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Errand {
    /// The car was left with something loose or unfinished, or nobody can say.
    MakeSafe,
    /// There is work on the car.
    AtTheCar,
    /// The customer has to answer.
    Customer,
    /// A visit after the work is due today or was due before.
    Due,
    /// There is something to look up before the drive.
    Prepare,
    /// Nothing until a later day, on which something is due.
    Later,
    /// Nothing.
    Nothing,
}

/// How a job stands, as far as a list of jobs knows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Standing {
    /// The phase of the step that comes next, if one does.
    pub phase: Option<Phase>,
    /// Whether it has ended.
    pub has_ended: bool,
    /// Whether it ended with the car left unfinished.
    pub is_left: bool,
    /// Whether something is loose or may be.
    pub may_be_loose: bool,
    /// Whether something is due today or was due before.
    pub is_due: bool,
    /// Whether something is due on a later day.
    pub is_due_later: bool,
}

impl Errand {
    /// Every errand, in the order in which they are listed.
    pub const ALL: [Self; 7] = [
        Self::MakeSafe,
        Self::AtTheCar,
        Self::Customer,
        Self::Due,
        Self::Prepare,
        Self::Later,
        Self::Nothing,
    ];

    /// What a job asks for next.
    pub const fn of(job: Standing) -> Self {
        match job.phase {
            _ if job.has_ended && (job.is_left || job.may_be_loose) => Self::MakeSafe,
            _ if job.is_due && !job.may_be_loose => Self::Due,
            _ if job.has_ended && job.is_due_later => Self::Later,
            _ if job.has_ended => Self::Nothing,
            Some(Phase::Agree) => Self::Customer,
            Some(Phase::Pack) if !job.may_be_loose => Self::Prepare,
            _ => Self::AtTheCar,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const OPEN: Standing = Standing {
        phase: Some(Phase::Gauge),
        has_ended: false,
        is_left: false,
        may_be_loose: false,
        is_due: false,
        is_due_later: false,
    };
    const ENDED: Standing = Standing {
        phase: None,
        has_ended: true,
        ..OPEN
    };

    #[test]
    fn an_open_job_is_sorted_by_the_phase_of_its_next_step() {
        let at = |phase| {
            Errand::of(Standing {
                phase: Some(phase),
                ..OPEN
            })
        };
        assert_eq!(at(Phase::Pack), Errand::Prepare);
        assert_eq!(at(Phase::Agree), Errand::Customer);
        for phase in [Phase::Site, Phase::Gauge, Phase::Tighten, Phase::HandOver] {
            assert_eq!(at(phase), Errand::AtTheCar, "{phase:?}");
        }
        assert_eq!(
            Errand::of(Standing {
                phase: None,
                ..OPEN
            }),
            Errand::AtTheCar
        );
    }

    #[test]
    fn what_may_be_loose_is_never_only_prepared_nor_done_with() {
        let loose = |job| {
            Errand::of(Standing {
                may_be_loose: true,
                ..job
            })
        };
        assert_eq!(loose(ENDED), Errand::MakeSafe);
        let pack = Standing {
            phase: Some(Phase::Pack),
            ..OPEN
        };
        assert_eq!(loose(pack), Errand::AtTheCar);
    }

    #[test]
    fn what_is_due_on_a_later_day_is_not_done_with() {
        let later = Standing {
            is_due_later: true,
            ..ENDED
        };
        assert_eq!(Errand::of(later), Errand::Later);
        let today = Standing {
            is_due: true,
            ..later
        };
        assert_eq!(Errand::of(today), Errand::Due);
        let left = Standing {
            is_left: true,
            ..later
        };
        assert_eq!(Errand::of(left), Errand::MakeSafe);
        assert_eq!(Errand::of(ENDED), Errand::Nothing);
    }

    #[test]
    fn a_car_that_was_left_comes_before_what_is_due() {
        let left = Standing {
            is_left: true,
            is_due: true,
            ..ENDED
        };
        assert_eq!(Errand::of(left), Errand::MakeSafe);
        let due = Standing {
            is_due: true,
            ..ENDED
        };
        assert_eq!(Errand::of(due), Errand::Due);
        let loose = Standing {
            is_due: true,
            may_be_loose: true,
            ..OPEN
        };
        assert_eq!(Errand::of(loose), Errand::AtTheCar);
        assert_eq!(Errand::of(ENDED), Errand::Nothing);
    }

    #[test]
    fn all_errands_are_listed_in_their_order() {
        assert!(Errand::ALL.is_sorted());
    }
}
