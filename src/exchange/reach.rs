//! Addresses that a phone opens by itself: a call, a message with its text ready, a place on the map.

/// A telephone number as an address (RFC 3966): digits and a leading plus; `None` without digits.
pub fn tel(typed: &str) -> Option<String> {
    Some(format!("tel:{}", digits(typed)?))
}

/// A message to a number with its text (RFC 5724); the text is kept for the person to send.
pub fn sms(typed: &str, text: &str) -> Option<String> {
    Some(format!("sms:{}?body={}", digits(typed)?, encoded(text)))
}

/// The place of an address on the phone's own map (RFC 5870; the question behind it is common practice,
/// no source); `None` for an empty one.
pub fn geo(address: &str) -> Option<String> {
    let address = address.trim();
    (!address.is_empty()).then(|| format!("geo:0,0?q={}", encoded(address)))
}

/// An e-mail to an address (RFC 6068); `None` for a text that is none.
pub fn mail(address: &str) -> Option<String> {
    let address = address.trim();
    let (name, host) = address.split_once('@')?;
    let is_one = !name.is_empty() && !host.is_empty() && !host.contains('@');
    is_one.then(|| format!("mailto:{}@{}", encoded(name), encoded(host)))
}

fn digits(typed: &str) -> Option<String> {
    let plus = typed.trim_start().starts_with('+');
    let digits: String = typed.chars().filter(char::is_ascii_digit).collect();
    (!digits.is_empty()).then(|| format!("{}{digits}", if plus { "+" } else { "" }))
}

/// Percent-encoded but for the unreserved characters (RFC 3986, 2.3).
fn encoded(text: &str) -> String {
    let mut all = String::new();
    for byte in text.bytes() {
        if byte.is_ascii_alphanumeric() || b"-._~".contains(&byte) {
            all.push(char::from(byte));
        } else {
            all.push_str(&format!("%{byte:02X}"));
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_loses_what_is_only_for_the_eye() {
        assert_eq!(tel(" +1 (555) 0100-22"), Some("tel:+1555010022".to_owned()));
        assert_eq!(tel("555 0100"), Some("tel:5550100".to_owned()));
        assert_eq!(tel("none"), None);
        assert_eq!(sms("", "x"), None);
    }

    #[test]
    fn a_place_and_an_address_are_encoded_and_nothing_is_none() {
        // As `encodeURIComponent` of ECMAScript writes it.
        assert_eq!(
            geo(" 12 Oak St, Unit #3 "),
            Some("geo:0,0?q=12%20Oak%20St%2C%20Unit%20%233".to_owned())
        );
        assert_eq!(geo("  "), None);
        assert_eq!(
            mail("ada+car@example.org"),
            Some("mailto:ada%2Bcar@example.org".to_owned())
        );
        for none in ["", "ada", "@example.org", "ada@", "a@b@c"] {
            assert_eq!(mail(none), None, "{none}");
        }
    }

    #[test]
    fn a_text_is_kept_whole() {
        // `encodeURIComponent("50 mi & é")` of ECMAScript gives the same.
        assert_eq!(
            sms("5550100", "50 mi & \u{e9}"),
            Some("sms:5550100?body=50%20mi%20%26%20%C3%A9".to_owned())
        );
    }
}
