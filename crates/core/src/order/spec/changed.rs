//! What was changed in an order after it was sealed, as far as it can be told.

use super::sealing::seal_of;
use super::{Checked, Difference, OrderSpec, Promised};
use crate::input::seal::Digest;
use crate::units::money::Money;
use crate::units::quantity::Mass;
use crate::words;
use crate::words::reader::{self, Figure, Message, Promise};
use crate::words::tool;

/// What was changed in an order whose seal does not fit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Changed {
    /// Nobody looked, or could.
    Unknown,
    /// What was picked: other parts come of it than those that were promised.
    Picked,
    /// Figures of what was promised, and nothing else: the seal fits once they are put right.
    Promised(Vec<Difference>),
    /// Neither of them: the customer, the remark, the day or the backlog.
    Other,
}

impl Changed {
    /// What was changed, from what comes out again of the order as it stands.
    pub(super) fn of(order: &OrderSpec, checked: Checked) -> Self {
        if checked.holds() {
            return Self::Other;
        }
        let mut before = order.clone();
        checked.differences.iter().for_each(|difference| before.put_right(difference));
        if seal_of(&before) == order.digest {
            return Self::Promised(checked.differences);
        }
        let parts = |difference: &Difference| difference.pointer == PARTS;
        if checked.differences.iter().any(parts) { Self::Picked } else { Self::Unknown }
    }

    /// The same for people, with both digests.
    pub(super) fn said(&self, order: &OrderSpec, stated: Digest, computed: Digest) -> String {
        let (stated, computed) = (stated.short(), computed.short());
        let said = |what| Message::Changed { what, stated: &stated, computed: &computed }.text();
        match self {
            Self::Unknown => said(reader::Changed::Unknown),
            Self::Picked => said(reader::Changed::Picked),
            Self::Other => said(reader::Changed::Other),
            Self::Promised(differences) => {
                let shown: Vec<(Promise, [String; 2])> =
                    differences.iter().map(|difference| shown(&order.promised, difference)).collect();
                let figures: Vec<Figure<'_>> =
                    shown.iter().map(|(of, [before, now])| Figure { of: *of, before, now }).collect();
                said(reader::Changed::Promised(&figures))
            }
        }
    }
}

const PRICE: &str = "/promised/price_minor";
const CURRENCY: &str = "/promised/currency";
const MASS: &str = "/promised/mass_g";
const DAY: &str = "/promised/arrives_on";
const PARTS: &str = "/promised/parts_digest";

/// A figure that differs: which, what stood there and what stands there.
fn shown(promised: &Promised, difference: &Difference) -> (Promise, [String; 2]) {
    let both = [difference.derived.as_deref().unwrap_or_default(), difference.promised.as_str()];
    let each = |written: &dyn Fn(i64) -> String| {
        both.map(|figure| figure.parse().map_or_else(|_| figure.to_owned(), |figure: i64| written(figure)))
    };
    match difference.pointer {
        PRICE => (Promise::Price, each(&|minor| words::money(Money::minor(minor), &promised.currency))),
        MASS => (Promise::Mass, each(&kilograms)),
        CURRENCY => (Promise::Currency, both.map(Into::into)),
        DAY => (Promise::Day, both.map(Into::into)),
        PARTS => (Promise::Parts, both.map(|digest| digest.chars().take(8).collect())),
        _ => (Promise::Range, both.map(Into::into)),
    }
}

fn kilograms(grams: i64) -> String {
    #[expect(clippy::cast_precision_loss, reason = "grams of furniture")]
    let mass = Mass::kg(grams as f64 / 1000.0);
    tool::Message::Kilograms(&words::kilograms(mass)).text()
}

impl OrderSpec {
    /// Puts a figure right that differs from what is derived.
    fn put_right(&mut self, difference: &Difference) {
        let (Some(right), promised) = (difference.derived.as_deref(), &mut self.promised) else { return };
        match difference.pointer {
            PRICE => promised.price_minor = right.parse().map_or(promised.price_minor, Money::minor),
            CURRENCY => promised.currency = right.into(),
            MASS => promised.mass_g = right.parse().unwrap_or(promised.mass_g),
            DAY => promised.arrives_on = right.parse().unwrap_or(promised.arrives_on),
            PARTS => promised.parts_digest = right.parse().unwrap_or(promised.parts_digest),
            _ => self.range.key = right.parse().unwrap_or_else(|_| self.range.key.clone()),
        }
    }
}
