//! What was recorded, in one line for the screen: a tap that is taken back.

use super::{Reader, ReportContext, entry_line};
use crate::job::JobState;
use crate::job::entry::{Entry, EntryId, Event, Reply};
use crate::text::Lang;
use crate::units::Format;

/// What these entries said: the answer of the one step that they answer, the names of several, or
/// their first where they answer none.
pub fn undone(sheet: &JobState, lang: Lang, format: Format, struck: &[EntryId]) -> String {
    let reader = Reader::default();
    let context = ReportContext::new(sheet, lang, format, &reader);
    let tap: Vec<&Entry> = sheet
        .entries()
        .iter()
        .filter(|entry| struck.contains(&entry.id))
        .collect();
    let answered: Vec<_> = tap
        .iter()
        .filter_map(|entry| match &entry.what {
            Event::Answered(step, reply) => Some((*step, reply, &entry.what)),
            _ => None,
        })
        .collect();
    match answered.as_slice() {
        [] => tap
            .first()
            .map(|entry| entry_line::entry(&context, &entry.what)),
        // A list in one line says less than its name.
        [(step, Reply::Checked(_), _)] => Some(context.step(*step)),
        [(_, _, what)] => Some(entry_line::entry(&context, what)),
        several => {
            let names = several.iter().map(|(step, ..)| context.step(*step));
            Some(names.collect::<Vec<_>>().join("; "))
        }
    }
    .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::entry::Moved;
    use crate::job::group_items;
    use crate::report::sample::{AT, Job};
    use crate::trade::answer::Answer;
    use crate::trade::wheel_end::{Check, Choice, ItemKind, ItemState, Step, StepKey};
    use crate::units::{DecimalMark, System};

    const US: Format = Format {
        system: System::Us,
        decimal: DecimalMark::Dot,
    };

    fn context(tap: Vec<Event>) -> String {
        let mut job = Job::begin(None);
        job.tap(vec![Event::Corners(vec![AT])]);
        let struck = job.tap(tap);
        undone(&job.sheet(), Lang::English, US, &struck)
    }

    fn answered(step: Step, reply: Reply) -> Event {
        Event::Answered(StepKey::at(step, AT), reply)
    }

    #[test]
    fn one_answer_is_named_with_its_step() {
        let said = context(vec![answered(
            Step::SpinHand,
            Reply::Picked(Choice::SmoothQuiet),
        )]);
        assert!(said.contains("Spin by hand"), "{said}");
        assert!(said.contains("Smooth and quiet"), "{said}");
    }

    #[test]
    fn of_a_list_the_name_alone_is_said() {
        let rows = vec![(Check::JackPoint, Answer::Yes)];
        let said = context(vec![answered(Step::LiftStand, Reply::Checked(rows))]);
        assert!(said.contains("Jack and jack stand"), "{said}");
        assert!(!said.contains("Yes"), "{said}");
    }

    #[test]
    fn several_answers_of_one_tap_are_all_named() {
        let said = context(vec![
            answered(Step::LoosenLugNuts, Reply::Done),
            answered(Step::Shove, Reply::Said(Answer::Yes)),
        ]);
        assert!(said.contains("Loosen lug nuts"), "{said}");
        assert!(said.contains("Shove"), "{said}");
    }

    #[test]
    fn a_fastener_is_said_by_its_name() {
        let mut job = Job::begin(None);
        job.tap(vec![Event::Corners(vec![AT])]);
        let items = group_items(&job.sheet(), AT, ItemKind::LugNuts);
        let struck = job.tap(vec![Event::Moved(Moved {
            step: StepKey::at(Step::WheelOff, AT),
            items: items.into_iter().take(1).collect(),
            to: ItemState::Loosened,
            wrench: None,
        })]);
        let said = undone(&job.sheet(), Lang::English, US, &struck);
        assert!(said.contains("Lug nut 1"), "{said}");
    }

    #[test]
    fn nothing_that_is_struck_says_nothing() {
        let job = Job::begin(None);
        let said = undone(&job.sheet(), Lang::English, US, &[]);
        assert_eq!(said, "");
    }
}
