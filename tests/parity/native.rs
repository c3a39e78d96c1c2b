//! The answers of `slotwright_tests::parity` natively: questions come line by line, each answer goes out as the number
//! of its bytes, a line feed, and its bytes.

use std::io::{self, BufRead, Write};

use slotwright_tests::parity::answer;

fn main() -> io::Result<()> {
    let mut out = io::BufWriter::new(io::stdout().lock());
    for question in io::stdin().lock().lines() {
        let bytes = answer(&question?);
        writeln!(out, "{}", bytes.len())?;
        out.write_all(&bytes)?;
    }
    out.flush()
}
