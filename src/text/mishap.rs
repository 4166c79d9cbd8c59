//! What goes wrong with a fastener, and what else is off.

use super::table::phrases;

phrases! {
    mended(item: &str) => "{item}: fixed",
    mended_key(part: &str) => "In by hand: {part}",
    replaced_key(part: &str) => "Replaced: {part}",
    also_off(name: &str) => "Also off: {name}",
    adapter(wrench: &str, adapter: &str, angle: &str) =>
        "Adapter: wrench {wrench}, adapter {adapter}, {angle}",
    swing(angle: &str) => "Swung {angle} more",
    angle_behind(behind: &str, asked: &str) => "{behind} of {asked}",
    stage_of(stage: usize, all: usize) => "stage {stage} of {all}",
    with_wrench(wrench: &str, set: &str) => "{wrench} at {set}",
}
