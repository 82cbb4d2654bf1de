/** Which of the three layouts fits: `wide` has room for two sheets beside the machine, `narrow` is a phone. */
import { useEffect, useState } from 'preact/hooks';

export type Width = 'wide' | 'middle' | 'narrow';

const WIDE = matchMedia('(min-width: 1260px)');
const MIDDLE = matchMedia('(min-width: 760px)');

const now = (): Width => (WIDE.matches ? 'wide' : MIDDLE.matches ? 'middle' : 'narrow');

export function useWidth(): Width {
  const [width, setWidth] = useState(now);
  useEffect(() => {
    const follow = () => setWidth(now());
    WIDE.addEventListener('change', follow);
    MIDDLE.addEventListener('change', follow);
    return () => {
      WIDE.removeEventListener('change', follow);
      MIDDLE.removeEventListener('change', follow);
    };
  }, []);
  return width;
}
