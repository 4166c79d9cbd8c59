//! The record itself: parts, yes and no, signatures, notes, pictures, what is due, what was
//! taken back, what is wrong with it, and the digest it can be checked by.

use super::ReportContext;
use super::block::Block;
use super::entry_line;
use super::money::money;
use super::signature::signature_svg;
use super::time::when;
use crate::job::Problem;
use crate::job::agreed::{Extra, extras};
use crate::job::entry::{Consent, Entry, Event, How, PersonField, Timestamp};
use crate::text::{self, Asking, Lang, ReportWord, Say};

/// All of it.
pub(super) fn record(told: &ReportContext) -> Vec<Block> {
    let mut blocks = Vec::new();
    let parts = parts(told);
    if !parts.is_empty() {
        blocks.push(told.heading(ReportWord::Parts));
        blocks.push(Block::Rows(parts));
    }
    let consents = consents(told);
    if let Some(consents) = consents {
        blocks.push(told.heading(ReportWord::Consents));
        blocks.push(consents);
    }
    blocks.extend(signatures(told, when));
    part(told, ReportWord::Due, dues(told), &mut blocks);
    part(told, ReportWord::KitMissing, kit(told), &mut blocks);
    part(told, ReportWord::Notes, notes(told), &mut blocks);
    blocks.extend(super::kept::pictures(told));
    blocks.extend(super::kept::voices(told));
    part(told, ReportWord::Problems, problems(told), &mut blocks);
    part(told, ReportWord::TakenBack, taken_back(told), &mut blocks);
    blocks.push(told.heading(ReportWord::Digest));
    blocks.extend(identity(told));
    blocks
}

fn part(told: &ReportContext, head: ReportWord, lines: Vec<String>, blocks: &mut Vec<Block>) {
    if !lines.is_empty() {
        blocks.push(told.heading(head));
        blocks.push(Block::List(lines));
    }
}

/// The parts that were fitted, number and lot.
pub(super) fn parts(told: &ReportContext) -> Vec<(String, String)> {
    let parts = told
        .corners()
        .iter()
        .filter_map(|corner| told.sheet.part(*corner));
    parts
        .map(|part| {
            let number = format!("{} {}", told.say(Say::PartNumber), part.number);
            let value = match part.lot.as_str() {
                "" => number,
                lot => format!("{number}, {} {lot}", told.say(Say::PartLot)),
            };
            (text::corner_title(told.lang, part.corner).to_owned(), value)
        })
        .collect()
}

/// Every yes and no, in order.
fn given<'a>(told: &ReportContext<'a>) -> impl Iterator<Item = (&'a Entry, &'a Consent)> {
    told.sheet.counting().filter_map(|entry| match &entry.what {
        Event::Consent(consent) => Some((entry, consent)),
        _ => None,
    })
}

/// What a yes or no was for, with its corner.
pub(super) fn scope(told: &ReportContext, consent: &Consent) -> String {
    let scope = text::scope(told.lang, consent.scope);
    consent.step.corner.map_or_else(
        || scope.to_owned(),
        |corner| text::step_at(told.lang, scope, corner),
    )
}

fn yes_or_no(told: &ReportContext, consent: &Consent) -> String {
    told.say(if consent.yes { Say::Yes } else { Say::No })
}

fn amount(told: &ReportContext, consent: &Consent) -> String {
    let amount = consent.amount.as_ref();
    amount.map(|m| money(told.format, m)).unwrap_or_default()
}

/// The customer's name, and where an answer by message came from.
fn who(told: &ReportContext, consent: &Consent) -> String {
    let person = |field| told.sheet.person(field).unwrap_or_default();
    let (name, from) = (person(PersonField::Name), person(PersonField::Message));
    if consent.how == How::Electronic && !from.is_empty() {
        format!("{name} ({from})")
    } else {
        name.to_owned()
    }
}

/// Every yes and no in a line, for the customer.
pub(super) fn consent_lines(told: &ReportContext) -> Vec<String> {
    let extras = extras(told.sheet);
    given(told)
        .map(|(entry, consent)| {
            let name = who(told, consent);
            let what = [scope(told, consent), amount(told, consent)];
            let what: Vec<&str> = what
                .iter()
                .map(String::as_str)
                .filter(|w| !w.is_empty())
                .collect();
            let line = text::consent_line(
                told.lang,
                &what.join(", "),
                text::how(told.lang, consent.how),
                &name,
                &super::plain::moment(told.lang, &entry.at),
            );
            let line = format!("{}. {line}", yes_or_no(told, consent));
            let extra = extras.get(&entry.id);
            extra.map_or(line.clone(), |it| {
                format!("{line}. {}", extra_line(told, consent, it))
            })
        })
        .collect()
}

/// Why extra work was asked for, what it costs more, and what it comes to with it.
fn extra_line(told: &ReportContext, consent: &Consent, extra: &Extra) -> String {
    let lang = told.lang;
    let why = extra.reason.map(|mishap| {
        let item = entry_line::item_name(told.lang, told.sheet, mishap.item);
        let what = text::mishap(told.lang, mishap.kind);
        text::mishap_line(told.lang, &item, what, &mishap.part, mishap.minutes)
    });
    let amount = consent.amount.as_ref().map(|it| money(told.format, it));
    let total = extra.total.as_ref().filter(|_| consent.yes);
    let total = total.map(|total| money(told.format, total));
    let parts = [
        why.map(|why| text::asking(lang, Asking::Reason(&why))),
        amount.map(|amount| text::asking(lang, Asking::CostsMore(&amount))),
        total.map(|total| text::asking(lang, Asking::NewTotal(&total))),
    ];
    parts.into_iter().flatten().collect::<Vec<_>>().join("; ")
}

/// Every yes and no: for what, for how much, how and when.
fn consents(told: &ReportContext) -> Option<Block> {
    let extras = extras(told.sheet);
    let rows: Vec<Vec<String>> = given(told)
        .map(|(entry, consent)| {
            let extra = extras.get(&entry.id);
            let extra = extra.map(|extra| extra_line(told, consent, extra));
            vec![
                [Some(scope(told, consent)), extra]
                    .into_iter()
                    .flatten()
                    .collect::<Vec<_>>()
                    .join(". "),
                yes_or_no(told, consent),
                amount(told, consent),
                [text::how(told.lang, consent.how), &who(told, consent)]
                    .into_iter()
                    .filter(|text| !text.is_empty())
                    .collect::<Vec<_>>()
                    .join(", "),
                when(told.lang, &entry.at),
            ]
        })
        .collect();
    (!rows.is_empty()).then(|| Block::Table {
        head: [
            ReportWord::Scope,
            ReportWord::Answer,
            ReportWord::Amount,
            ReportWord::HowGiven,
            ReportWord::When,
        ]
        .map(|word| told.word(word))
        .to_vec(),
        rows,
    })
}

/// Every signature with its step and time, the latter in words of the caller's.
pub(super) fn signatures(told: &ReportContext, when: fn(Lang, &Timestamp) -> String) -> Vec<Block> {
    told.sheet
        .counting()
        .filter_map(|entry| {
            let Event::Signed(signed) = &entry.what else {
                return None;
            };
            let of = match told.sheet.extra(signed.step) {
                Some(extra) => scope(told, extra),
                None => told.step(signed.step),
            };
            let caption = format!("{of}, {}", when(told.lang, &entry.at));
            let svg = signature_svg(&signed.strokes, &caption);
            Some(Block::Signature { caption, svg })
        })
        .collect()
}

fn dues(told: &ReportContext) -> Vec<String> {
    lines(told, |told, what| match what {
        Event::Due(due) => Some(entry_line::due_line(told, due)),
        _ => None,
    })
}

fn kit(told: &ReportContext) -> Vec<String> {
    lines(told, |told, what| match what {
        Event::Missing(kit) if !kit.is_empty() => {
            let kit = kit.iter().map(|item| text::kit_item(told.lang, *item));
            Some(kit.collect::<Vec<_>>().join(", "))
        }
        _ => None,
    })
}

fn notes(told: &ReportContext) -> Vec<String> {
    lines(told, |told, what| match what {
        Event::Note(Some(step), note) => Some(format!("{}: {note}", told.step(*step))),
        Event::Note(None, note) => Some(note.clone()),
        Event::Remark(step, remark) => Some(format!(
            "{}: {}",
            told.step(*step),
            text::remark(told.lang, *remark)
        )),
        _ => None,
    })
}

/// A line, with its time, for each counting entry that gives one.
fn lines(
    told: &ReportContext,
    line: impl Fn(&ReportContext, &Event) -> Option<String>,
) -> Vec<String> {
    let entries = told.sheet.counting();
    entries
        .filter_map(|entry| Some(timed(told, entry, &line(told, &entry.what)?)))
        .collect()
}

fn timed(told: &ReportContext, entry: &Entry, line: &str) -> String {
    format!("{line} ({})", when(told.lang, &entry.at))
}

fn problems(told: &ReportContext) -> Vec<String> {
    told.sheet
        .problems()
        .iter()
        .map(|problem| match problem {
            Problem::Missing(id) => {
                format!("{}: {}", told.word(ReportWord::EntryMissing), id.0)
            }
            Problem::Edited(id) => format!("{}: {}", told.word(ReportWord::EntryEdited), id.0),
            Problem::Unknown(id) => format!("{}: {}", told.word(ReportWord::EntryUnknown), id.0),
            Problem::Circle(id) => format!("{}: {}", told.word(ReportWord::EntryCircle), id.0),
            Problem::Lost => told.word(ReportWord::EntriesLost).to_owned(),
            Problem::Disagree(key) => {
                let said = told
                    .sheet
                    .stated(key)
                    .map(|entry| timed(told, entry, &entry_line::entry(told, &entry.what)));
                format!(
                    "{} {}",
                    told.word(ReportWord::TwoAnswers),
                    said.collect::<Vec<_>>().join(" / ")
                )
            }
        })
        .collect()
}

/// Struck entries, and those whose body was erased; strikes themselves are no news.
fn taken_back(told: &ReportContext) -> Vec<String> {
    told.sheet
        .with_struck()
        .filter(|(entry, struck)| match entry.what {
            Event::Strike(_) => false,
            _ => entry.what.is_gone() || *struck,
        })
        .map(|(entry, _)| timed(told, entry, &entry_line::entry(told, &entry.what)))
        .collect()
}

fn identity(told: &ReportContext) -> Vec<Block> {
    let mut blocks = Vec::new();
    let handed_over = told.sheet.counting().filter_map(|entry| match &entry.what {
        Event::HandedOver(over) => Some((when(told.lang, &entry.at), over.digest.clone())),
        _ => None,
    });
    let mut rows = vec![
        (told.word(ReportWord::Job), told.reader.job.clone()),
        (
            told.word(ReportWord::Entries),
            told.sheet.entries().len().to_string(),
        ),
    ];
    rows.extend(handed_over.map(|(time, digest)| {
        (
            format!("{} {time}", told.word(ReportWord::HandedOver)),
            digest,
        )
    }));
    rows.retain(|(_, value)| !value.is_empty());
    blocks.push(Block::Rows(rows));
    if !told.reader.digest.is_empty() {
        blocks.push(Block::Sentence(text::digest_line(
            told.lang,
            &told.reader.digest,
        )));
    }
    blocks.push(told.sentence(ReportWord::Recompute));
    blocks.push(told.sentence(ReportWord::Disclaimer));
    blocks
}
