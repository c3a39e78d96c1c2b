//! The JSON Schemas (2020-12) of every document that the tool reads or prints, from their types.

use schemars::{JsonSchema, SchemaGenerator};
use serde_json::Value;
use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::order::document::Document;
use slotwright_core::order::spec::OrderSpec;
use slotwright_core::range::{Hold, MaterialBy, Range};
use slotwright_core::units::quantity::Length;
use slotwright_cutpack::pack::manifest::Manifest;

use crate::commands::assembly::AssemblySheet;
use crate::commands::check::Report;
use crate::commands::fit::FitDocument;
use crate::commands::options::OptionsDocument;
use crate::commands::range::RangeReport;
use crate::inputs::DEMO;

mod bounds;
mod plain;

/// Name and text of every schema.
pub(crate) fn all() -> Vec<(&'static str, String)> {
    vec![
        ("order-spec", schema::<OrderSpec>()),
        ("choice", schema::<Choice>()),
        ("backlog", schema::<Backlog>()),
        ("range", range()),
        ("derived", schema::<Document>()),
        ("assembly", schema::<AssemblySheet>()),
        ("options", schema::<OptionsDocument>()),
        ("fit", schema::<FitDocument>()),
        ("pack-manifest", schema::<Manifest>()),
        ("check-report", schema::<Report>()),
        ("range-report", schema::<RangeReport>()),
    ]
}

/// The file that holds a schema.
pub(crate) fn file_name(name: &str) -> String {
    format!("{name}.schema.json")
}

fn schema<T: JsonSchema>() -> String {
    text(described::<T>())
}

/// The range's schema with the bounds that its parser holds.
fn range() -> String {
    let mut schema = described::<Range>();
    // The demo range has every key but a mean beside its points; a test holds that no figure is left without bounds.
    if let Ok(mut range) = Range::parse(DEMO) {
        if let Some(board) = range.boards.last_mut() {
            board.measured_mm = board.measured_points_mm.take().map(|batch| batch.mean());
        }
        bounds::set(&mut schema, &range);
        // Of what is one thing or the other the demo range has one.
        range.cutting.hold = Hold::Skin { thickness_mm: Length::mm(0.4) };
        range.rates.material = MaterialBy::Yield { per_mille: 780 };
        bounds::set(&mut schema, &range);
    }
    text(schema)
}

fn described<T: JsonSchema>() -> Value {
    let mut settings = schemars::generate::SchemaSettings::draft2020_12();
    // What `serde` writes is what `serde` reads, but for defaults: describe what is read.
    settings.contract = schemars::generate::Contract::Deserialize;
    let mut schema = SchemaGenerator::new(settings).into_root_schema_for::<T>().to_value();
    plain::descriptions(&mut schema);
    schema
}

fn text(schema: Value) -> String {
    // A schema writes its members in their usual order, a bare value does not.
    let schema = schemars::Schema::try_from(schema).unwrap_or_default();
    let mut text = serde_json::to_string_pretty(&schema).unwrap_or_default();
    text.push('\n');
    text
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::*;

    #[test]
    fn the_published_schemas_are_those_of_the_types() {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("schemas");
        for (name, schema) in all() {
            let published = std::fs::read_to_string(folder.join(file_name(name))).unwrap_or_default();
            assert!(published == schema, "{name} has changed: `cargo xtask schemas` renews the published schemas");
        }
    }
}
