//! What hangs on an element: attributes, properties and listeners.

use std::cell::RefCell;
use std::rc::Rc;

#[cfg(target_arch = "wasm32")]
use wasm_bindgen::{JsCast, JsValue, prelude::Closure};
use web_sys::Event;

use super::node::Slot;
use super::page::Element;
use super::value::Value;
use crate::ui::react::{Owner, RenderEffect};

/// What is called at an event, and under whom.
#[derive(Clone)]
pub struct Handler {
    owner: Option<Owner>,
    call: Rc<dyn Fn(Event)>,
}

impl Handler {
    #[inline(never)]
    pub fn new(owner: Option<Owner>, call: Box<dyn Fn(Event)>) -> Self {
        let call = Rc::from(call);
        Self { owner, call }
    }

    fn call(&self, event: Event) {
        match &self.owner {
            Some(owner) => owner.with(|| (self.call)(event)),
            None => (self.call)(event),
        }
    }
}

/// Something of an element, by its name.
pub struct Attached {
    element: Element,
    name: &'static str,
    how: How,
}

/// Whether words are set by `setAttribute` or as a property of the element.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Door {
    Attribute,
    Property,
}

enum How {
    Fixed(Value),
    Live(RenderEffect<Value>),
    On(Listener),
    Recorded,
}

/// A listener in the page; its handler can be changed, and is taken out when its view goes.
struct Listener(Rc<RefCell<Option<Handler>>>);

impl Drop for Listener {
    fn drop(&mut self) {
        drop(self.0.take());
    }
}

impl Attached {
    /// Hangs a value on an element that has nothing of that name yet.
    pub fn new(element: Element, name: &'static str, slot: Slot) -> Self {
        let how = match slot {
            Slot::Attribute(value) => bind(&element, name, Door::Attribute, Value::Gone, value),
            Slot::Property(value) => bind(&element, name, Door::Property, Value::Gone, value),
            Slot::On(handler) => How::On(listen(&element, name, handler)),
            Slot::Reference(tell) => {
                tell(&element);
                How::Recorded
            }
            Slot::Child(_) => How::Recorded,
        };
        Self { element, name, how }
    }

    /// The value again, by the same plan.
    pub fn patch(&mut self, slot: Slot) {
        let (door, value) = match (slot, &self.how) {
            (Slot::On(handler), How::On(listener)) => {
                listener.0.replace(Some(handler));
                return;
            }
            (Slot::Reference(tell), _) => {
                tell(&self.element);
                return;
            }
            (Slot::Attribute(value), _) => (Door::Attribute, value),
            (Slot::Property(value), _) => (Door::Property, value),
            (Slot::Child(_) | Slot::On(_), _) => return,
        };
        // An effect that ran before ends before the next begins.
        let old = match std::mem::replace(&mut self.how, How::Recorded) {
            How::Fixed(old) => old,
            How::Live(effect) => effect.take_value().unwrap_or(Value::Gone),
            How::On(_) | How::Recorded => Value::Gone,
        };
        self.how = bind(&self.element, self.name, door, old, value);
    }
}

/// Sets a value now and, where it is live, whenever it changes.
fn bind(element: &Element, name: &'static str, door: Door, old: Value, new: Value) -> How {
    let Value::Live(mut live) = new else {
        set(element, name, door, &old, &new);
        return How::Fixed(new);
    };
    let (element, mut before) = (element.clone(), Some(old));
    How::Live(RenderEffect::new(move |old: Option<Value>| {
        let old = old.or_else(|| before.take()).unwrap_or(Value::Gone);
        let mut new = live();
        while let Value::Live(mut inner) = new {
            new = inner();
        }
        set(&element, name, door, &old, &new);
        new
    }))
}

fn set(element: &Element, name: &str, door: Door, old: &Value, new: &Value) {
    match door {
        // What a person can change may not be what was set last.
        _ if old.is_same(new) && !matches!(name, "value" | "checked") => {}
        Door::Attribute => set_attribute(element, name, new),
        Door::Property => set_property(element, name, new),
    }
}

// The page takes any name and any value that a plan can hold; there is nothing to do if it did not.
fn set_attribute(element: &Element, name: &str, value: &Value) {
    let _ = match value {
        Value::Text(text) => element.set_attribute(name, text),
        Value::Flag(true) => element.set_attribute(name, ""),
        Value::Flag(false) | Value::Gone | Value::Live(_) => element.remove_attribute(name),
    };
}

#[cfg(not(target_arch = "wasm32"))]
fn set_property(element: &Element, name: &str, value: &Value) {
    element.set_property(name, matches!(value, Value::Flag(true) | Value::Text(_)));
    if let Value::Text(text) = value {
        let _ = element.set_attribute(name, text);
    }
}

#[cfg(target_arch = "wasm32")]
fn set_property(element: &Element, name: &str, value: &Value) {
    let value = match value {
        Value::Text(text) => JsValue::from_str(text),
        Value::Flag(flag) => JsValue::from_bool(*flag),
        Value::Gone | Value::Live(_) => JsValue::UNDEFINED,
    };
    let _ = js_sys::Reflect::set(element, &JsValue::from_str(name), &value);
}

fn listen(element: &Element, name: &str, handler: Handler) -> Listener {
    let handler = Rc::new(RefCell::new(Some(handler)));
    let heard = Rc::clone(&handler);
    let called = move |event: Event| {
        // Not held while it is called: it may change what is shown.
        let handler = heard.borrow().clone();
        if let Some(handler) = handler {
            handler.call(event);
        }
    };
    #[cfg(target_arch = "wasm32")]
    {
        // The page frees it with the element.
        let called = Closure::<dyn Fn(Event)>::new(called).into_js_value();
        let _ = element.add_event_listener_with_callback(name, called.unchecked_ref());
    }
    #[cfg(not(target_arch = "wasm32"))]
    element.listen(name, called);
    Listener(handler)
}
