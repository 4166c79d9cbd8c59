//! What the list of jobs shows of one job: derived from its sheet, disposable, made again at will.

use serde::{Deserialize, Serialize};

use crate::job::Sheet;
use crate::job::entry::{DueKind, LogId, PersonField, VehicleField};
use crate::job::practice::is_practice;
use crate::trade::wheel_end::StepSpec;

/// The version of the summary's form; another one is made again from the entries.
const VERSION: u32 = 1;

/// One line of the list.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Summary {
    v: u32,
    /// The job.
    pub log: String,
    /// The plate, as typed.
    pub plate: String,
    /// The owner's name.
    pub name: String,
    /// The vehicle family.
    pub family: String,
    /// The code of the step that comes next; empty if none does.
    pub next: String,
    /// The code of its phase.
    pub phase: String,
    /// How many items are loose.
    pub loose: usize,
    /// The code of the ending; empty if it has not ended.
    pub ending: String,
    /// The day by which the wheel nuts are due, `YYYY-MM-DD`; empty if none.
    pub due: String,
    /// Whether it is practice.
    pub practice: bool,
    /// When it was last written, milliseconds since 1970 in UTC.
    pub touched: i64,
}

impl Summary {
    /// The line of a job.
    pub fn of(log: &LogId, sheet: &Sheet, next: Option<&StepSpec>) -> Self {
        let person = |field| sheet.person(field).unwrap_or_default().to_owned();
        let times = sheet.entries().iter().map(|entry| entry.at.utc_ms);
        Self {
            v: VERSION,
            log: log.0.clone(),
            plate: person(PersonField::Plate),
            name: person(PersonField::Name),
            family: sheet
                .vehicle(VehicleField::Family)
                .unwrap_or_default()
                .to_owned(),
            next: next.map(|spec| spec.key.code()).unwrap_or_default(),
            phase: next
                .map(|spec| spec.phase.code().to_owned())
                .unwrap_or_default(),
            loose: sheet.loose().len(),
            ending: sheet
                .ended()
                .map(|e| e.ending.code().to_owned())
                .unwrap_or_default(),
            due: sheet
                .due(DueKind::Retorque)
                .map(|due| due.date.clone())
                .unwrap_or_default(),
            practice: is_practice(sheet),
            touched: times.max().unwrap_or(0),
        }
    }

    /// The text it is kept as.
    pub fn to_text(&self) -> String {
        serde_json::to_string(self).unwrap_or_default()
    }

    /// The line of a text, unless it is of another form.
    pub fn from_text(text: &str) -> Option<Self> {
        serde_json::from_str::<Self>(text)
            .ok()
            .filter(|summary| summary.v == VERSION)
    }

    /// Whether the re-torque is still to be looked back on.
    pub fn next_is_due(&self) -> bool {
        self.next == "retorque_done"
    }

    /// Whether a customer waits for the re-torque since before `today`; nobody does in practice.
    pub fn is_overdue(&self, today: &str) -> bool {
        !self.practice && self.next_is_due() && !self.due.is_empty() && self.due.as_str() < today
    }

    /// Whether three typed characters find this job, by plate or by name.
    pub fn is_found_by(&self, typed: &str) -> bool {
        let plain = |text: &str| {
            text.chars()
                .filter(|c| c.is_alphanumeric())
                .flat_map(char::to_lowercase)
                .collect()
        };
        let typed: String = plain(typed);
        let fields: [String; 3] = [plain(&self.plate), plain(&self.name), plain(&self.family)];
        fields.iter().any(|field| field.contains(&typed))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::fold;

    #[test]
    fn a_practice_job_is_never_overdue() {
        let mut summary = Summary::of(&LogId("a".to_owned()), &fold([]), None);
        summary.next = "retorque_done".to_owned();
        summary.due = "2026-03-04".to_owned();
        assert!(summary.is_overdue("2026-03-05"));
        assert!(!summary.is_overdue("2026-03-04"));
        summary.practice = true;
        assert!(!summary.is_overdue("2026-03-05"));
    }
}
