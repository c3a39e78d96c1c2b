//! Members of the browser's own objects that a browser may or may not have.

use js_sys::{Function, Reflect};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::JsValue;

/// The member of that name, if there is one.
pub(super) fn member(of: &JsValue, name: &str) -> Option<JsValue> {
    Reflect::get(of, &JsValue::from_str(name)).ok().filter(|member| !member.is_undefined() && !member.is_null())
}

/// Calls the method of that name, if there is one.
pub(super) fn call(of: &JsValue, method: &str, with: &JsValue) -> Option<JsValue> {
    member(of, method)?.dyn_into::<Function>().ok()?.call1(of, with).ok()
}
