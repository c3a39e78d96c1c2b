//! The page of Slotwright: it shows what the core knows and sends back what a person changes.
//!
//! Page and workers are one program, cut into parts: each part is loaded by whoever needs it.
#![expect(unreachable_pub, reason = "the component macro makes public items of private ones")]

mod app;
mod browser;
mod customer;
mod debounce;
mod link;
mod part;
mod parts;
mod state;
mod tally;
mod unread;
mod views;
mod workshop;

use wasm_bindgen::JsCast;
use web_sys::DedicatedWorkerGlobalScope;

fn main() {
    #[cfg(feature = "panics")]
    console_error_panic_hook::set_once();
    match js_sys::global().dyn_into::<DedicatedWorkerGlobalScope>() {
        Ok(scope) => part::work(scope),
        Err(_) if browser::page::is_workshop() => part::open_workshop(),
        Err(_) => app::start(),
    }
}
