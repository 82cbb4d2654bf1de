/**
 * Fan against a path of resistances. Fan curve P0·n² − k·V², path R·V²: both quadratic, so the flow is closed-form and
 * proportional to speed (fan laws). A resistance fault is stated as the share of clean flow that it takes away at the
 * design fan, which fixes its own R. Power follows flow × pressure over efficiency, with the motor's floor.
 */
export interface FanData {
  /** design volume flow, m3/s, at which path and fan meet with clean parts */
  readonly flow: number;
  /** static pressure there, Pa */
  readonly pressure: number;
  /** share of the fan's shut-off pressure that is left at the design point */
  readonly flatness: number;
  /** electrical W at the design point */
  readonly power: number;
  /** share of the path's resistance that a clean filter makes, 0 without a filter */
  readonly filterShare: number;
  /** flow by wind or buoyancy with the fan dead, share of design */
  readonly drift: number;
}

export interface FanResult {
  flow: number;
  power: number;
  /** pressure drop across the filter, Pa */
  filterDrop: number;
}

/**
 * @param speed relative fan speed, 1 = design step
 * @param shareLost share of clean flow that dirt takes away at the design fan, 0…0.95
 * @param dirtInFilter true: the lost share sits in the filter; false: on the coil
 * @param factor nuisance multiplier of the flow
 * @param density over design density
 */
export function fanFlow(
  fan: FanData,
  speed: number,
  shareLost: number,
  dirtInFilter: boolean,
  factor: number,
  density: number,
  running: boolean,
): FanResult {
  const clean = fan.flow * factor;
  const kept = 1 - (shareLost < 0.95 ? shareLost : 0.95);
  const relative = running && speed > 0 ? speed * kept : 0;
  const still = fan.drift * kept;
  const flow = clean * Math.sqrt(relative * relative + still * still);
  // resistances: shut-off P0 = pressure / flatness; P0 = (k + R) V0², so (k + R') = (k + R)/kept²
  const total = fan.pressure / fan.flatness / (fan.flow * fan.flow);
  const filterClean = (fan.filterShare * fan.pressure) / (fan.flow * fan.flow);
  const filter = filterClean + (dirtInFilter ? total * (1 / (kept * kept) - 1) : 0);
  const ratio = flow / clean;
  const cube = speed * speed * speed;
  const power = running ? fan.power * cube * (0.4 + (0.6 * ratio) / (speed > 0.05 ? speed : 0.05)) * density : 0;
  return { flow, power: running ? power : 0, filterDrop: filter * flow * flow * density };
}
