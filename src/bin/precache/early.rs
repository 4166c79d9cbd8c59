//! The program's files, asked for by the page's first script instead of by its last.
//!
//! Trunk starts the program from a script at the end of the page's head. The first script can ask
//! for it before the style sheet is there, but does not know the names that Trunk gives the files.

const START: &str = "<script type=\"module\">";
const END: &str = "</script>";
const GLUE: &str = "const GLUE = \"\";";
const PROGRAM: &str = "const PROGRAM = \"\";";

/// The page with the names of glue and program in its first script, and without Trunk's own start;
/// a page without such a script stays as it is. `None` where Trunk's start is another than is known:
/// such a page would never start.
pub fn early(page: &str) -> Option<String> {
    if !page.contains(GLUE) && !page.contains(PROGRAM) {
        return Some(page.to_owned());
    }
    let (before, rest) = page.split_once(START)?;
    let (start, after) = rest.split_once(END)?;
    let glue = between(start, "from '", "'")?;
    let program = between(start, "module_or_path: '", "'")?;
    let mut whole = format!("{before}{after}");
    for file in [glue, program] {
        whole = without_link(&whole, file);
    }
    let named = whole
        .replacen(GLUE, &format!("const GLUE = {glue:?};"), 1)
        .replacen(PROGRAM, &format!("const PROGRAM = {program:?};"), 1);
    Some(named)
}

fn between<'a>(text: &'a str, from: &str, to: &str) -> Option<&'a str> {
    let (_, rest) = text.split_once(from)?;
    rest.split_once(to).map(|(found, _)| found)
}

/// The page without the link that loads this file ahead: the first script is earlier.
fn without_link(page: &str, file: &str) -> String {
    let named = format!("href=\"{file}\"");
    let link = page.split('<').find(|tag| tag.contains(&named));
    match link.and_then(|tag| tag.split_once('>')) {
        Some((tag, _)) => page.replacen(&format!("<{tag}>"), "", 1),
        None => page.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const FIRST: &str = "<script>const GLUE = \"\";\nconst PROGRAM = \"\";</script>";
    const TRUNK: &str = "<script type=\"module\">\nimport init, * as bindings from './a-1.js';\n\
        const wasm = await init({ module_or_path: './a-1_bg.wasm' });\n</script>\
        <link rel=\"modulepreload\" href=\"./a-1.js\" integrity=\"sha384-x\">\
        <link rel=\"preload\" href=\"./a-1_bg.wasm\" as=\"fetch\">";

    #[test]
    fn the_first_script_knows_both_files_and_nothing_else_asks_for_them() {
        let page = format!("<head>{FIRST}<link rel=\"icon\" href=\"./i.svg\">{TRUNK}</head>");
        let first =
            "<script>const GLUE = \"./a-1.js\";\nconst PROGRAM = \"./a-1_bg.wasm\";</script>";
        let whole = format!("<head>{first}<link rel=\"icon\" href=\"./i.svg\"></head>");
        assert_eq!(early(&page).as_deref(), Some(whole.as_str()));
        assert_eq!(early(&whole), Some(whole));
    }

    #[test]
    fn a_page_of_another_kind_stays_and_a_start_that_is_not_known_is_reported() {
        let page = format!("<head>{TRUNK}</head>");
        assert_eq!(early(&page), Some(page));
        for strange in ["", "<script type=\"module\">go()</script>"] {
            assert_eq!(early(&format!("<head>{FIRST}{strange}</head>")), None);
        }
    }
}
