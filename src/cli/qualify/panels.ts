/** Which readings a sheet shows: those that a technician takes on that machine in that mode. */
import { plantDescription } from '../../../physics';
import type { Sweep, Swept } from '../../../physics/qualification';
import type { Panel } from './chart';

const panel = (reading: string, title: string, unit: string, beside?: string): Panel => ({
  reading,
  title,
  unit,
  beside,
});

const COMMON = {
  Te: panel('Te', 'Evaporating temperature', '°C'),
  Tc: panel('Tc', 'Condensing temperature', '°C'),
  SC: panel('SC', 'Subcooling', 'K'),
  Td: panel('Td', 'Discharge line', '°C'),
  SHcomp: panel('SHcomp', 'Superheat, compressor', 'K'),
  current: panel('current', 'Compressor current', 'A'),
  power: panel('power', 'Compressor power', 'W'),
  capacity: panel('capacity', 'Capacity', 'W'),
  cop: panel('cop', 'COP', '–'),
  flow: panel('flow', 'Refrigerant flow', 'g/s'),
  standing: panel('standing', 'Standing pressure', 'kPa'),
  opening: panel('opening', 'Valve opening', '–'),
  speed: panel('speed', 'Compressor speed', 'Hz'),
  drop: panel('drop', 'Air drop indoors', 'K'),
  rise: panel('rise', 'Air rise outdoors', 'K'),
  filterDrop: panel('filterDrop', 'Filter pressure drop', 'Pa'),
  valveRise: panel('valveRise', 'Rise over reversing valve', 'K'),
} as const;

function cooler({ plant }: Swept): Panel[] {
  const { metering, variableSpeed } = plantDescription(plant);
  const { Te, Tc, SC, Td, drop, rise, current, power, capacity, cop, flow, SHcomp, filterDrop, standing } = COMMON;
  return [
    Te,
    Tc,
    panel('SH', 'Superheat, service valve', 'K'),
    SC,
    Td,
    drop,
    rise,
    current,
    power,
    capacity,
    cop,
    flow,
    SHcomp,
    panel('drierFall', 'Fall over the drier', 'K'),
    filterDrop,
    standing,
    ...(metering === 'electronic-valve' ? [COMMON.opening] : []),
    ...(variableSpeed ? [COMMON.speed] : []),
  ];
}

function heatPump({ mode }: Swept): Panel[] {
  const { Te, Tc, SC, Td, SHcomp, drop, rise, current, power, capacity, filterDrop, standing, valveRise } = COMMON;
  const drier = panel('drierDrop', 'Pressure drop of the drier', 'kPa');
  const outlet = panel('SHout', 'Superheat, coil outlet', 'K');
  if (mode === 'cooling') {
    return [
      Te,
      Tc,
      outlet,
      SC,
      Td,
      drop,
      rise,
      current,
      power,
      capacity,
      SHcomp,
      valveRise,
      drier,
      filterDrop,
      standing,
    ];
  }
  const air = [panel('supply', 'Supply air', '°C'), panel('outdoorFall', 'Air fall outdoors', 'K')];
  return [Te, Tc, outlet, SC, Td, ...air, current, power, capacity, SHcomp, valveRise, drier, filterDrop, standing];
}

/** Unit 1 hangs on the shortest pipe, unit 8 on the longest; with half of the rooms each way, one of each duty. */
function wholeNetwork({ mode }: Swept): Panel[] {
  const { Te, Tc, SC, Td, SHcomp, drop, rise, current, capacity, opening, speed } = COMMON;
  const machine = [Te, Tc, SHcomp, Td, current, speed];
  if (mode === 'simultaneous') {
    return [
      ...machine,
      panel('header', 'Liquid header under hot gas', 'kPa'),
      panel('SH@unit3', 'Superheat, unit 3 (cools)', 'K'),
      panel('opening@unit3', 'Valve opening, unit 3', '–'),
      panel('drop@unit3', 'Air drop, unit 3', 'K'),
      panel('SC@unit4', 'Subcooling, unit 4 (heats)', 'K'),
      panel('opening@unit4', 'Valve opening, unit 4', '–'),
      panel('warming@unit4', 'Air rise, unit 4', 'K'),
    ];
  }
  const standing = [capacity, COMMON.standing];
  if (mode === 'heating') {
    return [
      ...machine,
      panel('SHout', 'Superheat, outdoor coils', 'K'),
      panel('SCunit', 'Subcooling, mean of units', 'K'),
      panel('warming', 'Air rise indoors', 'K'),
      panel('outdoorFall', 'Air fall outdoors', 'K'),
      panel('opening@unit3', 'Valve opening, unit 3', '–'),
      ...standing,
    ];
  }
  return [
    ...machine,
    panel('SCport', 'Subcooling, outdoor coils', 'K'),
    { ...SC, title: 'Subcooling after exchanger' },
    panel('SH@unit1', 'Superheat, unit 1 (far: thin)', 'K', 'SH@unit8'),
    { ...opening, title: 'Valve opening, mean of units' },
    drop,
    rise,
    ...standing,
  ];
}

/** Whether a unit gives heat at the first point. */
function heats(sweep: Sweep, unit: string): boolean {
  return (sweep.points[0].readings?.[`drop@${unit}`] ?? 0) < 0;
}

function unitOfNetwork(sweep: Sweep, unit: string, sibling: string): Panel[] {
  const { Te, Tc, Td, current, speed } = COMMON;
  const both = (name: string, title: string, unitOfIt: string): Panel =>
    panel(`${name}@${unit}`, title, unitOfIt, `${name}@${sibling}`);
  const duty = heats(sweep, sibling)
    ? [both('SC', 'Subcooling', 'K'), both('warming', 'Air rise', 'K')]
    : [both('SH', 'Superheat', 'K'), both('drop', 'Air drop', 'K')];
  const own = [
    both('opening', 'Valve opening', '–'),
    both('coil', 'Coil sensor', '°C'),
    both('load', 'Capacity', 'kW'),
  ];
  return [...duty, ...own, Te, Tc, Td, current, speed];
}

/** The readings that a sheet shows of one fault. */
export function panelsOf(machine: Swept, sweep: Sweep): Panel[] {
  if (machine.plant === 'thermostatic-heat-pump') return heatPump(machine);
  const { units = [] } = plantDescription(machine.plant);
  if (units.length === 0) return cooler(machine);
  const { unitWith, unitWithout } = sweep;
  return unitWith === null || unitWithout === null
    ? wholeNetwork(machine)
    : unitOfNetwork(sweep, unitWith, unitWithout);
}
