import { describe } from 'vitest';
import { qualify } from './support';

describe('qualification', () => {
  qualify('multiSplit');
});
