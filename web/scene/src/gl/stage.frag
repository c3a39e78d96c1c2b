#version 300 es
precision highp float;
precision highp sampler2DShadow;
in vec3 at, out_of;
in vec4 wood, in_key, in_sky, leans;
uniform vec3 eye, colour, tint, to_key, to_sky;
uniform vec2 extent;
uniform float clear, dark;
uniform highp int mode;
uniform sampler2DShadow key_depth, sky_depth;
out vec4 seen;

float random(vec2 p) { p = fract(p * vec2(123.34, 345.45)); p += dot(p, p + 34.345); return fract(p.x * p.y); }
float noise(vec2 p) {
  vec2 i = floor(p), f = fract(p);
  f = f * f * (3.0 - 2.0 * f);
  return mix(mix(random(i), random(i + vec2(1, 0)), f.x), mix(random(i + vec2(0, 1)), random(i + vec2(1, 1)), f.x), f.y);
}
// Rotary-cut birch: broad soft figure along the grain, fine streaks, short dark pores.
float birch(vec2 p) {
  float bend = noise(vec2(p.x * 1.3, p.y * 3.0)) * 0.09;
  float rings = noise(vec2(p.x * 1.1, (p.y + bend) * 17.0));
  float broad = noise(vec2(p.x * 0.55 + 9.0, (p.y + bend) * 6.0));
  // What is finer than a pixel would only shimmer.
  float near = 1.0 - smoothstep(0.0005, 0.002, fwidth(p.y));
  float fine = mix(0.5, noise(vec2(p.x * 9.0, p.y * 420.0)), near);
  float pores = near * smoothstep(0.83, 1.0, noise(vec2(p.x * 45.0, p.y * 900.0)));
  return 0.44 * rings + 0.36 * broad + 0.2 * fine - 0.22 * pores;
}
// Softly shadowed: depths round the place, each compared with the surface's own plane there.
float lit(sampler2DShadow depth, vec4 from, vec2 lean, float spread) {
  vec3 p = from.xyz / from.w * 0.5 + 0.5;
  if (p.z > 1.0 || any(lessThan(p.xy, vec2(0.0))) || any(greaterThan(p.xy, vec2(1.0)))) return 1.0;
  // Interleaved gradient noise: Jimenez, Next Generation Post Processing, SIGGRAPH 2014.
  float turn = fract(52.9829189 * fract(dot(gl_FragCoord.xy, vec2(0.06711056, 0.00583715)))) * 6.283, sum = 0.0;
  for (int i = 0; i < 12; i++) {
    float a = turn + float(i) * 2.4, r = sqrt((float(i) + 0.5) / 12.0) * spread;
    vec2 off = r * vec2(cos(a), sin(a));
    // Nothing lies deeper than the map.
    sum += texture(depth, vec3(p.xy + off, min(p.z + dot(off, lean) - 0.0012, 0.9999)));
  }
  return sum / 12.0;
}
vec3 shown(vec3 linear) { return mix(linear * 12.92, 1.055 * pow(linear, vec3(1.0 / 2.4)) - 0.055, step(0.0031308, linear)); }

void main() {
  if (mode == 2) { seen = vec4(tint, 1.0) * mix(0.62, 0.4, dark); return; }
  float key = lit(key_depth, in_key, leans.xy, 0.006), sky = lit(sky_depth, in_sky, leans.zw, 0.03);
  if (mode == 3) {
    vec2 place = gl_FragCoord.xy / extent, side = smoothstep(vec2(0.0), vec2(0.12, 0.2), min(place, 1.0 - place));
    float far = smoothstep(1.0, 0.35, length((at.xz - tint.xy) / tint.z)) * side.x * side.y;
    // From straight above a shadow would be larger than what it is of: it gives way.
    far *= mix(1.0, 0.35, smoothstep(0.75, 0.97, normalize(eye - at).y));
    seen = vec4(0.0, 0.0, 0.0, (0.24 * (1.0 - key) + 0.32 * (1.0 - sky)) * far * mix(1.0, 1.5, dark));
    return;
  }
  vec3 n = normalize(out_of), towards = normalize(eye - at), base = colour;
  float rough = mix(0.34, 0.2, clear);
  if (mode == 1) {
    base = tint;
  } else if (wood.w > 0.5) {
    // Plies of about 1.4 mm, every other one end grain: darker.
    float ply = fract(wood.z * 357.0), band = smoothstep(0.42, 0.5, ply) - smoothstep(0.92, 1.0, ply);
    vec3 bare = mix(vec3(0.66, 0.46, 0.25), vec3(0.36, 0.21, 0.1), band);
    float near = 1.0 - smoothstep(0.0005, 0.0013, fwidth(wood.z));
    bare = mix(vec3(0.52, 0.34, 0.18), bare, near);
    bare *= 0.86 + 0.24 * noise(vec2(wood.x * 60.0 + wood.y * 60.0, wood.z * 2500.0));
    base = mix(mix(colour * 0.93, bare, 0.16), bare * mix(vec3(1.0), colour * 1.35, 0.55), clear);
  } else {
    float figure = birch(wood.xy) - 0.4;
    base *= mix(1.0 + 0.05 * figure, 1.0 + 0.42 * figure, clear);
    base = mix(base, base * vec3(1.02, 0.98, 0.92), clear * figure);
  }
  if (dot(n, towards) < 0.0) n = -n;
  float direct = max(dot(n, to_key), 0.0) * key, above = (0.5 + 0.5 * n.y) * mix(0.3, 1.0, sky);
  vec3 light = vec3(1.0, 0.95, 0.87) * direct * 1.35 + vec3(0.86, 0.92, 1.0) * above * 0.62 + max(dot(n, to_sky), 0.0) * sky * 0.42 + 0.13;
  float glint = pow(max(dot(n, normalize(to_key + towards)), 0.0), mix(18.0, 42.0, clear)) * key * rough * 0.35;
  vec3 c = base * light * mix(0.78, 0.68, dark) + glint;
  // What is lit brighter than the screen shows keeps its hue, and its figure: the brightest third is pressed together.
  float most = max(c.r, max(c.g, c.b)), over = max(most - 0.55, 0.0);
  c *= (min(most, 0.55) + 0.45 * (1.0 - exp(-over / 0.45))) / max(most, 1e-4);
  seen = vec4(shown(max(c, 0.0)), 1.0);
}
