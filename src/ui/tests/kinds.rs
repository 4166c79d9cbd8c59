//! One job of each kind of wheel end: asked for at home, its specs typed, worked at the car from what
//! the answers composed, and ended with nothing loose.

use super::phone::Phone;
use super::walk::Otherwise;
use crate::ui::route::Route;

/// Invented: no figure of it is one of a real car.
const MESSAGE: &str = "Hi, this is Dana Quill, front left hums from 40 mph and gets louder when I \
    turn right. VIN 1ZZBD4RA6K1004417, plate KLM 4821, 12 Alder Lane, Fernbrook. Call 555-0142";

struct Kind {
    choose: &'static [&'static str],
    corner: &'static str,
    specs: Otherwise<'static>,
    before: &'static str,
    after: &'static str,
    come: &'static [&'static str],
    never: &'static [&'static str],
}

/// The document of the first spec; the later ones carry it over.
fn source(phone: &Phone) {
    if !phone.has_field("Document") {
        return;
    }
    phone.type_in("Document", "Marten service sheet 7");
    phone.type_in("Page or procedure", "41");
    phone.type_in("Looked up by", "R. Okafor");
}

fn value(phone: &Phone, value: &str, unit: &str) {
    phone.type_in("Value", value);
    if !phone.chosen(unit) {
        phone.tap(unit);
    }
}

fn torque(phone: &Phone, number: &str) {
    value(phone, number, "lb-ft");
    source(phone);
    phone.tap("Save the spec");
}

fn play(phone: &Phone) {
    value(phone, "2.0", "thou");
    source(phone);
    phone.tap("Save the spec");
}

fn axle_nut(phone: &Phone) {
    value(phone, "180", "lb-ft");
    phone.tap("In the air, brake held");
    source(phone);
    phone.tap("Save the spec");
}

/// Seated at 30 lb-ft while it turns, then back a sixteenth of a turn: US Army TM 9-2330-202-13&P.
fn setting(phone: &Phone) {
    value(phone, "30", "lb-ft");
    phone.tap("+ back");
    phone.type_in("then back by, degrees; empty: until it is loose", "22.5");
    source(phone);
    phone.tap("Save the spec");
}

/// The window of TMC RP 618: 0.001 to 0.005 in.
fn window(phone: &Phone) {
    phone.type_in("Least end play", "0.001");
    phone.type_in("Most end play", "0.005");
    if !phone.chosen("in") {
        phone.tap("in");
    }
    source(phone);
    phone.tap("Save the spec");
}

const BRACKET: (&str, &dyn Fn(&Phone)) = ("Spec: bracket bolts", &|it| torque(it, "80"));
const PINS: (&str, &dyn Fn(&Phone)) = ("Spec: guide pin bolts", &|it| torque(it, "22"));
const NUTS: (&str, &dyn Fn(&Phone)) = ("Spec: lug nuts", &|it| torque(it, "85"));
const LIMIT: (&str, &dyn Fn(&Phone)) = ("Spec: play limit", &play);

/// From the booking to the end, at what the answers composed.
fn whole(kind: &Kind) {
    let phone = Phone::of_van();
    phone.tap("New job");
    phone.tap("Start at home");
    phone.is_at("Prep: Booking message");
    phone.type_in("Paste the message here", MESSAGE);
    phone.tap("Save the message");
    for choice in kind.choose {
        phone.tap(choice);
    }
    let named = format!("Wheel end: {}", kind.choose[0]);
    assert!(phone.words().contains(&named), "{}", phone.words());
    phone.type_in("Vehicle and years", "2019 Marten, 1.6, front drive");
    phone.tap("Facts are right");
    phone.is_at("Prep: Corners");
    phone.tap(kind.corner);
    phone.tap("These corners");
    for (spec, type_in) in kind.specs {
        phone.is_at(&format!("Prep: {spec}"));
        type_in(&phone);
    }
    phone.is_at("Prep: Price");
    let amount = phone.field_that_begins("Full repair");
    phone.type_in(&amount, "480");
    let amount = phone.field_that_begins("Inspection and reassembly");
    phone.type_in(&amount, "95");
    phone.tap("Save the price");
    phone.tap("The rest is in the van");
    phone.tap("Ready to leave");

    let tight = |it: &Phone| it.tap("Tight, not touched");
    let before = |it: &Phone| it.round(kind.before);
    let after = |it: &Phone| it.round(kind.after);
    let otherwise: Otherwise<'_> = &[
        ("Spindle nut as found", &tight),
        ("Measure: Push, pull, read", &before),
        ("Verify: Push, pull, read", &after),
    ];
    phone.walk("Hand over: Report and file", otherwise);
    assert!(phone.open().sheet.loose().is_empty());
    phone.finish("Finished");
    let (_, report) = phone.report();
    assert!(report.contains("REPLACED, safe to drive"), "{report}");

    // What was asked is what the answers composed, and all of it was done.
    phone.go(&Route::Where(phone.log()));
    let steps = phone.each("where__step");
    for step in kind.never {
        assert!(
            !steps.iter().any(|it| it.starts_with(step)),
            "{step} in {steps:?}"
        );
    }
    for step in kind.come {
        let row = steps.iter().find(|it| it.starts_with(step));
        assert!(
            row.is_some_and(|it| it.contains("Done")),
            "{step}: {row:?} in {steps:?}"
        );
    }
}

#[test]
fn one_job_of_a_bolted_hub_that_is_not_driven_with_a_drum() {
    whole(&Kind {
        choose: &["Bolted hub, not driven", "Drum"],
        corner: "Rear left",
        specs: &[("Spec: hub bolts", &|it| torque(it, "55")), NUTS, LIMIT],
        before: "6",
        after: "0.5",
        come: &[
            "Release parking brake",
            "Back off the shoes",
            "Hub out",
            "Drum on",
            "Set parking brake",
        ],
        never: &["Axle nut", "Caliper up"],
    });
}

#[test]
fn one_job_of_a_hub_with_a_spindle_nut() {
    whole(&Kind {
        choose: &["Hub with spindle nut", "None"],
        corner: "Rear right",
        specs: &[
            ("Spec: spindle nut", &|it| torque(it, "150")),
            BRACKET,
            PINS,
            NUTS,
            LIMIT,
        ],
        before: "6",
        after: "0.5",
        come: &[
            "Cap off",
            "Spindle nut as found",
            "Spindle nut off",
            "Hub off the spindle",
            "Spindle nut",
            "Cap on",
        ],
        never: &["Free sensor wire", "Axle nut"],
    });
}

#[test]
fn one_job_of_tapered_rollers_on_a_spindle() {
    whole(&Kind {
        choose: &["Tapered rollers, set by nut", "Drum"],
        corner: "Rear left",
        specs: &[
            ("Spec: spindle nut", &setting),
            NUTS,
            ("Spec: end play", &window),
        ],
        before: "12",
        after: "3",
        come: &[
            "Nut lock as found",
            "Wash and look",
            "Pack the grease",
            "Seat and set the nut",
            "Slot for the cotter",
            "New cotter",
        ],
        never: &["Stake the nut", "Axle nut"],
    });
}

#[test]
fn one_job_of_a_pressed_in_bearing_on_a_car_with_lug_bolts() {
    whole(&Kind {
        choose: &["Pressed-in bearing, driven", "Bolts"],
        corner: "Front left",
        specs: &[
            ("Spec: axle nut", &axle_nut),
            ("Spec: strut bolts", &|it| torque(it, "120")),
            ("Spec: ball joint", &|it| torque(it, "60")),
            ("Spec: tie rod end", &|it| torque(it, "40")),
            BRACKET,
            PINS,
            ("Spec: lug bolts", &|it| torque(it, "85")),
            LIMIT,
        ],
        before: "6",
        after: "0.5",
        come: &[
            "Loosen lug bolts",
            "Knuckle off",
            "Hub out first",
            "Bearing out",
            "Knuckle bore",
            "Encoder to the sensor",
            "Press the bearing in",
            "Press the hub in",
            "Knuckle on",
            "Lug bolts",
            "Alignment",
        ],
        never: &["Loosen lug nuts", "Lug nuts"],
    });
}
