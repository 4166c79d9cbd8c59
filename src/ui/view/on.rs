//! Handlers, by the name of what happens.

use wasm_bindgen::JsCast;
use web_sys::{DragEvent, Event, KeyboardEvent, MouseEvent, PointerEvent};

use super::node::View;

macro_rules! on {
    ($($event:ty: $($name:ident)*;)*) => {$($(
        #[doc = concat!("At `", stringify!($name), "`.")]
        #[inline]
        pub fn $name(view: &mut View, call: impl Fn($event) + 'static) {
            view.on(Box::new(move |event: Event| call(event.unchecked_into())));
        }
    )*)*};
}

on! {
    MouseEvent: click contextmenu;
    PointerEvent: pointerdown pointerup pointerleave pointercancel pointermove;
    KeyboardEvent: keydown keyup;
    DragEvent: drop dragover dragleave;
    Event: input change blur touchstart touchmove;
}
