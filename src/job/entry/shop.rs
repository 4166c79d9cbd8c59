//! What a shop has set for all its vans.

use crate::trade::money::{Line, TaxRule};
use crate::trade::wheel_end::Kind;
use crate::units::{DistanceUnit, Typed};

/// The shop's settings; what is not set leaves a van with its own.
#[derive(Clone, Debug, Default, PartialEq, Hash)]
pub struct Shop {
    /// The shop's name; empty if it is not set.
    pub name: String,
    /// How customers reach the shop; empty if it is not set.
    pub contact: String,
    /// The currency's ISO 4217 code; empty if it is not set.
    pub currency: String,
    /// The tax on estimates.
    pub tax: Option<TaxRule>,
    /// What an hour of labour costs before tax, in minor units.
    pub labour: Option<i64>,
    /// What the shop promises, word for word; empty for nothing.
    pub warranty: String,
    /// Which share of a wrench's range may be used, in percent: lowest and highest.
    pub share: Option<(u8, u8)>,
    /// When lug nuts are tightened again.
    pub retorque: Option<ShopRetorque>,
    /// After how many days an ended job's personal data leaves a van that has a confirmation for it.
    pub keep_days: Option<u16>,
    /// The lines that an estimate begins with, by kind of wheel end.
    pub templates: Vec<Template>,
}

/// The shop's own rule for the re-torque.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct ShopRetorque {
    /// After this distance, as typed.
    pub after: Typed<DistanceUnit>,
    /// By so many days at the latest.
    pub days: u16,
}

/// Lines with amounts for one kind of wheel end.
#[derive(Clone, Debug, PartialEq, Hash)]
pub struct Template {
    /// The kind.
    pub kind: Kind,
    /// Its lines.
    pub lines: Vec<Line>,
}

impl Shop {
    /// The lines for a kind of wheel end.
    pub fn template(&self, kind: Kind) -> Option<&[Line]> {
        let mut templates = self.templates.iter();
        let found = templates.find(|template| template.kind == kind)?;
        Some(&found.lines)
    }

    /// Sets the lines for a kind; none takes its template away.
    pub fn set_template(&mut self, kind: Kind, lines: Vec<Line>) {
        self.templates.retain(|template| template.kind != kind);
        if !lines.is_empty() {
            self.templates.push(Template { kind, lines });
        }
    }
}
