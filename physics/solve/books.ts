/** What the circuit holds at a solution: mass and internal energy of its high and its low side. */
import * as layout from '../fluids/layout';
import { short } from '../parts/compressor';
import { liquidLevel } from '../parts/receiver';
import { liquidHeld } from '../parts/suctionVessel';
import type { Circuit } from './circuit';

const { CP_L, H_L, H_V, OUT_RHO, P, RHO_L, RHO_V } = layout;

/** Mass and internal energy of both sides (m h − p V, zone by zone). */
export function book(circuit: Circuit, rhoSuction: number, hCylinder: number, pool: number): void {
  const { data, path, compressor, condenser, evaporator, fluid, out } = circuit;
  const lines = data.lines;
  const discharge = lines.dischargeVolume * compressor.rhoDischarge;
  const liquid =
    lines.liquidVolume * path.rhoIn + lines.liquidLineVolume * 0.5 * (path.rhoAfterDrier + path.rhoMetering);
  circuit.massHigh = discharge + condenser.mass + liquid;
  circuit.energyHigh =
    discharge * circuit.hCondenserIn +
    liquid * circuit.hLiquid +
    condenser.energy -
    circuit.pLiquid * (lines.dischargeVolume + lines.liquidVolume + lines.liquidLineVolume);
  if (data.receiver) bookReceiver(circuit, data.receiver.volume);

  fluid.state(circuit.evaporating, circuit.hMetering, out);
  const expansion = lines.expansionVolume * out[OUT_RHO];
  const suction = lines.suctionVolume * rhoSuction;
  fluid.state(circuit.low, hCylinder, out);
  const shell = data.compressor.shellVolume * out[OUT_RHO];
  const wetness =
    short(circuit.low[H_V] - (circuit.hCompressorIn + (compressor.hSuction - circuit.hValveIn))) /
    (circuit.low[H_V] - circuit.low[H_L]);
  const held = liquidHeld(data.suctionVessel, wetness * circuit.massFlow);
  circuit.massLow = expansion + evaporator.mass + suction + shell + held;
  circuit.energyLow =
    expansion * circuit.hMetering +
    suction * circuit.hServiceSuction +
    shell * hCylinder +
    evaporator.energy +
    (pool + held) * (circuit.low[H_L] - circuit.pSuction / circuit.low[RHO_L]) -
    circuit.pSuction * (lines.expansionVolume + lines.suctionVolume + data.compressor.shellVolume);
}

/** Adds what the receiver holds to the high side. Nitrogen apart, it is at the condenser's pressure. */
function bookReceiver(circuit: Circuit, volume: number): void {
  const { condensing, condenser } = circuit;
  circuit.receiverLevel = liquidLevel((condensing[H_L] - condenser.hOut) / condensing[CP_L]);
  const liquid = volume * circuit.receiverLevel * condensing[RHO_L];
  const gas = volume * (1 - circuit.receiverLevel) * condensing[RHO_V];
  circuit.massHigh += liquid + gas;
  circuit.energyHigh += liquid * condenser.hOut + gas * condensing[H_V] - condensing[P] * volume;
}
