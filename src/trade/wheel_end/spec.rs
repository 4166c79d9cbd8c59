//! How the steps of a procedure are put together.

use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::item::{ItemKind, ItemState};
use crate::trade::wheel_end::step::{Change, Form, HoldPoint, Phase, Step, StepKey, StepSpec};

/// A step of the whole vehicle.
pub(super) fn once(phase: Phase, step: Step, form: Form) -> StepSpec {
    StepSpec {
        key: StepKey::once(step),
        phase,
        form,
        holds: Vec::new(),
        changes: Vec::new(),
        joins: false,
    }
}

/// A step at one corner.
pub(super) fn at_corner(phase: Phase, step: Step, corner: Corner, form: Form) -> StepSpec {
    StepSpec {
        key: StepKey::at(step, corner),
        phase,
        form,
        holds: Vec::new(),
        changes: Vec::new(),
        joins: false,
    }
}

impl StepSpec {
    /// Told on one screen with the step after it.
    pub(super) fn with_next(self) -> Self {
        Self {
            joins: true,
            ..self
        }
    }

    pub(super) fn held_by(mut self, hold: HoldPoint) -> Self {
        self.holds.push(hold);
        self
    }

    pub(super) fn moves(mut self, group: ItemKind, to: ItemState) -> Self {
        self.changes.push(Change {
            group,
            only: None,
            to,
        });
        self
    }

    pub(super) fn moves_one(mut self, group: ItemKind, number: u8, to: ItemState) -> Self {
        self.changes.push(Change {
            group,
            only: Some(number),
            to,
        });
        self
    }
}
