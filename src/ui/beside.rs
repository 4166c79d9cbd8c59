//! What a step writes beside its own answer: the reminder, and the report as it is handed over.

use leptos::prelude::WithUntracked;

use crate::exchange;
use crate::job::ending;
use crate::job::entry::{Due, Entry, HandedOver, What};
use crate::slate;
use crate::trade::wheel_end::{Form, StepSpec};
use crate::ui::at::At;
use crate::ui::parts::today;
use crate::units::{DistanceUnit, System};

/// The entries that stand before the answer of `spec`; none for most steps.
pub fn beside(at: &At, spec: &StepSpec) -> Vec<What> {
    match spec.form {
        Form::Retorque => retorque(at).map(What::Due).into_iter().collect(),
        Form::Report => vec![handed_over(at)],
        _ => Vec::new(),
    }
}

/// When the wheel nuts are due again.
pub fn retorque(at: &At) -> Option<Due> {
    let unit = match at.fmt.system {
        System::Metric => DistanceUnit::Kilometre,
        System::Us => DistanceUnit::Mile,
    };
    let shop = at.app.shop.with_untracked(|shop| shop.retorque.clone());
    ending::retorque_by(at.sheet(), &today(), unit, shop.as_ref())
}

/// The digest of these entries, as an export gives it.
pub fn digest_of(entries: &[Entry]) -> String {
    let records = slate::records(entries).unwrap_or_default();
    exchange::digest(records.iter().map(|record| record.text.as_str()))
}

/// The report as the entries stand.
fn handed_over(at: &At) -> What {
    let digest = digest_of(at.sheet().entries());
    What::HandedOver(HandedOver { digest })
}
