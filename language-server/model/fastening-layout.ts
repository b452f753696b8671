/** The `layout` clause of a machine file as a layout to reckon with. */
import type { Layout as TypedLayout } from '../../grammar/syntax/tree.ts';
import { type Corner, type Layout, rowsOf } from '../fastening/index.ts';

/** Where `count` positions lie; undefined where the corner of #1 is said in words that name none. */
export function layoutFrom(typed: TypedLayout, count: number): Layout | undefined {
  switch (typed.kind) {
    case 'circle':
      return { kind: 'circle', count };
    case 'rows': {
      if (!typed.first) return rowsOf(typed.rows, typed.of);
      const firstAt = cornerOf(typed.first.value);
      if (!firstAt) return undefined;
      const counts = Array.from({ length: Math.min(typed.rows, count) }, () => typed.of);
      return { kind: 'rows', counts, firstAt };
    }
    case 'places':
      return {
        kind: 'positions',
        places: typed.places.map(({ x, y }, index) => ({
          x: Number(x),
          y: Number(y),
          name: `#${index + 1}`,
        })),
      };
  }
}

/** `top left`, `the lower right corner`; undefined for words that name no corner. */
function cornerOf(words: string): Corner | undefined {
  const top = /\b(top|upper)\b/i.test(words);
  const bottom = /\b(bottom|lower)\b/i.test(words);
  const left = /\bleft\b/i.test(words);
  const right = /\bright\b/i.test(words);
  if (top === bottom || left === right) return undefined;
  return `${top ? 'top' : 'bottom'}-${left ? 'left' : 'right'}`;
}
