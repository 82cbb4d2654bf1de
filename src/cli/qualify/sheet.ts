/** A sheet of one machine: every fault, every telling reading against severity. One HTML file that needs nothing else. */
import { PHYSICS_VERSION } from '../../../physics';
import { type CornerName, hasSpeeds, jumps, type Sweep, type Swept } from '../../../physics/qualification';
import { createText } from '../../i18n';
import { chart, escaped, gaps, letter, type Panel, short } from './chart';
import { panelsOf } from './panels';

const STYLE = `
:root{color-scheme:light dark;--paper:#fbfaf6;--ink:#20262b;--soft:#5d676e;--grid:#dcdfdd;--band:#bcd8d2;--curve:#12447a;--corner:#a3481c;--stop:#e7c9c0}
@media(prefers-color-scheme:dark){:root{--paper:#14191d;--ink:#e6e8e6;--soft:#a2adb3;--grid:#2e363c;--band:#234a45;--curve:#8fc1f5;--corner:#f0a070;--stop:#4c2c26}}
body{margin:0 auto;max-width:1500px;padding:1rem;background:var(--paper);color:var(--ink);font:15px/1.45 system-ui,sans-serif}
h1{font-size:1.4rem;margin:0 0 .3rem}h2{font-size:1.1rem;margin:1.6rem 0 .1rem;border-top:1px solid var(--grid);padding-top:.8rem}
p{margin:.2rem 0;color:var(--soft);max-width:70rem}code{color:var(--ink)}
.panels{display:grid;grid-template-columns:repeat(auto-fill,minmax(215px,1fr));gap:.5rem;margin-top:.4rem}
svg{width:100%;height:auto;display:block}text{fill:var(--ink);font:10px system-ui,sans-serif}
.small{font-size:8.5px;fill:var(--soft)}.unit{fill:var(--soft)}.cornered,.stopped{fill:var(--corner)}
.grid{stroke:var(--grid);stroke-width:.6}.axis{stroke:var(--soft);fill:none;stroke-width:.8}
.mark{stroke:var(--soft);stroke-width:.6;stroke-dasharray:1 3}.corner{stroke:var(--corner);stroke-width:.8;stroke-dasharray:3 2}
.blur{fill:var(--band)}.stop{fill:var(--stop)}.curve{stroke:var(--curve);stroke-width:1.6;fill:none;stroke-linejoin:round}
.beside{stroke:var(--soft);stroke-width:1;fill:none;stroke-linejoin:round}
table{border-collapse:collapse;margin-top:.4rem}td,th{padding:.1rem .9rem .1rem 0;text-align:right}td:first-child,th:first-child{text-align:left}
.swatch{display:inline-block;width:1.1em;height:.8em;vertical-align:middle}
@media(max-width:520px){.panels{grid-template-columns:1fr 1fr}}
@media print{h2{break-before:auto}.panels{break-inside:avoid}}`;

const LEGEND = `<p>Each chart: a reading against severity, from a sound machine on the left to the end of the fault’s range on the right.
Dotted lines: s slight, c clear, v severe.
<span class="swatch" style="background:var(--band)"></span> what an instrument cannot tell from the sound machine.
<span class="swatch" style="background:var(--stop)"></span> no steady state: the machine stops.
Letters: where the machine begins or ceases to work in another way. Every chart spans at least three times the band on either side.
Where a fault sits in one unit, the thin grey curve is another that is asked the same.</p>`;

function cornerText(sweep: Sweep): string {
  const texts = sweep.corners.map(
    ({ name, severity, begins }, i) => `${letter(i)} ${words(name, begins)} ${short(severity)}`,
  );
  const stops = gaps(sweep).map(({ from, to, why }) => `stops on ${why} ${short(from)} to ${short(to)}`);
  return [...texts, ...stops].join('; ');
}

function words(name: CornerName, begins: boolean): string {
  return `${name} ${begins ? 'from' : 'until'}`;
}

/** A fault without a size: every reading without and with it. */
function table(panels: readonly Panel[], { points, unitWithout }: Sweep): string {
  const [without, withIt] = points.map(({ readings }) => readings);
  const cell = (readings: typeof without, name: string | undefined): string =>
    `<td>${name === undefined ? '' : readings === null ? '–' : escaped(short(readings[name]))}</td>`;
  const rows = panels.map(
    ({ reading, beside, title, unit }) =>
      `<tr><td>${escaped(`${title}, ${unit}`)}</td>${cell(without, reading)}${cell(withIt, reading)}` +
      (unitWithout === null ? '' : `${cell(without, beside)}${cell(withIt, beside)}`) +
      '</tr>',
  );
  const others = unitWithout === null ? '' : `<th>${escaped(unitWithout)} before</th><th>with the fault</th>`;
  return `<table><tr><th>Reading</th><th>sound</th><th>with the fault</th>${others}</tr>${rows.join('\n')}</table>`;
}

function section(sweep: Sweep, machine: Swept): string {
  const text = createText('en', 'si');
  const panels = panelsOf(machine, sweep);
  const name = text.maybe(`names.cause.${sweep.family}`) ?? sweep.family;
  const sensor = sweep.key.split(/[:@]/)[1];
  const way = sweep.key.includes(':') ? `: ${sensor}, ${sweep.max < 0 ? 'low' : 'high'}` : '';
  const where = sweep.unitWith === null ? '' : ` (${sweep.unitWith}; thin: ${sweep.unitWithout})`;
  const heading = `<h2>${escaped(name + way + where)}</h2>`;
  if (!sweep.scaled) {
    return [heading, `<p><code>${escaped(sweep.key)}</code> has no size.</p>`, table(panels, sweep)].join('\n');
  }
  const unit = sweep.unit === 'K' || sweep.unit === 'Pa' ? ` ${sweep.unit}` : '';
  const scale = (['slight', 'clear', 'severe'] as const).map((level) => `${level} ${short(sweep[level])}${unit}`);
  const steps = jumpsOf(sweep, machine, panels).map(
    ({ title: what, severity, size, unit: of }) =>
      `${what} ${size > 0 ? '+' : ''}${short(size)} ${of} at ${short(severity)}`,
  );
  const corners = cornerText(sweep);
  const drawn = panels.some((each) => moves(each, sweep, machine))
    ? `<div class="panels">${panels.map((each) => chart(each, sweep, machine)).join('\n')}</div>`
    : '<p>Nothing that is read here moves further than an instrument can tell.</p>';
  return [
    heading,
    `<p><code>${escaped(sweep.key)}</code> 0 to ${short(sweep.max)}${unit}: ${scale.join(', ')}.</p>`,
    corners === '' ? '' : `<p>${escaped(corners)}.</p>`,
    steps.length === 0 ? '' : `<p>Steps that stand out: ${escaped(steps.join('; '))}.</p>`,
    drawn,
  ].join('\n');
}

/** Whether a reading leaves the band anywhere, or the machine stops. */
function moves({ reading }: Panel, { points }: Sweep, machine: Swept): boolean {
  const healthy = points[0].readings;
  if (healthy === null) return true;
  const band = machine.blur(reading, healthy);
  return points.some(({ readings }) => readings === null || Math.abs(readings[reading] - healthy[reading]) > band);
}

/** Steps of the curves that stand out by more than an instrument can tell. */
function jumpsOf(sweep: Sweep, machine: Swept, panels: readonly Panel[]) {
  const healthy = sweep.points[0].readings;
  if (healthy === null) return [];
  return panels.flatMap(({ reading, title, unit }) =>
    jumps(sweep, reading, machine.blur(reading, healthy)).map((jump) => ({ ...jump, title, unit })),
  );
}

const DEGREES = (kelvin: number): string => `${Number((kelvin - 273.15).toFixed(2))} °C`;

function conditionsOf({ mode, conditions }: Swept): string {
  const { outdoor, indoor, wetBulb } = conditions;
  const rooms = `${DEGREES(indoor)} in the rooms, wet bulb ${DEGREES(wetBulb)}`;
  const way = mode === 'simultaneous' ? 'every second room heated, the others cooled' : mode;
  return `${DEGREES(outdoor)} outdoors, ${rooms}, ${way}, steady state`;
}

export function sheet(machine: Swept, sweeps: readonly Sweep[]): string {
  const speed = hasSpeeds(machine.plant) ? `, ${machine.fixedSpeed ? 'speed held at rated' : 'its own speed'}` : '';
  const title = `${machine.plant}, ${machine.refrigerant}, ${machine.mode}${speed}`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escaped(title)}: symptoms against severity</title>
<style>${STYLE}</style>
</head>
<body>
<h1>${escaped(title)}: symptoms against severity</h1>
<p>${escaped(conditionsOf(machine))}. Physics ${PHYSICS_VERSION}.</p>
${LEGEND}
${sweeps.map((sweep) => section(sweep, machine)).join('\n')}
</body>
</html>
`;
}
