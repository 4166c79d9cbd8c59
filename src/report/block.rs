//! The pieces a report is built of; rendering is one exhaustive match over them.

/// How large a drawing stands on the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Size {
    /// Beside the text: the corner on the vehicle.
    Beside,
    /// On its own, as wide as two fingers: what was seen on a part.
    Small,
    /// On its own, as wide as a hand: a face seen from the front.
    Hand,
    /// As wide as the text: readings on their scale.
    Wide,
}

/// The part that is cut off and kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Slip {
    /// That it is to be cut off.
    pub title: String,
    /// What is to be done and by when, if anything.
    pub sentence: Option<String>,
    /// Labels with their values.
    pub rows: Vec<(String, String)>,
    /// What the codes are for, or why there is none.
    pub say: Option<String>,
    /// The codes as SVG, each with its caption.
    pub codes: Vec<(String, String)>,
}

/// One piece of the report. Every string is finished text in the reader's language.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// A heading of a part.
    Heading(String),
    /// A heading inside a part.
    Subheading(String),
    /// A sentence.
    Sentence(String),
    /// What explains a drawing or holds for every report, in small print.
    Small(String),
    /// Somebody's own words, unchanged.
    Quote(String),
    /// What must be seen before anything else.
    Notice(String),
    /// What is true of the car now: the head of page one.
    Standing {
        /// Whether the car must not be driven, for its style.
        stop: bool,
        /// The large word.
        title: String,
        /// The mark as SVG, where there is one; the word stands beside it.
        mark: Option<String>,
        /// What it means.
        lines: Vec<String>,
    },
    /// A drawing as SVG with its own title.
    Drawing {
        /// How large.
        size: Size,
        /// The drawing.
        svg: String,
    },
    /// Labels with their values.
    Rows(Vec<(String, String)>),
    /// A table; every row has as many cells as the head.
    Table {
        /// The column heads.
        head: Vec<String>,
        /// The rows; the first cell names the row.
        rows: Vec<Vec<String>>,
    },
    /// A list.
    List(Vec<String>),
    /// A signature.
    Signature {
        /// Whose, for what, when.
        caption: String,
        /// The strokes as SVG; nothing if they are not plain path data.
        svg: Option<String>,
    },
    /// A picture, by the digest of its bytes.
    Photo {
        /// SHA-256 in hex.
        sha256: String,
        /// Step, time and the digest's first characters.
        caption: String,
    },
}

impl Block {
    /// Every text in it that a person reads, for tests and for searching.
    pub fn texts(&self) -> Vec<&str> {
        match self {
            Self::Heading(text)
            | Self::Subheading(text)
            | Self::Sentence(text)
            | Self::Small(text)
            | Self::Quote(text)
            | Self::Notice(text) => vec![text],
            Self::Standing { title, lines, .. } => std::iter::once(title)
                .chain(lines)
                .map(String::as_str)
                .collect(),
            Self::Drawing { .. } => vec![],
            Self::Rows(rows) => rows
                .iter()
                .flat_map(|(label, value)| [label.as_str(), value])
                .collect(),
            Self::Table { head, rows } => head
                .iter()
                .chain(rows.iter().flatten())
                .map(String::as_str)
                .collect(),
            Self::List(items) => items.iter().map(String::as_str).collect(),
            Self::Signature { caption, .. } | Self::Photo { caption, .. } => vec![caption],
        }
    }
}
