//! Forms: which fields a type has in JSON. Each field is named once, for reading and for writing.

use chrono::NaiveDate;

use super::{Json, Out};
use crate::trade::day::day_of;
use crate::units::double;
use crate::word::Word;

/// A type that stands in JSON.
pub(crate) trait Form: Sized {
    /// What it is, if the value says that and all of it is known.
    fn read(json: &Json<'_>) -> Option<Self>;

    /// Writes it, by default as an object of its fields.
    fn write(&self, out: &mut Out) {
        out.open();
        self.fields(out);
        out.close();
    }

    /// Its fields alone, among those of another object; a type that is no object has none.
    fn fields(&self, _out: &mut Out) {}

    /// What stands for a field that is not there; by default nothing does.
    fn absent() -> Option<Self> {
        None
    }

    /// Whether a field with it is left out.
    fn is_absent(&self) -> bool {
        false
    }
}

/// Writes one field of [`form`].
macro_rules! put {
    ($out:expr, $value:expr, $field:ident) => {
        $out.field(stringify!($field), $value)
    };
    ($out:expr, $value:expr, $field:ident, $name:literal) => {
        $out.field($name, $value)
    };
    ($out:expr, $value:expr, $field:ident, ..) => {
        $crate::exchange::json::Form::fields($value, $out)
    };
    ($out:expr, $value:expr, $field:ident, few) => {
        if !$value.is_empty() {
            $out.field(stringify!($field), $value)
        }
    };
    ($out:expr, $value:expr, $field:ident, $first:literal $second:literal) => {
        if let Some((a, b)) = $value {
            $out.name(stringify!($field));
            $out.pair([$first, $second], (a, b));
        }
    };
    ($out:expr, $value:expr, $field:ident, by $write:path, $read:path) => {
        $write($out, $value)
    };
}

/// Reads one field of [`form`].
macro_rules! get {
    ($json:expr, $field:ident) => {
        $json.field(stringify!($field))?
    };
    ($json:expr, $field:ident, $name:literal) => {
        $json.field($name)?
    };
    ($json:expr, $field:ident, ..) => {
        $crate::exchange::json::Form::read($json)?
    };
    ($json:expr, $field:ident, few) => {
        $json
            .field::<Option<_>>(stringify!($field))?
            .unwrap_or_default()
    };
    ($json:expr, $field:ident, $first:literal $second:literal) => {
        match $json.find(stringify!($field)).ok()? {
            Some(pair) => Some((pair.field($first)?, pair.field($second)?)),
            None => None,
        }
    };
    ($json:expr, $field:ident, by $write:path, $read:path) => {
        $read($json)?
    };
}

/// The fields of a type, in the order in which they are written:
/// - `field`, or `field("name")` where it is stored under another name,
/// - `field(..)`: the fields of what it is stand among these,
/// - `field(few)`: a list that is left out where it is empty,
/// - `field("a" "b")`: perhaps two values, as an object of these two names,
/// - `field(by write, read)`: by functions of its own.
///
/// An option that is nothing is left out. What does not pass the `if` behind is not read.
///
/// Of an enum each variant has its tag, and behind it what its body is: `()` nothing, `(it)` the
/// form of what it holds, `[a, b]` its values under these names, `{ a, b }` its fields.
macro_rules! form {
    (enum $name:ident { $($variant:ident = $tag:literal $body:tt),* $(,)? } $(else $other:pat)?) => {
        impl $crate::exchange::json::Tagged for $name {
            const TAGS: &'static [&'static str] = &[$($tag),*];

            fn of(tag: &str, json: &$crate::exchange::json::Json<'_>) -> Option<Self> {
                Some(match tag {
                    $($tag => {
                        $crate::exchange::json::get_body!(json, $body);
                        $crate::exchange::json::arm!($variant $body)
                    })*
                    _ => return None,
                })
            }
        }

        impl $crate::exchange::json::Form for $name {
            fn read(json: &$crate::exchange::json::Json<'_>) -> Option<Self> {
                let (tag, body) = json.tagged()?;
                <Self as $crate::exchange::json::Tagged>::of(&tag, body)
            }

            fn fields(&self, out: &mut $crate::exchange::json::Out) {
                match self {
                    $($crate::exchange::json::arm!($variant $body) => {
                        out.name($tag);
                        $crate::exchange::json::put_body!(out, $body);
                    })*
                    $($other => {})?
                }
            }
        }
    };
    ($name:ty { $($field:ident $(($($how:tt)*))?),* $(,)? } $(if $it:ident $check:expr)?) => {
        impl $crate::exchange::json::Form for $name {
            fn read(json: &$crate::exchange::json::Json<'_>) -> Option<Self> {
                let read = Self {
                    $($field: $crate::exchange::json::get!(json, $field $(, $($how)*)?)),*
                };
                $(
                    let $it = &read;
                    if !$check {
                        return None;
                    }
                )?
                Some(read)
            }

            fn fields(&self, out: &mut $crate::exchange::json::Out) {
                $($crate::exchange::json::put!(out, &self.$field, $field $(, $($how)*)?);)*
            }
        }
    };
}

/// A variant of [`form`] as a pattern, and as what is made of its values.
macro_rules! arm {
    ($variant:ident ()) => { Self::$variant };
    ($variant:ident ($it:ident)) => { Self::$variant($it) };
    ($variant:ident [$($field:ident $(($($how:tt)*))?),*]) => { Self::$variant($($field),*) };
    ($variant:ident {$($field:ident $(($($how:tt)*))?),*}) => { Self::$variant { $($field),* } };
}

/// Writes the body of a variant of [`form`].
macro_rules! put_body {
    ($out:expr, ()) => { $out.0.push_str("{}") };
    ($out:expr, ($it:ident)) => { $crate::exchange::json::Form::write($it, $out) };
    ($out:expr, [$($fields:tt)*]) => { $crate::exchange::json::put_body!($out, {$($fields)*}) };
    ($out:expr, {$($field:ident $(($($how:tt)*))?),*}) => {
        $out.open();
        $($crate::exchange::json::put!($out, $field, $field $(, $($how)*)?);)*
        $out.close();
    };
}

/// Reads the body of a variant of [`form`] into its values.
macro_rules! get_body {
    ($json:expr, ()) => { $json.map()?; };
    ($json:expr, ($it:ident)) => { let $it = $crate::exchange::json::Form::read($json)?; };
    ($json:expr, [$($field:ident $(($($how:tt)*))?),*]) => {
        $(let $field = $crate::exchange::json::get!($json, $field $(, $($how)*)?);)*
    };
    ($json:expr, {$($field:ident $(($($how:tt)*))?),*}) => {
        $(let $field = $crate::exchange::json::get!($json, $field $(, $($how)*)?);)*
    };
}

pub(in crate::exchange) use {arm, form, get, get_body, put, put_body};

/// A type of several kinds, each stored as an object of one name, its tag.
pub(in crate::exchange) trait Tagged: Form {
    /// The tags that this version writes.
    const TAGS: &'static [&'static str];

    /// What a tag and its body say.
    fn of(tag: &str, body: &Json<'_>) -> Option<Self>;
}

/// A word is stored as its code.
impl<W: Word> Form for W {
    fn read(json: &Json<'_>) -> Option<Self> {
        Self::of_code(&json.text()?)
    }

    fn write(&self, out: &mut Out) {
        out.text(self.word_code());
    }
}

impl Form for String {
    fn read(json: &Json<'_>) -> Option<Self> {
        Some(json.text()?.into_owned())
    }

    fn write(&self, out: &mut Out) {
        out.text(self);
    }
}

impl Form for bool {
    fn read(json: &Json<'_>) -> Option<Self> {
        match json.raw() {
            "true" => Some(true),
            "false" => Some(false),
            _ => None,
        }
    }

    fn write(&self, out: &mut Out) {
        out.0.push_str(if *self { "true" } else { "false" });
    }
}

macro_rules! whole {
    ($($number:ty)*) => {$(
        impl Form for $number {
            fn read(json: &Json<'_>) -> Option<Self> {
                json.number()?.parse().ok()
            }

            fn write(&self, out: &mut Out) {
                out.0.push_str(&self.to_string());
            }
        }
    )*};
}
whole!(u8 u16 u32 u64 usize i32 i64);

impl Form for f64 {
    fn read(json: &Json<'_>) -> Option<Self> {
        double(json.number()?).filter(|it| it.is_finite())
    }

    fn write(&self, out: &mut Out) {
        out.double(*self);
    }
}

/// `YYYY-MM-DD`.
impl Form for NaiveDate {
    fn read(json: &Json<'_>) -> Option<Self> {
        day_of(&json.text()?)
    }

    fn write(&self, out: &mut Out) {
        out.text(&self.to_string());
    }
}

impl<T: Form> Form for Option<T> {
    fn read(json: &Json<'_>) -> Option<Self> {
        match json.raw() {
            "null" => Some(None),
            _ => T::read(json).map(Some),
        }
    }

    fn write(&self, out: &mut Out) {
        match self {
            Some(it) => it.write(out),
            None => out.0.push_str("null"),
        }
    }

    fn absent() -> Option<Self> {
        Some(None)
    }

    fn is_absent(&self) -> bool {
        self.is_none()
    }
}

impl<T: Form> Form for Vec<T> {
    fn read(json: &Json<'_>) -> Option<Self> {
        json.list()?.iter().map(T::read).collect()
    }

    fn write(&self, out: &mut Out) {
        out.list(self, |out, one| one.write(out));
    }
}

/// A few things of their own kinds are a list.
macro_rules! tuple {
    ($first:ident $first_at:tt $( $kind:ident $at:tt )*) => {
        impl<$first: Form, $( $kind: Form ),*> Form for ($first, $( $kind ),*) {
            #[allow(non_snake_case, reason = "each is named after its kind")]
            fn read(json: &Json<'_>) -> Option<Self> {
                match json.list()? {
                    [$first, $( $kind ),*] => Some(($first::read($first)?, $( $kind::read($kind)? ),*)),
                    _ => None,
                }
            }

            fn write(&self, out: &mut Out) {
                out.0.push('[');
                self.$first_at.write(out);
                $(
                    out.0.push(',');
                    self.$at.write(out);
                )*
                out.0.push(']');
            }
        }
    };
}
tuple!(A 0 B 1);
tuple!(A 0 B 1 C 2);
