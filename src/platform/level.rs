//! The phone as a level: how its screen is tilted, to measure the slope of the ground.
//!
//! Absence is normal: no sensor, no permission, a desktop.

use js_sys::Promise;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::DeviceOrientationEvent;

use super::event::Listener;
use super::js;

/// How the phone lies, turned from flat on its back with the screen up.
///
/// # Source
/// W3C Device Orientation and Motion, intrinsic Tait-Bryan angles Z-X'-Y''.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tilt {
    /// Degrees by which the top edge is higher than the bottom edge, -180 to 180.
    pub beta_deg: f64,
    /// Degrees by which the left edge is higher than the right edge, -90 to 90.
    pub gamma_deg: f64,
}

/// Asks for the sensor where that is needed; call it in the handler of a tap.
///
/// True where nobody has to be asked; whether anything is then heard is another matter.
pub async fn ask() -> bool {
    let Some(window) = js::window() else {
        return false;
    };
    let Some(event) = js::property(&window, "DeviceOrientationEvent") else {
        return false;
    };
    let Some(request) = js::method(&event, "requestPermission") else {
        return true;
    };
    let Some(promise) = request
        .call0(&event)
        .ok()
        .and_then(|asked| asked.dyn_into::<Promise>().ok())
    else {
        return false;
    };
    JsFuture::from(promise)
        .await
        .is_ok_and(|answer| answer.as_string().as_deref() == Some("granted"))
}

/// Calls `tilted` with every reading until the guard is dropped; never without a sensor.
pub fn watch(tilted: impl Fn(Tilt) + 'static) -> Option<Listener> {
    Listener::on_window("deviceorientation", move |event| {
        let Ok(event) = event.dyn_into::<DeviceOrientationEvent>() else {
            return;
        };
        // A browser without the sensor sends one event of nulls.
        if let (Some(beta_deg), Some(gamma_deg)) = (event.beta(), event.gamma()) {
            tilted(Tilt {
                beta_deg,
                gamma_deg,
            });
        }
    })
}
