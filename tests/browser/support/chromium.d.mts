export interface FoundChromium {
  executablePath: string;
  /** What its process needs besides our own environment. */
  env: Record<string, string>;
  /** In words, for messages. */
  from: string;
}
export function findChromium(): Promise<FoundChromium>;
