//! Workers: the same program once more, beside the page.

use wasm_bindgen::{JsCast, JsValue};
use web_sys::{HtmlScriptElement, Worker, WorkerOptions, WorkerType};

use crate::part::Part;

/// The element that loads the program's script, in `index.html`.
const SCRIPT: &str = "start";

/// Starts a worker for a part and hands it the compiled program, so that it is neither loaded nor compiled again.
///
/// # Errors
///
/// Fails where the browser has no workers.
pub fn start(part: Part) -> Result<Worker, JsValue> {
    let document = web_sys::window().and_then(|window| window.document());
    let script = document.and_then(|document| document.get_element_by_id(SCRIPT));
    let script = script.and_then(|script| script.dyn_into::<HtmlScriptElement>().ok()).ok_or(JsValue::NULL)?;
    let options = WorkerOptions::new();
    options.set_type(WorkerType::Module);
    options.set_name(part.name());
    // The name is in the address as well, where developers' tools show it.
    let worker = Worker::new_with_options(&format!("{}#{}", script.src(), part.name()), &options)?;
    worker.post_message(&wasm_bindgen::module())?;
    Ok(worker)
}
