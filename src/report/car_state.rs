//! How a car stands in the middle of the work, in lines.

use crate::job::entry::{Entry, Event, Interrupted, Mishap};
use crate::job::loose::Row;
use crate::job::{JobState, fitted};
use crate::report::{item_name, stamp};
use crate::text::{self, Lang, Say};
use crate::trade::vehicle::Fixing;
use crate::trade::wheel_end::{Given, ItemKind, Plan, StepKey};

/// What is off or loose at one corner: of a group that is alike one line, of what broke its own.
pub fn loose_lines(lang: Lang, sheet: &JobState, rows: &[Row<'_>]) -> Vec<String> {
    let fixing = fitted(sheet).fixing;
    let mut lines: Vec<String> = Vec::new();
    for of_group in rows.chunk_by(|one, next| one.item.group == next.item.group) {
        let alike = of_group.iter().all(|row| {
            let first = of_group.first().map(|first| first.hold);
            row.mishap.is_none() && Some(row.hold) == first
        });
        match of_group {
            [first, _, ..] if alike && first.item.group != ItemKind::Other => {
                let group = text::group(lang, first.item.group, fixing);
                lines.push(line(lang, group, first));
            }
            each => lines.extend(each.iter().map(|row| {
                let item = item_name(lang, sheet, row.item);
                match row.mishap {
                    Some(mishap) => mishap_words(lang, &item, mishap, fixing),
                    None => line(lang, &item, row),
                }
            })),
        }
    }
    lines
}

fn line(lang: Lang, item: &str, row: &Row<'_>) -> String {
    text::loose_row(lang, item, text::hold_state(lang, row.hold))
}

/// Answers that were not as they should be, each with its step.
pub fn wrong_lines(lang: Lang, plan: &Plan, wrong: &[(StepKey, Given)]) -> Vec<String> {
    let line = |(step, given): &(StepKey, Given)| {
        let name = text::step_for(lang, *step, plan.build()).name;
        text::loose_row(lang, name, &given_words(lang, *given, plan.fitted.fixing))
    };
    wrong.iter().map(line).collect()
}

/// An answer in words.
pub fn given_words(lang: Lang, given: Given, fixing: Fixing) -> String {
    match given {
        Given::Row(check, answer) => text::loose_row(
            lang,
            text::check(lang, check, fixing),
            text::answer(lang, answer),
        ),
        Given::Said(answer) => text::answer(lang, answer).to_owned(),
        Given::Picked(pick) => text::pick(lang, pick).to_owned(),
        Given::Felt(felt) => text::felt(lang, felt).to_owned(),
        Given::Done => text::say(lang, Say::Done).to_owned(),
        Given::NotDone => text::say(lang, Say::NotDone).to_owned(),
    }
}

/// Who was last at the car and when, and why it was left, where it was.
pub fn last_line(lang: Lang, last: &Entry) -> String {
    let at = last.at;
    let when = stamp(at.recorded.unwrap_or(at.utc_ms), at.offset_min);
    let who = text::who_when(lang, &last.by, &when);
    match &last.what {
        Event::Interrupted(left) => text::left_by(lang, &who, &left_line(lang, left)),
        _ => text::last_by(lang, &who),
    }
}

/// Why the car was left, and who goes on.
pub fn left_line(lang: Lang, left: &Interrupted) -> String {
    let why = text::interruption(lang, left.why);
    match left.to.as_str() {
        "" => text::left_for(lang, why),
        to => text::handed_to(lang, &text::left_for(lang, why), to),
    }
}

/// What went wrong with an item; of a part that goes back, which one.
pub fn mishap_words(lang: Lang, item: &str, mishap: &Mishap, fixing: Fixing) -> String {
    let what = text::mishap(lang, mishap.kind, fixing);
    match mishap.kind.goes_back() {
        true => text::goes_back(lang, item, what, &mishap.part),
        false => text::mishap_line(lang, item, what, &mishap.part, mishap.minutes),
    }
}
