#version 300 es
layout(location = 0) in vec3 place;
layout(location = 1) in vec3 normal;
layout(location = 2) in vec4 lies;
uniform mat4 clip, model, key, sky;
uniform vec3 eye;
uniform highp int mode;
out vec3 at, out_of;
out vec4 wood, in_key, in_sky;
// How the surface leans in the eyes of both lights: depth along their x and y.
out vec4 leans;
vec2 lean(mat4 light) {
  vec3 n = transpose(inverse(mat3(light))) * out_of;
  return clamp(-n.xy / (abs(n.z) < 1e-4 ? 1e-4 : n.z), -4.0, 4.0);
}
void main() {
  vec4 p = model * vec4(place, 1.0);
  at = p.xyz;
  out_of = mat3(model) * normal;
  wood = lies;
  in_key = key * p;
  in_sky = sky * p;
  leans = vec4(lean(key), lean(sky));
  // Lines lie a hair before the faces that they belong to, and still behind every other one.
  if (mode == 2) p.xyz += normalize(eye - p.xyz) * 0.002;
  gl_Position = clip * p;
}
