//! Writes the documents of `slotwright_tests::paper` into a folder, and says as JSON what readers should find.

use std::path::PathBuf;
use std::{env, fs};

use serde_json::{Map, Value, json};
use slotwright_tests::paper::{NAMES, code, document};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = PathBuf::from(env::args().nth(1).ok_or("a folder is wanted")?);
    let mut told = Map::new();
    for name in NAMES {
        let written = document(name)?;
        fs::write(folder.join(format!("{name}.pdf")), &written.bytes)?;
        let lacking: Vec<Value> =
            written.lacking.iter().map(|lacking| json!([lacking.letter.to_string(), lacking.text])).collect();
        told.insert(name.to_owned(), json!({ "lacking": lacking, "cut": written.cut }));
    }
    let codes: Vec<String> = (1..=30).map(code).collect();
    fs::write(folder.join("told.json"), json!({ "documents": told, "codes": codes }).to_string())?;
    Ok(())
}
