//! The fields of a spec, whichever it is, and what is said of them before they are kept.

use crate::job::book::doubts_in;
use crate::job::typed_spec::{SpecInputError, override_reason};
use crate::text::{self, Desk, Lang, Say};
use crate::trade::fastening::spec::SpecError;
use crate::trade::fastening::{Doubt, Settled, Spec, SpecItem};
use crate::ui::at::StepContext;
use crate::ui::parts::camera::{Shot, Trouble, camera, said};
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::focus;
use crate::ui::parts::key::{Look, key};
use crate::ui::screens::specs::play::PlayFields;
use crate::ui::screens::specs::source::SourceFields;
use crate::ui::screens::specs::torque::TorqueFields;
use crate::ui::screens::specs::{Mode, save_spec};
use crate::ui::view::prelude::*;
use crate::units::{Format, Typed};

/// The name of the field that a spec begins with.
pub const VALUE: &str = "value";

/// The fields that differ by what the spec is for.
#[derive(Clone, Copy)]
enum Figures {
    Torque(TorqueFields),
    Play(PlayFields),
}

/// The form.
#[derive(Clone, Copy)]
pub struct SpecForm {
    /// The drafts of its fields.
    pub drafts: Drafts,
    /// Where it was read.
    pub source: SourceFields,
    figures: Figures,
    /// Whether it was tried to keep it, so that what is wrong may be said.
    tried: RwSignal<bool>,
}

impl SpecForm {
    /// The form as the job has it, as it was half typed, or with what the last spec carries over.
    pub fn new(at: &StepContext, item: SpecItem) -> Self {
        let drafts = Drafts::of(at);
        let figures = match item {
            SpecItem::PlayLimit => Figures::Play(PlayFields::new(at, drafts)),
            _ => Figures::Torque(TorqueFields::new(at, drafts, item)),
        };
        Self {
            drafts,
            source: SourceFields::new(at, drafts, item),
            figures,
            tried: RwSignal::new(false),
        }
    }

    /// Puts the cursor into the value.
    pub fn focus(self) {
        focus(VALUE);
    }

    /// The spec as the fields stand.
    fn spec(self) -> Result<Spec, SpecInputError> {
        let source = self.source.source();
        match self.figures {
            Figures::Torque(fields) => fields.spec(source),
            Figures::Play(fields) => fields.spec(source),
        }
    }

    /// Keeps the spec if nothing is doubted; else says what is, and a second key appears.
    fn keep(self, at: &StepContext) {
        self.tried.set(true);
        match self.spec() {
            Ok(spec) if doubts_in(at.sheet(), &spec).is_empty() => save_spec(at, self, spec, true),
            Err(SpecInputError::Fault(SpecError::NoSource)) => self.source.open.set(true),
            Ok(_) | Err(_) => {}
        }
    }

    /// The fields on the screen.
    pub fn body(self, at: &StepContext, trouble: Trouble) -> Node {
        let here = at.clone();
        let enter = move || self.keep(&here);
        let fields = match self.figures {
            Figures::Torque(fields) => fields.body(at, self.drafts, enter.clone()),
            Figures::Play(fields) => fields.body(at, self.drafts, enter.clone()),
        };
        let photographed = at.sheet().photos(at.planned.key).next().is_some();
        let lang = at.lang;
        view! {
            <div class="spec-form">
                {fields}
                {self.source.body(at, self.drafts, enter)}
                <div class="spec-form__page">
                    {camera(Shot::beside(at), trouble, Look::Primary)}
                    {photographed.then(|| view! { <p class="hint">{text::desk(lang, Desk::PagePictured)}</p> })}
                    {move || {
                        trouble.get().map(|word| said(lang, word))
                    }}
                </div>
            </div>
        }
    }

    /// The keys: keep, the reasons to keep it once it was doubted, and "not found".
    pub fn keys(self, at: &StepContext, mode: RwSignal<Mode>) -> Node {
        let (here, for_doubted) = (at.clone(), at.clone());
        let reasons = move || {
            let spec = self.spec().ok().filter(|_| self.tried.get())?;
            let doubted = !doubts_in(for_doubted.sheet(), &spec).is_empty();
            doubted.then(|| reasons(&for_doubted, self, &spec))
        };
        let for_slip = at.clone();
        view! {
            <div class="slip" role="alert">{move || self.says(&for_slip)}</div>
            {key(Look::Primary, at.text().primary, move || self.keep(&here))} {reasons}
            {key(Look::Plain, at.say(Say::NotFound), move || mode.set(Mode::NotFound))}
        }
    }

    /// What is wrong with the fields or odd about them, once it was tried to keep them.
    fn says(self, at: &StepContext) -> Option<Node> {
        if !self.tried.get() {
            return None;
        }
        let sentences = match self.spec() {
            Err(slip) => vec![text::spec_slip(at.lang, slip)],
            Ok(spec) => doubts_said(at, &spec),
        };
        let sentences = sentences
            .into_iter()
            .map(|sentence| view! { <p>{sentence}</p> });
        Some(sentences.collect_view())
    }
}

/// One key a reason for which a doubted spec is kept all the same; it stands on the spec.
pub fn reasons(at: &StepContext, form: SpecForm, spec: &Spec) -> Node {
    let keys = Settled::ALL.iter().map(|settled| {
        let (at, label) = (at.clone(), text::settled(at.lang, *settled));
        let spec = override_reason(spec.clone(), *settled);
        key(Look::Plain, label, move || {
            save_spec(&at, form, spec.clone(), true);
        })
    });
    view! { <div class="reasons">{keys.collect_view()}</div> }
}

/// Everything that is odd about a spec in this job, a sentence each.
pub fn doubts_said(at: &StepContext, spec: &Spec) -> Vec<String> {
    let doubts = doubts_in(at.sheet(), spec);
    let said = doubts.iter().map(|it| doubt_says(at.lang, at.fmt, it));
    said.collect()
}

fn doubt_says(lang: Lang, fmt: Format, doubt: &Doubt) -> String {
    use crate::units::Unit;
    fn both<U: Unit>(lang: Lang, fmt: Format, typed: &Typed<U>) -> String {
        let twin = text::also_value(lang, &fmt.typed_twin(typed).line());
        format!("{} {twin}", fmt.typed(typed).line())
    }
    match doubt {
        Doubt::Torque {
            typed,
            common,
            would_fit,
        } => {
            let recorded = |torque| fmt.torque_in(torque, typed.unit, 0).line();
            let fits: Vec<String> = would_fit.iter().map(|u| u.symbol().to_owned()).collect();
            let value = both(lang, fmt, typed);
            text::doubted(
                lang,
                &value,
                &recorded(common.0),
                &recorded(common.1),
                &fits,
            )
        }
        Doubt::PastProof {
            typed,
            thread,
            class,
            most,
        } => {
            let class = text::property_class(lang, *class);
            let bolt = text::fasteners(lang, "", thread.as_typed(), class);
            let most = fmt.torque_in(*most, typed.unit, 0).line();
            text::past_proof(lang, &both(lang, fmt, typed), &bolt, &most)
        }
        Doubt::OddForStud {
            typed,
            thread,
            common,
        } => {
            let recorded = |torque| fmt.torque_in(torque, typed.unit, 0).line();
            let value = both(lang, fmt, typed);
            let (low, high) = (recorded(common.0), recorded(common.1));
            text::odd_for_stud(lang, &value, thread.as_typed(), &low, &high)
        }
        Doubt::LowerStage { typed, before } => {
            text::lower_stage(lang, &both(lang, fmt, typed), &both(lang, fmt, before))
        }
        Doubt::Count { printed, known } => text::other_count(lang, *printed, *known),
        Doubt::Play {
            typed,
            common,
            would_fit,
        } => {
            let recorded = |length| fmt.length_in(length, typed.unit, 3).line();
            let fits: Vec<String> = would_fit.iter().map(|u| u.symbol().to_owned()).collect();
            let value = both(lang, fmt, typed);
            text::doubted(
                lang,
                &value,
                &recorded(common.0),
                &recorded(common.1),
                &fits,
            )
        }
    }
}
