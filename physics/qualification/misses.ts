/**
 * Where the model and a source differ, and why. Every miss of the qualification stands here; one that does not fails the
 * tests, and so does one that no longer misses.
 */

interface Miss {
  readonly ids: readonly string[];
  readonly reason: string;
}

const both = (rest: string): string[] => [`orifice-r410a/${rest}`, `orifice-r22/${rest}`];
const directions = (ids: readonly string[]): string[] => ids.map((id) => `directions/${id}`);

export const MISSES: readonly Miss[] = [
  {
    ids: directions(both('internal leak/Td')),
    reason:
      'The sources disagree. The rule table, measured on a unit with a fixed orifice, has −; the review has + for a constant superheat. An orifice does not hold it: superheat is gone at 0.1, the gas that the leak heats is wet. The machine whose valve holds superheat shows the +.',
  },
  {
    ids: directions([
      ...both('liquid-line restriction/power'),
      ...both('orifice partly blocked/power'),
      'inverter-fixed/valve stuck towards shut/power',
      'inverter-fixed/liquid-line restriction, valve at its stop/power',
    ]),
    reason:
      'Less than can be read, and the sources disagree: the pooled correlation has −2…+2 % for a 20 % restriction. The power of a displacement compressor follows head and pressure ratio, hardly the density; liquid backs up, so head stays (the review amended it to 0/−), and a higher ratio makes up for the lower suction.',
  },
  {
    ids: directions(both('non-condensable gas/Td')),
    reason:
      'The higher head pushes more through the orifice and superheat goes (the row’s own 0/−): the gas arrives 7 K colder, which outweighs the higher ratio. The machine that holds superheat shows the +.',
  },
  {
    ids: [
      ...directions(['orifice-r410a/overcharge/capacity']),
      'envelopes/orifice-r410a/overcharge 20 %/capacity ratio',
    ],
    reason:
      'Rises 3…4 %, a per cent beyond the bound: the coil’s dry part is wetted. The two correlations behind the envelope differ in sign here (−11…+3 %).',
  },
  {
    ids: directions(['inverter-fixed/undercharge, valve regulating/Td']),
    reason: 'Falls 2 K against a bound of 1 K: the valve holds superheat, and head is 1 K lower.',
  },
  {
    ids: directions(['inverter-fixed/evaporator air loss, filter/Td', 'inverter-fixed/evaporator air loss, fan/Td']),
    reason:
      'Rises 4 K against "0 or down". With superheat held and suction lower the ratio rises, so the discharge must be hotter; the − belongs to valves that hunt into wet suction, which this controller does not.',
  },
  {
    ids: directions(['inverter-fixed/liquid-line restriction, valve at its stop/rise']),
    reason:
      'Right sign; at the end of the range 0.6 K of the 1 K that can be read. Capacity is down 6 %, yet the work stays, and both leave by this air.',
  },
  {
    ids: directions(['inverter-free/liquid-line restriction, valve at its stop/speed']),
    reason:
      'The review expects more speed. A starved coil takes up less, so its temperature would fall; a controller that holds the coil’s temperature answers with less speed. More speed follows only where the room sets the target.',
  },
  {
    ids: directions(['inverter-free/liquid-line restriction, valve at its stop/SC']),
    reason:
      'Right sign, +1.5 K of the 2.4 K that can be read. At fixed speed it is +2.5 K and holds; here the controller slows down, a quarter less flow leaves a smaller difference between condenser and air, and subcooling lives on that: its share of the difference rises from 0.5 to 0.75.',
  },
  {
    ids: ['slopes/orifice-r410a/subcooling, 10 % less charge'],
    reason:
      '−4.16 K against −4, a bound from memory. What the superheat slope (lower half of its band) does not take, subcooling must.',
  },
  {
    ids: ['envelopes/orifice-r410a/condenser air −50 %/capacity ratio'],
    reason: '0.9200 against 0.92: a hundredth of a per cent.',
  },
  {
    ids: ['envelopes/orifice-r410a/liquid-line pressure difference +20 %, orifice/capacity ratio'],
    reason: '0.9704 against 0.97.',
  },
  {
    ids: ['growth/inverter-fixed/metering-valve-stuck-opening/SC no jump of SH'],
    reason: 'All of the 4.8 K of superheat that there are go within 2 % more opening: the step is the whole of it.',
  },
  {
    ids: ['lookalikes/orifice-r410a/undercharge | clogged filter/design/drop of A'],
    reason: '9.5 K against 9 K, a band from memory; the two readings part by 6 K.',
  },
  {
    ids: ['SH of A', 'ps of A', 'Tc of A'].map((id) => `coldRoom/cold-room/empty receiver | drier/design/${id}`),
    reason:
      'A third of the charge gone just empties the receiver here: the glass boils, but the valve has a quarter of its stroke left and holds the coil. The low side starves (SH +4 K, Te −2 K) at half the charge. The bands, from memory, are of a machine whose receiver was nearly empty before. What parts the pair holds.',
  },
  {
    ids: ['ps of B', 'Tc of B'].map((id) => `coldRoom/cold-room/empty receiver | drier/design/${id}`),
    reason:
      '205 kPa against 145…185 at 184 kPa over the drier: flash gas of 4 % by mass takes 20 % of the flow of a wide-open valve, hardly the 40 % that such a suction would need; lost bulb charge and a stuck valve reach that suction. Condensing follows the flow (41.5 against 41 °C).',
  },
  {
    ids: ['Te of A', 'SH of A', 'Tc of A', 'Te of B', 'Tc of B'].map(
      (id) => `coldRoom/cold-room-r448a/empty receiver | drier/design/${id}`,
    ),
    reason:
      'As with R-134a (above): the valve’s spare stroke holds the coil where the bands, given for R-134a from memory, expect it to starve. What parts the pair holds.',
  },
  {
    ids: ['coldRoom/cold-room-r448a/slopes/Tc per K outdoors'],
    reason:
      '0.94 against 0.95. The figure is the bubble point, which has the whole glide and subcooling under it; with less heat to reject at 40 °C it comes nearer to the air. At the dew point it is 0.90: less heat to reject, a smaller glide nearer the critical point.',
  },
  {
    ids: ['cold-room', 'cold-room-r448a'].map((id) => `coldRoom/${id}/slopes/Te, 25 % less air`),
    reason:
      '−0.8 and −1.1 K against −2…−3, a slope given for a room at 27 °C with 20 K between air and coil. Here the coil stands 8 K under the air: the same share of it.',
  },
];

const REASONS = new Map(MISSES.flatMap(({ ids, reason }) => ids.map((id) => [id, reason] as const)));

export function reasonFor(id: string): string | null {
  return REASONS.get(id) ?? null;
}

export function listedMisses(): readonly string[] {
  return [...REASONS.keys()];
}
