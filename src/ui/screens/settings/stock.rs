//! Parts on board: what is there when somebody counts, and below how many it is ordered again.

use crate::ui::react::spawn_local;

use crate::exchange::stock::{OnBoard, on_board};
use crate::job::entry::{Event, LogId, Stock};
use crate::job::kit::{self, typed_stock};
use crate::text::{self, Lang, Ledger, Say};
use crate::ui::parts::draft::Drafts;
use crate::ui::parts::field::Field;
use crate::ui::parts::key::{Look, key};
use crate::ui::parts::today;
use crate::ui::state::App;
use crate::ui::view::prelude::*;

/// The parts of this van, and a form that counts one.
pub fn stock(app: App) -> Node {
    let lang = app.settings.with_untracked(|settings| settings.lang);
    let rows = RwSignal::new(Vec::<OnBoard>::new());
    read(app, rows);
    view! {
        <p class="hint">{text::ledger(lang, Ledger::StockSay)}</p>
        <ul class="van__wrenches">
            {move || rows.with(|rows| rows.iter().filter_map(|it| line(lang, it)).collect_view())}
        </ul>
        {count(app, lang, rows)}
    }
}

/// Reads what this phone counted, less what was fitted since.
fn read(app: App, rows: RwSignal<Vec<OnBoard>>) {
    spawn_local(async move {
        let kit = app.kits().await;
        let device = app.shelf().device();
        let mut all = app
            .jobs
            .with_untracked(|jobs| on_board(&kit, jobs, &today()));
        all.retain(|it| it.van == device);
        let _ = rows.try_set(all);
    });
}

fn line(lang: Lang, it: &OnBoard) -> Option<Node> {
    let whole = |number: i64| u16::try_from(number.max(0)).unwrap_or(u16::MAX);
    let left = whole(it.left?);
    let cores = u16::try_from(it.cores).unwrap_or(u16::MAX);
    let says = text::stock_line(lang, &it.number, left, it.least, cores);
    let order = text::ledger(lang, Ledger::ToOrder);
    let order = it
        .is_to_order()
        .then(|| view! { <b class="shop-lists__out">{order}</b> });
    Some(view! { <li><span>{says} {" "} {order}</span></li> })
}

/// Counting a part: it is counted down from here.
fn count(app: App, lang: Lang, rows: RwSignal<Vec<OnBoard>>) -> Node {
    let drafts = Drafts::named(app, format!("{}:stock", kit::LOG));
    let [number, have, least, cores] =
        ["part_number", "part_have", "part_least", "part_cores"].map(|it| drafts.text(it, ""));
    let wrong = RwSignal::new(false);
    let keep = move || {
        let typed = |text: RwSignal<String>| text.get_untracked();
        let stock = typed_stock(&typed(number), &typed(have), &typed(least), &typed(cores));
        wrong.set(stock.is_none());
        if let Some(stock) = stock {
            drafts.dropping()();
            for text in [number, have, least, cores] {
                text.set(String::new());
            }
            write(app, stock, rows);
        }
    };
    let word = move |word| text::ledger(lang, word);
    let slip = move || wrong.get().then(|| word(Ledger::WholePieces));
    view! {
        <details class="more">
            <summary class="key key--foot">{word(Ledger::AddPart)}</summary>
            {Field::capitals("part_number", number).show(word(Ledger::Part), "", drafts, keep)}
            {Field::decimal("part_have", have).show(word(Ledger::PartHave), "", drafts, keep)}
            {Field::decimal("part_least", least).show(word(Ledger::PartLeast), "", drafts, keep)}
            {Field::decimal("part_cores", cores).show(word(Ledger::PartCores), "", drafts, keep)}
            <p class="hint" role="status">{slip}</p>
            {key(Look::Plain, text::say(lang, Say::Keep), keep)}
        </details>
    }
}

fn write(app: App, stock: Stock, rows: RwSignal<Vec<OnBoard>>) {
    spawn_local(async move {
        app.append_to(LogId(kit::LOG.to_owned()), vec![Event::Stock(stock)])
            .await;
        read(app, rows);
    });
}
