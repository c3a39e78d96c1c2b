//! Writing a link.

use core::fmt::{self, Write};

use super::{Link, Made};
use crate::choice::{Bowed, Choice, Place};
use crate::range::{Bay, Fill, Hole, Hung};

impl Link {
    /// The link as text, without `#`.
    ///
    /// One of a choice with more bays than a choice can name is written, but not read.
    pub fn to_link(&self) -> String {
        let mut link = String::new();
        // Writing to a String cannot fail.
        let _ = self.write(&mut link);
        link
    }

    fn write(&self, link: &mut String) -> fmt::Result {
        let Choice { model, width_mm, height_mm, depth_mm, bays, back, finish, corner_radius_mm, .. } = &self.choice;
        let Choice { plinth_mm, bow_mm, bowed, place, .. } = &self.choice;
        let is_square = bow_mm.is_zero() && *bowed == Bowed::Both;
        let version = if plinth_mm.is_some() || place.ceiling_mm.is_some() || !is_square { 2 } else { 1 };
        write!(link, "{version}/{model}/{width_mm}x{height_mm}x{depth_mm}/{corner_radius_mm}/{back}/{finish}/")?;
        for (at, bay) in bays.iter().enumerate() {
            if at > 0 {
                link.push(',');
            }
            write_bay(link, bay)?;
        }
        if let Some(plinth) = plinth_mm {
            write!(link, "/b{plinth}")?;
        }
        if !is_square {
            let which = match bowed {
                Bowed::Both => "",
                Bowed::Left => "l",
                Bowed::Right => "r",
            };
            write!(link, "/e{bow_mm}{which}")?;
        }
        let Place { wall_mm, ceiling_mm, screen_tenth_inch, plug } = place;
        if let Some(wall) = wall_mm {
            write!(link, "/w{wall}")?;
        }
        if let Some(ceiling) = ceiling_mm {
            write!(link, "/c{ceiling}")?;
        }
        if let Some(tenths) = screen_tenth_inch {
            write!(link, "/s{tenths}")?;
        }
        if let Some(plug) = plug {
            write!(link, "/p={plug}")?;
        }
        if let Some(Made { range, price }) = self.made {
            write!(link, "/@{range}={}", price.in_minor())?;
        }
        Ok(())
    }
}

/// A bay as links write it.
fn write_bay(link: &mut String, bay: &Bay) -> fmt::Result {
    let Bay { share, fill, hole, device } = bay;
    match fill {
        Fill::Open => write!(link, "{share}o"),
        Fill::Shelves(count) => write!(link, "{share}s{count}"),
        Fill::Leaf(Hung::Left) => write!(link, "{share}l"),
        Fill::Leaf(Hung::Right) => write!(link, "{share}r"),
    }?;
    if let Some(Hole { kind, offset_mm }) = hole {
        write!(link, ":h={kind}@{offset_mm}")?;
    }
    if let Some(device) = device {
        write!(link, ":d={device}")?;
    }
    Ok(())
}
