/**
 * Fan against a path of resistances. Fan curve P0·n² − k·V², path R·V²: both quadratic, so the flow is closed-form and
 * proportional to speed (fan laws). A resistance fault is stated as the share of clean flow that it takes away at the
 * design fan, which fixes its own R; two of them in series add. Power follows flow × pressure over efficiency, with the motor's floor.
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
  /** the same for the clean coil; left out = nobody can measure it */
  readonly coilShare?: number;
  /** the same for the supply duct down to its grilles; left out = blows into the room */
  readonly supplyShare?: number;
  /** run capacitor of its motor, F; left out = none */
  readonly capacitance?: number;
  /** flow by wind or buoyancy with the fan dead, share of design */
  readonly drift: number;
}

export interface FanResult {
  flow: number;
  power: number;
  /** pressure drops across the filter and across the coil, Pa */
  filterDrop: number;
  coilDrop: number;
  /** static pressure at the beginning of the supply duct over the room, Pa, and what arrives at its grilles, m3/s */
  supplyPressure: number;
  delivered: number;
}

/**
 * @param speed relative fan speed, 1 = design step
 * @param filterLost share of clean flow that dust in the filter takes away at the design fan, 0…0.95
 * @param coilLost the same for dirt on the coil
 * @param leak share of the supply air that is lost before the grilles: less air sees the duct's resistance
 * @param factor nuisance multiplier of the flow
 * @param density over design density
 */
export function fanFlow(
  fan: FanData,
  speed: number,
  filterLost: number,
  coilLost: number,
  leak: number,
  factor: number,
  density: number,
  running: boolean,
): FanResult {
  const clean = fan.flow * factor;
  const filterKept = 1 - (filterLost < 0.95 ? filterLost : 0.95);
  const coilKept = 1 - (coilLost < 0.95 ? coilLost : 0.95);
  const grilles = (1 - leak) * (1 - leak);
  const relief = (fan.supplyShare ?? 0) * fan.flatness * (1 - grilles);
  const kept = inSeries(filterKept, coilKept, relief);
  const relative = running && speed > 0 ? speed * kept : 0;
  const still = fan.drift * kept;
  const flow = clean * Math.sqrt(relative * relative + still * still);
  // resistances: shut-off P0 = pressure / flatness; P0 = (k + R) V0², so (k + R') = (k + R)/kept²
  const total = fan.pressure / fan.flatness / (fan.flow * fan.flow);
  const ofPath = fan.pressure / (fan.flow * fan.flow);
  const filter = (fan.filterShare * fan.pressure) / (fan.flow * fan.flow) + total * (1 / (filterKept * filterKept) - 1);
  const coil = (fan.coilShare ?? 0) * ofPath + total * (1 / (coilKept * coilKept) - 1);
  const ratio = flow / clean;
  const cube = speed * speed * speed;
  const power = running ? fan.power * cube * (0.4 + (0.6 * ratio) / (speed > 0.05 ? speed : 0.05)) * density : 0;
  const dynamic = flow * flow * density;
  return {
    flow,
    power: running ? power : 0,
    filterDrop: filter * flow * flow * density,
    coilDrop: coil * dynamic,
    supplyPressure: (fan.supplyShare ?? 0) * ofPath * grilles * dynamic,
    delivered: flow * (1 - leak),
  };
}

/**
 * Share of the clean flow that two resistances in series leave, each given by what it leaves alone; `relief` is the share
 * of the whole resistance that falls away.
 */
function inSeries(one: number, other: number, relief: number): number {
  if (relief === 0 && one === 1) return other;
  if (relief === 0 && other === 1) return one;
  return 1 / Math.sqrt(1 / (one * one) + 1 / (other * other) - 1 - relief);
}
