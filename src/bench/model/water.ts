import type { Snapshot } from '../../../physics/types';

/** Heat of condensation of water, J/kg (ASHRAE Handbook—Fundamentals, Psychrometrics, rounded). */
const CONDENSATION = 2.47e6;

/** Water that leaves the coil, kg/s: none runs off while it freezes on. */
export function waterOff(snapshot: Snapshot): number {
  const latent = snapshot.probes.capacityTotal.value - snapshot.probes.capacitySensible.value;
  // a room that is heated gives no water off
  if (snapshot.probes.supplyAirTemp.value > snapshot.probes.returnAirTemp.value) return 0;
  return (Math.max(0, latent) / CONDENSATION) * (1 - Math.min(1, snapshot.looks.evaporatorFrost));
}
