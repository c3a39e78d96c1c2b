//! Canonical JSON (RFC 8785) and SHA-256 digests (FIPS 180-4).

use core::fmt;

use serde::Serialize;
use sha2::{Digest as _, Sha256};

/// The canonical JSON of a value: sorted members, shortest numbers, no white space.
///
/// A value that JSON cannot hold gives the text `null`; no type of this crate is one.
// Source: RFC 8785, JSON Canonicalization Scheme.
pub fn canonical(value: &impl Serialize) -> String {
    serde_json_canonicalizer::to_string(value).unwrap_or_else(|_| String::from("null"))
}

/// A SHA-256 digest, written as 64 lower-case hexadecimal digits.
///
/// ```
/// use slotwright_core::input::seal::Digest;
/// // Source: FIPS 180-4 example, one block message "abc".
/// let abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
/// assert_eq!(Digest::of(b"abc").to_string(), abc);
/// ```
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(with = "String", extend("pattern" = "^[0-9a-f]{64}$")))]
#[serde(into = "String")]
pub struct Digest([u8; 32]);

/// A text that is no digest.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotADigest(pub String);

impl Digest {
    /// The digest of these bytes.
    pub fn of(bytes: &[u8]) -> Self {
        Self(Sha256::digest(bytes).into())
    }

    /// The digest of a value's canonical JSON.
    pub fn of_value(value: &impl Serialize) -> Self {
        Self::of(canonical(value).as_bytes())
    }

    /// The first four bytes: those that `short` writes.
    pub fn first(&self) -> [u8; 4] {
        let [a, b, c, d, ..] = self.0;
        [a, b, c, d]
    }

    /// The first eight digits, for file names and labels.
    pub fn short(&self) -> String {
        self.to_string().chars().take(8).collect()
    }
}

impl fmt::Display for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl fmt::Debug for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl core::str::FromStr for Digest {
    type Err = NotADigest;

    fn from_str(text: &str) -> Result<Self, NotADigest> {
        parse(text).ok_or_else(|| NotADigest(text.chars().take(80).collect()))
    }
}

fn parse(text: &str) -> Option<Digest> {
    let nibble = |byte: u8| match byte {
        b'0'..=b'9' => Some(byte - b'0'),
        b'a'..=b'f' => Some(byte - b'a' + 10),
        _ => None,
    };
    if text.len() != 64 {
        return None;
    }
    let mut bytes = [0; 32];
    for (byte, pair) in bytes.iter_mut().zip(text.as_bytes().chunks_exact(2)) {
        let [high, low] = pair else { return None };
        *byte = nibble(*high)? << 4 | nibble(*low)?;
    }
    Some(Digest(bytes))
}

impl From<Digest> for String {
    fn from(digest: Digest) -> Self {
        digest.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of_json(text: &str) -> String {
        canonical(&serde_json::from_str::<serde_json::Value>(text).unwrap())
    }

    // Source: RFC 8785 reference test data, file "structures".
    #[test]
    fn structures_are_sorted_as_the_reference_data_says() {
        let text =
            r#"{"1":{"f":{"f":"hi","F":5},"\n":56.0},"10":{},"":"empty","a":{},"111":[{"e":"yes","E":"no"}],"A":{}}"#;
        let canonical = of_json(text);
        assert_eq!(
            canonical,
            r#"{"":"empty","1":{"\n":56,"f":{"F":5,"f":"hi"}},"10":{},"111":[{"E":"no","e":"yes"}],"A":{},"a":{}}"#
        );
        let digest = "605f65004ec2db7692522a0852c22f1c989e036d547e88963d1a3143cf3195d5";
        assert_eq!(Digest::of(canonical.as_bytes()).to_string(), digest);
    }

    // Source: RFC 8785, appendix B, number samples by their IEEE 754 bits.
    #[test]
    fn numbers_are_written_as_ecmascript_writes_them() {
        for (bits, text) in [
            (0x4340_0000_0000_0001, "9007199254740994"),
            (0x444b_1ae4_d6e2_ef50, "1e+21"),
            (0x3eb0_c6f7_a0b5_ed8d, "0.000001"),
            (0x3eb0_c6f7_a0b5_ed8c, "9.999999999999997e-7"),
            (0x8000_0000_0000_0000, "0"),
        ] {
            assert_eq!(canonical(&f64::from_bits(bits)), text);
        }
        assert_eq!(of_json("[333333333.33333329,1E30,4.50,2e-3]"), "[333333333.3333333,1e+30,4.5,0.002]");
    }

    // Source: RFC 8785, 3.2.3: members sort by UTF-16 code units, so U+1F602 stands before U+FB33.
    #[test]
    fn members_sort_by_utf_16() {
        let sorted =
            of_json("{\"\u{fb33}\":1,\"\u{1f602}\":2,\"\u{20ac}\":3,\"\\r\":4,\"1\":5,\"\u{80}\":6,\"\u{f6}\":7}");
        assert_eq!(
            sorted,
            "{\"\\r\":4,\"1\":5,\"\u{80}\":6,\"\u{f6}\":7,\"\u{20ac}\":3,\"\u{1f602}\":2,\"\u{fb33}\":1}"
        );
    }

    // Source: FIPS 180-4 examples; the million times "a" of the same collection.
    #[test]
    fn digests_are_those_of_the_standard() {
        let million = vec![b'a'; 1_000_000];
        for (bytes, digest) in [
            (b"".as_slice(), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"),
            (
                b"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
                "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
            ),
            (&million, "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"),
        ] {
            assert_eq!(Digest::of(bytes).to_string(), digest);
        }
    }

    #[test]
    fn only_64_lower_case_digits_are_a_digest() {
        let good = Digest::of(b"").to_string();
        assert_eq!(good.parse::<Digest>().map(|digest| digest.to_string()), Ok(good.clone()));
        for bad in [&good[1..], &good.to_uppercase(), &good.replace('e', "g"), ""] {
            assert!(bad.parse::<Digest>().is_err(), "{bad}");
        }
    }
}
