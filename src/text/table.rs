//! How a theme declares its sentences: each once, beside its English.
//!
//! A second language is one more column in these tables: a row without it does not compile.

/// Fixed sentences: an enum with a row each, its lists, and the function that says a row.
///
/// The documentation of a row is its English.
macro_rules! sentences {
    ($(#[$meta:meta])* pub enum $theme:ident, $say:ident {
        $($name:ident => $english:literal,)+
    }) => {
        $crate::text::table::sentences! {
            $(#[$meta])* pub enum $theme, $say { ALL { $($name => $english,)+ } }
        }
    };
    ($(#[$meta:meta])* pub enum $theme:ident, $say:ident {
        $($list:ident { $($name:ident => $english:literal,)+ })+
    }) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum $theme { $($(#[doc = $english] $name,)+)+ }

        impl $theme {
            $(
                /// The rows of one list, in order.
                pub const $list: &'static [Self] = &[$(Self::$name),+];
            )+
        }

        $(#[$meta])*
        pub const fn $say(lang: $crate::text::Lang, row: $theme) -> &'static str {
            match lang {
                $crate::text::Lang::English => match row { $($($theme::$name => $english,)+)+ },
            }
        }
    };
}

/// Sentences around values that come in as text: an enum whose rows carry them, and the function
/// that says a row.
macro_rules! templates {
    ($(#[$meta:meta])* pub enum $theme:ident<$life:lifetime>, $say:ident {
        $($name:ident
            $({ $($field:ident: $type:ty),+ })?
            $(( $($part:ident: $kind:ty),+ ))?
            => $english:expr,)+
    }) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub enum $theme<$life> {
            $($name $({ $($field: $type),+ })? $(( $($kind),+ ))?,)+
        }

        $(#[$meta])*
        pub fn $say(lang: $crate::text::Lang, row: $theme<'_>) -> String {
            match lang {
                $crate::text::Lang::English => match row {
                    $($theme::$name $({ $($field),+ })? $(( $($part),+ ))? => String::from($english),)+
                },
            }
        }
    };
}

/// Functions whose one sentence has its values in it.
macro_rules! phrases {
    ($($name:ident($($arg:ident: $type:ty),+) => $english:literal,)+) => {
        $(
            #[doc = $english]
            pub fn $name(lang: $crate::text::Lang, $($arg: $type),+) -> String {
                match lang {
                    $crate::text::Lang::English => format!($english),
                }
            }
        )+
    };
}

pub(in crate::text) use {phrases, sentences, templates};
