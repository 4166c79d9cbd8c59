//! One style sheet for the phone out of the many that people write.
//!
//! A start from the service worker pays for every file that it asks for: two dozen small sheets
//! cost more than a hundred milliseconds on a slow phone.

const LINK: &str = "<link rel=\"stylesheet\"";

/// The style links of a page, in order, as they stand in it.
fn links(page: &str) -> Vec<&str> {
    let ends = |start: usize| {
        let rest = page.get(start..)?;
        rest.get(..=rest.find('>')?)
    };
    page.match_indices(LINK)
        .filter_map(|(start, _)| ends(start))
        .collect()
}

/// The files that the page's style links name, in order.
pub fn sheets(page: &str) -> Vec<String> {
    let name = |link: &&str| {
        let (_, rest) = link.split_once("href=\"./")?;
        rest.split_once('"').map(|(name, _)| name.to_owned())
    };
    links(page).iter().filter_map(name).collect()
}

/// The page with one style link, to this sheet, in the place of its first.
pub fn with_one(page: &str, sheet: &str, integrity: &str) -> String {
    let one = format!("{LINK} href=\"./{sheet}\" integrity=\"{integrity}\"/>");
    let mut whole = page.to_owned();
    for (place, link) in links(page).into_iter().enumerate() {
        whole = whole.replacen(link, if place == 0 { &one } else { "" }, 1);
    }
    whole
}

/// The sheet without its comments and without white space that says nothing.
pub fn squeezed(sheet: &str) -> String {
    let mut out = String::new();
    let mut rest = sheet;
    while let Some(first) = rest.chars().next() {
        let length = match first {
            '/' if rest.starts_with("/*") => rest.find("*/").map(|end| end + 2),
            '"' => rest
                .get(1..)
                .and_then(|rest| rest.find('"'))
                .map(|end| end + 2),
            c if c.is_whitespace() => rest.find(|c: char| !c.is_whitespace()),
            c => Some(c.len_utf8()),
        };
        let (piece, after) = rest.split_at(length.unwrap_or(rest.len()));
        rest = after;
        let says_nothing = |c: char| "{};,".contains(c) || c.is_whitespace();
        if piece.starts_with("/*") {
            continue;
        }
        if !first.is_whitespace() {
            if says_nothing(first) && out.ends_with(' ') {
                out.pop();
            }
            out.push_str(piece);
        } else if !out.is_empty() && !out.ends_with(says_nothing) {
            out.push(' ');
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = "<head><link rel=\"icon\" href=\"./a.png\">\
        <link rel=\"stylesheet\" href=\"./layers-1.css\" integrity=\"sha384-x\"/>\n\
        <link rel=\"stylesheet\" href=\"./base-2.css\"/></head>";

    #[test]
    fn sheets_are_named_in_their_order() {
        assert_eq!(sheets(PAGE), ["layers-1.css", "base-2.css"]);
        assert!(sheets("<head></head>").is_empty());
    }

    #[test]
    fn a_sheet_is_squeezed_outside_its_strings_only() {
        let sheet =
            "/* a; b */\n.a > .b,\n.c :d {\n  width: calc(1px + 2px);\n  content: \"; {\";\n}\n";
        let squeezed_sheet = ".a > .b,.c :d{width: calc(1px + 2px);content: \"; {\";}";
        assert_eq!(squeezed(sheet), squeezed_sheet);
        assert_eq!(squeezed(squeezed_sheet), squeezed_sheet);
    }

    #[test]
    fn one_link_takes_the_place_of_the_first() {
        assert_eq!(
            with_one(PAGE, "base-3.css", "sha384-y"),
            "<head><link rel=\"icon\" href=\"./a.png\">\
             <link rel=\"stylesheet\" href=\"./base-3.css\" integrity=\"sha384-y\"/>\n</head>"
        );
    }
}
