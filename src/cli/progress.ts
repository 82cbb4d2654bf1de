/** Progress of long work on stderr: silent when it is short, one line now and then when it is not. */
import type { Io } from './io';

const FIRST_AFTER_MS = 1500;
const EVERY_MS = 2000;

export interface Progress {
  at(done: number, total?: number, remark?: string): void;
  end(): void;
}

export function startProgress(io: Io, what: string): Progress {
  const started = Date.now();
  let lastSaid = started + FIRST_AFTER_MS - EVERY_MS;
  let said = false;
  const seconds = () => ((Date.now() - started) / 1000).toFixed(0);
  return {
    at(done, total, remark) {
      if (Date.now() - lastSaid < EVERY_MS) return;
      lastSaid = Date.now();
      said = true;
      const share = total === undefined ? `${done} done` : `${done} of ${total}`;
      io.stderr.write(`${what}: ${share}${remark ? ` ${remark}` : ''} after ${seconds()} s\n`);
    },
    end() {
      if (said) io.stderr.write(`${what}: finished after ${seconds()} s\n`);
    },
  };
}
