//! The signature: a box for a finger, kept as the strokes that were drawn.

use web_sys::PointerEvent;

use crate::job::entry::{Event, PersonField, Signed};
use crate::text::{self, Customer, Say};
use crate::trade::wheel_end::StepKey;
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::frame::frame;
use crate::ui::parts::key::{Look, key};
use crate::ui::view::prelude::*;

/// Width of the box in its own units.
const WIDTH: i32 = 300;
/// Height of the box in its own units.
const HEIGHT: i32 = 120;

/// A signature with the customer's name before it, which is asked where none is recorded.
#[derive(Clone, Copy)]
pub struct Signing {
    strokes: RwSignal<String>,
    name: RwSignal<String>,
    asked: bool,
    drafts: Drafts,
}

impl Signing {
    /// The signature of a step.
    pub fn of(at: &StepContext) -> Self {
        let known = at.sheet().person(PersonField::Name).unwrap_or_default();
        let drafts = Drafts::of(at);
        let asked = known.trim().is_empty();
        Self {
            strokes: RwSignal::new(String::new()),
            name: match asked {
                true => drafts.text("signer", ""),
                false => RwSignal::new(known.to_owned()),
            },
            asked,
            drafts,
        }
    }

    /// The field for the name, where it is asked, and the box.
    pub fn shown(self, at: &StepContext) -> Node {
        let label = text::customer(at.lang, Customer::NameFirst);
        let name = Field::words("signer", self.name);
        let field = self.asked.then(|| name.show(label, "", self.drafts, || {}));
        view! { {field} {pad(at, self.strokes)} }
    }

    /// Whether there is a name and a stroke.
    pub fn is_ready(self) -> bool {
        let named = self.name.with(|name| !name.trim().is_empty());
        self.strokes.with(|strokes| !strokes.is_empty()) && named
    }

    /// The name, if it was asked here, and the signature.
    pub fn whats(self, step: StepKey) -> Vec<Event> {
        let name = self.name.get_untracked().trim().to_owned();
        let person = self.asked.then_some(Event::Person(PersonField::Name, name));
        self.drafts.drop_with_tap();
        let strokes = self.strokes.get_untracked();
        let signed = Event::Signed(Signed { step, strokes });
        person.into_iter().chain([signed]).collect()
    }
}

/// The customer signs for having seen the page.
pub fn sign(at: &StepContext) -> Node {
    let (here, signing) = (at.clone(), Signing::of(at));
    let keep = move |_| here.write_and_go_on(signing.whats(here.planned.key));
    frame(
        at,
        signing.shown(at),
        view! {
            <button
                type="button"
                class="key key--primary"
                prop:disabled={move || !signing.is_ready()}
                on:click=keep
            >
                {at.text().primary}
            </button>
        },
    )
}

/// A box to write a name in; `strokes` becomes SVG path data of whole units.
fn pad(at: &StepContext, strokes: RwSignal<String>) -> Node {
    let drawing = RwSignal::new(false);
    let box_ref = NodeRef::<crate::ui::react::html::Div>::new();
    let place = move |event: &PointerEvent| {
        let element = box_ref.get_untracked()?;
        let (wide, high) = (
            element.client_width().max(1),
            element.client_height().max(1),
        );
        let x = event.offset_x().clamp(0, wide).saturating_mul(WIDTH) / wide;
        let y = event.offset_y().clamp(0, high).saturating_mul(HEIGHT) / high;
        Some(format!("{x} {y}"))
    };
    let begin = move |event: PointerEvent| {
        event.prevent_default();
        if let (Some(element), Some(place)) = (box_ref.get_untracked(), place(&event)) {
            let _ = element.set_pointer_capture(event.pointer_id());
            drawing.set(true);
            // A dot is a stroke too.
            strokes.update(|d| *d += &format!("M {place} L {place} "));
        }
    };
    let go_on = move |event: PointerEvent| {
        if let (true, Some(place)) = (drawing.get_untracked(), place(&event)) {
            strokes.update(|d| *d += &format!("L {place} "));
        }
    };
    let (name, hint, clear) = (
        at.say(Say::AriaSignature),
        at.say(Say::SignBox),
        at.say(Say::Clear),
    );
    view! {
        <div
            node_ref=box_ref
            class="sign"
            role="img"
            aria-label=name
            on:pointerdown=begin
            on:pointermove=go_on
            on:pointerup={move |_| drawing.set(false)}
            on:pointercancel={move |_| drawing.set(false)}
            // A quick stroke is no throw: the browser would take the next tap for its end.
            on:touchstart={move |event| event.prevent_default()}
            on:touchmove={move |event| event.prevent_default()}
        >
            <span class="sign__hint" hidden={move || strokes.with(|strokes| !strokes.is_empty())}>
                {hint}
            </span>
            <svg class="sign__ink" viewBox={format!("0 0 {WIDTH} {HEIGHT}")} aria-hidden="true">
                <path d={move || strokes.get()}></path>
            </svg>
        </div>
        {move || {
            let ink = strokes.with(|strokes| !strokes.is_empty());
            ink.then(|| key(Look::Foot, clear, move || strokes.set(String::new())))
        }}
    }
}
