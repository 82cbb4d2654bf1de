export { describeBench, type Sentence, sentenceText } from './describe';
export { mountBench } from './mount';
export type {
  BenchHandle,
  BenchOptions,
  BenchWords,
  Light,
  Motion,
  PlacePosition,
  PlaceTag,
  RendererChoice,
  ViewId,
} from './types';
export { benchWords } from './words';
