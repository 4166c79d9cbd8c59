//! What scrolls on a step ends between two lines: nothing of it is seen half.

use std::cell::Cell;
use std::rc::Rc;

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, HtmlElement, MutationObserver, MutationObserverInit, Node};

use super::clock;
use super::cut::{Block, above, below};
use super::edge::scroller;
use super::event::Listener;
use super::js;

/// What a text stands in, where nothing else stands in it.
const TEXTS: [&str; 7] = ["P", "H1", "H2", "LI", "DT", "DD", "SMALL"];
/// What is seen as a whole.
const BLOCKS: &str =
    "p, h1, h2, li, dt, dd, small, button, summary, a, svg, img, canvas, input, textarea, audio";
/// How long the screen is at rest before it is looked at, in milliseconds.
const REST_MS: i32 = 120;

/// The watch over what scrolls; ends when dropped.
#[derive(Debug)]
#[must_use = "the watch ends when the guard is dropped"]
pub struct Whole {
    observer: MutationObserver,
    _changed: Closure<dyn FnMut()>,
    _resized: Option<Listener>,
    _scrolled: Option<Listener>,
}

/// From now on what scrolls below `root` and goes on by a key is cut between its blocks and lines,
/// whenever something changed and the screen is at rest again. `None` where the browser cannot tell.
pub fn keep_whole(root: &Node) -> Option<Whole> {
    let latest = Rc::new(Cell::new(0_u32));
    let soon = move |ms| {
        let nth = latest.get().wrapping_add(1);
        latest.set(nth);
        let latest = Rc::clone(&latest);
        clock::later(ms, move || {
            if latest.get() == nth {
                trim();
            }
        });
    };
    let (later, resized) = (soon.clone(), soon.clone());
    let changed = Closure::<dyn FnMut()>::new(move || soon(0));
    let observer = MutationObserver::new(changed.as_ref().unchecked_ref()).ok()?;
    let init = MutationObserverInit::new();
    init.set_child_list(true);
    init.set_subtree(true);
    init.set_character_data(true);
    init.set_attribute_filter(&js_sys::Array::of1(&"hidden".into()));
    observer.observe_with_options(root, &init).ok()?;
    Some(Whole {
        observer,
        _changed: changed,
        _resized: Listener::on_window("resize", move |_| resized(REST_MS)),
        _scrolled: Listener::captured("scroll", move |_| {
            clear();
            later(REST_MS);
        }),
    })
}

impl Drop for Whole {
    fn drop(&mut self) {
        self.observer.disconnect();
    }
}

/// Until it is at rest again what scrolls is seen as it is.
fn clear() {
    if let Some(style) = scroller().and_then(style_of) {
        let _ = style.remove_property("clip-path");
    }
}

/// Whether the key that brings on the screen what lies below is there.
fn leads_on() -> bool {
    let key = js::document().and_then(|it| it.query_selector(".step__more:not([hidden])").ok()?);
    key.is_some()
}

fn style_of(element: Element) -> Option<web_sys::CssStyleDeclaration> {
    Some(element.dyn_into::<HtmlElement>().ok()?.style())
}

fn trim() {
    let Some(scroller) = scroller() else { return };
    clear();
    // Only where a key brings the rest: nothing is hidden that nothing leads to.
    if !leads_on() {
        return;
    }
    let (above, under) = cuts(&scroller);
    if let Some(style) = style_of(scroller) {
        let inset = format!("inset({above:.0}px 0 {under:.0}px 0)");
        let _ = style.set_property("clip-path", &inset);
    }
}

/// How much is cut off above and below, in pixels.
fn cuts(scroller: &Element) -> (f64, f64) {
    let edges = scroller.get_bounding_client_rect();
    let blocks = blocks(scroller);
    let bottom = above(edges.bottom(), edges.top(), &blocks);
    let top = below(edges.top(), bottom, &blocks);
    (top - edges.top(), edges.bottom() - bottom)
}

/// How much is cut off below, in whole pixels.
pub(super) fn cut_off(scroller: &Element) -> i32 {
    cuts(scroller).1.ceil() as i32
}

/// Everything that is seen as a whole or line by line.
fn blocks(scroller: &Element) -> Vec<Block> {
    let Ok(all) = scroller.query_selector_all(BLOCKS) else {
        return Vec::new();
    };
    let elements = (0..all.length()).filter_map(|at| all.get(at)?.dyn_into::<Element>().ok());
    elements.filter_map(|element| block(&element)).collect()
}

fn block(element: &Element) -> Option<Block> {
    let edges = element.get_bounding_client_rect();
    if edges.height() < 1.0 {
        return None;
    }
    let name = element.tag_name();
    let alone = element.child_element_count() == 0;
    if !TEXTS.contains(&name.as_str()) || !alone {
        // A row of a list is seen as what stands in it.
        let block = Block {
            top: edges.top(),
            bottom: edges.bottom(),
            line: None,
        };
        return (name != "LI").then_some(block);
    }
    let style = js::window()?.get_computed_style(element).ok()??;
    let pixels = |name: &str| {
        let value = style.get_property_value(name).unwrap_or_default();
        value.trim_end_matches("px").parse::<f64>().ok()
    };
    Some(Block {
        top: edges.top() + pixels("padding-top").unwrap_or(0.0),
        bottom: edges.bottom() - pixels("padding-bottom").unwrap_or(0.0),
        line: pixels("line-height"),
    })
}
