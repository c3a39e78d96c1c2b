//! The range file, fetched when the page starts and when somebody tries again.

use std::time::Duration;

use super::page;
use crate::part;
use leptos::prelude::set_timeout;
use slotwright_core::range::Range;
use slotwright_core::words::page::Label;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::{AbortController, RequestInit, Response};

/// The range that is built into the page, for when the file cannot be fetched. It was judged when the page was built.
pub const BUILT_IN: &str = include_str!(concat!(env!("OUT_DIR"), "/range.toml"));

/// How long a line that gives nothing is waited for.
const PATIENCE: Duration = Duration::from_secs(8);

/// The text of `ranges/fenland.toml` beside the page.
///
/// # Errors
///
/// Says why it is not there.
pub async fn fetch() -> Result<String, Label> {
    let line = AbortController::new().ok();
    if let Some(line) = line.clone() {
        set_timeout(move || line.abort(), PATIENCE);
    }
    let is_silent = || line.as_ref().is_some_and(|line| line.signal().aborted());
    let text = text(line.as_ref()).await;
    text.ok_or_else(|| if is_silent() { Label::RangeSilent } else { Label::RangeNotFetched })
}

async fn text(line: Option<&AbortController>) -> Option<String> {
    let how = RequestInit::new();
    if let Some(line) = line {
        how.set_signal(Some(&line.signal()));
    }
    // The workshop's page stands in a folder of its own.
    let file = if page::is_workshop() { "../ranges/fenland.toml" } else { "ranges/fenland.toml" };
    let asked = web_sys::window()?.fetch_with_str_and_init(file, &how);
    let response: Response = JsFuture::from(asked).await.ok()?.dyn_into().ok()?;
    if !response.ok() {
        return None;
    }
    JsFuture::from(response.text().ok()?).await.ok()?.as_string()
}

/// Why there is no range.
#[derive(Clone, Debug)]
pub struct NoRange {
    /// What is said at once.
    pub why: Label,
    /// The file that cannot be read, if there is one: the order desk tells what is wrong with it.
    pub file: Option<String>,
}

/// The range of a file, or why there is none. A file is judged by a part of the program that is loaded for that, unless it is the
/// one that was built in.
///
/// # Errors
///
/// Says what is wrong, with the file if it is there.
pub async fn read(fetched: &Result<String, Label>) -> Result<Range, NoRange> {
    let text = fetched.as_ref().map_err(|why| NoRange { why: *why, file: None })?;
    // It has no empty lines.
    let range = if text.lines().filter(|line| !line.is_empty()).eq(BUILT_IN.lines()) {
        Range::parse_judged(text)
    } else {
        let judged = part::judged(text.clone()).await;
        judged.map_err(|_| NoRange { why: Label::RangeNotFetched, file: None })?
    };
    range.ok_or_else(|| NoRange { why: Label::RangeUnread, file: Some(text.clone()) })
}

/// Loads the page anew with the file that is there now; what was chosen is saved.
pub fn load_anew() {
    if let Some(window) = web_sys::window() {
        // A page that does not load anew stays as it is.
        let _ = window.location().reload();
    }
}
