//! What the phone's holder chose: units, decimal mark, hand, sound, name. Kept as plain codes.

use crate::platform::locale::decimal_mark;
use crate::text::Lang;
use crate::trade::money::TaxRounding;
use crate::ui::shelf::BrowserStore;
use crate::units::{DecimalMark, Format, System};
use crate::words;

words! {
    /// Day or night.
    pub enum Theme { Day = "day", Night = "night" }
}

words! {
    /// Whether tones are played.
    pub enum Sound { On = "on", Off = "off" }
}

/// The choices.
#[derive(Clone, Debug, PartialEq)]
pub struct Settings {
    /// The language of every sentence.
    pub lang: Lang,
    /// Which units stand first.
    pub system: System,
    /// Which decimal mark is shown.
    pub mark: DecimalMark,
    /// Day or night.
    pub theme: Theme,
    /// Whether tones are played.
    pub sound: Sound,
    /// Who holds the phone.
    pub by: String,
    /// The currency's ISO 4217 code.
    pub currency: String,
    /// The shop's tax in percent, as typed; empty for none.
    pub tax_percent: String,
    /// Where the tax is rounded.
    pub tax_rounding: TaxRounding,
    /// This van's mark on invoices; empty for none.
    pub van: String,
    /// The shop's name; empty if it is not known.
    pub shop_name: String,
    /// Whether the questions of the first start were answered or put off.
    pub introduced: bool,
    /// How customers reach the shop; empty if it is not told.
    pub contact: String,
    /// What the shop promises on a repair, word for word; empty for nothing.
    pub warranty: String,
}

impl Settings {
    /// The choices kept on this phone, the locale's where there are none.
    pub fn read(shelf: &BrowserStore, locale: &str) -> Self {
        let word = |name: &str| shelf.setting(name).unwrap_or_default();
        let us = locale.ends_with("-US");
        Self {
            lang: Lang::English,
            system: System::from_code(&word("system")).unwrap_or(if us {
                System::Us
            } else {
                System::Metric
            }),
            // The browser is asked where nothing was chosen yet: that takes it a while.
            mark: DecimalMark::from_code(&word("mark")).unwrap_or_else(|| {
                if decimal_mark(locale) == ',' {
                    DecimalMark::Comma
                } else {
                    DecimalMark::Dot
                }
            }),
            theme: Theme::from_code(&word("theme")).unwrap_or(Theme::Day),
            sound: Sound::from_code(&word("sound")).unwrap_or(Sound::On),
            by: word("by"),
            currency: shelf
                .setting("currency")
                .unwrap_or_else(|| if us { "USD" } else { "EUR" }.to_owned()),
            tax_percent: word("tax_percent"),
            tax_rounding: TaxRounding::from_code(&word("tax_rounding"))
                .unwrap_or(TaxRounding::Total),
            van: word("van"),
            shop_name: word("shop_name"),
            introduced: word("introduced") == "yes",
            contact: word("contact"),
            warranty: word("warranty"),
        }
    }

    /// Keeps the choices on this phone.
    pub fn write(&self, shelf: &BrowserStore) {
        shelf.set_setting("system", self.system.code());
        shelf.set_setting("mark", self.mark.code());
        shelf.set_setting("theme", self.theme.code());
        shelf.set_setting("sound", self.sound.code());
        shelf.set_setting("by", &self.by);
        shelf.set_setting("currency", &self.currency);
        shelf.set_setting("tax_percent", &self.tax_percent);
        shelf.set_setting("tax_rounding", self.tax_rounding.code());
        shelf.set_setting("van", &self.van);
        shelf.set_setting("shop_name", &self.shop_name);
        let introduced = if self.introduced { "yes" } else { "" };
        shelf.set_setting("introduced", introduced);
        shelf.set_setting("contact", &self.contact);
        shelf.set_setting("warranty", &self.warranty);
    }

    /// Whether the first start was never gone through.
    pub const fn is_new(&self) -> bool {
        !self.introduced
    }

    /// How quantities are shown.
    pub const fn format(&self) -> Format {
        Format {
            system: self.system,
            decimal: self.mark,
        }
    }
}
