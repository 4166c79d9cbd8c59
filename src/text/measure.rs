//! The words of a measurement.

use super::table::phrases;

phrases! {
    back_by(angle: &str) => "back {angle}",
    threadlocker(grade: &str) => "Threadlocker: {grade}",
    median_says(mean: &str, median: &str) =>
        "Mean {mean}, median {median}: one cycle stands apart from the others",
    tip_line(angle: &str) =>
        "Tip off square by {angle}: every play is the reading times its cosine",
    creep_line(divisions: &str) =>
        "The needle crept by {divisions} divisions untouched, as a warming arm does",
}
