//! A draft as the text that the browser keeps: a link and what belongs to it. Nothing of a person is in it.

use super::link::Link;
use super::question::Question;
use crate::input::bundle;
use crate::range::Key;

/// Longest name of a draft, in characters.
pub const NAME_MOST: usize = 60;

/// A unit that is kept. Its link says which version of links it is, so what was kept stays readable as links do; what
/// later versions append is passed over.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Draft {
    /// When it was kept: later texts of that kind sort behind earlier ones.
    pub stamp: String,
    /// The range that it is of.
    pub range: Key,
    /// What the person calls it; empty if they gave no name.
    pub name: String,
    /// The unit, with the range and the price of that time.
    pub link: Link,
    /// What of it is kept whatever is asked for.
    pub pins: Vec<Question>,
}

impl Draft {
    /// The draft as text.
    pub fn to_text(&self) -> String {
        let pins = self.pins.iter().map(ToString::to_string).collect::<Vec<_>>().join(" ");
        let [stamp, name] = [&self.stamp, &self.name].map(Clone::clone);
        bundle::tie(&[stamp, self.range.to_string(), name, self.link.to_link(), pins])
    }

    /// Reads a draft; `None` if it is none.
    pub fn of_text(text: &str) -> Option<Self> {
        let texts = bundle::untie(text);
        let [stamp, range, name, link, pins, ..] = texts.as_slice() else { return None };
        let link = Link::of_good(link)?;
        let pins = pins.split(' ').filter_map(|pin| pin.parse().ok()).filter(|pin| link.choice.has(*pin)).collect();
        Some(Self { stamp: stamp.clone(), range: range.parse().ok()?, name: name.clone(), link, pins })
    }
}

/// A name as it is kept: without what cannot be printed, without spaces around it, and not longer than it may be.
pub fn name(typed: &str) -> String {
    let printed: String = typed.chars().filter(|letter| !letter.is_control()).take(NAME_MOST).collect();
    printed.trim().into()
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::choice::link::{Made, can_be_read};
    use crate::rules::sample::{Wanted, choices};
    use crate::testing::demo;
    use crate::units::money::Money;

    proptest! {
        /// What was written is what is read, whatever it is called.
        #[test]
        fn a_text_keeps_the_draft(seed in any::<u64>(), typed in "\\PC{0,80}|[\\x00-\\x7f]{0,80}", price in 0_i64..9_999_999) {
            let range = demo();
            for choice in choices(&range, seed, Wanted::Any).take(4).filter(can_be_read) {
                let made = Some(Made { range: "a1b2c3d4".parse().unwrap(), price: Money::minor(price) });
                let pins = vec![Question::Width, Question::Bay(1)].into_iter().filter(|pin| choice.has(*pin)).collect();
                let (stamp, link) = ("1764393600000".into(), Link { choice, made });
                let draft = Draft { stamp, range: range.key.clone(), name: name(&typed), link, pins };
                prop_assert_eq!(Draft::of_text(&draft.to_text()), Some(draft));
            }
        }

        #[test]
        fn no_text_makes_it_panic(text in "\\PC{0,200}") {
            let _ = Draft::of_text(&text);
        }
    }

    /// The first that was kept by a page; it has to stay readable for ever. What a later page appends is passed over.
    #[test]
    fn what_was_kept_stays_readable() {
        let kept = "1764393600000\u{1f}fenland\u{1f}Window, bowed\u{1f}1/teasel/1640x920x400/30/birch-18/chalk/2o,1l/\
                    @a1b2c3d4=113194\u{1f}height bay-2 bay-9";
        let draft = Draft::of_text(kept).unwrap();
        assert_eq!((draft.name.as_str(), draft.link.choice.model.as_str()), ("Window, bowed", "teasel"));
        assert_eq!(draft.pins, [Question::Height, Question::Bay(2)], "a bay that is not there is not kept");
        assert_eq!(Draft::of_text(&[kept, "\u{1f}more"].concat()), Some(draft));
        assert_eq!(Draft::of_text("model = \"teasel\"\nback = \"birch-9\"\n"), None);
    }
}
