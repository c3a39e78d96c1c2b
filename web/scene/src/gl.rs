//! The stage's picture by WebGL 2: two shadow maps, then panels, lines, what stands by, and the floor.

use slotwright_stage::camera::Camera;
use slotwright_stage::scene::{STRIDE, Scene, Stretch, What};
use slotwright_stage::{Mat4, Vec3};
use wasm_bindgen::JsCast;
use web_sys::{
    OffscreenCanvas, WebGl2RenderingContext as Gl, WebGlFramebuffer, WebGlProgram, WebGlTexture, WebGlUniformLocation,
};

/// Pixels along a side of a shadow map.
const MAP: i32 = 1024;
/// Most pixels of the picture: more is not seen and costs frames.
const PIXELS_MOST: f32 = 4_000_000.0;

/// Where each panel stands in the picture; `None` if it is not shown.
pub(crate) type Stands = Vec<Option<Mat4>>;

/// How panels look.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Paint {
    /// Colour of the finish, linear.
    pub(crate) colour: [f32; 3],
    /// Whether the grain is seen through it.
    pub(crate) clear: bool,
}

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
    /// Whether a person stands by.
    pub(crate) person: bool,
}

/// The context with everything that was made in it.
#[derive(Debug)]
pub(crate) struct Stage {
    gl: Gl,
    canvas: OffscreenCanvas,
    program: WebGlProgram,
    depth: WebGlProgram,
    maps: Vec<(WebGlFramebuffer, WebGlTexture)>,
    floor: Stretch,
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
        let program = program(&gl, vertex, include_str!("gl/stage.frag"))?;
        let depth = program_of_depth(&gl, vertex)?;
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
        gl.enable(Gl::POLYGON_OFFSET_FILL);
        gl.blend_func(Gl::ONE, Gl::ONE_MINUS_SRC_ALPHA);
        Some(Self { gl, canvas, program, depth, maps, floor: Stretch { first: 0, count: 0 } })
    }

    /// Hands a scene to the graphics card.
    pub(crate) fn load(&mut self, scene: &Scene) -> Option<()> {
        let gl = &self.gl;
        let (mut vertices, mut indices) = (scene.vertices.clone(), scene.indices.clone());
        let base = u32::try_from(vertices.len() / STRIDE).ok()?;
        self.floor = Stretch { first: u32::try_from(indices.len()).ok()?, count: 6 };
        for (x, z) in [(-6.0, 6.0), (8.0, 6.0), (8.0, -8.0), (-6.0, -8.0)] {
            vertices.extend([x, 0.0, z, 0.0, 1.0, 0.0, 0.0, 0.0, 0.0, 2.0]);
        }
        indices.extend([0, 1, 2, 0, 2, 3].map(|corner: u32| base + corner));
        let bytes = js_sys::Float32Array::from(&vertices[..]);
        gl.buffer_data_with_array_buffer_view(Gl::ARRAY_BUFFER, &bytes, Gl::DYNAMIC_DRAW);
        let bytes = js_sys::Uint32Array::from(&indices[..]);
        gl.buffer_data_with_array_buffer_view(Gl::ELEMENT_ARRAY_BUFFER, &bytes, Gl::DYNAMIC_DRAW);
        Some(())
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

    fn place(&self, program: &WebGlProgram, name: &str) -> Option<WebGlUniformLocation> {
        self.gl.get_uniform_location(program, name)
    }

    fn matrix(&self, program: &WebGlProgram, name: &str, matrix: &Mat4) {
        self.gl.uniform_matrix4fv_with_f32_array(self.place(program, name).as_ref(), false, &matrix.to_cols_array());
    }

    fn vector(&self, name: &str, [x, y, z]: [f32; 3]) {
        self.gl.uniform3f(self.place(&self.program, name).as_ref(), x, y, z);
    }

    fn triangles(&self, stretch: Stretch) {
        let first = number(stretch.first) * 4;
        self.gl.draw_elements_with_i32(Gl::TRIANGLES, number(stretch.count), Gl::UNSIGNED_INT, first);
    }

    /// Takes the picture.
    pub(crate) fn shoot(&self, shot: &Shot<'_>) {
        let gl = &self.gl;
        let (low, high) = (Vec3::new(-0.6, 0.0, shot.scene.size.z - 0.8), shot.scene.size + Vec3::new(0.9, 1.3, 1.2));
        let lights = [Vec3::new(-0.48, 0.68, 0.55), Vec3::new(0.22, 0.86, 0.46)]
            .map(|towards| slotwright_stage::camera::clip_from_light(towards, low, high));
        if shot.moved {
            self.shadows(shot, &lights);
        }
        gl.bind_framebuffer(Gl::FRAMEBUFFER, None);
        gl.viewport(0, 0, number(self.canvas.width()), number(self.canvas.height()));
        gl.clear_color(0.0, 0.0, 0.0, 0.0);
        gl.clear(Gl::COLOR_BUFFER_BIT | Gl::DEPTH_BUFFER_BIT);
        gl.use_program(Some(&self.program));
        for (unit, (name, (_, texture))) in (0..).zip(["key_depth", "sky_depth"].into_iter().zip(&self.maps)) {
            gl.active_texture(Gl::TEXTURE0 + unit);
            gl.bind_texture(Gl::TEXTURE_2D, Some(texture));
            gl.uniform1i(self.place(&self.program, name).as_ref(), i32::try_from(unit).unwrap_or(0));
        }
        #[expect(clippy::cast_precision_loss, reason = "pixels of a screen")]
        let aspect = self.canvas.width() as f32 / self.canvas.height().max(1) as f32;
        self.matrix(&self.program, "clip", &shot.camera.clip_from_stage(aspect));
        for (name, light) in ["key", "sky"].into_iter().zip(&lights) {
            self.matrix(&self.program, name, light);
        }
        self.vector("eye", shot.camera.eye().to_array());
        self.vector("colour", shot.paint.colour);
        let flag = |value: bool| if value { 1.0 } else { 0.0 };
        gl.uniform1f(self.place(&self.program, "clear").as_ref(), flag(shot.paint.clear));
        gl.uniform1f(self.place(&self.program, "dark").as_ref(), flag(shot.dark));
        let mode = self.place(&self.program, "mode");
        gl.polygon_offset(1.0, 1.0);
        for (at, (part, stand)) in shot.scene.parts.iter().zip(shot.stands).enumerate() {
            let Some(stand) = stand else { continue };
            self.matrix(&self.program, "model", stand);
            gl.uniform1i(mode.as_ref(), 0);
            self.triangles(part.triangles);
            gl.uniform1i(mode.as_ref(), 2);
            let ink = if shot.dark { [0.03, 0.03, 0.03] } else { [0.1, 0.1, 0.09] };
            let accent = if shot.dark { [0.9, 2.0, 1.95] } else { [0.09, 0.57, 0.6] };
            self.vector("tint", if shot.marked == Some(at) { accent } else { ink });
            let first = number(part.lines.first) * 4;
            gl.draw_elements_with_i32(Gl::LINES, number(part.lines.count), Gl::UNSIGNED_INT, first);
        }
        self.matrix(&self.program, "model", &Mat4::IDENTITY);
        gl.uniform1i(mode.as_ref(), 1);
        for prop in shot.scene.props.iter().filter(|prop| shot.person || prop.what != What::Person) {
            self.vector(
                "tint",
                match prop.what {
                    What::Screen => [0.02, 0.022, 0.025],
                    What::Person => [0.5, 0.5, 0.47],
                },
            );
            self.triangles(prop.triangles);
        }
        gl.enable(Gl::BLEND);
        gl.depth_mask(false);
        gl.uniform1i(mode.as_ref(), 3);
        let size = shot.scene.size;
        self.vector("tint", [size.x / 2.0, size.z / 2.0, size.x.max(size.y) * 0.9 + 0.8]);
        self.triangles(self.floor);
        gl.depth_mask(true);
        gl.disable(Gl::BLEND);
    }

    fn shadows(&self, shot: &Shot<'_>, lights: &[Mat4; 2]) {
        let gl = &self.gl;
        gl.use_program(Some(&self.depth));
        gl.viewport(0, 0, MAP, MAP);
        gl.polygon_offset(2.0, 4.0);
        for ((frame, _), light) in self.maps.iter().zip(lights) {
            gl.bind_framebuffer(Gl::FRAMEBUFFER, Some(frame));
            gl.clear(Gl::DEPTH_BUFFER_BIT);
            self.matrix(&self.depth, "clip", light);
            for (part, stand) in shot.scene.parts.iter().zip(shot.stands) {
                let Some(stand) = stand else { continue };
                self.matrix(&self.depth, "model", stand);
                self.triangles(part.triangles);
            }
            self.matrix(&self.depth, "model", &Mat4::IDENTITY);
            for prop in shot.scene.props.iter().filter(|prop| shot.person || prop.what != What::Person) {
                self.triangles(prop.triangles);
            }
        }
    }
}

fn program_of_depth(gl: &Gl, vertex: &str) -> Option<WebGlProgram> {
    program(gl, vertex, include_str!("gl/depth.frag"))
}

/// `None` if the driver takes the shaders not; the console says why.
fn program(gl: &Gl, vertex: &str, fragment: &str) -> Option<WebGlProgram> {
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
    gl.get_program_parameter(&program, Gl::LINK_STATUS).as_bool()?.then_some(program)
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
