//! Who writes, on which device, with which running number; and taking the last tap back.

use crate::job::JobState;
use crate::job::entry::Event;
use crate::job::practice::{self, OWN_COUNT};
use crate::platform::{chance, clock};
use crate::report::undone;
use crate::slate::{self, Pen};
use crate::text;
use crate::ui::shelf::COUNTERS;
use crate::ui::state::App;

/// Whether these entries are practice: they belong to such a job, or open one.
pub(super) fn is_practice(sheet: &JobState, whats: &[Event]) -> bool {
    let opens = |what: &Event| matches!(what, Event::Opened(opened) if opened.practice.is_some());
    practice::is_practice(sheet) || whats.iter().any(opens)
}

/// The setting that holds the next running number: practice has one of its own.
fn counter(device: &str) -> &'static str {
    let [work, practice] = COUNTERS;
    if device.ends_with(OWN_COUNT) {
        practice
    } else {
        work
    }
}

impl App {
    /// The name of this device; empty before it wrote anything.
    pub fn device(self) -> String {
        self.shelf().device()
    }

    /// The running number that the next entry of a device takes: past every one that is known.
    fn next_number(self, device: &str) -> u64 {
        let shelf = self.shelf();
        let setting = shelf.setting(counter(device)).and_then(|n| n.parse().ok());
        let last = shelf.says(|says| {
            let mut numbers = says.numbers();
            numbers.find(|(of, _)| *of == device).map(|(_, last)| last)
        });
        let after = last.map_or(1, |last| last.saturating_add(1));
        setting.unwrap_or(1_u64).max(after)
    }

    /// Everything about a tap that is not what happened; `None` if there is no chance to be had.
    pub fn pen(self, practice: bool) -> Option<Pen> {
        let shelf = self.shelf();
        let stamp = clock::now();
        let chance = chance::random::<10>().ok()?;
        let mut device = self.device();
        if device.is_empty() {
            device = chance
                .iter()
                .take(4)
                .map(|byte| format!("{byte:02x}"))
                .collect();
            shelf.set_setting("device", &device);
        }
        if practice {
            device.push_str(OWN_COUNT);
        }
        Some(Pen {
            by: self.settings.with_untracked(|settings| settings.by.clone()),
            n: self.next_number(&device),
            device,
            utc_ms: stamp.utc_ms,
            offset_min: stamp.offset_min,
            recorded: None,
            chance,
        })
    }

    pub(super) fn count_up(self, pen: &Pen, by: usize) {
        let by = u64::try_from(by).unwrap_or(1);
        let next = pen.n.saturating_add(by).to_string();
        self.shelf().set_setting(counter(&pen.device), &next);
    }

    /// Takes back the last tap of this phone, and says what it had said.
    pub fn undo(self) {
        let Some(open) = self.open.get_untracked() else {
            return;
        };
        let mut device = self.device();
        if practice::is_practice(&open.sheet) {
            device.push_str(OWN_COUNT);
        }
        let Some(Event::Strike(struck)) = slate::undo(&open.sheet, &device) else {
            return;
        };
        let (lang, format) = self
            .settings
            .with_untracked(|settings| (settings.lang, settings.format()));
        let what = undone(&open.sheet, lang, format, &struck);
        self.append_then(vec![Event::Strike(struck)], move || {
            self.undone.set(Some(text::undone(lang, &what)));
        });
    }
}
