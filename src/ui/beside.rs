//! What a step writes beside its own answer: the reminder, the proofs that are to be recorded, and
//! the report as it is handed over.

use crate::job::ending;
use crate::job::entry::{Due, Event, HandedOver};
use crate::job::proof::with_records;
use crate::trade::wheel_end::{Form, PlannedStep};
use crate::ui::at::StepContext;
use crate::ui::parts::today;
use crate::units::{DistanceUnit, System};

/// The entries that stand before the answer of `spec`; none for most steps.
pub fn beside(at: &StepContext, planned: &PlannedStep) -> Vec<Event> {
    match planned.form {
        Form::Retorque => {
            let nuts = retorque(at);
            let play = nuts
                .as_ref()
                .and_then(|due| ending::end_play_again(at.sheet(), due));
            [nuts, play].into_iter().flatten().map(Event::Due).collect()
        }
        Form::Report => with_records(at.sheet(), vec![Event::HandedOver(HandedOver::NOW)]),
        _ => Vec::new(),
    }
}

/// When the lug nuts are due again.
pub fn retorque(at: &StepContext) -> Option<Due> {
    let unit = match at.fmt.system {
        System::Metric => DistanceUnit::Kilometre,
        System::Us => DistanceUnit::Mile,
    };
    let shop = at.app.shop.with_untracked(|shop| shop.retorque.clone());
    ending::retorque_by(at.sheet(), &today(), unit, shop.as_ref())
}
