/**
 * A name changed everywhere that it stands for the same, `{name}` in sentences included. Refused with a reason
 * where the new name is none, is taken, or would make some text mean something else: what comes out is read
 * again before it is given.
 */
import type { Span } from '../../grammar/syntax/tree.ts';
import type { Place } from '../report/finding.ts';
import {
  type Meaning,
  type MeaningKind,
  meaningAt,
  occurrencesOf,
  placesOfMeaning,
  sameMeaning,
} from './meaning.ts';
import type { View } from './view.ts';
import { spliced } from './write-out-edits.ts';

export type Renamed =
  | { ok: true; edits: (Place & { text: string })[] }
  /** One sentence that says why not. */
  | { ok: false; reason: string };

const NAME = /^\p{L}[\p{L}\p{M}\p{N}]*(?:-[\p{L}\p{M}\p{N}]+)*$/u;
/** Positions and values may be numbers. */
const WORD = /^[\p{L}\p{N}][\p{L}\p{M}\p{N}]*(?:-[\p{L}\p{M}\p{N}]+)*$/u;

/** The name at an offset, where it can be renamed. */
export function renameableAt(
  view: View,
  path: string,
  offset: number,
): { ok: true; at: Span; name: string } | { ok: false; reason: string } {
  const named = meaningAt(view, path, offset);
  if (named) {
    const { start, end, text } = named.occurrence;
    return { ok: true, at: { start, end }, name: text };
  }
  const file = view.file(path);
  const word = file && occurrencesOf(file).find(({ start, end }) => start <= offset && offset <= end);
  return {
    ok: false,
    reason: word
      ? `Nothing declares “${word.text}”, so it cannot be renamed: it is a word of the language, or a slip.`
      : 'Only names can be renamed: put the cursor on one.',
  };
}

/** `paths`: the files in which the name may stand; those that use a file which declares it should be among them. */
export function rename(
  view: View,
  path: string,
  offset: number,
  to: string,
  paths: readonly string[],
): Renamed {
  const named = meaningAt(view, path, offset);
  if (!named) {
    const { ok, ...rest } = renameableAt(view, path, offset);
    return ok ? { ok: false, reason: 'Only names can be renamed.' } : { ok, ...(rest as { reason: string }) };
  }
  const { meaning } = named;
  const wrong = invalid(to, meaning.kind);
  if (wrong) return { ok: false, reason: wrong };
  const hidden = LOCAL.has(meaning.kind) && hides(view, path, offset, to);
  if (hidden) return { ok: false, reason: `“${to}” is the name of ${hidden} of the machine already.` };
  const places = placesOfMeaning(view, [path, ...paths], meaning);
  const edits = places.map((place) => ({ ...place, text: to }));
  if (to === meaning.name) return { ok: true, edits: [] };
  const collision = collides(view, edits, meaning, to, { path, start: named.occurrence.start });
  return collision ? { ok: false, reason: collision } : { ok: true, edits };
}

const LOCAL: ReadonlySet<MeaningKind> = new Set([
  'task',
  'choice',
  'measured value',
  'loop variable',
  'value',
]);

/** What of the machine a local name would hide. */
function hides(view: View, path: string, offset: number, name: string): string | undefined {
  const scene = view.sceneAt(path, offset);
  if (!scene?.procedure) return undefined;
  const { model } = scene;
  if (model.byName.has(name)) return `a ${model.byName.get(name)!.type}`;
  if (model.values.has(name)) return 'a value';
  if (model.variants.has(name)) return 'a variant';
  return model.tables.has(name) ? 'a table' : undefined;
}

function invalid(name: string, kind: MeaningKind): string | undefined {
  const pattern = kind === 'position' || kind === 'variant value' || kind === 'choice value' ? WORD : NAME;
  if (pattern.test(name)) return undefined;
  if (name.includes('_')) return `“${name}” has an underscore; the words of a name are joined by hyphens.`;
  if (/\s/.test(name.trim()))
    return `“${name}” has a blank; the words of a name are joined by hyphens: “${name.trim().replaceAll(/\s+/g, '-')}”.`;
  if (/^\p{N}/u.test(name)) return `A name begins with a letter; “${name}” begins with a digit.`;
  return `“${name}” is not a name: a name is letters and digits, and words are joined by hyphens.`;
}

/** Why the changed texts would not say the same; undefined where they do. */
function collides(
  view: View,
  edits: readonly (Place & { text: string })[],
  meaning: Meaning,
  to: string,
  place: { path: string; start: number },
): string | undefined {
  let tried = view;
  const files = [...new Set(edits.map(({ file }) => file))];
  for (const file of files) {
    const text = view.file(file)!.text;
    const own = edits.filter((edit) => edit.file === file);
    tried = tried.trying(file, spliced(text, { start: 0, end: text.length }, own));
  }
  // Files that see a changed one may use the new name already.
  const others = [...new Set([...files, ...view.known()])];
  const wanted = new Map<string, Set<number>>();
  for (const file of files) {
    const starts = new Set<number>();
    let shift = 0;
    for (const edit of edits.filter((one) => one.file === file).sort((a, b) => a.start - b.start)) {
      starts.add(edit.start + shift);
      shift += to.length - (edit.end - edit.start);
    }
    wanted.set(file, starts);
    const before = view.file(file)!.parsed.problems.length;
    const after = tried.file(file)?.parsed.problems ?? [];
    if (after.length > before)
      return `“${to}” is a word of the language where this name stands: ${after[0]!.message}`;
  }
  const before = edits.filter(({ file, start }) => file === place.path && start < place.start).length;
  const start = [...(wanted.get(place.path) ?? [])][before] ?? 0;
  const now = meaningAt(tried, place.path, start)?.meaning;
  if (!now) return `Called “${to}”, it would no longer be found where it is named.`;
  const places = placesOfMeaning(tried, others, now);
  const stray = places.find((place) => !wanted.get(place.file)?.has(place.start));
  if (stray || now.declared.length !== meaning.declared.length) {
    const what = takenBy(view, to, files, now) ?? 'something else';
    return `“${to}” is the name of ${what} already.`;
  }
  const lost = files.some((file) =>
    [...wanted.get(file)!].some((at) => !places.some((place) => place.file === file && place.start === at)),
  );
  return lost ? `“${to}” would mean something else where this name stands.` : undefined;
}

function takenBy(view: View, name: string, files: readonly string[], now: Meaning): string | undefined {
  for (const path of files) {
    const file = view.file(path)!;
    const other = occurrencesOf(file).find((one) => one.text === name);
    const meaning = other && meaningAt(view, path, other.start)?.meaning;
    if (meaning && !sameMeaning(meaning, now)) return a(meaning.kind);
    if (meaning) return a(meaning.kind);
  }
  return undefined;
}

function a(kind: MeaningKind): string {
  return kind === 'thing' ? 'another thing' : `a ${kind}`;
}
