/** A sheet of one machine: every fault, every telling reading against severity. One HTML file that needs nothing else. */
import { PHYSICS_VERSION, plantDescription } from '../../../physics';
import { blur, type CornerName, jumps, type Reading, type Sweep, type Variant } from '../../../physics/qualification';
import { createText } from '../../i18n';
import { chart, escaped, gaps, letter, type Panel, short } from './chart';

const panel = (reading: Reading, title: string, unit: string): Panel => ({ reading, title, unit });

function panelsOf(variant: Variant): Panel[] {
  const { metering, variableSpeed } = plantDescription(variant.plant);
  return [
    panel('Te', 'Evaporating temperature', '°C'),
    panel('Tc', 'Condensing temperature', '°C'),
    panel('SH', 'Superheat, service valve', 'K'),
    panel('SC', 'Subcooling', 'K'),
    panel('Td', 'Discharge line', '°C'),
    panel('drop', 'Air drop indoors', 'K'),
    panel('rise', 'Air rise outdoors', 'K'),
    panel('current', 'Compressor current', 'A'),
    panel('power', 'Compressor power', 'W'),
    panel('capacity', 'Capacity', 'W'),
    panel('cop', 'COP', '–'),
    panel('flow', 'Refrigerant flow', 'g/s'),
    panel('SHcomp', 'Superheat, compressor', 'K'),
    panel('drierFall', 'Fall over the drier', 'K'),
    panel('filterDrop', 'Filter pressure drop', 'Pa'),
    panel('standing', 'Standing pressure', 'kPa'),
    ...(metering === 'electronic-valve' ? [panel('opening', 'Valve opening', '–')] : []),
    ...(variableSpeed ? [panel('speed', 'Compressor speed', 'Hz')] : []),
  ];
}

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
.swatch{display:inline-block;width:1.1em;height:.8em;vertical-align:middle}
@media(max-width:520px){.panels{grid-template-columns:1fr 1fr}}
@media print{h2{break-before:auto}.panels{break-inside:avoid}}`;

const LEGEND = `<p>Each chart: a reading against severity, from a sound machine on the left to the end of the fault’s range on the right.
Dotted lines: s slight, c clear, v severe.
<span class="swatch" style="background:var(--band)"></span> what an instrument cannot tell from the sound machine.
<span class="swatch" style="background:var(--stop)"></span> no steady state: the machine stops.
Letters: where the machine begins or ceases to work in another way. Every chart spans at least three times the band on either side.</p>`;

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

function section(sweep: Sweep, variant: Variant, panels: readonly Panel[]): string {
  const text = createText('en', 'si');
  const name = text.maybe(`names.cause.${sweep.family}`) ?? sweep.family;
  const sensor = sweep.key.split(':')[1];
  const title = `${name}${sensor ? `: ${sensor}, ${sweep.max < 0 ? 'low' : 'high'}` : ''}`;
  const unit = sweep.unit === 'K' ? ' K' : '';
  const scale = (['slight', 'clear', 'severe'] as const).map((level) => `${level} ${short(sweep[level])}${unit}`);
  const steps = jumpsOf(sweep, variant, panels).map(
    ({ title: what, severity, size, unit: of }) =>
      `${what} ${size > 0 ? '+' : ''}${short(size)} ${of} at ${short(severity)}`,
  );
  const corners = cornerText(sweep);
  return [
    `<h2>${escaped(title)}</h2>`,
    `<p><code>${escaped(sweep.key)}</code> 0 to ${short(sweep.max)}${unit}: ${scale.join(', ')}.</p>`,
    corners === '' ? '' : `<p>${escaped(corners)}.</p>`,
    steps.length === 0 ? '' : `<p>Steps that stand out: ${escaped(steps.join('; '))}.</p>`,
    `<div class="panels">${panels.map((each) => chart(each, sweep, variant)).join('\n')}</div>`,
  ].join('\n');
}

/** Steps of the curves that stand out by more than an instrument can tell. */
function jumpsOf(sweep: Sweep, variant: Variant, panels: readonly Panel[]) {
  const healthy = sweep.points[0].readings;
  if (healthy === null) return [];
  return panels.flatMap(({ reading, title, unit }) =>
    jumps(sweep, reading, blur(reading, healthy, variant)).map((jump) => ({ ...jump, title, unit })),
  );
}

export function sheet(variant: Variant, sweeps: readonly Sweep[]): string {
  const panels = panelsOf(variant);
  const speed = plantDescription(variant.plant).variableSpeed
    ? `, ${variant.controls.fixedSpeed ? 'speed held at rated' : 'its own speed'}`
    : '';
  const title = `${variant.plant}, ${variant.refrigerant}${speed}`;
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
<p>${variant.design ? `${variant.design.outdoor} °C outdoors, ${variant.design.indoor} °C in the room` : '35 °C outdoors, 27/19 °C indoors'}, steady state. Physics ${PHYSICS_VERSION}.</p>
${LEGEND}
${sweeps.map((sweep) => section(sweep, variant, panels)).join('\n')}
</body>
</html>
`;
}
