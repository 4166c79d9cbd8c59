//! What stands beside the vehicle: earlier visits of the same one, and its bar code.

use super::table::{phrases, sentences};

sentences! {
    /// A word at the vehicle.
    pub enum VehicleWord, vehicle_word {
        NoDecision => "no decision",
        HubReplaced => "hub replaced",
        NothingReplaced => "not replaced",
        StillOpen => "job not finished",
        OtherVin => "Same plate, another VIN: it may be another car.",
        Scan => "Scan VIN bar code",
        StopScan => "Stop scanning",
        ScanHint => "Hold the bar code of the windshield or the door label across the picture.",
        Asking => "Allow the camera.",
        CameraDenied =>
            "The camera was refused. Allow it in the browser's settings, or type the VIN.",
        CameraNone => "No camera, or another app is using it. Type the VIN.",
        NoVin => "That code holds no VIN. Try another code on the car.",
        ReadAgain => "The check digit does not match. Hold still: it is read once more.",
        Scanned => "VIN scanned. Compare its last four with the car.",
    }
}

phrases! {
    earlier_visits(count: usize) => "Earlier visits: {count}",
    visit_corner(corner: &str, found: &str, done: &str) => "{corner}: {found}, {done}",
}
