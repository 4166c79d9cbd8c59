//! From how it is stored to what happened; `None` if a word is not known.

use crate::exchange::paper;
use crate::exchange::wire::what::{ItemText, Reply, StandText, What};
use crate::exchange::wire::{card, decided, flow, found, kit, money, proved, runout, thickness};
use crate::job::also::Also;
use crate::job::angled::AngleBy;
use crate::job::caption::CaptionWord;
use crate::job::entry::{
    self, Caption, Captioned, Charge, Consent, Decided, DialSetup, Due, DueKind, Ended, Ending,
    EntryId, HandedOver, How, KitItem, Moved, Opened, Paid, PaidHow, Part, PersonField, Photo,
    Price, Quantity, Reading, Scope, Side, Signed, Stock, VehicleField, Voice,
};
use crate::job::kit::{MoreKit, Stand};
use crate::job::mishap::Mishap;
use crate::trade::answer::Answer;
use crate::trade::damage::{CameBackFor, Damage};
use crate::trade::fastening::{MishapKind, TypedLever};
use crate::trade::play::{Decision, Felt, Place};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::{
    Because, Check, Group, Hold, Item, Pick, SetName, Start, StepKey, When,
};
use crate::units::Decimal;

/// What happened, if every word of it is known.
///
/// One long match on purpose, the mirror of `lower::what`.
pub(super) fn what(what: What) -> Option<entry::What> {
    Some(match what {
        What::Opened { start, practice } => entry::What::Opened(Opened {
            start: Start::from_code(&start)?,
            practice,
        }),
        What::Person { field, text } => entry::What::Person(PersonField::from_code(&field)?, text),
        What::Erased { sha256 } => entry::What::Erased(sha256),
        What::Said { text } => entry::What::Said(text),
        What::Vehicle { field, text } => {
            entry::What::Vehicle(VehicleField::from_code(&field)?, text)
        }
        What::Corners { corners } => entry::What::Corners(all(corners, Corner::from_code)?),
        What::Card(stored) => entry::What::Card(card::raise(stored)?),
        What::Missing { items } => entry::What::Missing(all(items, KitItem::from_code)?),
        What::Carried {
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
            entry::What::Carried(kit::raise_carried(wrenches, &dial, more, dial_due)?)
        }
        What::Answered { step, reply: said } => {
            entry::What::Answered(StepKey::from_code(&step)?, reply(said)?)
        }
        What::Moved {
            step,
            items,
            to,
            wrench,
        } => entry::What::Moved(Moved {
            step: StepKey::from_code(&step)?,
            items: items.iter().map(item).collect::<Option<_>>()?,
            to: Hold::from_code(&to)?,
            wrench: match wrench {
                Some(used) => Some((used.name, card::raise_typed(used.set)?)),
                None => None,
            },
        }),
        What::Also {
            item: at,
            name,
            card,
        } => entry::What::Also(Also {
            item: item(&at)?,
            name,
            card: match card {
                Some(card) => Some((card::raise_typed(card.torque)?, card.document)),
                None => None,
            },
        }),
        What::Lever { step, lever } => {
            let lever = match lever {
                Some(lever) => Some(TypedLever {
                    wrench: card::raise_typed(lever.wrench)?,
                    adapter: card::raise_typed(lever.adapter)?,
                    angle: card::raise_typed(lever.angle)?,
                }),
                None => None,
            };
            entry::What::Lever(StepKey::from_code(&step)?, lever)
        }
        What::Mishap {
            step,
            item: at,
            kind,
            part,
            minutes,
        } => entry::What::Mishap(Mishap {
            step: StepKey::from_code(&step)?,
            item: item(&at)?,
            kind: MishapKind::from_code(&kind)?,
            part,
            minutes,
        }),
        What::Mended { item: at } => entry::What::Mended(item(&at)?),
        What::Pass { step } => entry::What::Pass(StepKey::from_code(&step)?),
        What::DialSetup {
            corner,
            when,
            set,
            way,
        } => entry::What::DialSetup(DialSetup {
            corner: Corner::from_code(&corner)?,
            set: set_name(&when, set)?,
            way: card::raise_way(way)?,
        }),
        What::Reading {
            corner,
            when,
            set,
            round,
            side,
            divisions,
            turns,
            dial,
        } => entry::What::Reading(Reading {
            corner: Corner::from_code(&corner)?,
            set: set_name(&when, set)?,
            round,
            side: Side::from_code(&side)?,
            divisions: Decimal::parse(&divisions).ok()?,
            turns,
            dial: card::raise_dial(&dial)?,
        }),
        What::Decided {
            corner,
            nth,
            decision,
            again,
            reasons,
            rules,
            inputs,
        } => entry::What::Decided(Decided {
            corner: Corner::from_code(&corner)?,
            nth,
            decision: Decision::from_code(&decision)?,
            again,
            reasons,
            rules,
            inputs: decided::raise(*inputs)?,
        }),
        What::Proved(stored) => entry::What::Proved(proved::raise(*stored)?),
        What::FaceFound(stored) => entry::What::FaceFound(Box::new(found::raise_face(*stored)?)),
        What::RotorFound(stored) => entry::What::RotorFound(Box::new(found::raise_rotor(*stored)?)),
        What::Price {
            repair,
            refit,
            estimate: lines,
        } => entry::What::Price(Price {
            repair: money::raise(repair),
            refit: refit.map(money::raise),
            estimate: match lines {
                Some(lines) => Some(money::raise_estimate(lines)?),
                None => None,
            },
        }),
        What::Invoice { number } => entry::What::Invoice(number),
        What::Paid { how, amount } => entry::What::Paid(Paid {
            how: PaidHow::from_code(&how)?,
            amount: money::raise(amount),
        }),
        What::Consent {
            step,
            scope,
            yes,
            how,
            amount,
        } => entry::What::Consent(Consent {
            step: StepKey::from_code(&step)?,
            scope: Scope::from_code(&scope)?,
            yes,
            how: How::from_code(&how)?,
            amount: amount.map(money::raise),
        }),
        What::Signed { step, strokes } => entry::What::Signed(Signed {
            step: StepKey::from_code(&step)?,
            strokes,
        }),
        What::Photo {
            step,
            sha256,
            mime,
            width,
            height,
        } => entry::What::Photo(Photo {
            step: StepKey::from_code(&step)?,
            sha256,
            mime,
            width,
            height,
        }),
        What::Note { step: None, text } => entry::What::Note(None, text),
        What::Note {
            step: Some(step),
            text,
        } => entry::What::Note(Some(StepKey::from_code(&step)?), text),
        What::Part {
            corner,
            number,
            lot,
        } => entry::What::Part(Part {
            corner: Corner::from_code(&corner)?,
            number,
            lot,
        }),
        What::Due {
            kind,
            date,
            distance,
        } => entry::What::Due(Due {
            kind: DueKind::from_code(&kind)?,
            date,
            distance: match distance {
                Some(typed) => Some(card::raise_typed(typed)?),
                None => None,
            },
        }),
        What::HandedOver { digest } => entry::What::HandedOver(HandedOver { digest }),
        What::Ended { ending, charge } => entry::What::Ended(Ended {
            ending: Ending::from_code(&ending)?,
            charge: match charge {
                Some(charge) => Some(Charge::from_code(&charge)?),
                None => None,
            },
        }),
        What::Runout(stored) => entry::What::Runout(runout::raise(stored)?),
        What::Voice {
            step,
            sha256,
            mime,
            seconds,
        } => entry::What::Voice(Voice {
            step: StepKey::from_code(&step)?,
            sha256,
            mime,
            seconds,
        }),
        What::Captioned { sha256, word, text } => entry::What::Captioned(Captioned {
            sha256,
            caption: match (word, text) {
                (Some(word), None) => Caption::Word(CaptionWord::from_code(&word)?),
                (None, Some(text)) => Caption::Words(text),
                (None, None) => Caption::Step,
                (Some(_), Some(_)) => return None,
            },
        }),
        What::RunoutLimit(stored) => entry::What::RunoutLimit(runout::raise_card(stored)?),
        What::Damage { corner, seen } => {
            entry::What::Damage(Corner::from_code(&corner)?, Damage::from_code(&seen)?)
        }
        What::CameBackFor { cause } => entry::What::CameBackFor(CameBackFor::from_code(&cause)?),
        What::Stock {
            number,
            have,
            least,
            cores,
        } => entry::What::Stock(Stock {
            number,
            have,
            least,
            cores,
        }),
        What::Thickness(stored) => entry::What::Thickness(thickness::raise(stored)?),
        What::ThicknessLimit(stored) => entry::What::ThicknessLimit(thickness::raise_card(stored)?),
        What::TipAngle {
            corner,
            when,
            set,
            angle,
        } => {
            let set = set_name(&when, set)?;
            let corner = Corner::from_code(&corner)?;
            entry::What::TipAngle(corner, set, card::raise_typed(angle)?)
        }
        What::Crept {
            corner,
            when,
            set,
            divisions,
        } => {
            let set = set_name(&when, set)?;
            let corner = Corner::from_code(&corner)?;
            entry::What::Crept(corner, set, Decimal::parse(&divisions).ok()?)
        }
        What::TipRadius { place, radius } => {
            entry::What::TipRadius(Place::from_code(&place)?, card::raise_typed(radius)?)
        }
        What::FromPaper { version, lines } => {
            entry::What::FromPaper(paper::of_lines(version, &lines)?)
        }
        What::Slot(stored) => entry::What::Slot(flow::raise_slot(&stored)?),
        What::Shop(stored) => entry::What::Shop(Box::new(flow::raise_shop(stored)?)),
        What::Receipt { held } => entry::What::Receipt(flow::raise_receipt(held)),
        What::Angled { step, by } => {
            entry::What::Angled(StepKey::from_code(&step)?, AngleBy::from_code(&by)?)
        }
        What::LetGo { sha256 } => entry::What::LetGo(sha256),
        What::Strike { hits } => entry::What::Strike(hits.into_iter().map(EntryId).collect()),
    })
}

fn all<W>(codes: Vec<String>, from_code: impl Fn(&str) -> Option<W>) -> Option<Vec<W>> {
    codes.iter().map(|code| from_code(code)).collect()
}

fn item(stored: &ItemText) -> Option<Item> {
    Some(Item {
        corner: Corner::from_code(&stored.corner)?,
        group: Group::from_code(&stored.group)?,
        number: stored.number,
    })
}

fn reply(stored: Reply) -> Option<entry::Reply> {
    Some(match stored {
        Reply::Done {} => entry::Reply::Done,
        Reply::NotDone { because } => entry::Reply::NotDone(Because::from_code(&because)?),
        Reply::Said { answer } => entry::Reply::Said(Answer::from_code(&answer)?),
        Reply::Felt { felt } => entry::Reply::Felt(Felt::from_code(&felt)?),
        Reply::Picked { pick } => entry::Reply::Picked(Pick::from_code(&pick)?),
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
