//! The counts of the shop: shares and means with their ends, of vans and causes, never of persons.

use crate::drawing::spans::{Scale, Span, spans};
use crate::exchange::counted::{self, Minutes, Row};
use crate::exchange::shop_lists::{Lot, lots};
use crate::exchange::summary::Summary;
use crate::exchange::vans::Vans;
use crate::job::tally::Measure;
use crate::text::{self, Desk, Lang, Ledger, RemovedWord, Say};
use crate::trade::damage::LikelyCause;
use crate::trade::wheel_end::Kind;
use crate::ui::parts::key::{Look, link};
use crate::ui::parts::picture::drawn;
use crate::ui::parts::shares::{shares, shares_noted};
use crate::ui::parts::strip::banners;
use crate::ui::route::Route;
use crate::ui::screens::shop_lists::van_label;
use crate::ui::state::App;
use crate::ui::view::prelude::*;
use crate::units::Format;

/// Everything that is counted over all jobs.
pub fn counts(app: App) -> Node {
    let (lang, fmt) = app.settings.with_untracked(|it| (it.lang, it.format()));
    let word = |word| text::ledger(lang, word);
    view! {
        <main class="desk desk--wide counts">
            <header class="desk__head">
                <h1>{word(Ledger::CountsTitle)}</h1>
                {link(Look::Foot, text::say(lang, Say::Back), Route::ShopLists.to_hash())}
            </header>
            {banners(app)}
            {move || app.jobs.with(|jobs| all(lang, fmt, jobs))}
        </main>
    }
}

fn all(lang: Lang, fmt: Format, jobs: &[Summary]) -> Node {
    let word = |word| text::ledger(lang, word);
    let vans = Vans::of(jobs);
    let van = |phone: String| match phone.as_str() {
        "" => text::van_name(lang, ""),
        phone => van_label(lang, &vans.name(phone)),
    };
    let of_vans = Measure::ALL.iter().map(|measure| {
        let rows = counted::by_van(jobs, *measure).into_iter();
        let rows: Vec<Row<String>> = rows.map(|row| row.named(van)).collect();
        shares((lang, fmt), text::measure(lang, *measure), &rows)
    });
    let mut shown: Vec<Node> = of_vans.flatten().collect();
    shown.extend(removed_parts(lang, fmt, jobs));
    let causes = counted::causes(jobs).into_iter();
    let causes: Vec<_> = causes
        .map(|row| row.named(|cause| text::came_back_for(lang, cause).to_owned()))
        .collect();
    let heads = (word(Ledger::CausesTitle), word(Ledger::CausesSay));
    shown.extend(shares((lang, fmt), heads, &causes));
    shown.extend(minutes(lang, fmt, &counted::minutes(jobs)));
    let lots = parts(lang, fmt, &lots(jobs));
    if shown.is_empty() && lots.is_none() {
        return view! { <p class="home__empty">{word(Ledger::CountsNothing)}</p> };
    }
    view! {
        <p class="hint">{word(Ledger::CountsSay)}</p>
        <div class="counts__all">{shown}</div>
        {lots}
    }
}

/// The likely causes of removed parts, each with its failure modes.
fn removed_parts(lang: Lang, fmt: Format, jobs: &[Summary]) -> Option<Node> {
    let rows = counted::removed_parts(jobs);
    let notes = rows.iter().map(|it| {
        let modes = it.row.what.map(LikelyCause::modes).unwrap_or_default();
        text::modes_and_cut(lang, &modes, it.cut_open)
    });
    let notes: Vec<String> = notes.collect();
    let name = |cause: Option<LikelyCause>| {
        cause
            .map_or_else(
                || text::removed(lang, RemovedWord::NothingVisible),
                |cause| text::likely_cause(lang, cause),
            )
            .to_owned()
    };
    let rows: Vec<_> = rows.into_iter().map(|it| it.row.named(name)).collect();
    let heads = [RemovedWord::Counts, RemovedWord::CountsSay];
    let [title, say] = heads.map(|word| text::removed(lang, word));
    shares_noted((lang, fmt), (title, say), &rows, &notes)
}

/// Minutes sold beside minutes taken.
fn minutes(lang: Lang, fmt: Format, rows: &[Minutes]) -> Option<Node> {
    if rows.is_empty() {
        return None;
    }
    let word = |word| text::ledger(lang, word);
    let whole = |value| fmt.number(value, 0);
    let named: Vec<(String, String)> = rows
        .iter()
        .map(|row| {
            let kind = Kind::from_code(&row.kind).map_or("", |kind| text::kind(lang, kind));
            let value = format!("{} min", whole(row.real));
            (text::work_on(lang, kind, row.corners), value)
        })
        .collect();
    let pairs = rows.iter().zip(&named);
    let boxes: Vec<Span> = pairs
        .clone()
        .map(|(row, (name, value))| row.span(name, value))
        .collect();
    let most = counted::longest(rows);
    let end = format!("{} min", whole(most));
    let scale = Scale {
        most,
        ends: ("0 min", &end),
    };
    let title = word(Ledger::MinutesTitle);
    let recorded: Vec<String> = named
        .iter()
        .map(|(name, value)| format!("{name} {value}"))
        .collect();
    let alt = text::span_alt(lang, title, &recorded.join(", "));
    let lines = pairs.map(|(row, (name, _))| {
        let over = row.over.map_or_else(
            || word(Ledger::OneJob).to_owned(),
            |over| text::share_between(lang, &whole(over.low), &whole(over.high)),
        );
        view! {
            <tr>
                <th scope="row">{name.clone()}</th>
                <td>{row.n}</td>
                <td>{whole(row.sold)}</td>
                <td>{whole(row.real)}</td>
                <td>{over}</td>
            </tr>
        }
    });
    let heads = [Ledger::Jobs, Ledger::Sold, Ledger::Real, Ledger::Over];
    let heads = heads.map(|head| view! { <th scope="col">{word(head)}</th> });
    Some(view! {
        <section class="counts__one">
            <h2>{title}</h2>
            <p class="hint">{word(Ledger::MinutesSay)}</p>
            {drawn(&spans(&boxes, scale), &alt, "counts__picture")}
            <table class="shop-lists__parts">
                <thead><tr><td></td>{heads.into_iter().collect_view()}</tr></thead>
                <tbody>{lines.collect_view()}</tbody>
            </table>
        </section>
    })
}

/// Parts and lots with how many came back; nothing where none was told.
fn parts(lang: Lang, fmt: Format, lots: &[Lot]) -> Option<Node> {
    let row = |lot: &Lot| {
        let share = lot.share.map_or_else(String::new, |share| {
            text::share_between(lang, &fmt.percent(share.low), &fmt.percent(share.high))
        });
        let mark = lot.stands_out.then(|| {
            view! { <b class="shop-lists__out">{text::desk(lang, Desk::StandsOut)}</b> }
        });
        view! {
            <tr>
                <th scope="row">{lot.part.number.clone()} {" "} <small>{lot.part.lot.clone()}</small></th>
                <td>{lot.fitted}</td>
                <td>{text::of_asked(lang, lot.came_back, lot.asked)}</td>
                <td>{share} {" "} {mark}</td>
            </tr>
        }
    };
    (!lots.is_empty()).then(|| {
        view! {
            <section class="jobs">
                <h2>{text::desk(lang, Desk::ShopParts)}</h2>
                <p class="hint">{text::desk(lang, Desk::ShopPartsSay)}</p>
                <table class="shop-lists__parts">
                    <thead>
                        <tr>
                            <th scope="col">{text::desk(lang, Desk::PartAndLot)}</th>
                            <th scope="col">{text::desk(lang, Desk::FittedOn)}</th>
                            <th scope="col">{text::desk(lang, Desk::CameBack)}</th>
                            <th scope="col">{text::desk(lang, Desk::ShareHead)}</th>
                        </tr>
                    </thead>
                    <tbody>{lots.iter().map(row).collect_view()}</tbody>
                </table>
            </section>
        }
    })
}
