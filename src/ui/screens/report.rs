//! The report on the screen, as it is printed: one small match over its blocks.

use leptos::prelude::*;

use crate::report::{Block, Head, Report, Size, Slip};
use crate::text::{self, Lang, ReportWord};
use crate::ui::parts::picture::inserted;

/// The report as a document: page one for the owner, then the technician's pages.
#[component]
pub fn ReportView(
    /// The report.
    report: Report,
    /// The language it is written in.
    lang: Lang,
    /// The address of a picture by the digest of its bytes; nothing until it was read.
    #[prop(into)]
    photo: Callback<String, Option<String>>,
) -> impl IntoView {
    let Report {
        head,
        page_one,
        tear_off: slip,
        technician,
    } = report;
    let (owner, pages) = (head.owner.clone(), head.technician.clone());
    let (for_owner, for_technician) = (owner.clone(), pages.clone());
    let (top, again) = (banner(&head), practice(&head));
    let foot = foot(&head);
    view! {
        <article class="report">
            {top}
            <section class="report__part report__part--owner" aria-label=for_owner>
                <h2 class="report__audience">{owner}</h2>
                {blocks(page_one, lang, photo)}
            </section>
            {slip.map(tear_off)}
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
fn banner(head: &Head) -> AnyView {
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
    .into_any()
}

fn practice(head: &Head) -> Option<AnyView> {
    let words = head.practice.clone()?;
    Some(view! { <p class="report__practice">{words}</p> }.into_any())
}

/// The line that paper repeats on every page.
fn foot(head: &Head) -> AnyView {
    let practice = head
        .practice
        .clone()
        .map(|words| view! { <strong>{words}" "</strong> });
    view! { <p class="report__foot">{practice}{head.foot.clone()}</p> }.into_any()
}

fn blocks(blocks: Vec<Block>, lang: Lang, photo: Callback<String, Option<String>>) -> AnyView {
    let views = blocks.into_iter().map(|block| one(block, lang, photo));
    views.collect_view().into_any()
}

fn one(block: Block, lang: Lang, photo: Callback<String, Option<String>>) -> AnyView {
    match block {
        Block::Heading(words) => view! { <h3>{words}</h3> }.into_any(),
        Block::Subheading(words) => view! { <h4>{words}</h4> }.into_any(),
        Block::Sentence(words) => view! { <p>{words}</p> }.into_any(),
        Block::Small(words) => view! { <p class="report__small">{words}</p> }.into_any(),
        Block::Quote(words) => view! { <blockquote>{words}</blockquote> }.into_any(),
        Block::Notice(words) => {
            view! { <p class="report__notice" role="note">{words}</p> }.into_any()
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
            view! { <ul>{items.collect_view()}</ul> }.into_any()
        }
        Block::Signature { caption, svg } => signature(caption, svg),
        Block::Photo { sha256, caption } => picture(sha256, caption, lang, photo),
    }
}

/// What is true now, larger than anything else on the page.
fn standing(stop: bool, title: String, mark: Option<String>, lines: Vec<String>) -> AnyView {
    let lines = lines.into_iter().map(|line| view! { <p>{line}</p> });
    let mark = mark.map(|mark| {
        view! { <span aria-hidden="true">{inserted(mark, "report__mark")}</span> }
    });
    view! {
        <div class="report__standing" data-stop=stop.then_some("yes")>
            {mark}
            <div>
                <p class="report__now">{title}</p>
                {lines.collect_view()}
            </div>
        </div>
    }
    .into_any()
}

fn drawing(size: Size, svg: String) -> AnyView {
    let class = match size {
        Size::Beside => "report__drawing report__drawing--beside",
        Size::Hand => "report__drawing report__drawing--hand",
        Size::Wide => "report__drawing report__drawing--wide",
    };
    inserted(svg, class)
}

/// Labels with their values.
fn pairs(rows: Vec<(String, String)>) -> AnyView {
    let rows = rows.into_iter().map(|(label, value)| {
        view! { <tr><th scope="row">{label}</th><td>{value}</td></tr> }
    });
    view! { <table class="report__pairs"><tbody>{rows.collect_view()}</tbody></table> }.into_any()
}

/// A table; a narrow screen scrolls it, and a keyboard can too.
fn table(head: Vec<String>, rows: Vec<Vec<String>>) -> AnyView {
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
    .into_any()
}

fn row(cells: Vec<String>) -> AnyView {
    let mut cells = cells.into_iter();
    let name = cells
        .next()
        .map(|cell| view! { <th scope="row">{cell}</th> });
    let rest = cells.map(|cell| view! { <td>{cell}</td> });
    view! { <tr>{name}{rest.collect_view()}</tr> }.into_any()
}

/// What is cut off: its words, and its codes beside them.
fn tear_off(slip: Slip) -> AnyView {
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
    .into_any()
}

fn signature(caption: String, svg: Option<String>) -> AnyView {
    view! {
        <figure class="report__signature">
            {inserted(svg.unwrap_or_default(), "report__strokes")}
            <figcaption>{caption}</figcaption>
        </figure>
    }
    .into_any()
}

/// A picture, or its empty frame until the journal gave its bytes.
fn picture(
    sha256: String,
    caption: String,
    lang: Lang,
    photo: Callback<String, Option<String>>,
) -> AnyView {
    let alt = caption.clone();
    let image = move || match photo.run(sha256.clone()) {
        Some(address) => view! { <img src=address alt=alt.clone()/> }.into_any(),
        None => {
            let words = text::report(lang, ReportWord::NoPicture);
            view! { <p class="report__frame">{words}</p> }.into_any()
        }
    };
    view! {
        <figure class="report__photo">
            {image}
            <figcaption>{caption}</figcaption>
        </figure>
    }
    .into_any()
}
