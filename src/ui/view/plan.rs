//! The plan of a view: its markup as one text of codes, each followed by its words.
//!
//! The text is put together by `view!` while it compiles, and read once for each element that is
//! made of it.

/// An element opens; its words are its name.
pub const OPEN: u8 = 1;
/// The element that was opened last is whole.
pub const CLOSE: u8 = 2;
/// The name of the attribute, property or event that comes next.
pub const NAME: u8 = 3;
/// The fixed value of the attribute that was named.
pub const FIXED: u8 = 4;
/// A hole: the next value belongs to what was named.
pub const NAMED: u8 = 5;
/// A hole: the next value stands here.
pub const CHILD: u8 = 6;

/// The first byte that is no code.
const WORDS: u8 = 7;

/// The codes of a plan with their words, in order.
pub struct Codes(pub &'static str);

impl Iterator for Codes {
    type Item = (u8, &'static str);

    fn next(&mut self) -> Option<Self::Item> {
        let code = self.0.bytes().next()?;
        let said = self.0.get(1..)?;
        let end = said.bytes().position(|byte| byte < WORDS);
        let (words, rest) = said.split_at(end.unwrap_or(said.len()));
        self.0 = rest;
        Some((code, words))
    }
}

/// How deep elements may stand in each other in one `view!`.
const DEEPEST: usize = 32;

/// Whether tags close what they opened: `"p"` opens, `"/"` closes at once, `"/p"` closes.
pub const fn is_whole(tags: &[&str]) -> bool {
    let mut open = [""; DEEPEST];
    let mut depth = 0;
    let mut rest = tags;
    while let [tag, after @ ..] = rest {
        rest = after;
        if let [b'/', name @ ..] = tag.as_bytes() {
            if depth == 0 {
                return false;
            }
            depth -= 1;
            let (_, inner) = open.split_at(depth);
            let Some(last) = inner.first() else {
                return false;
            };
            if !(name.is_empty() || is_same(name, last.as_bytes())) {
                return false;
            }
        } else {
            let (_, free) = open.split_at_mut(depth);
            let Some(place) = free.first_mut() else {
                return false;
            };
            *place = tag;
            depth += 1;
        }
    }
    depth == 0
}

const fn is_same(mut a: &[u8], mut b: &[u8]) -> bool {
    while let ([x, more_a @ ..], [y, more_b @ ..]) = (a, b) {
        if *x != *y {
            return false;
        }
        (a, b) = (more_a, more_b);
    }
    a.is_empty() && b.is_empty()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_come_with_their_words() {
        let plan = "\u{1}p\u{3}class\u{4}a b\u{3}id\u{5}\u{6}\u{2}";
        let codes: Vec<_> = Codes(plan).collect();
        let expected = [
            (OPEN, "p"),
            (NAME, "class"),
            (FIXED, "a b"),
            (NAME, "id"),
            (NAMED, ""),
            (CHILD, ""),
            (CLOSE, ""),
        ];
        assert_eq!(codes, expected);
        assert_eq!(Codes("").count(), 0);
    }

    #[test]
    fn words_may_be_any_text_without_codes() {
        let plan = "\u{3}title\u{4}Ø 30 mm – “so”\u{3}alt\u{4}";
        let codes: Vec<_> = Codes(plan).collect();
        assert_eq!(codes.get(1), Some(&(FIXED, "Ø 30 mm – “so”")));
        assert_eq!(codes.last(), Some(&(FIXED, "")));
    }

    #[test]
    fn tags_close_what_they_opened() {
        assert!(is_whole(&[]));
        assert!(is_whole(&["p", "b", "/b", "img", "/", "/p", "p", "/p"]));
        for broken in [
            &["p"][..],
            &["/p"],
            &["p", "/b"],
            &["p", "b", "/p", "/b"],
            &["p", "/pre"],
            &["pre", "/p"],
            &["p", "/p", "/p"],
        ] {
            assert!(!is_whole(broken), "{broken:?}");
        }
        assert!(!is_whole(&["div"; DEEPEST + 1]));
    }
}
