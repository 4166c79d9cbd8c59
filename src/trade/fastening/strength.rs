//! What a bolt of a class bears before it stays longer than it was.

use super::thread::Thread;
use crate::units::{Area, AreaUnit, Force, ForceUnit, LengthUnit, Pressure, PressureUnit};
use crate::words;

words! {
    /// The class marked on the head of a bolt or the end of a stud.
    pub enum PropertyClass {
        /// ISO 898-1, class 8.8.
        Iso88 = "8.8",
        /// ISO 898-1, class 10.9.
        Iso109 = "10.9",
        /// ISO 898-1, class 12.9.
        Iso129 = "12.9",
        /// SAE J429, grade 1.
        Grade1 = "grade_1",
        /// SAE J429, grade 2.
        Grade2 = "grade_2",
        /// SAE J429, grade 5.
        Grade5 = "grade_5",
        /// SAE J429, grade 8.
        Grade8 = "grade_8",
    }
}

/// The three stresses of a grade, psi, and the diameters in inches for which they stand.
struct Grade {
    psi: [u32; 3],
    inches: (f64, f64),
}

/// Proof, yield and tensile strength of the SAE J429 grades.
///
/// # Source
/// SAE J429 as tabulated by a fastener supplier; checked against
/// `tests/reference/04_fasteners.json`. The diameters of grades 1 and 8 are from memory.
const fn grade(class: PropertyClass) -> Option<Grade> {
    let (psi, inches) = match class {
        PropertyClass::Grade1 => ([33_000, 36_000, 60_000], (0.25, 1.5)),
        PropertyClass::Grade2 => ([55_000, 57_000, 74_000], (0.25, 0.75)),
        PropertyClass::Grade5 => ([85_000, 92_000, 120_000], (0.25, 1.0)),
        PropertyClass::Grade8 => ([120_000, 130_000, 150_000], (0.25, 1.5)),
        PropertyClass::Iso88 | PropertyClass::Iso109 | PropertyClass::Iso129 => return None,
    };
    Some(Grade { psi, inches })
}

/// Proof, yield and tensile strength of an SAE grade; `None` for an ISO class.
pub fn grade_strengths(class: PropertyClass) -> Option<[Pressure; 3]> {
    let psi =
        |value: u32| Pressure::new(f64::from(value), PressureUnit::Psi).unwrap_or(Pressure::ZERO);
    Some(grade(class)?.psi.map(psi))
}

/// Diameter and pitch in mm, and the proof load in N as printed for 8.8, 10.9 and 12.9.
///
/// Two of the printed loads (M10 and M16, 8.8) are not the product of area and stress to three
/// digits, so that the table is kept as a table.
///
/// # Source
/// ISO 898-1, coarse pitch read in transcription, fine pitch from memory; checked against
/// `tests/reference/04_fasteners.json`.
const PRINTED: [(f64, f64, [u32; 3]); 7] = [
    (8.0, 1.25, [21_200, 30_400, 35_500]),
    (10.0, 1.5, [33_700, 48_100, 56_300]),
    (12.0, 1.75, [48_900, 70_000, 81_800]),
    (14.0, 2.0, [66_700, 95_500, 112_000]),
    (16.0, 2.0, [91_000, 130_000, 152_000]),
    (12.0, 1.5, [51_100, 73_100, 85_500]),
    (14.0, 1.5, [72_500, 104_000, 121_000]),
];

/// The load under which a bolt of this thread and class must not stay longer.
///
/// As printed where the table has the thread; for another metric thread and a class of ISO 898-1
/// as that standard makes it, area and load to three figures. For an inch thread and an SAE grade
/// `F = A · Sp` with the stress area of the thread. `None` where the class is not made in that
/// diameter.
pub fn proof_load(thread: &Thread, class: PropertyClass) -> Option<Force> {
    let pitch = thread.pitch().in_unit(LengthUnit::Millimetre);
    let row = PRINTED
        .iter()
        .find(|(d, p, ..)| thread.is_about_mm(*d) && (pitch - p).abs() < 1e-6);
    let column = match class {
        PropertyClass::Iso88 => Some(0),
        PropertyClass::Iso109 => Some(1),
        PropertyClass::Iso129 => Some(2),
        _ => None,
    };
    let printed = column.and_then(|column: usize| row?.2.get(column).copied());
    match printed {
        Some(newtons) => Force::new(f64::from(newtons), ForceUnit::Newton).ok(),
        None if column.is_some() && thread.is_metric() => {
            let load = proof_stress(thread, class)?.on(printed_area(thread));
            let newtons = three_figures(load.in_unit(ForceUnit::Newton));
            Force::new(newtons, ForceUnit::Newton).ok()
        }
        None => Some(proof_stress(thread, class)?.on(thread.stress_area())),
    }
}

/// The nominal stress area as ISO 898-1 prints it: to three figures.
pub fn printed_area(thread: &Thread) -> Area {
    let square_mm = thread.stress_area().in_unit(AreaUnit::SquareMillimetre);
    Area::new(three_figures(square_mm), AreaUnit::SquareMillimetre).unwrap_or(Area::ZERO)
}

/// A number above zero to three significant figures.
fn three_figures(value: f64) -> f64 {
    if value <= 0.0 {
        return value;
    }
    let step = 10_f64.powf(value.log10().floor() - 2.0);
    (value / step).round() * step
}

/// Proof stress; for 8.8 above 16 mm it is 600 MPa (ISO 898-1, from memory).
fn proof_stress(thread: &Thread, class: PropertyClass) -> Option<Pressure> {
    if let Some(grade) = grade(class) {
        let inches = thread.diameter().in_unit(LengthUnit::Inch);
        let made = grade.inches.0 - 1e-6 <= inches && inches <= grade.inches.1 + 1e-6;
        let [proof, ..] = grade_strengths(class)?;
        return made.then_some(proof);
    }
    let mm = thread.diameter().in_unit(LengthUnit::Millimetre);
    let mpa = match class {
        PropertyClass::Iso88 if mm > 16.0 => 600.0,
        PropertyClass::Iso88 => 580.0,
        PropertyClass::Iso109 => 830.0,
        _ => 970.0,
    };
    Pressure::new(mpa, PressureUnit::Megapascal).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn load(thread: &str, class: PropertyClass) -> Option<f64> {
        let thread = Thread::parse(thread).unwrap();
        proof_load(&thread, class).map(|force| force.in_unit(ForceUnit::Newton))
    }

    // ISO 898-1, fine pitch: stress area in mm², proof loads of 8.8, 10.9 and 12.9 in N, as printed
    // and recalled (memory); each is the area to three figures times 580 (600 above 16 mm), 830 and
    // 970 MPa, to three figures.
    #[test]
    fn a_thread_off_the_table_is_as_the_standard_prints_it() {
        let classes = [
            PropertyClass::Iso88,
            PropertyClass::Iso109,
            PropertyClass::Iso129,
        ];
        for (thread, area, loads) in [
            ("M8x1", 39.2, [22_700.0, 32_500.0, 38_000.0]),
            ("M10x1.25", 61.2, [35_500.0, 50_800.0, 59_400.0]),
            ("M12x1.25", 92.1, [53_400.0, 76_400.0, 89_300.0]),
            ("M16x1.5", 167.0, [96_900.0, 139_000.0, 162_000.0]),
            ("M20x1.5", 272.0, [163_000.0, 226_000.0, 264_000.0]),
            ("M22x1.5", 333.0, [200_000.0, 276_000.0, 323_000.0]),
            ("M24x2", 384.0, [230_000.0, 319_000.0, 372_000.0]),
        ] {
            let printed = printed_area(&Thread::parse(thread).unwrap());
            let printed = printed.in_unit(AreaUnit::SquareMillimetre);
            assert!((printed - area).abs() < 1e-9, "{thread}: {printed}");
            for (class, expected) in classes.iter().zip(loads) {
                let newtons = load(thread, *class).unwrap();
                assert!((newtons - expected).abs() < 1e-6, "{thread} {newtons}");
            }
        }
    }

    #[test]
    fn a_grade_bears_nothing_in_a_size_it_is_not_made_in() {
        assert_eq!(load("1-14", PropertyClass::Grade2), None);
        assert!(load("3/4-16", PropertyClass::Grade2).is_some());
    }

    #[test]
    fn a_higher_class_bears_more() {
        for thread in ["M12x1.5", "M22x1.5", "1/2-20"] {
            let loads: Vec<f64> = [
                PropertyClass::Iso88,
                PropertyClass::Iso109,
                PropertyClass::Iso129,
            ]
            .into_iter()
            .map(|class| load(thread, class).unwrap())
            .collect();
            assert!(loads.windows(2).all(|pair| pair[0] < pair[1]), "{thread}");
        }
    }
}
