//! Files to and from the person.

use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, File, HtmlAnchorElement, Url};

/// Offers a text as a file to save.
pub fn download(name: &str, text: &str) -> Option<()> {
    let document = web_sys::window()?.document()?;
    let parts = js_sys::Array::of1(&JsValue::from_str(text));
    let kind = BlobPropertyBag::new();
    kind.set_type("application/json");
    let blob = Blob::new_with_str_sequence_and_options(&parts, &kind).ok()?;
    let address = Url::create_object_url_with_blob(&blob).ok()?;
    let link: HtmlAnchorElement = document.create_element("a").ok()?.dyn_into().ok()?;
    link.set_href(&address);
    link.set_download(name);
    link.click();
    let _ = Url::revoke_object_url(&address);
    Some(())
}

/// Largest file that is read at all.
const BYTES_MOST: f64 = 1_000_000.0;

/// The text of a file that was picked; `None` if it cannot be read or is far too large.
pub async fn text(file: File) -> Option<String> {
    if file.size() > BYTES_MOST {
        return None;
    }
    JsFuture::from(file.text()).await.ok()?.as_string()
}
