//! How far a job is at one of its steps: in which part of the work, and how much of that part lies
//! before the step.
//!
//! A part is what stands under one phase without a break; with two corners a phase has two parts.

use crate::trade::wheel_end::{PlannedStep, StepKey};

/// A place among the steps of a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HowFar {
    /// Which part it is, from 1.
    pub part: usize,
    /// How many parts the job has.
    pub parts: usize,
    /// Which step of its part it is, from 1.
    pub step: usize,
    /// How many steps its part has.
    pub steps: usize,
}

/// Where a step stands; nothing for a step that the job does not have.
pub fn how_far(steps: &[PlannedStep], at: StepKey) -> Option<HowFar> {
    let parts = || steps.chunk_by(|one, next| one.phase == next.phase);
    parts().enumerate().find_map(|(part, of)| {
        let step = of.iter().position(|planned| planned.key == at)?;
        Some(HowFar {
            part: part + 1,
            parts: parts().count(),
            step: step + 1,
            steps: of.len(),
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trade::vehicle::Corner;
    use crate::trade::wheel_end::{Form, Phase, Step};

    fn planned(step: Step, phase: Phase) -> PlannedStep {
        PlannedStep {
            key: StepKey::at(step, Corner::FrontLeft),
            phase,
            form: Form::Do,
            holds: Vec::new(),
            changes: Vec::new(),
            joins: false,
        }
    }

    fn steps() -> Vec<PlannedStep> {
        vec![
            planned(Step::WheelOff, Phase::Gauge),
            planned(Step::CaliperUp, Phase::Gauge),
            planned(Step::StripHub, Phase::Strip),
            planned(Step::GaugeClean, Phase::Gauge),
        ]
    }

    #[test]
    fn a_step_is_counted_within_its_part_and_its_part_within_the_job() {
        let at = |step| how_far(&steps(), StepKey::at(step, Corner::FrontLeft)).unwrap();
        let far = |part, step, steps| HowFar {
            part,
            parts: 3,
            step,
            steps,
        };
        assert_eq!(at(Step::WheelOff), far(1, 1, 2));
        assert_eq!(at(Step::CaliperUp), far(1, 2, 2));
        assert_eq!(at(Step::StripHub), far(2, 1, 1));
        // The phase comes again: that is a part of its own.
        assert_eq!(at(Step::GaugeClean), far(3, 1, 1));
    }

    #[test]
    fn a_step_of_another_job_stands_nowhere() {
        let elsewhere = StepKey::at(Step::WheelOff, Corner::RearLeft);
        assert_eq!(how_far(&steps(), elsewhere), None);
        assert_eq!(how_far(&[], elsewhere), None);
    }
}
