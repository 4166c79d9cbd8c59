//! Shares as a picture with the same in words under it: a box from end to end, and a table.

use crate::drawing::spans::{Scale, spans};
use crate::exchange::counted::Row;
use crate::text::{self, Lang, Ledger};
use crate::ui::parts::picture::drawn;
use crate::ui::view::prelude::*;
use crate::units::Format;

/// The rows under a title; nothing where nothing was counted.
pub fn shares(
    by: (Lang, Format),
    heads: (&'static str, &'static str),
    rows: &[Row<String>],
) -> Option<Node> {
    shares_noted(by, heads, rows, &[])
}

/// The same with a note under the name of each row.
pub fn shares_noted(
    (lang, fmt): (Lang, Format),
    (title, hint): (&'static str, &'static str),
    rows: &[Row<String>],
    notes: &[String],
) -> Option<Node> {
    let counted: Vec<String> = rows
        .iter()
        .map(|row| text::of_asked(lang, row.of, row.all))
        .collect();
    let pairs = rows.iter().zip(&counted);
    let boxes: Vec<_> = pairs
        .clone()
        .filter_map(|(row, value)| row.span(value))
        .collect();
    if boxes.is_empty() {
        return None;
    }
    let scale = Scale {
        most: 1.0,
        ends: (&fmt.percent(0.0), &fmt.percent(1.0)),
    };
    let recorded: Vec<String> = pairs
        .clone()
        .map(|(row, value)| format!("{} {value}", row.what))
        .collect();
    let alt = text::span_alt(lang, title, &recorded.join(", "));
    let between = |row: &Row<String>| {
        row.share.map_or_else(String::new, |share| {
            text::share_between(lang, &fmt.percent(share.low), &fmt.percent(share.high))
        })
    };
    let lines = pairs.enumerate().map(|(at, (row, value))| {
        let note = notes.get(at).cloned();
        let note = note.map(|note| view! { <small>{note}</small> });
        view! {
            <tr>
                <th scope="row">{row.what.clone()} {" "} {note}</th>
                <td>{value.clone()}</td>
                <td>{between(row)}</td>
            </tr>
        }
    });
    Some(view! {
        <section class="counts__one">
            <h2>{title}</h2>
            <p class="hint">{hint}</p>
            {drawn(&spans(&boxes, scale), &alt, "counts__picture")}
            <table class="shop-lists__parts">
                <thead>
                    <tr>
                        <td></td>
                        <th scope="col">{text::ledger(lang, Ledger::Of)}</th>
                        <th scope="col">{text::ledger(lang, Ledger::Between)}</th>
                    </tr>
                </thead>
                <tbody>{lines.collect_view()}</tbody>
            </table>
        </section>
    })
}
