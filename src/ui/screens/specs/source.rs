//! Where a value was read: asked once, then one line that the next specs carry over.

use crate::job::book::{last_source, source_of};
use crate::text::{self, Desk, Say};
use crate::trade::day::day_of;
use crate::trade::fastening::{SpecItem, SpecSource};
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::today;
use crate::ui::view::prelude::*;

/// The fields.
#[derive(Clone, Copy)]
pub struct SourceFields {
    document: RwSignal<String>,
    page: RwSignal<String>,
    date: RwSignal<String>,
    who: RwSignal<String>,
    /// Whether the fields are shown instead of the line.
    pub open: RwSignal<bool>,
}

impl SourceFields {
    /// The spec's own source, else that of the last spec, looked up today.
    pub fn new(at: &StepContext, drafts: Drafts, item: SpecItem) -> Self {
        let own = at.sheet().spec(item).and_then(source_of);
        let last = own.or_else(|| last_source(at.sheet()));
        let by = at.app.settings.with_untracked(|it| it.by.clone());
        let date = own.map_or_else(today, |own| own.looked_up.to_string());
        let who = match (own, by.is_empty()) {
            (None, false) => by,
            _ => last.map_or(by, |last| last.who.clone()),
        };
        let text = |last: Option<&String>| last.cloned().unwrap_or_default();
        let fields = Self {
            document: drafts.text("document", text(last.map(|last| &last.document))),
            page: drafts.text("page", text(last.map(|last| &last.page))),
            date: drafts.text("date", date),
            who: drafts.text("who", who),
            open: RwSignal::new(false),
        };
        let lacking = fields.document.with_untracked(String::is_empty)
            || fields.who.with_untracked(String::is_empty);
        fields.open.set(lacking || last.is_none());
        fields
    }

    /// The source as the fields stand; a date that is none is today.
    pub fn source(self) -> SpecSource {
        let date = self.date.get();
        let looked_up = day_of(&date).or_else(|| day_of(&today()));
        SpecSource {
            document: self.document.get().trim().to_owned(),
            page: self.page.get().trim().to_owned(),
            looked_up: looked_up.unwrap_or_default(),
            who: self.who.get().trim().to_owned(),
            override_reason: None,
        }
    }

    /// The fields, or the line with its key.
    pub fn body(
        self,
        at: &StepContext,
        drafts: Drafts,
        enter: impl Fn() + Clone + 'static,
    ) -> Node {
        let (at, enter) = (at.clone(), StoredValue::new_local(enter));
        let enter = move || {
            let _ = enter.try_with_value(|enter| enter());
        };
        let body = move || {
            if self.open.get() {
                self.fields(&at, drafts, enter)
            } else {
                self.line(&at)
            }
        };
        view! { <div class="source">{body}</div> }
    }

    fn line(self, at: &StepContext) -> Node {
        let (document, page) = (self.document.get(), self.page.get());
        let from = text::from_page(at.lang, &document, &page, &self.date.get());
        let open = self.open;
        view! {
            <p>
                <b>{text::desk(at.lang, Desk::From)} {": "}</b>
                {from}
            </p>
            {key(Look::Foot, text::desk(at.lang, Desk::ChangeSource), move || open.set(true))}
        }
    }

    fn fields(self, at: &StepContext, drafts: Drafts, enter: impl Fn() + Clone + 'static) -> Node {
        let field = |field: Field, label| field.show(at.say(label), "", drafts, enter.clone());
        view! {
            {field(Field::words("document", self.document), Say::SpecDocument)}
            {field(Field::words("page", self.page), Say::SpecPage)}
            {field(Field::words("who", self.who), Say::SpecWho)}
            {field(Field::words("date", self.date), Say::SpecDate)}
            <p class="hint">{text::desk(at.lang, Desk::DateHint)}</p>
        }
    }
}
