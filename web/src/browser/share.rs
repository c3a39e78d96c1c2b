//! What stands in a dialog to the clipboard or to another program, where the browser does that.

use std::cell::RefCell;

use js_sys::{Array, Object, Promise, Reflect};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::JsValue;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Element, File, FilePropertyBag, HtmlTextAreaElement};

use super::member::{call, member};

fn navigator() -> Option<JsValue> {
    web_sys::window().and_then(|window| member(&window, "navigator"))
}

/// Waits for what a browser promised, if it did.
async fn kept(promise: Option<JsValue>) -> bool {
    match promise.and_then(|promise| promise.dyn_into::<Promise>().ok()) {
        Some(promise) => JsFuture::from(promise).await.is_ok(),
        None => false,
    }
}

/// The field of a dialog with what is taken away.
fn field(dialog: &Element) -> Option<HtmlTextAreaElement> {
    dialog.query_selector("textarea").ok()??.dyn_into().ok()
}

/// Copies what stands in the field of a dialog, or selects it; whether it was copied.
// Source: Clipboard API and events, `writeText`: there in secure contexts alone.
pub async fn copy(dialog: &Element) -> bool {
    let Some(field) = field(dialog) else { return false };
    let clipboard = navigator().and_then(|navigator| member(&navigator, "clipboard"));
    let copied = kept(clipboard.and_then(|clipboard| call(&clipboard, "writeText", &field.value().into()))).await;
    if !copied {
        field.select();
    }
    copied
}

/// Whether addresses can be given to other programs.
// Source: Web Share API, `share`.
pub fn offered() -> bool {
    navigator().is_some_and(|navigator| member(&navigator, "share").is_some())
}

/// Offers the address in the field of a dialog to other programs; nothing is to be said where the person picks none.
pub async fn share(dialog: &Element) {
    let data = Object::new();
    if let Some(field) = field(dialog) {
        // A plain object takes any member.
        let _ = Reflect::set(&data, &"url".into(), &field.value().into());
    }
    kept(navigator().and_then(|navigator| call(&navigator, "share", &data))).await;
}

thread_local! {
    /// The file that other programs can get.
    static OFFERED: RefCell<JsValue> = const { RefCell::new(JsValue::UNDEFINED) };
}

/// Makes a file ready for other programs; whether the browser gives them any like it.
// Source: Web Share API, `canShare`; File API, the constructor of files.
pub fn offer_file(name: &str, kind: &str, content: &JsValue) -> bool {
    let data = shareable(name, kind, content).unwrap_or_default();
    let can = navigator().and_then(|navigator| call(&navigator, "canShare", &data)).is_some_and(|can| can.is_truthy());
    OFFERED.set(if can { data } else { JsValue::UNDEFINED });
    can
}

fn shareable(name: &str, kind: &str, content: &JsValue) -> Option<JsValue> {
    let (options, data) = (FilePropertyBag::new(), Object::new());
    options.set_type(kind);
    let file = File::new_with_u8_array_sequence_and_options(&Array::of1(content), name, &options).ok()?;
    Reflect::set(&data, &"files".into(), &Array::of1(&file)).ok()?;
    Some(data.into())
}

/// Offers it to other programs; whether that was done, or the person did not want it any more.
// Source: Web Share API, `share`: an `AbortError` where no program was picked.
pub async fn share_file() -> bool {
    let data = OFFERED.with_borrow(JsValue::clone);
    let promise = navigator().and_then(|navigator| call(&navigator, "share", &data)?.dyn_into::<Promise>().ok());
    let Some(promise) = promise else { return false };
    match JsFuture::from(promise).await {
        Ok(_) => true,
        Err(error) => member(&error, "name").is_some_and(|name| name == "AbortError"),
    }
}
