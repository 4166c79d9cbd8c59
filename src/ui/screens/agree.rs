//! The customer's page: only what concerns the customer, and one yes or no.
//!
//! While it is shown nothing else can be reached but the work, and that only by holding a key.

use crate::job::account::{Offer, offer};
use crate::job::agreed::{agreed_with, repair_with_further};
use crate::job::entry::{Consent, Event, How, Money, PersonField, Remark, Scope};
use crate::platform::clock;
use crate::platform::edge::page_end;
use crate::report::money;
use crate::text::{self, Asking, Say};
use crate::trade::play::Decision;
use crate::trade::wheel_end::{Step, StepKey};
use crate::ui::at::StepContext;
use crate::ui::parts::below::Below;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::frame::frame;
use crate::ui::parts::hold::hold;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::strip::banners;
use crate::ui::route::Route;
use crate::ui::screens::finding::finding;
use crate::ui::screens::inspection;
use crate::ui::screens::sign::Signing;
use crate::ui::screens::takeover::corner_title;
use crate::ui::view::prelude::*;

/// How far the customer's page is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Page {
    /// The technician has the phone.
    Work,
    /// The customer reads.
    Customer,
    /// The customer has said no; how it is kept is open.
    Refused,
}

/// The question at one step: what for, and for how much.
#[derive(Clone)]
pub(super) struct Question {
    pub(super) at: StepContext,
    /// The step that the answer is kept under.
    pub(super) step: StepKey,
    pub(super) scope: Scope,
    pub(super) amount: Option<Money>,
    pub(super) decision: Option<Decision>,
    /// What further work is asked for.
    pub(super) sentence: Option<String>,
    pub(super) page: RwSignal<Page>,
}

/// The customer's answer, to the inspection or to the repair.
pub fn consent(at: &StepContext) -> Node {
    let price = at.sheet().price();
    if at.planned.key.step == Step::TeardownYes {
        let known = price.and_then(|price| price.refit.clone());
        return match known {
            Some(amount) => asking(at, Some(amount)),
            None => inspection::first(at, asking),
        };
    }
    match at.corner().map(|corner| offer(at.sheet(), corner)) {
        Some(Offer::Amount(amount)) => asking(at, Some(amount)),
        Some(Offer::NotDivided) => inspection::divided(at, asking),
        Some(Offer::None) | None => asking(at, None),
    }
}

fn asking(at: &StepContext, amount: Option<Money>) -> Node {
    let teardown = at.planned.key.step == Step::TeardownYes;
    let question = Question {
        at: at.clone(),
        step: at.planned.key,
        sentence: None,
        scope: if teardown {
            Scope::Teardown
        } else {
            Scope::Repair
        },
        amount,
        decision: at
            .corner()
            .and_then(|corner| at.sheet().decided(corner))
            .map(|decided| decided.decision),
        page: RwSignal::new(Page::Customer),
    };
    (move || question.shown().unwrap_or_else(|| work(&question))).into_node()
}

impl Question {
    /// The customer's page; nothing while the technician has the phone.
    pub(super) fn shown(&self) -> Option<Node> {
        match self.page.get() {
            Page::Work => None,
            Page::Customer => Some(customer(self)),
            Page::Refused => Some(refused(self)),
        }
    }

    fn said(&self, yes: bool, how: How) -> Event {
        Event::Consent(Consent {
            step: self.step,
            scope: self.scope,
            yes,
            how,
            amount: self.amount.clone(),
        })
    }

    /// Keeps the answer. A no to the inspection leads to the end: nothing is opened; an answer to
    /// further work leads back to where it is done.
    fn keep(&self, whats: Vec<Event>, yes: bool) {
        if self.scope == Scope::Extra {
            self.at.write(whats);
            return;
        }
        if yes || self.scope != Scope::Teardown {
            self.at.write_and_go_on(whats);
            return;
        }
        let (app, id) = (self.at.app, self.at.open.log.0.clone());
        let end = Route::Step(id, StepKey::once(Step::End));
        app.append_then(whats, app.going_on(end));
    }

    fn ask(&self) -> String {
        match self.scope {
            Scope::Teardown => self.at.say(Say::CustomerAskInspect).to_owned(),
            Scope::Repair => self.at.say(Say::CustomerAsk).to_owned(),
            Scope::Extra => text::asking(self.at.lang, Asking::FurtherAsk),
        }
    }

    fn amount_line(&self) -> Option<String> {
        let (at, amount) = (&self.at, self.amount.as_ref()?);
        let recorded = money(at.fmt, amount);
        Some(match self.scope {
            Scope::Teardown => text::price_refit(at.lang, &recorded),
            Scope::Repair => match repair_with_further(at.sheet(), amount) {
                None => text::price_repair(at.lang, &recorded),
                Some((further, total)) => {
                    let (further, total) = (money(at.fmt, &further), money(at.fmt, &total));
                    let (repair, further, total) = (&recorded, &further, &total);
                    text::asking(
                        at.lang,
                        Asking::RepairAndFurther {
                            repair,
                            further,
                            total,
                        },
                    )
                }
            },
            Scope::Extra => {
                let total = agreed_with(at.sheet(), amount).map(|total| money(at.fmt, &total));
                let (more, total) = (recorded.as_str(), total.as_deref().unwrap_or_default());
                text::asking(at.lang, Asking::Further { more, total })
            }
        })
    }

    /// What comes of a no, and whether its signature matters.
    fn consequence(&self) -> Option<String> {
        match (self.scope, self.decision) {
            (Scope::Extra, _) => Some(text::asking(self.at.lang, Asking::FurtherNo)),
            (_, decision) => {
                decision.map(|it| text::declined_consequence(self.at.lang, it).to_owned())
            }
        }
    }

    fn yes_label(&self) -> String {
        let yes = || self.at.say(Say::Yes).to_owned();
        self.amount.as_ref().map_or_else(yes, |amount| {
            text::agree_to(self.at.lang, &money(self.at.fmt, amount))
        })
    }

    /// The answer with the name that was written in the box.
    fn keep_signed(&self, yes: bool, signing: Signing) {
        let signed = signing.whats(self.step);
        let whats = std::iter::once(self.said(yes, How::Written)).chain(signed);
        self.keep(whats.collect(), yes);
    }
}

/// A page with nothing on it but what the customer needs.
fn locked(question: &Question, body: Node, keys: Node) -> Node {
    let (app, page) = (question.at.app, question.page);
    let at = &question.at;
    let back = at.say(Say::BackToTech);
    let name = text::you_are_at(
        at.lang,
        text::phase(at.lang, at.planned.phase),
        at.text().name,
    );
    let below = Below::new(Signal::stored(true));
    // The box for a name stands whole once all was read.
    let end = below.end_then(|| clock::later(50, page_end));
    view! {
        <main class="customer" aria-label=name>
            {banners(app)}
            <section class="customer__say" tabindex="0">
                {body} {end}
            </section>
            {below.key(at.lang, || false)}
            <fieldset
                class="step__keys"
                prop:disabled={move || app.locked.get() || app.is_busy() || below.is_open()}
            >
                {keys}
            </fieldset>
            <footer class="customer__foot">
                <p>{at.say(Say::PageLocked)}</p>
                {hold(back, at.say(Say::HoldToConfirm), move || page.set(Page::Work))}
            </footer>
        </main>
    }
}

/// The question with a box for a name under it: a yes is kept with the name, or by word.
fn customer(question: &Question) -> Node {
    let at = &question.at;
    let signature = Signing::of(at);
    let found = at
        .corner()
        .zip(question.decision)
        .map(|(corner, decision)| finding(at, corner, decision));
    let refit = (question.scope == Scope::Teardown && question.amount.is_some())
        .then(|| view! { <p>{at.say(Say::IncludesRefit)}</p> });
    // Of two wheel ends the customer sees which one it is.
    let several = at.sheet().corners().len() > 1;
    let corner = at.corner().filter(|_| several);
    let corner = corner.map(|corner| corner_title(at.lang, corner, None));
    let body = view! {
        {corner}
        {found}
        {question.sentence.clone().map(|say| view! { <p class="customer__sentence">{say}</p> })}
        <h1 class="customer__ask">{question.ask()}</h1>
        {question.amount_line().map(|line| view! { <p class="customer__amount">{line}</p> })}
        {refit}
        {signature.shown(at)}
    };
    let (spoken, page, app) = (question.clone(), question.page, at.app);
    let speak = move || spoken.keep(vec![spoken.said(true, How::Spoken)], true);
    let refuse = move || {
        page.set(Page::Refused);
        app.lock();
    };
    let keys = view! {
        {signing(question, true, question.yes_label(), signature)}
        {key(Look::Plain, at.say(Say::YesSpoken), speak)}
        {key(Look::Plain, at.say(Say::No), refuse)}
    };
    locked(question, body.into_node(), keys.into_node())
}

/// The key that keeps an answer with the name in the box; there is none before it was written.
fn signing(question: &Question, yes: bool, label: String, signature: Signing) -> Node {
    let signed = question.clone();
    view! {
        <button
            type="button"
            class="key key--primary"
            prop:disabled={move || !signature.is_ready()}
            on:click={move |_| signed.keep_signed(yes, signature)}
        >
            {label}
        </button>
    }
}

/// The customer said no: what comes of it, and a name in the box, or the spoken word.
fn refused(question: &Question) -> Node {
    let at = &question.at;
    let signature = Signing::of(at);
    let drafts = Drafts::of(at);
    let witness = drafts.text("witness", "");
    let consequence = question.consequence();
    let matters = consequence.is_some();
    let seen = matters.then(|| {
        let label = text::asking(at.lang, Asking::Witness);
        Field::words("witness", witness).show(label, "", drafts, || {})
    });
    let body = view! {
        <h1 class="customer__ask">{at.say(Say::No)}</h1>
        {consequence.map(|say| view! { <p class="customer__sentence" role="alert">{say}</p> })}
        {signature.shown(at)}
        {seen}
    };
    let (spoken, back) = (question.clone(), question.page);
    let unsigned = if matters {
        at.say(Say::SignRefused)
    } else {
        text::how(at.lang, How::Spoken)
    };
    let speak = move || {
        let mut whats = vec![spoken.said(false, How::Spoken)];
        if matters {
            whats.push(Event::Remark(spoken.step, Remark::RefusedToSign));
            let who = witness.get_untracked().trim().to_owned();
            if !who.is_empty() {
                whats.push(Event::Person(PersonField::Witness, who));
            }
        }
        drafts.drop_with_tap();
        spoken.keep(whats, false);
    };
    let keys = view! {
        {signing(question, false, at.say(Say::Keep).to_owned(), signature)}
        {key(Look::Plain, unsigned, speak)}
        {key(Look::Plain, at.say(Say::Back), move || back.set(Page::Customer))}
    };
    locked(question, body.into_node(), keys.into_node())
}

/// The way to leave the car without an answer, once a repair is asked for.
fn waiting(question: &Question) -> Option<Node> {
    let at = &question.at;
    let wait = StepKey::at(Step::Wait, at.corner()?);
    question.decision?;
    let hash = Route::Step(at.open.log.0.clone(), wait).to_hash();
    Some(link(
        Look::Plain,
        text::asking(at.lang, Asking::WaitKey),
        hash,
    ))
}

/// What the technician sees: the customer's page, or an answer that came by message.
fn work(question: &Question) -> Node {
    let at = &question.at;
    let (page, yes, no) = (question.page, question.clone(), question.clone());
    let by_message = |say| {
        let how = text::how(at.lang, How::Electronic);
        format!("{how}: {}", at.say(say))
    };
    let person = |field| at.sheet().person(field).unwrap_or_default().to_owned();
    let known = person(PersonField::Message);
    let drafts = Drafts::of(at);
    let from = drafts.text(
        "message_from",
        if known.is_empty() {
            person(PersonField::Phone)
        } else {
            known.clone()
        },
    );
    let electronic = |question: Question, answer| {
        let known = known.clone();
        move || {
            let mut whats = vec![question.said(answer, How::Electronic)];
            let from = from.get_untracked().trim().to_owned();
            if from != known {
                whats.push(Event::Person(PersonField::Message, from));
            }
            drafts.drop_with_tap();
            question.keep(whats, answer);
        }
    };
    let field = Field::words("message_from", from).show(
        text::person_field(at.lang, PersonField::Message),
        "",
        drafts,
        || {},
    );
    let keys = view! {
        {key(Look::Primary, at.say(Say::ShowCustomer), move || page.set(Page::Customer))}
        {key(Look::Plain, by_message(Say::CustomerYes), electronic(yes, true))}
        {key(Look::Plain, by_message(Say::CustomerNo), electronic(no, false))}
        {waiting(question)}
    };
    frame(at, view! { {question.amount_line()} {field} }, keys)
}
