//! Closed sets of the trade's words, each with the one stable code it is stored under.
//!
//! The code is what files, storage keys and tests use; it never changes once shipped.
//! What a person reads is picked in `text`, never here.

/// A word of a closed set, for code that serves several sets alike.
pub trait Word: Copy {
    /// The code this word is stored under.
    fn word_code(self) -> &'static str;

    /// The word stored under `code`, if this version knows it.
    fn of_code(code: &str) -> Option<Self>;
}

/// Declares an enum whose variants each have a stable code.
///
/// Gives `ALL`, `code()` and `from_code()`; an unknown code is `None`, so that a file from a
/// newer version can be told from a broken one.
#[macro_export]
macro_rules! words {
    ($(#[$meta:meta])* $vis:vis enum $name:ident { $($(#[$vmeta:meta])* $variant:ident = $code:literal),+ $(,)? }) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        $vis enum $name { $($(#[$vmeta])* $variant),+ }

        impl $name {
            /// Every word of the set, in the order in which the trade tells them.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// The code this word is stored under.
            pub const fn code(self) -> &'static str {
                match self { $(Self::$variant => $code),+ }
            }

            /// The word stored under `code`, if this version knows it.
            pub fn from_code(code: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|word| word.code() == code)
            }
        }

        impl $crate::word::Word for $name {
            fn word_code(self) -> &'static str {
                self.code()
            }

            fn of_code(code: &str) -> Option<Self> {
                Self::from_code(code)
            }
        }
    };
}
