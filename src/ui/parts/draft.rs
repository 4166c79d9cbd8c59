//! Half-typed fields, half-set needles, counted swings: kept on the phone at every key, so that
//! neither a kill nor a picture taken in between loses them. Gone once they became entries.

use crate::ui::react::*;

use crate::trade::answer::Answer;
use crate::ui::at::StepContext;
use crate::ui::signal::RwSignal;
use crate::ui::state::App;
use crate::word::Word;

/// The field of a list's rows.
const ROWS: &str = "rows";

/// The drafts of one step.
#[derive(Clone, Copy)]
pub struct Drafts {
    app: App,
    step: StoredValue<String>,
    names: StoredValue<Vec<String>>,
}

impl Drafts {
    /// The drafts of this step of this job.
    pub fn of(at: &StepContext) -> Self {
        Self::named(
            at.app,
            format!("{}:{}", at.open.log.0, at.planned.key.code()),
        )
    }

    /// The drafts of a form that belongs to no step.
    pub fn named(app: App, name: String) -> Self {
        Self {
            app,
            step: StoredValue::new(name),
            names: StoredValue::new(Vec::new()),
        }
    }

    fn name(self, field: &str) -> String {
        self.step.with_value(|step| format!("{step}:{field}"))
    }

    fn read(self, field: &str) -> Option<String> {
        let name = self.name(field);
        self.names.update_value(|names| names.push(name.clone()));
        self.app.shelf().draft(&name)
    }

    /// A text field: as it was half typed, else `otherwise`.
    pub fn text(self, field: &str, otherwise: impl Into<String>) -> RwSignal<String> {
        RwSignal::new(self.read(field).unwrap_or_else(|| otherwise.into()))
    }

    /// A choice of a closed set: as it stood, else `otherwise`.
    pub fn word<T: Word + Send + Sync + 'static>(self, field: &str, otherwise: T) -> RwSignal<T> {
        let saved = self.read(field).and_then(|code| T::of_code(&code));
        RwSignal::new(saved.unwrap_or(otherwise))
    }

    /// A count: as it stood, else `otherwise`.
    pub fn count(self, field: &str, otherwise: u8) -> RwSignal<u8> {
        let saved = self.read(field).and_then(|text| text.parse().ok());
        RwSignal::new(saved.unwrap_or(otherwise))
    }

    /// The rows of a list as they stood, each by its own name: one that was added or renamed since
    /// is empty.
    pub fn answers(self, names: &[String]) -> Vec<Option<Answer>> {
        let saved = self.read(ROWS).unwrap_or_default();
        let saved: Vec<_> = saved
            .split(' ')
            .filter_map(|it| it.split_once('='))
            .collect();
        let of = |name: &String| {
            let (_, code) = saved.iter().find(|(saved, _)| saved == name)?;
            Answer::of_code(code)
        };
        names.iter().map(of).collect()
    }

    /// Keeps the rows of a list as they stand, by their names.
    pub fn set_answers(self, names: &[String], rows: impl IntoIterator<Item = Option<Answer>>) {
        let word = |(name, answer): (&String, Option<Answer>)| {
            answer.map(|answer| format!("{name}={}", answer.code()))
        };
        let rows: Vec<String> = names.iter().zip(rows).filter_map(word).collect();
        self.set(ROWS, &rows.join(" "));
    }

    /// What removes the rows of a list, to be called once they are kept.
    pub fn dropping_answers(self) -> impl FnOnce() + use<> + 'static {
        self.dropping_of(&[ROWS])
    }

    /// A field that no typed event tells of, such as the number over a pad: kept as it changes.
    pub fn followed(self, field: &'static str, otherwise: impl Into<String>) -> RwSignal<String> {
        let text = self.text(field, otherwise);
        Effect::new(move |before: Option<()>| {
            let now = text.get();
            if before.is_some() {
                self.set(field, &now);
            }
        });
        text
    }

    /// Keeps a field as it stands.
    pub fn set(self, field: &str, text: &str) {
        self.set_all(&[(field, text)]);
    }

    /// Keeps several fields as they stand, in one go.
    pub fn set_all(self, fields: &[(&str, &str)]) {
        let named = |(field, text): &(&str, &str)| (self.name(field), (*text).to_owned());
        let named: Vec<(String, String)> = fields.iter().map(named).collect();
        let drafts: Vec<_> = named
            .iter()
            .map(|(name, text)| (name.as_str(), Some(text.as_str())))
            .collect();
        self.app.shelf().set_drafts(&drafts);
    }

    /// Removes every draft of this step once the tap that comes next is kept; where it is not, they
    /// stay.
    pub fn drop_with_tap(self) {
        let names = self.names.get_value();
        self.app.drops.update_value(|all| all.extend(names));
    }

    /// What removes every draft of this step, to be called once the entries are kept.
    pub fn dropping(self) -> impl FnOnce() + 'static {
        drop_all(self.app, self.names.get_value())
    }

    /// What removes these drafts, whether they were read here or not.
    pub fn dropping_of(self, fields: &[&str]) -> impl FnOnce() + use<> + 'static {
        let names = fields.iter().map(|field| self.name(field)).collect();
        drop_all(self.app, names)
    }
}

fn drop_all(app: App, names: Vec<String>) -> impl FnOnce() + 'static {
    move || {
        let drafts: Vec<_> = names.iter().map(|name| (name.as_str(), None)).collect();
        app.shelf().set_drafts(&drafts);
    }
}
