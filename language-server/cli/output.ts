/**
 * How commands speak: results to standard output, complaints to standard error, and an exit code. Writes
 * straight to the descriptors, because opening Node's streams costs more than checking a short procedure.
 */
import { fstatSync, statSync, writeSync } from 'node:fs';

/** 0 nothing to report; 1 findings; 2 the work could not be done. */
export type ExitCode = 0 | 1 | 2;

const STDOUT = 1;
const STDERR = 2;

export function print(text: string): void {
  write(STDOUT, `${text}\n`);
}

/** A text that has its own line ends. */
export function printRaw(text: string): void {
  if (text !== '') write(STDOUT, text);
}

/** A complaint names what could not be done and what to do about it. */
export function complain(text: string): void {
  write(STDERR, `dowel: ${text}\n`);
}

/** Whether a person sees standard output. */
export function isTerminal(): boolean {
  // Only a character device can be a terminal, and asking this is cheap; Node's streams take longer than a whole check.
  const stat = fstatSync(STDOUT);
  if (!stat.isCharacterDevice() || stat.rdev === statSync('/dev/null', { throwIfNoEntry: false })?.rdev)
    return false;
  return process.stdout.isTTY === true;
}

function write(descriptor: number, text: string): void {
  const bytes = Buffer.from(text);
  for (let at = 0; at < bytes.length; ) {
    try {
      at += writeSync(descriptor, bytes, at);
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code;
      // The reader has seen enough (`dowel check … | head`).
      if (code === 'EPIPE') return;
      if (code !== 'EAGAIN') throw error;
      // A pipe that takes no more for now: wait a moment for its reader.
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5);
    }
  }
}
