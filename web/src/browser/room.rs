//! The unit in the person's own room: whether the device can show it, and the component that does.

use js_sys::Promise;
use leptos::prelude::{Callable, Callback};
use slotwright_core::words::page::Label;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Element, Url};

use super::files;
use super::member::{call, member};
use super::page;

/// The component's module: copied beside the page by its build, loaded when somebody asks for it.
const MODULE: &str = "room/model-viewer.js";

/// Calls a method with a text, if there is one.
fn ask(of: &JsValue, method: &str, with: &str) -> Option<JsValue> {
    call(of, method, &JsValue::from_str(with))
}

/// What is held in a hand, or worn.
const HANDHELD: &str = "(pointer: coarse)";

/// Whether the device's own viewer shows things in the room.
// Source: DOM, `relList.supports`.
fn has_viewer() -> bool {
    let link = web_sys::window().and_then(|window| window.document()?.create_element("a").ok());
    let supports = link.and_then(|link| ask(&member(&link, "relList")?, "supports", "ar"));
    supports.is_some_and(|answer| answer.is_truthy())
}

/// What sessions could be asked of.
// Source: WebXR Device API, `navigator.xr`.
fn sessions() -> Option<JsValue> {
    let window = web_sys::window()?;
    member(&member(&window, "navigator")?, "xr")
}

/// Whether this device may show things in the room: nothing is asked for that, since a browser does not keep a page that
/// has asked for sessions for the way back to it.
pub fn is_offered() -> bool {
    sessions().is_some() && page::prefers(HANDHELD) || has_viewer()
}

/// Whether it does, by a session of its own or by its viewer.
// Source: WebXR Device API, `isSessionSupported`.
pub async fn is_possible() -> bool {
    let session = sessions().and_then(|sessions| ask(&sessions, "isSessionSupported", "immersive-ar"));
    if let Some(session) = session.and_then(|session| session.dyn_into::<Promise>().ok())
        && JsFuture::from(session).await.is_ok_and(|answer| answer.is_truthy())
    {
        return true;
    }
    has_viewer()
}

/// Puts the component for a solid's bytes into an element; `broken` hears it if that cannot be done.
pub fn stand(host: &Element, bytes: &JsValue, alt: &str, broken: Callback<()>) {
    if begin(host, bytes, alt, broken).is_none() {
        broken.run(());
    }
}

fn begin(host: &Element, bytes: &JsValue, alt: &str, broken: Callback<()>) -> Option<()> {
    let document = web_sys::window()?.document()?;
    let module = document.create_element("script").ok()?;
    let viewer = document.create_element("model-viewer").ok()?;
    // A unit stands on the floor in its true size; nobody may make it smaller.
    for (name, value) in [
        ("src", &*files::address("model/gltf-binary", bytes)?),
        ("alt", alt),
        ("ar", ""),
        ("ar-modes", "webxr quick-look"),
        ("ar-scale", "fixed"),
        ("camera-controls", ""),
        ("shadow-intensity", "1"),
        ("interaction-prompt", "none"),
    ] {
        viewer.set_attribute(name, value).ok()?;
    }
    // The component shows this button where it can go on into the room.
    let go = document.create_element("button").ok()?;
    go.set_attribute("slot", "ar-button").ok()?;
    go.set_class_name("main");
    go.set_text_content(Some(Label::StandItHere.text()));
    viewer.append_child(&go).ok()?;
    host.append_child(&viewer).ok()?;
    let failed = Closure::once_into_js(move || broken.run(()));
    module.add_event_listener_with_callback("error", failed.unchecked_ref()).ok()?;
    module.set_attribute("type", "module").ok()?;
    // A module that was loaded already is not loaded again.
    module.set_attribute("src", MODULE).ok()?;
    host.append_child(&module).ok()?;
    Some(())
}

/// Takes all of it away again.
pub fn clear(host: &Element) {
    while let Some(child) = host.first_element_child() {
        if let Some(address) = child.get_attribute("src").filter(|address| address.starts_with("blob:")) {
            // An address that is gone already needs no giving back.
            let _ = Url::revoke_object_url(&address);
        }
        child.remove();
    }
}
