//! Every side effect of the page: storage, files, the clock, scrolling.

pub mod adviser;
pub mod clock;
pub mod drawer;
pub mod files;
pub mod first_view;
pub mod focus;
pub mod fragment;
pub mod groups;
mod member;
pub mod offline;
pub mod orders;
pub mod packs;
pub mod page;
pub mod paper;
pub mod range_file;
pub mod room;
pub mod scene;
pub mod share;
pub mod shortcuts;
pub mod speech;
pub mod steps;
pub mod storage;
mod worker;
