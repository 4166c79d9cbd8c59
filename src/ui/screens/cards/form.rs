//! The fields of a card, whichever it is, and what is said of them before they are kept.

use crate::job::book::doubts_in;
use crate::job::typed_card::{CardInputError, kept_because};
use crate::text::{self, Desk, Lang, Say};
use crate::trade::fastening::card::CardError;
use crate::trade::fastening::{CardItem, Doubt, Settled, SpecCard};
use crate::ui::at::StepContext;
use crate::ui::parts::camera::{Shot, Trouble, camera, said};
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::focus;
use crate::ui::parts::key::{Look, key};
use crate::ui::screens::cards::play::PlayFields;
use crate::ui::screens::cards::source::SourceFields;
use crate::ui::screens::cards::torque::TorqueFields;
use crate::ui::screens::cards::{Mode, keep_card};
use crate::ui::view::prelude::*;
use crate::units::{Format, Typed};

/// The name of the field that a card begins with.
pub const VALUE: &str = "value";

/// The fields that differ by what the card is for.
#[derive(Clone, Copy)]
enum Figures {
    Torque(TorqueFields),
    Play(PlayFields),
}

/// The form.
#[derive(Clone, Copy)]
pub struct CardForm {
    /// The drafts of its fields.
    pub drafts: Drafts,
    /// Where it was read.
    pub source: SourceFields,
    figures: Figures,
    /// Whether it was tried to keep it, so that what is wrong may be said.
    tried: RwSignal<bool>,
}

impl CardForm {
    /// The form as the job has it, as it was half typed, or with what the last card carries over.
    pub fn new(at: &StepContext, item: CardItem) -> Self {
        let drafts = Drafts::of(at);
        let figures = match item {
            CardItem::PlayLimit => Figures::Play(PlayFields::new(at, drafts)),
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

    /// The card as the fields stand.
    fn card(self) -> Result<SpecCard, CardInputError> {
        let source = self.source.source();
        match self.figures {
            Figures::Torque(fields) => fields.card(source),
            Figures::Play(fields) => fields.card(source),
        }
    }

    /// Keeps the card if nothing is doubted; else says what is, and a second key appears.
    fn keep(self, at: &StepContext) {
        self.tried.set(true);
        match self.card() {
            Ok(card) if doubts_in(at.sheet(), &card).is_empty() => keep_card(at, self, card, true),
            Err(CardInputError::Fault(CardError::NoSource)) => self.source.open.set(true),
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
        let pictured = at.sheet().photos(at.spec.key).next().is_some();
        let lang = at.lang;
        view! {
            <div class="card-form">
                {fields}
                {self.source.body(at, self.drafts, enter)}
                <div class="card-form__page">
                    {camera(Shot::beside(at), trouble, Look::Primary)}
                    {pictured.then(|| view! { <p class="hint">{text::desk(lang, Desk::PagePictured)}</p> })}
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
            let card = self.card().ok().filter(|_| self.tried.get())?;
            let doubted = !doubts_in(for_doubted.sheet(), &card).is_empty();
            doubted.then(|| reasons(&for_doubted, self, &card))
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
        let sentences = match self.card() {
            Err(slip) => vec![text::card_slip(at.lang, slip)],
            Ok(card) => doubts_said(at, &card),
        };
        let sentences = sentences
            .into_iter()
            .map(|sentence| view! { <p>{sentence}</p> });
        Some(sentences.collect_view())
    }
}

/// One key a reason for which a doubted card is kept all the same; it stands on the card.
pub fn reasons(at: &StepContext, form: CardForm, card: &SpecCard) -> Node {
    let keys = Settled::ALL.iter().map(|settled| {
        let (at, label) = (at.clone(), text::settled(at.lang, *settled));
        let card = kept_because(card.clone(), *settled);
        key(Look::Plain, label, move || {
            keep_card(&at, form, card.clone(), true);
        })
    });
    view! { <div class="reasons">{keys.collect_view()}</div> }
}

/// Everything that is odd about a card in this job, a sentence each.
pub fn doubts_said(at: &StepContext, card: &SpecCard) -> Vec<String> {
    let doubts = doubts_in(at.sheet(), card);
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
            let told = |torque| fmt.torque_in(torque, typed.unit, 0).line();
            let fits: Vec<String> = would_fit.iter().map(|u| u.symbol().to_owned()).collect();
            let value = both(lang, fmt, typed);
            text::doubted(lang, &value, &told(common.0), &told(common.1), &fits)
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
            let told = |torque| fmt.torque_in(torque, typed.unit, 0).line();
            let value = both(lang, fmt, typed);
            let (low, high) = (told(common.0), told(common.1));
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
            let told = |length| fmt.length_in(length, typed.unit, 3).line();
            let fits: Vec<String> = would_fit.iter().map(|u| u.symbol().to_owned()).collect();
            let value = both(lang, fmt, typed);
            text::doubted(lang, &value, &told(common.0), &told(common.1), &fits)
        }
    }
}
