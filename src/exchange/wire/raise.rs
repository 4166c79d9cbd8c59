//! From how it is stored to what happened; `None` if a word is not known.

use crate::exchange::paper;
use crate::exchange::wire::what::{Event, ItemText, Reply, StandText};
use crate::exchange::wire::{card, decided, flow, found, kit, money, proved, runout, thickness};
use crate::job::angled::AngleBy;
use crate::job::caption::CaptionWord;
use crate::job::entry::{
    self, Caption, Captioned, Charge, Consent, Decided, DialSetup, Due, DueKind, Ended, Ending,
    EntryId, HandedOver, How, KitItem, Moved, Opened, Paid, PaidHow, Part, PersonField, Photo,
    Price, Quantity, Reading, Scope, Side, Signed, Stock, VehicleField, Voice,
};
use crate::job::kit::{MoreKit, Stand};
use crate::job::manual_item::Also;
use crate::job::mishap::Mishap;
use crate::trade::answer::Answer;
use crate::trade::damage::{CameBackFor, Damage};
use crate::trade::fastening::{MishapKind, TypedLever};
use crate::trade::play::{Decision, Felt, Place};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{
    Check, Choice, Item, ItemKind, ItemState, NotDoneReason, SetName, Start, StepKey, When,
};
use crate::units::Decimal;

/// What happened, if every word of it is known.
///
/// One long match on purpose, the mirror of `lower::what`.
pub(super) fn what(what: Event) -> Option<entry::Event> {
    Some(match what {
        Event::Opened { start, practice } => entry::Event::Opened(Opened {
            start: Start::from_code(&start)?,
            practice,
        }),
        Event::Person { field, text } => {
            entry::Event::Person(PersonField::from_code(&field)?, text)
        }
        Event::Erased { sha256 } => entry::Event::Erased(sha256),
        Event::Said { text } => entry::Event::Said(text),
        Event::Vehicle { field, text } => {
            entry::Event::Vehicle(VehicleField::from_code(&field)?, text)
        }
        Event::Corners { corners } => entry::Event::Corners(all(corners, Corner::from_code)?),
        Event::Card(stored) => entry::Event::Card(card::raise(stored)?),
        Event::Missing { items } => entry::Event::Missing(all(items, KitItem::from_code)?),
        Event::Carried {
            wrenches,
            dial,
            dials,
            stands,
            angle_gauge,
            share,
            dial_due,
            dial_error,
            angle_due,
        } => {
            let stand = |stored: StandText| {
                let rating = card::raise_typed(stored.rating)?;
                Some(Stand {
                    name: stored.name,
                    rating,
                })
            };
            let more = MoreKit {
                dials: dials.iter().map(card::raise_dial).collect::<Option<_>>()?,
                stands: stands.into_iter().map(stand).collect::<Option<_>>()?,
                angle_gauge,
                share: share.map(|[low, high]| (low, high)),
                dial_error: match dial_error {
                    Some(error) => Some(card::raise_typed(error)?),
                    None => None,
                },
                angle_due: match angle_due {
                    Some(day) => Some(day.parse().ok()?),
                    None => None,
                },
            };
            entry::Event::Carried(kit::raise_carried(wrenches, &dial, more, dial_due)?)
        }
        Event::Answered { step, reply: said } => {
            entry::Event::Answered(StepKey::from_code(&step)?, reply(said)?)
        }
        Event::Moved {
            step,
            items,
            to,
            wrench,
        } => entry::Event::Moved(Moved {
            step: StepKey::from_code(&step)?,
            items: items.iter().map(item).collect::<Option<_>>()?,
            to: ItemState::from_code(&to)?,
            wrench: match wrench {
                Some(used) => Some((used.name, card::raise_typed(used.set)?)),
                None => None,
            },
        }),
        Event::Also {
            item: at,
            name,
            card,
        } => entry::Event::Also(Also {
            item: item(&at)?,
            name,
            card: match card {
                Some(card) => Some((card::raise_typed(card.torque)?, card.document)),
                None => None,
            },
        }),
        Event::Lever { step, lever } => {
            let lever = match lever {
                Some(lever) => Some(TypedLever {
                    wrench: card::raise_typed(lever.wrench)?,
                    adapter: card::raise_typed(lever.adapter)?,
                    angle: card::raise_typed(lever.angle)?,
                }),
                None => None,
            };
            entry::Event::Lever(StepKey::from_code(&step)?, lever)
        }
        Event::Mishap {
            step,
            item: at,
            kind,
            part,
            minutes,
        } => entry::Event::Mishap(Mishap {
            step: StepKey::from_code(&step)?,
            item: item(&at)?,
            kind: MishapKind::from_code(&kind)?,
            part,
            minutes,
        }),
        Event::Mended { item: at } => entry::Event::Mended(item(&at)?),
        Event::Pass { step } => entry::Event::Pass(StepKey::from_code(&step)?),
        Event::DialSetup {
            corner,
            when,
            set,
            way,
        } => entry::Event::DialSetup(DialSetup {
            corner: Corner::from_code(&corner)?,
            set: set_name(&when, set)?,
            way: card::raise_way(way)?,
        }),
        Event::Reading {
            corner,
            when,
            set,
            round,
            side,
            divisions,
            turns,
            dial,
        } => entry::Event::Reading(Reading {
            corner: Corner::from_code(&corner)?,
            set: set_name(&when, set)?,
            round,
            side: Side::from_code(&side)?,
            divisions: Decimal::parse(&divisions).ok()?,
            turns,
            dial: card::raise_dial(&dial)?,
        }),
        Event::Decided {
            corner,
            nth,
            decision,
            again,
            reasons,
            rules,
            inputs,
        } => entry::Event::Decided(Decided {
            corner: Corner::from_code(&corner)?,
            nth,
            decision: Decision::from_code(&decision)?,
            again,
            reasons,
            rules,
            inputs: decided::raise(*inputs)?,
        }),
        Event::Proved(stored) => entry::Event::Proved(proved::raise(*stored)?),
        Event::FaceFound(stored) => entry::Event::FaceFound(Box::new(found::raise_face(*stored)?)),
        Event::RotorFound(stored) => {
            entry::Event::RotorFound(Box::new(found::raise_rotor(*stored)?))
        }
        Event::Price {
            repair,
            refit,
            estimate: lines,
        } => entry::Event::Price(Price {
            repair: money::raise(repair),
            refit: refit.map(money::raise),
            estimate: match lines {
                Some(lines) => Some(money::raise_estimate(lines)?),
                None => None,
            },
        }),
        Event::Invoice { number } => entry::Event::Invoice(number),
        Event::Paid { how, amount } => entry::Event::Paid(Paid {
            how: PaidHow::from_code(&how)?,
            amount: money::raise(amount),
        }),
        Event::Consent {
            step,
            scope,
            yes,
            how,
            amount,
        } => entry::Event::Consent(Consent {
            step: StepKey::from_code(&step)?,
            scope: Scope::from_code(&scope)?,
            yes,
            how: How::from_code(&how)?,
            amount: amount.map(money::raise),
        }),
        Event::Signed { step, strokes } => entry::Event::Signed(Signed {
            step: StepKey::from_code(&step)?,
            strokes,
        }),
        Event::Photo {
            step,
            sha256,
            mime,
            width,
            height,
        } => entry::Event::Photo(Photo {
            step: StepKey::from_code(&step)?,
            sha256,
            mime,
            width,
            height,
        }),
        Event::Note { step: None, text } => entry::Event::Note(None, text),
        Event::Note {
            step: Some(step),
            text,
        } => entry::Event::Note(Some(StepKey::from_code(&step)?), text),
        Event::Part {
            corner,
            number,
            lot,
        } => entry::Event::Part(Part {
            corner: Corner::from_code(&corner)?,
            number,
            lot,
        }),
        Event::Due {
            kind,
            date,
            distance,
        } => entry::Event::Due(Due {
            kind: DueKind::from_code(&kind)?,
            date,
            distance: match distance {
                Some(typed) => Some(card::raise_typed(typed)?),
                None => None,
            },
        }),
        Event::HandedOver { digest } => entry::Event::HandedOver(HandedOver { digest }),
        Event::Ended { ending, charge } => entry::Event::Ended(Ended {
            ending: Ending::from_code(&ending)?,
            charge: match charge {
                Some(charge) => Some(Charge::from_code(&charge)?),
                None => None,
            },
        }),
        Event::Runout(stored) => entry::Event::Runout(runout::raise(stored)?),
        Event::Voice {
            step,
            sha256,
            mime,
            seconds,
        } => entry::Event::Voice(Voice {
            step: StepKey::from_code(&step)?,
            sha256,
            mime,
            seconds,
        }),
        Event::Captioned { sha256, word, text } => entry::Event::Captioned(Captioned {
            sha256,
            caption: match (word, text) {
                (Some(word), None) => Caption::Word(CaptionWord::from_code(&word)?),
                (None, Some(text)) => Caption::Words(text),
                (None, None) => Caption::Step,
                (Some(_), Some(_)) => return None,
            },
        }),
        Event::RunoutLimit(stored) => entry::Event::RunoutLimit(runout::raise_card(stored)?),
        Event::Damage { corner, seen } => {
            entry::Event::Damage(Corner::from_code(&corner)?, Damage::from_code(&seen)?)
        }
        Event::CameBackFor { cause } => entry::Event::CameBackFor(CameBackFor::from_code(&cause)?),
        Event::Stock {
            number,
            have,
            least,
            cores,
        } => entry::Event::Stock(Stock {
            number,
            have,
            least,
            cores,
        }),
        Event::Thickness(stored) => entry::Event::Thickness(thickness::raise(stored)?),
        Event::ThicknessLimit(stored) => {
            entry::Event::ThicknessLimit(thickness::raise_card(stored)?)
        }
        Event::TipAngle {
            corner,
            when,
            set,
            angle,
        } => {
            let set = set_name(&when, set)?;
            let corner = Corner::from_code(&corner)?;
            entry::Event::TipAngle(corner, set, card::raise_typed(angle)?)
        }
        Event::Crept {
            corner,
            when,
            set,
            divisions,
        } => {
            let set = set_name(&when, set)?;
            let corner = Corner::from_code(&corner)?;
            entry::Event::Crept(corner, set, Decimal::parse(&divisions).ok()?)
        }
        Event::TipRadius { place, radius } => {
            entry::Event::TipRadius(Place::from_code(&place)?, card::raise_typed(radius)?)
        }
        Event::FromPaper { version, lines } => {
            entry::Event::FromPaper(paper::of_lines(version, &lines)?)
        }
        Event::Slot(stored) => entry::Event::Slot(flow::raise_slot(&stored)?),
        Event::Shop(stored) => entry::Event::Shop(Box::new(flow::raise_shop(stored)?)),
        Event::Confirmation { held } => entry::Event::Confirmation(flow::raise_confirmation(held)),
        Event::Angled { step, by } => {
            entry::Event::Angled(StepKey::from_code(&step)?, AngleBy::from_code(&by)?)
        }
        Event::LetGo { sha256 } => entry::Event::LetGo(sha256),
        Event::Strike { hits } => entry::Event::Strike(hits.into_iter().map(EntryId).collect()),
    })
}

fn all<W>(codes: Vec<String>, from_code: impl Fn(&str) -> Option<W>) -> Option<Vec<W>> {
    codes.iter().map(|code| from_code(code)).collect()
}

fn item(stored: &ItemText) -> Option<Item> {
    Some(Item {
        corner: Corner::from_code(&stored.corner)?,
        group: ItemKind::from_code(&stored.group)?,
        number: stored.number,
    })
}

fn reply(stored: Reply) -> Option<entry::Reply> {
    Some(match stored {
        Reply::Done {} => entry::Reply::Done,
        Reply::NotDone { because } => entry::Reply::NotDone(NotDoneReason::from_code(&because)?),
        Reply::Said { answer } => entry::Reply::Said(Answer::from_code(&answer)?),
        Reply::Felt { felt } => entry::Reply::Felt(Felt::from_code(&felt)?),
        Reply::Picked { pick } => entry::Reply::Picked(Choice::from_code(&pick)?),
        Reply::Number { value } => entry::Reply::Number(match card::raise_typed(value.clone()) {
            Some(distance) => Quantity::Distance(distance),
            None => Quantity::Temperature(card::raise_typed(value)?),
        }),
        Reply::FoundLoose { count } => entry::Reply::FoundLoose(count),
        Reply::Checked { checks } => {
            let each = checks.iter().map(|stored| {
                Some((
                    Check::from_code(&stored.check)?,
                    Answer::from_code(&stored.answer)?,
                ))
            });
            entry::Reply::Checked(each.collect::<Option<_>>()?)
        }
    })
}

fn set_name(when: &str, nth: u8) -> Option<SetName> {
    let when = When::from_code(when)?;
    Some(SetName { when, nth })
}
