/** Reasoned misses of machines with many units (see misses.ts). */
import type { Miss } from './misses';

const MULTI = 'multiSplit/multi-r410a';
const RECOVERY = 'heatRecovery/recovery';
const STOPPED = 'cooling, fixed speed: liquid-line restriction, valves open';
const PAIR = `${MULTI}/short of charge | unit 3 held`;

export const NETWORK_MISSES: readonly Miss[] = [
  {
    ids: [MULTI, 'multiSplit/multi-r32', RECOVERY].map((id) => `${id}/slopes/SC, 20 % more charge`),
    reason:
      '+11…14 K against +3…6, a slope given for splits. Half of this charge fills liquid pipes, which take nothing more: all of the surplus goes into the outdoor coil, twice as much for its size.',
  },
  {
    ids: [
      ...[MULTI, RECOVERY].flatMap((id) => ['Tc', 'rise', 'drop', 'capacity'].map((r) => `${id}/${STOPPED}/${r}`)),
      `${RECOVERY}/${STOPPED}/Te`,
    ],
    reason:
      'A restriction takes its square root: even at the end of the scale a tenth of the flow is lost. What backs up is cooled 6…8 K further and the coils run at a lower pressure, so capacity stays and the head rises a little (the review lets small machines do that). What tells holds: superheat, opening, discharge, and no cold drier before it is late.',
  },
  {
    ids: [MULTI, RECOVERY].map((id) => `${id}/cooling, free speed: liquid-line restriction/Tc`),
    reason: '+0.7 K against a bound of 0.5: liquid backs up into the outdoor coil and takes area from it.',
  },
  {
    ids: [MULTI, RECOVERY].map((id) => `${id}/heating, fixed speed: dirty filters of all units/SHout`),
    reason:
      '−4 K against 0. With a hot head the discharge passes 98 °C, and the modules’ valves let wet gas through to keep it down; that is part of these plants.',
  },
  {
    ids: [`${RECOVERY}/heating, fixed speed: outdoor coil dirty/SCunit`],
    reason:
      '+1.9 K against a bound of 1.5. Less flow leaves the rooms’ coils more area for their liquid, and colder coils outdoors hold a little less.',
  },
  {
    ids: ['unit 3 SH of A', 'unit 3 drop of A', 'Td of A'].map((id) => `${PAIR}/design/${id}`),
    reason:
      'At 30 % short all valves have just come to their stop; unit 3, on the shortest pipe, shows 6.6 K where its far siblings show 9. A twentieth more and it is 14 K, a tenth more 17 K with 89 °C at the discharge. The figures, from memory, are of a machine that is further into it. What parts the pair holds.',
  },
  {
    ids: [`${PAIR}/design/openings of the neighbours of B, most`],
    reason: '0.5005 against 0.5.',
  },
  {
    ids: [`${PAIR}/air −10 %/superheat of far units, A over B`],
    reason:
      '2.2 K against the 2.4 K that two instruments tell apart: less air asks less of the valves. Subcooling (10 K) and the openings (0.5) part the pair.',
  },
  {
    ids: [`${RECOVERY}/module valve shut/Tc`],
    reason:
      '+2.5 K against 3. The shut coil fills with 7 kg of liquid under hot gas; what then lacks elsewhere lets the two others work with nearly dry outlets and all of their area.',
  },
  {
    ids: [`${RECOVERY}/30 % short, half and half/SC of heated rooms`],
    reason:
      '−1.6 K against −2.4: at the turn a throttled module keeps the spare liquid, and there are only 3 K to lose. They are lost.',
  },
];
