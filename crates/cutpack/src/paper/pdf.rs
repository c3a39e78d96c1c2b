//! Pages and their structure as PDF.

use std::collections::{BTreeMap, BTreeSet};
use std::num::NonZeroU16;

use krilla::color::rgb;
use krilla::configure::{Accessibility, ConfigurationBuilder};
use krilla::destination::XyzDestination;
use krilla::geom::{PathBuilder, Point, Transform};
use krilla::metadata::Metadata;
use krilla::num::NormalizedF32;
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::paint::{self, FillRule, LineCap, LineJoin};
use krilla::surface::Surface;
use krilla::tagging::{Artifact, ArtifactType, ContentTag, Identifier, ListNumbering, Node as TagNode, SpanTag};
use krilla::tagging::{TableHeaderScope, Tag, TagGroup, TagTree};
use krilla::text::{Font, GlyphId, KrillaGlyph};
use krilla::{Document, SerializeSettings};
use slotwright_core::units::quantity::Length;

use super::face::{Face, Faces, public};
use super::sheet::{Child, Ink, Is, Kind, Landmark, Line, Page, Piece, ROOT, Sheets};
use super::{Setting, WriteError, Written};
use crate::vector::{Colour, Fill, Shape, Step, Stroke};

/// Points of type in a millimetre.
const POINTS: f64 = 72.0 / 25.4;

/// Points as the file says them: to a thousandth, half away from zero (libm).
#[expect(clippy::cast_possible_truncation, reason = "PDF has single precision")]
fn points(length: Length) -> f32 {
    (libm::round(length.in_mm() * POINTS * 1000.0) / 1000.0) as f32
}

#[expect(clippy::cast_possible_truncation, reason = "PDF has single precision")]
fn em(parts: f64) -> f32 {
    (libm::round(parts * 100_000.0) / 100_000.0) as f32
}

/// The pieces that are read, by page and number.
type Pieces = BTreeMap<(usize, usize), Identifier>;

/// What letters were lacking, each with the first text in which it stood.
type Lacking = BTreeMap<char, String>;

pub(super) fn write(sheets: &Sheets, faces: &Faces, setting: &Setting) -> Result<Written, WriteError> {
    let configuration = ConfigurationBuilder::new().with_accessibility_validator(Accessibility::UA1).finish();
    let configuration = configuration.map_err(|_| WriteError::Refused(String::new()))?;
    let mut document = Document::new_with(SerializeSettings { configuration, ..SerializeSettings::default() });
    let fonts = Face::ALL.map(|face| Font::new(face.bytes().to_vec().into(), 0));
    let mut writer = Writer { faces, fonts, pieces: Pieces::new(), lacking: Lacking::new() };
    for (number, page) in sheets.pages.iter().enumerate() {
        writer.page(&mut document, number, page)?;
    }
    let metadata = Metadata::new().title(setting.title.clone()).language(setting.language.clone());
    document.set_metadata(metadata);
    document.set_outline(outline(&sheets.landmarks, setting));
    let mut tree = TagTree::new().with_lang(Some(setting.language.clone()));
    for child in children(sheets, ROOT, &mut writer.pieces) {
        tree.push(child);
    }
    document.set_tag_tree(tree);
    let bytes = document.finish().map_err(|error| WriteError::Refused(format!("{error:?}")))?;
    let lacking = writer.lacking.into_iter().map(|(letter, text)| super::Lacking { letter, text }).collect();
    Ok(Written { bytes, lacking, cut: Vec::new(), missing: Vec::new() })
}

/// Headings as the reader's list of them; a document without any has its title there.
fn outline(landmarks: &[Landmark], setting: &Setting) -> Outline {
    let node = |text: &str, page: usize, y: Length| {
        OutlineNode::new(text.to_owned(), XyzDestination::new(page, Point::from_xy(0.0, points(y))))
    };
    let mut outline = Outline::new();
    let top = landmarks.iter().map(|mark| mark.level).min();
    let mut open: Option<OutlineNode> = None;
    for mark in landmarks {
        let next = node(&mark.text, mark.page, mark.y);
        if Some(mark.level) == top {
            if let Some(done) = open.replace(next) {
                outline.push_child(done);
            }
        } else if let Some(above) = &mut open {
            above.push_child(next);
        }
    }
    outline.push_child(open.unwrap_or_else(|| node(&setting.title, 0, Length::ZERO)));
    outline
}

fn children(sheets: &Sheets, node: usize, pieces: &mut Pieces) -> Vec<TagNode> {
    let Some((_, children)) = sheets.nodes.get(node) else { return Vec::new() };
    let mut nodes: Vec<TagNode> = Vec::with_capacity(children.len());
    for child in children {
        match child {
            Child::Piece(page, number) => nodes.extend(pieces.remove(&(*page, *number)).map(TagNode::from)),
            Child::Node(inner) => nodes.extend(group(sheets, *inner, pieces).map(TagNode::from)),
        }
    }
    nodes
}

/// A node with all that it holds; none if it holds nothing.
fn group(sheets: &Sheets, node: usize, pieces: &mut Pieces) -> Option<TagGroup> {
    let (kind, _) = sheets.nodes.get(node)?;
    let held = children(sheets, node, pieces);
    let is_cell = matches!(kind, Kind::Cell(_) | Kind::ColumnName);
    if held.is_empty() && !is_cell {
        return None;
    }
    let group = match kind {
        Kind::Group => TagGroup::with_children(Tag::Div, held),
        Kind::Heading(level, text) => {
            let level = NonZeroU16::new(*level).unwrap_or(NonZeroU16::MIN);
            TagGroup::with_children(Tag::Hn(level, Some(text.clone())), held)
        }
        Kind::Paragraph => TagGroup::with_children(Tag::P, held),
        Kind::List => TagGroup::with_children(Tag::L(ListNumbering::None), held),
        Kind::Item => TagGroup::with_children(Tag::LI, held),
        Kind::Label => TagGroup::with_children(Tag::Lbl, held),
        Kind::Body => TagGroup::with_children(Tag::LBody, held),
        Kind::Table => TagGroup::with_children(Tag::Table, held),
        Kind::Head => TagGroup::with_children(Tag::THead, held),
        Kind::Rows => TagGroup::with_children(Tag::TBody, held),
        Kind::Row => TagGroup::with_children(Tag::TR, held),
        Kind::ColumnName => TagGroup::with_children(Tag::TH(TableHeaderScope::Column), held),
        Kind::Cell(columns) => {
            let columns = core::num::NonZeroU32::new(*columns).filter(|columns| columns.get() > 1);
            TagGroup::with_children(Tag::TD.with_col_span(columns), held)
        }
        Kind::Figure(alternative) => TagGroup::with_children(Tag::Figure(Some(alternative.clone())), held),
        Kind::Caption => TagGroup::with_children(Tag::Caption, held),
    };
    Some(group)
}

struct Writer<'a> {
    faces: &'a Faces,
    fonts: [Option<Font>; 3],
    pieces: Pieces,
    lacking: Lacking,
}

impl Writer<'_> {
    fn page(&mut self, document: &mut Document, number: usize, page: &Page) -> Result<(), WriteError> {
        let (width, height) = (points(page.format.width), points(page.format.height));
        let settings = PageSettings::from_wh(width, height).ok_or(WriteError::NoPaper)?;
        let mut open = document.start_page_with(settings);
        let mut surface = open.surface();
        for (at, piece) in page.pieces.iter().enumerate() {
            let artifact = |kind| ContentTag::Artifact(Artifact::with_kind(kind));
            let identifier = surface.start_tagged(match piece.is {
                Is::Content => content_tag(piece),
                Is::Header => artifact(ArtifactType::Header),
                Is::Footer => artifact(ArtifactType::Footer),
                Is::Ornament => artifact(ArtifactType::Layout),
            });
            for ink in &piece.inks {
                match ink {
                    Ink::Line(line) => self.line(&mut surface, line),
                    Ink::Shape(shape) => draw(&mut surface, shape),
                }
            }
            surface.end_tagged();
            if piece.is == Is::Content {
                self.pieces.insert((number, at), identifier);
            }
        }
        surface.finish();
        open.finish();
        Ok(())
    }

    fn line(&mut self, surface: &mut Surface<'_>, line: &Line) {
        let style = &line.style;
        let (_, lacking) = self.faces.shape(&line.text, style.face, style.level);
        for letter in BTreeSet::from_iter(lacking) {
            self.lacking.entry(letter).or_insert_with(|| line.text.trim_end().to_owned());
        }
        let text: String = line.text.chars().map(public).collect();
        let (runs, _) = self.faces.shape(&text, style.face, style.level);
        surface.set_fill(Some(filled(Fill::of(style.colour))));
        surface.set_stroke(None);
        let (x, y) = (points(line.at.x), points(line.at.y));
        if line.upright {
            // A quarter turn to the left about the text's start.
            surface.push_transform(&Transform::from_row(0.0, -1.0, 1.0, 0.0, x, y));
        } else {
            surface.push_transform(&Transform::from_translate(x, y));
        }
        let mut along = 0.0;
        for run in runs {
            let font = Face::ALL.iter().zip(&self.fonts).find(|(face, _)| **face == run.face);
            let Some(font) = font.and_then(|(_, font)| font.clone()) else { continue };
            let glyphs = run.glyphs.iter().map(|glyph| {
                let id = GlyphId::new(u32::from(glyph.id));
                KrillaGlyph::new(id, em(glyph.advance), 0.0, 0.0, 0.0, glyph.from..glyph.to, None)
            });
            let glyphs: Vec<KrillaGlyph> = glyphs.collect();
            let start = Point::from_xy(points(style.size * along), 0.0);
            surface.draw_glyphs(start, &glyphs, font, &text, points(style.size), false);
            along += run.glyphs.iter().map(|glyph| glyph.advance).sum::<f64>();
        }
        surface.pop();
    }
}

/// Text is marked as such; pictures are content of another kind.
fn content_tag(piece: &Piece) -> ContentTag<'static> {
    let is_text = piece.inks.iter().all(|ink| matches!(ink, Ink::Line(_)));
    if is_text { ContentTag::Span(SpanTag::empty()) } else { ContentTag::Other }
}

fn draw(surface: &mut Surface<'_>, shape: &Shape) {
    let mut path = PathBuilder::new();
    for step in &shape.steps {
        match step {
            Step::Move(to) => path.move_to(points(to.x), points(to.y)),
            Step::Line(to) => path.line_to(points(to.x), points(to.y)),
            Step::Curve(one, two, to) => {
                let [one, two, to] = [one, two, to].map(|spot| (points(spot.x), points(spot.y)));
                path.cubic_to(one.0, one.1, two.0, two.1, to.0, to.1);
            }
            Step::Close => path.close(),
        }
    }
    let Some(path) = path.finish().filter(|_| shape.fill.is_some() || shape.stroke.is_some()) else { return };
    surface.set_fill(shape.fill.map(filled));
    surface.set_stroke(shape.stroke.map(drawn));
    surface.draw_path(&path);
}

fn colour(Colour(red, green, blue): Colour) -> paint::Paint {
    rgb::Color::new(red, green, blue).into()
}

fn filled(fill: Fill) -> paint::Fill {
    let opacity = NormalizedF32::new(f32::from(fill.percent.min(100)) / 100.0).unwrap_or(NormalizedF32::ONE);
    paint::Fill { paint: colour(fill.colour), opacity, rule: FillRule::EvenOdd }
}

fn drawn(stroke: Stroke) -> paint::Stroke {
    let dashes = |dashes: [f64; 4]| paint::StrokeDash {
        array: dashes.iter().map(|mm| points(Length::mm(*mm))).collect(),
        offset: 0.0,
    };
    paint::Stroke {
        paint: colour(stroke.colour),
        width: points(stroke.width),
        line_cap: LineCap::Round,
        line_join: LineJoin::Round,
        dash: Some(stroke.dashes).filter(|parts| parts.iter().any(|part| *part > 0.0)).map(dashes),
        ..paint::Stroke::default()
    }
}
