//! Which of all that is kept is this tab's own unit.

use core::mem::take;

use slotwright_core::choice::draft::Draft;
use slotwright_core::choice::link::{Link, Made};
use slotwright_core::choice::question::Question;
use slotwright_core::range::Key;

use super::{Stored, UNIT, draft_of};
use crate::browser::drawer::{self, Earlier, Fault};
use crate::browser::storage;

/// What is known of a tab's own unit.
#[derive(Clone, Debug, Default)]
pub struct Own {
    /// The name that it is kept by.
    pub(super) name: String,
    /// Whether there is a text of that name.
    pub(super) is_kept: bool,
    /// The range and the price that stand in that text.
    pub(super) made: Option<Made>,
    /// Whether it has to be kept as soon as the page is there.
    pub(super) is_new: bool,
    /// The name of the other tab's unit that is shown here until something is answered.
    pub(super) follows: String,
    /// Why nothing can be kept.
    pub(super) fault: Option<Fault>,
    /// What was done with it before the page was loaded anew.
    pub(in crate::state) earlier: Earlier,
    /// All that was found.
    pub(super) all: Vec<Stored>,
}

impl Own {
    /// Finds it when the page begins: what this tab had before it was loaded anew, or what was kept last, or the same as
    /// the tab shows that has that; else what an earlier version of the page kept.
    pub async fn find(range: &Key, found: Result<Vec<Stored>, Fault>) -> (Self, Option<(Link, Vec<Question>)>) {
        let (all, fault) = match found {
            Ok(all) => (all, None),
            Err(fault) => (Vec::new(), Some(fault)),
        };
        let mut own = Self { fault, all, ..Self::default() };
        let (before, left) = drawer::before();
        let unit = match own.as_before(range, &before, &left) {
            Some(draft) if drawer::hold(&before).await => {
                own.name = before;
                Some(draft)
            }
            _ => own.take_last(range).await,
        };
        own.is_kept = !own.name.is_empty();
        if !own.is_kept {
            own.begin_another().await;
        }
        drawer::note(&own.name, "");
        if own.is_kept {
            own.earlier = drawer::earlier(&own.name, range).unwrap_or_default();
        }
        let former = if unit.is_none() { storage::former(range) } else { None };
        own.is_new |= former.is_some();
        own.made = unit.as_ref().filter(|_| own.is_kept).and_then(|draft| draft.link.made);
        let former = former.map(|(choice, pins)| (Link { choice, made: None }, pins));
        (own, unit.map(|draft| (draft.link, draft.pins)).or(former))
    }

    /// What the tab had by that name; what it left behind may be newer than what could still be written.
    fn as_before(&mut self, range: &Key, name: &str, left: &str) -> Option<Draft> {
        let known = self.all.iter().find(|kept| kept.first().is_some_and(|own| own == name)).and_then(draft_of);
        let left = Draft::of_text(left).filter(|left| known.as_ref().is_none_or(|known| known.stamp < left.stamp));
        self.is_new = left.is_some();
        left.or(known).filter(|draft| draft.range == *range)
    }

    /// Takes over what was kept last, or follows the tab that has it.
    async fn take_last(&mut self, range: &Key) -> Option<Draft> {
        self.is_new = false;
        let units = self.all.iter().filter(|kept| kept.first().is_some_and(|name| name.starts_with(UNIT)));
        let units = units.filter_map(|kept| Some((kept.first()?, draft_of(kept)?)));
        let last = units.filter(|(_, draft)| draft.range == *range).max_by(|(_, a), (_, b)| a.stamp.cmp(&b.stamp));
        let (name, draft) = last.map(|(name, draft)| (name.clone(), draft))?;
        if drawer::hold(&name).await {
            self.name = name;
        } else {
            self.follows = name;
        }
        Some(draft)
    }

    /// What was found stays as it is, since something else is shown: that gets a name of its own.
    pub async fn begin_another(&mut self) {
        let (follows, all) = (take(&mut self.follows), take(&mut self.all));
        *self = Self { name: drawer::fresh(UNIT), follows, all, fault: self.fault, ..Self::default() };
        drawer::hold(&self.name).await;
    }

    /// The same for a unit that has nothing to do with what was found.
    pub async fn show_other(&mut self) {
        self.follows.clear();
        self.begin_another().await;
        drawer::note(&self.name, "");
    }
}
