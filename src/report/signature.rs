//! A signature as SVG. Its strokes may come out of a file from elsewhere: only plain path data
//! with numbers passes, so that nothing in it can become markup.

/// The strokes in their box of 300 by 120; `None` if they are not plain path data.
pub fn signature_svg(strokes: &str, title: &str) -> Option<String> {
    let plain = |c: char| c.is_ascii_digit() || "MmLlHhVvCcSsQqTtAaZz .,-+".contains(c);
    let begins = strokes.trim_start().starts_with(['M', 'm']);
    (begins && strokes.chars().all(plain)).then(|| {
        let title = title
            .replace('&', "&amp;")
            .replace('<', "&lt;")
            .replace('>', "&gt;");
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" viewBox=\"0 0 300 120\" \
             fill=\"none\" stroke-linecap=\"round\" stroke-linejoin=\"round\"><title>{title}</title>\
             <path d=\"{strokes}\" stroke=\"currentColor\" stroke-width=\"3\"/></svg>"
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_path_data_becomes_a_drawing() {
        assert!(signature_svg("M10 20 L30.5 40 C1 2 3 4 5 6", "Customer").is_some());
        for bad in ["", "L1 2", "M1 2\"/><script>", "M1 2<b>", "Mé"] {
            assert_eq!(signature_svg(bad, "Customer"), None, "{bad}");
        }
    }
}
