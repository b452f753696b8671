/** How far a long check has come, for a person at a terminal; nothing where standard error goes elsewhere. */
import { fstatSync, writeSync } from 'node:fs';

const STDERR = 2;
/** Often enough to be seen moving, seldom enough to cost nothing. */
const EVERY_MS = 100;

export interface Progress {
  show(done: number, all: number): void;
  end(): void;
}

export function progress(): Progress | undefined {
  if (!fstatSync(STDERR).isCharacterDevice() || process.stderr.isTTY !== true) return undefined;
  let last = performance.now();
  let shown = false;
  return {
    show(done, all) {
      if (performance.now() - last < EVERY_MS) return;
      last = performance.now();
      shown = true;
      writeSync(STDERR, `\r\u001b[K${done} of ${all} files checked`);
    },
    end() {
      if (shown) writeSync(STDERR, '\r\u001b[K');
    },
  };
}
