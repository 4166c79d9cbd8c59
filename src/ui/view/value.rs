//! What an attribute or a property can be.

use std::borrow::Cow;

use super::node::View;

/// The value of an attribute or a property.
pub enum Value {
    /// No attribute.
    Gone,
    /// An attribute without words, or none; a property that is true or false.
    Flag(bool),
    /// Words.
    Text(Cow<'static, str>),
    /// What is set again whenever a signal in it changes.
    Live(Box<dyn FnMut() -> Value>),
}

impl Value {
    /// Whether an attribute reads the same.
    pub(super) fn is_same(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Text(one), Self::Text(other)) => one == other,
            (Self::Flag(true), Self::Flag(true)) => true,
            (Self::Gone | Self::Flag(false), Self::Gone | Self::Flag(false)) => true,
            _ => false,
        }
    }
}

/// What can be the value of an attribute or a property.
pub trait IntoValue: Sized {
    /// The value.
    fn into_value(self) -> Value;

    /// Puts it where a view has a hole for an attribute.
    #[inline]
    fn to_attribute(self, view: &mut View) {
        view.put_attribute(self.into_value());
    }
}

impl IntoValue for Value {
    #[inline]
    fn into_value(self) -> Value {
        self
    }
}

impl IntoValue for &'static str {
    #[inline]
    fn into_value(self) -> Value {
        Value::Text(Cow::Borrowed(self))
    }

    #[inline]
    fn to_attribute(self, view: &mut View) {
        view.put_attribute_str(self);
    }
}

impl IntoValue for String {
    #[inline]
    fn into_value(self) -> Value {
        Value::Text(Cow::Owned(self))
    }

    #[inline]
    fn to_attribute(self, view: &mut View) {
        view.put_attribute_string(self);
    }
}

impl IntoValue for bool {
    #[inline]
    fn into_value(self) -> Value {
        Value::Flag(self)
    }
}

impl<T: IntoValue> IntoValue for Option<T> {
    #[inline]
    fn into_value(self) -> Value {
        self.map_or(Value::Gone, T::into_value)
    }
}

impl<F: FnMut() -> T + 'static, T: IntoValue> IntoValue for F {
    #[inline]
    fn into_value(mut self) -> Value {
        Value::Live(Box::new(move || self().into_value()))
    }

    #[inline]
    fn to_attribute(mut self, view: &mut View) {
        view.put_attribute_live(Box::new(move || self().into_value()));
    }
}
