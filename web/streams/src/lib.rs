//! In place of the crate of this name, by which Leptos's server functions stream from and to a server. The page calls no
//! server, but what that crate exports to JavaScript stays in every page that is linked with it, used or not.
//! Here is what Leptos names of it; no value of it ever exists.

use futures_util::stream::Pending;
use wasm_bindgen::{JsValue, throw_str};

/// A stream of the browser.
#[derive(Debug)]
pub enum ReadableStream {}

impl ReadableStream {
    /// Throws.
    pub fn from_raw(_: impl Into<JsValue>) -> Self {
        throw_str("no server is called here")
    }

    /// Throws.
    pub fn from_stream(_: impl Sized) -> Self {
        throw_str("no server is called here")
    }

    /// Nothing can ask for it.
    pub fn into_raw(self) -> JsValue {
        match self {}
    }

    /// Nothing can ask for it.
    pub fn into_stream(self) -> Pending<Result<JsValue, JsValue>> {
        match self {}
    }
}
