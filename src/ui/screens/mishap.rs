//! Something went wrong with a fastener or a part: what to do, part and time, the customer's further yes, and
//! back to the step it came from.

use crate::job::entry::{Consent, Event, How, Money, Remark, Reply, Scope};
use crate::job::mishap::{Mending, Mishap, mended, mending, possible, shoving, waiting};
use crate::report::{item_name, mishap_words};
use crate::text::{self, Asking, Say, StepText, TakeOver};
use crate::trade::answer::Answer;
use crate::trade::fastening::MishapKind;
use crate::trade::money::{minor_digits, parse_minor};
use crate::trade::wheel_end::{Form, Item, Step, StepKey};
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::frame::instead;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::picks::picks;
use crate::ui::route::Route;
use crate::ui::screens::agree::{Page, Question};
use crate::ui::screens::takeover::how_it_stands;
use crate::ui::screens::turn::begin_pass;
use crate::ui::view::prelude::*;

/// What the screen of a step shows instead of its own while something is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Telling {
    /// Nothing: the step itself.
    Nothing,
    /// Which of them.
    Which,
    /// This one.
    Event(MishapKind),
    /// An adapter on the wrench.
    Adapter,
}

/// A step that shows itself, with the key that something went wrong where its screen has hands on
/// fasteners, or what is told of that instead.
pub fn or_wrong(
    at: &StepContext,
    step: impl Fn(&StepContext, Option<Node>) -> Node + Send + 'static,
) -> Node {
    if possible(at.sheet(), &at.screen_steps()).is_empty() {
        return step(at, None);
    }
    let (here, telling) = (at.clone(), RwSignal::new(Telling::Nothing));
    (move || match telling.get() {
        Telling::Nothing | Telling::Adapter => step(&here, Some(begin(&here, telling))),
        Telling::Which => which(&here, telling),
        Telling::Event(kind) => {
            let (body, keys) = recorded(&here, kind, None, telling);
            instead(&here, body, keys)
        }
    })
    .into_node()
}

/// The key that begins it.
pub fn begin(at: &StepContext, telling: RwSignal<Telling>) -> Node {
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
    fn new(at: &StepContext, kind: MishapKind, likely: Option<Item>) -> Self {
        let drafts = Drafts::of(at);
        let box_says = at.corner().and_then(|corner| at.sheet().part(corner));
        let part = match box_says.filter(|_| kind.goes_back()) {
            Some(part) => text::number_and_lot(at.lang, &part.number, &part.lot),
            None => text::mishap_part(at.lang, kind, at.open.plan.fitted.fixing).to_owned(),
        };
        let minutes = if kind.asks_customer() { "30" } else { "0" };
        Self {
            item: RwSignal::new(likely),
            part: drafts.text("mishap-part", part),
            minutes: drafts.text("mishap-minutes", minutes),
            amount: drafts.text("mishap-amount", ""),
            how: RwSignal::new(How::Spoken),
            drafts,
        }
    }
}

/// The fasteners that this can have happened to, each with the step at which.
fn at_which(at: &StepContext, kind: MishapKind) -> Vec<(Item, StepKey)> {
    let mut all = possible(at.sheet(), &at.screen_steps()).into_iter();
    all.find_map(|(of, items)| (of == kind).then_some(items))
        .unwrap_or_default()
}

/// Which of them: one key a kind that can have happened here.
pub fn which(at: &StepContext, telling: RwSignal<Telling>) -> Node {
    let kinds = possible(at.sheet(), &at.screen_steps()).into_iter();
    let keys = kinds.map(|(kind, _)| {
        key(
            Look::Plain,
            text::mishap(at.lang, kind, at.open.plan.fitted.fixing),
            move || {
                telling.set(Telling::Event(kind));
            },
        )
    });
    let body = view! { <h2 class="mishap">{at.say(Say::WentWrong)}</h2> };
    let keys = view! {
        <div class="mishap__kinds">{keys.collect_view()}</div>
        {key(Look::Foot, at.say(Say::Back), move || telling.set(Telling::Nothing))}
    };
    instead(at, body, keys)
}

/// What to do about one kind, and the fields that record it. `likely` is the fastener whose turn
/// it is.
pub fn recorded(
    at: &StepContext,
    kind: MishapKind,
    likely: Option<Item>,
    telling: RwSignal<Telling>,
) -> (Node, Node) {
    let all = at_which(at, kind);
    let likely = likely.or_else(|| all.first().map(|(item, _)| *item));
    let fields = Fields::new(at, kind, likely);
    let lang = at.lang;
    let items = all.iter().map(|(item, _)| *item);
    let items: Vec<(Option<Item>, String)> = items
        .map(|item| {
            (
                Some(item),
                text::item(lang, item, at.open.plan.fitted.fixing),
            )
        })
        .collect();
    let which =
        (items.len() > 1).then(|| picks(at.say(Say::WhichFastener), items, fields.item, |_| {}));
    let field = |field: Field, label| field.show(at.say(label), "", fields.drafts, || {});
    let body = view! {
        <aside class="hold mishap" role="alert">
            <h2>{text::mishap(lang, kind, at.open.plan.fitted.fixing)}</h2>
            <p>{text::mishap_say(lang, kind, at.open.plan.fitted.fixing)}</p>
        </aside>
        {which}
        {field(Field::words("mishap-part", fields.part), Say::PartNeeded)}
        {kind
            .asks_customer()
            .then(|| field(Field::decimal("mishap-minutes", fields.minutes), Say::MinutesMore))}
    };
    let here = at.clone();
    let record = move || {
        if let Some(mishap) = fields.mishap(&here, kind) {
            fields.drafts.drop_with_tap();
            here.write(vec![Event::Mishap(mishap)]);
        }
    };
    let keys = view! {
        {key(Look::Primary, at.say(Say::RecordIt), record)} {again(at, kind)}
        {key(Look::Plain, at.say(Say::Back), move || telling.set(Telling::Nothing))}
    };
    (body.into_node(), keys.into_node())
}

/// What may still come right by hand: it is noted, and the pass begins again.
fn again(at: &StepContext, kind: MishapKind) -> Option<Node> {
    let remark = match kind {
        MishapKind::ClickedEarly => Remark::ClickedEarly,
        MishapKind::WouldNotStart => Remark::WouldNotStart,
        _ => return None,
    };
    matches!(at.planned.form, Form::Turn(_)).then(|| {
        let here = at.clone();
        key(Look::Plain, at.say(Say::StartPassAgain), move || {
            begin_pass(&here);
            let step = here.planned.key;
            here.write(vec![Event::Remark(step, remark), Event::Pass(step)]);
        })
    })
}

impl Fields {
    fn mishap(self, at: &StepContext, kind: MishapKind) -> Option<Mishap> {
        let minutes = self.minutes.get_untracked();
        let item = self.item.get_untracked()?;
        let mut all = at_which(at, kind).into_iter();
        let (_, step) = all.find(|(of, _)| *of == item)?;
        Some(Mishap {
            step,
            item,
            kind,
            part: self.part.get_untracked().trim().to_owned(),
            minutes: minutes.trim().parse().unwrap_or(0),
        })
    }
}

/// An open mishap in the way of a step: asked, refused, or agreed and to be mended.
pub fn in_the_way(at: &StepContext, mishap: &Mishap) -> Node {
    let fields = Fields::new(at, mishap.kind, Some(mishap.item));
    let (here, mishap, page) = (at.clone(), mishap.clone(), RwSignal::new(Page::Work));
    (move || {
        // The amount is the one that stands in the field when the customer's page is opened.
        let customers = (page.get() != Page::Work).then(|| question(&here, &mishap, fields, page));
        let shown = customers.and_then(|question| question.shown());
        shown.unwrap_or_else(|| work(&here, &mishap, fields, page))
    })
    .into_node()
}

/// The customer's page for further work.
fn question(at: &StepContext, mishap: &Mishap, fields: Fields, page: RwSignal<Page>) -> Question {
    Question {
        at: at.clone(),
        step: mishap.step,
        scope: Scope::Extra,
        amount: amount(at, fields),
        decision: None,
        sentence: Some(line(at, mishap)),
        page,
    }
}

fn line(at: &StepContext, mishap: &Mishap) -> String {
    let item = item_name(at.lang, at.sheet(), mishap.item);
    mishap_words(at.lang, &item, mishap, at.open.plan.fitted.fixing)
}

/// What the technician sees.
fn work(at: &StepContext, mishap: &Mishap, fields: Fields, page: RwSignal<Page>) -> Node {
    let state = mending(at.sheet(), mishap);
    let next = match state {
        Mending::Asking => at.say(Say::AskFurtherYes).to_owned(),
        Mending::Waiting => text::asking(at.lang, Asking::FurtherWaits),
        Mending::Refused => at.say(Say::FurtherRefused).to_owned(),
        Mending::Shove => shove_text(at, mishap).say.to_owned(),
        Mending::Agreed => {
            let part = !mishap.item.group.is_fastener();
            text::fix_now(at.lang, mishap.kind, part).to_owned()
        }
    };
    let caution = (state == Mending::Shove).then(|| shove_text(at, mishap).caution);
    let asks = matches!(state, Mending::Asking | Mending::Waiting);
    let amount = asks.then(|| {
        let amount = Field::decimal("mishap-amount", fields.amount);
        let amount = amount.show(at.say(Say::CostsMore), "", fields.drafts, || {});
        view! { {amount} {how(at, fields)} }
    });
    let body = view! {
        <aside class="hold mishap" role="alert">
            <h2>{next}</h2>
            {caution.map(|caution| view! { <p class="step__caution">{caution}</p> })}
            <p>{line(at, mishap)}</p>
            <p>{text::leaving(at.lang, how_it_stands(at).leaving())}</p>
        </aside>
        {amount}
        // What was read when it was told, for who comes to it later.
        <p>{text::mishap_say(at.lang, mishap.kind, at.open.plan.fitted.fixing)}</p>
    };
    let keys = match state {
        Mending::Asking | Mending::Waiting => consent_keys(at, mishap, fields, page),
        Mending::Refused => refused_keys(at, mishap, fields),
        Mending::Shove => shove_keys(at, mishap),
        Mending::Agreed => mended_keys(at, mishap),
    };
    instead(at, body, keys)
}

/// By word or by message: a name is written on the customer's page alone.
fn how(at: &StepContext, fields: Fields) -> Node {
    let ways = [How::Spoken, How::Electronic].map(|how| (how, text::how(at.lang, how).to_owned()));
    let legend = text::asking(at.lang, Asking::HowGiven);
    picks(legend, ways.to_vec(), fields.how, |_| {})
}

/// What it costs more, as typed, in the currency of the price.
fn amount(at: &StepContext, fields: Fields) -> Option<Money> {
    let currency = at.sheet().price()?.repair.currency.clone();
    let typed = fields.amount.get_untracked();
    let minor = parse_minor(&typed, minor_digits(&currency)).ok()?;
    Some(Money { minor, currency })
}

fn consent(at: &StepContext, mishap: &Mishap, fields: Fields, yes: bool) -> Event {
    Event::Consent(Consent {
        step: mishap.step,
        scope: Scope::Extra,
        yes,
        how: fields.how.get_untracked(),
        amount: amount(at, fields),
    })
}

fn answer(at: &StepContext, mishap: &Mishap, fields: Fields, yes: bool) -> impl Fn() + 'static {
    let (here, mishap) = (at.clone(), mishap.clone());
    move || {
        let what = consent(&here, &mishap, fields, yes);
        fields.drafts.drop_with_tap();
        here.write(vec![what]);
    }
}

fn consent_keys(at: &StepContext, mishap: &Mishap, fields: Fields, page: RwSignal<Page>) -> Node {
    let waits = (mending(at.sheet(), mishap) == Mending::Asking).then(|| {
        let (here, wait) = (at.clone(), waiting(mishap));
        key(
            Look::Plain,
            text::asking(at.lang, Asking::NoAnswerYet),
            move || {
                here.write(vec![Event::Answered(wait, Reply::Done)]);
            },
        )
    });
    view! {
        {key(Look::Primary, at.say(Say::ShowCustomer), move || page.set(Page::Customer))}
        {key(Look::Plain, at.say(Say::CustomerYes), answer(at, mishap, fields, true))}
        {key(Look::Plain, at.say(Say::CustomerNo), answer(at, mishap, fields, false))}
        {waits.map(|waits| view! { <div class="keys-grid">{waits}</div> })}
    }
}

/// The words of the shove after the car waited.
fn shove_text(at: &StepContext, mishap: &Mishap) -> StepText {
    text::step_for(at.lang, shoving(mishap), at.open.plan.build())
}

/// The car waited: it is shoved before anybody reaches under it.
fn shove_keys(at: &StepContext, mishap: &Mishap) -> Node {
    let (words, shove) = (shove_text(at, mishap), shoving(mishap));
    let said = |answer| {
        let here = at.clone();
        move || here.write(vec![Event::Answered(shove, Reply::Said(answer))])
    };
    view! {
        {key(Look::Primary, words.primary, said(Answer::Yes))}
        {key(Look::Plain, words.no, said(Answer::No))}
    }
}

/// Refused: the vehicle is not handed over; the customer may still agree.
fn refused_keys(at: &StepContext, mishap: &Mishap, fields: Fields) -> Node {
    let end = Route::Step(at.open.log.0.clone(), StepKey::once(Step::End));
    view! {
        {link(Look::Primary, at.say(Say::EndNow), end.to_hash())}
        {key(Look::Plain, at.say(Say::CustomerYes), answer(at, mishap, fields, true))}
    }
}

fn mended_keys(at: &StepContext, mishap: &Mishap) -> Node {
    let (here, item) = (at.clone(), mishap.item);
    let part = if mishap.part.is_empty() {
        text::item(at.lang, item, at.open.plan.fitted.fixing)
    } else {
        mishap.part.clone()
    };
    let leave = Route::Loose(at.open.log.0.clone()).to_hash();
    let back = mishap.kind.goes_back();
    let label = if back {
        text::take_over(at.lang, TakeOver::RightPart).to_owned()
    } else if mishap.kind == MishapKind::HoseTwisted {
        text::take_over(at.lang, TakeOver::HangsStraight).to_owned()
    } else if item.group.is_fastener() {
        text::mended_key(at.lang, &part)
    } else {
        text::replaced_key(at.lang, &part)
    };
    // The job is held for a part: it may be ended as left unfinished meanwhile.
    let end = back.then(|| {
        let end = Route::Step(at.open.log.0.clone(), StepKey::once(Step::End));
        link(Look::Plain, at.say(Say::EndNow), end.to_hash())
    });
    view! {
        {key(Look::Primary, label, move || {
            begin_pass(&here);
            here.write(mended(here.sheet(), &here.planned, item));
        })}
        {end}
        {link(Look::Plain, at.say(Say::LooseList), leave)}
    }
}
