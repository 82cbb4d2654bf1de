/** From a wrong answer to the slip that explains it: the sum is worked again with each known slip made on purpose. */
import { STANDARD_ATMOSPHERE } from '../instruments';
import type { SumSlip } from './state';
import { type Lines, type SumTask, work } from './sumWork';

export interface WrongAnswer {
  /** the trainee's own saturation temperature, K, or null where only the answer was given */
  readonly own: number | null;
  readonly answer: number;
  /** the saturation temperature was read off rightly */
  readonly readOff: boolean;
  readonly expected: number;
  readonly allowed: number;
  /** tolerance of a saturation temperature, K */
  readonly line: number;
}

/** Slips in getting from a pressure to a saturation temperature or an absolute pressure. */
function slippedLines(task: SumTask): readonly (readonly [SumSlip, Lines])[] {
  const { line, atmosphere } = task;
  const other = line === 'dew' ? 'bubble' : 'dew';
  const found: (readonly [SumSlip, Lines])[] = [];
  if (task.pressure?.gauge) {
    found.push(['gauge-for-absolute', { line, added: 0 }]);
    found.push(['altitude', { line, added: STANDARD_ATMOSPHERE }]);
  }
  if (line) found.push(['wrong-saturation-line', { line: other, added: atmosphere }]);
  return found;
}

/** A difference turned between the scales the wrong way: not turned, turned twice, or moved by the scale's zero. */
function scaleSlips(difference: number): readonly number[] {
  return [difference * 1.8, difference / 1.8, (difference - 32) / 1.8, difference / 1.8 + 32, difference + 273.15];
}

export function findSlip(task: SumTask, wrong: WrongAnswer): SumSlip {
  const { own, answer, readOff, expected, allowed } = wrong;
  if (own !== null && !readOff) return lineSlip(task, own, wrong.line) ?? 'saturation-misread';

  const near = (value: number, tolerance: number) =>
    Math.abs(answer - value) <= tolerance && Math.abs(value - expected) > tolerance;
  if (own === null && task.pressure) {
    for (const [slip, lines] of slippedLines(task)) {
      const worked = work(task, lines);
      if (worked && near(worked.result, allowed)) return slip;
    }
  }
  const isDifference = task.temperatures.length > 0;
  if (isDifference && near(-expected, allowed)) return 'reversed';
  if (isDifference && scaleSlips(expected).some((value) => near(value, allowed))) return 'difference-as-temperature';
  return 'arithmetic';
}

function lineSlip(task: SumTask, own: number, tolerance: number): SumSlip | null {
  for (const [slip, lines] of slippedLines(task)) {
    const worked = work(task, lines)?.saturation;
    if (worked != null && Math.abs(own - worked) <= tolerance) return slip;
  }
  return null;
}
