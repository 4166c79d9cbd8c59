//! A drawing as SVG text, for screens and for paper.
//!
//! Colours are presentation attributes, never a style attribute: the page's content security
//! policy forbids the latter. Ink is the colour of the text around the drawing; the other
//! roles are the style sheet's `--quiet`, `--signal` and `--face`, with a colour to fall back
//! on where a drawing stands alone.

use super::fill::{dots, hatch};
use super::shape::{Anchor, Dash, Drawing, Fill, Ink, Point, Role, Shape, Step};

impl Drawing {
    /// The drawing as one `svg` element with `title` as its name, sized by its surroundings.
    ///
    /// An empty title means that the words beside it say the same: nobody is read it twice.
    pub fn to_svg(&self, title: &str) -> String {
        let (role, name) = match title {
            "" => ("aria-hidden=\"true\"", String::new()),
            title => ("role=\"img\"", format!("<title>{}</title>", escape(title))),
        };
        let mut svg = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" {role} viewBox=\"0 0 {} {}\" \
             fill=\"none\" stroke-linecap=\"round\" stroke-linejoin=\"round\">{name}",
            number(self.width),
            number(self.height)
        );
        for shape in &self.shapes {
            write_shape(&mut svg, shape);
        }
        svg.push_str("</svg>");
        svg
    }
}

/// The colour of a role as an attribute value.
const fn colour(role: Role) -> &'static str {
    match role {
        Role::Ink => "currentColor",
        Role::Quiet => "var(--quiet,#343B42)",
        Role::Signal => "var(--signal,#003C9E)",
        Role::Paper => FACE,
    }
}

const FACE: &str = "var(--face,#FFFFFF)";

fn write_shape(svg: &mut String, shape: &Shape) {
    match shape {
        Shape::Line { from, to, ink } => {
            *svg += &format!(
                "<line x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"{}/>",
                number(from.0),
                number(from.1),
                number(to.0),
                number(to.1),
                look(*ink)
            );
        }
        Shape::Polyline { points, ink } => {
            *svg += &format!("<polyline points=\"{}\"{}/>", list(points), look(*ink));
        }
        Shape::Polygon { points, ink } => {
            inked(
                svg,
                shape,
                *ink,
                &format!("polygon points=\"{}\"", list(points)),
            );
        }
        Shape::Path { steps, ink } => {
            inked(svg, shape, *ink, &format!("path d=\"{}\"", data(steps)));
        }
        Shape::Circle {
            centre,
            radius,
            ink,
        } => {
            let (x, y, r) = (number(centre.0), number(centre.1), number(*radius));
            inked(
                svg,
                shape,
                *ink,
                &format!("circle cx=\"{x}\" cy=\"{y}\" r=\"{r}\""),
            );
        }
        Shape::Rect { ink, .. } => inked(svg, shape, *ink, &rectangle(shape)),
        Shape::Text { .. } => *svg += &lettering(shape),
    }
}

/// Writes a shape that may be filled. A hatch stands between its face and its outline, so that
/// the outline covers the ends of the hatch lines.
fn inked(svg: &mut String, shape: &Shape, ink: Ink, element: &str) {
    let texture = match ink.fill {
        Fill::Hatch => hatch(shape)
            .iter()
            .map(|(a, b)| format!("M{}L{}", pair(*a), pair(*b)))
            .collect(),
        Fill::Dotted => dots(shape)
            .iter()
            .map(|dot| format!("M{}h0", pair(*dot)))
            .collect(),
        Fill::None | Fill::Face | Fill::Solid => String::new(),
    };
    if texture.is_empty() {
        *svg += &format!("<{element}{}/>", look(ink));
        return;
    }
    let width = if ink.fill == Fill::Dotted { "3" } else { "2" };
    let role = colour(ink.role);
    *svg += &format!("<{element} fill=\"{FACE}\"/>");
    *svg += &format!("<path d=\"{texture}\" stroke=\"{role}\" stroke-width=\"{width}\"/>");
    *svg += &format!("<{element}{}/>", stroke(ink));
}

fn look(ink: Ink) -> String {
    match ink.fill {
        Fill::Face => format!(" fill=\"{FACE}\"{}", stroke(ink)),
        Fill::Solid => format!(" fill=\"{}\"{}", colour(ink.role), stroke(ink)),
        Fill::None | Fill::Hatch | Fill::Dotted => stroke(ink),
    }
}

fn stroke(ink: Ink) -> String {
    let width = ink.weight.width();
    if width <= 0.0 {
        return String::new();
    }
    let dash = match ink.dash {
        Dash::Whole => "",
        Dash::Dashed => " stroke-dasharray=\"7 5\" stroke-linecap=\"butt\"",
        Dash::Dots => " stroke-dasharray=\"0 6\"",
    };
    let role = colour(ink.role);
    format!(
        " stroke=\"{role}\" stroke-width=\"{}\"{dash}",
        number(width)
    )
}

fn rectangle(shape: &Shape) -> String {
    let Shape::Rect {
        corner,
        width,
        height,
        round,
        ..
    } = shape
    else {
        return String::new();
    };
    format!(
        "rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" rx=\"{}\"",
        number(corner.0),
        number(corner.1),
        number(*width),
        number(*height),
        number(*round)
    )
}

fn lettering(shape: &Shape) -> String {
    let Shape::Text {
        at,
        size,
        anchor,
        text,
        role,
    } = shape
    else {
        return String::new();
    };
    let anchor = match anchor {
        Anchor::Start => "start",
        Anchor::Middle => "middle",
        Anchor::End => "end",
    };
    format!(
        "<text x=\"{}\" y=\"{}\" font-size=\"{}\" font-weight=\"700\" text-anchor=\"{anchor}\" \
         fill=\"{}\">{}</text>",
        number(at.0),
        number(at.1),
        number(*size),
        colour(*role),
        escape(text)
    )
}

fn data(steps: &[Step]) -> String {
    steps
        .iter()
        .map(|step| match *step {
            Step::Move(to) => format!("M{}", pair(to)),
            Step::Line(to) => format!("L{}", pair(to)),
            Step::Curve(a, b, to) => format!("C{} {} {}", pair(a), pair(b), pair(to)),
            Step::Close => "Z".to_owned(),
        })
        .collect()
}

fn list(points: &[Point]) -> String {
    let pairs: Vec<String> = points.iter().map(|point| pair(*point)).collect();
    pairs.join(" ")
}

fn pair((x, y): Point) -> String {
    format!("{} {}", number(x), number(y))
}

/// A coordinate with at most two decimals, through whole hundredths: the float formatter of
/// the standard library would cost the phone 9 kB.
fn number(value: f64) -> String {
    let hundredths = (value * 100.0).round() as i64;
    let sign = if hundredths < 0 { "-" } else { "" };
    let (whole, rest) = (hundredths.abs() / 100, hundredths.abs() % 100);
    match rest {
        0 => format!("{sign}{whole}"),
        tenths if tenths % 10 == 0 => format!("{sign}{whole}.{}", tenths / 10),
        _ => format!("{sign}{whole}.{rest:02}"),
    }
}

fn escape(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => escaped.push_str("&amp;"),
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '"' => escaped.push_str("&quot;"),
            '\'' => escaped.push_str("&#39;"),
            _ => escaped.push(letter),
        }
    }
    escaped
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_have_at_most_two_decimals() {
        let cases = [
            (0.0, "0"),
            (-0.001, "0"),
            (1.0, "1"),
            (2.5, "2.5"),
            (-3.456, "-3.46"),
            (0.05, "0.05"),
            (-0.5, "-0.5"),
            (1.999, "2"),
        ];
        for (value, text) in cases {
            assert_eq!(number(value), text);
        }
    }

    #[test]
    fn title_and_text_are_escaped() {
        let mut drawing = Drawing::new(100.0, 50.0);
        drawing.label((50.0, 25.0), 12.0, "<b>&'\"", Role::Ink);
        let svg = drawing.to_svg("4 < 5 & \"so\"");
        assert!(
            svg.contains("<title>4 &lt; 5 &amp; &quot;so&quot;</title>"),
            "{svg}"
        );
        assert!(svg.contains(">&lt;b&gt;&amp;&#39;&quot;</text>"), "{svg}");
    }

    #[test]
    fn the_size_is_left_to_the_page_and_no_style_attribute_is_used() {
        let svg = Drawing::new(120.0, 80.5).to_svg("t");
        assert!(svg.contains("viewBox=\"0 0 120 80.5\""), "{svg}");
        assert!(
            !svg.contains(" width=\"") && !svg.contains("style"),
            "{svg}"
        );
    }
}
