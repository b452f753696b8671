/**
 * What a run does when it has much to do. V8 compiles a function anew, at length, once it has run so much (67,584 in Node
 * 20); a check is over before that pays. What is young in the heap is kept small, which costs next to nothing and saves
 * some 20 MB (see server/heap.ts). A short run is not made longer by loading the module. Called when the parts of the
 * program are loaded: code that is stored beside a part fits only as long as the options are as they were.
 */
import { statSync } from 'node:fs';

/** Bytes of text from which it pays, */
const MUCH = 40_000;
/** and from which a run is so long that what V8 compiles soon pays as well. */
const VERY_MUCH = 4_000_000;
/** V8 complains of an option that it does not know: only where it is known to be there. */
const KNOWN_TO = 24;

export function prepareFor(files: readonly string[]): void {
  if (Number.parseInt(process.versions.node, 10) > KNOWN_TO) return;
  const bytes = bytesOf(files);
  if (bytes <= MUCH) return;
  // Not imported: that would load it for short runs, too.
  const { setFlagsFromString } = process.getBuiltinModule('node:v8');
  if (bytes <= VERY_MUCH) setFlagsFromString('--interrupt-budget=500000');
  setFlagsFromString('--semi-space-growth-factor=1');
}

/** No more are counted than matter. */
function bytesOf(files: readonly string[]): number {
  let bytes = 0;
  for (const file of files) {
    bytes += statSync(file, { throwIfNoEntry: false })?.size ?? 0;
    if (bytes > VERY_MUCH) break;
  }
  return bytes;
}
