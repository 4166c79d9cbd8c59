//! The vehicle: its number, its family, and what picks and words its steps.

use crate::ui::react::spawn_local;

use crate::job::entry::{Event, PersonField, Reply, VehicleField};
use crate::job::facts::Facts;
use crate::text::{self, Desk, Lang, Say};
use crate::trade::vehicle::{Fixing, ParkingBrake, Power, Vin};
use crate::trade::wheel_end::Start;
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::{Field, focus};
use crate::ui::parts::frame::frame;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::picks::{picks, toggle};
use crate::ui::parts::scan::scan;
use crate::ui::parts::visits::visits;
use crate::ui::screens::pack::keep;
use crate::ui::screens::pack::wheel_end::WheelEndFields;
use crate::ui::view::prelude::*;

const FAMILIES: &str = "families";
/// How many known families stand as keys; the rest is found by typing.
const OFFERED: usize = 4;

/// The fields of the form.
#[derive(Clone, Copy)]
struct Form {
    drafts: Drafts,
    vin: RwSignal<String>,
    plate: RwSignal<String>,
    mass: RwSignal<String>,
    family: RwSignal<String>,
    studs: RwSignal<u8>,
    hub_bolts: RwSignal<u8>,
    fixing: RwSignal<Fixing>,
    power: RwSignal<Power>,
    parking_brake: RwSignal<ParkingBrake>,
    wheel_end: WheelEndFields,
}

impl Form {
    fn new(at: &StepContext) -> Self {
        let facts = Facts::of(at.sheet());
        let drafts = Drafts::of(at);
        Self {
            drafts,
            vin: drafts.text("vin", facts.vin.as_str()),
            plate: drafts.text("plate", facts.plate.as_str()),
            mass: drafts.text("mass", facts.mass.as_str()),
            family: drafts.text("family", facts.family.as_str()),
            studs: drafts.count("studs", facts.studs),
            hub_bolts: drafts.count("hub_bolts", facts.hub_bolts),
            fixing: drafts.word("fixing", facts.fixing),
            power: drafts.word("power", facts.power),
            parking_brake: drafts.word("parking_brake", facts.parking_brake),
            wheel_end: WheelEndFields::new(drafts, &facts),
        }
    }

    fn facts(self) -> Facts {
        let end = self.wheel_end;
        Facts {
            kind: end.kind.get_untracked(),
            brake: end.brake.get_untracked(),
            sensor: end.sensor.get_untracked(),
            encoder: end.encoder.get_untracked(),
            lock: end.lock.get_untracked(),
            pressing: end.pressing.get_untracked(),
            vin: self.vin.get_untracked(),
            plate: self.plate.get_untracked(),
            mass: self.mass.get_untracked(),
            family: self.family.get_untracked(),
            studs: self.studs.get_untracked(),
            hub_bolts: self.hub_bolts.get_untracked(),
            fixing: self.fixing.get_untracked(),
            power: self.power.get_untracked(),
            parking_brake: self.parking_brake.get_untracked(),
        }
    }
}

/// The form; one key keeps it as it stands.
pub fn vehicle(at: &StepContext) -> Node {
    let form = Form::new(at);
    let here = at.clone();
    let keep_it = move || write(&here, form);
    let families = known_families(at);
    if form.family.with_untracked(String::is_empty) {
        focus("family");
    }
    frame(
        at,
        view! {
            {fields(at, form, families, keep_it.clone())} {choices(at, form)}
        },
        key(Look::Primary, at.text().primary, keep_it),
    )
}

fn write(at: &StepContext, form: Form) {
    let mut whats = form.facts().whats(at.sheet());
    whats.push(Event::Answered(at.planned.key, Reply::Done));
    let (here, drafts) = (at.clone(), form.drafts);
    // At the car nobody asks for the kit, and a reading needs its dial.
    let at_car = at.open.plan.start == Start::AtCar && at.sheet().carried().is_none();
    if !at_car {
        keep(at, drafts, whats, || {});
        return;
    }
    spawn_local(async move {
        whats.push(Event::Carried(here.app.kit_for_job().await));
        keep(&here, drafts, whats, || {});
    });
}

fn known_families(at: &StepContext) -> RwSignal<Vec<String>> {
    let (app, known) = (at.app, RwSignal::new(Vec::new()));
    spawn_local(async move {
        let families = app.families().await;
        let _ = known.try_set(families);
    });
    known
}

fn fields(
    at: &StepContext,
    form: Form,
    families: RwSignal<Vec<String>>,
    keep: impl Fn() + Clone + 'static,
) -> Node {
    let lang = at.lang;
    let label = |field| text::vehicle_field(lang, field);
    let (drafts, family) = (form.drafts, form.family);
    let family_keys = move || {
        let keys = families.get().into_iter().take(OFFERED).map(|known| {
            let (chosen, label) = (known.clone(), known.clone());
            toggle(
                label,
                move || family.with(|family| *family == chosen),
                move || {
                    drafts.set("family", &known);
                    family.set(known.clone());
                },
            )
        });
        keys.collect_view()
    };
    let scanned = move |vin: String| {
        drafts.set("vin", &vin);
        form.vin.try_set(vin);
    };
    let any = move || families.with(|families| !families.is_empty());
    let words = move || {
        let words = families.get().into_iter();
        words
            .map(|family| view! { <option value=family></option> })
            .collect_view()
    };
    view! {
        {Field::words("family", family).show(label(VehicleField::Family), FAMILIES, drafts, keep.clone())}
        <p class="hint">{text::desk(lang, Desk::FamilyHint)}</p>
        <datalist id=FAMILIES>{words}</datalist>
        <div class="picks" hidden={move || !any()}>
            <p class="picks__legend">{text::desk(lang, Desk::Families)}</p>
            <div class="picks__keys picks__keys--long">{family_keys}</div>
        </div>
        {Field::capitals("vin", form.vin).show(label(VehicleField::Vin), "", drafts, keep.clone())}
        {scan(lang, scanned)}
        <p class="hint" aria-live="polite">{move || form.vin.with(|vin| vin_says(lang, vin))}</p>
        {Field::capitals("plate", form.plate)
            .show(text::person_field(lang, PersonField::Plate), "", drafts, keep.clone())}
        {visits(at.app, at.open.log.0.clone(), move || form.vin.get(), move || form.plate.get())}
        {Field::words("mass", form.mass).show(label(VehicleField::Mass), "", drafts, keep)}
    }
}

/// What is to be said about a typed number; it warns and never blocks.
fn vin_says(lang: Lang, typed: &str) -> String {
    if typed.trim().is_empty() {
        return text::say(lang, Say::VinShort).to_owned();
    }
    match Vin::parse(typed) {
        Ok(vin) => text::vin_check(lang, vin.check()),
        Err(error) => text::vin_error(lang, error),
    }
}

fn choices(at: &StepContext, form: Form) -> Node {
    let (lang, drafts) = (at.lang, form.drafts);
    let label = move |field| text::vehicle_field(lang, field);
    let fixings = Fixing::ALL.iter().map(|it| (*it, text::fixing(lang, *it)));
    let powers = Power::ALL.iter().map(|it| (*it, text::power(lang, *it)));
    let brakes = ParkingBrake::ALL
        .iter()
        .map(|it| (*it, text::parking_brake(lang, *it)));
    let power_caution = move || {
        (form.power.get() != Power::Combustion).then(|| caution(lang, Say::ElectricCaution))
    };
    let brake_caution = move || {
        (form.parking_brake.get() == ParkingBrake::Electric).then(|| caution(lang, Say::EpbCaution))
    };
    let bolted = move || {
        form.wheel_end.is_bolted().then(|| {
            picks(
                label(VehicleField::HubBolts),
                counts(&Facts::HUB_BOLTS),
                form.hub_bolts,
                move |count| drafts.set("hub_bolts", &count.to_string()),
            )
        })
    };
    view! {
        {form.wheel_end.body(lang, drafts)}
        {studs(lang, form)}
        {bolted}
        {picks(label(VehicleField::Fixing), owned(fixings), form.fixing, move |it| {
            drafts.set("fixing", it.code());
        })}
        {picks(label(VehicleField::Power), owned(powers), form.power, move |it| {
            drafts.set("power", it.code());
        })}
        {power_caution}
        {picks(label(VehicleField::ParkingBrake), owned(brakes), form.parking_brake, move |it| {
            drafts.set("parking_brake", it.code());
        })}
        {brake_caution}
    }
}

fn studs(lang: Lang, form: Form) -> Node {
    let (studs, drafts) = (form.studs, form.drafts);
    let more = RwSignal::new(Facts::OTHER_STUDS.contains(&studs.get_untracked()));
    let shown = move || {
        let mut shown = counts(&Facts::STUDS);
        if more.get() {
            shown.extend(counts(&Facts::OTHER_STUDS));
        }
        let legend = text::vehicle_field(lang, VehicleField::Studs);
        picks(legend, shown, studs, move |count| {
            drafts.set("studs", &count.to_string());
        })
    };
    let other = move || {
        (!more.get()).then(|| {
            key(Look::Foot, text::desk(lang, Desk::OtherCount), move || {
                more.set(true)
            })
        })
    };
    view! { <div class="picks__with-other">{shown} {other}</div> }
}

fn counts(counts: &[u8]) -> Vec<(u8, String)> {
    counts
        .iter()
        .map(|count| (*count, count.to_string()))
        .collect()
}

fn owned<T>(words: impl Iterator<Item = (T, &'static str)>) -> Vec<(T, String)> {
    words.map(|(it, word)| (it, word.to_owned())).collect()
}

fn caution(lang: Lang, say: Say) -> Node {
    view! { <p class="step__caution">{text::say(lang, say)}</p> }
}
