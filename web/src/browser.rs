//! Every side effect of the page: storage, files, the clock, scrolling.

pub mod adviser;
pub mod clock;
pub mod drawer;
pub mod files;
pub mod fragment;
mod member;
pub mod orders;
pub mod page;
pub mod range_file;
pub mod room;
pub mod scene;
pub mod share;
pub mod shortcuts;
pub mod steps;
pub mod storage;
mod worker;
