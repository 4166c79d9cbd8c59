//! Pictures whose entry never came: the bytes go first, and a phone can die between the two.

/// How many hexadecimal digits a SHA-256 has.
use crate::map::OrderedSet;
const DIGITS: usize = 64;

/// The pictures that none of these texts names.
///
/// The raw text is searched, so that an entry that this version cannot read keeps its picture.
pub fn orphans<'a>(
    photos: impl IntoIterator<Item = String>,
    texts: impl IntoIterator<Item = &'a str>,
) -> Vec<String> {
    let named: OrderedSet<&str> = OrderedSet::from_iter(texts.into_iter().flat_map(digests));
    photos
        .into_iter()
        .filter(|sha| !named.contains(sha.as_str()))
        .collect()
}

/// Everything in a text that can be a digest.
fn digests(text: &str) -> impl Iterator<Item = &str> {
    text.split(|sign: char| !sign.is_ascii_hexdigit())
        .filter(|run| run.len() == DIGITS)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_no_text_names_is_an_orphan() {
        let sha = |digit: &str| digit.repeat(DIGITS);
        let entry = format!(
            r#"{{"v":1,"what":{{"photo":{{"sha256":"{}"}}}}}}"#,
            sha("a")
        );
        let unknown = format!(r#"{{"v":9,"what":{{"film":["{}"]}}}}"#, sha("b"));
        let texts = [entry.as_str(), "", unknown.as_str()];
        let photos = ["a", "b", "c"].map(sha);
        assert_eq!(orphans(photos.clone(), texts), [sha("c")]);
        assert_eq!(orphans(photos.clone(), []), photos);
        // Part of a longer number is no name.
        let longer = format!("{}0", sha("c"));
        assert_eq!(orphans([sha("c")], [longer.as_str()]), [sha("c")]);
    }
}
