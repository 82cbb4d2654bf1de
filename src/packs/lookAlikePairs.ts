/**
 * What a technician's usual readings – both pressures, superheat, subcooling, the air's difference, the current – and one
 * further reading or test say of two machines that look alike. Cases of the trade's review; no look decides.
 */
import { plantDescription } from '../../physics';
import type { RefrigerantId } from '../../physics/fluids/fluid';
import type { CauseId, Conditions, Faults, Nuisance, OperatingMode, PlantId } from '../../physics/types';
import { drawNuisance, REAL_WORLD } from '../attempt';
import { familyOf } from '../attempt/remedies';
import type { Bench, Candidate } from '../examiner';
import { candidatesOf } from '../examiner/candidates';
import { computeDifferentialFrom } from '../examiner/differential';
import type { Reader } from '../examiner/readings';
import { sourceOf, statesOf } from '../examiner/source';
import type { Channel, Differential, Observation } from '../examiner/types';
import { among, bitsOf, standpoint } from '../examiner/value';
import { CATALOGUE } from '../instruments/catalogue';
import { kindOfChannel } from '../instruments/places';
import { stream } from '../instruments/streams';
import type { InstrumentId } from '../instruments/types';
import { erringReader } from './erring';

export interface LookAlikes {
  readonly id: string;
  readonly plant: PlantId;
  readonly refrigerant: RefrigerantId;
  readonly mode: OperatingMode;
  /** other than the rating point's */
  readonly outdoor?: number;
  readonly A: Faults;
  readonly B: Faults;
  /** unit at which the air is read, where there are several */
  readonly unit?: string;
}

const kelvin = (celsius: number): number => celsius + 273.15;

/** Numbers of the review's items; sizes as it gives them (pressure drops of a drier as shares of what is left of the flow). */
export const LOOK_ALIKES: readonly LookAlikes[] = [
  {
    id: '20 undercharge | drier',
    plant: 'orifice-split',
    refrigerant: 'R-410A',
    mode: 'cooling',
    A: { undercharge: 0.2 },
    B: { 'drier-restriction': 0.94 },
  },
  {
    id: '21 undercharge | filter',
    plant: 'orifice-split',
    refrigerant: 'R-410A',
    mode: 'cooling',
    A: { undercharge: 0.2 },
    B: { 'filter-dirty': 0.45 },
  },
  {
    id: '22 condenser air | overcharge',
    plant: 'thermostatic-heat-pump',
    refrigerant: 'R-410A',
    mode: 'cooling',
    A: { 'condenser-dirty': 0.5 },
    B: { overcharge: 0.25 },
  },
  {
    id: '24 condenser air | recirculation',
    plant: 'orifice-split',
    refrigerant: 'R-410A',
    mode: 'cooling',
    A: { 'condenser-fan-slow': 0.51 },
    B: { 'air-recirculation': 0.35 },
  },
  {
    id: '24 the same, inverter',
    plant: 'inverter-split',
    refrigerant: 'R-32',
    mode: 'cooling',
    A: { 'condenser-fan-slow': 0.5 },
    B: { 'air-recirculation': 0.35 },
  },
  {
    id: '25 leak-by | reversing valve',
    plant: 'thermostatic-heat-pump',
    refrigerant: 'R-410A',
    mode: 'cooling',
    A: { 'compressor-leak-by': 0.15 },
    B: { 'reversing-valve-leak': 0.15 },
  },
  {
    id: '27 bulb | drier',
    plant: 'thermostatic-heat-pump',
    refrigerant: 'R-410A',
    mode: 'cooling',
    A: { 'bulb-charge-lost': 0.5 },
    B: { 'drier-restriction': 0.85 },
  },
  {
    id: '28 undercharge | drier behind receiver',
    plant: 'cold-room',
    refrigerant: 'R-134a',
    mode: 'cooling',
    A: { undercharge: 0.35 },
    B: { 'drier-restriction': 0.3 },
  },
  {
    id: '29 undercharge | iced coil',
    plant: 'thermostatic-heat-pump',
    refrigerant: 'R-410A',
    mode: 'heating',
    outdoor: 2,
    A: { undercharge: 0.25 },
    B: { 'defrost-not-starting': 0.5 },
  },
  {
    id: '30 charge | one valve',
    plant: 'multi-split',
    refrigerant: 'R-410A',
    mode: 'cooling',
    A: { undercharge: 0.3 },
    B: { 'metering-valve-stuck-closing@unit3': 0.8 },
    unit: 'unit3',
  },
];

/** The other weather in which each pair must hold: mild outdoors, a tenth less air over the indoor coil. */
export const MILD: Pick<Conditions, 'outdoor'> & { readonly air: number } = { outdoor: kelvin(22), air: 0.9 };

const FIVE: readonly Channel[] = [
  'suctionPressure',
  'liquidPressure',
  'suctionLineTemp',
  'liquidLineTemp',
  'returnAirTemp',
  'supplyAirTemp',
  'compressorCurrent',
];

export interface Told {
  /** belief in the truth against its look-alike, from the five and with the one further reading */
  readonly five: number;
  readonly six: number;
  readonly further: string;
}

export class PairBench {
  private readonly differential: Differential;
  private readonly bench: Bench;
  private readonly conditions: Conditions;
  private readonly causes: readonly [CauseId, CauseId];

  constructor(
    readonly pair: LookAlikes,
    readonly mild: boolean,
  ) {
    const { plant, refrigerant, mode, outdoor } = pair;
    const description = plantDescription(plant, mode, refrigerant);
    const rated = description.modes[mode] ?? description.designConditions;
    const ownWeather = outdoor === undefined ? rated : { ...rated, outdoor: kelvin(outdoor) };
    this.conditions = mild ? { ...rated, outdoor: MILD.outdoor } : ownWeather;
    this.causes = [causeOf(pair.A), causeOf(pair.B)];
    const source = sourceOf(REAL_WORLD);
    const families = source.families.filter(({ id }) => this.causes.includes(id));
    const input = { plant, refrigerant, conditions: this.conditions };
    this.differential = computeDifferentialFrom(input, { ...source, families });
    const toolbag = Object.keys(CATALOGUE) as InstrumentId[];
    const { charge } = description.nameplate(refrigerant);
    this.bench = { plant: description, toolbag, charge, states: statesOf(description) };
  }

  /** One machine of a side, off the examiner's grid, read by erring instruments; null where it does not run. */
  tell(side: 'A' | 'B', index: number): Told | null {
    const { plant, refrigerant } = this.pair;
    const seed = `${this.pair.id}/${side}/${this.mild}/${index}`;
    const drawn: Nuisance = drawNuisance(stream(seed));
    const nuisance = this.mild ? { ...drawn, evaporatorAir: drawn.evaporatorAir * MILD.air } : drawn;
    const setup = { plant, refrigerant, conditions: this.conditions, faults: this.pair[side], nuisance };
    const snapshots = sourceOf(REAL_WORLD).snapshots(setup, this.differential.states);
    if (!snapshots.running) return null;
    const read = erringReader({ snapshots, seed });
    const truth = causeOf(this.pair[side]);
    const usual = this.usual().flatMap((candidate) => read(candidate) ?? []);
    const { candidate, observation } = this.further(usual, read);
    return {
      five: this.belief(truth, usual),
      six: this.belief(truth, observation ? [...usual, observation] : usual),
      further: candidate ? `${candidate.channel} (${candidate.state})` : '–',
    };
  }

  private usual(): Candidate[] {
    const { unit } = this.pair;
    return candidatesOf(this.bench).filter(({ channel, state, instrument }) => {
      if (state !== 'running' || instrument === 'data-link' || !FIVE.includes(kindOfChannel(channel))) return false;
      return !channel.includes('@') || channel.endsWith(`@${unit}`);
    });
  }

  /** What would part the two best after the five, looks left out. */
  private further(
    usual: readonly Observation[],
    read: Reader,
  ): { candidate: Candidate | null; observation: Observation | null } {
    const point = among(standpoint(this.differential, this.even(), usual), this.causes);
    const open = candidatesOf(this.bench)
      .filter(({ instrument }) => instrument !== 'eyes' && instrument !== 'hand')
      .filter(({ channel, state }) => !usual.some((each) => each.channel === channel && each.state === state));
    const candidate = open
      .map((each) => ({ each, bits: bitsOf(point, each) }))
      .reduce((a, b) => (b.bits > a.bits ? b : a)).each;
    return { candidate, observation: read(candidate) };
  }

  private belief(truth: CauseId, observations: readonly Observation[]): number {
    return among(standpoint(this.differential, this.even(), observations), this.causes).posterior[truth] ?? 0;
  }

  private even(): Readonly<Partial<Record<CauseId, number>>> {
    return Object.fromEntries(this.causes.map((cause) => [cause, 50]));
  }
}

function causeOf(faults: Faults): CauseId {
  return familyOf(Object.keys(faults)[0]);
}
