//! The unit, and what stands round it, as triangles and lines for a graphics card.

use glam::{Vec3, vec3};
use slotwright_core::cabinet::assembly::Assembly;
use slotwright_core::cabinet::case::Case;
use slotwright_core::cabinet::layout::{Layout, Picked};
use slotwright_core::cabinet::panel::{Feature, Panel, PanelId, Stock};
use slotwright_core::choice::{Choice, Fill, Hung};
use slotwright_core::geometry::space::{Lie, Placement};
use slotwright_core::rules::place;
use slotwright_core::units::quantity::Length;
use slotwright_solid::axes::{metres, turned};
use slotwright_solid::mesh::{Mesh, Vertex};

use crate::bounds::Bounds;
use crate::pose::Pose;
use crate::{figure, single, wood};

/// No chord is further from its arc than this: less than a pixel.
const TOLERANCE: Length = Length::mm(0.25);

/// Numbers of a vertex: place (3), normal (3), where it lies in the wood (4).
pub const STRIDE: usize = 10;

/// Between the unit and the wall behind it, in metres: no shadow of the one lies in the other.
const BEFORE_WALL: f32 = 0.012;

/// A stretch of the indices that is drawn as one.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Stretch {
    /// The first index.
    pub first: u32,
    /// How many.
    pub count: u32,
}

/// A panel of the scene.
#[derive(Clone, Copy, Debug)]
pub struct Part {
    /// Which one.
    pub id: PanelId,
    /// Its triangles.
    pub triangles: Stretch,
    /// Its outlines.
    pub lines: Stretch,
    /// How many plies its edges show.
    pub plies: u8,
    /// Round it where it belongs, leaves shut.
    pub bounds: Bounds,
    /// Where it goes when the unit is drawn apart, in metres.
    pub apart: Vec3,
    /// A leaf's pivot axis and the angle to which it opens.
    pub swing: Option<(Vec3, f32)>,
}

/// Something that stands by: the screen, a person.
#[derive(Clone, Copy, Debug)]
pub struct Prop {
    /// What it is.
    pub what: What,
    /// Its triangles.
    pub triangles: Stretch,
    /// Round it.
    pub bounds: Bounds,
}

/// What stands by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    /// The screen on the top.
    Screen,
    /// A device in a bay.
    Device,
    /// A person of 1.70 m beside the unit.
    Person,
}

/// Everything that the stage draws.
#[derive(Clone, Debug, Default)]
pub struct Scene {
    /// The vertices, [`STRIDE`] numbers each.
    pub vertices: Vec<f32>,
    /// Triangles and lines.
    pub indices: Vec<u32>,
    /// The panels in reading order.
    pub parts: Vec<Part>,
    /// What stands by.
    pub props: Vec<Prop>,
    /// The ground: it only takes shadows.
    pub floor: Stretch,
    /// The wall behind the unit, which takes shadows as well.
    pub wall: Stretch,
    /// Right rear top corner of the unit.
    pub size: Vec3,
    /// From its left end upright to its right one: between them the wall behind is dark, and beside them, behind bowed ends, it is
    /// not.
    pub ends: (f32, f32),
}

impl Scene {
    /// The scene of a unit.
    pub fn of(picked: Picked<'_>, layout: &Layout, case: &Case, choice: &Choice) -> Self {
        let size = Vec3::from(metres([layout.width.in_mm(), layout.depth.in_mm(), layout.height.in_mm()]));
        let mut scene = Self { size, ..Self::default() };
        for panel in &case.panels {
            let board = match panel.stock {
                Stock::Body => picked.body,
                Stock::Back => picked.back,
            };
            scene.panel(panel, board.plies(), choice);
        }
        let uprights = scene.parts.iter().filter(|part| matches!(part.id, PanelId::Upright(_)));
        let between = uprights.map(|part| part.bounds).fold(Bounds::default(), Bounds::with);
        scene.ends = (between.low.x, between.high.x);
        if let Some(tenths) = choice.place.screen_tenth_inch {
            scene.screen(place::screen(place::diagonal(tenths)));
        }
        scene.devices(picked, layout, choice);
        scene.person();
        scene.room();
        scene
    }

    /// Whether there are leaves to open.
    pub fn has_leaves(&self) -> bool {
        self.parts.iter().any(|part| part.swing.is_some())
    }

    /// What stands by a unit in a pose: screen and devices while it stands whole, a person if one is wanted.
    pub fn company(&self, pose: Pose, person: bool) -> impl Iterator<Item = &Prop> {
        self.props.iter().filter(move |prop| match prop.what {
            What::Screen | What::Device => pose.is_whole(),
            What::Person => person,
        })
    }

    /// A box round everything that is shown in a pose, all the way into it.
    pub fn reach(&self, pose: Pose, assembly: &Assembly, person: bool) -> Bounds {
        let parts = self.parts.iter().map(|part| pose.reach(part, assembly));
        let company = self.company(pose, person).map(|prop| prop.bounds);
        parts.chain(company).fold(Bounds::default(), Bounds::with)
    }

    fn panel(&mut self, panel: &Panel, plies: u8, choice: &Choice) {
        let mesh = Mesh::of(panel, TOLERANCE);
        let placed = mesh.in_case(panel.case_from_panel);
        let base = self.count();
        let mut edge = vec![false; mesh.vertices.len()];
        for index in mesh.edges.iter().flatten() {
            if let Some(edge) = edge.get_mut(*index as usize) {
                *edge = true;
            }
        }
        for ((own, placed), edge) in mesh.vertices.iter().zip(&placed.vertices).zip(edge) {
            self.vertex(metres(placed.at).into(), turned(placed.normal).into(), wood::place(panel, own, edge));
        }
        let triangles = self.stretch(placed.faces.iter().chain(&placed.edges).flatten().map(|index| base + index));
        let lines = self.outlines(panel);
        let bounds = Bounds::of(placed.vertices.iter().map(|vertex| metres(vertex.at).into()));
        let swing = leaf_swing(panel, choice);
        let apart = self.apart(panel);
        self.parts.push(Part { id: panel.id, triangles, lines, plies, bounds, apart, swing });
    }

    /// Sharp edges as lines.
    fn outlines(&mut self, panel: &Panel) -> Stretch {
        let mut pairs = Vec::new();
        for points in slotwright_solid::mesh::sharp_edges(panel, TOLERANCE) {
            let first = self.count();
            for point in &points {
                let at = metres(place_of(panel.case_from_panel, *point));
                self.vertex(at.into(), Vec3::Y, wood::PLAIN);
            }
            let count = u32::try_from(points.len()).unwrap_or(0);
            pairs.extend((0..count).flat_map(|at| [first + at, first + (at + 1) % count]));
        }
        self.stretch(pairs.into_iter())
    }

    fn screen(&mut self, (width, height): (Length, Length)) {
        let (half, height) = (single(width.in_m() / 2.0), single(height.in_m()));
        let (middle, top, depth) = (self.size.x / 2.0, self.size.y, self.size.z);
        let z = depth * 0.55;
        let boxes = [
            (vec3(middle - half, top + 0.06, z - 0.02), vec3(middle + half, top + 0.06 + height, z + 0.02)),
            (vec3(middle - half * 0.6, top, z - 0.1), vec3(middle - half * 0.55, top + 0.08, z + 0.1)),
            (vec3(middle + half * 0.55, top, z - 0.1), vec3(middle + half * 0.6, top + 0.08, z + 0.1)),
        ];
        let boxes = boxes.map(|(low, high)| Bounds { low, high });
        self.prop(What::Screen, &boxes);
    }

    /// Something made of boxes.
    fn prop(&mut self, what: What, boxes: &[Bounds]) {
        let indices: Vec<u32> = boxes.iter().flat_map(|bounds| self.cuboid(*bounds)).collect();
        let triangles = self.stretch(indices.into_iter());
        let bounds = boxes.iter().copied().fold(Bounds::default(), Bounds::with);
        self.props.push(Prop { what, triangles, bounds });
    }

    /// Each device where it stands in its bay, as far back as its plugs let it.
    fn devices(&mut self, picked: Picked<'_>, layout: &Layout, choice: &Choice) {
        for (chosen, span) in choice.bays.iter().zip(&layout.bays) {
            let Some(device) = chosen.device.as_ref().and_then(|key| picked.range.device(key)) else { continue };
            let (wide, rear) = (device.width_mm, layout.back_front - device.plug_behind_mm);
            let left = span.standing(wide);
            let right = left + wide;
            let foot = Length::mm(6.0);
            let low = [left, rear, layout.floor + foot];
            let high = [right, rear - device.depth_mm, layout.floor + device.height_mm];
            let [low, high] = [low, high].map(|corner| metres(corner.map(Length::in_mm)).into());
            self.prop(What::Device, &[Bounds { low, high }]);
        }
    }

    /// A person beside the unit, cut from board: something to judge its size by.
    fn person(&mut self) {
        let mesh = figure::mesh();
        let base = self.count();
        let at = vec3(self.size.x + 0.45, 0.0, self.size.z * 0.5);
        let place = |vertex: &Vertex| Vec3::from(vertex.at.map(single)) / 1000.0;
        for vertex in &mesh.vertices {
            self.vertex(at + place(vertex), vertex.normal.map(single).into(), wood::PLAIN);
        }
        let triangles = self.stretch(mesh.triangles().flatten().map(|index| base + index));
        let bounds = Bounds::of(mesh.vertices.iter().map(|vertex| at + place(vertex)));
        self.props.push(Prop { what: What::Person, triangles, bounds });
    }

    /// A square of ground, far larger than any picture of a unit, and the wall along its middle.
    fn room(&mut self) {
        let wall = self.wall_at();
        let corners = |place: fn(f32, f32) -> Vec3| {
            [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)].map(|(x, y)| place(x, y) * 8.0)
        };
        let square = |scene: &mut Self, corners: [Vec3; 4], normal: Vec3| {
            let first = scene.count();
            for at in corners {
                scene.vertex(at, normal, wood::PLAIN);
            }
            scene.stretch([0, 1, 2, 0, 2, 3].into_iter().map(|corner| first + corner))
        };
        self.floor = square(self, corners(|x, y| vec3(x, 0.0, -y)), Vec3::Y);
        let upright = corners(|x, y| vec3(x, y * 0.5 + 0.5, 0.0)).map(|at| at.with_z(wall));
        self.wall = square(self, upright, Vec3::Z);
    }

    /// Where the wall stands, from the unit's front.
    pub fn wall_at(&self) -> f32 {
        self.size.z - BEFORE_WALL
    }

    /// The corners of a box, and the indices of its triangles.
    fn cuboid(&mut self, Bounds { low, high }: Bounds) -> Vec<u32> {
        let mut indices = Vec::new();
        for axis in 0..3 {
            for (normal, at) in [(-1.0, low), (1.0, high)] {
                let mut out = Vec3::ZERO;
                out[axis] = normal;
                let (side, up) = ((axis + 1) % 3, (axis + 2) % 3);
                let first = self.count();
                for (a, b) in [(low, low), (high, low), (high, high), (low, high)] {
                    let mut place = at;
                    place[side] = a[side];
                    place[up] = b[up];
                    self.vertex(place, out, wood::PLAIN);
                }
                let [a, b, c, d] = [first, first + 1, first + 2, first + 3];
                indices.extend(if normal > 0.0 { [a, b, c, a, c, d] } else { [a, c, b, a, d, c] });
            }
        }
        indices
    }

    /// Where a part goes when the unit is drawn apart: away from its neighbours, the way it came.
    fn apart(&self, panel: &Panel) -> Vec3 {
        let centre = panel.case_from_panel.spot(panel.centroid(), panel.thickness / 2.0);
        let side = (single(centre.x.in_m()) / self.size.x - 0.5) * 0.5;
        // The whole unit goes up from its plinth, whose boards come first.
        let up = if self.parts.first().is_some_and(|part| part.id == PanelId::PlinthFront) { 0.24 } else { 0.0 };
        let apart = match panel.id {
            PanelId::PlinthFront | PanelId::PlinthRear => return vec3(0.0, 0.0, 0.0),
            PanelId::Bearer(_) => return vec3(0.0, 0.12, 0.0),
            PanelId::BaseLower => vec3(0.0, 0.0, 0.0),
            PanelId::BaseUpper => vec3(0.0, 0.12, 0.0),
            PanelId::Upright(_) => vec3(side, 0.3, 0.0),
            PanelId::Back => vec3(0.0, 0.34, -0.4),
            PanelId::Shelf { .. } => vec3(side, 0.3, 0.4),
            PanelId::Stile(_) => vec3(side, 0.42, 0.62),
            PanelId::Stop(_) => vec3(side, 0.36, 0.4),
            PanelId::Leaf(_) => vec3(side, 0.3, 0.8),
            // Away from the end, each the way that it faces.
            PanelId::Stave { .. } => match panel.case_from_panel.lie {
                Lie::Turned(aim) => vec3(single(aim.y) * 0.3, 0.36, single(aim.x) * 0.3),
                Lie::Flat | Lie::Facing | Lie::Side => vec3(side, 0.36, 0.0),
            },
            PanelId::Top => vec3(0.0, 0.95, 0.0),
        };
        apart + vec3(0.0, up, 0.0)
    }

    fn vertex(&mut self, at: Vec3, normal: Vec3, wood: wood::Place) {
        self.vertices.extend(at.to_array());
        self.vertices.extend(normal.to_array());
        self.vertices.extend(wood);
    }

    fn count(&self) -> u32 {
        u32::try_from(self.vertices.len() / STRIDE).unwrap_or(u32::MAX)
    }

    fn stretch(&mut self, indices: impl Iterator<Item = u32>) -> Stretch {
        let first = self.indices.len();
        self.indices.extend(indices);
        let length = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
        Stretch { first: length(first), count: length(self.indices.len() - first) }
    }
}

fn place_of(place: Placement, [u, v, w]: [f64; 3]) -> [f64; 3] {
    let point = slotwright_core::geometry::outline::Point::new(Length::mm(u), Length::mm(v));
    let spot = place.spot(point, Length::mm(w));
    [spot.x.in_mm(), spot.y.in_mm(), spot.z.in_mm()]
}

/// Pivot axis of a leaf and the angle of its open state.
fn leaf_swing(panel: &Panel, choice: &Choice) -> Option<(Vec3, f32)> {
    let PanelId::Leaf(bay) = panel.id else { return None };
    let bay = choice.bays.get(usize::from(bay.checked_sub(1)?))?;
    let Fill::Leaf(hung) = bay.fill else { return None };
    let at = panel.features.iter().find_map(|feature| match feature {
        Feature::Pivot { at, .. } => Some(*at),
        _ => None,
    })?;
    debug_assert!(panel.case_from_panel.lie == Lie::Facing, "a leaf faces the front");
    let axis = place_of(panel.case_from_panel, [at.in_mm(), 0.0, panel.thickness.in_mm() / 2.0]);
    // 95°: a little past square, as far as a hand would push it.
    let open = match hung {
        Hung::Left => -1.66,
        Hung::Right => 1.66,
    };
    Some((metres(axis).into(), open))
}

#[cfg(test)]
mod tests;
