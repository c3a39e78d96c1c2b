//! What the pen drew as SVG.

use core::fmt::Write;

use slotwright_core::units::decimal::Plain;

use super::pen::{BORDER_PX, Drawn, LINE_PX, Pen, TEXT_PX};

/// How a shape looks in a viewer without the page's style: attributes that any style replaces.
fn plain(class: &str) -> &'static str {
    match class {
        "edge" | "cut" => " fill=\"#e3cda4\"",
        "back" | "floor" => " fill=\"#ece8df\"",
        "hole" => " fill=\"#2a2e2b\"",
        "device" => " fill=\"none\" stroke-dasharray=\"12 9\"",
        "swing" => " fill=\"none\" stroke-dasharray=\"15 12\"",
        "ply" | "grain" => " fill=\"none\" stroke-opacity=\"0.3\"",
        "dim" => " fill=\"none\" stroke=\"#0e5a5e\"",
        _ => "",
    }
}

/// To a hundredth: short and exact enough.
fn n(value: f64) -> Plain {
    Plain::of(value, 2)
}

/// Text within SVG.
pub(crate) fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

impl Pen {
    fn body(&self) -> String {
        let mut body = String::with_capacity(16_384);
        for drawn in &self.drawn {
            // Writing to a String cannot fail.
            let _ = self.write(&mut body, drawn);
        }
        body
    }

    fn write(&self, body: &mut String, drawn: &Drawn) -> core::fmt::Result {
        match drawn {
            Drawn::Open(class, Some(bay)) => write!(body, "<g class=\"{class}\" data-bay=\"{}\">", bay + 1),
            Drawn::Open(class, None) => write!(body, "<g class=\"{class}\">"),
            Drawn::Close => body.write_str("</g>"),
            Drawn::Rect(class, (x, y), (width, height), radius) => {
                let (x, y, width, height, plain) = (n(*x), n(*y), n(*width), n(*height), plain(class));
                write!(
                    body,
                    "<rect class=\"{class}\"{plain} x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\""
                )?;
                if *radius > 0.0 {
                    write!(body, " rx=\"{}\"", n(*radius))?;
                }
                body.write_str("/>")
            }
            Drawn::Area(class, corners) => {
                write!(body, "<path class=\"{class}\"{} d=\"", plain(class))?;
                let ends = corners.iter().cycle().skip(1);
                for (at, (((x1, y1), bulge), ((x2, y2), _))) in corners.iter().zip(ends).enumerate() {
                    if at == 0 {
                        write!(body, "M{} {}", n(*x1), n(*y1))?;
                    }
                    if *bulge == 0.0 {
                        write!(body, "L{} {}", n(*x2), n(*y2))?;
                    } else {
                        // r = c (1 + b²) / (4 |b|).
                        let chord = libm::hypot(x2 - x1, y2 - y1);
                        let radius = n(chord * (1.0 + bulge * bulge) / (4.0 * bulge.abs()));
                        write!(body, "A{radius} {radius} 0 0 {} {} {}", u8::from(*bulge > 0.0), n(*x2), n(*y2))?;
                    }
                }
                body.write_str("Z\"/>")
            }
            Drawn::Line(class, (x1, y1), (x2, y2)) => {
                let (x1, y1, x2, y2, plain) = (n(*x1), n(*y1), n(*x2), n(*y2), plain(class));
                write!(body, "<path class=\"{class}\"{plain} d=\"M{x1} {y1}L{x2} {y2}\"/>")
            }
            Drawn::Strokes(class, lines) => {
                write!(body, "<path class=\"{class}\"{} d=\"", plain(class))?;
                for [(x1, y1), (x2, y2)] in lines {
                    write!(body, "M{} {}L{} {}", n(*x1), n(*y1), n(*x2), n(*y2))?;
                }
                body.write_str("\"/>")
            }
            Drawn::Arc(class, (x1, y1), (x2, y2), radius, left) => {
                let (x1, y1, x2, y2, plain) = (n(*x1), n(*y1), n(*x2), n(*y2), plain(class));
                let (sweep, r) = (u8::from(*left), n(*radius));
                write!(body, "<path class=\"{class}\"{plain} d=\"M{x1} {y1}A{r} {r} 0 0 {sweep} {x2} {y2}\"/>")
            }
            Drawn::Text((x, y), text, upright) => {
                let (x, y, size) = (n(*x), n(*y), n(self.px(TEXT_PX)));
                let turn = if *upright { format!(" transform=\"rotate(-90 {x} {y})\"") } else { String::new() };
                write!(
                    body,
                    "<text class=\"dim-text\" fill=\"#0e5a5e\" stroke=\"none\" x=\"{x}\" y=\"{y}\" font-size=\"{size}\"{turn}>{}</text>",
                    escaped(text)
                )
            }
        }
    }

    /// The whole as one small SVG in that colour, which says nothing by itself; lines on a dark one are light.
    pub(super) fn small(self, colour: &str, is_dark: bool) -> String {
        let (x, y) = (n(self.low.0 - self.px(1.0)), n(self.low.1 - self.px(1.0)));
        let (width, height) = (n(self.high.0 - self.low.0 + self.px(2.0)), n(self.high.1 - self.low.1 + self.px(2.0)));
        let (colour, line) = (escaped(colour), n(self.px(1.0)));
        let (class, ink) = if is_dark { (" dark", "#8a9088") } else { ("", "#1d2320") };
        let body = self.body();
        let mut svg = String::with_capacity(body.len() + 256);
        let _ = write!(
            svg,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"drawing{class}\" aria-hidden=\"true\" viewBox=\"{x} {y} {width} {height}\" color=\"{colour}\" fill=\"{colour}\" stroke=\"{ink}\" stroke-width=\"{line}\">"
        );
        svg.push_str(&body);
        svg.push_str("</svg>");
        svg
    }

    /// The whole as one SVG; on paper it has its size by the scale.
    pub(super) fn done(self, title: &str, scale: Option<f64>) -> String {
        let border = self.px(BORDER_PX);
        let (x, y) = (n(self.low.0 - border), n(self.low.1 - border));
        let (width, height) = (self.high.0 - self.low.0 + border * 2.0, self.high.1 - self.low.1 + border * 2.0);
        let on_paper = |scale: f64| format!(" width=\"{}mm\" height=\"{}mm\"", n(width / scale), n(height / scale));
        let (size, width, height) = (scale.map(on_paper).unwrap_or_default(), n(width), n(height));
        let (title, line) = (escaped(title), n(self.px(LINE_PX)));
        let body = self.body();
        let mut svg = String::with_capacity(body.len() + 256);
        let _ = write!(
            svg,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"drawing\" role=\"img\" aria-label=\"{title}\" viewBox=\"{x} {y} {width} {height}\"{size} fill=\"#fff\" stroke=\"#1d2320\" stroke-width=\"{line}\" font-family=\"sans-serif\" text-anchor=\"middle\">"
        );
        svg.push_str(&body);
        svg.push_str("</svg>");
        svg
    }
}
