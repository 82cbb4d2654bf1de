/** The one generator of seedrandom that the core uses; the package's own types leave it out. */
declare module 'seedrandom/lib/alea.js' {
  export default function alea(seed: string): { (): number; int32(): number; double(): number };
}
