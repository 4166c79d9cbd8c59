//! The bodies of entries as they are stored: externally tagged, words as their stable codes.

use serde::{Deserialize, Serialize};

use crate::exchange::wire::card::{Card, Gauge, TypedText, WayText};
use crate::exchange::wire::decided::InputsText;
use crate::exchange::wire::found::{FaceText, RotorText};
use crate::exchange::wire::kit::WrenchText;
use crate::exchange::wire::money::{EstimateText, MoneyText};
use crate::exchange::wire::proved::ProvedText;
use crate::exchange::wire::{flow, runout, thickness};

/// The body of an entry.
#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(super) enum Event {
    Opened {
        start: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        practice: Option<String>,
    },
    Person {
        field: String,
        text: String,
    },
    Erased {
        sha256: String,
    },
    Said {
        text: String,
    },
    Vehicle {
        field: String,
        text: String,
    },
    Corners {
        corners: Vec<String>,
    },
    Card(Card),
    Missing {
        items: Vec<String>,
    },
    Carried {
        wrenches: Vec<WrenchText>,
        dial: Gauge,
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        dials: Vec<Gauge>,
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        stands: Vec<StandText>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        angle_gauge: Option<bool>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        share: Option<[u8; 2]>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        dial_due: Option<String>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        dial_error: Option<TypedText>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        angle_due: Option<String>,
    },
    Answered {
        step: String,
        reply: Reply,
    },
    Moved {
        step: String,
        items: Vec<ItemText>,
        to: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        wrench: Option<WrenchUse>,
    },
    Also {
        item: ItemText,
        name: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        card: Option<AlsoCard>,
    },
    Lever {
        step: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        lever: Option<LeverText>,
    },
    Mishap {
        step: String,
        item: ItemText,
        kind: String,
        part: String,
        minutes: u16,
    },
    Mended {
        item: ItemText,
    },
    Pass {
        step: String,
    },
    DialSetup {
        corner: String,
        when: String,
        set: u8,
        way: WayText,
    },
    Reading {
        corner: String,
        when: String,
        set: u8,
        round: u8,
        side: String,
        divisions: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        turns: Option<i32>,
        dial: Gauge,
    },
    Decided {
        corner: String,
        nth: u8,
        decision: String,
        again: bool,
        reasons: Vec<String>,
        rules: u32,
        inputs: Box<InputsText>,
    },
    Proved(Box<ProvedText>),
    FaceFound(Box<FaceText>),
    RotorFound(Box<RotorText>),
    Price {
        repair: MoneyText,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        refit: Option<MoneyText>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        estimate: Option<EstimateText>,
    },
    Invoice {
        number: String,
    },
    Paid {
        how: String,
        amount: MoneyText,
    },
    Consent {
        step: String,
        scope: String,
        yes: bool,
        how: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        amount: Option<MoneyText>,
    },
    Signed {
        step: String,
        strokes: String,
    },
    Photo {
        step: String,
        sha256: String,
        mime: String,
        width: u32,
        height: u32,
    },
    Note {
        #[serde(default, skip_serializing_if = "Option::is_none")]
        step: Option<String>,
        text: String,
    },
    Part {
        corner: String,
        number: String,
        lot: String,
    },
    Due {
        kind: String,
        date: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        distance: Option<TypedText>,
    },
    HandedOver {
        digest: String,
    },
    Ended {
        ending: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        charge: Option<String>,
    },
    Strike {
        hits: Vec<String>,
    },
    Runout(runout::ReadingText),
    RunoutLimit(runout::CardText),
    Damage {
        corner: String,
        seen: String,
    },
    CameBackFor {
        cause: String,
    },
    Stock {
        number: String,
        have: u16,
        least: u16,
        cores: u16,
    },
    Thickness(thickness::ReadingText),
    ThicknessLimit(thickness::CardText),
    TipAngle {
        corner: String,
        when: String,
        set: u8,
        angle: TypedText,
    },
    Crept {
        corner: String,
        when: String,
        set: u8,
        divisions: String,
    },
    TipRadius {
        place: String,
        radius: TypedText,
    },
    Voice {
        step: String,
        sha256: String,
        mime: String,
        seconds: u8,
    },
    Captioned {
        sha256: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        word: Option<String>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        text: Option<String>,
    },
    FromPaper {
        version: u32,
        lines: Vec<String>,
    },
    Slot(flow::SlotText),
    Shop(flow::ShopText),
    Confirmation {
        held: Vec<flow::HeldText>,
    },
    Angled {
        step: String,
        by: String,
    },
    LetGo {
        sha256: String,
    },
}

/// Every kind that this version writes, by its tag.
const KINDS: [&str; 51] = [
    "opened",
    "person",
    "erased",
    "said",
    "vehicle",
    "corners",
    "card",
    "missing",
    "carried",
    "answered",
    "moved",
    "also",
    "lever",
    "mishap",
    "mended",
    "pass",
    "reading",
    "decided",
    "proved",
    "face_found",
    "rotor_found",
    "price",
    "invoice",
    "paid",
    "consent",
    "signed",
    "photo",
    "note",
    "part",
    "due",
    "handed_over",
    "ended",
    "strike",
    "runout",
    "runout_limit",
    "damage",
    "came_back_for",
    "stock",
    "thickness",
    "thickness_limit",
    "tip_angle",
    "tip_radius",
    "crept",
    "voice",
    "captioned",
    "from_paper",
    "slot",
    "shop",
    "confirmation",
    "let_go",
    "angled",
];

/// The answer to a step.
#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(super) enum Reply {
    Done {},
    NotDone { because: String },
    Said { answer: String },
    Felt { felt: String },
    Picked { pick: String },
    Number { value: TypedText },
    FoundLoose { count: u8 },
    Checked { checks: Vec<CheckText> },
}

#[derive(Serialize, Deserialize)]
pub(super) struct CheckText {
    pub(super) check: String,
    pub(super) answer: String,
}

#[derive(Serialize, Deserialize)]
pub(super) struct ItemText {
    pub(super) corner: String,
    pub(super) group: String,
    pub(super) number: u8,
}

#[derive(Serialize, Deserialize)]
pub(super) struct WrenchUse {
    pub(super) name: String,
    pub(super) set: TypedText,
}

/// A stand: what one of them may carry.
#[derive(Serialize, Deserialize)]
pub(super) struct StandText {
    pub(super) name: String,
    pub(super) rating: TypedText,
}

/// The card of what was named by hand.
#[derive(Serialize, Deserialize)]
pub(super) struct AlsoCard {
    pub(super) torque: TypedText,
    pub(super) document: String,
}

/// A wrench with an adapter on it.
#[derive(Serialize, Deserialize)]
pub(super) struct LeverText {
    pub(super) wrench: TypedText,
    pub(super) adapter: TypedText,
    pub(super) angle: TypedText,
}

/// The tag of a body, or an empty text if it has none.
pub(super) fn kind_of(raw: &str) -> String {
    let value: Option<serde_json::Value> = serde_json::from_str(raw).ok();
    let object = value.as_ref().and_then(serde_json::Value::as_object);
    object
        .and_then(|fields| fields.keys().next())
        .cloned()
        .unwrap_or_default()
}

/// Whether this version writes bodies with this tag.
pub(super) fn is_known_kind(raw: &str) -> bool {
    KINDS.contains(&kind_of(raw).as_str())
}
