/**
 * Finding units in text: what the lexer calls after every number, and the look-up of a spelling.
 *
 * Not here: what a unit means (units.ts), reading a whole quantity (read.ts).
 */

import { type AmbiguousUnit, allSpellings, ambiguousUnits, type Unit, units } from './units.ts';

export type UnitLookup =
  | { readonly is: 'unit'; readonly unit: Unit }
  | { readonly is: 'ambiguous'; readonly spelling: string; readonly readings: readonly Unit[] };

/** Spellings by their first two characters (the second is 0 for spellings of one), longest first once used. */
const buckets = new Map<number, Bucket>();
const lookups = new Map<string, UnitLookup>();

interface Bucket {
  readonly spellings: string[];
  sorted: boolean;
}

for (const unit of units) {
  const lookup: UnitLookup = { is: 'unit', unit };
  for (const spelling of allSpellings(unit)) enter(spelling, lookup);
}
for (const ambiguous of ambiguousUnits) {
  for (const spelling of ambiguous.spellings) {
    enter(spelling, { is: 'ambiguous', spelling, readings: readings(ambiguous) });
  }
}

/**
 * The length of the longest unit spelling (ambiguous ones too) that starts at `offset`, 0 if there is
 * none. It must not run on into a longer word: no letter, digit or underscore may follow, and no
 * hyphen, dot, middle dot or slash with a letter behind it. So `20 mm` has a unit, and
 * `20 minutes-late`, `2 rows`, `3 times` and `2 each` have none. Spellings are case-sensitive.
 *
 * `offset` is where the unit must start: the caller skips blanks after the number, on the same line only.
 */
export function matchUnit(text: string, offset: number): number {
  const first = text.charCodeAt(offset);
  const longer = buckets.get(bucketKey(first, text.charCodeAt(offset + 1)));
  const length = longer === undefined ? 0 : longestIn(longer, text, offset);
  if (length > 0) return length;
  const single = buckets.get(bucketKey(first, 0));
  return single === undefined ? 0 : longestIn(single, text, offset);
}

/** The unit with exactly this spelling, the readings of an ambiguous one, or undefined. */
export function unitByText(text: string): UnitLookup | undefined {
  return lookups.get(text);
}

/** The unit with this symbol or spelling when it is one unit, for use in code: `unitNamed('N·m')`. */
export function unitNamed(text: string): Unit | undefined {
  const found = lookups.get(text);
  return found?.is === 'unit' ? found.unit : undefined;
}

/**
 * Units that the text may have been meant as: the same letters in another case or with other signs
 * between them (`nm`, `KPA`, `Ft.Lb`), or a slip that is common in the trade (`kg·m` for `kgf·m`).
 */
export function nearUnits(text: string): readonly Unit[] {
  const slip = slips.get(plain(text));
  if (slip !== undefined) return slip.flatMap((symbol) => unitNamed(symbol) ?? []);
  near ??= byPlainSpelling();
  return near.get(plain(text)) ?? [];
}

/** Written in the trade, not units here; by what is usually meant (common practice, no source). */
const slips = new Map<string, readonly string[]>([
  ['kgm', ['kgf·m']],
  ['kgcm', ['kgf·cm']],
  ['mkg', ['kgf·m']],
  ['mkp', ['kgf·m']],
  ['kgcm2', ['kgf/cm²']],
  ['c', ['°C']],
  ['f', ['°F']],
  ['"', ['in']],
  ['″', ['in']],
  ["''", ['in']],
  ["'", ['ft', 'min']],
  ['′', ['ft', 'min']],
]);

function enter(spelling: string, lookup: UnitLookup): void {
  lookups.set(spelling, lookup);
  const key = bucketKey(spelling.charCodeAt(0), spelling.length === 1 ? 0 : spelling.charCodeAt(1));
  const bucket = buckets.get(key);
  if (bucket === undefined) buckets.set(key, { spellings: [spelling], sorted: false });
  else bucket.spellings.push(spelling);
}

/** NaN, the code behind the end of a text, becomes 0 in a bit operation, as a spelling of one has it. */
function bucketKey(first: number, second: number): number {
  return (first << 16) | second;
}

function longestIn(bucket: Bucket, text: string, offset: number): number {
  if (!bucket.sorted) {
    // Not done when the table is built: a run that only prints its help would pay for it.
    bucket.spellings.sort((a, b) => b.length - a.length);
    bucket.sorted = true;
  }
  for (const spelling of bucket.spellings) {
    if (text.startsWith(spelling, offset) && wordEnds(text, offset + spelling.length)) return spelling.length;
  }
  return 0;
}

/** Built on the first misspelling only. */
let near: Map<string, Unit[]> | undefined;

function byPlainSpelling(): Map<string, Unit[]> {
  const all = new Map<string, Unit[]>();
  for (const unit of units) {
    for (const spelling of allSpellings(unit)) {
      const key = plain(spelling);
      const known = all.get(key);
      if (known === undefined) all.set(key, [unit]);
      else if (!known.includes(unit)) known.push(unit);
    }
  }
  return all;
}

function readings(ambiguous: AmbiguousUnit): readonly Unit[] {
  return ambiguous.readings.flatMap((symbol) => units.find((unit) => unit.symbol === symbol) ?? []);
}

function plain(text: string): string {
  return text.toLowerCase().replace(/[\s·⋅.-]/g, '');
}

function wordEnds(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  if (Number.isNaN(code)) return true;
  if (isWord(text, at)) return false;
  // Hyphen, full stop, slash, middle dot, dot operator: they join only when a letter follows.
  if (code === 0x2d || code === 0x2e || code === 0x2f || code === 0xb7 || code === 0x22c5)
    return !isLetter(text, at + 1);
  return true;
}

function isWord(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return (code >= 0x30 && code <= 0x39) || code === 0x5f || isLetter(text, at);
}

function isLetter(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  if (code < 0x80) return (code >= 0x61 && code <= 0x7a) || (code >= 0x41 && code <= 0x5a);
  return at < text.length && /\p{L}/u.test(text[at]!);
}
