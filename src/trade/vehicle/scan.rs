//! The number of a vehicle out of the text of a bar code, and when a reading of it is taken.

use super::vin::{CheckDigit, Vin};

/// How many characters a number has.
const LENGTH: usize = 17;

/// The number in the text of a bar code: a run of letters and digits of its own among other text.
///
/// A code 39 on the door of an imported vehicle may begin with the letter I, which no number has: it
/// is left out. Of several numbers one whose check digit passes comes first.
///
/// # Source
/// The letter I before the number of an imported vehicle: from memory, no source.
///
/// ```
/// use hubslate::trade::vehicle::scan::vin_in;
///
/// let vin = vin_in("I1M8GDM9AXKP042788").unwrap();
/// assert_eq!(vin.as_str(), "1M8GDM9AXKP042788");
/// ```
pub fn vin_in(text: &str) -> Option<Vin> {
    let runs = text.split(|c: char| !c.is_ascii_alphanumeric());
    let found: Vec<Vin> = runs.filter_map(of_run).collect();
    let passes = found.iter().find(|it| it.check() == CheckDigit::Passes);
    passes.or(found.first()).cloned()
}

fn of_run(run: &str) -> Option<Vin> {
    let import = run.strip_prefix(['I', 'i']);
    let number = import.filter(|rest| rest.len() == LENGTH).unwrap_or(run);
    Vin::parse(number).ok()
}

/// What becomes of one look at a code.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Scanned {
    /// A number to be taken.
    Taken(Vin),
    /// A number whose check digit differs: taken once it is read a second time in a row.
    Again,
    /// A code that has no number in it.
    NoVin,
}

/// Readings one after the other.
///
/// A bar of code 39 can be misread, and it has no check of its own: a number whose check digit
/// passes is taken at once, any other, which is lawful outside North America, only when two looks in
/// a row read the same (common practice, no source).
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct VinScan {
    last: Option<Vin>,
}

impl VinScan {
    /// What becomes of the text of one look.
    pub fn look(&mut self, text: &str) -> Scanned {
        let Some(vin) = vin_in(text) else {
            return Scanned::NoVin;
        };
        let sure = vin.check() == CheckDigit::Passes || self.last.as_ref() == Some(&vin);
        if sure {
            self.last = None;
            return Scanned::Taken(vin);
        }
        self.last = Some(vin);
        Scanned::Again
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The sample number of 49 CFR 565.
    const SAMPLE: &str = "1M8GDM9AXKP042788";
    /// The same with one digit misread.
    const MISREAD: &str = "1M8GDM9AXKP042789";

    fn read(text: &str) -> Option<String> {
        vin_in(text).map(|vin| vin.as_str().to_owned())
    }

    #[test]
    fn the_letter_of_an_import_is_left_out_and_no_other() {
        assert_eq!(read(&format!("I{SAMPLE}")).as_deref(), Some(SAMPLE));
        assert_eq!(read(&format!("i{SAMPLE}")).as_deref(), Some(SAMPLE));
        assert_eq!(read(&format!("A{SAMPLE}")), None);
        assert_eq!(read(&format!("I{SAMPLE}7")), None);
        // An I within is no number at all.
        assert_eq!(read("I1M8GDM9AXKP04278"), None);
    }

    #[test]
    fn a_number_is_found_among_other_text_and_a_longer_run_is_none() {
        assert_eq!(read(SAMPLE).as_deref(), Some(SAMPLE));
        assert_eq!(read(&format!("*{SAMPLE}*")).as_deref(), Some(SAMPLE));
        let label = format!("VIN:{SAMPLE};PAINT:7X2;GVWR 2100");
        assert_eq!(read(&label).as_deref(), Some(SAMPLE));
        assert_eq!(read("4006381333931"), None);
        assert_eq!(read(&format!("{SAMPLE}{SAMPLE}")), None);
        assert_eq!(read(""), None);
    }

    #[test]
    fn of_two_numbers_the_one_that_passes_comes_first() {
        let two = format!("{MISREAD},{SAMPLE}");
        assert_eq!(read(&two).as_deref(), Some(SAMPLE));
    }

    #[test]
    fn a_number_that_fails_its_check_digit_is_read_twice_in_a_row() {
        let mut scan = VinScan::default();
        assert_eq!(scan.look(MISREAD), Scanned::Again);
        assert!(matches!(scan.look(SAMPLE), Scanned::Taken(vin) if vin.as_str() == SAMPLE));
        // The row was broken by a good one.
        assert_eq!(scan.look(MISREAD), Scanned::Again);
        assert!(matches!(scan.look(MISREAD), Scanned::Taken(vin) if vin.as_str() == MISREAD));
        assert_eq!(scan.look("4006381333931"), Scanned::NoVin);
    }

    #[test]
    fn two_different_misreadings_are_not_taken() {
        let mut scan = VinScan::default();
        assert_eq!(scan.look(MISREAD), Scanned::Again);
        assert_eq!(scan.look("1M8GDM9AXKP042787"), Scanned::Again);
        assert_eq!(scan.look(MISREAD), Scanned::Again);
    }
}
