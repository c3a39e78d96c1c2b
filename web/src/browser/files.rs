//! Files to and from the person.

use slotwright_core::words::page::Label;
use slotwright_protocol::desk::Answer;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, File, FileList, HtmlAnchorElement, Url};

/// An address within the browser for a file of a text or of bytes; it holds until it is given back.
pub fn address(kind: &str, content: &JsValue) -> Option<String> {
    let as_kind = BlobPropertyBag::new();
    as_kind.set_type(kind);
    let blob = Blob::new_with_str_sequence_and_options(&js_sys::Array::of1(content), &as_kind).ok()?;
    Url::create_object_url_with_blob(&blob).ok()
}

/// Gives an address back: what it was of is no longer to be had by it.
pub fn give_back(address: &str) {
    // One that holds nothing is given back for nothing.
    let _ = Url::revoke_object_url(address);
}

/// Offers what the order desk hands over as a file to save: its name, or why there is none.
pub fn save(answer: Answer, kind: &str, content: &JsValue) -> Result<String, String> {
    let unsaved = || Label::FileNotSaved.text().into();
    match answer {
        Answer::File(name, _) => download(&name, kind, content).map(|()| name).ok_or_else(unsaved),
        Answer::No(why) => Err(why),
        Answer::Order(_) | Answer::Shown(_) | Answer::Said(_) => Err(unsaved()),
    }
}

/// Offers bytes as a file of that name; nothing where the browser saves none.
pub fn download(name: &str, kind: &str, content: &JsValue) -> Option<()> {
    let document = web_sys::window()?.document()?;
    let address = address(kind, content)?;
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

/// Reads no more than that of a file: what is larger is none of ours, and is told to be too large.
const READ_MOST: f64 = 16_000_000.0;

/// Files that were picked or dropped: a list of the browser's own is emptied when its field is.
pub fn listed(files: &FileList) -> Vec<File> {
    (0..files.length()).filter_map(|at| files.get(at)).collect()
}

/// What files hold, each with its name.
pub async fn bytes(files: Vec<File>) -> Vec<(String, JsValue)> {
    let mut read = Vec::new();
    for file in files {
        let Ok(part) = file.slice_with_f64_and_f64(0.0, READ_MOST) else { continue };
        // A folder cannot be read: it is as a file without anything in it.
        let bytes = JsFuture::from(part.array_buffer()).await.unwrap_or_else(|_| js_sys::ArrayBuffer::new(0).into());
        read.push((file.name(), js_sys::Uint8Array::new(&bytes).into()));
    }
    read
}
