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
      'Less than can be read. The power of a displacement compressor follows head and pressure ratio, hardly the density; liquid backs up, so head stays (the review amended it to 0/−), and a higher ratio makes up for the lower suction.',
  },
  {
    ids: directions([...both('condenser fouling/SC'), ...both('condenser air loss/SC')]),
    reason:
      'Within 0.4 K of zero, a third of what can be read. Charge does leave the condenser as superheat goes, but the larger difference to the air cools its liquid more. Refrigerant that the compressor’s oil takes up when superheat goes is not modelled; tried with 1 kg of oil it gives −0.2…−0.7 K.',
  },
  {
    ids: directions([...both('condenser fouling/drop'), ...both('condenser air loss/drop')]),
    reason:
      'Right sign, half of what can be read: capacity is 7…8 % down, and most of that is moisture left in the air, since the coil is warmer.',
  },
  {
    ids: directions(['orifice-r22/evaporator air loss, fan/Tc']),
    reason: 'Right sign; 1.56 K at severe against the 1.6 K that can be read at R-22 pressures.',
  },
  {
    ids: directions(both('overcharge/Te')),
    reason:
      'Right sign, too small to read. With superheat gone the whole coil is wet, so the evaporating temperature can only follow the duty, and the same row has capacity and air drop at 0.',
  },
  {
    ids: directions(both('non-condensable gas/Td')),
    reason:
      'The higher head pushes more through the orifice and superheat goes (the row’s own 0/−): the gas arrives 6 K colder, which outweighs the higher ratio. The machine that holds superheat shows the +.',
  },
  {
    ids: directions([...both('orifice too large/drop'), 'orifice-r22/orifice too large/capacity']),
    reason:
      'Right sign, too small to read: the flooded coil works as well as before; what is lost is lost to flash gas.',
  },
  {
    ids: directions(['orifice-r22/orifice too large/Te']),
    reason: 'Right sign; 0.9 K where 1.6 K can be read at R-22 pressures (R-410A holds).',
  },
  {
    ids: directions([...both('orifice too large/power'), 'inverter-fixed/valve stuck open/power']),
    reason:
      'Falls 3…6 % against "0 or up": suction pressure rises and head does not, so the ratio falls, and wet gas takes less work a kilogram. What droplets cost a real compressor is not modelled.',
  },
  {
    ids: directions(['inverter-fixed/valve stuck open/rise']),
    reason: 'Falls 0.51 K against a bound of 0.5 K: the row’s own capacity − says that less heat leaves.',
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
    ids: directions(
      ['SC', 'rise', 'drop', 'capacity'].map((r) => `inverter-fixed/liquid-line restriction, valve at its stop/${r}`),
    ),
    reason:
      'Right signs, too small at 0.8: the valve’s reserve takes up most of it, and what is left is a mild starving. Subcooling is bounded by the 10 K between condenser and air.',
  },
  {
    ids: directions(['inverter-fixed/valve stuck towards shut/SC']),
    reason:
      'Right sign, 1.6 K of the 2.4 K that can be read: liquid backs up to within 1…2 K of the air, and the difference to the air shrinks with the duty. Over that difference subcooling rises from 0.6 to 0.9.',
  },
  {
    ids: directions(['inverter-free/undercharge/Td']),
    reason:
      'Nothing heats the discharge until the valve is open: superheat is held and head is a little lower. Beyond it it rises 7 K.',
  },
  {
    ids: directions(['SC', 'Td', 'speed'].map((r) => `inverter-free/liquid-line restriction/${r}`)),
    reason:
      'While the valve still regulates it takes the restriction up whole: flow, duty and charge stay where they were, so nothing but the opening (and the drier) can tell. The row’s own zeros say the same.',
  },
  {
    ids: ['slopes/orifice-r22/superheat, 10 % less charge'],
    reason:
      '8.3 K against 8 from memory; R-410A 7.2. R-22 has less density a kelvin, so the same charge moves it further.',
  },
  {
    ids: ['envelopes/inverter-fixed/undercharge 30 %, regulating valve/COP ratio'],
    reason: '0.937 against 0.93: a wide valve opens where the units behind the envelope starved.',
  },
  {
    ids: ['envelopes/orifice-r410a/overcharge 20 %/capacity ratio', 'envelopes/orifice-r22/overcharge 20 %/COP ratio'],
    reason:
      'Half a per cent and a tenth of a per cent beyond: the coil’s dry part is wetted. The two correlations differ in sign here (−11…+3 %).',
  },
  {
    ids: ['envelopes/orifice-r410a/non-condensable gas, 60 % of a fill at 1 atm/apparent subcooling rises'],
    reason:
      '1.93 K against 2: charge leaves the condenser as superheat goes, so part of the false subcooling is real loss.',
  },
  {
    ids: ['envelopes/inverter-fixed/non-condensable gas, 60 % of a fill at 1 atm/COP ratio'],
    reason: '0.919 against 0.92.',
  },
  {
    ids: [
      'lookalikes/orifice-r410a/undercharge | clogged filter/design/drop of A',
      'lookalikes/orifice-r410a/undercharge | clogged filter/design/filterDrop of B',
    ],
    reason: '9.1 K and 202 Pa against 9 K and 200 Pa, bands from memory; the readings part by 7 K and 155 Pa.',
  },
  {
    ids: ['time/inverter-free/blower stop/fall', 'time/inverter-fixed/blower stop/fall'],
    reason:
      'Falls 16…19 K against 8…15: the valve follows superheat down and starves the coil, which an orifice does not. A real unit would stop on its freeze protection; this controller has none.',
  },
];

const REASONS = new Map(MISSES.flatMap(({ ids, reason }) => ids.map((id) => [id, reason] as const)));

export function reasonFor(id: string): string | null {
  return REASONS.get(id) ?? null;
}

export function listedMisses(): readonly string[] {
  return [...REASONS.keys()];
}
