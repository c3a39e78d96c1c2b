//! Polygons on a strip of fixed height, on as short a piece of it as can be found: irregular strip packing.
//!
//! A layout begins with the largest first, as far left as it can be (`begin`). Then the strip is made a little shorter
//! than the best layout; copies overlap there, and are moved one at a time to where the weighted sum of their overlaps is
//! least, while weights of pairs that go on overlapping grow, until nothing overlaps and the strip is made shorter again
//! (`search`, `separate`, `place`). Overlaps are measured by no-fit polygons (`nofit`, `outline`, `field`), in real
//! numbers; what becomes of that is made exact in whole numbers (`settle`).
//!
//! Sources: Egeblad, Nielsen and Odgaard, Fast neighborhood search for two- and three-dimensional nesting problems,
//! European Journal of Operational Research 183, 2007 (overlaps minimised by guided local search); Imamichi, Yagiura and
//! Nagamochi 2009 (penetration depth; a strip that is shortened and lengthened); Umetani et al., Solving the irregular
//! strip packing problem via guided local search for overlap minimization, International Transactions in Operational
//! Research 16, 2009; Elkeran, A new approach for sheet nesting problem using guided cuckoo search and pairwise
//! clustering, European Journal of Operational Research 231, 2013; Gardeyn, Vanden Berghe and Wauters 2025,
//! arXiv:2509.13329 (samples that are refined, how weights grow and fade, exchange of two large copies, small steps at
//! the end).
//!
//! ```
//! use slotwright_nest::search::Progress;
//! use slotwright_nest::strip::check::check;
//! use slotwright_nest::strip::point::{Point, Turn};
//! use slotwright_nest::strip::polygon::Polygon;
//! use slotwright_nest::strip::problem::{Item, Strip};
//! use slotwright_nest::strip::search::Search;
//! use slotwright_nest::strip::shapes::Shapes;
//!
//! // Two triangles, of which one is turned, make a rectangle of 4 × 3.
//! let corners = [(0, 0), (4_000, 0), (0, 3_000)].map(|(x, y)| Point::new(x, y));
//! let triangle = Item { polygon: Polygon::new(&corners)?, turns: vec![Turn::None, Turn::Half], count: 2 };
//! let strip = Strip { height: 3_000, items: vec![triangle] };
//! let shapes = Shapes::of(&strip)?;
//! let mut search = Search::new(&shapes, 1);
//! while search.step(10_000) != Progress::Done {}
//! let layout = search.best();
//! assert_eq!(layout.length, 4_000);
//! check(&layout, &strip)?;
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

pub mod check;
pub mod layout;
pub mod point;
pub mod polygon;
pub mod problem;
pub mod search;
pub mod shapes;

mod begin;
mod convex;
mod field;
mod nofit;
mod number;
mod outline;
mod overlap;
mod place;
mod separate;
mod settle;
