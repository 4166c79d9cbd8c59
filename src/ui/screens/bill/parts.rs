//! The part that was fitted at each corner: its number and the manufacturer's lot.

use super::Bill;
use crate::job::entry::{Event, Part};
use crate::text::{self, Desk, ReportWord};
use crate::trade::vehicle::Corner;
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::view::prelude::*;

/// Number and lot for each corner of the job; nothing before it has one.
pub(super) fn parts(bill: &Bill) -> Option<Node> {
    let corners = bill.open.sheet.corners();
    if corners.is_empty() {
        return None;
    }
    let forms = corners.iter().map(|corner| form(bill, *corner));
    Some(view! {
        <section class="bill__part">
            <h2>{bill.word(ReportWord::Parts)}</h2>
            {forms.collect_view()}
        </section>
    })
}

fn form(bill: &Bill, corner: Corner) -> Node {
    let known = bill.open.sheet.part(corner);
    let name = format!("{}:part:{}", bill.open.log.0, corner.code());
    let drafts = Drafts::named(bill.app, name);
    let (number_name, lot_name) = names(corner);
    let number = drafts.text(number_name, known.map_or("", |part| part.number.as_str()));
    let lot = drafts.text(lot_name, known.map_or("", |part| part.lot.as_str()));
    let app = bill.app;
    let keep = move || {
        let typed = |text: RwSignal<String>| text.get_untracked().trim().to_owned();
        let part = Part {
            corner,
            number: typed(number),
            lot: typed(lot),
        };
        drafts.drop_with_tap();
        app.append(vec![Event::Part(part)]);
    };
    let label = |desk| format!("{}, {}", bill.desk(desk), text::corner(bill.lang, corner));
    view! {
        {Field::capitals(number_name, number).show(label(Desk::PartNumber), "", drafts, keep)}
        {Field::capitals(lot_name, lot).show(label(Desk::PartLot), "", drafts, keep)}
        <button
            type="button"
            class="key"
            prop:disabled={move || number.with(|text| text.trim().is_empty())}
            on:click={move |_| keep()}
        >
            {bill.desk(Desk::KeepPart)}
        </button>
    }
}

/// The names of the two fields; each once on the screen.
const fn names(corner: Corner) -> (&'static str, &'static str) {
    match corner {
        Corner::FrontLeft => ("part_front_left", "lot_front_left"),
        Corner::FrontRight => ("part_front_right", "lot_front_right"),
        Corner::RearLeft => ("part_rear_left", "lot_rear_left"),
        Corner::RearRight => ("part_rear_right", "lot_rear_right"),
    }
}
