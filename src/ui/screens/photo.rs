//! A picture, or why there is none. The bytes are kept first, then the entry that names them.

use leptos::prelude::*;
use leptos::task::spawn_local;
use web_sys::File;

use crate::exchange::sha256_hex;
use crate::job::entry::{Photo, What};
use crate::platform::picture::{self, MIME};
use crate::platform::record;
use crate::text::Say;
use crate::ui::at::At;
use crate::ui::parts::frame::frame;

/// The picture of a step; the camera opens from one key.
pub fn photo(at: &At) -> AnyView {
    let trouble = RwSignal::new(None::<Say>);
    let lang = at.lang;
    frame(
        at,
        view! {
            {move || {
                trouble.get().map(|say| {
                    view! { <p class="banner" role="alert">{crate::text::say(lang, say)}</p> }
                })
            }}
        },
        camera(at, trouble, true),
    )
}

/// A key that opens the camera, keeps the picture and, if asked to, goes on.
pub fn camera(at: &At, trouble: RwSignal<Option<Say>>, go_on: bool) -> AnyView {
    let here = at.clone();
    let input = NodeRef::<leptos::html::Input>::new();
    let chosen = move |_| {
        let file = input
            .get_untracked()
            .and_then(|input| input.files())
            .and_then(|f| f.get(0));
        if let Some(file) = file {
            take(here.clone(), file, trouble, go_on);
        }
    };
    view! {
        <label class="key key--primary key--file">
            {at.say(Say::TakePicture)}
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
    .into_any()
}

fn take(at: At, file: File, trouble: RwSignal<Option<Say>>, go_on: bool) {
    spawn_local(async move {
        let Ok(scaled) = picture::scaled(&file).await else {
            trouble.set(Some(Say::PhotoUnreadable));
            return;
        };
        let sha256 = sha256_hex(&scaled.bytes);
        let kept = record::Photo {
            mime: MIME.to_owned(),
            bytes: scaled.bytes,
        };
        if at.app.shelf().put_photo(&sha256, kept).await.is_err() {
            trouble.set(Some(Say::StorageFull));
            return;
        }
        let whats = vec![What::Photo(Photo {
            step: at.spec.key,
            sha256,
            mime: MIME.to_owned(),
            width: scaled.size.width,
            height: scaled.size.height,
        })];
        if go_on {
            at.write_and_go_on(whats)
        } else {
            at.write(whats)
        }
    });
}
