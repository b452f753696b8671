/** Looking for something by a piece of its name or title, in every file. */
import type { OutlineItem } from './outline.ts';
import { outline } from './outline.ts';
import type { View } from './view.ts';

export interface FoundSymbol {
  path: string;
  item: OutlineItem;
  /** What it belongs to: the machine or procedure. */
  within?: string;
}

/** So many are enough: the author types on. */
const MOST = 400;

export function findSymbols(view: View, paths: readonly string[], query: string): FoundSymbol[] {
  const wanted = query.toLowerCase();
  const found: FoundSymbol[] = [];
  for (const path of paths) {
    const file = view.file(path);
    if (!file) continue;
    const look = (items: readonly OutlineItem[], within: string | undefined): void => {
      for (const item of items) {
        if (found.length >= MOST) return;
        const named = item.kind !== 'step';
        if (named && (letters(item.name, wanted) || item.detail.toLowerCase().includes(wanted)))
          found.push({ path, item, ...(within === undefined ? {} : { within }) });
        look(item.children, item.kind === 'machine' || item.kind === 'procedure' ? item.name : within);
      }
    };
    look(outline(file.parsed.tree), undefined);
  }
  return found;
}

/** The letters of the query stand in the name in this order (`hbo` finds `head-bolts`). */
function letters(name: string, wanted: string): boolean {
  let at = 0;
  for (const letter of name.toLowerCase()) if (letter === wanted[at]) at++;
  return at === wanted.length;
}
