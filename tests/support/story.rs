//! What a walk through the procedure needs to be told.

use std::collections::BTreeMap;

use hubslate::job::entry::{Carried, Ending, PersonField, Price, Reply, VehicleField};
use hubslate::trade::fastening::{Spec, SpecItem};
use hubslate::trade::vehicle::Corner;
use hubslate::trade::wheel_end::{Start, StepKey, When};

/// Everything about a job that the procedure cannot know.
pub struct Story {
    /// Where the job was started.
    pub start: Start,
    /// Who works.
    pub by: &'static str,
    /// The first tap: milliseconds since 1970 in UTC.
    pub begins: i64,
    /// The offset from UTC in minutes.
    pub offset_min: i32,
    /// Makes the ids of one story differ from those of another.
    pub seed: u64,
    /// The booking message.
    pub message: &'static str,
    /// Personal facts told at the car, where there is no booking message.
    pub persons: Vec<(PersonField, &'static str)>,
    /// The vehicle's facts.
    pub vehicle: Vec<(VehicleField, &'static str)>,
    /// The corners.
    pub corners: Vec<Corner>,
    /// The spec specs.
    pub specs: Vec<Spec>,
    /// The instruments.
    pub carried: Carried,
    /// The price.
    pub price: Price,
    /// Replies by the code of a step, or by the name of a step for every corner and time.
    pub replies: BTreeMap<&'static str, Reply>,
    /// The pull readings of the sets, by whether before or after and which.
    pub readings: BTreeMap<(When, u8), [&'static str; 3]>,
    /// A slip of the keypad at a round, by the round's code; taken back at once.
    pub slips: BTreeMap<&'static str, &'static str>,
    /// Notes, by the code of the step at which they are spoken.
    pub notes: BTreeMap<&'static str, &'static str>,
    /// Whether the customer says yes to the repair.
    pub yes: bool,
    /// The number and the lot of the new part.
    pub part: (&'static str, &'static str),
    /// Whether pictures were taken.
    pub photos: bool,
    /// How the job ends.
    pub ending: Ending,
}

impl Story {
    /// The reply to a step, if it is told.
    pub fn reply(&self, step: StepKey) -> Option<Reply> {
        let replies = &self.replies;
        let reply = replies
            .get(step.code().as_str())
            .or_else(|| replies.get(step.step.code()));
        reply.cloned()
    }

    /// The spec of an item; a spec that is faulty is no spec.
    pub fn spec(&self, item: SpecItem) -> Spec {
        let spec = self.specs.iter().find(|spec| spec.item == item);
        let spec = spec
            .unwrap_or_else(|| panic!("no card {}", item.code()))
            .clone();
        assert_eq!(spec.fault(), None);
        spec
    }
}
