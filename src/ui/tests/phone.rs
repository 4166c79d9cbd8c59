//! A phone without a browser: the screens as they are, and a person who reads and taps them.

use std::sync::Arc;

use any_spawner::Executor;

use crate::job::entry::{Entry, Event};
use crate::platform::{clock, edge, page};
use crate::ui::react::{ArcRwSignal, GetValue, Owner, SetValue, provide_context, run, type_into};
use crate::ui::route::Route;
use crate::ui::screens;
use crate::ui::settings::{Settings, Sound};
use crate::ui::shelf::BrowserStore;
use crate::ui::state::{App, Open};
use crate::ui::view::page::{Element, document};
use crate::ui::view::shown::{Shown, show};

/// The phone.
pub struct Phone {
    app: App,
    root: Element,
    _shown: Shown,
    _owner: Owner,
}

/// A key as it is read: its label, and whether it answers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Key {
    /// What it says.
    pub label: String,
    /// Whether a tap does anything.
    pub live: bool,
}

impl Phone {
    /// A phone on which nothing was ever done, at home; what a new one asks is put off.
    pub fn new() -> Self {
        Self::begun(true)
    }

    /// A phone of a van with two wrenches, at home: what a new one asks is answered.
    pub fn of_van() -> Self {
        let phone = Self::begun(false);
        phone.type_in("Technician's name", "R. Okafor");
        phone.type_in("Shop's name", "Fernbrook Mobile Hubs");
        for [name, low, high] in [["Short", "10", "80"], ["Long", "40", "250"]] {
            phone.type_in("Name of the wrench", name);
            phone.type_in("Lowest marked torque", low);
            phone.type_in("Highest marked torque", high);
            phone.tap("lb-ft");
            phone.tap("Save");
            assert!(phone.list_items().iter().any(|row| row.starts_with(name)));
        }
        phone.tap("Save and start");
        phone
    }

    fn begun(introduced: bool) -> Self {
        // Whoever comes second finds it there.
        let _ = Executor::init_futures_executor();
        page::set_hash("#/");
        let owner = Owner::new();
        let (app, root, shown) = owner.with(|| {
            let shelf = BrowserStore::in_memory();
            let mut settings = Settings::read(&shelf, "en-US");
            settings.introduced = introduced;
            settings.sound = Sound::Off;
            settings.by = "R. Okafor".to_owned();
            let app = App::new(shelf, settings, ArcRwSignal::new(None));
            provide_context(app);
            app.listed.set(true);
            let root = document().create_element("body").unwrap();
            let shown = show(screens::root(), &root);
            (app, root, shown)
        });
        let phone = Self {
            app,
            root,
            _shown: shown,
            _owner: owner,
        };
        phone.settle();
        phone
    }

    /// A phone that has this job and stands at its next step.
    pub fn with(entries: &[Entry]) -> Self {
        let phone = Self::new();
        phone.take(entries);
        phone
    }

    /// The job is this one from now on: nothing is half typed in it, and its next step is shown.
    pub fn take(&self, entries: &[Entry]) {
        let open = Open::of(entries).expect("a job has an entry");
        let log = open.log.0.clone();
        // The same hands go on: whoever takes over sees first how the car stands.
        if let Some(last) = entries.last() {
            let by = last.by.clone();
            self.app.settings.update(|settings| settings.by = by);
        }
        self.app.shelf().drop_drafts_of(&log);
        self.app.entries.set_value(entries.to_vec());
        self.app.open.set(Some(Arc::new(open)));
        self.go(&Route::Job(log));
    }

    /// Goes to a place by its address.
    pub fn go(&self, route: &Route) {
        page::set_hash(&route.to_hash());
        self.settle();
    }

    /// The same, and nobody has looked further down yet.
    pub fn go_unseen(&self, route: &Route) {
        page::set_hash(&route.to_hash());
        self.arrive();
    }

    /// The name of the open job's log.
    pub fn log(&self) -> String {
        self.open().log.0.clone()
    }

    /// The report of the open job, as it is read: the customer's part and the whole.
    pub fn report(&self) -> (String, String) {
        self.go(&Route::Report(self.log()));
        (text_in(&self.customers()), self.words())
    }

    /// Everything that was begun is done, keys are no longer held, and nothing was looked at.
    pub fn arrive(&self) {
        run();
        // As in a page, what follows from one thing is done before the next one happens.
        for _ in 0..10 {
            let route = Route::from_hash(&page::hash());
            if self.app.route.with_untracked(|it| *it != route) {
                self.app.arrive(route);
                run();
            }
            clock::move_on(50);
            run();
        }
    }

    /// The same, and what lies below the edge was pushed up.
    pub fn settle(&self) {
        self.arrive();
        edge::see_all();
        run();
    }

    /// The open job.
    pub fn open(&self) -> Arc<Open> {
        self.app.open.get_untracked().expect("a job is open")
    }

    /// What was written so far, in its order.
    pub fn entries(&self) -> Vec<Entry> {
        self.app.entries.get_value()
    }

    /// What a tap writes.
    pub fn writes(&self, act: impl FnOnce(&Self)) -> Vec<Event> {
        let before = self.entries().len();
        act(self);
        let after = self.entries().into_iter().skip(before);
        after.map(|entry| entry.what).collect()
    }

    /// The name of the screen: phase and step.
    pub fn label(&self) -> String {
        let mains = self.root.all(&|it| it.tag() == "main");
        let main = mains.first().expect("a screen has one main part");
        main.attribute("aria-label").unwrap_or_default()
    }

    /// All that is read on the screen.
    pub fn words(&self) -> String {
        text_in(&self.root)
    }

    /// The words of alerts.
    pub fn alerts(&self) -> String {
        let alerts = self
            .root
            .all(&|it| it.attribute("role").as_deref() == Some("alert"));
        let words: Vec<String> = alerts.iter().map(text_in).collect();
        words.join("\n")
    }

    fn buttons(&self, within: &str) -> Vec<Element> {
        let is_key = |it: &Element| matches!(it.tag(), "button" | "a");
        let parts = self.root.all(&|it| it.tag() == within);
        parts.iter().flat_map(|part| part.all(&is_key)).collect()
    }

    /// The keys of the step, in their order.
    pub fn keys(&self) -> Vec<Key> {
        let keys = self.buttons("fieldset");
        keys.iter().map(key).collect()
    }

    /// The black key: the one thing that comes next; of several the last.
    pub fn primary(&self) -> Option<Key> {
        let black = |it: &&Element| {
            let class = it.attribute("class").unwrap_or_default();
            class.contains("key--primary")
        };
        self.buttons("fieldset").iter().rfind(black).map(key)
    }

    /// The rows of lists, in their order, with how each stands.
    pub fn rows(&self) -> Vec<(String, String)> {
        let rows = self.root.all(&is_row);
        let row = |it: &Element| (text_of(it), it.attribute("data-answer").unwrap_or_default());
        rows.iter().map(row).collect()
    }

    /// Taps a row of a list.
    pub fn tap_row(&self, row: usize) {
        let rows = self.root.all(&is_row);
        assert!(rows[row].fire("click"));
        self.settle();
    }

    /// Whether a key of this label is on the screen.
    pub fn has(&self, label: &str) -> bool {
        self.find(label).is_some()
    }

    fn find(&self, label: &str) -> Option<Element> {
        let is_key = |it: &Element| matches!(it.tag(), "button" | "a" | "summary");
        let keys = self.root.all(&is_key);
        let named =
            |it: &Element| text_of(it) == label || it.attribute("title").as_deref() == Some(label);
        keys.into_iter().find(named)
    }

    /// The label of the first key that begins so.
    pub fn begins(&self, start: &str) -> Option<String> {
        let keys = self.root.all(&|it| matches!(it.tag(), "button" | "a"));
        keys.iter().map(text_of).find(|it| it.starts_with(start))
    }

    /// Taps the key of this label, as a finger does: a dead key does nothing.
    #[track_caller]
    pub fn tap(&self, label: &str) {
        let found = self.find(label);
        let Some(key) = found else {
            panic!("no key `{label}` at `{}`: {}", self.label(), self.words());
        };
        assert!(!key.is_dead(), "`{label}` is dead at `{}`", self.label());
        match key.attribute("href") {
            Some(hash) => page::set_hash(&hash),
            None => assert!(key.fire("click"), "`{label}` does nothing"),
        }
        self.settle();
    }

    /// How many elements of this class are on the screen.
    pub fn count(&self, class: &str) -> usize {
        count(&self.root, class)
    }

    /// The same on the customer's part of the report.
    pub fn count_for_customer(&self, class: &str) -> usize {
        count(&self.customers(), class)
    }

    fn customers(&self) -> Element {
        let of = |it: &Element| it.attribute("aria-label").as_deref() == Some("For the customer");
        self.root.all(&of).remove(0)
    }

    /// The words of each element of this class.
    pub fn each(&self, class: &str) -> Vec<String> {
        let of = |it: &Element| it.attribute("class").as_deref() == Some(class);
        self.root.all(&of).iter().map(text_in).collect()
    }

    /// What stands in lists, a row each.
    pub fn list_items(&self) -> Vec<String> {
        self.root
            .all(&|it| it.tag() == "li")
            .iter()
            .map(text_in)
            .collect()
    }

    /// Whether the key of this label is the one that was chosen.
    pub fn chosen(&self, label: &str) -> bool {
        let pressed = |it: Element| it.attribute("aria-pressed").as_deref() == Some("true");
        self.find(label).is_some_and(pressed)
    }

    /// Whether the key of this label is a way to another place.
    pub fn is_link(&self, label: &str) -> bool {
        self.find(label).is_some_and(|it| it.tag() == "a")
    }

    /// Goes to any step of the job by its name, from the list of all steps.
    #[track_caller]
    pub fn go_to_step(&self, name: &str) {
        self.tap("More");
        self.tap("All steps");
        let step = self.begins(name);
        self.tap(&step.expect("the step is in the list"));
    }

    fn fields(&self) -> Vec<(String, Element)> {
        let fields = self
            .root
            .all(&|it| matches!(it.tag(), "input" | "textarea" | "select"));
        let named = |it: Element| {
            let own = it.attribute("aria-label");
            let around = || it.parent_node().map(|label| text_of(&label));
            (own.or_else(around).unwrap_or_default(), it)
        };
        fields.into_iter().map(named).collect()
    }

    /// Whether a field of this label is on the screen.
    pub fn has_field(&self, label: &str) -> bool {
        self.fields().iter().any(|(name, _)| name == label)
    }

    /// The whole label of the first field whose label begins so.
    #[track_caller]
    pub fn field_that_begins(&self, start: &str) -> String {
        let found = self
            .fields()
            .into_iter()
            .find(|(name, _)| name.starts_with(start));
        found
            .unwrap_or_else(|| panic!("no field `{start}`: {}", self.words()))
            .0
    }

    /// Types into the field of this label.
    #[track_caller]
    pub fn type_in(&self, label: &str, text: &str) {
        let fields = self.fields();
        let Some((_, field)) = fields.iter().find(|(name, _)| name == label) else {
            panic!("no field `{label}` at `{}`: {}", self.label(), self.words());
        };
        type_into(text);
        assert!(field.fire("input"));
        self.settle();
    }
}

fn count(within: &Element, class: &str) -> usize {
    let of = |it: &Element| {
        let own = it.attribute("class").unwrap_or_default();
        own.split(' ').any(|it| it == class)
    };
    within.all(&of).len()
}

fn is_row(it: &Element) -> bool {
    it.attribute("class").as_deref() == Some("checks__row")
}

/// The name of a key: what a screen reader says, else its words.
fn text_of(it: &Element) -> String {
    it.attribute("aria-label").unwrap_or_else(|| text_in(it))
}

fn text_in(it: &Element) -> String {
    it.words().split_whitespace().collect::<Vec<_>>().join(" ")
}

fn key(it: &Element) -> Key {
    Key {
        label: text_of(it),
        live: !it.is_dead(),
    }
}
