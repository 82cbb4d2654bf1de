import type { Fault } from './types';

/**
 * Suction service valve not opened all the way. Severity: its pressure drop at the healthy design flow as a share of the
 * design suction pressure. The port is on the line's side of the valve, so it shows the line and not the compressor.
 * Seen: suction pressure high at the port, low current, little cooling – as a compressor that leaks inside. An orifice then
 * floods the coil and the discharge cools; a valve holds superheat and the discharge gets hot. The stem is part way in.
 * On a heat pump it is the vapour line's valve: in heating the hot gas passes it and hardly feels it. Remedy: open the valve.
 */
export const SERVICE_VALVE_THROTTLED: Fault = {
  id: 'service-valve-throttled',
  plants: ['orifice-split', 'inverter-split', 'cold-room', 'multi-split', 'heat-recovery', 'thermostatic-heat-pump'],
  modes: { 'thermostatic-heat-pump': ['cooling'] },
  lacking: { 'cold-room': ['R-290'] },
  slight: 0.1,
  clear: 0.3,
  severe: 0.5,
  max: 0.65,
  unit: 'share',
  apply(machine, severity, design) {
    const { pSuction, rhoSuction, massFlow } = design.cooling ?? design;
    const drop = severity * pSuction;
    machine.suctionValve += (drop * rhoSuction) / (massFlow * massFlow);
  },
};
