//! How the rig stood, beside the decision: a tip at a slant, which corrects the play, a needle that
//! crept, which makes it less sure, and a rocked play seen at another place, an aid that is never
//! compared.

use crate::job::entry::Event;
use crate::job::judge::Measured;
use crate::job::runout::{RadiusError, radius_typed};
use crate::job::tip_and_drift::{ROCKS_AT, crept_typed, is_rock, tip_typed};
use crate::report::tip_and_drift::lines;
use crate::text::{self, FaceWord};
use crate::trade::play::{Dial, Place};
use crate::trade::vehicle::Corner;
use crate::trade::wheel_end::SetName;
use crate::ui::at::StepContext;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key};
use crate::ui::view::prelude::*;
use crate::units::{Decimal, LengthUnit, System, Unit};

/// What is known at other places, and a field for the distance of each; nothing for a play along
/// the axle.
pub fn seen(at: &StepContext, of: &Measured) -> Option<Node> {
    if !of.set.way().is_some_and(is_rock) {
        return None;
    }
    let (lang, face) = (at.lang, |word| text::face(at.lang, word));
    let recorded = lines(lang, at.fmt, at.sheet(), of)
        .into_iter()
        .map(|line| view! { <p>{line}</p> });
    let unit = unit(at);
    let drafts = Drafts::named(at.app, format!("{}:tip-radius", at.open.log.0));
    let fields = ROCKS_AT.map(|place| (place, field_of(at, drafts, place)));
    let slip: RwSignal<Option<RadiusError>> = RwSignal::new(None);
    let here = at.clone();
    let keep = move || {
        let whats = fields.map(|(place, text)| {
            let radius = text.with_untracked(|text| radius_typed(text, unit))?;
            Ok(radius.map(|radius| Event::TipRadius(place, radius)))
        });
        match whats.into_iter().collect::<Result<Vec<_>, _>>() {
            Ok(whats) => {
                let whats = whats.into_iter().flatten().collect();
                here.app.append_then(whats, drafts.dropping());
            }
            Err(why) => slip.set(Some(why)),
        }
    };
    let keep = StoredValue::new_local(keep);
    let keep = move || keep.with_value(|keep| keep());
    let refused = move || slip.get().map(|why| text::radius_slip(lang, why));
    let fields = fields.map(|(place, text)| {
        let label = format!("{}, {}", text::place(lang, place), unit.symbol());
        Field::decimal(place.code(), text).show(label, "", drafts, keep)
    });
    Some(view! {
        {recorded.collect_view()}
        <details class="more">
            <summary class="key key--foot">{face(FaceWord::SeenElsewhere)}</summary>
            <p class="hint">{face(FaceWord::SeenSay)}</p>
            {fields.into_iter().collect_view()}
            <p role="alert">{refused}</p>
            {key(Look::Plain, face(FaceWord::KeepRadii), keep)}
        </details>
    })
}

/// How far off square the tip stood, where it did: one field, folded away.
pub fn tip(at: &StepContext, corner: Corner, set: SetName) -> Node {
    let lang = at.lang;
    let known = at.sheet().tip_angle(corner, set);
    let one = One {
        name: "tip",
        words: [FaceWord::TipTitle, FaceWord::TipSay, FaceWord::KeepTip],
        known: known.map_or("", |known| known.number.as_typed()),
        recorded: known.map(|known| text::tip_line(lang, &at.fmt.typed(known).line())),
    };
    one.folded(at, corner, set, move |text| match tip_typed(text) {
        Ok(angle) => Ok(Event::TipAngle(corner, set, angle)),
        Err(why) => Err(text::tip_slip(lang, why)),
    })
}

/// How far the needle crept while nobody touched it, where it did.
pub fn crept(at: &StepContext, corner: Corner, set: SetName, dial: Dial) -> Node {
    let lang = at.lang;
    let known = at.sheet().crept(corner, set).map(Decimal::as_typed);
    let one = One {
        name: "creep",
        words: [
            FaceWord::CreepTitle,
            FaceWord::CreepSay,
            FaceWord::KeepCreep,
        ],
        known: known.unwrap_or(""),
        recorded: known.map(|known| text::creep_line(lang, &at.fmt.marked(known))),
    };
    one.folded(at, corner, set, move |text| {
        match crept_typed(&dial, text) {
            Ok(crept) => Ok(Event::Crept(corner, set, crept)),
            Err(why) => Err(text::creep_slip(lang, why)),
        }
    })
}

/// One number of a set that is rarely wanted.
struct One<'a> {
    /// Names its draft.
    name: &'static str,
    /// What it is, what for, and the key that keeps it.
    words: [FaceWord; 3],
    /// As it was kept.
    known: &'a str,
    /// What is said of it.
    recorded: Option<String>,
}

impl One<'_> {
    /// Its field, folded away; `read` gives the entry of a text, or why it is none.
    fn folded(
        self,
        at: &StepContext,
        corner: Corner,
        set: SetName,
        read: impl Fn(&str) -> Result<Event, String> + Copy + 'static,
    ) -> Node {
        let [title, say, keep_it] = self.words.map(|word| text::face(at.lang, word));
        let recorded = self.recorded.map(|line| view! { <p>{line} {"."}</p> });
        let (when, nth) = (set.when.code(), set.nth);
        let of = format!("{}:{}", at.open.log.0, self.name);
        let drafts = Drafts::named(at.app, format!("{of}:{}:{when}:{nth}", corner.code()));
        let typed = drafts.text(self.name, self.known);
        let slip: RwSignal<Option<String>> = RwSignal::new(None);
        let app = at.app;
        let keep = move || match typed.with_untracked(|text| read(text)) {
            Ok(what) => app.append_then(vec![what], drafts.dropping()),
            Err(why) => slip.set(Some(why)),
        };
        view! {
            {recorded}
            <details class="more">
                <summary class="key key--foot">{title}</summary>
                {Field::decimal(self.name, typed).show(say, "", drafts, keep)}
                <p role="alert">{move || slip.get()}</p>
                {key(Look::Plain, keep_it, keep)}
            </details>
        }
    }
}

/// The distance of a place as it was kept, in the reader's unit.
fn field_of(at: &StepContext, drafts: Drafts, place: Place) -> RwSignal<String> {
    let known = at.sheet().tip_radius(place);
    let known = known.filter(|known| known.unit == unit(at));
    drafts.text(
        place.code(),
        known.map_or("", |known| known.number.as_typed()),
    )
}

/// What a distance is read in.
fn unit(at: &StepContext) -> LengthUnit {
    match at.fmt.system {
        System::Metric => LengthUnit::Millimetre,
        System::Us => LengthUnit::Inch,
    }
}
