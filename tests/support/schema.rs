//! The published schema: it knows the program's words, accepts what the program writes and refuses
//! what it does not.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::LazyLock;

use hubslate::exchange::{LogKind, export};
use hubslate::job::angled::AngleBy;
use hubslate::job::caption::CaptionWord;
use hubslate::job::entry::{
    Charge, DueKind, Ending, How, KitItem, LogId, PaidHow, PersonField, Remark, Scope, Side,
    VehicleField,
};
use hubslate::job::interruption::Interruption;
use hubslate::job::reason;
use hubslate::job::runout::Basis;
use hubslate::trade::answer::Answer;
use hubslate::trade::damage::{CameBackFor, Finding, Inspected};
use hubslate::trade::diagnosis::{Clue, Complaint};
use hubslate::trade::fastening::{
    Condition, MishapKind, Pattern, Position, PropertyClass, SpecItem,
};
use hubslate::trade::money::{BilledFor, LineKind, TaxRounding};
use hubslate::trade::play::uncertainty::Guarded;
use hubslate::trade::play::{
    Against, BrakeHeld, Decision, DialKind, Felt, Ground, Heat, LimitSource, Method, Place,
    ReadingFlag, Rig, Road, Source, StopSign, Test,
};
use hubslate::trade::runout::{Bound, Form, LeftOut, Micrometer, Next, RotorNext, Surface};
use hubslate::trade::vehicle::{Axle, Corner};
use hubslate::trade::wheel_end::{
    Check, Choice, ItemKind, ItemState, Kind, NotDoneReason, Start, Step, When,
};
use hubslate::units::{AngleUnit, DistanceUnit, LengthUnit, MassUnit, TemperatureUnit, TorqueUnit};
use hubslate::word::Word;
use jsonschema::{Validator, draft202012};
use serde_json::{Value, json};

use crate::each;
use crate::random_jobs::RandomJob;

fn read(path: &str) -> Value {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(path);
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

fn schema() -> Value {
    read("public/schema/job-1.schema.json")
}

/// Made once: making it takes longer than any file.
fn validator() -> &'static Validator {
    static VALIDATOR: LazyLock<Validator> = LazyLock::new(|| draft202012::new(&schema()).unwrap());
    &VALIDATOR
}

fn codes<W: Word + 'static>(all: &[W]) -> Vec<String> {
    all.iter().map(|word| word.word_code().to_owned()).collect()
}

/// The results that a mean can have; `tests/verdict.rs` meets each.
const RESULTS: [&str; 9] = [
    "proven_in",
    "in_not_proven",
    "out_not_proven",
    "proven_out",
    "tight_not_proven",
    "tight_proven",
    "no_movement_seen",
    "movement_seen",
    "no_comparison",
];

/// The outcomes that a proof can have; `trade/play/after.rs` meets each.
const OUTCOMES: [&str; 3] = ["pass", "blocked", "not_judged"];

/// Why places do not tell what goes round; `exchange/wire/found.rs` meets each.
const WHY_OPEN: [&str; 3] = ["rank", "bunched", "no_spare"];

/// How ways differ, and every mark.
fn why_not() -> Vec<String> {
    let ways = ["method", "place", "rig", "force"].map(str::to_owned);
    ways.into_iter().chain(codes(ReadingFlag::ALL)).collect()
}

/// Every closed set of words that a file of version 1 can hold.
fn words() -> BTreeMap<&'static str, Vec<String>> {
    BTreeMap::from([
        ("against", codes(Against::ALL)),
        ("answer", codes(Answer::ALL)),
        ("axle", codes(Axle::ALL)),
        ("brake_held", codes(BrakeHeld::ALL)),
        ("basis", codes(Basis::ALL)),
        ("because", codes(NotDoneReason::ALL)),
        ("bound", codes(Bound::ALL)),
        ("caption_word", codes(CaptionWord::ALL)),
        ("spec_item", codes(SpecItem::ALL)),
        ("charge", codes(Charge::ALL)),
        ("check", codes(Check::ALL)),
        ("condition", codes(Condition::ALL)),
        ("corner", codes(Corner::ALL)),
        ("came_back_for", codes(CameBackFor::ALL)),
        ("complaint", codes(Complaint::ALL)),
        ("clue", codes(Clue::ALL)),
        ("finding", codes(Finding::ALL)),
        ("inspected", codes(Inspected::ALL)),
        ("remark", codes(Remark::ALL)),
        ("decision", codes(Decision::ALL)),
        ("dial_kind", codes(DialKind::ALL)),
        ("due_kind", codes(DueKind::ALL)),
        ("ending", codes(Ending::ALL)),
        ("felt_grade", codes(Felt::ALL)),
        ("form", codes(Form::ALL)),
        ("ground", codes(Ground::ALL)),
        ("group", codes(ItemKind::ALL)),
        ("guarded", codes(Guarded::ALL)),
        ("heat", codes(Heat::ALL)),
        ("hold", codes(ItemState::ALL)),
        ("how", codes(How::ALL)),
        ("kit_item", codes(KitItem::ALL)),
        ("left_out", codes(LeftOut::ALL)),
        ("limit_source", codes(LimitSource::ALL)),
        ("billed_for", codes(BilledFor::ALL)),
        ("line_kind", codes(LineKind::ALL)),
        ("kind", codes(Kind::ALL)),
        ("log_kind", codes(LogKind::ALL)),
        ("method", codes(Method::ALL)),
        ("next_at_face", codes(Next::ALL)),
        ("next_of_rotor", codes(RotorNext::ALL)),
        ("outcome", OUTCOMES.map(str::to_owned).to_vec()),
        ("paid_how", codes(PaidHow::ALL)),
        ("angle_by", codes(AngleBy::ALL)),
        ("micrometer", codes(Micrometer::ALL)),
        ("interruption", codes(Interruption::ALL)),
        ("mishap_kind", codes(MishapKind::ALL)),
        ("pattern", codes(Pattern::ALL)),
        ("person_field", codes(PersonField::ALL)),
        ("pick", codes(Choice::ALL)),
        ("place", codes(Place::ALL)),
        ("position", codes(Position::ALL)),
        ("property_class", codes(PropertyClass::ALL)),
        ("reason", reason::codes()),
        ("result", RESULTS.map(str::to_owned).to_vec()),
        ("rig", codes(Rig::ALL)),
        ("road", codes(Road::ALL)),
        ("scope", codes(Scope::ALL)),
        ("side", codes(Side::ALL)),
        ("start", codes(Start::ALL)),
        ("stop_sign", codes(StopSign::ALL)),
        ("surface", codes(Surface::ALL)),
        ("tax_rounding", codes(TaxRounding::ALL)),
        ("test", codes(Test::ALL)),
        ("uncertainty_source", codes(Source::ALL)),
        ("unit_angle", codes(AngleUnit::ALL)),
        ("unit_distance", codes(DistanceUnit::ALL)),
        ("unit_length", codes(LengthUnit::ALL)),
        ("unit_mass", codes(MassUnit::ALL)),
        ("unit_temperature", codes(TemperatureUnit::ALL)),
        ("unit_torque", codes(TorqueUnit::ALL)),
        ("vehicle_field", codes(VehicleField::ALL)),
        ("when", codes(When::ALL)),
        ("why_not", why_not()),
        ("why_open", WHY_OPEN.map(str::to_owned).to_vec()),
    ])
}

#[test]
fn the_words_of_the_schema_are_those_of_the_program() {
    let schema = schema();
    let enums = schema["$defs"].as_object().unwrap().iter();
    let there: BTreeMap<&str, Vec<String>> = enums
        .filter_map(|(name, def)| {
            let words = def.get("enum")?.as_array()?.iter();
            Some((
                name.as_str(),
                words.map(|w| w.as_str().unwrap().to_owned()).collect(),
            ))
        })
        .collect();
    assert_eq!(there, words());
    let steps = codes(Step::ALL).join("|");
    let corners = codes(Corner::ALL).join("|");
    let step = format!(r"^(?:{steps})(?:@(?:{corners}))?(?:\.(?:[2-9]|[1-9][0-9]{{1,2}}))?$");
    assert_eq!(schema["$defs"]["step"]["pattern"], json!(step));
}

#[test]
fn no_word_is_listed_twice_and_no_object_is_open() {
    fn look(path: &str, value: &Value) {
        match value {
            Value::Object(fields) => {
                if fields.contains_key("properties") {
                    assert_eq!(
                        value["additionalProperties"],
                        json!(false),
                        "{path} is open"
                    );
                }
                let is_named = path.matches('/').count() == 2;
                assert!(
                    !fields.contains_key("enum") || is_named,
                    "a list of words at {path}"
                );
                fields
                    .iter()
                    .for_each(|(key, inner)| look(&format!("{path}/{key}"), inner));
            }
            Value::Array(items) => items.iter().for_each(|inner| look(path, inner)),
            _ => {}
        }
    }
    look("", &schema());
}

#[track_caller]
fn fits(name: &str, file: &Value) {
    let faults: Vec<String> = validator()
        .iter_errors(file)
        .map(|fault| format!("{}: {fault}", fault.instance_path))
        .collect();
    assert_eq!(faults, Vec::<String>::new(), "{name}");
}

fn one_of_each() -> Value {
    let log = LogId(each::LOG.to_owned());
    let file = export(&[(LogKind::Job, log, each::texts())]).unwrap();
    serde_json::from_str(&file).unwrap()
}

#[test]
fn a_job_with_every_kind_and_every_sample_fits_the_schema() {
    let file = one_of_each();
    let mut kinds: Vec<String> = file["logs"][0]["entries"]
        .as_array()
        .unwrap()
        .iter()
        .flat_map(|entry| entry["what"].as_object().unwrap().keys().cloned())
        .collect();
    kinds.sort();
    kinds.dedup();
    let schema = schema();
    let known = schema["$defs"]["what"]["properties"].as_object().unwrap();
    assert_eq!(kinds, known.keys().cloned().collect::<Vec<_>>());
    fits("one of each", &file);
    for name in [
        "job-1",
        "job-1-flow",
        "job-1-found",
        "job-1-saved",
        "job-1-paper",
        "job-1-proved",
        "job-1-runout",
        "job-1-thickness",
        "job-1-money",
        "job-1-shop",
    ] {
        fits(name, &read(&format!("tests/fixtures/{name}.json")));
    }
    for name in ["replaced-hub", "declined-stop", "nothing-wrong"] {
        fits(name, &read(&format!("public/sample/{name}.json")));
    }
}

proptest::proptest! {
    #[test]
    fn anything_that_can_happen_fits_the_schema(what in crate::every::what()) {
        let made = crate::every::entry(each::LOG, crate::ID, &[crate::ID], what);
        let text = hubslate::exchange::wire::encode(&made).unwrap();
        let log = LogId(each::LOG.to_owned());
        let file = export(&[(LogKind::Job, log, vec![text])]).unwrap();
        fits("any", &serde_json::from_str(&file).unwrap());
    }
}

#[test]
fn jobs_by_chance_fit_the_schema_also_without_their_customer() {
    for seed in 0..60 {
        let text = RandomJob::of(seed).file();
        let records = hubslate::exchange::read(&text)
            .unwrap()
            .logs
            .remove(0)
            .records;
        let gone = hubslate::exchange::erase::erased(&records).unwrap();
        let log = LogId(records[0].log.clone());
        let texts = gone.into_iter().map(|record| record.text).collect();
        let erased = export(&[(LogKind::Job, log, texts)]).unwrap();
        for text in [text, erased] {
            fits("by chance", &serde_json::from_str(&text).unwrap());
        }
    }
}

/// The body of the first entry of a kind.
fn body<'a>(file: &'a mut Value, kind: &str) -> &'a mut Value {
    let entries = file["logs"][0]["entries"].as_array_mut().unwrap();
    let of_kind = entries
        .iter_mut()
        .find(|entry| entry["what"].get(kind).is_some());
    &mut of_kind.unwrap()["what"][kind]
}

fn drop_field(value: &mut Value, field: &str) {
    assert!(value.as_object_mut().unwrap().remove(field).is_some());
}

/// A way to break a file: its name, what is done, and the place and the rule that must object.
type Break = (&'static str, fn(&mut Value), &'static str, &'static str);

/// The entry of a kind, or the file itself, is broken in one place each.
const BREAKS: [Break; 40] = [
    (
        "another format",
        |f| f["format"] = json!("other"),
        "/format",
        "const",
    ),
    (
        "a newer version",
        |f| f["version"] = json!(2),
        "/version",
        "const",
    ),
    (
        "a version in words",
        |f| f["version"] = json!("1"),
        "/version",
        "const",
    ),
    (
        "no manufacturer",
        |f| drop_field(f, "made_by"),
        "",
        "required",
    ),
    (
        "logs that are no list",
        |f| f["logs"] = json!({}),
        "/logs",
        "type",
    ),
    (
        "an extra field of the file",
        |f| f["note"] = json!(""),
        "",
        "additionalProperties",
    ),
    (
        "a log of no kind",
        |f| f["logs"][0]["kind"] = json!("diary"),
        "/logs/0/kind",
        "enum",
    ),
    (
        "no digest",
        |f| drop_field(&mut f["logs"][0], "digest"),
        "/logs/0",
        "required",
    ),
    (
        "a digest in capitals",
        |f| f["logs"][0]["digest"] = json!("A".repeat(64)),
        "/logs/0/digest",
        "pattern",
    ),
    (
        "a short digest",
        |f| f["logs"][0]["canonical"] = json!("ab"),
        "/logs/0/canonical",
        "pattern",
    ),
    (
        "a job that is no UUID",
        |f| f["logs"][0]["id"] = json!("cards"),
        "/logs/0/id",
        "pattern",
    ),
    (
        "an id that is no UUID",
        |f| first(f)["id"] = json!("7"),
        "/id",
        "pattern",
    ),
    (
        "an entry without a time",
        |f| drop_field(first(f), "at"),
        "/entries/0",
        "required",
    ),
    (
        "a time that is text",
        |f| first(f)["at"]["utc_ms"] = json!("noon"),
        "/at/utc_ms",
        "type",
    ),
    (
        "a number below zero",
        |f| first(f)["n"] = json!(-1),
        "/n",
        "minimum",
    ),
    (
        "a head that is no UUID",
        |f| first(f)["after"] = json!(["x"]),
        "/after/0",
        "pattern",
    ),
    (
        "an extra field of an entry",
        |f| first(f)["mood"] = json!("good"),
        "/entries/0",
        "additionalProperties",
    ),
    (
        "no kind in an entry",
        |f| first(f)["what"] = json!({}),
        "/what",
        "minProperties",
    ),
    (
        "two kinds in one entry",
        |f| first(f)["what"]["said"] = json!({"text": ""}),
        "/what",
        "maxProperties",
    ),
    (
        "an extra field of a body",
        |f| body(f, "said")["loud"] = json!(true),
        "/said",
        "additionalProperties",
    ),
    (
        "a missing field",
        |f| drop_field(body(f, "reading"), "dial"),
        "/reading",
        "required",
    ),
    (
        "a wrong unit",
        |f| body(f, "moved")["wrench"]["set"]["unit"] = json!("mm"),
        "/unit",
        "enum",
    ),
    (
        "a number that is not typed text",
        |f| body(f, "reading")["divisions"] = json!(6.3),
        "/divisions",
        "type",
    ),
    (
        "an exponent",
        |f| body(f, "reading")["divisions"] = json!("6e3"),
        "/divisions",
        "pattern",
    ),
    (
        "a dial without a division",
        |f| body(f, "reading")["dial"]["graduation_mm"] = json!(0),
        "/graduation_mm",
        "exclusiveMinimum",
    ),
    (
        "an unknown step",
        |f| body(f, "pass")["step"] = json!("dance@front_left"),
        "/step",
        "pattern",
    ),
    (
        "an unknown reason",
        |f| body(f, "decided")["reasons"] = json!(["bad_mood"]),
        "/reasons/0",
        "enum",
    ),
    (
        "a decision in capitals",
        |f| body(f, "decided")["decision"] = json!("STOP"),
        "/decision",
        "enum",
    ),
    (
        "a proof without its rules",
        |f| drop_field(body(f, "proved"), "rules"),
        "/proved",
        "required",
    ),
    (
        "a proof that nearly passed",
        |f| body(f, "proved")["outcome"] = json!("nearly"),
        "/outcome",
        "enum",
    ),
    (
        "a run without its rules",
        |f| drop_field(body(f, "face_found"), "rules"),
        "/face_found",
        "required",
    ),
    (
        "a rotor that is rather thin",
        |f| body(f, "rotor_found")["least"]["result"] = json!("rather_thin"),
        "/result",
        "enum",
    ),
    (
        "a consent of maybe",
        |f| body(f, "consent")["yes"] = json!("maybe"),
        "/yes",
        "type",
    ),
    (
        "money in parts of a cent",
        |f| body(f, "consent")["amount"]["minor"] = json!(0.5),
        "/minor",
        "type",
    ),
    (
        "a date of another calendar",
        |f| body(f, "due")["date"] = json!("22.02.2026"),
        "/date",
        "pattern",
    ),
    (
        "a voice note that is too long",
        |f| body(f, "voice")["seconds"] = json!(61),
        "/seconds",
        "maximum",
    ),
    (
        "a caption of no known word",
        |f| body(f, "captioned")["word"] = json!("pretty"),
        "/word",
        "enum",
    ),
    (
        "a time of day that no clock shows",
        |f| body(f, "slot")["time"] = json!("24:00"),
        "/time",
        "pattern",
    ),
    (
        "a confirmation without its digest",
        |f| drop_field(&mut body(f, "confirmation")["held"][0], "digest"),
        "/held/0",
        "required",
    ),
    (
        "an ending without a word",
        |f| body(f, "ended")["ending"] = json!(""),
        "/ending",
        "enum",
    ),
];

fn first(file: &mut Value) -> &mut Value {
    &mut file["logs"][0]["entries"][0]
}

#[test]
fn a_broken_file_does_not_fit_the_schema_each_for_its_own_reason() {
    for (name, break_it, place, rule) in BREAKS {
        let mut file = one_of_each();
        break_it(&mut file);
        let objections: Vec<(String, String)> = validator()
            .iter_errors(&file)
            .map(|fault| {
                (
                    fault.instance_path.to_string(),
                    fault.schema_path.to_string(),
                )
            })
            .collect();
        let is_meant = |(at, by): &(String, String)| at.ends_with(place) && by.ends_with(rule);
        assert!(objections.iter().any(is_meant), "{name}: {objections:?}");
        assert!(
            objections.iter().all(|(at, _)| at.contains(place)),
            "{name}: {objections:?}"
        );
    }
}
