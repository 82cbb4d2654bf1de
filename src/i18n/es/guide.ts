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
    take: 'Lleva un instrumento a su lugar: {{instrument}}, {{place}}. La lectura se anota sola.',
    superheat:
      '¿Cuánto más caliente está la línea de aspiración que el refrigerante que hierve? Eso es el recalentamiento. Elígelo en el cuaderno, lee la regla y resta.',
    subcooling:
      '¿Cuánto más fría está la línea de líquido que el refrigerante que condensa? Eso es el subenfriamiento. Elígelo en el cuaderno, lee la regla y resta.',
    approach:
      '¿Cuánto más caliente está el líquido que el aire que lo enfría? Busca «líquido sobre aire exterior» entre los otros cálculos y resta.',
    'line-difference':
      '¿Pierde calor la línea de líquido en el filtro secador? Entre los otros cálculos elige «diferencia en el secador» y resta.',
    'air-drop': '¿Cuánto más frío sale el aire? Busca «salto del aire interior» entre los otros cálculos y resta.',
    'air-rise':
      '¿Cuánto se calienta el aire exterior? Busca «salto del aire exterior» entre los otros cálculos y resta.',
    twin: 'Junto a cada número está la misma lectura en una gemela sana. ¿Cuál no es como la de la gemela?',
    stake: 'Tres causas podrían hacer esto. Veinte fichas son tu confianza. Mueve algunas y declara.',
    predict:
      'Elige una lectura más que separe tus dos causas en cabeza. Antes de tomarla: ¿quedará por debajo de la gemela, será igual o quedará por encima?',
    telling: 'Ahora tómala.',
    verdict: 'Decídete. Nombra la causa, su mejor rival y las lecturas que las separan.',
    repair: 'Repárala: elige el remedio, los pasos en orden y por qué ocurrió.',
    verify: 'Deja pasar quince minutos. Toma otra vez tres lecturas y elígelas como prueba.',
  },
  missing: 'Falta leer: {{places}}.',
  predict: { lower: 'por debajo', same: 'igual', higher: 'por encima' },
  predicted: 'Dijiste: {{said}}. Fue: {{was}}.',
};
