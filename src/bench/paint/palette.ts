/** Colours of the drawing in its two lights, and our own scale of warmth. */

export type Light = 'paper' | 'night';

export interface Palette {
  readonly sky: string;
  /** the sky overhead, and what stands far off, nearer and further */
  readonly zenith: string;
  readonly far: string;
  readonly farther: string;
  readonly cloud: string;
  readonly grid: string;
  readonly room: string;
  readonly loft: string;
  readonly ground: string;
  readonly cut: string;
  readonly cutHatch: string;
  readonly ink: string;
  readonly inkSoft: string;
  readonly inkFaint: string;
  readonly casing: string;
  readonly inside: string;
  readonly metal: string;
  readonly metalDark: string;
  readonly fins: string;
  readonly sleeve: string;
  readonly mark: string;
  readonly air: string;
  readonly water: string;
  readonly frost: string;
  readonly frostEdge: string;
  readonly dust: string;
  readonly wire: string;
  readonly live: string;
  readonly glass: string;
  readonly plain: string;
  /** laid over a surface where light falls on it, and where it does not */
  readonly shine: string;
  readonly shade: string;
  readonly warmth: readonly (readonly [number, readonly [number, number, number]])[];
}

/** Warmth stops at °C: slate water, stone at room warmth, ochre, burnt clay. Even in lightness steps on each light. */
const PAPER: Palette = {
  sky: '#f6f0e2',
  zenith: '#dfe6e2',
  far: '#ddd8c8',
  farther: '#e8e3d4',
  cloud: '#fbf8f0',
  grid: '#e4ddcb',
  room: '#fbf8f0',
  loft: '#ece5d3',
  ground: '#ddd3bd',
  cut: '#c9bfa8',
  cutHatch: '#9a907b',
  ink: '#2a3033',
  inkSoft: '#6a7073',
  inkFaint: '#a9a698',
  casing: '#e3e0d6',
  inside: '#f8f6ef',
  metal: '#c4c6c2',
  metalDark: '#8d9391',
  fins: '#b9bdb9',
  sleeve: '#a3a8a6',
  mark: '#1f2a2e',
  air: '#6c7a7c',
  water: '#4a8091',
  frost: '#ffffff',
  frostEdge: '#8fb3c2',
  dust: '#6b5d47',
  wire: '#4b4f50',
  live: '#0d5866',
  glass: '#eef4f2',
  plain: '#c9a27c',
  shine: 'rgb(255 255 255 / 0.42)',
  shade: 'rgb(52 44 28 / 0.16)',
  warmth: [
    [-10, [92, 146, 170]],
    [4, [133, 180, 197]],
    [14, [178, 206, 208]],
    [24, [218, 218, 204]],
    [34, [232, 215, 174]],
    [46, [228, 188, 130]],
    [64, [214, 151, 99]],
    [85, [193, 113, 75]],
    [110, [160, 78, 54]],
  ],
};

const NIGHT: Palette = {
  sky: '#1d2326',
  zenith: '#12171b',
  far: '#262c2f',
  farther: '#20272a',
  cloud: '#222a2e',
  grid: '#20262a',
  room: '#23292c',
  loft: '#1c2124',
  ground: '#2a2823',
  cut: '#45484a',
  cutHatch: '#696d6f',
  ink: '#dcd8cc',
  inkSoft: '#969790',
  inkFaint: '#565b5d',
  casing: '#343b3f',
  inside: '#1d2225',
  metal: '#6d7474',
  metalDark: '#474d4e',
  fins: '#545b5c',
  sleeve: '#4c5355',
  mark: '#f3eee2',
  air: '#8fa0a3',
  water: '#7fb9c9',
  frost: '#eef6f8',
  frostEdge: '#7fa6b6',
  dust: '#b39b74',
  wire: '#a5a49c',
  live: '#78c6d0',
  glass: '#2b3a3d',
  plain: '#8a6746',
  shine: 'rgb(255 255 255 / 0.14)',
  shade: 'rgb(0 0 0 / 0.34)',
  warmth: [
    [-10, [42, 108, 138]],
    [4, [44, 92, 114]],
    [14, [52, 78, 88]],
    [24, [66, 70, 66]],
    [34, [88, 77, 54]],
    [46, [112, 81, 44]],
    [64, [134, 78, 44]],
    [85, [150, 70, 44]],
    [110, [164, 58, 42]],
  ],
};

export function paletteOf(light: Light): Palette {
  return light === 'night' ? NIGHT : PAPER;
}

const ZERO_CELSIUS = 273.15;

/** Colour of a temperature in K. */
export function warmthColour(palette: Palette, kelvin: number): string {
  const celsius = kelvin - ZERO_CELSIUS;
  const stops = palette.warmth;
  let i = 0;
  while (i < stops.length - 2 && stops[i + 1][0] < celsius) i++;
  const [low, from] = stops[i];
  const [high, to] = stops[i + 1];
  const f = Math.min(1, Math.max(0, (celsius - low) / (high - low)));
  const mix = (k: 0 | 1 | 2) => Math.round(from[k] + (to[k] - from[k]) * f);
  return `rgb(${mix(0)} ${mix(1)} ${mix(2)})`;
}

/** `share` of the second colour in the first; both are `#rrggbb` or `rgb(r g b)`. */
export function mixColours(first: string, second: string, share: number): string {
  const a = channels(first);
  const b = channels(second);
  return `rgb(${a.map((value, k) => Math.round(value + (b[k] - value) * share)).join(' ')})`;
}

function channels(colour: string): number[] {
  if (colour.startsWith('#')) return [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
  return (colour.match(/\d+/g) ?? []).map(Number);
}

export type Hatch = 'none' | 'slant' | 'cross';

/** The same scale without colour: slanting strokes for cold, whiskers for hot, closer the further from room warmth. */
export function hatchOf(kelvin: number): { kind: Hatch; gap: number } {
  const celsius = kelvin - ZERO_CELSIUS;
  if (celsius < 18) return { kind: 'slant', gap: 0.07 + (0.13 * Math.max(0, celsius + 5)) / 23 };
  if (celsius > 38) return { kind: 'cross', gap: 0.07 + (0.15 * Math.max(0, 95 - celsius)) / 57 };
  return { kind: 'none', gap: 1 };
}
