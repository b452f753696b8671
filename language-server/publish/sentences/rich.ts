/** Sentences put together from pieces that keep what they refer to. */
import { plainText, type Rich, type Run } from '../document/types.ts';
import { capital } from '../words/words.ts';

export function text(value: string): Rich {
  return value === '' ? [] : [{ kind: 'text', text: value }];
}

/** A message whose places `{name}` are filled with pieces. A place that has no piece is left out. */
export function patterned(pattern: string, slots: Readonly<Record<string, Rich | string | undefined>>): Rich {
  const result: Rich = [];
  let at = 0;
  for (const match of pattern.matchAll(/\{(\w+)\}/g)) {
    result.push(...text(pattern.slice(at, match.index)));
    at = match.index + match[0].length;
    const slot = slots[match[1]!];
    if (slot !== undefined) result.push(...(typeof slot === 'string' ? text(slot) : slot));
  }
  result.push(...text(pattern.slice(at)));
  return joined(result);
}

/** Pieces with a space between, those that are empty left out. */
export function spaced(...pieces: readonly (Rich | undefined)[]): Rich {
  const result: Rich = [];
  for (const piece of pieces) {
    if (!piece || piece.length === 0) continue;
    const glue = /^[,;.:]/.test(piece[0]!.text) ? '' : ' ';
    if (result.length > 0) result.push(...text(glue));
    result.push(...piece);
  }
  return joined(result);
}

/** `a`, `a and b`, `a, b and c` */
export function listed(pieces: readonly Rich[], last = ' and '): Rich {
  return joined(
    pieces.flatMap((piece, index) => {
      const glue = index === 0 ? '' : index === pieces.length - 1 ? last : ', ';
      return [...text(glue), ...piece];
    }),
  );
}

/** With a capital at the front and a full stop at the end, where it has none. */
export function sentence(rich: Rich): Rich {
  const [first, ...rest] = joined(rich);
  if (!first) return [];
  const begun: Rich = [{ ...first, text: capital(first.text) }, ...rest];
  return /[.!?:]["”’)]?$/.test(plainText(begun)) ? begun : joined([...begun, ...text('.')]);
}

/** Texts that stand side by side made one. */
function joined(rich: Rich): Rich {
  const result: Run[] = [];
  for (const run of rich) {
    const last = result.at(-1);
    if (run.text === '') continue;
    if (run.kind === 'text' && last?.kind === 'text')
      result[result.length - 1] = { kind: 'text', text: last.text + run.text };
    else result.push(run);
  }
  return result;
}
