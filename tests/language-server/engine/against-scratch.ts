/** Whole folders of texts, edited at random, checked by the engine and from scratch. */
import { readFileSync } from 'node:fs';
import { dirname, relative } from 'node:path';
import { checkProject } from '../../../language-server/checks/check-project.ts';
import { Engine } from '../../../language-server/engine/engine.ts';
import { memoryHost } from '../../../language-server/project/project.ts';
import type { Finding } from '../../../language-server/report/finding.ts';
import { applied, numbersFrom, randomEdit } from './random-edits.ts';

/** A file with those that it may use, by their paths from `root`. */
export type Folder = Record<string, string>;

/** The files by the scenario that they belong to: the folder below `root`. */
export function foldersOf(root: string, files: readonly string[]): Folder[] {
  const folders = new Map<string, Folder>();
  for (const file of files) {
    const path = relative(root, file);
    const top = path.includes('/') ? path.split('/')[0]! : dirname(path);
    const folder = folders.get(top) ?? {};
    folders.set(top, folder);
    folder[path] = readFileSync(file, 'utf8');
  }
  return [...folders.values()];
}

export interface Slip {
  seed: number;
  turn: number;
  path: string;
  engine: Finding[];
  scratch: Finding[];
}

export interface Ran {
  edits: number;
  slip?: Slip;
  /** Parts whose findings were taken over. */
  procedures: number;
  texts: number;
}

/** Small folders are drawn more often than large ones, as they cost less. */
function drawn(folders: readonly Folder[], next: () => number): number {
  const shares = folders.map((folder) => 1 / (500 + Object.values(folder).join('').length));
  let left = next() * shares.reduce((sum, share) => sum + share, 0);
  for (const [index, share] of shares.entries()) {
    left -= share;
    if (left < 0) return index;
  }
  return 0;
}

/** An engine for each folder with all its files open and checked. */
export function opened(folders: readonly Folder[]): Engine[] {
  return folders.map((files) => {
    const engine = new Engine(memoryHost(files));
    for (const path of Object.keys(files)) engine.put(path, files[path]!);
    for (const path of Object.keys(files)) engine.check(path);
    return engine;
  });
}

/** So many edits go by before a text is put back to what it was: long rows of edits leave nothing right. */
const ROW = 8;

/** Edits the files of one folder after another and compares what is found in the edited file and in another one. */
export function run(folders: readonly Folder[], seed: number, edits: number, kept?: Engine[]): Ran {
  const next = numbersFrom(seed);
  let done = 0;
  let procedures = 0;
  let texts = 0;
  while (done < edits) {
    const index = drawn(folders, next);
    const files = { ...folders[index]! };
    const engine = kept?.[index] ?? new Engine(memoryHost(files));
    if (kept) kept[index] = engine;
    const paths = Object.keys(files);
    for (const path of paths) engine.put(path, files[path]!);
    const edited = paths[Math.floor(next() * paths.length)]!;
    const other = paths[Math.floor(next() * paths.length)]!;
    const before = { ...engine.work };
    for (let turn = 0; turn < ROW && done < edits; turn++, done++) {
      const edit = randomEdit(files[edited]!, next);
      files[edited] = applied(files[edited]!, edit);
      engine.edit(edited, edit.start, edit.end, edit.text);
      for (const path of turn % 4 === 0 ? [edited, other] : [edited]) {
        const found = engine.plain(engine.check(path)).filter(({ file }) => file === path);
        const scratch = checkProject(memoryHost(files), [path]).findings.filter(({ file }) => file === path);
        if (JSON.stringify(found) !== JSON.stringify(scratch))
          return { edits: done, slip: { seed, turn, path, engine: found, scratch }, procedures, texts };
      }
    }
    procedures += engine.work.procedures - before.procedures;
    texts += engine.work.texts - before.texts;
  }
  return { edits: done, procedures, texts };
}
