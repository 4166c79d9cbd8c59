//! Reading the removed part: how it was looked at, what is visible, what that points to. Nobody has
//! to; it is offered where the part is in hand, and in the finished job.

use std::sync::Arc;

use crate::drawing::corner;
use crate::job::JobState;
use crate::job::entry::Event;
use crate::job::tally::is_off_or_new;
use crate::text::{self, Lang, RemovedWord, Say};
use crate::trade::damage::{Finding, Inspected, PartReading};
use crate::trade::vehicle::Corner;
use crate::ui::parts::key::{Look, link};
use crate::ui::parts::picks::toggle;
use crate::ui::parts::picture::{drawn, place};
use crate::ui::parts::strip::{banners, of_record};
use crate::ui::route::Route;
use crate::ui::state::{App, Open};
use crate::ui::view::prelude::*;

/// What the parts of this screen share.
#[derive(Clone)]
struct Here {
    app: App,
    open: Arc<Open>,
    corner: Corner,
    lang: Lang,
}

/// The removed part of one corner of the open job.
pub fn removed(app: App, corner: Corner) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    (move || {
        let Some(open) = app.open.get() else {
            return ().into_node();
        };
        let here = Here {
            app,
            open,
            corner,
            lang,
        };
        here.screen()
    })
    .into_node()
}

/// Whether there is a removed part at a corner: its hub is off or new, or the part was read before.
fn can_be_read(sheet: &JobState, corner: Corner) -> bool {
    is_off_or_new(sheet, corner) || sheet.removed_part(corner).is_some()
}

/// The ways to the removed part of each corner where there is one.
pub fn ways(open: &Open, lang: Lang) -> Node {
    let corners = open.sheet.corners().iter();
    let ways = corners.filter(|at| can_be_read(&open.sheet, **at));
    let ways = ways.map(|at| {
        let label = text::read_part_at(lang, text::corner(lang, *at));
        link(
            Look::Plain,
            label,
            Route::Removed(open.log.0.clone(), *at).to_hash(),
        )
    });
    ways.collect_view()
}

impl Here {
    fn word(&self, word: RemovedWord) -> &'static str {
        text::removed(self.lang, word)
    }

    fn screen(&self) -> Node {
        let (lang, open) = (self.lang, &self.open);
        let title = text::corner_title(lang, self.corner);
        let reading = open.sheet.removed_part(self.corner).cloned();
        let outline = corner::small(&[place(self.corner)]);
        let form = match can_be_read(&open.sheet, self.corner) {
            true => self.form(reading.as_ref()),
            false => view! { <p role="alert">{self.word(RemovedWord::NoneHere)}</p> },
        };
        view! {
            <main class="desk removed">
                <header class="removed__head">
                    {drawn(&outline, title, "removed__corner")}
                    <h1>{self.word(RemovedWord::Title)} {": "} {title}</h1>
                </header>
                {banners(self.app)}
                {of_record(open, lang)}
                {form}
                {link(Look::Primary, text::say(lang, Say::Resume), Route::Job(open.log.0.clone()).to_hash())}
            </main>
        }
    }

    fn form(&self, reading: Option<&PartReading>) -> Node {
        let locked = self.open.sheet.read_only();
        let seen = reading.map(|reading| self.seen(reading));
        view! {
            <fieldset class="removed__form" prop:disabled=locked>
                {self.how(reading)}
                {seen}
            </fieldset>
        }
    }

    /// A key that records the reading as it is then.
    fn key(&self, label: impl Into<String>, on: bool, then: PartReading) -> Node {
        let (app, corner) = (self.app, self.corner);
        toggle(
            label,
            move || on,
            move || {
                app.append(vec![Event::RemovedPart(corner, then.clone())]);
            },
        )
    }

    fn how(&self, reading: Option<&PartReading>) -> Node {
        let keys = Inspected::ALL.iter().map(|how| {
            let on = reading.is_some_and(|reading| reading.inspected == *how);
            let then =
                reading.map_or_else(|| PartReading::new(*how), |reading| reading.looked_at(*how));
            self.key(text::inspected(self.lang, *how), on, then)
        });
        let ask = self.word(RemovedWord::HowAsk);
        view! {
            <div class="picks" role="group" aria-label=ask>
                <h2>{ask}</h2>
                <div class="picks__keys picks__keys--long">{keys.collect_view()}</div>
            </div>
            <p class="step__caution">{self.word(RemovedWord::CutCaution)}</p>
        }
    }

    /// What can be seen on a part that was looked at in this way; nothing where it was not.
    fn seen(&self, reading: &PartReading) -> Option<Node> {
        let shown = |it: &&Finding| reading.inspected.shows(**it);
        let rows = Finding::ALL.iter().filter(shown);
        let rows: Vec<Node> = rows.map(|it| self.row(reading, *it)).collect();
        let ask = self.word(RemovedWord::SeenAsk);
        (!rows.is_empty()).then(|| {
            view! {
                <h2>{ask}</h2>
                <p class="hint">{self.word(RemovedWord::SeenSay)}</p>
                <ul class="removed__rows">{rows}</ul>
            }
        })
    }

    /// One finding with its drawing; what was seen says what it points to.
    fn row(&self, reading: &PartReading, finding: Finding) -> Node {
        let (lang, suspected) = (self.lang, reading.inspected.is_suspected());
        let on = reading.findings().any(|it| it == finding);
        let label = text::finding(lang, finding);
        let points = on.then(|| {
            view! {
                <p><b>{text::points_to(lang, finding, suspected)}</b></p>
                <p>{text::cause_and_change(lang, finding)}</p>
            }
        });
        view! {
            <li class="removed__row">
                {drawn(&finding.drawing(), "", "removed__drawing")}
                {self.key(label, on, reading.turned(finding))}
                {points}
            </li>
        }
    }
}
