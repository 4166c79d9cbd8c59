//! Something went wrong with a fastener: what to do, part and time, the owner's further yes, and
//! back to the step it came from.

use leptos::prelude::*;

use crate::job::entry::{Consent, How, Money, Scope, What};
use crate::job::mishap::{Mending, Mishap, candidates, mended, mending};
use crate::report::item_name;
use crate::text::{self, Asking, Say};
use crate::trade::fastening::MishapKind;
use crate::trade::money::{minor_digits, parse_minor};
use crate::trade::wheel_end::{Form, Item, Step, StepKey};
use crate::ui::at::At;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::frame::frame;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::picks::picks;
use crate::ui::route::Route;
use crate::ui::screens::turn::begin_pass;

/// What the screen of a step shows instead of its own while something is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Telling {
    /// Nothing: the step itself.
    Nothing,
    /// Which of them.
    Which,
    /// This one.
    What(MishapKind),
    /// An adapter on the wrench.
    Adapter,
}

/// The key that begins it.
pub fn begin(at: &At, telling: RwSignal<Telling>) -> AnyView {
    key(Look::Plain, at.say(Say::WentWrong), move || {
        telling.set(Telling::Which);
    })
}

/// The fields of a mishap.
#[derive(Clone, Copy)]
struct Fields {
    item: RwSignal<Option<Item>>,
    part: RwSignal<String>,
    minutes: RwSignal<String>,
    amount: RwSignal<String>,
    how: RwSignal<How>,
    drafts: Drafts,
}

impl Fields {
    fn new(at: &At, kind: MishapKind, likely: Option<Item>) -> Self {
        let drafts = Drafts::of(at);
        let all = candidates(at.sheet(), &at.spec);
        let part = text::mishap_part(at.lang, kind);
        Self {
            item: RwSignal::new(likely.or_else(|| all.first().copied())),
            part: drafts.text("mishap-part", part),
            minutes: drafts.text("mishap-minutes", "30"),
            amount: drafts.text("mishap-amount", ""),
            how: RwSignal::new(How::Spoken),
            drafts,
        }
    }
}

/// Which of them: one key a kind.
pub fn which(at: &At, telling: RwSignal<Telling>) -> AnyView {
    let keys = MishapKind::ALL.iter().map(|kind| {
        let kind = *kind;
        key(Look::Plain, text::mishap(at.lang, kind), move || {
            telling.set(Telling::What(kind));
        })
    });
    let body = view! { <h2 class="mishap">{at.say(Say::WentWrong)}</h2> };
    let keys = view! {
        <div class="mishap__kinds">{keys.collect_view()}</div>
        {key(Look::Foot, at.say(Say::Back), move || telling.set(Telling::Nothing))}
    };
    frame(at, body, keys)
}

/// What to do about one kind, and the fields that record it. `likely` is the fastener whose turn
/// it is.
pub fn told(
    at: &At,
    kind: MishapKind,
    likely: Option<Item>,
    telling: RwSignal<Telling>,
) -> (AnyView, AnyView) {
    let fields = Fields::new(at, kind, likely);
    let lang = at.lang;
    let items = candidates(at.sheet(), &at.spec).into_iter();
    let items: Vec<(Option<Item>, String)> = items
        .map(|item| (Some(item), text::item(lang, item)))
        .collect();
    let which =
        (items.len() > 1).then(|| picks(at.say(Say::WhichFastener), items, fields.item, |_| {}));
    let field = |field: Field, label| field.show(at.say(label), "", fields.drafts, || {});
    let body = view! {
        <aside class="hold mishap" role="alert">
            <h2>{text::mishap(lang, kind)}</h2>
            <p>{text::mishap_say(lang, kind)}</p>
        </aside>
        {which}
        {field(Field::words("mishap-part", fields.part), Say::PartNeeded)}
        {field(Field::decimal("mishap-minutes", fields.minutes), Say::MinutesMore)}
    };
    let here = at.clone();
    let record = move || {
        if let Some(mishap) = fields.mishap(&here, kind) {
            fields.drafts.dropping()();
            here.write(vec![What::Mishap(mishap)]);
        }
    };
    let keys = view! {
        {key(Look::Primary, at.say(Say::RecordIt), record)} {again(at, kind)}
        {key(Look::Plain, at.say(Say::Back), move || telling.set(Telling::Nothing))}
    };
    (body.into_any(), keys.into_any())
}

/// What may still come right by hand: it is noted, and the pass begins again.
fn again(at: &At, kind: MishapKind) -> Option<AnyView> {
    let by_hand = matches!(kind, MishapKind::ClickedEarly | MishapKind::WouldNotStart);
    (by_hand && matches!(at.spec.form, Form::Turn(_))).then(|| {
        let here = at.clone();
        let note = text::mishap(at.lang, kind).to_owned();
        key(Look::Plain, at.say(Say::StartPassAgain), move || {
            begin_pass(&here);
            let step = here.spec.key;
            here.write(vec![What::Note(Some(step), note.clone()), What::Pass(step)]);
        })
    })
}

impl Fields {
    fn mishap(self, at: &At, kind: MishapKind) -> Option<Mishap> {
        let minutes = self.minutes.get_untracked();
        Some(Mishap {
            step: at.spec.key,
            item: self.item.get_untracked()?,
            kind,
            part: self.part.get_untracked().trim().to_owned(),
            minutes: minutes.trim().parse().unwrap_or(0),
        })
    }
}

/// An open mishap in the way of a step: asked, refused, or agreed and to be mended.
pub fn in_the_way(at: &At, mishap: &Mishap) -> AnyView {
    let state = mending(at.sheet(), mishap);
    let item = item_name(at.lang, at.sheet(), mishap.item);
    let what = text::mishap(at.lang, mishap.kind);
    let line = text::mishap_line(at.lang, &item, what, &mishap.part, mishap.minutes);
    let fields = Fields::new(at, mishap.kind, Some(mishap.item));
    let next = match state {
        Mending::Asking => Say::AskFurtherYes,
        Mending::Refused => Say::FurtherRefused,
        Mending::Agreed => Say::MendNow,
    };
    let amount = (state == Mending::Asking).then(|| {
        let amount = Field::decimal("mishap-amount", fields.amount);
        let amount = amount.show(at.say(Say::CostsMore), "", fields.drafts, || {});
        view! { {amount} {how(at, fields)} }
    });
    let body = view! {
        <aside class="hold mishap" role="alert">
            <h2>{line}</h2>
            <p>{text::mishap_say(at.lang, mishap.kind)}</p>
            <p>{at.say(next)}</p>
        </aside>
        {amount}
    };
    let keys = match state {
        Mending::Asking => consent_keys(at, mishap, fields),
        Mending::Refused => refused_keys(at, mishap, fields),
        Mending::Agreed => mended_keys(at, mishap),
    };
    frame(at, body, keys)
}

/// By word or by message: a name is written on the owner's page alone.
fn how(at: &At, fields: Fields) -> AnyView {
    let ways = [How::Spoken, How::Electronic].map(|how| (how, text::how(at.lang, how).to_owned()));
    let legend = text::asking(at.lang, Asking::HowGiven);
    picks(legend, ways.to_vec(), fields.how, |_| {})
}

fn consent(at: &At, mishap: &Mishap, fields: Fields, yes: bool) -> What {
    let typed = fields.amount.get_untracked();
    let currency = at
        .sheet()
        .price()
        .map(|price| price.repair.currency.clone());
    let amount = currency.and_then(|currency| {
        let minor = parse_minor(&typed, minor_digits(&currency)).ok()?;
        Some(Money { minor, currency })
    });
    What::Consent(Consent {
        step: mishap.step,
        scope: Scope::Extra,
        yes,
        how: fields.how.get_untracked(),
        amount,
    })
}

fn answer(at: &At, mishap: &Mishap, fields: Fields, yes: bool) -> impl Fn() + 'static {
    let (here, mishap) = (at.clone(), mishap.clone());
    move || {
        let what = consent(&here, &mishap, fields, yes);
        fields.drafts.dropping()();
        here.write(vec![what]);
    }
}

fn consent_keys(at: &At, mishap: &Mishap, fields: Fields) -> AnyView {
    view! {
        {key(Look::Primary, at.say(Say::OwnerYes), answer(at, mishap, fields, true))}
        {key(Look::Plain, at.say(Say::OwnerNo), answer(at, mishap, fields, false))}
    }
    .into_any()
}

/// Refused: the vehicle is not handed over; the owner may still agree.
fn refused_keys(at: &At, mishap: &Mishap, fields: Fields) -> AnyView {
    let end = Route::Step(at.open.log.0.clone(), StepKey::once(Step::End));
    view! {
        {link(Look::Primary, at.say(Say::EndNow), end.to_hash())}
        {key(Look::Plain, at.say(Say::OwnerYes), answer(at, mishap, fields, true))}
    }
    .into_any()
}

fn mended_keys(at: &At, mishap: &Mishap) -> AnyView {
    let (here, item) = (at.clone(), mishap.item);
    let part = if mishap.part.is_empty() {
        text::item(at.lang, item)
    } else {
        mishap.part.clone()
    };
    let leave = Route::Loose(at.open.log.0.clone()).to_hash();
    view! {
        {key(Look::Primary, text::mended_key(at.lang, &part), move || {
            begin_pass(&here);
            here.write(mended(&here.spec, item));
        })}
        {link(Look::Plain, at.say(Say::LooseList), leave)}
    }
    .into_any()
}
