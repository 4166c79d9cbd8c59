//! Nodes in the page: how they are built, patched, moved and taken away.

use std::borrow::Cow;

#[cfg(target_arch = "wasm32")]
use leptos::prelude::{Mountable, Render};
#[cfg(target_arch = "wasm32")]
use wasm_bindgen::JsCast;
use wasm_bindgen::UnwrapThrowExt;

use super::attach::Attached;
use super::node::{Body, Node, Slot};
use super::page::{self, Element, Text, document};
use super::plan::{CHILD, CLOSE, Codes, FIXED, NAME, NAMED, OPEN};
use crate::ui::react::RenderEffect;

/// A node in the page.
pub enum Shown {
    /// Nothing: an empty text, to know the place by.
    Nothing(Text),
    /// Words.
    Text(Text, Cow<'static, str>),
    /// Elements by a plan.
    View(Built),
    /// One after the other, and an empty text behind the last.
    Many(Vec<Shown>, Text),
    /// What an effect shows.
    Live(RenderEffect<Shown>),
}

/// What was built by a plan.
pub struct Built {
    plan: &'static str,
    /// What stands in no element of the plan, in order.
    top: Vec<Top>,
    /// What fills its holes, in order.
    parts: Vec<Part>,
}

enum Top {
    Element(Element),
    /// A child, by its place among the parts.
    Child(usize),
}

enum Part {
    Child(Shown),
    Attached(Attached),
}

#[cfg(target_arch = "wasm32")]
impl Render for Node {
    type State = Shown;

    fn build(self) -> Shown {
        build(self)
    }

    fn rebuild(self, shown: &mut Shown) {
        patch(shown, self);
    }
}

#[cfg(target_arch = "wasm32")]
impl Mountable for Shown {
    fn unmount(&mut self) {
        self.leave();
    }

    fn mount(&mut self, parent: &Element, marker: Option<&page::Node>) {
        self.insert(parent, marker);
    }

    fn insert_before_this(&self, child: &mut dyn Mountable) -> bool {
        let first = self.first();
        let parent = first.parent_element();
        if let Some(parent) = &parent {
            child.mount(parent, Some(&first));
        }
        parent.is_some()
    }

    fn elements(&self) -> Vec<Element> {
        let mut elements = Vec::new();
        self.each(&mut |node| elements.extend(node.dyn_ref::<Element>().cloned()));
        elements
    }
}

impl Shown {
    /// Takes it out of the page.
    fn leave(&self) {
        self.each(&mut |node| node.unchecked_ref::<Element>().remove());
    }

    /// Every node of the page that belongs to it and stands in no other of it, in order.
    fn each(&self, look: &mut dyn FnMut(&page::Node)) {
        match self {
            Self::Nothing(text) | Self::Text(text, _) => look(text),
            Self::View(built) => built.each(look),
            Self::Many(many, end) => {
                many.iter().for_each(|one| one.each(look));
                look(end);
            }
            Self::Live(effect) => {
                effect.with_value_mut(|shown| shown.each(look));
            }
        }
    }

    /// The first of them; each has one.
    fn first(&self) -> page::Node {
        let mut first = None;
        self.each(&mut |node| {
            first.get_or_insert_with(|| node.clone());
        });
        first.unwrap_or_else(|| empty().into())
    }

    fn insert(&self, parent: &page::Node, before: Option<&page::Node>) {
        self.each(&mut |node| {
            let _ = parent.insert_before(node, before);
        });
    }
}

impl Built {
    fn each(&self, look: &mut dyn FnMut(&page::Node)) {
        for top in &self.top {
            match top {
                Top::Element(element) => look(element),
                Top::Child(place) => {
                    if let Some(Part::Child(child)) = self.parts.get(*place) {
                        child.each(look);
                    }
                }
            }
        }
    }
}

/// Shows a node as all that stands in an element.
#[cfg(not(target_arch = "wasm32"))]
pub fn show(node: Node, root: &Element) -> Shown {
    let shown = build(node);
    shown.insert(root, None);
    shown
}

fn empty() -> Text {
    document().create_text_node("")
}

/// Builds a node that does not stand in the page yet.
fn build(node: Node) -> Shown {
    match node.0.map(|body| *body) {
        None => Shown::Nothing(empty()),
        Some(Body::Text(text)) => Shown::Text(document().create_text_node(&text), text),
        Some(Body::View(plan, slots)) => Shown::View(Building::new(plan).all(slots)),
        Some(Body::Many(many)) => Shown::Many(many.into_iter().map(build).collect(), empty()),
        Some(Body::Live(mut live)) => Shown::Live(RenderEffect::new(move |old: Option<Shown>| {
            let node = live();
            match old {
                Some(mut shown) => {
                    patch(&mut shown, node);
                    shown
                }
                None => build(node),
            }
        })),
    }
}

/// Shows a node in place of what is shown; what has the same plan keeps its elements.
fn patch(shown: &mut Shown, node: Node) {
    match (&mut *shown, node.0.map(|body| *body)) {
        (Shown::Nothing(_), None) => {}
        (Shown::Text(text, old), Some(Body::Text(new))) => {
            if *old != new {
                text.set_data(&new);
                *old = new;
            }
        }
        (Shown::View(built), Some(Body::View(plan, slots))) if built.plan == plan => {
            for (part, slot) in built.parts.iter_mut().zip(slots) {
                match (part, slot) {
                    (Part::Child(child), Slot::Child(node)) => patch(child, node),
                    (Part::Attached(attached), slot) => attached.patch(slot),
                    (Part::Child(_), _) => {}
                }
            }
        }
        (Shown::Many(old, end), Some(Body::Many(new))) => patch_many(old, end, new),
        (shown, body) => replace(shown, Node(body.map(Box::new))),
    }
}

fn patch_many(old: &mut Vec<Shown>, end: &Text, new: Vec<Node>) {
    let count = new.len();
    let mut new = new.into_iter();
    // One by one as long as there are two of them; what was built first is patched first.
    old.iter_mut()
        .zip(new.by_ref())
        .for_each(|(shown, node)| patch(shown, node));
    if let Some(parent) = end.parent_node() {
        for node in new {
            let shown = build(node);
            shown.insert(&parent, Some(end));
            old.push(shown);
        }
    }
    for gone in old.drain(count.min(old.len())..) {
        gone.leave();
    }
}

fn replace(shown: &mut Shown, node: Node) {
    let new = build(node);
    let first = shown.first();
    if let Some(parent) = first.parent_node() {
        new.insert(&parent, Some(&first));
    }
    // It leaves the page before its listeners and effects end.
    let old = std::mem::replace(shown, new);
    old.leave();
}

/// What stands in an `svg` belongs to its namespace.
const SVG: &str = "http://www.w3.org/2000/svg";

/// Elements that are being built by a plan.
struct Building {
    built: Built,
    /// The elements that are open, and whether each belongs to a drawing.
    open: Vec<(Element, bool)>,
    name: &'static str,
}

impl Building {
    fn new(plan: &'static str) -> Self {
        let (top, parts) = (Vec::new(), Vec::new());
        Self {
            built: Built { plan, top, parts },
            open: Vec::new(),
            name: "",
        }
    }

    fn all(mut self, slots: Vec<Slot>) -> Built {
        self.built.parts.reserve_exact(slots.len());
        let mut slots = slots.into_iter();
        for (code, words) in Codes(self.built.plan) {
            match code {
                OPEN => self.open(words),
                CLOSE => self.close(),
                NAME => self.name = words,
                FIXED => {
                    if let Some((element, _)) = self.open.last() {
                        let _ = element.set_attribute(self.name, words);
                    }
                }
                NAMED => self.attach(slots.next()),
                CHILD => self.child(slots.next()),
                _ => {}
            }
        }
        self.built
    }

    fn open(&mut self, name: &str) {
        let drawn = name == "svg" || self.open.last().is_some_and(|(_, drawn)| *drawn);
        let namespace = drawn.then_some(SVG);
        let made = match namespace {
            Some(_) => document().create_element_ns(namespace, name),
            None => document().create_element(name),
        };
        // The names of tags are names.
        self.open.push((made.unwrap_throw(), drawn));
    }

    fn close(&mut self) {
        let Some((element, _)) = self.open.pop() else {
            return;
        };
        match self.open.last() {
            Some((parent, _)) => {
                let _ = parent.append_child(&element);
            }
            None => self.built.top.push(Top::Element(element)),
        }
    }

    fn attach(&mut self, slot: Option<Slot>) {
        if let (Some((element, _)), Some(slot)) = (self.open.last(), slot) {
            let attached = Attached::new(element.clone(), self.name, slot);
            self.built.parts.push(Part::Attached(attached));
        }
    }

    fn child(&mut self, slot: Option<Slot>) {
        let Some(Slot::Child(node)) = slot else {
            return;
        };
        let shown = build(node);
        match self.open.last() {
            Some((parent, _)) => shown.insert(parent, None),
            None => self.built.top.push(Top::Child(self.built.parts.len())),
        }
        self.built.parts.push(Part::Child(shown));
    }
}
