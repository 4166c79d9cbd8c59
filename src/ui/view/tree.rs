//! A page of one's own for tests: elements with attributes, words and listeners, and no browser.

use std::cell::RefCell;
use std::ops::Deref;
use std::rc::{Rc, Weak};

use wasm_bindgen::{JsCast, JsValue};
use web_sys::Event;

type Heard = Rc<dyn Fn(Event)>;

/// Something in the page.
#[derive(Clone)]
pub struct Node(Rc<Inner>);

/// An element is a node with a tag.
pub type Element = Node;

/// Words are a node without one.
#[derive(Clone)]
pub struct Text(Node);

#[derive(Default)]
struct Inner {
    tag: String,
    data: RefCell<String>,
    attributes: RefCell<Vec<(String, String)>>,
    properties: RefCell<Vec<String>>,
    heard: RefCell<Vec<(String, Heard)>>,
    children: RefCell<Vec<Node>>,
    parent: RefCell<Weak<Inner>>,
}

/// Makes what stands in the page.
pub struct Document;

/// The page's document.
pub const fn document() -> Document {
    Document
}

impl Document {
    /// Words that stand nowhere yet.
    pub fn create_text_node(&self, data: &str) -> Text {
        let node = Node(Rc::default());
        data.clone_into(&mut node.0.data.borrow_mut());
        Text(node)
    }

    /// An element that stands nowhere yet.
    pub fn create_element(&self, tag: &str) -> Result<Element, JsValue> {
        Ok(Node(Rc::new(Inner {
            tag: tag.to_owned(),
            ..Inner::default()
        })))
    }

    /// The same in a drawing.
    pub fn create_element_ns(&self, _: Option<&str>, tag: &str) -> Result<Element, JsValue> {
        self.create_element(tag)
    }
}

impl Deref for Text {
    type Target = Node;

    fn deref(&self) -> &Node {
        &self.0
    }
}

impl From<Text> for Node {
    fn from(text: Text) -> Self {
        text.0
    }
}

impl Text {
    /// Other words.
    pub fn set_data(&self, data: &str) {
        data.clone_into(&mut self.0.0.data.borrow_mut());
    }
}

// What the browser may refuse it takes, so that what shows a view reads the same for both.
impl Node {
    fn is(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }

    /// What it stands in.
    pub fn parent_node(&self) -> Option<Self> {
        self.0.parent.borrow().upgrade().map(Self)
    }

    /// Takes it out of the page.
    pub fn remove(&self) {
        if let Some(parent) = self.parent_node() {
            parent.0.children.borrow_mut().retain(|it| !it.is(self));
        }
        *self.0.parent.borrow_mut() = Weak::new();
    }

    /// Puts a node into it, before another or behind the last.
    pub fn insert_before(&self, node: &Self, before: Option<&Self>) -> Result<(), JsValue> {
        node.remove();
        let mut children = self.0.children.borrow_mut();
        let at = before.and_then(|it| children.iter().position(|child| child.is(it)));
        let at = at.unwrap_or(children.len());
        children.insert(at, node.clone());
        *node.0.parent.borrow_mut() = Rc::downgrade(&self.0);
        Ok(())
    }

    /// Puts a node behind the last in it.
    pub fn append_child(&self, node: &Self) -> Result<(), JsValue> {
        self.insert_before(node, None)
    }

    /// Sets an attribute.
    pub fn set_attribute(&self, name: &str, value: &str) -> Result<(), JsValue> {
        self.remove_attribute(name)?;
        let mut attributes = self.0.attributes.borrow_mut();
        attributes.push((name.to_owned(), value.to_owned()));
        Ok(())
    }

    /// Takes an attribute away.
    pub fn remove_attribute(&self, name: &str) -> Result<(), JsValue> {
        self.0.attributes.borrow_mut().retain(|(it, _)| it != name);
        Ok(())
    }

    /// Sets a property that is true or false.
    pub fn set_property(&self, name: &str, is: bool) {
        let mut properties = self.0.properties.borrow_mut();
        properties.retain(|it| it != name);
        if is {
            properties.push(name.to_owned());
        }
    }

    /// Calls `heard` at an event.
    pub fn listen(&self, event: &str, heard: impl Fn(Event) + 'static) {
        let mut all = self.0.heard.borrow_mut();
        all.push((event.to_owned(), Rc::new(heard)));
    }

    /// The node itself, whatever it is taken for.
    #[allow(clippy::extra_unused_type_parameters, reason = "as in the browser")]
    pub const fn unchecked_ref<T>(&self) -> &Self {
        self
    }

    /// Its tag; none for words.
    pub fn tag(&self) -> &str {
        &self.0.tag
    }

    /// The words of an attribute.
    pub fn attribute(&self, name: &str) -> Option<String> {
        let attributes = self.0.attributes.borrow();
        let found = attributes.iter().find(|(it, _)| it == name);
        found.map(|(_, value)| value.clone())
    }

    /// Whether a property is true.
    pub fn is_set(&self, name: &str) -> bool {
        let properties = self.0.properties.borrow();
        properties.iter().any(|it| it == name) || self.attribute(name).is_some()
    }

    /// What stands in it.
    pub fn children(&self) -> Vec<Self> {
        self.0.children.borrow().clone()
    }

    /// All its words, as they are read.
    pub fn words(&self) -> String {
        let mut words = self.0.data.borrow().clone();
        for child in self.children() {
            // A drawing has no words.
            if child.tag() != "svg" && !child.is_set("hidden") {
                words.push_str(&child.words());
                let flows = matches!(child.tag(), "" | "b" | "span" | "small" | "a");
                words.push_str(if flows { "" } else { " " });
            }
        }
        words
    }

    /// What happens to it, as the person does it.
    pub fn fire(&self, event: &str) -> bool {
        let heard: Vec<Heard> = {
            let all = self.0.heard.borrow();
            let of = all.iter().filter(|(name, _)| name == event);
            of.map(|(_, heard)| Rc::clone(heard)).collect()
        };
        for call in &heard {
            call(JsValue::UNDEFINED.unchecked_into());
        }
        !heard.is_empty()
    }

    /// Everything in it that `is` holds for, in order, of what is not hidden.
    pub fn all(&self, is: &dyn Fn(&Self) -> bool) -> Vec<Self> {
        let mut all = Vec::new();
        for child in self.children() {
            if child.is_set("hidden") {
                continue;
            }
            if is(&child) {
                all.push(child.clone());
            }
            all.extend(child.all(is));
        }
        all
    }

    /// Whether it is dead: by itself, or by a fieldset around it.
    pub fn is_dead(&self) -> bool {
        let set = self.is_set("disabled") && matches!(self.tag(), "button" | "fieldset" | "input");
        set || self.parent_node().is_some_and(|it| it.is_dead())
    }
}
