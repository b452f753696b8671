/**
 * All mutants of a room, made by Stryker's instrumenter, and a sample of them by a seed. A sample hangs on each mutant's
 * own words (file, what it replaces by what), not on its place, so that it stays nearly the same while the code changes.
 */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Instrumenter, type InstrumentResult } from '@stryker-mutator/instrumenter';
import { sourceFiles } from '../house/imports.ts';

export const ROOT = new URL('../..', import.meta.url).pathname;

type Made = InstrumentResult['mutants'][number];

export interface Mutant {
  /** What it is and where, the same in every run on the same code. */
  key: string;
  file: string;
  /** Counted from 1. */
  line: number;
  mutator: string;
  original: string;
  replacement: string;
  location: Made['location'];
}

const quiet = () => {};
const LOGGER = {
  isTraceEnabled: () => false,
  isDebugEnabled: () => false,
  isInfoEnabled: () => false,
  isWarnEnabled: () => false,
  isErrorEnabled: () => false,
  isFatalEnabled: () => false,
  ...{ trace: quiet, debug: quiet, info: quiet, warn: quiet, error: quiet, fatal: quiet },
};

/** Fields of a check that only explain it: another wording there is no fault of the checker. */
const TEXT_FIELDS = new Set(['title', 'explanation', 'source']);

interface PropertyPath {
  isObjectProperty(): boolean;
  node: { key?: { name?: string } };
}

const OPTIONS = {
  plugins: null,
  excludedMutations: [],
  ignorers: [
    {
      shouldIgnore(path: object) {
        const { node, isObjectProperty } = path as PropertyPath;
        return isObjectProperty.call(path) && TEXT_FIELDS.has(node.key?.name ?? '')
          ? 'explaining text'
          : undefined;
      },
    },
  ],
};

export function instrument(files: Parameters<Instrumenter['instrument']>[0]): Promise<InstrumentResult> {
  return new Instrumenter(LOGGER).instrument(files, OPTIONS);
}

/**
 * Every mutant of the TypeScript files below a folder, without those in explaining texts. Making them takes a minute, so
 * they are kept in a folder, by the content of the files.
 */
export async function mutantsBelow(folder: string, kept: string): Promise<Mutant[]> {
  const files = sourceFiles(ROOT, [folder]);
  const texts = new Map(files.map((name) => [name, readFileSync(join(ROOT, name), 'utf8')]));
  const hash = createHash('sha256')
    .update(JSON.stringify([...texts]))
    .digest('hex');
  const path = join(kept, `mutants-${hash.slice(0, 16)}.json`);
  if (existsSync(path)) return JSON.parse(readFileSync(path, 'utf8')) as Mutant[];
  const { mutants } = await instrument(
    files.map((name) => ({ name, mutate: true, content: texts.get(name)! })),
  );
  const all = mutants
    .filter(({ status }) => status === undefined)
    .map((made) => described(made, texts.get(made.fileName)!));
  mkdirSync(kept, { recursive: true });
  writeFileSync(path, JSON.stringify(all));
  return all;
}

export function described(made: Made, text: string): Mutant {
  const { fileName: file, location, mutatorName: mutator } = made;
  const lines = text.split('\n').slice(location.start.line, location.end.line + 1);
  lines[lines.length - 1] = lines.at(-1)!.slice(0, location.end.column);
  lines[0] = lines[0]!.slice(location.start.column);
  const replacement = made.replacement ?? '';
  const { start, end } = location;
  return {
    key: `${file}:${start.line + 1}:${start.column}-${end.line + 1}:${end.column} ${mutator} ${replacement}`,
    ...{ file, line: start.line + 1, mutator, original: lines.join('\n'), replacement, location },
  };
}

export function sampled(mutants: readonly Mutant[], count: number, seed: number): Mutant[] {
  const alike = new Map<string, number>();
  return mutants
    .map((mutant) => {
      const words = [mutant.file, mutant.mutator, mutant.original, mutant.replacement].join('\n');
      const before = alike.get(words) ?? 0;
      alike.set(words, before + 1);
      return { mutant, by: createHash('sha256').update(`${seed}\n${words}\n${before}`).digest('hex') };
    })
    .sort((a, b) => (a.by < b.by ? -1 : 1))
    .slice(0, count)
    .map(({ mutant }) => mutant);
}
