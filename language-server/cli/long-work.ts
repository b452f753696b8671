/**
 * What a run does when it has much to do. V8 compiles a function anew, at length, once it has run so much (67,584 in Node
 * 20); a check is over before that pays. What is young in the heap is kept small, which costs next to nothing and saves
 * some 20 MB (see server/heap.ts). A short run is not made longer by loading the module. Called when the parts of the
 * program are loaded: code that is stored beside a part fits only as long as the options are as they were.
 */
import { statSync } from 'node:fs';

/** Bytes of text from which it pays. */
const MUCH = 40_000;
/** V8 complains of an option that it does not know: only where it is known to be there. */
const KNOWN_TO = 24;

export function prepareFor(files: readonly string[]): void {
  if (Number.parseInt(process.versions.node, 10) > KNOWN_TO || !isMuch(files)) return;
  // Not imported: that would load it for short runs, too.
  const { setFlagsFromString } = process.getBuiltinModule('node:v8');
  setFlagsFromString('--interrupt-budget=500000');
  setFlagsFromString('--semi-space-growth-factor=1');
}

function isMuch(files: readonly string[]): boolean {
  let bytes = 0;
  for (const file of files) {
    bytes += statSync(file, { throwIfNoEntry: false })?.size ?? 0;
    if (bytes > MUCH) return true;
  }
  return false;
}
