/** Which weather and room a plant can be asked about. */
import { PhysicsError } from '../errors';
import type { Conditions, PlantDescription } from '../types';

/** Throws PhysicsError `bad-input` naming what lies outside its range, or a mode that the plant does not have. */
export function checkConditions(plant: PlantDescription, conditions: Conditions): void {
  const { outdoor, indoor, wetBulb, altitude, mode } = conditions;
  if (!Object.hasOwn(plant.modes, mode)) {
    throw new PhysicsError(
      'bad-input',
      `mode: ${plant.id} knows ${Object.keys(plant.modes).join(', ')}, not "${mode}"`,
      {
        mode,
      },
    );
  }
  check('outdoor', outdoor, mode === 'heating' ? 248.15 : 253.15, 328.15);
  const refrigerated = plant.designConditions.indoor < 283.15;
  check('indoor', indoor, refrigerated ? 268.15 : 283.15, refrigerated ? 303.15 : 318.15);
  check('wetBulb', wetBulb, refrigerated ? 263.15 : 273.15, indoor);
  check('altitude', altitude, -500, 5000);
}

function check(name: string, value: number, low: number, high: number): void {
  if (typeof value === 'number' && value >= low && value <= high) return;
  throw new PhysicsError('bad-input', `${name}: ${value} lies outside ${low.toFixed(2)}…${high.toFixed(2)}`, {
    [name]: value,
    low,
    high,
  });
}
