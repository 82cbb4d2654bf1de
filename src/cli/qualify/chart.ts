/** One small chart: a reading against severity, as SVG. Coordinates in the chart's own units, no style but classes. */
import type { Sweep, Swept } from '../../../physics/qualification';

export interface Panel {
  /** a reading's name; that of one unit has it after an @ */
  readonly reading: string;
  /** the same reading of a unit that has not the fault, drawn thin */
  readonly beside?: string;
  readonly title: string;
  readonly unit: string;
}

const WIDTH = 232;
const HEIGHT = 138;
const LEFT = 38;
const RIGHT = 6;
const TOP = 20;
const BOTTOM = 20;
/** A reading that stays within this many blurs of the healthy one is drawn as flat as it looks to an instrument. */
const LEAST_SPAN = 3;

/** What may stand in text and attributes. */
export function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}

export function short(value: number): string {
  const digits = Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2;
  const text = value.toFixed(digits);
  return Number(text) === 0 ? '0' : text.replace('-', '−');
}

/** Round steps of 1, 2 or 5, two to five of them in the span. */
function ticks(low: number, high: number): number[] {
  const rough = (high - low) / 4.5;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5].find((each) => each * power >= rough) ?? 10);
  const first = Math.ceil(low / step);
  return Array.from({ length: Math.floor(high / step) - first + 1 }, (_, i) => (first + i) * step);
}

const at = (value: number): string => value.toFixed(1);

/** Letters that name a sweep's corners, in order along the severity. */
export function letter(index: number): string {
  return String.fromCharCode(97 + index);
}

/** Stretches of severity where the machine has no steady state, with the reason. */
export function gaps(sweep: Sweep): { from: number; to: number; why: string }[] {
  const found: { from: number; to: number; why: string }[] = [];
  sweep.points.forEach(({ severity, stop }, i) => {
    if (stop === null) return;
    const open = found.at(-1);
    const follows = open && open.why === stop && sweep.points[i - 1]?.stop === stop;
    if (follows) open.to = severity;
    else found.push({ from: severity, to: severity, why: stop });
  });
  return found;
}

export function chart(panel: Panel, sweep: Sweep, machine: Swept): string {
  const { reading, beside, title, unit } = panel;
  const healthy = sweep.points[0].readings;
  if (healthy === null) return '';
  const middle = healthy[reading];
  const half = machine.blur(reading, healthy);
  const along = (name: string): number[] => sweep.points.flatMap(({ readings }) => (readings ? [readings[name]] : []));
  const values = along(reading);
  const all = beside === undefined ? values : [...values, ...along(beside)];
  const low = Math.min(middle - LEAST_SPAN * half, ...all);
  const high = Math.max(middle + LEAST_SPAN * half, ...all);
  const pad = 0.05 * (high - low);
  const x = (severity: number): number => LEFT + ((WIDTH - LEFT - RIGHT) * severity) / sweep.max;
  const y = (value: number): number =>
    HEIGHT - BOTTOM - ((HEIGHT - TOP - BOTTOM) * (value - low + pad)) / (high - low + 2 * pad);
  const bottom = HEIGHT - BOTTOM;
  const last = values[values.length - 1];

  const scale = (
    [
      ['slight', 's'],
      ['clear', 'c'],
      ['severe', 'v'],
    ] as const
  ).map(
    ([name, sign]) =>
      `<path class="mark" d="M${at(x(sweep[name]))} ${TOP}V${bottom}"/>` +
      `<text class="small" text-anchor="middle" x="${at(x(sweep[name]))}" y="${HEIGHT - 7}">${sign}</text>`,
  );
  const grid = ticks(low - pad, high + pad).map(
    (tick) =>
      `<path class="grid" d="M${LEFT} ${at(y(tick))}H${WIDTH - RIGHT}"/>` +
      `<text class="small" text-anchor="end" x="${LEFT - 4}" y="${at(y(tick) + 3)}">${short(tick)}</text>`,
  );
  const corners = sweep.corners.map(
    ({ severity }, i) =>
      `<path class="corner" d="M${at(x(severity))} ${TOP}V${bottom}"/>` +
      `<text class="small cornered" text-anchor="middle" x="${at(x(severity))}" y="${TOP + 8 * (i % 2) + 7}">${letter(i)}</text>`,
  );
  const step = Math.abs(sweep.max) / (sweep.points.length - 1);
  const stops = gaps(sweep).map(({ from, to, why }) => {
    const left = x(Math.sign(sweep.max) * Math.max(0, Math.abs(from) - step));
    const wide = x(to) - left;
    const middleX = left + wide / 2;
    return (
      `<rect class="stop" x="${at(left)}" y="${TOP}" width="${at(wide)}" height="${bottom - TOP}"/>` +
      `<text class="small stopped" text-anchor="middle" transform="translate(${at(middleX + 3)} ${at((TOP + bottom) / 2)}) rotate(-90)">stops: ${escaped(why)}</text>`
    );
  });
  const line = (name: string): string => {
    const drawn: string[] = [];
    let open = false;
    for (const { severity, readings } of sweep.points) {
      if (readings) drawn.push(`${open ? 'L' : 'M'}${at(x(severity))} ${at(y(readings[name]))}`);
      open = readings !== null;
    }
    return drawn.join('');
  };
  const label = `${title}: ${short(middle)} ${unit} healthy, ${short(last)} ${unit} at the last severity that runs`;
  return (
    `<svg viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${escaped(label)}">` +
    `<text class="title" x="2" y="12">${escaped(title)}<tspan class="unit"> ${escaped(unit)}</tspan></text>` +
    `<text class="small" text-anchor="end" x="${WIDTH - RIGHT}" y="12">${short(middle)} → ${short(last)}</text>` +
    `<rect class="blur" x="${LEFT}" y="${at(y(middle + half))}" width="${WIDTH - LEFT - RIGHT}" height="${at(y(middle - half) - y(middle + half))}"/>` +
    `${grid.join('')}${scale.join('')}${stops.join('')}${corners.join('')}` +
    `<path class="axis" d="M${LEFT} ${TOP}V${bottom}H${WIDTH - RIGHT}"/>` +
    (beside === undefined ? '' : `<path class="beside" d="${line(beside)}"/>`) +
    `<path class="curve" d="${line(reading)}"/></svg>`
  );
}
