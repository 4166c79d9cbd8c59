//! The only reading of the clock, and timers that stop when they are dropped.

use chrono::{Datelike, NaiveDateTime, Timelike};
use js_sys::{Date, Promise};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

use super::js;
use super::stamp::Stamp;

/// This moment by the phone's clock.
pub fn now() -> Stamp {
    stamp_of(&Date::new_0())
}

/// A moment with the offset that held, or will hold, at this place.
pub fn stamp_at(utc_ms: i64) -> Stamp {
    // Exact for every moment a job can have: 2^53 ms are 285,000 years.
    stamp_of(&Date::new(&(utc_ms as f64).into()))
}

/// The moment at which the clock on the wall here shows this; a repeated hour is its first.
pub fn stamp_of_local(local: &NaiveDateTime) -> Option<Stamp> {
    let year = u32::try_from(local.year()).ok()?;
    let part = |number: u32| i32::try_from(number).ok();
    let date = Date::new_with_year_month_day_hr_min_sec(
        year,
        part(local.month0())?,
        part(local.day())?,
        part(local.hour())?,
        part(local.minute())?,
        part(local.second())?,
    );
    Some(stamp_of(&date))
}

/// Milliseconds since the page began; never goes back when somebody sets the clock.
pub fn monotonic_ms() -> f64 {
    js::window()
        .and_then(|window| window.performance())
        .map_or(0.0, |performance| performance.now())
}

/// The same in whole milliseconds.
pub fn ticks_ms() -> i64 {
    // A page is not open for 285,000 years.
    monotonic_ms() as i64
}

fn stamp_of(date: &Date) -> Stamp {
    // `getTimezoneOffset` counts west as positive, and a cast of NaN gives zero.
    Stamp {
        utc_ms: date.get_time() as i64,
        offset_min: -(date.get_timezone_offset() as i32),
    }
}

// web-sys takes the handles for 32 bits, which cuts those of a clock that a test has put in place.
#[wasm_bindgen]
extern "C" {
    #[wasm_bindgen(js_name = setTimeout)]
    fn set_timeout(callback: &JsValue, ms: i32) -> JsValue;
    #[wasm_bindgen(js_name = clearTimeout)]
    fn clear_timeout(handle: &JsValue);
    #[wasm_bindgen(js_name = setInterval)]
    fn set_interval(callback: &JsValue, ms: i32) -> JsValue;
    #[wasm_bindgen(js_name = clearInterval)]
    fn clear_interval(handle: &JsValue);
}

/// A callback that is still to come; dropping it calls it off.
#[derive(Debug)]
#[must_use = "the callback is called off when the timer is dropped"]
pub struct Timer {
    handle: JsValue,
    repeats: bool,
    _callback: Closure<dyn FnMut()>,
}

/// Calls `callback` once, `ms` milliseconds from now.
pub fn after(ms: i32, callback: impl FnOnce() + 'static) -> Timer {
    let callback = Closure::once(callback);
    let handle = set_timeout(callback.as_ref(), ms);
    Timer {
        handle,
        repeats: false,
        _callback: callback,
    }
}

/// Calls `callback` every `ms` milliseconds until the timer is dropped.
pub fn every(ms: i32, callback: impl Fn() + 'static) -> Timer {
    let callback = Closure::<dyn FnMut()>::new(callback);
    let handle = set_interval(callback.as_ref(), ms);
    Timer {
        handle,
        repeats: true,
        _callback: callback,
    }
}

/// Waits so many milliseconds.
pub async fn pause(ms: i32) {
    let over = Promise::new(&mut |resolve, _| {
        set_timeout(&resolve, ms);
    });
    // A timer refuses nothing.
    let _ = JsFuture::from(over).await;
}

/// Calls `callback` once, `ms` milliseconds from now, and cannot be called off.
pub fn later(ms: i32, callback: impl FnOnce() + 'static) {
    let callback = Closure::once_into_js(callback);
    if let Some(window) = js::window() {
        let handler = callback.unchecked_ref();
        let _ = window.set_timeout_with_callback_and_timeout_and_arguments_0(handler, ms);
    }
}

impl Drop for Timer {
    fn drop(&mut self) {
        if self.repeats {
            clear_interval(&self.handle);
        } else {
            clear_timeout(&self.handle);
        }
    }
}
