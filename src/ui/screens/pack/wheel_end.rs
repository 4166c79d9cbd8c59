//! What is at the wheel: the kind of wheel end, and what of it picks and words its steps.

use crate::job::entry::VehicleField;
use crate::job::facts::Facts;
use crate::text::{self, Lang};
use crate::trade::vehicle::{Encoder, NutLock, Pressing, SpeedSensor, WheelBrake};
use crate::trade::wheel_end::Kind;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::picks::{picks, toggle};
use crate::ui::view::prelude::*;
use crate::word::Word;

/// The questions; which of them are asked follows from the kind.
#[derive(Clone, Copy)]
pub struct WheelEndFields {
    /// The kind.
    pub kind: RwSignal<Kind>,
    /// What brakes it.
    pub brake: RwSignal<WheelBrake>,
    /// What reads its speed.
    pub sensor: RwSignal<SpeedSensor>,
    /// What the sensor reads.
    pub encoder: RwSignal<Encoder>,
    /// What locks a setting nut.
    pub lock: RwSignal<NutLock>,
    /// How a bearing is pressed.
    pub pressing: RwSignal<Pressing>,
}

impl WheelEndFields {
    /// The answers as the job has them, or as they were half given.
    pub fn new(drafts: Drafts, facts: &Facts) -> Self {
        Self {
            kind: drafts.word("kind", facts.kind),
            brake: drafts.word("brake", facts.brake),
            sensor: drafts.word("sensor", facts.sensor),
            encoder: drafts.word("encoder", facts.encoder),
            lock: drafts.word("lock", facts.lock),
            pressing: drafts.word("pressing", facts.pressing),
        }
    }

    /// Whether bolts hold the hub.
    pub fn is_bolted(self) -> bool {
        matches!(self.kind.get(), Kind::BoltedDriven | Kind::BoltedFree)
    }

    /// The questions on the screen.
    pub fn body(self, lang: Lang, drafts: Drafts) -> Node {
        let more = move || {
            let kind = self.kind.get();
            let pressed = kind == Kind::Pressed;
            let read = kind.is_pressed() && self.sensor.get() != SpeedSensor::None;
            let brake = kind.may_have_a_drum().then(|| {
                asked(
                    lang,
                    drafts,
                    ("brake", VehicleField::Brake),
                    WheelBrake::ALL,
                    text::wheel_brake,
                    self.brake,
                )
            });
            let lock = (kind == Kind::Tapered).then(|| {
                asked(
                    lang,
                    drafts,
                    ("lock", VehicleField::NutLock),
                    NutLock::ALL,
                    text::nut_lock,
                    self.lock,
                )
            });
            let pressing = pressed.then(|| {
                asked(
                    lang,
                    drafts,
                    ("pressing", VehicleField::Pressing),
                    Pressing::ALL,
                    text::pressing,
                    self.pressing,
                )
            });
            let encoder = read.then(|| {
                asked(
                    lang,
                    drafts,
                    ("encoder", VehicleField::Encoder),
                    Encoder::ALL,
                    text::encoder,
                    self.encoder,
                )
            });
            view! { {brake} {lock} {pressing} {encoder} }
        };
        let known = move || text::wheel_end_is(lang, text::kind(lang, self.kind.get()));
        // What is in force stands on the key; a common wheel end costs no touch and no room.
        view! {
            <details class="more">
                <summary class="key key--plain">{known}</summary>
            {self.kinds(lang, drafts)}
            {asked(lang, drafts, ("sensor", VehicleField::Sensor), SpeedSensor::ALL, text::speed_sensor, self.sensor)}
            {more}
            </details>
        }
    }

    fn kinds(self, lang: Lang, drafts: Drafts) -> Node {
        let legend = text::vehicle_field(lang, VehicleField::Kind);
        let keys = Kind::ALL.iter().map(|kind| {
            let kind = *kind;
            toggle(
                text::kind(lang, kind),
                move || self.kind.get() == kind,
                move || {
                    drafts.set("kind", kind.code());
                    self.kind.set(kind);
                },
            )
        });
        let keys = keys.collect_view();
        view! {
            <div class="picks" role="group" aria-label=legend>
                <p class="picks__legend">{legend}</p>
                <div class="picks__keys picks__keys--long">{keys}</div>
            </div>
        }
    }
}

/// One question with its few answers.
fn asked<W: Word + PartialEq + Send + Sync + 'static>(
    lang: Lang,
    drafts: Drafts,
    (name, field): (&'static str, VehicleField),
    all: &'static [W],
    say: fn(Lang, W) -> &'static str,
    chosen: RwSignal<W>,
) -> Node {
    let options = all.iter().map(|it| (*it, say(lang, *it).to_owned()));
    picks(
        text::vehicle_field(lang, field),
        options.collect(),
        chosen,
        move |it: W| {
            drafts.set(name, it.word_code());
        },
    )
}
