#version 300 es
precision highp float;
precision highp sampler2DShadow;
in vec3 at, out_of;
in vec4 wood, in_key, in_sky, leans;
uniform vec3 eye, face, along, across, tint, to_key, to_sky;
uniform vec2 extent, ends;
uniform vec3 wall;
uniform float grain, plies, clear, dark, light;
uniform highp int mode;
uniform sampler2DShadow key_depth, sky_depth;
out vec4 seen;

float random(vec2 p) { p = fract(p * vec2(123.34, 345.45)); p += dot(p, p + 34.345); return fract(p.x * p.y); }
float noise(vec2 p) {
  vec2 i = floor(p), f = fract(p);
  f = f * f * (3.0 - 2.0 * f);
  return mix(mix(random(i), random(i + vec2(1, 0)), f.x), mix(random(i + vec2(0, 1)), random(i + vec2(1, 1)), f.x), f.y);
}
// Rotary-cut birch along the grain: year rings that the knife met at a slant, broad light and dark, streaks; and its pores, which
// are felt through any film. What is finer than a pixel fades: it would only shimmer.
vec2 birch(vec2 p, float pixel) {
  float bend = noise(vec2(p.x * 0.9, p.y * 5.0)), y = p.y + 0.06 * bend;
  float ring = 0.5 + 0.5 * sin(y * 150.0 + 11.0 * noise(vec2(p.x * 0.8, y * 7.0)));
  float broad = noise(vec2(p.x * 0.5 + 9.0, y * 8.0));
  float near = 1.0 - smoothstep(0.0015, 0.005, pixel), close = 1.0 - smoothstep(0.0004, 0.0012, pixel);
  float streak = 0.5, pores = 0.0;
  if (near > 0.0) streak = mix(0.5, noise(vec2(p.x * 4.0, y * 260.0)), near);
  if (close > 0.0) {
    float row = floor(p.y * 1100.0), of = p.x * 140.0 + 97.0 * fract(sin(row * 12.9898) * 43758.5), span = fract(of);
    float here = step(0.86, fract(sin(row * 4.1414 + floor(of) * 78.233) * 43758.5));
    pores = close * here * smoothstep(0.0, 0.2, span) * smoothstep(0.8, 0.4, span) * sin(fract(p.y * 1100.0) * 3.14);
  }
  ring = mix(0.35, ring * ring, (1.0 - smoothstep(0.004, 0.014, pixel)) * (0.2 + 0.8 * bend * bend));
  return vec2(0.5 * broad - 0.34 * ring + 0.34 * streak - 0.3, pores);
}
// What a pixel of that width sees of layers that are 0 and 1 in turn.
float layers(float x, float pixel) {
  vec2 t = (x + vec2(0.5, -0.5) * pixel) * 0.5, sum = floor(t) + max(2.0 * fract(t) - 1.0, 0.0);
  return (sum.x - sum.y) / pixel;
}
// The same of lines of a width at each whole number.
float lines(float x, float pixel, float wide) {
  vec2 t = x + vec2(0.5, -0.5) * pixel, sum = floor(t) * wide + min(fract(t), wide);
  return (sum.x - sum.y) / pixel;
}
// Softly shadowed: depths round the place, each compared with the surface's own plane there.
float lit(sampler2DShadow depth, vec4 from, vec2 lean, float spread) {
  vec3 p = from.xyz / from.w * 0.5 + 0.5;
  if (p.z > 1.0 || any(lessThan(p.xy, vec2(0.0))) || any(greaterThan(p.xy, vec2(1.0)))) return 1.0;
  // Interleaved gradient noise: Jimenez, Next Generation Post Processing, SIGGRAPH 2014.
  float turn = fract(52.9829189 * fract(dot(gl_FragCoord.xy, vec2(0.06711056, 0.00583715)))) * 6.283, sum = 0.0;
  for (int i = 0; i < 10; i++) {
    float a = turn + float(i) * 2.4, r = sqrt((float(i) + 0.5) / 12.0) * spread;
    vec2 off = r * vec2(cos(a), sin(a));
    // Nothing lies deeper than the map.
    sum += texture(depth, vec3(p.xy + off, min(p.z + dot(off, lean) - 0.0012, 0.9999)));
  }
  return sum / 10.0;
}
vec3 shown(vec3 linear) { return mix(linear * 12.92, 1.055 * pow(linear, vec3(1.0 / 2.4)) - 0.055, step(0.0031308, linear)); }

// Floor and wall are the page, a little in the light: only their shadows and the line between them are drawn.
vec4 room(vec3 towards) {
  bool level = out_of.y > 0.5;
  vec2 place = gl_FragCoord.xy / extent, side = min(place, 1.0 - place), rim = smoothstep(vec2(0.0), vec2(0.12, 0.2), side);
  float near = smoothstep(1.0, 0.35, length(at - vec3(tint.x, 0.0, tint.y)) / tint.z) * rim.x * rim.y;
  float from = level ? at.z - wall.x : at.y, wide = max(fwidth(from), 1e-5), line = 1.0 - smoothstep(0.2, 1.6, abs(from) / wide);
  // The seam is a whole pixel's: else those that wall and floor share would be neither's.
  near *= level ? (from < -wide ? 1.0 - wall.y : 1.0) : wall.y;
  if (near < 0.004) return vec4(0.0);
  float key = lit(key_depth, in_key, leans.xy, 0.008), sky = lit(sky_depth, in_sky, leans.zw, 0.045);
  // From straight above a shadow would be larger than what it is of: it gives way.
  float thrown = (0.24 * (1.0 - key) + 0.32 * (1.0 - sky)) * (level ? mix(1.0, 0.35, smoothstep(0.75, 0.97, towards.y)) : 0.5);
  // Behind the unit hardly any light gets, and the wall is seen through its holes.
  vec2 hidden = smoothstep(0.03, 0.07, min(at.xy - vec2(ends.x, 0.0), vec2(ends.y, wall.z) - at.xy));
  float corner = level ? 0.0 : 0.75 * hidden.x * hidden.y;
  corner += wall.y * (0.05 * exp(-abs(from) * 7.0) + 0.16 * line);
  float shade = near * min((thrown + corner) * mix(1.0, 1.5, dark) + (level ? 0.03 : 0.0) * (1.0 - dark), 0.9);
  side = smoothstep(vec2(0.0), vec2(0.4), side);
  float pool = near * side.x * side.y * mix(0.0, level ? 0.05 : 0.075, dark);
  return vec4(vec3(1.0, 0.96, 0.9) * pool * (1.0 - shade), 1.0 - (1.0 - pool) * (1.0 - shade));
}

void main() {
  if (mode == 2) { seen = vec4(tint, 1.0) * 0.55; return; }
  vec3 n = normalize(out_of), towards = normalize(eye - at), base = face;
  if (mode == 3) { seen = room(towards); return; }
  vec3 pixel = fwidth(wood.xyz);
  float key = lit(key_depth, in_key, leans.xy, 0.006), sky = lit(sky_depth, in_sky, leans.zw, 0.03), relief = 0.0;
  if (mode == 1) {
    base = tint;
  } else if (wood.w > 0.5) {
    // Every other ply is cut across its grain: which, says the way of the edge. Plies that are finer than a pixel give way to
    // five layers in their place, and these, finer still, to the mean.
    float wide = max(pixel.z, 1e-5), cut = wood.w - 1.0, x = wood.z * plies, far = smoothstep(0.45, 1.0, wide * plies);
    float odd = layers(x, wide * plies), fine = lines(x, wide * plies, 0.12);
    odd = mix(odd, mix(0.5, layers(wood.z * 5.0, wide * 5.0), 0.7), far);
    base = mix(along, across, mix(cut * cut, 1.0 - cut * cut, odd)) * (1.0 - 0.45 * mix(fine, 0.12, far));
    if (far < 1.0) base *= 1.0 + (noise(vec2((wood.x + wood.y) * 160.0, floor(x) * 7.0 + 2.0 * fract(x))) - 0.5) * 0.2 * (1.0 - far);
  } else {
    vec2 own = birch(wood.xy, pixel.y);
    relief = own.x;
    base *= 1.0 + 0.62 * sqrt(grain) * own.x - mix(0.12, 0.2, clear) * own.y;
    base = mix(base, base * vec3(1.03, 0.98, 0.9), clear * clamp(-2.0 * own.x, 0.0, 1.0));
  }
  if (dot(n, towards) < 0.0) n = -n;
  float direct = max(dot(n, to_key), 0.0) * key, above = (0.5 + 0.5 * n.y) * mix(0.3, 1.0, sky);
  vec3 falls = vec3(1.0, 0.95, 0.87) * direct * 1.25 + vec3(0.86, 0.92, 1.0) * above * 0.52 + max(dot(n, to_sky), 0.0) * sky * 0.3 + vec3(0.25, 0.23, 0.2);
  // A film mirrors window and sky, most where it is seen at a slant: by that dark finishes have their form. Grain breaks it.
  vec3 back = reflect(-towards, n);
  float slant = 1.0 - max(dot(n, towards), 0.0), mirrors = 0.035 + mix(0.13, 0.2, clear) * slant * slant * slant * slant;
  float around = mix(0.3, 1.0, smoothstep(-0.4, 0.9, back.y)) * mix(0.25, 1.0, sky);
  float glint = pow(max(dot(back, to_key), 0.0), mix(6.0, 14.0, clear)) * key * 1.6;
  // In corners light comes from the wood beside.
  falls += base * 0.34 * (1.0 - sky);
  vec3 c = (base * falls * light + mirrors * (around + glint) * (1.0 + 1.2 * relief)) * mix(0.78, 0.68, dark);
  // What is lit brighter than the screen shows keeps its hue, and its grain: the brightest third is pressed together.
  float most = max(c.r, max(c.g, c.b)), over = max(most - 0.55, 0.0);
  c *= (min(most, 0.55) + 0.45 * (1.0 - exp(-over / 0.45))) / max(most, 1e-4);
  seen = vec4(shown(max(c, 0.0)), 1.0);
}
