//! From what happened to how it is stored.

use crate::exchange::paper;
use crate::exchange::wire::what::{
    AlsoCard, CheckText, ItemText, LeverText, Reply, What, WrenchUse,
};
use crate::exchange::wire::{card, decided, flow, found, kit, money, proved, runout, thickness};
use crate::job::entry::{self, Caption, Captioned, Moved, Quantity};
use crate::trade::wheel_end::Item;

/// The stored body; `None` for an unknown kind, which is stored as it came.
///
/// One long match on purpose: a new kind must not compile until it is written here.
pub(super) fn what(what: &entry::What) -> Option<What> {
    Some(match what {
        entry::What::Opened(opened) => What::Opened {
            start: opened.start.code().to_owned(),
            practice: opened.practice.clone(),
        },
        entry::What::Person(field, text) => What::Person {
            field: field.code().to_owned(),
            text: text.clone(),
        },
        entry::What::Erased(sha256) => What::Erased {
            sha256: sha256.clone(),
        },
        entry::What::Said(text) => What::Said { text: text.clone() },
        entry::What::Vehicle(field, text) => What::Vehicle {
            field: field.code().to_owned(),
            text: text.clone(),
        },
        entry::What::Corners(corners) => What::Corners {
            corners: corners
                .iter()
                .map(|corner| corner.code().to_owned())
                .collect(),
        },
        entry::What::Card(spec) => What::Card(card::lower(spec)),
        entry::What::Missing(kit) => What::Missing {
            items: kit.iter().map(|item| item.code().to_owned()).collect(),
        },
        entry::What::Carried(carried) => kit::lower_carried(carried),
        entry::What::Answered(step, said) => What::Answered {
            step: step.code(),
            reply: reply(said),
        },
        entry::What::Moved(change) => moved(change),
        entry::What::Also(also) => What::Also {
            item: item(&also.item),
            name: also.name.clone(),
            card: also.card.as_ref().map(|(torque, document)| AlsoCard {
                torque: card::typed(torque),
                document: document.clone(),
            }),
        },
        entry::What::Lever(step, lever) => What::Lever {
            step: step.code(),
            lever: lever.as_ref().map(|lever| LeverText {
                wrench: card::typed(&lever.wrench),
                adapter: card::typed(&lever.adapter),
                angle: card::typed(&lever.angle),
            }),
        },
        entry::What::Angled(step, by) => What::Angled {
            step: step.code(),
            by: by.code().to_owned(),
        },
        entry::What::Mishap(mishap) => What::Mishap {
            step: mishap.step.code(),
            item: item(&mishap.item),
            kind: mishap.kind.code().to_owned(),
            part: mishap.part.clone(),
            minutes: mishap.minutes,
        },
        entry::What::Mended(mended) => What::Mended { item: item(mended) },
        entry::What::Pass(step) => What::Pass { step: step.code() },
        entry::What::DialSetup(setup) => What::DialSetup {
            corner: setup.corner.code().to_owned(),
            when: setup.set.when.code().to_owned(),
            set: setup.set.nth,
            way: card::lower_way(&setup.way),
        },
        entry::What::Reading(r) => What::Reading {
            corner: r.corner.code().to_owned(),
            when: r.set.when.code().to_owned(),
            set: r.set.nth,
            round: r.round,
            side: r.side.code().to_owned(),
            divisions: r.divisions.as_typed().to_owned(),
            turns: r.turns,
            dial: card::lower_dial(&r.dial),
        },
        entry::What::Decided(d) => What::Decided {
            corner: d.corner.code().to_owned(),
            nth: d.nth,
            decision: d.decision.code().to_owned(),
            again: d.again,
            reasons: d.reasons.clone(),
            rules: d.rules,
            inputs: Box::new(decided::lower(&d.inputs)),
        },
        entry::What::Proved(p) => What::Proved(Box::new(proved::lower(p))),
        entry::What::FaceFound(f) => What::FaceFound(Box::new(found::lower_face(f))),
        entry::What::RotorFound(f) => What::RotorFound(Box::new(found::lower_rotor(f))),
        entry::What::Price(p) => What::Price {
            repair: money::lower(&p.repair),
            refit: p.refit.as_ref().map(money::lower),
            estimate: p.estimate.as_ref().map(money::lower_estimate),
        },
        entry::What::Invoice(number) => What::Invoice {
            number: number.clone(),
        },
        entry::What::Paid(p) => What::Paid {
            how: p.how.code().to_owned(),
            amount: money::lower(&p.amount),
        },
        entry::What::Consent(c) => What::Consent {
            step: c.step.code(),
            scope: c.scope.code().to_owned(),
            yes: c.yes,
            how: c.how.code().to_owned(),
            amount: c.amount.as_ref().map(money::lower),
        },
        entry::What::Signed(s) => What::Signed {
            step: s.step.code(),
            strokes: s.strokes.clone(),
        },
        entry::What::Photo(p) => What::Photo {
            step: p.step.code(),
            sha256: p.sha256.clone(),
            mime: p.mime.clone(),
            width: p.width,
            height: p.height,
        },
        entry::What::Note(step, text) => What::Note {
            step: step.map(|step| step.code()),
            text: text.clone(),
        },
        entry::What::Part(p) => What::Part {
            corner: p.corner.code().to_owned(),
            number: p.number.clone(),
            lot: p.lot.clone(),
        },
        entry::What::Due(d) => What::Due {
            kind: d.kind.code().to_owned(),
            date: d.date.clone(),
            distance: d.distance.as_ref().map(card::typed),
        },
        entry::What::HandedOver(h) => What::HandedOver {
            digest: h.digest.clone(),
        },
        entry::What::Ended(e) => What::Ended {
            ending: e.ending.code().to_owned(),
            charge: e.charge.map(|charge| charge.code().to_owned()),
        },
        entry::What::Strike(hits) => What::Strike {
            hits: hits.iter().map(|id| id.0.clone()).collect(),
        },
        entry::What::Runout(reading) => What::Runout(runout::lower(reading)),
        entry::What::RunoutLimit(card) => What::RunoutLimit(runout::lower_card(card)),
        entry::What::Damage(corner, seen) => What::Damage {
            corner: corner.code().to_owned(),
            seen: seen.code().to_owned(),
        },
        entry::What::CameBackFor(cause) => What::CameBackFor {
            cause: cause.code().to_owned(),
        },
        entry::What::Stock(stock) => What::Stock {
            number: stock.number.clone(),
            have: stock.have,
            least: stock.least,
            cores: stock.cores,
        },
        entry::What::Thickness(reading) => What::Thickness(thickness::lower(reading)),
        entry::What::ThicknessLimit(card) => What::ThicknessLimit(thickness::lower_card(card)),
        entry::What::TipAngle(corner, set, angle) => What::TipAngle {
            corner: corner.code().to_owned(),
            when: set.when.code().to_owned(),
            set: set.nth,
            angle: card::typed(angle),
        },
        entry::What::Crept(corner, set, divisions) => What::Crept {
            corner: corner.code().to_owned(),
            when: set.when.code().to_owned(),
            set: set.nth,
            divisions: divisions.as_typed().to_owned(),
        },
        entry::What::TipRadius(place, radius) => What::TipRadius {
            place: place.code().to_owned(),
            radius: card::typed(radius),
        },
        entry::What::Voice(voice) => What::Voice {
            step: voice.step.code(),
            sha256: voice.sha256.clone(),
            mime: voice.mime.clone(),
            seconds: voice.seconds,
        },
        entry::What::Captioned(said) => captioned(said),
        entry::What::FromPaper(slip) => What::FromPaper {
            version: paper::VERSION,
            lines: paper::lines(slip),
        },
        entry::What::Slot(slot) => What::Slot(flow::lower_slot(slot)),
        entry::What::Shop(shop) => What::Shop(flow::lower_shop(shop)),
        entry::What::Receipt(receipt) => What::Receipt {
            held: flow::lower_receipt(receipt),
        },
        entry::What::LetGo(sha256) => What::LetGo {
            sha256: sha256.clone(),
        },
        entry::What::Unknown(_) => return None,
    })
}

fn captioned(said: &Captioned) -> What {
    let (word, text) = match &said.caption {
        Caption::Step => (None, None),
        Caption::Word(word) => (Some(word.code().to_owned()), None),
        Caption::Words(text) => (None, Some(text.clone())),
    };
    What::Captioned {
        sha256: said.sha256.clone(),
        word,
        text,
    }
}

fn moved(change: &Moved) -> What {
    What::Moved {
        step: change.step.code(),
        items: change.items.iter().map(item).collect(),
        to: change.to.code().to_owned(),
        wrench: change.wrench.as_ref().map(|(name, set)| WrenchUse {
            name: name.clone(),
            set: card::typed(set),
        }),
    }
}

fn item(item: &Item) -> ItemText {
    ItemText {
        corner: item.corner.code().to_owned(),
        group: item.group.code().to_owned(),
        number: item.number,
    }
}

fn reply(reply: &entry::Reply) -> Reply {
    match reply {
        entry::Reply::Done => Reply::Done {},
        entry::Reply::NotDone(because) => Reply::NotDone {
            because: because.code().to_owned(),
        },
        entry::Reply::Said(answer) => Reply::Said {
            answer: answer.code().to_owned(),
        },
        entry::Reply::Felt(felt) => Reply::Felt {
            felt: felt.code().to_owned(),
        },
        entry::Reply::Picked(pick) => Reply::Picked {
            pick: pick.code().to_owned(),
        },
        entry::Reply::Number(Quantity::Distance(d)) => Reply::Number {
            value: card::typed(d),
        },
        entry::Reply::Number(Quantity::Temperature(t)) => Reply::Number {
            value: card::typed(t),
        },
        entry::Reply::FoundLoose(count) => Reply::FoundLoose { count: *count },
        entry::Reply::Checked(checks) => Reply::Checked {
            checks: checks
                .iter()
                .map(|(check, answer)| CheckText {
                    check: check.code().to_owned(),
                    answer: answer.code().to_owned(),
                })
                .collect(),
        },
    }
}
