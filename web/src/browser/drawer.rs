//! What the page keeps in the browser, by `page/drawer.js`: texts by name in its database, which tab has which of them, and
//! a word between tabs.

use js_sys::{Array, Promise};
use leptos::prelude::{Callable, Callback};
use slotwright_core::choice::draft::Draft;
use slotwright_core::range::Key;
use slotwright_core::words::page::Label;
use wasm_bindgen::prelude::{Closure, JsValue, wasm_bindgen};
use wasm_bindgen_futures::JsFuture;

mod script {
    use super::{Array, Closure, JsValue, Promise, wasm_bindgen};

    #[wasm_bindgen(raw_module = "./drawer.js")]
    extern "C" {
        pub(super) fn read() -> Promise;
        pub(super) fn write(pairs: Array) -> Promise;
        pub(super) fn drop(pairs: Array);
        pub(super) fn hold(name: &str) -> Promise;
        pub(super) fn hear(on: &Closure<dyn FnMut(JsValue)>);
        pub fn say(word: &str);
        pub fn leave();
        pub fn persist();
        pub fn stamp() -> String;
        pub fn fresh(kind: &str) -> String;
        pub fn note(name: &str, text: &str);
        pub(super) fn before() -> String;
        #[wasm_bindgen(js_name = beginSteps)]
        pub fn begin_steps(text: &str);
        pub fn step(unit: &str, number: usize, text: &str, is_visitor: bool);
        #[wasm_bindgen(js_name = goTo)]
        pub fn go_to(unit: &str, number: usize);
        #[wasm_bindgen(js_name = forgetSteps)]
        pub fn forget_steps(number: usize);
        pub(super) fn earlier(unit: &str) -> Array;
    }
}

pub use script::{begin_steps, forget_steps, fresh, go_to, leave, note, persist, say, stamp, step};

/// Why nothing can be read or kept.
pub type Fault = Label;

/// The steps that were kept with a unit.
#[derive(Clone, Debug, Default)]
pub struct Earlier {
    /// The number of the first.
    pub first: usize,
    /// The number of the present one.
    pub at: usize,
    /// All of them.
    pub steps: Vec<Draft>,
}

impl Earlier {
    /// Whether the present one is among them.
    fn is_whole(&self) -> bool {
        self.at.checked_sub(self.first).is_some_and(|at| at < self.steps.len())
    }
}

/// The steps that were kept with the unit of that name, if all of them are of the range.
pub fn earlier(unit: &str, range: &Key) -> Option<Earlier> {
    let found = script::earlier(unit);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "`as` saturates; `drawer.js` wrote it")]
    let number = |at| found.get(at).as_f64().map(|number| number as usize);
    let texts = found.iter().skip(2).map(|text| Draft::of_text(&text.as_string()?).filter(|step| step.range == *range));
    let earlier = Earlier { first: number(0)?, at: number(1)?, steps: texts.collect::<Option<_>>()? };
    Some(earlier).filter(Earlier::is_whole)
}

/// Begins to read all that is kept.
pub fn begin() -> Promise {
    script::read()
}

/// Name, text and whether another tab has it, of all that is kept.
///
/// # Errors
///
/// Why it cannot be read.
pub async fn read(begun: Promise) -> Result<Vec<Vec<String>>, Fault> {
    let found = JsFuture::from(begun).await.unwrap_or_default();
    if let Some(error) = found.as_string() {
        return Err(fault(&error));
    }
    let texts: Vec<String> = Array::from(&found).iter().filter_map(|text| text.as_string()).collect();
    Ok(texts.chunks(3).map(<[String]>::to_vec).collect())
}

/// Writes texts by their names, all or none; an empty text goes. The browser is asked at once: nothing is lost if the
/// page is left meanwhile.
pub fn write(pairs: &[[&str; 2]]) -> Promise {
    script::write(pairs.as_flattened().iter().map(|text| JsValue::from_str(text)).collect())
}

/// Deletes what is kept twice, name by name with the text that it had: what a tab has taken or changed since stays.
pub fn drop_twice(pairs: Vec<String>) {
    script::drop(pairs.into_iter().map(JsValue::from).collect());
}

/// Waits until that is done; why it could not be.
pub async fn written(begun: Promise) -> Option<Fault> {
    let error = JsFuture::from(begun).await.unwrap_or_default().as_string().unwrap_or_default();
    (!error.is_empty()).then(|| fault(&error))
}

/// What a person is told of an error of the database by its name.
fn fault(error: &str) -> Fault {
    // Source: Indexed Database API 3.0, `QuotaExceededError`.
    if error == "QuotaExceededError" { Label::StorageFull } else { Label::StorageShut }
}

/// Takes a name for this tab alone; whether no other tab has it.
pub async fn hold(name: &str) -> bool {
    JsFuture::from(script::hold(name)).await.is_ok_and(|held| held.is_truthy())
}

/// Hears what other tabs say.
pub fn hear(on_word: Callback<String>) {
    let on = Closure::<dyn FnMut(JsValue)>::new(move |word: JsValue| on_word.run(word.as_string().unwrap_or_default()));
    script::hear(&on);
    on.forget();
}

/// What this tab had of its own before it was loaded anew: a name, and the text if that may not have been written.
pub fn before() -> (String, String) {
    let noted = script::before();
    let (name, text) = noted.split_once(' ').unwrap_or_default();
    (name.into(), text.into())
}
