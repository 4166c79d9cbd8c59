//! The step that is a picture, or why there is none.

use crate::job::entry::{Event, Remark, Reply};
use crate::job::photo::photos;
use crate::text::{self, Saved, Say};
use crate::trade::wheel_end::NotDoneReason;
use crate::ui::at::StepContext;
use crate::ui::parts::camera::{Shot, camera, said};
use crate::ui::parts::frame::frame;
use crate::ui::parts::key::{Look, key, link};
use crate::ui::route::Route;
use crate::ui::screens::mishap::or_wrong;
use crate::ui::screens::{notes, report_screen};
use crate::ui::view::prelude::*;

/// The picture of a step; the camera opens from one key. One that is there can be taken again.
pub fn photo(at: &StepContext) -> Node {
    let there = photos(at.sheet())
        .filter(|(_, photo)| photo.step == at.planned.key)
        .last()
        .map(|(id, _)| id.clone());
    if let Some(id) = there {
        let on = Route::Job(at.open.log.0.clone()).to_hash();
        let body = notes::photos_of(at.app, &at.open, Some(&id));
        return frame(at, body, link(Look::Primary, at.say(Say::Next), on));
    }
    or_wrong(at, asked)
}

fn asked(at: &StepContext, wrong: Option<Node>) -> Node {
    let trouble = RwSignal::new(None);
    let (here, lang) = (at.clone(), at.lang);
    let ways_out = move || trouble.get().map(|_| no_room(&here));
    let body = view! {
        {move || trouble.get().map(|word| said(lang, word))}
    };
    let keys = view! { {camera(Shot::asked(at), trouble, Look::Primary)} {ways_out} {wrong} };
    frame(at, body, keys)
}

/// What can be done where a picture does not fit: take the job along, or go on without one, which
/// the record then says.
fn no_room(at: &StepContext) -> Node {
    let (app, here) = (at.app, at.clone());
    let without = move || {
        let step = here.planned.key;
        here.write_and_go_on(vec![
            Event::Remark(step, Remark::NoRoom),
            Event::Answered(step, Reply::NotDone(NotDoneReason::Other)),
        ]);
    };
    view! {
        {key(Look::Plain, text::saved(at.lang, Saved::ExportWith), move || report_screen::export_with(app))}
        {key(Look::Plain, text::saved(at.lang, Saved::WithoutIt), without)}
    }
}
