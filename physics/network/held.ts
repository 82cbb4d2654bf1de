/** A network that has stood for hours because something keeps it from starting. */
import type { ControllerState, Controls } from '../types';
import { DAMPER, WARMER } from './advance';
import type { NetworkRig } from './rig';
import { standingNetwork } from './standing';
import type { NetworkState, Room } from './state';

/** Found standing though it is switched on; the rooms have come as far as the weather takes them, so that nothing moves. */
export function heldNetwork(
  rig: NetworkRig,
  controls: Controls,
  held: ControllerState,
  charge: number,
  rooms: readonly Room[],
): NetworkState {
  return {
    ...standingNetwork(rig, controls, charge),
    rooms: rooms.map((room) => ({
      ...room,
      temperatureFound: room.temperature + (room.load < 0 ? WARMER : -WARMER),
      humidityFound: room.humidity / (1 + DAMPER),
    })),
    controller: held,
    rate: 0,
  };
}
