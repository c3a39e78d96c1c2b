//! Colours of the range file as light.

/// `#rrggbb` as linear red, green and blue from 0 to 1; mid grey if it is anything else.
// Source: IEC 61966-2-1:1999, sRGB transfer function.
pub fn linear(colour: &str) -> [f64; 3] {
    let digits = colour.strip_prefix('#').and_then(|digits| u32::from_str_radix(digits, 16).ok()).unwrap_or(0x80_8080);
    [16, 8, 0].map(|shift| {
        let value = f64::from((digits >> shift) & 0xff) / 255.0;
        if value <= 0.040_45 { value / 12.92 } else { libm::pow((value + 0.055) / 1.055, 2.4) }
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Mid grey of the screen, 8 bits, reflects 21.6 % of the light: (0.5020 + 0.055)/1.055 to the power of 2.4.
    #[test]
    fn grey_is_a_fifth_of_the_light() {
        let [red, green, blue] = linear("#808080");
        assert!((red - 0.215_86).abs() < 1e-5 && red.to_bits() == green.to_bits() && green.to_bits() == blue.to_bits());
        assert_eq!(linear("#ffffff").map(f64::to_bits), [1.0_f64; 3].map(f64::to_bits));
    }
}
