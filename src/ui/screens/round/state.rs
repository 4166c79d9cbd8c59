//! One round as it stands: in the record, in its drafts, and on the screen.

use crate::ui::react::*;

use crate::job::entry::{Event, Side};
use crate::job::round::{Last, Place, Typing, begun, pushed, saved};
use crate::text::{self, Say};
use crate::trade::play::{Dial, RoundError};
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::signal::RwSignal;
use crate::units::{Decimal, Format, Length};

/// The drafts of a round: the side that is set, the number of each side, and whether the pad is
/// open. The pull has one of its own, so that no push is ever taken for it.
const DRAFTS: [&str; 4] = ["side", "push", "pull", "pad"];

/// What is on the screen of one round.
#[derive(Clone)]
pub(super) struct Reading {
    pub(super) at: StepContext,
    pub(super) place: Place,
    pub(super) dial: Dial,
    /// The number being set, in divisions, as text.
    pub(super) text: RwSignal<String>,
    /// The push reading of a dial that was not at zero; none while it is at zero.
    pub(super) push: RwSignal<Option<String>>,
    /// Whole turns of the needle where they were asked for, and the pull they belong to.
    pub(super) turns: RwSignal<Option<(String, i32)>>,
    /// Which of the two readings is being set.
    pub(super) side: RwSignal<Side>,
    pub(super) typing: RwSignal<bool>,
    /// Whether the needle was brought anywhere: where it stands by itself nobody has read it.
    pub(super) set: RwSignal<bool>,
    /// Whether the hub was pushed and pulled in this round: the paced count came to its end, or
    /// the push was recorded.
    pub(super) moved: RwSignal<bool>,
    /// The whole reading of the round before.
    pub(super) last: Option<Last>,
    pub(super) drafts: Drafts,
}

impl Reading {
    /// The round as it stands in the record and in its drafts.
    pub(super) fn begin(at: &StepContext, place: Place) -> Self {
        let drafts = Drafts::of(at);
        let push = begun(at.sheet(), place).map(|push| push.divisions.as_typed().to_owned());
        let side = match push {
            Some(_) => Side::Pull,
            None => drafts.word("side", Side::Pull).get_untracked(),
        };
        let text = drafts.text(side.code(), "");
        let pad = drafts.text("pad", "").get_untracked();
        Self {
            place,
            dial: at.sheet().dial(),
            set: RwSignal::new(text.with_untracked(|text| !text.is_empty())),
            text,
            moved: RwSignal::new(push.is_some()),
            typing: RwSignal::new(pad == "open" || push.is_some() || side == Side::Push),
            push: RwSignal::new(push),
            turns: RwSignal::new(None),
            side: RwSignal::new(side),
            last: Last::before(at.sheet(), place),
            drafts,
            at: at.clone(),
        }
    }

    /// Keeps what is being set, at each key.
    pub(super) fn keep_draft(&self) {
        let (text, side, typing, drafts) = (self.text, self.side, self.typing, self.drafts);
        Effect::new(move |before: Option<()>| {
            let (number, side, pad) = (text.get(), side.get(), typing.get());
            if before.is_some() {
                let pad = if pad { "open" } else { "" };
                drafts.set_all(&[(side.code(), &number), ("side", side.code()), ("pad", pad)]);
            }
        });
    }

    /// The whole reading of the round before, where this round can say it again.
    pub(super) fn same(&self) -> Option<&Last> {
        let last = self.last.as_ref()?;
        let empty = self.text.with(String::is_empty) && !self.set.get();
        let can = || last.can_repeat(self.at.sheet(), self.place);
        (self.moved.get() && empty && can()).then_some(last)
    }

    /// Writes the entries of the round, drops its drafts and goes on.
    pub(super) fn write(&self, whats: Option<Vec<Event>>) {
        let Some(whats) = whats else { return };
        let app = self.at.app;
        let go_on = app.going_on(self.at.way_on());
        let drop_drafts = self.drafts.dropping_of(&DRAFTS);
        app.append_then(whats, move || {
            drop_drafts();
            go_on();
        });
    }

    /// The play as it would be kept now.
    pub(super) fn play(&self) -> Option<Result<Length, RoundError>> {
        self.typed(|typing| typing.play(&self.dial))
    }

    /// What is on the screen; the turns hold for the number they were told of alone.
    pub(super) fn typed<T>(&self, then: impl FnOnce(Typing<'_>) -> T) -> T {
        let (push, pull) = (self.push.get(), self.text.get());
        let turns = self.turns.get().filter(|(of, _)| *of == pull);
        then(Typing {
            push: push.as_deref(),
            pull: &pull,
            turns: turns.map(|(_, turns)| turns),
        })
    }

    pub(super) fn is_pushing(&self) -> bool {
        self.side.get() == Side::Push
    }

    /// Whether there is a reading: the needle was set, or a number is being typed.
    pub(super) fn is_read(&self) -> bool {
        self.set.get() || self.typing.get()
    }

    /// Brings the needle to a place.
    pub(super) fn put(&self, text: String) {
        self.text.set(text);
        self.set.set(true);
    }

    pub(super) fn can_keep(&self) -> bool {
        if !self.is_read() {
            return false;
        }
        if self.is_pushing() {
            return self.text.with(|text| Decimal::parse(text).is_ok());
        }
        matches!(self.play(), Some(Ok(_)))
    }

    /// Keeps the push, which shows the round again at its pull, or the whole round.
    pub(super) fn keep(&self) {
        if self.side.get_untracked() == Side::Push {
            let text = self.text.get_untracked();
            let push = pushed(self.at.sheet(), self.place, &text);
            let drop_drafts = self.drafts.dropping_of(&DRAFTS);
            if let Some(push) = push {
                self.at.app.append_then(vec![push], drop_drafts);
            }
            return;
        }
        let whats = self.typed(|typing| saved(self.at.sheet(), self.place, typing));
        self.write(whats);
    }

    pub(super) fn primary(&self) -> String {
        let lang = self.at.lang;
        if self.is_pushing() {
            return self.at.say(Say::PushReading).to_owned();
        }
        let value = self.text.with(|text| self.at.fmt.marked(text));
        text::keep_value(lang, &value)
    }

    /// What is read is told in the unit of the dial first.
    pub(super) fn fmt(&self) -> Format {
        self.at.fmt.first_in(self.dial.system())
    }

    /// The number as it is read; a dash before there is one.
    pub(super) fn shown(&self, fmt: Format) -> String {
        let text = self.text.get();
        if text.is_empty() || !self.is_read() {
            return "–".to_owned();
        }
        fmt.marked(&text)
    }

    /// The second way; the number begins again.
    pub(super) fn show_pad(&self) {
        self.text.set(String::new());
        self.typing.set(true);
    }

    /// Back from the pad to the needle, which was read where a number was typed.
    pub(super) fn show_dial(&self) {
        self.set
            .set(self.text.with_untracked(|text| !text.is_empty()));
        self.typing.set(false);
    }

    /// The dial was not at zero: push first, then pull. Or it was, after all.
    pub(super) fn turn_zeroed(&self) {
        let two = self.push.get_untracked().is_none() && self.side.get_untracked() == Side::Pull;
        self.push.set(None);
        self.side.set(if two { Side::Push } else { Side::Pull });
        self.text.set(String::new());
    }
}
