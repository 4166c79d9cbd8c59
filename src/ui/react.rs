//! The reactive graph that screens live by: signals, effects, owners, context.
//!
//! In the browser it is Leptos' own. Natively it is the same graph without Leptos, so that what a
//! screen shows is tested without a browser.

#[cfg(target_arch = "wasm32")]
pub use leptos::{html, prelude::*, task::spawn_local};

#[cfg(not(target_arch = "wasm32"))]
pub use native::{NodeRef, event_target_value, html, run, spawn_local, type_into};
#[cfg(not(target_arch = "wasm32"))]
pub use reactive_graph::{
    computed::*, effect::*, graph::untrack, owner::*, prelude::*, signal::*, wrappers::read::*,
};

#[cfg(not(target_arch = "wasm32"))]
mod native {
    //! What Leptos adds to the graph, as far as screens need it where there is no page.

    use std::cell::RefCell;

    use any_spawner::Executor;
    use reactive_graph::owner::{LocalStorage, StoredValue};
    use reactive_graph::traits::{SetValue, UpdateValue};
    use wasm_bindgen::{JsCast, JsValue};

    /// Elements by their tags.
    pub mod html {
        pub type Span = web_sys::HtmlElement;
        pub type Div = web_sys::HtmlElement;
        pub type Video = web_sys::HtmlVideoElement;
        pub type Input = web_sys::HtmlInputElement;
    }

    thread_local! {
        static TYPED: RefCell<String> = const { RefCell::new(String::new()) };
    }

    /// What the next typed event finds in its field.
    pub fn type_into(text: &str) {
        TYPED.with_borrow_mut(|typed| text.clone_into(typed));
    }

    /// What stands in the field that an event came from.
    pub fn event_target_value<T>(_: &T) -> String {
        TYPED.with_borrow(Clone::clone)
    }

    /// Works on what waits, until nothing goes on.
    pub fn run() {
        for _ in 0..64 {
            Executor::poll_local();
        }
    }

    /// Begins work of this thread.
    pub fn spawn_local(work: impl Future<Output = ()> + 'static) {
        Executor::spawn_local(work);
    }

    type Load<E> = Box<dyn FnOnce(E)>;

    /// A name for an element; where there is no page it stands for none.
    pub struct NodeRef<E: 'static>(StoredValue<Option<Load<E>>, LocalStorage>);

    impl<E: 'static> Clone for NodeRef<E> {
        fn clone(&self) -> Self {
            *self
        }
    }

    impl<E: 'static> Copy for NodeRef<E> {}

    impl<E: JsCast + 'static> NodeRef<E> {
        /// A name without an element.
        pub fn new() -> Self {
            Self(StoredValue::new_local(None))
        }

        /// Calls `load` when the element is there.
        pub fn on_load(self, load: impl FnOnce(E) + 'static) {
            self.0.set_value(Some(Box::new(load)));
        }

        /// The element stands where it is shown.
        pub fn load(self) {
            let load = self.0.try_update_value(Option::take).flatten();
            if let Some(load) = load {
                load(JsValue::UNDEFINED.unchecked_into());
            }
        }

        /// The element; none where there is no page.
        pub fn get(self) -> Option<E> {
            None
        }

        /// The same.
        pub fn get_untracked(self) -> Option<E> {
            None
        }

        /// The same, also of a screen that is gone.
        pub fn try_get_untracked(self) -> Option<Option<E>> {
            None
        }
    }
}
