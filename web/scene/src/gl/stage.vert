#version 300 es
layout(location = 0) in vec3 place;
layout(location = 1) in vec3 normal;
layout(location = 2) in vec4 grain;
uniform mat4 clip, model, key, sky;
out vec3 at, out_of;
out vec4 wood, in_key, in_sky;
void main() {
  vec4 p = model * vec4(place, 1.0);
  at = p.xyz;
  out_of = mat3(model) * normal;
  wood = grain;
  in_key = key * p;
  in_sky = sky * p;
  gl_Position = clip * p;
}
