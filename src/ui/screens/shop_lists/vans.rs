//! What the vans have: instruments to be checked, and parts on board.

use crate::ui::react::spawn_local;

use crate::exchange::checks::{ToCheck, to_check};
use crate::exchange::stock::{OnBoard, ToOrder, on_board, to_order};
use crate::exchange::summary::Summary;
use crate::exchange::vans::Vans;
use crate::job::JobState;
use crate::text::{self, Lang, Ledger, ShopWord};
use crate::trade::day::day_of;
use crate::ui::parts::today;
use crate::ui::screens::shop_lists::van_label;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// Instruments and parts of all vans.
pub(super) fn vans(app: App, lang: Lang) -> Node {
    let kits = RwSignal::new(None::<JobState>);
    Effect::new(move |_| {
        // Files that came in may have brought kits.
        app.jobs.track();
        spawn_local(async move {
            let kit = app.kits().await;
            let _ = kits.try_set(Some(kit));
        });
    });
    (move || {
        kits.with(|kits| {
            let kit = kits.as_ref()?;
            Some(app.jobs.with(|jobs| shown(lang, jobs, kit)))
        })
    })
    .into_node()
}

fn shown(lang: Lang, jobs: &[Summary], kit: &JobState) -> Node {
    let vans = Vans::of(jobs);
    let van = |phone: &str| van_label(lang, &vans.name(phone));
    let stocked = on_board(kit, jobs, &today());
    view! {
        <div class="shop-lists__lists">
            {instruments(lang, &due(jobs, kit), &van)}
            {reorder(lang, &to_order(&stocked), &van)}
            {stock(lang, &stocked, &van)}
        </div>
    }
}

fn due(jobs: &[Summary], kit: &JobState) -> Vec<ToCheck> {
    day_of(&today())
        .map(|today| to_check(kit, jobs, today))
        .unwrap_or_default()
}

fn instruments(lang: Lang, all: &[ToCheck], van: &dyn Fn(&str) -> String) -> Option<Node> {
    let row = |it: &ToCheck| {
        let name = it.wrench.clone();
        let name = name.unwrap_or_else(|| text::ledger(lang, Ledger::Dial).to_owned());
        let says = match (it.due, it.by) {
            (Some(due), _) => text::check_due(lang, due),
            (None, Some(day)) => text::check_by(lang, &day.to_string()),
            (None, None) => String::new(),
        };
        view! {
            <li class="shop-lists__tool" data-due={it.due.is_some().to_string()}>
                <b>{name}</b>
                <span>{van(&it.van)}</span>
                <span>{says}</span>
            </li>
        }
    };
    (!all.is_empty()).then(|| {
        view! {
            <section class="jobs">
                <h2>{text::ledger(lang, Ledger::ChecksTitle)}</h2>
                <ul>{all.iter().map(row).collect_view()}</ul>
            </section>
        }
    })
}

/// What is to be ordered, over all vans, with what each still has.
fn reorder(lang: Lang, all: &[ToOrder], van: &dyn Fn(&str) -> String) -> Option<Node> {
    let row = |it: &ToOrder| {
        let vans = it.vans.iter();
        let vans = vans.map(|(phone, left)| text::left_in_van(lang, &van(phone), *left));
        view! {
            <tr>
                <th scope="row">{it.number.clone()}</th>
                <td>{it.order.to_string()}</td>
                <td>{it.left.to_string()}</td>
                <td>{vans.collect::<Vec<_>>().join(", ")}</td>
            </tr>
        }
    };
    let heads = [
        text::ledger(lang, Ledger::Part),
        text::shop_word(lang, ShopWord::ToOrder),
        text::shop_word(lang, ShopWord::InAllVans),
        text::shop_word(lang, ShopWord::VanHead),
    ];
    let heads = heads.map(|head| view! { <th scope="col">{head}</th> });
    (!all.is_empty()).then(|| {
        view! {
            <section class="jobs">
                <h2>{text::shop_word(lang, ShopWord::ReorderTitle)}</h2>
                <table class="shop-lists__parts">
                    <thead><tr>{heads.into_iter().collect_view()}</tr></thead>
                    <tbody>{all.iter().map(row).collect_view()}</tbody>
                </table>
            </section>
        }
    })
}

fn stock(lang: Lang, all: &[OnBoard], van: &dyn Fn(&str) -> String) -> Option<Node> {
    let word = |word| text::ledger(lang, word);
    let row = |it: &OnBoard| {
        let left = it.left.map_or_else(
            || word(Ledger::NotCounted).to_owned(),
            |left| left.to_string(),
        );
        let order = it.is_to_order();
        let order = order.then(|| view! { <b class="shop-lists__out">{word(Ledger::ToOrder)}</b> });
        view! {
            <tr>
                <th scope="row">{it.number.clone()} {" "} <small>{van(&it.van)}</small></th>
                <td>{left} {" "} {order}</td>
                <td>{it.today}</td>
                <td>{it.cores}</td>
            </tr>
        }
    };
    let heads = [Ledger::Part, Ledger::Left, Ledger::Today, Ledger::Cores];
    let heads = heads.map(|head| view! { <th scope="col">{word(head)}</th> });
    (!all.is_empty()).then(|| {
        view! {
            <section class="jobs">
                <h2>{word(Ledger::StockTitle)}</h2>
                <p class="hint">{word(Ledger::StockSay)}</p>
                <table class="shop-lists__parts">
                    <thead><tr>{heads.into_iter().collect_view()}</tr></thead>
                    <tbody>{all.iter().map(row).collect_view()}</tbody>
                </table>
            </section>
        }
    })
}
