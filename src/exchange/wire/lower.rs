//! From what happened to how it is stored.

use crate::exchange::paper;
use crate::exchange::wire::what::{
    AlsoCard, CheckText, Event, ItemText, LeverText, Reply, WrenchUse,
};
use crate::exchange::wire::{card, decided, flow, found, kit, money, proved, runout, thickness};
use crate::job::entry::{self, Caption, Captioned, Moved, Quantity};
use crate::trade::wheel_end::Item;

/// The stored body; `None` for an unknown kind, which is stored as it came.
///
/// One long match on purpose: a new kind must not compile until it is written here.
pub(super) fn what(what: &entry::Event) -> Option<Event> {
    Some(match what {
        entry::Event::Opened(opened) => Event::Opened {
            start: opened.start.code().to_owned(),
            practice: opened.practice.clone(),
        },
        entry::Event::Person(field, text) => Event::Person {
            field: field.code().to_owned(),
            text: text.clone(),
        },
        entry::Event::Erased(sha256) => Event::Erased {
            sha256: sha256.clone(),
        },
        entry::Event::Said(text) => Event::Said { text: text.clone() },
        entry::Event::Vehicle(field, text) => Event::Vehicle {
            field: field.code().to_owned(),
            text: text.clone(),
        },
        entry::Event::Corners(corners) => Event::Corners {
            corners: corners
                .iter()
                .map(|corner| corner.code().to_owned())
                .collect(),
        },
        entry::Event::Card(spec) => Event::Card(card::lower(spec)),
        entry::Event::Missing(kit) => Event::Missing {
            items: kit.iter().map(|item| item.code().to_owned()).collect(),
        },
        entry::Event::Carried(carried) => kit::lower_carried(carried),
        entry::Event::Answered(step, said) => Event::Answered {
            step: step.code(),
            reply: reply(said),
        },
        entry::Event::Moved(change) => moved(change),
        entry::Event::Also(also) => Event::Also {
            item: item(&also.item),
            name: also.name.clone(),
            card: also.card.as_ref().map(|(torque, document)| AlsoCard {
                torque: card::typed(torque),
                document: document.clone(),
            }),
        },
        entry::Event::Lever(step, lever) => Event::Lever {
            step: step.code(),
            lever: lever.as_ref().map(|lever| LeverText {
                wrench: card::typed(&lever.wrench),
                adapter: card::typed(&lever.adapter),
                angle: card::typed(&lever.angle),
            }),
        },
        entry::Event::Angled(step, by) => Event::Angled {
            step: step.code(),
            by: by.code().to_owned(),
        },
        entry::Event::Mishap(mishap) => Event::Mishap {
            step: mishap.step.code(),
            item: item(&mishap.item),
            kind: mishap.kind.code().to_owned(),
            part: mishap.part.clone(),
            minutes: mishap.minutes,
        },
        entry::Event::Mended(mended) => Event::Mended { item: item(mended) },
        entry::Event::Pass(step) => Event::Pass { step: step.code() },
        entry::Event::DialSetup(setup) => Event::DialSetup {
            corner: setup.corner.code().to_owned(),
            when: setup.set.when.code().to_owned(),
            set: setup.set.nth,
            way: card::lower_way(&setup.way),
        },
        entry::Event::Reading(r) => Event::Reading {
            corner: r.corner.code().to_owned(),
            when: r.set.when.code().to_owned(),
            set: r.set.nth,
            round: r.round,
            side: r.side.code().to_owned(),
            divisions: r.divisions.as_typed().to_owned(),
            turns: r.turns,
            dial: card::lower_dial(&r.dial),
        },
        entry::Event::Decided(d) => Event::Decided {
            corner: d.corner.code().to_owned(),
            nth: d.nth,
            decision: d.decision.code().to_owned(),
            again: d.again,
            reasons: d.reasons.clone(),
            rules: d.rules,
            inputs: Box::new(decided::lower(&d.inputs)),
        },
        entry::Event::Proved(p) => Event::Proved(Box::new(proved::lower(p))),
        entry::Event::FaceFound(f) => Event::FaceFound(Box::new(found::lower_face(f))),
        entry::Event::RotorFound(f) => Event::RotorFound(Box::new(found::lower_rotor(f))),
        entry::Event::Price(p) => Event::Price {
            repair: money::lower(&p.repair),
            refit: p.refit.as_ref().map(money::lower),
            estimate: p.estimate.as_ref().map(money::lower_estimate),
        },
        entry::Event::Invoice(number) => Event::Invoice {
            number: number.clone(),
        },
        entry::Event::Paid(p) => Event::Paid {
            how: p.how.code().to_owned(),
            amount: money::lower(&p.amount),
        },
        entry::Event::Consent(c) => Event::Consent {
            step: c.step.code(),
            scope: c.scope.code().to_owned(),
            yes: c.yes,
            how: c.how.code().to_owned(),
            amount: c.amount.as_ref().map(money::lower),
        },
        entry::Event::Signed(s) => Event::Signed {
            step: s.step.code(),
            strokes: s.strokes.clone(),
        },
        entry::Event::Photo(p) => Event::Photo {
            step: p.step.code(),
            sha256: p.sha256.clone(),
            mime: p.mime.clone(),
            width: p.width,
            height: p.height,
        },
        entry::Event::Note(step, text) => Event::Note {
            step: step.map(|step| step.code()),
            text: text.clone(),
        },
        entry::Event::Part(p) => Event::Part {
            corner: p.corner.code().to_owned(),
            number: p.number.clone(),
            lot: p.lot.clone(),
        },
        entry::Event::Due(d) => Event::Due {
            kind: d.kind.code().to_owned(),
            date: d.date.clone(),
            distance: d.distance.as_ref().map(card::typed),
        },
        entry::Event::HandedOver(h) => Event::HandedOver {
            digest: h.digest.clone(),
        },
        entry::Event::Ended(e) => Event::Ended {
            ending: e.ending.code().to_owned(),
            charge: e.charge.map(|charge| charge.code().to_owned()),
        },
        entry::Event::Strike(hits) => Event::Strike {
            hits: hits.iter().map(|id| id.0.clone()).collect(),
        },
        entry::Event::Runout(reading) => Event::Runout(runout::lower(reading)),
        entry::Event::RunoutLimit(card) => Event::RunoutLimit(runout::lower_card(card)),
        entry::Event::Damage(corner, seen) => Event::Damage {
            corner: corner.code().to_owned(),
            seen: seen.code().to_owned(),
        },
        entry::Event::CameBackFor(cause) => Event::CameBackFor {
            cause: cause.code().to_owned(),
        },
        entry::Event::Stock(stock) => Event::Stock {
            number: stock.number.clone(),
            have: stock.have,
            least: stock.least,
            cores: stock.cores,
        },
        entry::Event::Thickness(reading) => Event::Thickness(thickness::lower(reading)),
        entry::Event::ThicknessLimit(card) => Event::ThicknessLimit(thickness::lower_card(card)),
        entry::Event::TipAngle(corner, set, angle) => Event::TipAngle {
            corner: corner.code().to_owned(),
            when: set.when.code().to_owned(),
            set: set.nth,
            angle: card::typed(angle),
        },
        entry::Event::Crept(corner, set, divisions) => Event::Crept {
            corner: corner.code().to_owned(),
            when: set.when.code().to_owned(),
            set: set.nth,
            divisions: divisions.as_typed().to_owned(),
        },
        entry::Event::TipRadius(place, radius) => Event::TipRadius {
            place: place.code().to_owned(),
            radius: card::typed(radius),
        },
        entry::Event::Voice(voice) => Event::Voice {
            step: voice.step.code(),
            sha256: voice.sha256.clone(),
            mime: voice.mime.clone(),
            seconds: voice.seconds,
        },
        entry::Event::Captioned(said) => captioned(said),
        entry::Event::FromPaper(slip) => Event::FromPaper {
            version: paper::VERSION,
            lines: paper::lines(slip),
        },
        entry::Event::Slot(slot) => Event::Slot(flow::lower_slot(slot)),
        entry::Event::Shop(shop) => Event::Shop(flow::lower_shop(shop)),
        entry::Event::Confirmation(confirmation) => Event::Confirmation {
            held: flow::lower_confirmation(confirmation),
        },
        entry::Event::LetGo(sha256) => Event::LetGo {
            sha256: sha256.clone(),
        },
        entry::Event::Unknown(_) => return None,
    })
}

fn captioned(said: &Captioned) -> Event {
    let (word, text) = match &said.caption {
        Caption::Step => (None, None),
        Caption::Word(word) => (Some(word.code().to_owned()), None),
        Caption::Words(text) => (None, Some(text.clone())),
    };
    Event::Captioned {
        sha256: said.sha256.clone(),
        word,
        text,
    }
}

fn moved(change: &Moved) -> Event {
    Event::Moved {
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
