//! The report on the screen, as it is printed: one small match over its blocks.

use crate::report::{Block, Head, Report, Size, Slip};
use crate::text::{self, Lang, Pay, ReportWord};
use crate::ui::parts::bytes::Addresses;
use crate::ui::parts::picture::inserted;
use crate::ui::view::prelude::*;

/// The report as a document: page one for the customer, then the technician's pages.
pub fn document(report: Report, lang: Lang, photo: Addresses) -> Node {
    let Report {
        head,
        page_one,
        tear_off: slip,
        invoices,
        technician,
    } = report;
    let (customer, pages) = (head.customer.clone(), head.technician.clone());
    let (for_customer, for_technician) = (customer.clone(), pages.clone());
    let invoices = invoices.into_iter().map(|page| {
        let label = text::pay(lang, Pay::Invoice);
        view! {
            <section class="report__part report__part--invoice" aria-label=label>
                {blocks(page, lang, photo)}
            </section>
        }
    });
    let (top, again) = (banner(&head), practice(&head));
    let foot = foot(&head);
    view! {
        <article class="report">
            {top}
            <section class="report__part report__part--customer" aria-label=for_customer>
                <h2 class="report__audience">{customer}</h2>
                {blocks(page_one, lang, photo)}
            </section>
            {slip.map(tear_off)}
            {invoices.collect_view()}
            <section class="report__part report__part--technician" aria-label=for_technician>
                <h2 class="report__audience">{pages}</h2>
                {again}
                {blocks(technician, lang, photo)}
            </section>
            {foot}
        </article>
    }
}

/// The title with what it is about.
fn banner(head: &Head) -> Node {
    let facts = head.facts.iter().cloned().map(|(label, value)| {
        view! { <div><dt>{label}</dt><dd>{value}</dd></div> }
    });
    view! {
        <header class="report__head">
            <h1>{head.title.clone()}</h1>
            {practice(head)}
            <dl>{facts.collect_view()}</dl>
        </header>
    }
}

fn practice(head: &Head) -> Option<Node> {
    let words = head.practice.clone()?;
    Some(view! { <p class="report__practice">{words}</p> })
}

/// The line that paper repeats on every page.
fn foot(head: &Head) -> Node {
    let practice = head
        .practice
        .clone()
        .map(|words| view! { <strong>{words}{" "}</strong> });
    view! { <p class="report__foot">{practice}{head.foot.clone()}</p> }
}

fn blocks(blocks: Vec<Block>, lang: Lang, photo: Addresses) -> Node {
    let views = blocks.into_iter().map(|block| one(block, lang, photo));
    views.collect_view()
}

fn one(block: Block, lang: Lang, photo: Addresses) -> Node {
    match block {
        Block::Heading(words) => view! { <h3>{words}</h3> },
        Block::Subheading(words) => view! { <h4>{words}</h4> },
        Block::Sentence(words) => view! { <p>{words}</p> },
        Block::Small(words) => view! { <p class="report__small">{words}</p> },
        Block::Quote(words) => view! { <blockquote>{words}</blockquote> },
        Block::Notice(words) => {
            view! { <p class="report__notice" role="note">{words}</p> }
        }
        Block::Standing {
            stop,
            title,
            mark,
            lines,
        } => standing(stop, title, mark, lines),
        Block::Drawing { size, svg } => drawing(size, svg),
        Block::Rows(rows) => pairs(rows),
        Block::Table { head, rows } => table(head, rows),
        Block::List(items) => {
            let items = items.into_iter().map(|item| view! { <li>{item}</li> });
            view! { <ul>{items.collect_view()}</ul> }
        }
        Block::Signature { caption, svg } => signature(caption, svg),
        Block::Photo { sha256, caption } => picture(sha256, caption, lang, photo),
    }
}

/// What is true now, larger than anything else on the page.
fn standing(stop: bool, title: String, mark: Option<String>, lines: Vec<String>) -> Node {
    let lines = lines.into_iter().map(|line| view! { <p>{line}</p> });
    let mark = mark.map(|mark| {
        view! { <span aria-hidden="true">{inserted(mark, "report__mark")}</span> }
    });
    view! {
        <div class="report__standing" data-stop={stop.then_some("yes")}>
            {mark}
            <div>
                <p class="report__now">{title}</p>
                {lines.collect_view()}
            </div>
        </div>
    }
}

fn drawing(size: Size, svg: String) -> Node {
    let class = match size {
        Size::Beside => "report__drawing report__drawing--beside",
        Size::Small => "report__drawing report__drawing--small",
        Size::Hand => "report__drawing report__drawing--hand",
        Size::Wide => "report__drawing report__drawing--wide",
    };
    inserted(svg, class)
}

/// Labels with their values.
fn pairs(rows: Vec<(String, String)>) -> Node {
    let rows = rows.into_iter().map(|(label, value)| {
        view! { <tr><th scope="row">{label}</th><td>{value}</td></tr> }
    });
    view! { <table class="report__pairs"><tbody>{rows.collect_view()}</tbody></table> }
}

/// A table; a narrow screen scrolls it, and a keyboard can too.
fn table(head: Vec<String>, rows: Vec<Vec<String>>) -> Node {
    let label = head.join(", ");
    let head = head
        .into_iter()
        .map(|word| view! { <th scope="col">{word}</th> });
    let rows = rows.into_iter().map(row);
    view! {
        <div class="report__scroll" role="region" tabindex="0" aria-label=label>
            <table class="report__table">
                <thead><tr>{head.collect_view()}</tr></thead>
                <tbody>{rows.collect_view()}</tbody>
            </table>
        </div>
    }
}

fn row(cells: Vec<String>) -> Node {
    let mut cells = cells.into_iter();
    let name = cells
        .next()
        .map(|cell| view! { <th scope="row">{cell}</th> });
    let rest = cells.map(|cell| view! { <td>{cell}</td> });
    view! { <tr>{name}{rest.collect_view()}</tr> }
}

/// What is cut off: its words, and its codes beside them.
fn tear_off(slip: Slip) -> Node {
    let codes = slip.codes.into_iter().map(|(svg, caption)| {
        view! {
            <figure class="report__code">
                {inserted(svg, "report__symbol")}
                <figcaption>{caption}</figcaption>
            </figure>
        }
    });
    let name = slip.title.clone();
    view! {
        <section class="report__tear-off" aria-label=name>
            <p class="report__cut">{slip.title}</p>
            <div class="report__keep">
                {slip.sentence.map(|words| view! { <p><strong>{words}</strong></p> })}
                {pairs(slip.rows)}
                {slip.say.map(|words| view! { <p>{words}</p> })}
            </div>
            <div class="report__codes">{codes.collect_view()}</div>
        </section>
    }
}

fn signature(caption: String, svg: Option<String>) -> Node {
    view! {
        <figure class="report__signature">
            {inserted(svg.unwrap_or_default(), "report__strokes")}
            <figcaption>{caption}</figcaption>
        </figure>
    }
}

/// A picture, or its empty frame until the journal gave its bytes.
fn picture(sha256: String, caption: String, lang: Lang, photo: Addresses) -> Node {
    let alt = caption.clone();
    let image = move || match photo.of(&sha256) {
        Some(address) => view! { <img src=address alt={alt.clone()}/> },
        None => {
            let words = text::report(lang, ReportWord::NoPhoto);
            view! { <p class="report__frame">{words}</p> }
        }
    };
    view! {
        <figure class="report__photo">
            {image}
            <figcaption>{caption}</figcaption>
        </figure>
    }
}
