//! A key that opens the camera. The bytes are kept first, then the entry that names them.

use crate::ui::react::spawn_local;
use web_sys::File;

use crate::job::entry::{EntryId, Event, LogId, Photo};
use crate::job::photo::retaken;
use crate::platform::photo::{self, MIME};
use crate::platform::record;
use crate::text::{self, Saved, Say};
use crate::trade::wheel_end::StepKey;
use crate::ui::at::StepContext;
use crate::ui::parts::key::Look;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// Why the last picture was not kept.
pub type Trouble = RwSignal<Option<Saved>>;

/// Which picture is taken, and where the job goes then.
#[derive(Clone)]
pub struct Shot {
    app: App,
    log: LogId,
    step: StepKey,
    /// The entry of the picture that this one replaces.
    instead: Option<EntryId>,
    /// What the rows above the step say, and the way on; nothing where it stays.
    on: Option<StepContext>,
}

impl Shot {
    /// A picture of a step that stays where it is.
    pub fn beside(at: &StepContext) -> Self {
        Self {
            app: at.app,
            log: at.open.log.clone(),
            step: at.planned.key,
            instead: None,
            on: None,
        }
    }

    /// A picture that replaces another of the open job.
    pub fn again(app: App, log: LogId, step: StepKey, instead: EntryId) -> Self {
        Self {
            app,
            log,
            step,
            instead: Some(instead),
            on: None,
        }
    }

    /// The picture that a step asks for: with it the step is left.
    pub fn asked(at: &StepContext) -> Self {
        Self {
            on: Some(at.clone()),
            ..Self::beside(at)
        }
    }
}

/// Why it was not kept.
pub fn said(lang: text::Lang, word: Saved) -> Node {
    let room = (word == Saved::PhotoFull).then(|| text::saved(lang, Saved::MakeRoom));
    view! {
        <p class="banner" role="alert">
            {text::saved(lang, word)} {" "} {room}
        </p>
    }
}

/// A key that opens the camera and keeps the picture.
pub fn camera(shot: Shot, trouble: Trouble, look: Look) -> Node {
    let lang = shot.app.settings.with_untracked(|settings| settings.lang);
    let label = match shot.instead {
        Some(_) => text::saved(lang, Saved::TakeAgain),
        None => text::say(lang, Say::TakePhoto),
    };
    let class = match look {
        Look::Primary => "key key--primary key--file",
        Look::Plain | Look::Foot => "key key--file",
    };
    lens(class, label.to_owned(), move |file| {
        take(shot.clone(), file, trouble)
    })
}

/// A key that opens the camera; what becomes of the picture is the caller's.
pub fn lens(class: &'static str, label: String, taken: impl Fn(File) + Clone + 'static) -> Node {
    let input = NodeRef::<crate::ui::react::html::Input>::new();
    let chosen = move |_| {
        let input = input.get_untracked();
        let file = input.as_ref().and_then(|input| input.files()?.get(0));
        if let Some(file) = file {
            taken(file);
        }
        // The same picture may be taken again after it was refused.
        if let Some(input) = input {
            input.set_value("");
        }
    };
    view! {
        <label class=class>
            {label}
            <input
                node_ref=input
                type="file"
                accept="image/*"
                capture="environment"
                class="key__file"
                on:change=chosen
            />
        </label>
    }
}

fn take(shot: Shot, file: File, trouble: Trouble) {
    trouble.set(None);
    // Where the photo was taken: it is scaled and kept meanwhile.
    let then = shot
        .on
        .as_ref()
        .map(|at| (at.forgetting_rows(), at.app.going_on(at.way_on())));
    spawn_local(async move {
        let Ok(scaled) = photo::scaled(&file).await else {
            trouble.try_set(Some(Saved::PhotoUnreadable));
            return;
        };
        let saved = record::Photo {
            mime: MIME.to_owned(),
            bytes: scaled.bytes,
        };
        let (app, log, size) = (shot.app, shot.log.clone(), scaled.size);
        let whats = move |sha256| {
            let new = Photo {
                step: shot.step,
                sha256,
                mime: MIME.to_owned(),
                width: size.width,
                height: size.height,
            };
            let open = app.open.get_untracked();
            match (&shot.instead, &shot.on, open) {
                (Some(old), _, Some(open)) => retaken(&open.sheet, old, new),
                (_, Some(at), _) => [at.recorded(), vec![Event::Photo(new)]].concat(),
                _ => vec![Event::Photo(new)],
            }
        };
        let then = move || {
            if let Some((forget, go_on)) = then {
                forget();
                go_on();
            }
        };
        if app.keep_bytes(&log, saved, whats, then).await.is_err() {
            trouble.try_set(Some(Saved::PhotoFull));
        }
    });
}
