/** What can be read and in which operating state it is judged. */
import type { OperatingState } from '../../attempt/types';
import type { ChannelName } from '../../instruments/types';

/** Channels on which expectations exist: what instruments read, the controller's own sensors, looks. */
export type Channel = ChannelName;

/** Operating states in which a reading is judged; in any other it is shown, not judged. */
export type JudgedState = Extract<OperatingState, 'running' | 'full-speed' | 'standing'>;
