//! What an uneventful practice job answers at each screen, by its name on the screen.

use super::phone::Phone;

/// What is answered otherwise: by the name or the full label of a screen.
pub type Otherwise<'a> = &'a [(&'a str, &'a dyn Fn(&Phone))];

/// Keys that are not the black one.
const KEYS: &[(&str, &str)] = &[
    ("The right car", "Same car"),
    ("Warning lights", "No lights"),
    ("Test drive", "Back and parked"),
    ("Rock: 12 and 6", "Nothing"),
    ("Rock: 9 and 3", "Nothing"),
    ("Push and pull", "Nothing"),
    ("Brake held", "The play is gone"),
    ("Spin by hand", "Smooth and quiet"),
    ("Compare other side", "Both the same"),
    ("Axle nut as found", "Tight, not touched"),
    ("Customer's answer", "Verbal approval"),
    ("Spin the hub", "Smooth and quiet"),
    ("Lug nuts tight", "All tight"),
];

impl Phone {
    /// A practice job, as far as the site.
    pub fn practice() -> Self {
        let phone = Self::new();
        phone.tap("New job");
        phone.tap("Practice job");
        phone.is_at("Site: The ground");
        phone
    }

    /// Whether this screen is shown.
    #[track_caller]
    pub fn is_at(&self, label: &str) {
        assert_eq!(self.label(), label, "{}", self.words());
    }

    /// Goes on until a screen of this label is shown.
    #[track_caller]
    pub fn walk(&self, until: &str, otherwise: Otherwise<'_>) {
        for _ in 0..300 {
            if self.label() == until {
                return;
            }
            self.step(otherwise);
        }
        panic!("`{until}` never came; at `{}`", self.label());
    }

    /// Answers what is on the screen.
    #[track_caller]
    pub fn step(&self, otherwise: Otherwise<'_>) {
        let label = self.label();
        let name = label.split_once(": ").map_or("", |(_, name)| name);
        let other = otherwise
            .iter()
            .find(|(of, _)| [label.as_str(), name].contains(of));
        match other {
            Some((_, act)) => act(self),
            None => self.usual(name),
        }
    }

    #[track_caller]
    fn usual(&self, name: &str) {
        match name {
            "Odometer" => self.number("81204"),
            "Heat: this hub" => self.number("97"),
            "Heat: other side" => self.number("95"),
            "Inspection approval" => {
                if self.has("Ask without a price") {
                    self.tap("Ask without a price");
                }
                self.tap("Verbal approval");
            }
            "Rises with speed" => {
                self.signs(&[
                    "rise with road speed",
                    "gentle swerve",
                    "coasting in neutral",
                ]);
            }
            "Full lock" => self.signs(&[]),
            "Push, pull, read" => self.round("0"),
            "Re-torque due" if self.has("Save the date") => self.tap("Save the date"),
            "Re-torque due" | "Signature" => self.not_done("No time"),
            _ => self.key_of(name),
        }
    }

    #[track_caller]
    fn key_of(&self, name: &str) {
        if let Some((_, key)) = KEYS.iter().find(|(of, key)| *of == name && self.has(key)) {
            return self.tap(key);
        }
        self.all_right();
        match self.primary() {
            Some(key) => self.tap(&key.label),
            None => self.not_done("No time"),
        }
    }

    /// Rows that were not yes are turned until they are.
    fn all_right(&self) {
        for _ in 0..40 {
            let wrong =
                |(_, answer): &(String, String)| matches!(answer.as_str(), "no" | "not_done");
            let Some(row) = self.rows().iter().position(wrong) else {
                return;
            };
            self.tap_row(row);
        }
    }

    /// The list of the signs of the road: a tap on each that was noticed, and no to the rest.
    pub fn signs(&self, noticed: &[&str]) {
        let alone = if noticed.is_empty() { "No" } else { "Yes" };
        if self.rows().is_empty() {
            return self.tap(alone);
        }
        for sign in noticed {
            let row = self.rows().iter().position(|(what, _)| what.contains(sign));
            self.tap_row(row.expect("the sign is asked for"));
        }
        self.black();
    }

    /// Taps the black key.
    #[track_caller]
    pub fn black(&self) {
        let key = self.primary().expect("a black key");
        self.tap(&key.label);
    }

    /// A number on the pad, and the key that saves it.
    pub fn number(&self, digits: &str) {
        for digit in digits.chars() {
            self.tap(&match digit {
                '.' => "Decimal mark".to_owned(),
                digit => digit.to_string(),
            });
        }
        self.black();
    }

    /// One cycle, typed on the pad.
    pub fn round(&self, number: &str) {
        self.tap("Number pad");
        self.number(number);
    }

    /// It was not done, and why.
    #[track_caller]
    pub fn not_done(&self, because: &str) {
        self.tap("Not done");
        self.tap(because);
    }

    /// Hands over and ends with the one ending that the app proposes.
    #[track_caller]
    pub fn finish(&self, ending: &str) {
        self.walk("Hand over: Report and file", &[]);
        if self.has("Handed over") {
            self.walk("Hand over: End of the job", &[]);
        }
        let starts = ["Export and end: ", "End the job here: "].map(|it| format!("{it}{ending}"));
        let key = starts.iter().find_map(|it| self.begins(it));
        self.tap(&key.unwrap_or_else(|| panic!("it does not end as {ending}: {}", self.words())));
        assert!(self.words().contains("The job has ended."));
    }

    /// From any step: More, then the end.
    pub fn end_here(&self) {
        self.tap("More");
        self.tap("End the job here");
        self.is_at("Hand over: End of the job");
        if self.has("Cannot, because…") {
            self.tap_in_page("No time");
        }
    }

    #[track_caller]
    fn tap_in_page(&self, label: &str) {
        self.tap(label);
    }
}
