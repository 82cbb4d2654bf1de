import type { SameKeys } from '../catalogue';
import type { guide as source } from '../en/guide';

export const guide: SameKeys<typeof source> = {
  title: 'Primer aviso',
  step: 'Paso {{now}} de {{all}}',
  show: 'Muéstrame',
  hide: 'Plegar',
  unfold: 'Abrir',
  next: 'Visto',
  say: {
    feelSuction: 'Pon la mano desnuda en la línea de aspiración. Tócala y elige la mano.',
    feelLiquid: 'Ahora pon la mano en la línea de líquido. Un tubo devuelve vapor frío, el otro lleva líquido.',
    protect: 'Ahora viene un manómetro. El refrigerante puede helar piel y ojos. Decide: ¿gafas y guantes?',
    gauge: 'Pon el manómetro de baja en la toma de aspiración. La lectura se anota sola.',
    clamp: 'Pon la pinza para tubo en la línea de aspiración, junto a la toma.',
    sum: '¿Cuánto más caliente está ese tubo que el refrigerante que hierve? Eso es el recalentamiento. En el cuaderno elige recalentamiento, lee la regla y resta.',
    twin: 'Junto a cada número está la misma lectura en una gemela sana. ¿Cuál no es como la de la gemela?',
    stake: 'Tres causas podrían hacer esto. Veinte fichas son tu confianza. Mueve algunas y declara.',
    predict:
      'Elige una lectura más que separe tus dos causas en cabeza. Antes de tomarla: ¿quedará por debajo de la gemela, será igual o quedará por encima?',
    telling: 'Ahora tómala. Si hacen falta dos, como en el subenfriamiento, toma ambas y calcula.',
    verdict: 'Decídete. Nombra la causa, su mejor rival y las lecturas que las separan.',
    repair: 'Repárala: elige el remedio, los pasos en orden y por qué ocurrió.',
    verify: 'Deja pasar quince minutos. Toma otra vez tres lecturas y elígelas como prueba.',
  },
  predict: { lower: 'por debajo', same: 'igual', higher: 'por encima' },
  predicted: 'Dijiste: {{said}}. Fue: {{was}}.',
};
