import type { SameKeys } from '../catalogue';
import type { guide as source } from '../en/guide';

export const guide: SameKeys<typeof source> = {
  title: 'Primer aviso',
  step: 'Paso {{now}} de {{all}}',
  show: 'Muéstreme',
  hide: 'Plegar',
  unfold: 'Abrir',
  next: 'Visto',
  say: {
    feelSuction: 'Ponga la mano desnuda en la línea de aspiración. Tóquela y elija la mano.',
    feelLiquid: 'Ahora ponga la mano en la línea de líquido. Un tubo devuelve vapor frío, el otro lleva líquido.',
    protect: 'Ahora viene un manómetro. El refrigerante puede helar piel y ojos. Decida: ¿gafas y guantes?',
    gauge: 'Ponga el manómetro de baja en la toma de aspiración. La lectura se anota sola.',
    clamp: 'Ponga la pinza para tubo en la línea de aspiración, junto a la toma.',
    sum: '¿Cuánto más caliente está ese tubo que el refrigerante que hierve? Eso es el recalentamiento. En el cuaderno elija recalentamiento, lea la regla y reste.',
    twin: 'Junto a cada número está la misma lectura en una gemela sana. ¿Cuál no es como la de la gemela?',
    stake: 'Tres causas podrían hacer esto. Veinte fichas son su confianza. Mueva algunas y declare.',
    predict:
      'Elija una lectura más que separe sus dos causas en cabeza. Antes de tomarla: ¿quedará por debajo de la gemela, será igual o quedará por encima?',
    telling: 'Ahora tómela. Si hacen falta dos, como en el subenfriamiento, tome ambas y calcule.',
    verdict: 'Decídase. Nombre la causa, su mejor rival y las lecturas que las separan.',
    repair: 'Repárela: elija el remedio, los pasos en orden y por qué ocurrió.',
    verify: 'Deje pasar quince minutos. Tome otra vez tres lecturas y elíjalas como prueba.',
  },
  predict: { lower: 'por debajo', same: 'igual', higher: 'por encima' },
  predicted: 'Usted dijo: {{said}}. Fue: {{was}}.',
};
