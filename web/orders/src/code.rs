//! A QR code as a picture.

use core::fmt::Write;

use qrcodegen::{QrCode, QrCodeEcc};
use slotwright_core::words::desk::Message;

/// Light modules on each side of a code, without which readers do not find it. Source: ISO/IEC 18004, quiet zone.
const QUIET: i32 = 4;

/// The code of a text as SVG, dark on light whatever the page looks like; `None` if no code holds that much.
///
/// On a screen nothing is torn or stained: there the fewest modules are read best; paper wants some that mend.
pub(crate) fn svg(text: &str, mends: QrCodeEcc) -> Option<String> {
    let code = QrCode::encode_text(text, mends).ok()?;
    let side = code.size() + 2 * QUIET;
    let title = Message::CodeTitle.text();
    let mut svg = String::new();
    // Writing to a String cannot fail.
    let _ = write!(
        svg,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {side} {side}\" role=\"img\" aria-label=\"{title}\" \
         shape-rendering=\"crispEdges\"><title>{title}</title><path fill=\"#fff\" d=\"M0 0h{side}v{side}h-{side}z\"/>\
         <path fill=\"#000\" d=\""
    );
    for y in 0..code.size() {
        let mut x = 0;
        while x < code.size() {
            let run = (x..code.size()).take_while(|x| code.get_module(*x, y)).map(|_| 1).sum::<i32>();
            if run > 0 {
                let _ = write!(svg, "M{} {}h{run}v1h-{run}z", x + QUIET, y + QUIET);
            }
            x += run.max(1);
        }
    }
    svg.push_str("\"/></svg>");
    Some(svg)
}
