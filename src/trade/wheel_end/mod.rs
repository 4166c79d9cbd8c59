//! Kinds of wheel end, and the procedure of each as a list of named steps.

mod closing;
mod consequence;
mod item;
mod mishap;
mod plan;
mod procedure;
mod reading;
mod road;
mod spec;
mod step;
mod strip;
mod waiting;

pub use closing::REOPENED;
pub use consequence::{
    Consequence, Evidence, Given, Noted, Scope, consequences, hold, is_guard, is_work, stays_open,
};
pub use item::{Item, ItemKind, ItemState, items};
pub use mishap::can_happen;
pub use plan::{CornerPlan, Course, Kind, NutPosition, Plan, Sign, Start};
pub use procedure::{CARDS, ROUNDS, SHOVE_CRACKED, procedure, round_number};
pub use reading::setup_number;
pub use road::{LOOKS, sign_gone, sign_of, sign_step};
pub use step::{
    Change, Check, Choice, Form, HoldPoint, Measured, NotDoneReason, Phase, SetName, Step, StepKey,
    StepSpec, When,
};
pub use waiting::{SHOVE_FURTHER, SHOVE_WAITED};
