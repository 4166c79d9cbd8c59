//! The ranking of causes in words and as a drawing, for screens and paper alike.

use super::ReportContext;
use crate::drawing::Drawing;
use crate::drawing::bars::{Bar, bars};
use crate::job::JobState;
use crate::job::diagnosis::{corner_findings, findings};
use crate::sorted::Sorted;
use crate::text::{self, CauseWord, Lang};
use crate::trade::answer::Answer;
use crate::trade::diagnosis::{
    Cause, Clue, Complaint, Findings, LeadsTo, MOST_CERTAIN, Ranked, Standing, TABLE, Worth,
    corners, is_axle_open, is_separated, rank, standing, weight,
};
use crate::trade::vehicle::Corner;
use crate::units::Format;

/// So many causes are drawn.
const DRAWN: usize = 4;

/// What may be said first: the cause that stands out, or that none does.
pub fn standing_line(lang: Lang, format: Format, found: &Findings) -> String {
    match (standing(&TABLE, found), rank(&TABLE, found).first()) {
        (Standing::First(cause, firm), Some(first)) => text::cause_first(
            lang,
            text::cause(lang, cause),
            &format.percent(first.shown()),
            firm,
        ),
        _ => text::cause_word(lang, CauseWord::NotYet).to_owned(),
    }
}

/// The likeliest causes as bars.
pub fn drawing(lang: Lang, format: Format, found: &Findings) -> Drawing {
    let ranking = rank(&TABLE, found);
    let shown: Vec<(Ranked, String)> = ranking
        .into_iter()
        .take(DRAWN)
        .map(|one| (one, format.percent(one.shown())))
        .collect();
    let rows: Vec<Bar<'_>> = shown
        .iter()
        .map(|(one, percent)| Bar {
            name: text::cause(lang, one.cause),
            value: percent,
            size: one.chance,
        })
        .collect();
    bars(&rows)
}

/// The same in words, for those who do not see it.
pub fn drawing_alt(lang: Lang, format: Format, found: &Findings) -> String {
    let ranking = rank(&TABLE, found).into_iter().take(DRAWN);
    let each = ranking.map(|one| chance(lang, format, one));
    each.collect::<Vec<_>>().join(", ")
}

fn chance(lang: Lang, format: Format, one: Ranked) -> String {
    text::cause_chance(
        lang,
        text::cause(lang, one.cause),
        &format.percent(one.shown()),
    )
}

/// What each answer of a test would put first.
pub fn leads_to(lang: Lang, format: Format, worth: &Worth) -> Vec<String> {
    let line = |leads: &LeadsTo| {
        let answer = match leads.answer {
            Answer::Yes if worth.leads_to.iter().all(|it| it.answer == Answer::Yes) => {
                text::clue(lang, leads.clue)
            }
            answer => text::answer(lang, answer),
        };
        let first = leads.first;
        text::cause_led(
            lang,
            answer,
            text::cause(lang, first.cause),
            &format.percent(first.shown()),
        )
    };
    worth.leads_to.iter().map(line).collect()
}

/// A weight below this is no news worth a line.
const LEAST_STEPS: f64 = 0.05;

/// What speaks for a cause and against it, the heaviest first.
pub fn why(lang: Lang, format: Format, found: &Findings, cause: Cause) -> Vec<String> {
    let weighed = |clue: &Clue| (*clue, weight(&TABLE, found, *clue, cause));
    let mut all: Vec<(Clue, f64)> = Clue::ALL.iter().map(weighed).collect();
    all.retain(|(_, steps)| steps.abs() >= LEAST_STEPS);
    all.order_by(|(_, a), (_, b)| b.abs().total_cmp(&a.abs()));
    let line = |(clue, steps): (Clue, f64)| {
        let which = if steps > 0.0 {
            CauseWord::For
        } else {
            CauseWord::Against
        };
        let name = text::clue(lang, clue);
        let name = match found.answer(clue) {
            Answer::No => text::clue_absent(lang, name),
            _ => name.to_owned(),
        };
        text::cause_steps(
            lang,
            &name,
            text::cause_word(lang, which),
            &format.number(steps.abs().exp2(), 1),
        )
    };
    all.into_iter().map(line).collect()
}

/// Each corner with its chance, the likeliest first, and whether front and rear are still alike;
/// nothing where all four are.
pub fn corner_lines(
    lang: Lang,
    format: Format,
    sheet: &JobState,
    complaint: Complaint,
) -> Option<(Vec<String>, bool)> {
    let ranked = corners(&TABLE, &corner_findings(sheet, complaint));
    if !is_separated(&ranked) {
        return None;
    }
    let line = |(corner, chance): &(Corner, f64)| {
        let chance = format.percent(chance.min(MOST_CERTAIN));
        text::corner_chance(lang, text::corner_title(lang, *corner), &chance)
    };
    Some((ranked.iter().map(line).collect(), is_axle_open(&ranked)))
}

/// The line of the report, where the complaint was ranked.
pub(super) fn line(context: &ReportContext) -> Option<String> {
    let corner = context.sheet.corners().first().copied();
    let found = findings(context.sheet, corner)?;
    Some(standing_line(context.lang, context.format, &found))
}
