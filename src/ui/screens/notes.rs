//! The notes of the open job, typed, spoken and pictured, and what is wrong with its record.

use std::sync::Arc;

use crate::job::Problem;
use crate::job::backdate::clocks_disagree;
use crate::job::caption::{CaptionWord, caption, hands_are_clean};
use crate::job::entry::{Caption, Captioned, EntryId, Event, Photo, Voice};
use crate::job::photo::photos;
use crate::text::{self, Lang, Saved, Say};
use crate::trade::wheel_end::StepKey;
use crate::ui::at::StepContext;
use crate::ui::parts::bytes::Addresses;
use crate::ui::parts::camera::{Shot, camera, said};
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::parts::picks::toggle;
use crate::ui::parts::strip::banners;
use crate::ui::parts::talk::talk;
use crate::ui::route::Route;
use crate::ui::screens::conflicts::open_conflicts;
use crate::ui::state::{App, Open};
use crate::ui::view::prelude::*;

/// All notes of the open job.
pub fn notes(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let addresses = Addresses::new();
    (move || {
        let Some(open) = app.open.get() else {
            return ().into_node();
        };
        addresses.read(app, &open);
        let problems = problems(&open, lang);
        let any = !problems.is_empty();
        let problems = problems.into_iter().map(|said| view! { <li>{said}</li> });
        let problems = problems.collect_view();
        let recorded = open.sheet.counting().filter_map(|entry| match &entry.what {
            Event::Note(step, note) => Some(typed(lang, *step, note.clone())),
            Event::Remark(step, remark) => Some(typed(
                lang,
                Some(*step),
                text::remark(lang, *remark).to_owned(),
            )),
            Event::Voice(voice) => Some(spoken(lang, voice, addresses)),
            _ => None,
        });
        let recorded: Vec<Node> = recorded.collect();
        let empty = recorded.is_empty() && photos(&open.sheet).next().is_none();
        let empty = empty.then(|| view! { <p>{text::say(lang, Say::NoNotes)}</p> });
        let back = Route::Job(open.log.0.clone()).to_hash();
        view! {
            <main class="desk notes">
                <h1>{text::say(lang, Say::NotesTitle)}</h1>
                {banners(app)}
                {open_conflicts(app, &open)}
                {any.then(|| view! { <h2>{text::say(lang, Say::ProblemsTitle)}</h2> })}
                <ul class="notes__list">{problems}</ul>
                {(!open.sheet.read_only()).then(|| another(app, &open))}
                {empty}
                <ul class="notes__list">{recorded}</ul>
                {photos_with(app, &open, None, addresses)}
                {link(Look::Primary, text::say(lang, Say::Resume), back)}
            </main>
        }
    })
    .into_node()
}

/// A note of its own: typed, and while there is a step to come spoken or photographed too.
fn another(app: App, open: &Arc<Open>) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let drafts = Drafts::named(app, format!("{}:note", open.log.0));
    let typed = drafts.text("note", "");
    let planned = open.next().cloned();
    let step = planned.as_ref().map(|planned| planned.key);
    let keep = move || {
        let words = typed.get_untracked().trim().to_owned();
        if !words.is_empty() {
            drafts.drop_with_tap();
            app.append(vec![Event::Note(step, words)]);
        }
    };
    let trouble = RwSignal::new(None);
    let at = planned.map(|planned| StepContext::new(app, Arc::clone(open), planned));
    let other = at.map(|at| {
        view! { {talk(&at)} {camera(Shot::beside(&at), trouble, Look::Plain)} }
    });
    view! {
        {Field::words("note", typed).show(text::say(lang, Say::Note), "", drafts, keep)}
        {move || trouble.get().map(|word| said(lang, word))}
        <div class="panel__keys">{key(Look::Plain, text::say(lang, Say::KeepNote), keep)} {other}</div>
    }
}

fn step_name(lang: Lang, step: StepKey) -> String {
    let name = text::step(lang, step.step).name;
    match step.corner {
        Some(corner) => text::step_at(lang, name, corner),
        None => name.to_owned(),
    }
}

fn typed(lang: Lang, step: Option<StepKey>, note: String) -> Node {
    let name = step.map(|key| step_name(lang, key));
    view! { <li><b>{name}</b><span>{note}</span></li> }
}

/// A voice note with its player, or that its sound is on another phone.
fn spoken(lang: Lang, voice: &Voice, addresses: Addresses) -> Node {
    let length = text::seconds(lang, voice.seconds);
    let name = format!("{}, {length}", text::saved(lang, Saved::VoiceNote));
    let (sha, label) = (voice.sha256.clone(), name.clone());
    let player = move || match addresses.of(&sha) {
        Some(url) => {
            let label = label.clone();
            view! { <audio controls src=url aria-label=label></audio> }
        }
        None => missing(lang, addresses, &sha),
    };
    view! {
        <li>
            <b>{step_name(lang, voice.step)}</b>
            <span>{name}</span>
            {player}
        </li>
    }
}

fn missing(lang: Lang, addresses: Addresses, sha: &str) -> Node {
    let missing = addresses.is_missing(sha);
    let words = missing.then(|| view! { <small>{text::saved(lang, Saved::NotHere)}</small> });
    words.into_node()
}

/// The pictures of the open job, or the one of this entry, each with what can be done about it.
pub fn photos_of(app: App, open: &Open, only: Option<&EntryId>) -> Node {
    let addresses = Addresses::new();
    addresses.read(app, open);
    photos_with(app, open, only, addresses)
}

fn photos_with(app: App, open: &Open, only: Option<&EntryId>, addresses: Addresses) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let shown = photos(&open.sheet).filter(|(id, _)| only.is_none_or(|only| only == *id));
    let mut specs: Vec<Node> = shown
        .map(|(id, photo)| photo_card(app, open, id, photo, addresses))
        .collect();
    // The newest is what somebody comes to look at.
    specs.reverse();
    let any = !specs.is_empty() && only.is_none();
    view! {
        {any.then(|| view! { <h2>{text::saved(lang, Saved::Title)}</h2> })}
        <ul class="shots">{specs}</ul>
    }
}

/// One picture: what it shows, what it could show, and the key that takes it again.
fn photo_card(app: App, open: &Open, id: &EntryId, photo: &Photo, addresses: Addresses) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let (name, words) = (
        step_name(lang, photo.step),
        caption_words(lang, open, photo),
    );
    let alt = words.clone().unwrap_or_else(|| name.clone());
    let sha = photo.sha256.clone();
    let image = move || match addresses.of(&sha) {
        Some(url) => view! { <img src=url alt={alt.clone()}/> },
        None => missing(lang, addresses, &sha),
    };
    let trouble = RwSignal::new(None);
    let shot = Shot::again(app, open.log.clone(), photo.step, id.clone());
    let locked = open.sheet.read_only();
    view! {
        <li class="shot">
            {image}
            <p><b>{words}</b> {" "} {name}</p>
            {move || trouble.get().map(|word| said(lang, word))}
            {(!locked).then(|| view! {
                {captions(app, open, photo)}
                {camera(shot, trouble, Look::Plain)}
            })}
        </li>
    }
}

fn caption_words(lang: Lang, open: &Open, photo: &Photo) -> Option<String> {
    match caption(&open.sheet, &photo.sha256) {
        Caption::Step => None,
        Caption::Word(word) => Some(text::caption_word(lang, *word).to_owned()),
        Caption::Words(words) => Some(words.clone()),
    }
}

/// The words that are offered; words of one's own where hands are clean.
fn captions(app: App, open: &Open, photo: &Photo) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let now = caption(&open.sheet, &photo.sha256).clone();
    let say = |caption: Caption, label: &'static str| {
        let (on, sha256) = (now == caption, photo.sha256.clone());
        toggle(
            label,
            move || on,
            move || {
                let (sha256, caption) = (sha256.clone(), caption.clone());
                app.append(vec![Event::Captioned(Captioned { sha256, caption })]);
            },
        )
    };
    let word = |word: &CaptionWord| say(Caption::Word(*word), text::caption_word(lang, *word));
    let words: Vec<Node> = photo.step.step.row().captions.iter().map(word).collect();
    let step = say(Caption::Step, text::saved(lang, Saved::AsTheStep));
    let over = open.sheet.ended().is_some();
    let clean = over || hands_are_clean(open.next().map(|planned| planned.phase));
    let own = if clean {
        own_words(app, open, photo)
    } else {
        view! { <p>{text::saved(lang, Saved::CleanHands)}</p> }
    };
    view! {
        <details class="more">
            <summary class="key key--foot">{text::saved(lang, Saved::CaptionTitle)}</summary>
            <div class="picks__keys">{words} {step}</div>
            {own}
        </details>
    }
}

fn own_words(app: App, open: &Open, photo: &Photo) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let drafts = Drafts::named(app, format!("{}:caption:{}", open.log.0, photo.sha256));
    let typed = drafts.text("caption", "");
    let sha256 = photo.sha256.clone();
    let keep = move || {
        let words = typed.get_untracked().trim().to_owned();
        if words.is_empty() {
            return;
        }
        drafts.drop_with_tap();
        let (sha256, caption) = (sha256.clone(), Caption::Words(words));
        app.append(vec![Event::Captioned(Captioned { sha256, caption })]);
    };
    let label = text::saved(lang, Saved::OwnWords);
    view! {
        {Field::words("caption", typed).show(label, "", drafts, keep.clone())}
        {key(Look::Plain, text::saved(lang, Saved::KeepWords), keep)}
    }
}

/// What is wrong with the record, a sentence each. Values that differ stand above, each with its
/// keys.
fn problems(open: &Open, lang: Lang) -> Vec<String> {
    let all = open.sheet.problems().iter();
    let said = all.filter(|it| !matches!(it, Problem::Disagree(_)));
    let said = said.map(|problem| text::say(lang, problem_text(problem)).to_owned());
    let clocks = clocks_disagree(open.sheet.entries());
    let clocks = clocks.then(|| text::say(lang, Say::ProblemClock).to_owned());
    said.chain(clocks).collect()
}

const fn problem_text(problem: &Problem) -> Say {
    match problem {
        Problem::Missing(_) => Say::ProblemMissing,
        Problem::Lost => Say::ProblemLost,
        Problem::Edited(_) => Say::ProblemEdited,
        Problem::Circle(_) => Say::ProblemCircle,
        Problem::Unknown(_) => Say::ProblemUnknown,
        Problem::Disagree(_) => Say::ProblemConflict,
    }
}
