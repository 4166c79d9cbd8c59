//! A view as a value, and what can be one.

use std::borrow::Cow;

use wasm_bindgen::JsCast;
use web_sys::Event;

use super::attach::Handler;
use super::page::Element;
use super::value::{IntoValue, Value};
use crate::ui::react::{NodeRef, Owner, event_target_value};
use crate::ui::signal::RwSignal;

/// Something that can stand on a screen: one pointer, whatever it is.
#[derive(Default)]
pub struct Node(pub(super) Option<Box<Body>>);

/// What a node is.
pub(super) enum Body {
    /// Words.
    Text(Cow<'static, str>),
    /// Markup by its plan, and what stands in its holes.
    View(&'static str, Vec<Slot>),
    /// One after the other.
    Many(Vec<Node>),
    /// What is shown again whenever a signal in it changes.
    Live(Box<dyn FnMut() -> Node>),
}

/// What stands in a hole of a plan.
pub(super) enum Slot {
    Child(Node),
    Attribute(Value),
    Property(Value),
    On(Handler),
    Reference(Box<dyn FnOnce(&Element)>),
}

/// Markup whose holes are being filled; `view!` makes it.
pub struct View(&'static str, Vec<Slot>);

// What is generic here only boxes: its bodies are compiled once for each closure of the app.
impl View {
    /// Nothing is in its holes yet.
    #[inline(never)]
    pub fn new(plan: &'static str) -> Self {
        Self(plan, Vec::new())
    }

    /// All holes are filled.
    #[inline(never)]
    pub fn done(self) -> Node {
        Node(Some(Box::new(Body::View(self.0, self.1))))
    }

    #[inline(never)]
    fn put(&mut self, slot: Slot) {
        self.1.push(slot);
    }

    /// What stands between tags.
    #[inline]
    pub fn child(&mut self, child: impl IntoNode) {
        child.to_child(self);
    }

    /// The value of an attribute.
    #[inline]
    pub fn attribute(&mut self, value: impl IntoValue) {
        value.to_attribute(self);
    }

    /// The value of a property.
    #[inline]
    pub fn property(&mut self, value: impl IntoValue) {
        self.put_property(value.into_value());
    }

    /// What is called at an event, under the owner that is now.
    #[inline(never)]
    pub fn on(&mut self, call: Box<dyn Fn(Event)>) {
        self.put(Slot::On(Handler::new(Owner::current(), call)));
    }

    /// A text that is shown and typed.
    #[inline(never)]
    pub fn bind(&mut self, text: RwSignal<String>) {
        self.property(move || text.get());
        self.on(Box::new(move |event| text.set(event_target_value(&event))));
    }

    /// Tells a reference which element it is.
    #[cfg(target_arch = "wasm32")]
    pub fn reference<E>(&mut self, reference: NodeRef<E>)
    where
        E: leptos::html::ElementType + 'static,
        E::Output: JsCast + Clone + 'static,
    {
        use leptos::tachys::html::node_ref::NodeRefContainer;
        let tell = move |element: &Element| NodeRefContainer::<E>::load(reference, element);
        self.put(Slot::Reference(Box::new(tell)));
    }

    /// Tells a reference that its element is there.
    #[cfg(not(target_arch = "wasm32"))]
    pub fn reference<E: JsCast + 'static>(&mut self, reference: NodeRef<E>) {
        self.put(Slot::Reference(Box::new(move |_: &Element| {
            reference.load()
        })));
    }

    #[inline(never)]
    fn put_node(&mut self, node: Node) {
        self.put(Slot::Child(node));
    }

    #[inline(never)]
    fn put_live(&mut self, live: Box<dyn FnMut() -> Node>) {
        self.put(Slot::Child(Node::live(live)));
    }

    #[inline(never)]
    fn put_str(&mut self, text: &'static str) {
        self.put(Slot::Child(Node::text(Cow::Borrowed(text))));
    }

    #[inline(never)]
    fn put_string(&mut self, text: String) {
        self.put(Slot::Child(Node::text(Cow::Owned(text))));
    }

    #[inline(never)]
    pub(super) fn put_attribute(&mut self, value: Value) {
        self.put(Slot::Attribute(value));
    }

    #[inline(never)]
    pub(super) fn put_attribute_str(&mut self, text: &'static str) {
        self.put(Slot::Attribute(Value::Text(Cow::Borrowed(text))));
    }

    #[inline(never)]
    pub(super) fn put_attribute_string(&mut self, text: String) {
        self.put(Slot::Attribute(Value::Text(Cow::Owned(text))));
    }

    #[inline(never)]
    pub(super) fn put_attribute_live(&mut self, live: Box<dyn FnMut() -> Value>) {
        self.put(Slot::Attribute(Value::Live(live)));
    }

    #[inline(never)]
    fn put_property(&mut self, value: Value) {
        self.put(Slot::Property(value));
    }
}

impl Node {
    #[inline(never)]
    fn text(text: Cow<'static, str>) -> Self {
        Self(Some(Box::new(Body::Text(text))))
    }

    #[inline(never)]
    fn live(live: Box<dyn FnMut() -> Self>) -> Self {
        Self(Some(Box::new(Body::Live(live))))
    }

    #[inline(never)]
    fn many(many: Vec<Self>) -> Self {
        Self(Some(Box::new(Body::Many(many))))
    }
}

/// What can be a node.
pub trait IntoNode: Sized {
    /// The node.
    fn into_node(self) -> Node;

    /// Puts it where a view has a hole for it.
    #[inline]
    fn to_child(self, view: &mut View) {
        view.put_node(self.into_node());
    }
}

impl IntoNode for Node {
    #[inline]
    fn into_node(self) -> Node {
        self
    }
}

impl IntoNode for () {
    #[inline]
    fn into_node(self) -> Node {
        Node(None)
    }
}

impl IntoNode for &'static str {
    #[inline]
    fn into_node(self) -> Node {
        Node::text(Cow::Borrowed(self))
    }

    #[inline]
    fn to_child(self, view: &mut View) {
        view.put_str(self);
    }
}

impl IntoNode for String {
    #[inline]
    fn into_node(self) -> Node {
        Node::text(Cow::Owned(self))
    }

    #[inline]
    fn to_child(self, view: &mut View) {
        view.put_string(self);
    }
}

impl IntoNode for Cow<'static, str> {
    #[inline]
    fn into_node(self) -> Node {
        Node::text(self)
    }
}

impl IntoNode for usize {
    #[inline(never)]
    fn into_node(self) -> Node {
        self.to_string().into_node()
    }
}

impl<T: IntoNode> IntoNode for Option<T> {
    #[inline]
    fn into_node(self) -> Node {
        self.map_or(Node(None), T::into_node)
    }
}

impl<T: IntoNode> IntoNode for Vec<T> {
    #[inline]
    fn into_node(self) -> Node {
        self.into_iter().collect_view()
    }
}

impl<F: FnMut() -> T + 'static, T: IntoNode> IntoNode for F {
    #[inline]
    fn into_node(mut self) -> Node {
        Node::live(Box::new(move || self().into_node()))
    }

    #[inline]
    fn to_child(mut self, view: &mut View) {
        view.put_live(Box::new(move || self().into_node()));
    }
}

/// Many nodes out of an iterator.
pub trait CollectView {
    /// One after the other.
    fn collect_view(self) -> Node;
}

impl<I: Iterator<Item = T>, T: IntoNode> CollectView for I {
    fn collect_view(self) -> Node {
        let mut many = Vec::new();
        self.for_each(|one| many.push(one.into_node()));
        Node::many(many)
    }
}
