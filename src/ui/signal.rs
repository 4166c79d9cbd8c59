//! Signals of Leptos in one form for every type.
//!
//! What a signal holds stands behind one kind of pointer, so that arena, subscribers and guards are
//! compiled once and not for each type. Tracking, disposal and what happens when a signal is read
//! after its screen went away are Leptos' own.

use std::any::Any;
use std::cell::RefCell;
use std::marker::PhantomData;
use std::rc::Rc;

use crate::ui::react;
use react::{Get as _, GetUntracked as _, LocalStorage, Update as _};
use wasm_bindgen::UnwrapThrowExt;

/// A `RefCell` of what the signal holds.
type Held = Rc<dyn Any>;

/// The one signal of Leptos behind all of ours.
type Inner = react::RwSignal<Held, LocalStorage>;

/// A value that screens follow; as in Leptos it is a name that may be copied.
pub struct RwSignal<T> {
    inner: Inner,
    of: PhantomData<fn() -> T>,
}

impl<T> Clone for RwSignal<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for RwSignal<T> {}

impl<T: Default + 'static> Default for RwSignal<T> {
    fn default() -> Self {
        Self::new(T::default())
    }
}

#[inline(never)]
fn made(held: Held) -> Inner {
    Inner::new_local(held)
}

#[inline(never)]
fn tracked(inner: Inner) -> Held {
    inner.get()
}

#[inline(never)]
fn untracked(inner: Inner) -> Held {
    inner.get_untracked()
}

#[inline(never)]
fn try_untracked(inner: Inner) -> Option<Held> {
    inner.try_get_untracked()
}

/// Tells everybody who read it.
#[inline(never)]
fn changed(inner: Inner) {
    let _ = inner.try_update(|_| ());
}

/// The cell in what is held; it was put there by `new`, for the same type.
#[inline]
fn cell<T: 'static>(held: &Held) -> &RefCell<T> {
    held.downcast_ref::<RefCell<T>>().unwrap_throw()
}

impl<T: 'static> RwSignal<T> {
    /// A signal under the customer that is now.
    #[inline]
    pub fn new(value: T) -> Self {
        let inner = made(Rc::new(RefCell::new(value)));
        let of = PhantomData;
        Self { inner, of }
    }

    /// Reads it; whoever runs now runs again when it changes.
    #[inline]
    pub fn with<R>(self, read: impl FnOnce(&T) -> R) -> R {
        read(&cell(&tracked(self.inner)).borrow())
    }

    /// Reads it without following it.
    #[inline]
    pub fn with_untracked<R>(self, read: impl FnOnce(&T) -> R) -> R {
        read(&cell(&untracked(self.inner)).borrow())
    }

    /// The same, where it may have gone away.
    #[inline]
    pub fn try_with_untracked<R>(self, read: impl FnOnce(&T) -> R) -> Option<R> {
        let held = try_untracked(self.inner)?;
        Some(read(&cell(&held).borrow()))
    }

    /// A copy of it; whoever runs now runs again when it changes.
    #[inline]
    pub fn get(self) -> T
    where
        T: Clone,
    {
        self.with(T::clone)
    }

    /// A copy of it, without following it.
    #[inline]
    pub fn get_untracked(self) -> T
    where
        T: Clone,
    {
        self.with_untracked(T::clone)
    }

    /// The same, where it may have gone away.
    #[inline]
    pub fn try_get_untracked(self) -> Option<T>
    where
        T: Clone,
    {
        self.try_with_untracked(T::clone)
    }

    /// Whoever runs now runs again when it changes.
    #[inline]
    pub fn track(self) {
        drop(tracked(self.inner));
    }

    /// Changes it and tells everybody; nothing where it has gone away.
    #[inline]
    pub fn try_update<R>(self, update: impl FnOnce(&mut T) -> R) -> Option<R> {
        let recorded = self.change(update);
        changed(self.inner);
        recorded
    }

    /// The same.
    #[inline]
    pub fn update(self, update: impl FnOnce(&mut T)) {
        let _ = self.try_update(update);
    }

    /// Changes it and tells nobody.
    #[inline]
    pub fn update_untracked(self, update: impl FnOnce(&mut T)) {
        let _ = self.change(update);
    }

    /// Puts another value in its place and tells everybody; where it has gone away the value comes
    /// back.
    #[inline]
    pub fn try_set(self, value: T) -> Option<T> {
        let Some(held) = try_untracked(self.inner) else {
            return Some(value);
        };
        drop(cell(&held).replace(value));
        changed(self.inner);
        None
    }

    /// The same.
    #[inline]
    pub fn set(self, value: T) {
        let _ = self.try_set(value);
    }

    #[inline]
    fn change<R>(self, update: impl FnOnce(&mut T) -> R) -> Option<R> {
        let held = try_untracked(self.inner)?;
        Some(update(&mut cell(&held).borrow_mut()))
    }
}
