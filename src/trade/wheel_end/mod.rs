//! Kinds of wheel end, and the procedure of each as a list of named steps.

mod bolted_driven;
mod bolted_free;
mod consequence;
mod item;
mod kind;
mod mishap;
mod plan;
mod planned;
mod pressed;
mod pressed_free;
mod procedure;
mod road;
mod row;
mod runs;
mod shown;
mod spindle_hub;
mod step;
mod steps;
mod tapered;

pub use consequence::{
    Consequence, Evidence, Given, Noted, Scope, consequences, hold, is_guard, is_work, stays_open,
};
pub use item::{Item, ItemKind, ItemState, items};
pub use kind::{Kind, KitItem, WheelEnd, usual_count};
pub use mishap::{Hands, can_happen, is_seen_behind};
pub use plan::{Build, CornerPlan, Course, Fitted, NutPosition, Plan, Sign, Start};
pub use planned::{ROUNDS, round_number, setup_number};
pub use procedure::{REOPENED, SHOVE_CRACKED, SHOVE_FURTHER, SHOVE_WAITED, STUD_BROKE, procedure};
pub use road::{sign_gone, sign_of, sign_step};
pub use row::{Again, Car, Meets, Row};
pub use shown::{CaptionWord, StepDrawing};
pub use step::{
    Change, Check, Choice, Form, HoldPoint, Measured, NotDoneReason, Phase, PlannedStep, SetName,
    StepKey, When,
};
pub use steps::{LOOKS, Step};
