/** Hand-made instants of a machine, for looking at the picture without the engine. Plausible, not computed. */
import {
  type CoilSegment,
  PROBES,
  type Probes,
  type Snapshot,
  type Station,
  type StationId,
} from '../../physics/types';

const K = 273.15;

interface Wish {
  readonly massFlow: number;
  readonly suction: number;
  readonly discharge: number;
  readonly liquid: number;
  readonly evaporating: number;
  readonly condensing: number;
  readonly liquidQuality?: number;
  readonly afterDrier?: number;
  readonly outletQuality?: number;
  readonly frost?: number;
  readonly glass?: number;
  readonly dust?: number;
  readonly dirt?: number;
  readonly outdoorFan?: number;
  readonly indoorFan?: number;
  readonly hertz?: number;
  readonly valveOutdoors?: boolean;
  readonly room?: number;
}

const COIL_SEGMENTS = 10;

export function handMadeSnapshot(wish: Wish): Snapshot {
  const runs = wish.massFlow > 0;
  const liquidQuality = wish.liquidQuality ?? -0.05;
  const outlet = wish.outletQuality ?? 1.05;
  const station = (celsius: number, pressure: number, quality: number, density: number): Station => ({
    pressure,
    temperature: celsius + K,
    enthalpy: 0,
    quality,
    density,
    massFlow: wish.massFlow,
  });
  const high = runs ? 2.86e6 : 1.65e6;
  const low = runs ? 0.99e6 : 1.65e6;
  const liquidDensity = liquidQuality > 0 ? 700 : 1000;
  const stations: Record<StationId, Station> = {
    'compressor-in': station(wish.suction + 2, low, 1.1, 34),
    'compressor-out': station(wish.discharge, high, 1.3, 95),
    'condenser-in': station(wish.discharge - 2, high, 1.3, 96),
    'condenser-out': station(wish.liquid + 0.5, high, liquidQuality, liquidDensity),
    'liquid-port': station(wish.liquid, high, liquidQuality, liquidDensity),
    'drier-out': station(wish.afterDrier ?? wish.liquid - 0.3, high, liquidQuality, liquidDensity),
    'metering-in': station((wish.afterDrier ?? wish.liquid) - 1, high, liquidQuality, liquidDensity),
    'evaporator-in': station(wish.evaporating + 1, low, 0.22, 140),
    'evaporator-out': station(wish.suction - 1, low, outlet, 36),
    'suction-port': station(wish.suction, low, outlet, 35),
  };
  const condenser: CoilSegment[] = [];
  const evaporator: CoilSegment[] = [];
  for (let i = 0; i < COIL_SEGMENTS; i++) {
    const f = (i + 0.5) / COIL_SEGMENTS;
    const gasEnd = 0.12;
    const liquidStart = liquidQuality > 0 ? 1.1 : 0.82;
    const t =
      f < gasEnd
        ? wish.discharge + ((wish.condensing - wish.discharge) * f) / gasEnd
        : f < liquidStart
          ? wish.condensing
          : wish.condensing + ((wish.liquid - wish.condensing) * (f - liquidStart)) / (1 - liquidStart);
    const q = f < gasEnd ? 1.1 : f < liquidStart ? 1 - (f - gasEnd) / (liquidStart - gasEnd) : -0.05;
    condenser.push({ temperature: t + K, quality: q, wall: t - 3 + K, frost: 0 });
    const dry = outlet > 1 ? (wish.suction > 12 ? 0.55 : 0.85) : 1.2;
    const te =
      f < dry ? wish.evaporating : wish.evaporating + ((wish.suction - wish.evaporating) * (f - dry)) / (1 - dry);
    evaporator.push({
      temperature: te + K,
      quality: f < dry ? 0.22 + (0.78 * f) / dry : 1.05,
      wall: te + 4 + K,
      frost: Math.max(0, (wish.frost ?? 0) * 0.12 * (1.1 - f)),
    });
  }
  const values: Partial<Record<keyof Probes, number>> = {
    compressorSpeed: runs ? (wish.hertz ?? 50) : 0,
    compressorPower: runs ? 2700 : 0,
    compressorCurrent: runs ? 12.4 : 0,
    refrigerantMassFlow: wish.massFlow,
    capacityTotal: runs ? 9800 : 0,
    capacitySensible: runs ? 7300 : 0,
    supplyAirFlow: 0.5 * (wish.indoorFan ?? 1) * (1 - (wish.dust ?? 0)),
    condenserAirFlow: 1.1 * (wish.outdoorFan ?? 1) * (1 - (wish.dirt ?? 0)),
    outdoorAirTemp: 35 + K,
    condenserEnteringAirTemp: 35 + K,
    condenserLeavingAirTemp: (runs ? 46 : 35) + K,
    returnAirTemp: (wish.room ?? 27) + K,
    supplyAirTemp: (runs ? 16 : 27) + K,
  };
  const probes = Object.fromEntries(
    Object.entries(PROBES).map(([name, unit]) => [name, { value: values[name as keyof Probes] ?? 0, unit }]),
  ) as unknown as Probes;
  return {
    time: 0,
    regime: runs ? 'flow' : 'still',
    probes,
    looks: {
      sightGlass: wish.glass ?? 0,
      evaporatorFrost: wish.frost ?? 0,
      filterDust: wish.dust ?? 0.04,
      condenserDirt: wish.dirt ?? 0.02,
      condenserFanSpeed: wish.outdoorFan ?? (runs ? 1 : 0),
      evaporatorFanSpeed: wish.indoorFan ?? (runs ? 1 : 0),
    },
    controller: runs ? 'cooling' : 'off',
    sensors: { suctionLine: 285, evaporatorCoil: 283, dischargeLine: 350, outdoorAir: 308, returnAir: 300 },
    stations,
    condenser,
    evaporator,
    balance: { energy: 0, mass: 0 },
  };
}

export const HEALTHY = { massFlow: 0.06, suction: 14, discharge: 80, liquid: 41, evaporating: 7, condensing: 47 };

export const MOMENTS: Readonly<Record<string, Snapshot>> = {
  healthy: handMadeSnapshot(HEALTHY),
  'short-of-gas': handMadeSnapshot({
    ...HEALTHY,
    massFlow: 0.042,
    suction: 22,
    discharge: 94,
    liquid: 43,
    evaporating: -1,
    condensing: 43,
    liquidQuality: 0.03,
    glass: 0.6,
    frost: 0.25,
  }),
  'dirty-filter': handMadeSnapshot({
    ...HEALTHY,
    suction: 1,
    evaporating: -2,
    outletQuality: 0.95,
    frost: 0.9,
    dust: 0.6,
    indoorFan: 1,
  }),
  'dirty-coil': handMadeSnapshot({ ...HEALTHY, condensing: 58, liquid: 51, discharge: 98, dirt: 0.6, outdoorFan: 0.5 }),
  standing: handMadeSnapshot({
    massFlow: 0,
    suction: 30,
    discharge: 33,
    liquid: 33,
    evaporating: 28,
    condensing: 33,
    liquidQuality: 0.5,
    outdoorFan: 0,
    indoorFan: 0,
  }),
};
