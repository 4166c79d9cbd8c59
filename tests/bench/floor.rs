//! The least that a page of this kind can be: Leptos mounted on nothing, built like the app.

#[cfg(target_arch = "wasm32")]
fn main() {
    leptos::mount::mount_to_body(|| ());
    let page = web_sys::window().and_then(|window| window.document());
    if let Some(html) = page.and_then(|document| document.document_element()) {
        let _ = html.set_attribute("data-ready", "");
    }
}

#[cfg(not(target_arch = "wasm32"))]
fn main() {}
