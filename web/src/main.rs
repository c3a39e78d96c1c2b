//! The page of Slotwright: it shows what the core knows and sends back what a person changes.
#![expect(unreachable_pub, reason = "the component macro makes public items of private ones")]

mod app;
mod browser;
mod customer;
mod debounce;
mod parts;
mod state;
mod tally;
mod unread;
mod views;

fn main() {
    console_error_panic_hook::set_once();
    app::start();
}
