//! The strip at the top of a step: where on the vehicle, which phase and step, what is loose,
//! and whether the last tap is kept.

use crate::drawing::{corner, far};
use crate::job::corners_of;
use crate::job::how_far::how_far;
use crate::job::practice::is_practice;
use crate::platform::journal::Closed;
use crate::platform::record::{Storage, StoreError};
use crate::text::{self, Lang, Say};
use crate::ui::at::StepContext;
use crate::ui::parts::picture::{drawn, place};
use crate::ui::route::Route;
use crate::ui::screens::conflicts;
use crate::ui::state::{App, Keeping, Open};
use crate::ui::view::prelude::*;
use crate::ui::work::progress;

/// The strip of a step.
pub fn strip(at: &StepContext) -> Node {
    let (app, lang) = (at.app, at.lang);
    let corners = corners_of(at.sheet(), at.planned.key);
    let outline = corner::small(&corners.iter().copied().map(place).collect::<Vec<_>>());
    let one = corners.first().filter(|_| corners.len() == 1);
    let title = one.map_or(text::say(lang, Say::AriaCorner), |corner| {
        text::corner_title(lang, *corner)
    });
    let phase = text::phase(lang, at.planned.phase);
    // Where there are several, it is said too.
    let phase = match one.filter(|_| at.sheet().corners().len() > 1) {
        Some(_) => text::at_corner(lang, title, phase),
        None => phase.to_owned(),
    };
    let loose = at.sheet().loose().len();
    let practice = is_practice(at.sheet());
    let id = at.open.log.0.clone();
    view! {
        <header class="strip">
            {practice.then(|| {
                view! { <b class="strip__practice">{text::say(lang, Say::Practice)}</b> }
            })}
            {drawn(&outline, title, "strip__corner")}
            <div class="strip__where">
                <p class="strip__phase">
                    {phase} {" · "} {storage_mark(app)}
                </p>
                <p class="strip__name">{at.name()}</p>
            </div>
            <a class="strip__loose" href={Route::Loose(id).to_hash()}>
                <b>{text::loose_number(lang, loose, at.sheet().is_incomplete())}</b>
                <span>{text::say(lang, Say::LooseWord)}</span>
            </a>
        </header>
        {how_far_line(at)}
    }
}

/// The line under the strip: how far the job is at this step, or at the one that comes next where
/// the step is none of the procedure.
fn how_far_line(at: &StepContext) -> Node {
    let first = at.rows.steps.first().unwrap_or(&at.planned).key;
    let steps = &at.open.steps;
    let here = how_far(steps, first).map(|here| (here, at.planned.phase));
    let next = || {
        let next = at.open.next()?;
        Some((how_far(steps, next.key)?, next.phase))
    };
    match here.or_else(next) {
        Some((here, phase)) => {
            let line = far::far((here.part, here.parts), (here.step - 1, here.steps));
            let title = text::how_far(
                at.lang,
                text::phase(at.lang, phase),
                here.step,
                here.steps,
                here.part,
                here.parts,
            );
            drawn(&line, &title, "strip__far")
        }
        None => drawn(&far::far((0, 0), (0, 0)), "", "strip__far"),
    }
}

/// What must be known of the record before a step of it is read: it is not all here, it cannot be
/// written, or it had ended and is open again.
pub fn of_record(open: &Open, lang: Lang) -> Node {
    let sheet = &open.sheet;
    let said = [
        (sheet.is_incomplete(), text::say(lang, Say::Incomplete)),
        (sheet.read_only(), text::say(lang, Say::ReadOnly)),
        (sheet.is_open_again(), text::open_again(lang)),
    ];
    let said = said.into_iter().filter(|(holds, _)| *holds);
    let said = said.map(|(_, said)| view! { <p class="banner" role="alert">{said}</p> });
    view! { {said.collect_view()} {conflicts::way(open, lang)} }
}

/// Whether the last tap is kept, in a word; silent while all is well.
fn storage_mark(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let word = move || match app.keeping.get() {
        Keeping::Saved => Say::StorageSaved,
        Keeping::Busy => Say::StorageKeeping,
        Keeping::NotYetSafe(_) => Say::StorageSavedNotYetSafe,
        Keeping::NotSaved(_) => Say::StorageNotSaved,
    };
    view! {
        <span class="strip__kept" role="status">
            {move || text::say(lang, word())}
        </span>
    }
}

/// The records that were set aside, by their names.
fn unreadable(app: App, lang: Lang) -> Option<Node> {
    let records = app.unreadable.get();
    (!records.is_empty()).then(|| {
        let names = records.join(", ");
        view! {
            <p class="banner" role="alert">
                {text::say(lang, Say::ProblemUnreadable)} {" "} <small>{names}</small>
            </p>
        }
    })
}

/// What every screen says about storage and new versions until it is mended.
pub fn banners(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let trouble = move || {
        let full = matches!(
            app.keeping.get(),
            Keeping::NotYetSafe(StoreError::Full)
                | Keeping::NotSaved(crate::slate::SaveError::Storage(StoreError::Full))
        );
        if app.closed.get() == Some(Closed::NewerVersion) {
            Some(Say::OldTab)
        } else if full {
            Some(Say::StorageFull)
        } else {
            match app.storage.get() {
                Storage::Safe => None,
                Storage::OnlyBackup => Some(Say::StorageOnlyBackup),
                Storage::OnlyLocal => Some(Say::StorageOnlyLocal),
                Storage::MemoryOnly => Some(Say::StorageDenied),
            }
        }
    };
    view! {
        <div class="banners" data-print="no">
            {progress(app.work, lang)}
            {move || {
                app.thrown_away.get().then(|| {
                    view! {
                        <p class="banner" role="alert">{text::say(lang, Say::ThrownAway)}</p>
                    }
                })
            }}
            {move || {
                app.came_back.get().then(|| {
                    view! {
                        <p class="banner" role="alert">{text::say(lang, Say::CameBack)}</p>
                    }
                })
            }}
            {move || {
                trouble().map(|say| {
                    view! {
                        <p class="banner" role="alert">
                            {text::say(lang, say)}
                        </p>
                    }
                })
            }}
            {move || {
                app.tight.get().map(|left| {
                    let words = text::room_nearly_full(lang, &format!("{left} MB"));
                    view! { <p class="banner" role="alert">{words}</p> }
                })
            }}
            {move || unreadable(app, lang)}
            {move || {
                let here = app.route.with(|route| route.job().is_some());
                (here && app.other_tab.get()).then(|| {
                    view! { <p class="told" role="status">{text::say(lang, Say::OtherTab)}</p> }
                })
            }}
            {move || {
                // At the job alone: elsewhere nobody knows of what it is.
                let here = app.route.with(|route| route.job().is_some());
                let undone = app.undone.get().filter(|_| here);
                undone.map(|words| {
                    view! { <p class="told told--undone" role="status">{words}</p> }
                })
            }}
            {move || {
                app.recorded.get().map(|words| {
                    view! {
                        <p class="told" role="status">
                            {words}
                        </p>
                    }
                })
            }}
        </div>
    }
}
