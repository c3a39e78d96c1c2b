//! The unit as a binary glTF 2.0 file: metres, +Y up, front along +Z, one named node for each panel
//! with its mass in `extras`.
// Source: Khronos Group, glTF 2.0 Specification, «GLB File Format» and «Coordinate System and Units».

use serde_json::{Value, json};
use slotwright_core::business::built::Built;
use slotwright_core::cabinet::panel::Panel;
use slotwright_core::choice::Choice;
use slotwright_core::order::derive::Derived;
use slotwright_core::range::{Finish, Look};
use slotwright_core::units::quantity::{Length, Mass};
use slotwright_core::words;
use slotwright_solid::appearance::Appearance;
use slotwright_solid::axes::{metres, turned};
use slotwright_solid::mesh::{Mesh, Vertex};

/// No chord of an arc is further from it than this.
const TOLERANCE: Length = Length::mm(0.03);

const FLOAT: u32 = 5126;
const UNSIGNED_INT: u32 = 5125;
const VERTICES: u32 = 34962;
const TRIANGLES: u32 = 34963;

/// The file's name: model and sizes, as people look for it among others.
pub fn file_name(choice: &Choice) -> String {
    let [width, height, depth] = [choice.width_mm, choice.height_mm, choice.depth_mm];
    format!("{}-{width}x{height}x{depth}.glb", choice.model)
}

/// Writes the assembled unit, leaves closed, under its model's name; `None` if something stops it.
pub fn glb(derived: &Derived<'_>) -> Option<Vec<u8>> {
    let (range, choice) = (derived.range, derived.choice);
    let built = derived.built.as_ref().filter(|_| derived.stops().next().is_none())?;
    let (finish, model) = (range.finish(&choice.finish)?, range.model(&choice.model)?);
    Some(write(built, finish, &model.name))
}

fn write(built: &Built, finish: &Finish, name: &str) -> Vec<u8> {
    let mut file = File::default();
    let nodes: Vec<Value> = built.cut.weighed().map(|(panel, weighed)| file.panel(panel, weighed.mass)).collect();
    let children: Vec<usize> = (1..=nodes.len()).collect();
    let root = json!({ "name": name, "children": children, "extras": { "mass_kg": kg(built.whole.mass) } });
    let document = json!({
        "asset": { "version": "2.0", "generator": "Slotwright" },
        "scene": 0,
        "scenes": [{ "nodes": [0] }],
        "nodes": core::iter::once(root).chain(nodes).collect::<Vec<_>>(),
        "meshes": file.meshes,
        "materials": materials(finish),
        "accessors": file.accessors,
        "bufferViews": file.views,
        "buffers": [{ "byteLength": file.bytes.len() }],
    });
    container(&document.to_string(), &file.bytes)
}

/// Kilograms to the milligram.
fn kg(mass: Mass) -> f64 {
    (mass.in_kg() * 1e6).round() / 1e6
}

/// Faces and edges. Clear films shine a little more than filled ones; edges have the mean colour of their plies.
fn materials(finish: &Finish) -> Value {
    let look = Appearance::of(finish);
    let rough = match finish.look {
        Look::Clear => 0.45,
        Look::Opaque => 0.6,
    };
    let material = |what: &str, [red, green, blue]: [f64; 3]| {
        json!({
            "name": format!("{}, {what}", finish.name),
            "pbrMetallicRoughness": {
                "baseColorFactor": [red, green, blue, 1.0],
                "metallicFactor": 0.0,
                "roughnessFactor": rough,
            },
        })
    };
    json!([material("faces", look.face), material("edges", look.edge())])
}

/// What grows while panels are written.
#[derive(Debug, Default)]
struct File {
    bytes: Vec<u8>,
    views: Vec<Value>,
    accessors: Vec<Value>,
    meshes: Vec<Value>,
}

impl File {
    /// Adds a panel's mesh and gives its node.
    fn panel(&mut self, panel: &Panel, mass: Mass) -> Value {
        let mesh = Mesh::of(panel, TOLERANCE).in_case(panel.case_from_panel);
        let positions = self.vectors(&mesh.vertices, |vertex| metres(vertex.at), true);
        let normals = self.vectors(&mesh.vertices, |vertex| turned(vertex.normal), false);
        let primitives: Vec<Value> = [&mesh.faces, &mesh.edges]
            .into_iter()
            .enumerate()
            .filter(|(_, triangles)| !triangles.is_empty())
            .map(|(material, triangles)| {
                let indices = self.indices(triangles);
                json!({
                    "attributes": { "POSITION": positions, "NORMAL": normals },
                    "indices": indices,
                    "material": material,
                })
            })
            .collect();
        let name = panel.id.to_string();
        let index = self.meshes.len();
        self.meshes.push(json!({ "name": name, "primitives": primitives }));
        json!({ "name": name, "mesh": index, "extras": { "mass_kg": kg(mass), "part": words::part(panel.id) } })
    }

    fn vectors(&mut self, vertices: &[Vertex], of: impl Fn(&Vertex) -> [f32; 3], bounds: bool) -> usize {
        let vectors: Vec<[f32; 3]> = vertices.iter().map(of).collect();
        let view = self.view(vectors.iter().flatten().flat_map(|value| value.to_le_bytes()), VERTICES);
        let mut accessor =
            json!({ "bufferView": view, "componentType": FLOAT, "count": vectors.len(), "type": "VEC3" });
        if bounds {
            let fold = |start: f32, pick: fn(f32, f32) -> f32| {
                vectors.iter().fold([start; 3], |[x, y, z], [a, b, c]| [pick(x, *a), pick(y, *b), pick(z, *c)])
            };
            accessor["min"] = json!(fold(f32::INFINITY, f32::min));
            accessor["max"] = json!(fold(f32::NEG_INFINITY, f32::max));
        }
        self.accessor(accessor)
    }

    fn indices(&mut self, triangles: &[[u32; 3]]) -> usize {
        let view = self.view(triangles.iter().flatten().flat_map(|index| index.to_le_bytes()), TRIANGLES);
        self.accessor(json!({
            "bufferView": view,
            "componentType": UNSIGNED_INT,
            "count": triangles.len() * 3,
            "type": "SCALAR",
        }))
    }

    fn view(&mut self, bytes: impl Iterator<Item = u8>, target: u32) -> usize {
        let from = self.bytes.len();
        self.bytes.extend(bytes);
        let length = self.bytes.len() - from;
        self.views.push(json!({ "buffer": 0, "byteOffset": from, "byteLength": length, "target": target }));
        self.views.len() - 1
    }

    fn accessor(&mut self, accessor: Value) -> usize {
        self.accessors.push(accessor);
        self.accessors.len() - 1
    }
}

/// Header, JSON chunk padded with spaces, binary chunk padded with zeros.
fn container(json: &str, bytes: &[u8]) -> Vec<u8> {
    let padded = |length: usize| length.next_multiple_of(4);
    let (json_length, bytes_length) = (padded(json.len()), padded(bytes.len()));
    let word = |value: usize| u32::try_from(value).unwrap_or(u32::MAX).to_le_bytes();
    let mut file = Vec::with_capacity(28 + json_length + bytes_length);
    file.extend(b"glTF");
    file.extend(word(2));
    file.extend(word(28 + json_length + bytes_length));
    file.extend(word(json_length));
    file.extend(b"JSON");
    file.extend(json.as_bytes());
    file.resize(20 + json_length, b' ');
    file.extend(word(bytes_length));
    file.extend(b"BIN\0");
    file.extend(bytes);
    file.resize(28 + json_length + bytes_length, 0);
    file
}

#[cfg(test)]
mod tests {
    use slotwright_core::range::Range;
    use slotwright_core::units::quantity::Dim;

    use super::*;

    #[test]
    fn a_file_is_named_by_model_and_sizes() {
        let range = Range::parse(include_str!("../../../web/ranges/fenland.toml")).unwrap();
        let mut choice = Choice::first_of(&range).unwrap();
        choice.width_mm = Dim::tenths(16_405);
        assert_eq!(file_name(&choice), "sedge-1640.5x520x420.glb");
    }
}
