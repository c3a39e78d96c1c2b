//! The stage's picture by WebGL 2: two shadow maps, then panels, what stands by, lines, floor and wall.

use slotwright_stage::bounds::Bounds;
use slotwright_stage::camera::{Camera, clip_from_light};
use slotwright_stage::scene::{Part, Prop, STRIDE, Scene, Stretch, What};
use slotwright_stage::{Mat4, Vec3};
use wasm_bindgen::JsCast;
use web_sys::{
    OffscreenCanvas, WebGl2RenderingContext as Gl, WebGlFramebuffer, WebGlProgram, WebGlTexture, WebGlUniformLocation,
};

mod paint;

pub(crate) use paint::Paint;

/// Pixels along a side of a shadow map.
const MAP: i32 = 1024;
/// Most pixels of the picture: more is not seen and costs frames.
const PIXELS_MOST: f32 = 4_000_000.0;

/// What is drawn, as the shaders count it.
const WOOD: i32 = 0;
const PLAIN: i32 = 1;
const LINE: i32 = 2;
const ROOM: i32 = 3;

/// So much more light falls on the darkest finish.
const MORE_LIGHT: f32 = 0.55;

/// So far before the wall the eye sees all of it, in metres.
const WALL_COMES: f32 = 0.4;

/// Where each panel stands in the picture; `None` if it is not shown.
pub(crate) type Stands = Vec<Option<Mat4>>;

/// How a picture is taken.
#[derive(Debug)]
pub(crate) struct Shot<'a> {
    /// What is shown.
    pub(crate) scene: &'a Scene,
    /// Where its panels stand.
    pub(crate) stands: &'a Stands,
    /// Which panel is marked.
    pub(crate) marked: Option<usize>,
    /// From where.
    pub(crate) camera: Camera,
    /// Whether the panels' places have changed since the last shot.
    pub(crate) moved: bool,
    /// How the panels look.
    pub(crate) paint: Paint,
    /// Whether the page is dark.
    pub(crate) dark: bool,
    /// How much of the wall is seen.
    pub(crate) wall: f32,
    /// What stands by.
    pub(crate) company: Vec<&'a Prop>,
    /// Round all that is shown.
    pub(crate) bounds: Bounds,
}

/// The context with everything that was made in it.
#[derive(Debug)]
pub(crate) struct Stage {
    gl: Gl,
    canvas: OffscreenCanvas,
    paint: Program,
    depth: Program,
    maps: Vec<(WebGlFramebuffer, WebGlTexture)>,
}

/// A program with the places of its uniforms, looked up once.
#[derive(Debug)]
struct Program {
    program: WebGlProgram,
    places: Vec<(&'static str, Option<WebGlUniformLocation>)>,
}

impl Program {
    fn place(&self, name: &str) -> Option<&WebGlUniformLocation> {
        self.places.iter().find(|(known, _)| *known == name).and_then(|(_, place)| place.as_ref())
    }

    fn matrix(&self, gl: &Gl, name: &str, matrix: &Mat4) {
        gl.uniform_matrix4fv_with_f32_array(self.place(name), false, &matrix.to_cols_array());
    }

    fn vector(&self, gl: &Gl, name: &str, vector: Vec3) {
        gl.uniform3f(self.place(name), vector.x, vector.y, vector.z);
    }
}

/// The uniforms of both programs; the one of depth has only the first two.
const UNIFORMS: [&str; 22] = [
    "clip",
    "model",
    "key",
    "sky",
    "to_key",
    "to_sky",
    "eye",
    "extent",
    "face",
    "along",
    "across",
    "tint",
    "grain",
    "plies",
    "clear",
    "dark",
    "light",
    "wall",
    "ends",
    "mode",
    "key_depth",
    "sky_depth",
];

/// Where the light comes from: a window at the left, and the sky before the unit.
const TO_KEY: Vec3 = Vec3::new(-0.48, 0.68, 0.55);
const TO_SKY: Vec3 = Vec3::new(0.22, 0.86, 0.46);

/// What is marked, on a dark page and on a light one.
const fn accent(dark: bool) -> Vec3 {
    if dark { Vec3::new(0.9, 2.0, 1.95) } else { Vec3::new(0.09, 0.57, 0.6) }
}

fn number(count: u32) -> i32 {
    i32::try_from(count).unwrap_or(0)
}

impl Stage {
    /// `None` where there is no WebGL 2.
    pub(crate) fn on(canvas: OffscreenCanvas) -> Option<Self> {
        let wishes = js_sys::Object::new();
        for (name, value) in [("antialias", true), ("alpha", true), ("preserveDrawingBuffer", false)] {
            // A plain object takes every member.
            let _ = js_sys::Reflect::set(&wishes, &name.into(), &value.into());
        }
        let gl: Gl = canvas.get_context_with_context_options("webgl2", &wishes).ok()??.dyn_into().ok()?;
        let vertex = include_str!("gl/stage.vert");
        let paint = program(&gl, vertex, include_str!("gl/stage.frag"))?;
        let depth = program(&gl, vertex, include_str!("gl/depth.frag"))?;
        let maps = (0..2).map(|_| shadow_map(&gl)).collect::<Option<_>>()?;
        let array = gl.create_vertex_array()?;
        gl.bind_vertex_array(Some(&array));
        gl.bind_buffer(Gl::ARRAY_BUFFER, Some(&gl.create_buffer()?));
        gl.bind_buffer(Gl::ELEMENT_ARRAY_BUFFER, Some(&gl.create_buffer()?));
        let stride = i32::try_from(STRIDE * 4).ok()?;
        for (at, count, offset) in [(0, 3, 0), (1, 3, 12), (2, 4, 24)] {
            gl.enable_vertex_attrib_array(at);
            gl.vertex_attrib_pointer_with_i32(at, count, Gl::FLOAT, false, stride, offset);
        }
        gl.enable(Gl::DEPTH_TEST);
        // Faces turned away are hidden, and seen edge on their depth is too coarse to be hidden by others.
        gl.enable(Gl::CULL_FACE);
        gl.blend_func(Gl::ONE, Gl::ONE_MINUS_SRC_ALPHA);
        Some(Self { gl, canvas, paint, depth, maps })
    }

    /// Hands a scene to the graphics card.
    pub(crate) fn load(&self, scene: &Scene) {
        let bytes = js_sys::Float32Array::from(&scene.vertices[..]);
        self.gl.buffer_data_with_array_buffer_view(Gl::ARRAY_BUFFER, &bytes, Gl::DYNAMIC_DRAW);
        let bytes = js_sys::Uint32Array::from(&scene.indices[..]);
        self.gl.buffer_data_with_array_buffer_view(Gl::ELEMENT_ARRAY_BUFFER, &bytes, Gl::DYNAMIC_DRAW);
    }

    /// Fits the picture to its place on the page: width, height, and device pixels for one of its pixels.
    pub(crate) fn fit(&self, (width, height): (f32, f32), ratio: f32) {
        let most = (PIXELS_MOST / (width * height).max(1.0)).sqrt();
        let scale = ratio.clamp(1.0, 2.0).min(most);
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "pixels of a screen")]
        let pixels = |length: f32| (length * scale).round().max(1.0) as u32;
        self.canvas.set_width(pixels(width));
        self.canvas.set_height(pixels(height));
    }

    /// Waits until the picture is drawn: what is read of it has to be there.
    pub(crate) fn wait(&self) {
        let mut pixel = [0; 4];
        // A context that is lost gives nothing to read, and that is soon told.
        let _ = self.gl.read_pixels_with_opt_u8_array(0, 0, 1, 1, Gl::RGBA, Gl::UNSIGNED_BYTE, Some(&mut pixel));
    }

    fn triangles(&self, stretch: Stretch) {
        let first = number(stretch.first) * 4;
        self.gl.draw_elements_with_i32(Gl::TRIANGLES, number(stretch.count), Gl::UNSIGNED_INT, first);
    }

    /// Takes the picture.
    pub(crate) fn shoot(&self, shot: &Shot<'_>) {
        let gl = &self.gl;
        let lights = [TO_KEY, TO_SKY].map(|towards| clip_from_light(towards, shot.bounds));
        if shot.moved {
            self.shadows(shot, &lights);
        }
        gl.bind_framebuffer(Gl::FRAMEBUFFER, None);
        gl.viewport(0, 0, number(self.canvas.width()), number(self.canvas.height()));
        gl.clear_color(0.0, 0.0, 0.0, 0.0);
        gl.clear(Gl::COLOR_BUFFER_BIT | Gl::DEPTH_BUFFER_BIT);
        let paint = &self.paint;
        gl.use_program(Some(&paint.program));
        for (unit, (name, (_, texture))) in (0..).zip(["key_depth", "sky_depth"].into_iter().zip(&self.maps)) {
            gl.active_texture(Gl::TEXTURE0 + unit);
            gl.bind_texture(Gl::TEXTURE_2D, Some(texture));
            gl.uniform1i(paint.place(name), i32::try_from(unit).unwrap_or(0));
        }
        #[expect(clippy::cast_precision_loss, reason = "pixels of a screen")]
        let [width, height] = [self.canvas.width(), self.canvas.height()].map(|pixels| pixels.max(1) as f32);
        gl.uniform2f(paint.place("extent"), width, height);
        paint.matrix(gl, "clip", &shot.camera.clip_from_stage(width / height));
        for (name, light) in ["key", "sky"].into_iter().zip(&lights) {
            paint.matrix(gl, name, light);
        }
        paint.vector(gl, "eye", shot.camera.eye());
        paint.vector(gl, "to_key", TO_KEY);
        paint.vector(gl, "to_sky", TO_SKY);
        let flag = |value: bool| if value { 1.0 } else { 0.0 };
        gl.uniform1f(paint.place("clear"), flag(shot.paint.clear));
        gl.uniform1f(paint.place("dark"), flag(shot.dark));
        gl.uniform1f(paint.place("light"), 1.0 + shot.paint.darkness() * MORE_LIGHT);
        gl.uniform1f(paint.place("grain"), shot.paint.grain);
        self.panels(shot);
        self.company(shot);
        self.lines(shot);
        self.room(shot);
    }

    /// The panels that are there, with their places, and whether they are marked.
    fn standing<'a>(shot: &'a Shot<'_>) -> impl Iterator<Item = (&'a Part, &'a Mat4, bool)> {
        let parts = shot.scene.parts.iter().zip(shot.stands).enumerate();
        parts.filter_map(|(at, (part, stand))| Some((part, stand.as_ref()?, shot.marked == Some(at))))
    }

    fn panels(&self, shot: &Shot<'_>) {
        let (gl, paint) = (&self.gl, &self.paint);
        let colours = |marked: bool| {
            for (name, colour) in ["face", "along", "across"].into_iter().zip(shot.paint.colours) {
                paint.vector(gl, name, if marked { colour.lerp(accent(shot.dark), 0.3) } else { colour });
            }
        };
        gl.uniform1i(paint.place("mode"), WOOD);
        colours(false);
        for (part, stand, marked) in Self::standing(shot) {
            paint.matrix(gl, "model", stand);
            gl.uniform1f(paint.place("plies"), f32::from(part.plies));
            if marked {
                colours(true);
            }
            self.triangles(part.triangles);
            if marked {
                colours(false);
            }
        }
        paint.matrix(gl, "model", &Mat4::IDENTITY);
    }

    /// Lines of panels, over all that they are seen against.
    fn lines(&self, shot: &Shot<'_>) {
        let (gl, paint) = (&self.gl, &self.paint);
        gl.uniform1i(paint.place("mode"), LINE);
        gl.enable(Gl::BLEND);
        for (Part { lines, .. }, stand, marked) in Self::standing(shot) {
            paint.matrix(gl, "model", stand);
            paint.vector(gl, "tint", if marked { accent(shot.dark) } else { shot.paint.ink() });
            gl.draw_elements_with_i32(Gl::LINES, number(lines.count), Gl::UNSIGNED_INT, number(lines.first) * 4);
        }
        gl.disable(Gl::BLEND);
        paint.matrix(gl, "model", &Mat4::IDENTITY);
    }

    /// What stands by.
    fn company(&self, shot: &Shot<'_>) {
        let (gl, paint) = (&self.gl, &self.paint);
        gl.uniform1i(paint.place("mode"), PLAIN);
        for prop in &shot.company {
            let tint = match prop.what {
                What::Screen => Vec3::new(0.02, 0.022, 0.025),
                What::Device => Vec3::new(0.06, 0.062, 0.066),
                What::Person => Vec3::new(0.5, 0.5, 0.47),
            };
            paint.vector(gl, "tint", tint);
            self.triangles(prop.triangles);
        }
    }

    /// Floor and wall, over which the page is seen.
    fn room(&self, shot: &Shot<'_>) {
        let (gl, paint) = (&self.gl, &self.paint);
        gl.enable(Gl::BLEND);
        gl.depth_mask(false);
        gl.uniform1i(paint.place("mode"), ROOM);
        let (size, at) = (shot.scene.size, shot.scene.wall_at());
        // From behind there is no wall; it comes as the eye goes round.
        let wall = shot.wall * ((shot.camera.eye().z - at) / WALL_COMES).clamp(0.0, 1.0);
        gl.uniform3f(paint.place("wall"), at, wall, size.y);
        gl.uniform2f(paint.place("ends"), shot.scene.ends.0, shot.scene.ends.1);
        paint.vector(gl, "tint", Vec3::new(size.x / 2.0, size.z / 2.0, size.x.max(size.y) * 0.9 + 0.8));
        self.triangles(shot.scene.floor);
        if wall > 0.0 {
            self.triangles(shot.scene.wall);
        }
        gl.depth_mask(true);
        gl.disable(Gl::BLEND);
    }

    fn shadows(&self, shot: &Shot<'_>, lights: &[Mat4; 2]) {
        let gl = &self.gl;
        gl.use_program(Some(&self.depth.program));
        gl.viewport(0, 0, MAP, MAP);
        gl.enable(Gl::POLYGON_OFFSET_FILL);
        gl.polygon_offset(2.0, 4.0);
        for ((frame, _), light) in self.maps.iter().zip(lights) {
            gl.bind_framebuffer(Gl::FRAMEBUFFER, Some(frame));
            gl.clear(Gl::DEPTH_BUFFER_BIT);
            self.depth.matrix(gl, "clip", light);
            for (part, stand) in shot.scene.parts.iter().zip(shot.stands) {
                let Some(stand) = stand else { continue };
                self.depth.matrix(gl, "model", stand);
                self.triangles(part.triangles);
            }
            self.depth.matrix(gl, "model", &Mat4::IDENTITY);
            for prop in &shot.company {
                self.triangles(prop.triangles);
            }
        }
        gl.disable(Gl::POLYGON_OFFSET_FILL);
    }
}

/// `None` if the driver takes the shaders not; the console says why.
fn program(gl: &Gl, vertex: &str, fragment: &str) -> Option<Program> {
    let program = gl.create_program()?;
    for (kind, source) in [(Gl::VERTEX_SHADER, vertex), (Gl::FRAGMENT_SHADER, fragment)] {
        let shader = gl.create_shader(kind)?;
        gl.shader_source(&shader, source);
        gl.compile_shader(&shader);
        gl.attach_shader(&program, &shader);
        if let Some(log) = gl.get_shader_info_log(&shader).filter(|log| !log.trim().is_empty()) {
            web_sys::console::warn_1(&log.into());
        }
    }
    gl.link_program(&program);
    let places = UNIFORMS.map(|name| (name, gl.get_uniform_location(&program, name))).to_vec();
    gl.get_program_parameter(&program, Gl::LINK_STATUS).as_bool()?.then_some(Program { program, places })
}

/// A depth texture that compares when it is read.
fn shadow_map(gl: &Gl) -> Option<(WebGlFramebuffer, WebGlTexture)> {
    let texture = gl.create_texture()?;
    gl.bind_texture(Gl::TEXTURE_2D, Some(&texture));
    let format = i32::try_from(Gl::DEPTH_COMPONENT24).ok()?;
    gl.tex_image_2d_with_i32_and_i32_and_i32_and_format_and_type_and_opt_u8_array(
        Gl::TEXTURE_2D,
        0,
        format,
        MAP,
        MAP,
        0,
        Gl::DEPTH_COMPONENT,
        Gl::UNSIGNED_INT,
        None,
    )
    .ok()?;
    for (name, value) in [
        (Gl::TEXTURE_MIN_FILTER, Gl::LINEAR),
        (Gl::TEXTURE_MAG_FILTER, Gl::LINEAR),
        (Gl::TEXTURE_WRAP_S, Gl::CLAMP_TO_EDGE),
        (Gl::TEXTURE_WRAP_T, Gl::CLAMP_TO_EDGE),
        (Gl::TEXTURE_COMPARE_MODE, Gl::COMPARE_REF_TO_TEXTURE),
    ] {
        gl.tex_parameteri(Gl::TEXTURE_2D, name, i32::try_from(value).ok()?);
    }
    let frame = gl.create_framebuffer()?;
    gl.bind_framebuffer(Gl::FRAMEBUFFER, Some(&frame));
    gl.framebuffer_texture_2d(Gl::FRAMEBUFFER, Gl::DEPTH_ATTACHMENT, Gl::TEXTURE_2D, Some(&texture), 0);
    Some((frame, texture))
}
