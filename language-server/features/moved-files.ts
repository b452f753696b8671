/** The `use` lines that have to change when files are moved or renamed, so that they still find what they found. */
import type { Place } from '../report/finding.ts';
import { relative, type View } from './view.ts';

export interface Moved {
  /** Paths of a file, or of a folder with all that is in it. */
  from: string;
  to: string;
}

/** Edits in the files as they are called before the move. `paths`: every file that may name a moved one. */
export function movedUses(
  view: View,
  moved: readonly Moved[],
  paths: readonly string[],
): (Place & { text: string })[] {
  const place = (path: string): string => {
    for (const { from, to } of moved) {
      if (path === from) return to;
      if (path.startsWith(`${from}/`)) return to + path.slice(from.length);
    }
    return path;
  };
  const edits: (Place & { text: string })[] = [];
  const all = new Set([...paths, ...view.known()]);
  for (const path of all) {
    const file = view.file(path);
    for (const item of file?.parsed.tree.items ?? []) {
      if (item.kind !== 'use' || !item.path || !file) continue;
      const target = view.host.resolve(path, item.path.value);
      const [here, there] = [place(path), place(target)];
      if (here === path && there === target) continue;
      // What nobody has is not made right by a guess.
      if (!view.file(target)) continue;
      const text = `"${relative(here, there)}"`;
      if (text === file.text.slice(item.path.start, item.path.end)) continue;
      edits.push({ file: path, start: item.path.start, end: item.path.end, text });
    }
  }
  return edits;
}
