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
pub(super) fn record(context: &ReportContext) -> Vec<Block> {
    let mut blocks = Vec::new();
    let parts = parts(context);
    if !parts.is_empty() {
        blocks.push(context.heading(ReportWord::Parts));
        blocks.push(Block::Rows(parts));
    }
    let consents = consents(context);
    if let Some(consents) = consents {
        blocks.push(context.heading(ReportWord::Consents));
        blocks.push(consents);
    }
    blocks.extend(signatures(context, when));
    part(context, ReportWord::Due, dues(context), &mut blocks);
    part(context, ReportWord::KitMissing, kit(context), &mut blocks);
    part(context, ReportWord::Notes, notes(context), &mut blocks);
    blocks.extend(super::saved::photos(context));
    blocks.extend(super::saved::voices(context));
    part(
        context,
        ReportWord::Problems,
        problems(context),
        &mut blocks,
    );
    part(
        context,
        ReportWord::TakenBack,
        taken_back(context),
        &mut blocks,
    );
    blocks.push(context.heading(ReportWord::Digest));
    blocks.extend(identity(context));
    blocks
}

fn part(context: &ReportContext, head: ReportWord, lines: Vec<String>, blocks: &mut Vec<Block>) {
    if !lines.is_empty() {
        blocks.push(context.heading(head));
        blocks.push(Block::List(lines));
    }
}

/// The parts that were fitted, number and lot.
pub(super) fn parts(context: &ReportContext) -> Vec<(String, String)> {
    let parts = context
        .corners()
        .iter()
        .filter_map(|corner| context.sheet.part(*corner));
    parts
        .map(|part| {
            let number = format!("{} {}", context.say(Say::PartNumber), part.number);
            let value = match part.lot.as_str() {
                "" => number,
                lot => format!("{number}, {} {lot}", context.say(Say::PartLot)),
            };
            (
                text::corner_title(context.lang, part.corner).to_owned(),
                value,
            )
        })
        .collect()
}

/// Every yes and no, in order.
fn given<'a>(context: &ReportContext<'a>) -> impl Iterator<Item = (&'a Entry, &'a Consent)> {
    context
        .sheet
        .counting()
        .filter_map(|entry| match &entry.what {
            Event::Consent(consent) => Some((entry, consent)),
            _ => None,
        })
}

/// What a yes or no was for, with its corner.
pub(super) fn scope(context: &ReportContext, consent: &Consent) -> String {
    let scope = text::scope(context.lang, consent.scope);
    consent.step.corner.map_or_else(
        || scope.to_owned(),
        |corner| text::step_at(context.lang, scope, corner),
    )
}

fn yes_or_no(context: &ReportContext, consent: &Consent) -> String {
    context.say(if consent.yes { Say::Yes } else { Say::No })
}

fn amount(context: &ReportContext, consent: &Consent) -> String {
    let amount = consent.amount.as_ref();
    amount.map(|m| money(context.format, m)).unwrap_or_default()
}

/// The customer's name, and where an answer by message came from.
fn who(context: &ReportContext, consent: &Consent) -> String {
    let person = |field| context.sheet.person(field).unwrap_or_default();
    let (name, from) = (person(PersonField::Name), person(PersonField::Message));
    if consent.how == How::Electronic && !from.is_empty() {
        format!("{name} ({from})")
    } else {
        name.to_owned()
    }
}

/// Every yes and no in a line, for the customer.
pub(super) fn consent_lines(context: &ReportContext) -> Vec<String> {
    let extras = extras(context.sheet);
    given(context)
        .map(|(entry, consent)| {
            let name = who(context, consent);
            let what = [scope(context, consent), amount(context, consent)];
            let what: Vec<&str> = what
                .iter()
                .map(String::as_str)
                .filter(|w| !w.is_empty())
                .collect();
            let line = text::consent_line(
                context.lang,
                &what.join(", "),
                text::how(context.lang, consent.how),
                &name,
                &super::plain::moment(context.lang, &entry.at),
            );
            let line = format!("{}. {line}", yes_or_no(context, consent));
            let extra = extras.get(&entry.id);
            extra.map_or(line.clone(), |it| {
                format!("{line}. {}", extra_line(context, consent, it))
            })
        })
        .collect()
}

/// Why extra work was asked for, what it costs more, and what it comes to with it.
fn extra_line(context: &ReportContext, consent: &Consent, extra: &Extra) -> String {
    let lang = context.lang;
    let why = extra.reason.map(|mishap| {
        let item = entry_line::item_name(context.lang, context.sheet, mishap.item);
        let what = text::mishap(context.lang, mishap.kind, context.plan.fitted.fixing);
        text::mishap_line(context.lang, &item, what, &mishap.part, mishap.minutes)
    });
    let amount = consent.amount.as_ref().map(|it| money(context.format, it));
    let total = extra.total.as_ref().filter(|_| consent.yes);
    let total = total.map(|total| money(context.format, total));
    let parts = [
        why.map(|why| text::asking(lang, Asking::Reason(&why))),
        amount.map(|amount| text::asking(lang, Asking::CostsMore(&amount))),
        total.map(|total| text::asking(lang, Asking::NewTotal(&total))),
    ];
    parts.into_iter().flatten().collect::<Vec<_>>().join("; ")
}

/// Every yes and no: for what, for how much, how and when.
fn consents(context: &ReportContext) -> Option<Block> {
    let extras = extras(context.sheet);
    let rows: Vec<Vec<String>> = given(context)
        .map(|(entry, consent)| {
            let extra = extras.get(&entry.id);
            let extra = extra.map(|extra| extra_line(context, consent, extra));
            vec![
                [Some(scope(context, consent)), extra]
                    .into_iter()
                    .flatten()
                    .collect::<Vec<_>>()
                    .join(". "),
                yes_or_no(context, consent),
                amount(context, consent),
                [text::how(context.lang, consent.how), &who(context, consent)]
                    .into_iter()
                    .filter(|text| !text.is_empty())
                    .collect::<Vec<_>>()
                    .join(", "),
                when(context.lang, &entry.at),
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
        .map(|word| context.word(word))
        .to_vec(),
        rows,
    })
}

/// Every signature with its step and time, the latter in words of the caller's.
pub(super) fn signatures(
    context: &ReportContext,
    when: fn(Lang, &Timestamp) -> String,
) -> Vec<Block> {
    context
        .sheet
        .counting()
        .filter_map(|entry| {
            let Event::Signed(signed) = &entry.what else {
                return None;
            };
            let of = match context.sheet.extra(signed.step) {
                Some(extra) => scope(context, extra),
                None => context.step(signed.step),
            };
            let caption = format!("{of}, {}", when(context.lang, &entry.at));
            let svg = signature_svg(&signed.strokes, &caption);
            Some(Block::Signature { caption, svg })
        })
        .collect()
}

fn dues(context: &ReportContext) -> Vec<String> {
    lines(context, |context, what| match what {
        Event::Due(due) => Some(entry_line::due_line(context, due)),
        _ => None,
    })
}

fn kit(context: &ReportContext) -> Vec<String> {
    lines(context, |context, what| match what {
        Event::Missing(kit) if !kit.is_empty() => {
            let kit = kit.iter().map(|item| text::kit_item(context.lang, *item));
            Some(kit.collect::<Vec<_>>().join(", "))
        }
        _ => None,
    })
}

fn notes(context: &ReportContext) -> Vec<String> {
    lines(context, |context, what| match what {
        Event::Note(Some(step), note) => Some(format!("{}: {note}", context.step(*step))),
        Event::Note(None, note) => Some(note.clone()),
        Event::Remark(step, remark) => Some(format!(
            "{}: {}",
            context.step(*step),
            text::remark(context.lang, *remark)
        )),
        _ => None,
    })
}

/// A line, with its time, for each counting entry that gives one.
fn lines(
    context: &ReportContext,
    line: impl Fn(&ReportContext, &Event) -> Option<String>,
) -> Vec<String> {
    let entries = context.sheet.counting();
    entries
        .filter_map(|entry| Some(timed(context, entry, &line(context, &entry.what)?)))
        .collect()
}

fn timed(context: &ReportContext, entry: &Entry, line: &str) -> String {
    format!("{line} ({})", when(context.lang, &entry.at))
}

fn problems(context: &ReportContext) -> Vec<String> {
    context
        .sheet
        .problems()
        .iter()
        .map(|problem| match problem {
            Problem::Missing(id) => {
                format!("{}: {}", context.word(ReportWord::EntryMissing), id.0)
            }
            Problem::Edited(id) => format!("{}: {}", context.word(ReportWord::EntryEdited), id.0),
            Problem::Unknown(id) => format!("{}: {}", context.word(ReportWord::EntryUnknown), id.0),
            Problem::Circle(id) => format!("{}: {}", context.word(ReportWord::EntryCircle), id.0),
            Problem::Lost => context.word(ReportWord::EntriesLost).to_owned(),
            Problem::Disagree(key) => {
                let said = context
                    .sheet
                    .stated(key)
                    .map(|entry| timed(context, entry, &entry_line::entry(context, &entry.what)));
                format!(
                    "{} {}",
                    context.word(ReportWord::TwoAnswers),
                    said.collect::<Vec<_>>().join(" / ")
                )
            }
        })
        .collect()
}

/// Struck entries, and those whose body was erased; strikes themselves are no news.
fn taken_back(context: &ReportContext) -> Vec<String> {
    context
        .sheet
        .with_struck()
        .filter(|(entry, struck)| match entry.what {
            Event::Strike(_) => false,
            _ => entry.what.is_gone() || *struck,
        })
        .map(|(entry, _)| timed(context, entry, &entry_line::entry(context, &entry.what)))
        .collect()
}

fn identity(context: &ReportContext) -> Vec<Block> {
    let mut blocks = Vec::new();
    let handed_over = context
        .sheet
        .counting()
        .filter_map(|entry| match &entry.what {
            Event::HandedOver(over) => Some((when(context.lang, &entry.at), over.digest.clone())),
            _ => None,
        });
    let mut rows = vec![
        (context.word(ReportWord::Job), context.reader.job.clone()),
        (
            context.word(ReportWord::Entries),
            context.sheet.entries().len().to_string(),
        ),
    ];
    rows.extend(handed_over.map(|(time, digest)| {
        (
            format!("{} {time}", context.word(ReportWord::HandedOver)),
            digest,
        )
    }));
    rows.retain(|(_, value)| !value.is_empty());
    blocks.push(Block::Rows(rows));
    if !context.reader.digest.is_empty() {
        blocks.push(Block::Sentence(text::digest_line(
            context.lang,
            &context.reader.digest,
        )));
    }
    blocks.push(context.sentence(ReportWord::Recompute));
    blocks.push(context.sentence(ReportWord::Disclaimer));
    blocks
}
