/**
 * An outdoor module seen from its side: coil on the left, fan on top, compressor behind the suction pipe. With two pipes its
 * reversing valve turns the gas pipe; with three it turns the coil alone, and hot gas goes out by a pipe of its own.
 */
import { round } from './rooms';
import type { DrawnAir, DrawnPart, DrawnPath, DrawnPipe } from './types';

/** Outside measures of a module, m. */
export const MODULE = { w: 3.4, h: 3.5 } as const;

const COPPER = { liquid: 0.0095, gas: 0.0222 } as const;

export interface ModuleDrawn {
  readonly parts: readonly DrawnPart[];
  readonly pipes: readonly DrawnPipe[];
  readonly air: readonly DrawnAir[];
}

export interface ModuleSpot {
  readonly id: string;
  /** upper left corner of its casing */
  readonly x: number;
  readonly y: number;
  /** share of the machine's flow that its compressor moves */
  readonly share: number;
}

/** Ends of its pipes relative to its corner; the plant's mains begin there. */
export const MODULE_ENDS = {
  liquid: [2.3, 3.22],
  gas: [3.1, 2.5],
  suction: [1.4, 2.75],
  hot: [2.35, 1.95],
} as const;

/** Casing and what is in it, but for the pipes that differ between two and three pipes. */
function frame({ id, x, y }: ModuleSpot): DrawnPart[] {
  const part = (name: string, kind: DrawnPart['kind'], dx: number, dy: number, w: number, h: number): DrawnPart => ({
    id: `${name}@${id}`,
    kind,
    x: round(x + dx),
    y: round(y + dy),
    w,
    h,
  });
  return [
    part('slab', 'slab', -0.1, MODULE.h, MODULE.w + 0.2, 0.15),
    part('casing', 'casing', 0, 0, MODULE.w, MODULE.h),
    { ...part('coil', 'coil', 0.1, 0.58, 0.62, 2.3), role: 'condenser', of: id, inlet: 'top' },
    { ...part('fan', 'fan', 0.75, 0.06, 1.7, 0.24), role: 'condenser', of: id },
    part('compressor', 'compressor', 1.85, 2.1, 0.74, 0.95),
    part('box', 'control-box', 2.7, 0.25, 0.6, 0.9),
    part('terminals', 'terminals', 2.82, 0.37, 0.36, 0.2),
    part('reversing-valve', 'reversing-valve', 1.5, 0.64, 0.8, 0.26),
    part('outdoor-valve', 'electronic-valve', 0.74, 2.88, 0.3, 0.38),
    part('exchanger', 'exchanger', 1.6, 3.1, 0.5, 0.24),
  ];
}

export function moduleOf(spot: ModuleSpot, threePipes: boolean): ModuleDrawn {
  const { id, x, y, share } = spot;
  const at = (dx: number, dy: number): readonly [number, number] => [round(x + dx), round(y + dy)];
  const whole = share === 1 ? {} : { share };
  const pipe = (name: string, from: DrawnPipe['from'], to: DrawnPipe['to'], points: DrawnPath, diameter: number) => ({
    id: `${name}@${id}`,
    from,
    to,
    points,
    diameter,
  });
  const own = { carries: { of: [id] } };
  const pipes: DrawnPipe[] = [
    {
      ...pipe(
        'discharge',
        'compressor-out',
        'compressor-out',
        [at(2.35, 2.1), at(2.35, 0.48), at(1.9, 0.48), at(1.9, 0.64)],
        COPPER.gas,
      ),
      ...whole,
    },
    {
      ...pipe(
        'coil-gas',
        `gas@${id}`,
        `gas@${id}`,
        [at(1.66, 0.9), at(1.66, 1.06), at(0.95, 1.06), at(0.95, 0.72), at(0.72, 0.72)],
        COPPER.gas,
      ),
      ...own,
    },
    {
      ...pipe(
        'coil-liquid',
        `liquid@${id}`,
        'liquid-port',
        [at(0.72, 2.76), at(0.89, 2.76), at(0.89, 3.22), at(...MODULE_ENDS.liquid)],
        COPPER.liquid,
      ),
      ...own,
    },
  ];
  if (threePipes) {
    pipes.push(
      {
        ...pipe(
          'coil-suction',
          'suction-port',
          'suction-port',
          [at(1.9, 0.9), at(1.9, 1.24), at(1.4, 1.24), at(1.4, 2.75)],
          COPPER.gas,
        ),
        carries: { of: [id], only: 'heating' },
      },
      { ...pipe('inlet', 'suction-port', 'compressor-in', [at(1.4, 2.75), at(1.85, 2.75)], COPPER.gas), ...whole },
    );
  } else {
    pipes.push({
      ...pipe(
        'inlet',
        'suction-port',
        'compressor-in',
        [at(1.9, 0.9), at(1.9, 1.24), at(1.4, 1.24), at(1.4, 2.75), at(1.85, 2.75)],
        COPPER.gas,
      ),
      ...whole,
    });
  }
  const air = (name: string, stage: DrawnAir['stage'], points: DrawnPath): DrawnAir => ({
    id: `${name}@${id}`,
    role: 'condenser',
    of: id,
    stage,
    points,
  });
  return {
    parts: frame(spot),
    pipes,
    air: [
      air('in-high', 'entering', [at(-0.6, 1.2), at(0.06, 1.2)]),
      air('in-low', 'entering', [at(-0.6, 2.3), at(0.06, 2.3)]),
      air('out-left', 'leaving', [at(1.15, 0), at(0.95, -0.85)]),
      air('out-right', 'leaving', [at(2.05, 0), at(2.25, -0.85)]),
    ],
  };
}
