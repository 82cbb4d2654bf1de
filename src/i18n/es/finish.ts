import type { SameKeys } from '../catalogue';
import type { debrief as debriefSource, finish as finishSource } from '../en/finish';

export const finish: SameKeys<typeof finishSource> = {
  verdict: {
    title: 'Veredicto',
    cause: 'La causa es',
    rival: 'Su mejor rival es',
    rivalWhy: 'La causa que había que descartar.',
    size: '¿Cómo es de grande?',
    cites: 'Lecturas que separan las dos (tres como mucho)',
    citesNone: 'Aún sin lecturas anotadas.',
    commit: 'Dar este veredicto',
    given: 'Tu veredicto: {{cause}}, {{size}}.',
    sentence: '{{cause}}, no {{rival}}.',
  },
  repair: {
    title: 'Reparación',
    remedy: '¿Qué hace?',
    steps: '¿En qué pasos?',
    stepsHelp: 'Toca los pasos en el orden en que los haces. Toca otra vez para quitar uno.',
    root: '¿Por qué ocurrió?',
    rootNone: 'No lo sé',
    lawful:
      'En una máquina real solo personas autorizadas pueden abrir un circuito de refrigerante o un panel con tensión. Primero van las normas locales y las instrucciones del fabricante.',
    commit: 'Hacerlo',
    done: 'Hecho: {{remedy}}.',
    another: 'Reparar otra cosa',
    next: 'Seguir',
    back: 'Atrás',
  },
  verify: {
    title: 'Demostrarlo',
    help: 'Deja que se estabilice y lee otra vez. Elige las notas que demuestran la reparación.',
    none: 'Ninguna lectura desde la reparación.',
    commit: 'Estas lo demuestran: cerrar el trabajo',
    without: 'Cerrar el trabajo sin demostrarlo',
  },
  working: {
    title: 'El examinador trabaja',
    failed: 'El examinador no pudo acabar: {{reason}}',
    again: 'Probar otra vez',
  },
};

export const debrief: SameKeys<typeof debriefSource> = {
  title: 'Revisión',
  machine: 'Volver a la máquina',
  lookAlike: 'Hacer ahora su parecido',
  home: 'Todos los avisos',
  picture: 'La lectura que lo dice',
  expected: '{{cause}} da de {{low}} a {{high}}',
  you: 'leíste',
  more: 'Lo que hay detrás',
  layer: {
    rivals: 'Todas las rivales',
    trail: 'Tu recorrido',
    cycle: 'Presión y entalpía',
    points: 'Puntos',
    runs: 'De dónde salen los números',
  },
  rivals: {
    help: 'Lo que leíste y lo que habría mostrado cada causa.',
    cause: 'Causa',
    belief: 'Encaja, de 100',
    read: 'Leíste',
    expected: 'Mostraría',
    fits: 'encaja',
    misfits: 'no encaja',
  },
  trail: {
    help: 'Tus fichas junto a lo que apoyaban tus lecturas, después de cada lectura.',
    own: 'tú',
    examiner: 'apoyaban las lecturas',
    bitsOf: '{{bits}} bits',
  },
  cycle: {
    help: 'Presión y entalpía del refrigerante, como las calculó el modelo.',
    healthy: 'sana',
    'as-found': 'como la encontraste',
    rival: 'con {{cause}}',
    enthalpy: 'entalpía',
  },
  points: {
    total: '{{total}} de 100',
    capped: 'Limitada de {{uncapped}} a {{cap}} por un acto peligroso.',
    unscored: 'Un estudio: se abrió la última pista y por eso no hay nota.',
    notMeasured: 'sin medir',
    of: '{{points}} de {{weight}}',
    hazards: '{{handled}} de {{met}} peligros se atendieron.',
    prove: 'Acertado, pero sin demostrar. Una lectura más podría haber traído {{points}} puntos.',
    proved: 'Lo demostraste con una lectura más: {{points}} puntos en Causa.',
    hints_one: 'Se abrió {{count}} pista. No cuesta nada.',
    hints_other: 'Se abrieron {{count}} pistas. No cuestan nada.',
    meaning:
      'Esta nota se puede reproducir y responde a pasos de razonamiento. No mide la habilidad con máquinas reales.',
  },
  runs: {
    help: 'Cada número sale de una de estas ejecuciones del modelo.',
    faults: 'averías: {{faults}}',
    healthy: 'sin avería',
  },
  missed: 'La lectura que más habría dicho: {{what}}',
};
