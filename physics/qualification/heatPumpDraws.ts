/**
 * Heat pumps drawn at random: do they solve, do their books close? And every family of faults in each mode: does no size
 * change nothing, does more of it do more?
 */
import { createMachine, familiesOf, type MachineSetup, PhysicsError, plantDescription, steady } from '../index';
import { Draw, severityAt } from './draws';
import { type Finding, finding, statement } from './finding';
import { HEAT_PUMPS, type Reading, steadyReadings, type Variant } from './machines';
import { SOURCES } from './sources';

const MODES = ['cooling', 'heating'] as const;
type Mode = (typeof MODES)[number];

/** 18…46 °C outdoors in cooling, −20…20 °C in heating, a room to either, one fault. */
function drawn(draw: Draw, variant: Variant, mode: Mode): MachineSetup {
  const { plant, refrigerant } = variant;
  const family = draw.pick(familiesOf(plant, mode));
  const cooling = mode === 'cooling';
  const indoor = 273.15 + (cooling ? draw.between(20, 32) : draw.between(15, 25));
  const conditions = {
    outdoor: 273.15 + (cooling ? draw.between(18, 46) : draw.between(-19.99, 20)),
    indoor,
    wetBulb: indoor - draw.between(3, 9),
    mode,
    altitude: draw.between(0, 1500),
  };
  return { plant, refrigerant, conditions, faults: { [family.id]: severityAt(family, draw.share()) } };
}

export function heatPumpDraws(count: number, seed: number): Finding[] {
  const draw = new Draw(seed);
  return HEAT_PUMPS.flatMap((variant) =>
    MODES.flatMap((mode) => {
      let solved = 0;
      let energy = 0;
      let mass = 0;
      let unnamed = 0;
      for (let k = 0; k < count; k++) {
        try {
          const { balance } = createMachine(drawn(draw, variant, mode)).steady();
          solved++;
          energy = Math.max(energy, balance.energy);
          mass = Math.max(mass, balance.mass);
        } catch (error) {
          if (!(error instanceof PhysicsError)) throw error;
          if (error.code !== 'protection') unnamed++;
          else solved++;
        }
      }
      const id = `heatPump/${variant.id}/random ${mode}`;
      return [
        finding(
          `${id}/solved`,
          SOURCES.model,
          'share that solves, or names the switch that stops it',
          '-',
          solved / count,
          0.995,
          1,
        ),
        finding(`${id}/energy`, SOURCES.own, 'worst first-law defect over capacity', '-', energy, 0, 1e-3),
        finding(`${id}/charge`, SOURCES.own, 'worst departure from the charge', 'kg', mass, 0, 1e-9),
        finding(`${id}/unnamed`, SOURCES.model, 'unsolved without a reason', '-', unnamed, 0, 0),
      ];
    }),
  );
}

/** What moves most under a family; growth is asked of it. `+` or `-` as it goes. */
type Telling = readonly [Reading, '+' | '-'];
const TELLING: Readonly<Record<string, Telling | Readonly<Record<Mode, Telling>>>> = {
  undercharge: ['SC', '-'],
  overcharge: ['SC', '+'],
  'non-condensable': ['pd', '+'],
  'drier-restriction': ['drierDrop', '+'],
  'condenser-dirty': ['capacity', '-'],
  'condenser-fan-slow': ['capacity', '-'],
  'filter-dirty': ['filterDrop', '+'],
  'evaporator-fan-slow': ['capacity', '-'],
  'compressor-leak-by': ['capacity', '-'],
  'metering-valve-stuck-closing': ['Te', '-'],
  'metering-valve-stuck-opening': ['Td', '-'],
  'bulb-charge-lost': ['SHout', '+'],
  'bulb-loose': ['Td', '-'],
  'capacitor-weak': ['current', '+'],
  'metering-valve-superheat-set': ['SHout', '+'],
  'check-valve-leaking': ['Td', '-'],
  'reversing-valve-leak': ['valveRise', '+'],
  'reversing-valve-half-shifted': ['valveRise', '+'],
  'defrost-not-starting': ['capacity', '-'],
  'liquid-line-kink': { cooling: ['kinkFall', '+'], heating: ['SC', '-'] },
  'liquid-line-heated': { cooling: ['kinkFall', '-'], heating: ['SC', '-'] },
  'suction-line-uninsulated': { cooling: ['suctionWarming', '+'], heating: ['capacity', '-'] },
  'service-valve-throttled': ['stem', '-'],
  'evaporator-dirty': ['coilDrop', '+'],
  'air-recirculation': { cooling: ['face', '+'], heating: ['Te', '-'] },
  'duct-leak': ['ductPressure', '-'],
  'compressor-worn': ['power', '+'],
  'fan-capacitor-weak': ['fanCapacitance', '-'],
  'supply-voltage-low': ['current', '+'],
  'contactor-burnt': ['poleDrop', '+'],
  'thermostat-misplaced': ['thermostatOver', '+'],
};

/** Departure from one-way growth that is noise of the solver or of a kink, in the reading's unit. */
const LEVEL = 0.05;

export function heatPumpGrowth(): Finding[] {
  return HEAT_PUMPS.flatMap((variant) =>
    MODES.flatMap((mode) => {
      const conditions = plantDescription(variant.plant).modes[mode];
      if (!conditions) return [];
      const shown = (faults: MachineSetup['faults']): string =>
        JSON.stringify(steady({ plant: variant.plant, refrigerant: variant.refrigerant, conditions, faults }).snapshot);
      const healthy = shown({});
      const families = familiesOf(variant.plant, mode);
      const zero = statement(
        `heatPump/${variant.id}/${mode} zero severity`,
        SOURCES.model,
        'a fault of no size is exactly the healthy machine',
        families.every(({ id }) => shown({ [id]: 0 }) === healthy),
      );
      const growing = families.flatMap((family) => {
        const telling = TELLING[family.id];
        if (!telling) return [];
        const [reading, sign] = 'cooling' in telling ? telling[mode] : telling;
        const sizes = [0, family.slight, family.clear, family.severe];
        const values = sizes.map((size) => {
          const one = steadyReadings(variant, { mode, faults: { [family.id]: size } })[reading];
          return sign === '+' ? one : -one;
        });
        let worst = Number.POSITIVE_INFINITY;
        for (let k = 1; k < values.length; k++) worst = Math.min(worst, values[k] - values[k - 1]);
        return [
          finding(
            `heatPump/${variant.id}/${mode} growth/${family.id}`,
            SOURCES.model,
            `smallest step of ${reading} (${sign}) from nothing to severe`,
            '',
            worst,
            -LEVEL,
            Number.POSITIVE_INFINITY,
          ),
        ];
      });
      return [zero, ...growing];
    }),
  );
}
