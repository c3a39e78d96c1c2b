//! That a message comes out as it went in, for the tests of all messages.

use core::fmt::Debug;

use crate::{Message, Number, tie, untie};

/// A message passes as it is, and cut short it is none.
pub(crate) fn passes<M: Message + PartialEq + Debug>(message: M) {
    let number = Number::default().next();
    let text = tie(number, &message);
    let cuts = (0..text.len()).rev().filter(|end| text.is_char_boundary(*end));
    for end in cuts.step_by(text.len() / 200 + 1) {
        assert_eq!(untie::<M>(&text[..end]), None, "{}", &text[..end]);
    }
    assert_eq!(untie(&text), Some((number, message)));
}
