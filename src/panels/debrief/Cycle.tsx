/** Pressure over enthalpy, logarithmic in pressure: the healthy machine, the machine as found, the rival. */
import { BLOCK_SIZE, fluidTable, H_L, H_V, type RefrigerantId } from '../../../physics/fluids/fluid';
import type { StationId } from '../../../physics/types';
import type { PressureEnthalpy } from '../../examiner/types';
import { fromShown, toShown } from '../../i18n';
import { useText } from '../kit/text';

const WIDTH = 380;
const HEIGHT = 290;
const EDGE = { left: 50, right: 12, top: 12, bottom: 40 } as const;

/** Stations in the order of the flow; the line is closed at the compressor. */
const ROUND: readonly StationId[] = [
  'compressor-in',
  'compressor-out',
  'condenser-in',
  'condenser-out',
  'liquid-port',
  'drier-out',
  'metering-in',
  'evaporator-in',
  'evaporator-out',
  'suction-port',
];

/** The two edges of the two-phase region between two pressures, from the refrigerant's own table: bubble, dew. */
function dome(refrigerant: RefrigerantId, from: number, to: number): readonly (readonly Point[])[] {
  const table = fluidTable(refrigerant);
  const block = new Float64Array(BLOCK_SIZE);
  const low = Math.max(from, table.pMin);
  const high = Math.min(to, table.pMax);
  return [H_L, H_V].map((edge) =>
    Array.from({ length: DOME_POINTS + 1 }, (_, index): Point => {
      const p = low * (high / low) ** (index / DOME_POINTS);
      table.setPressure(p, block);
      return [block[edge]!, p];
    }),
  );
}

type Point = readonly [enthalpy: number, pressure: number];
const DOME_POINTS = 40;

/** Marks of the edges, in the unit that is shown. */
const ROUND_PRESSURES = [50, 100, 150, 200, 300, 400, 600, 1000, 1500, 2000, 3000, 4000];
const ENTHALPY_STEP = { si: 50, ip: 20 } as const;

export function Cycle({ cycles }: { readonly cycles: PressureEnthalpy }) {
  const text = useText();
  const all = cycles.cycles.flatMap((cycle) => ROUND.map((id) => cycle.stations[id]));
  const enthalpies = all.map(({ enthalpy }) => enthalpy);
  const pressures = all.map(({ pressure }) => pressure);
  const h0 = Math.min(...enthalpies) - 1e4;
  const h1 = Math.max(...enthalpies) + 1e4;
  const p0 = Math.log(Math.min(...pressures) * 0.85);
  const p1 = Math.log(Math.max(...pressures) * 1.15);
  const x = (h: number) => EDGE.left + ((WIDTH - EDGE.left - EDGE.right) * (h - h0)) / (h1 - h0);
  const y = (p: number) => HEIGHT - EDGE.bottom - ((HEIGHT - EDGE.top - EDGE.bottom) * (Math.log(p) - p0)) / (p1 - p0);
  const label = (cycle: PressureEnthalpy['cycles'][number]) =>
    cycle.what === 'rival' || cycle.what === 'chosen'
      ? text.t(`debrief.cycle.${cycle.what}`, { cause: text.t(`names.cause.${cycle.cause}`) })
      : text.t(`debrief.cycle.${cycle.what}`);
  const inside = (p: number) => Math.log(p) > p0 && Math.log(p) < p1;
  const pressureMarks = ROUND_PRESSURES.map((shown) => fromShown('pressure', shown, text.system)).filter(inside);
  const step = ENTHALPY_STEP[text.system];
  const first = Math.ceil(toShown('enthalpy', h0, text.system) / step) * step;
  const enthalpyMarks = Array.from({ length: 16 }, (_, index) =>
    fromShown('enthalpy', first + index * step, text.system),
  ).filter((h) => h < h1);
  return (
    <figure class="cycle">
      <p class="soft">{text.t('debrief.cycle.help')}</p>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={cycles.cycles.map(label).join(', ')}>
        {pressureMarks.map((p) => (
          <g key={p}>
            <line x1={EDGE.left} x2={WIDTH - EDGE.right} y1={y(p)} y2={y(p)} class="cycle-grid" />
            <text x={EDGE.left - 6} y={y(p) + 5} text-anchor="end">
              {text.number(toShown('pressure', p, text.system))}
            </text>
          </g>
        ))}
        {enthalpyMarks.map((h) => (
          <g key={h}>
            <line x1={x(h)} x2={x(h)} y1={EDGE.top} y2={HEIGHT - EDGE.bottom} class="cycle-grid" />
            <text x={x(h)} y={HEIGHT - EDGE.bottom + 18} text-anchor="middle">
              {text.bare('enthalpy', h)}
            </text>
          </g>
        ))}
        <text x={4} y={HEIGHT - EDGE.bottom + 18}>
          {text.unit('pressure')}
        </text>
        <text x={WIDTH - EDGE.right} y={HEIGHT - 4} text-anchor="end">
          {text.t('debrief.cycle.enthalpy')}, {text.unit('enthalpy')}
        </text>
        {dome(cycles.refrigerant, Math.exp(p0), Math.exp(p1)).map((edge, index) => (
          <polyline
            key={index === 0 ? 'bubble' : 'dew'}
            class="cycle-dome"
            points={edge
              .filter(([h]) => h >= h0 && h <= h1)
              .map(([h, p]) => `${x(h)},${y(p)}`)
              .join(' ')}
          />
        ))}
        {cycles.cycles.map((cycle) => (
          <polygon
            key={cycle.what}
            class={`cycle-line cycle-${cycle.what}`}
            points={ROUND.map((id) => `${x(cycle.stations[id].enthalpy)},${y(cycle.stations[id].pressure)}`).join(' ')}
          />
        ))}
      </svg>
      <ul class="cycle-legend">
        {cycles.cycles.map((cycle) => (
          <li key={cycle.what}>
            <svg viewBox="0 0 40 10" aria-hidden="true">
              <line x1="0" x2="40" y1="5" y2="5" class={`cycle-line cycle-${cycle.what}`} />
            </svg>
            <span class="first">{label(cycle)}</span>
          </li>
        ))}
      </ul>
    </figure>
  );
}
