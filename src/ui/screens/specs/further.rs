//! What else a torque spec can say: more stages, and what the page says of the fasteners.

use crate::job::typed_spec::{Further, TypedPrinted, typed_stages};
use crate::text::{self, Desk};
use crate::trade::fastening::{Condition, Pattern, PropertyClass, TorqueBody};
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picks::{picks, toggle};
use crate::ui::view::prelude::*;
use crate::word::Word;

/// The names of the fields of further stages; no page asks for more than that.
const STAGES: [&str; 6] = ["stage1", "stage2", "stage3", "stage4", "stage5", "stage6"];
const KINDS: &str = "stages";
const SEATED: &str = "seated";

/// The fields.
#[derive(Clone, Copy)]
pub struct FurtherFields {
    seated: RwSignal<bool>,
    /// The codes of the further stages, one a word.
    kinds: RwSignal<String>,
    values: [RwSignal<String>; STAGES.len()],
    count: RwSignal<String>,
    thread: RwSignal<String>,
    class: RwSignal<Option<PropertyClass>>,
    pattern: RwSignal<Option<Pattern>>,
    grade: RwSignal<String>,
}

impl FurtherFields {
    /// The fields as the job has them, or empty.
    pub fn new(drafts: Drafts, body: Option<&TorqueBody>) -> Self {
        let (seated, stages) = typed_stages(body.map_or(&[], |body| body.stages.as_slice()));
        let printed = body.map(|body| TypedPrinted::of(&body.printed));
        let printed = printed.unwrap_or_default();
        let kinds: Vec<&str> = stages.iter().map(|(kind, _)| kind.code()).collect();
        let mut typed = stages.iter().map(|(_, text)| text.clone());
        Self {
            seated: RwSignal::new(on(drafts, SEATED, seated)),
            kinds: drafts.text(KINDS, kinds.join(" ")),
            values: STAGES.map(|name| drafts.text(name, typed.next().unwrap_or_default())),
            count: drafts.text("count", printed.count),
            thread: drafts.text("thread", printed.thread),
            class: word(drafts, "class", printed.class),
            pattern: word(drafts, "pattern", printed.pattern),
            grade: drafts.text("grade", printed.threadlocker),
        }
    }

    /// Whether it is seated before the first figure.
    pub fn seated_first(self) -> bool {
        self.seated.get()
    }

    /// The further stages as typed.
    pub fn stages(self) -> Vec<(Further, String)> {
        let kinds = self.kinds();
        let values = kinds.into_iter().zip(self.values);
        values.map(|(kind, value)| (kind, value.get())).collect()
    }

    /// What the page says of the fasteners, as typed.
    pub fn printed(self) -> TypedPrinted {
        TypedPrinted {
            count: self.count.get(),
            thread: self.thread.get(),
            class: self.class.get(),
            pattern: self.pattern.get(),
            threadlocker: self.grade.get(),
        }
    }

    fn kinds(self) -> Vec<Further> {
        let codes = self.kinds.get();
        codes.split(' ').filter_map(Further::from_code).collect()
    }

    /// The fields on the screen, folded away until they are asked for.
    pub fn body(
        self,
        at: &StepContext,
        drafts: Drafts,
        enter: impl Fn() + Clone + 'static,
    ) -> Node {
        let open = self.seated.get_untracked()
            || !self.kinds.with_untracked(String::is_empty)
            || self.printed_untracked() != TypedPrinted::default();
        let turn = move || {
            self.seated.update(|on| *on = !*on);
            let code = if self.seated.get_untracked() {
                "yes"
            } else {
                ""
            };
            drafts.set(SEATED, code);
        };
        let seated = text::desk(at.lang, Desk::SeatedFirst);
        let (here, on_enter) = (at.clone(), enter.clone());
        let on_enter = StoredValue::new_local(on_enter);
        let rows = move || {
            let enter = move || {
                let _ = on_enter.try_with_value(|enter| enter());
            };
            self.rows(&here, drafts, enter)
        };
        view! {
            <details class="more" open=open>
                <summary class="key key--foot">{text::desk(at.lang, Desk::MoreStages)}</summary>
                <div class="picks__keys">{toggle(seated, move || self.seated.get(), turn)}</div>
                {rows}
                {self.stage_keys(at, drafts)}
                {self.fasteners(at, drafts, enter)}
            </details>
        }
    }

    fn printed_untracked(self) -> TypedPrinted {
        untrack(move || self.printed())
    }

    fn rows(self, at: &StepContext, drafts: Drafts, enter: impl Fn() + Clone + 'static) -> Node {
        let rows = self.kinds().into_iter().zip(STAGES).zip(self.values);
        let rows = rows.map(|((kind, name), value)| {
            let label = match kind {
                Further::Torque => Desk::FurtherTorque,
                Further::Angle => Desk::FurtherAngle,
                Further::Back => Desk::FurtherBack,
            };
            let label = text::desk(at.lang, label);
            Field::decimal(name, value).show(label, "", drafts, enter.clone())
        });
        rows.collect_view()
    }

    /// One key a kind of stage, and one that takes the last stage out again.
    fn stage_keys(self, at: &StepContext, drafts: Drafts) -> Node {
        let set = move |kinds: &[Further]| {
            let codes: Vec<&str> = kinds.iter().map(|kind| kind.code()).collect();
            self.kinds.set(codes.join(" "));
            drafts.set(KINDS, &codes.join(" "));
        };
        let add = [
            (Further::Torque, Desk::AddTorque),
            (Further::Angle, Desk::AddAngle),
            (Further::Back, Desk::AddBack),
        ];
        let add = add.map(|(kind, label)| {
            key(Look::Plain, text::desk(at.lang, label), move || {
                let mut kinds = untrack(move || self.kinds());
                if kinds.len() < STAGES.len() {
                    kinds.push(kind);
                    set(&kinds);
                }
            })
        });
        let out = key(
            Look::Foot,
            text::desk(at.lang, Desk::TakeStageOut),
            move || {
                let mut kinds = untrack(move || self.kinds());
                kinds.pop();
                set(&kinds);
            },
        );
        view! {
            <div class="picks__keys">{add.into_iter().collect_view()}</div>
            {out}
        }
    }

    fn fasteners(
        self,
        at: &StepContext,
        drafts: Drafts,
        enter: impl Fn() + Clone + 'static,
    ) -> Node {
        let lang = at.lang;
        let field =
            |field: Field, label| field.show(text::desk(lang, label), "", drafts, enter.clone());
        let none = || text::desk(lang, Desk::NotSaid).to_owned();
        let classes = PropertyClass::ALL.iter().copied();
        let classes = classes.map(|it| (Some(it), text::property_class(lang, it).to_owned()));
        let classes = [(None, none())].into_iter().chain(classes);
        let patterns = Pattern::ALL.iter().copied();
        let patterns = patterns.map(|it| (Some(it), text::pattern(lang, it).to_owned()));
        let patterns = [(None, none())].into_iter().chain(patterns);
        let grade = text::desk(lang, Desk::ThreadlockerGrade);
        view! {
            {field(Field::decimal("count", self.count), Desk::Count)}
            {field(Field::capitals("thread", self.thread), Desk::Thread)}
            {picks(text::desk(lang, Desk::Class), classes.collect(), self.class, move |it| {
                drafts.set("class", it.map_or("", PropertyClass::code));
            })}
            {picks(text::desk(lang, Desk::PatternLegend), patterns.collect(), self.pattern, move |it| {
                drafts.set("pattern", it.map_or("", Pattern::code));
            })}
            {Field::words("grade", self.grade).show(grade, "", drafts, enter)}
        }
    }
}

/// A choice that may be none: as it was half chosen, else `otherwise`.
fn word<W: Word + Send + Sync + 'static>(
    drafts: Drafts,
    name: &str,
    otherwise: Option<W>,
) -> RwSignal<Option<W>> {
    let saved = drafts.text(name, otherwise.map_or("", Word::word_code));
    RwSignal::new(W::of_code(&saved.get_untracked()))
}

fn on(drafts: Drafts, name: &str, otherwise: bool) -> bool {
    let otherwise = if otherwise { "yes" } else { "" };
    drafts
        .text(name, otherwise)
        .with_untracked(|text| text == "yes")
}

/// The same conditions with one turned; what it rules out goes.
pub fn turned(all: &str, condition: Condition) -> String {
    let mut codes: Vec<&str> = all.split_whitespace().collect();
    let code = condition.code();
    if codes.contains(&code) {
        codes.retain(|one| *one != code);
    } else {
        let rival = condition.rival().map(Condition::code);
        codes.retain(|one| Some(*one) != rival);
        codes.push(code);
    }
    codes.join(" ")
}
