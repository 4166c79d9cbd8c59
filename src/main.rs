//! The app in the browser; on a computer, a word on how to start it.

#[cfg(target_arch = "wasm32")]
fn main() {
    leptos::mount::mount_to_body(|| "Hubslate");
    keep_offline();
    mark_ready();
}

/// Asks the browser to keep this version for when there is no signal.
#[cfg(target_arch = "wasm32")]
fn keep_offline() {
    let Some(navigator) = web_sys::window().map(|window| window.navigator()) else {
        return;
    };
    // A page without HTTPS has no such property, and asking it would throw.
    if js_sys::Reflect::has(&navigator, &"serviceWorker".into()).unwrap_or(false) {
        let _ = navigator.service_worker().register("sw.js");
    }
}

/// Tells the tests, and the page's own crash script, that the app has started.
#[cfg(target_arch = "wasm32")]
fn mark_ready() {
    let page = web_sys::window().and_then(|window| window.document());
    if let Some(html) = page.and_then(|document| document.document_element()) {
        // A page that refuses an attribute is not worth stopping the app for.
        let _ = html.set_attribute("data-ready", "");
    }
}

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    println!(
        "Hubslate runs in a browser: `cargo run` builds it and serves it on http://localhost:8080."
    );
}
