/** Small random changes to texts, as a hand or a bad merge makes them: characters and lines lost, doubled, moved. */
import fc from 'fast-check';

export type Mutation =
  | { kind: 'delete' | 'double'; at: number; length: number }
  | { kind: 'insert' | 'replace'; at: number; text: string }
  | { kind: 'delete line' | 'double line' | 'swap lines'; at: number }
  | { kind: 'move line'; at: number; to: number };

/** Places are shares of the text, so that one mutation fits every text. */
const place = fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true });

const WRITTEN = [
  ...[
    '{',
    '}',
    '"',
    '#',
    ',',
    '.',
    '..',
    '-',
    ':',
    '=',
    '(',
    ')',
    '//',
    '/',
    '±',
    '°',
    '·',
    '\n',
    ' ',
    '\t',
    '\r',
  ],
  ...[
    '0',
    '1',
    '7',
    '1e9',
    '999999999999',
    '-1',
    '0.5',
    '1/0',
    'N·m',
    'mm',
    'x0',
    'x9999',
    '\u0000',
    'é',
    '木',
    '🔧',
  ],
  ...[
    'remove',
    'refit',
    'fit new',
    'when',
    'if',
    'otherwise',
    'repeat until',
    'for each n in 1..9',
    'do',
    'stop',
  ],
  ...[
    'task t',
    'step',
    'choice c: a, b',
    'use',
    'machine m {',
    'procedure p for m {',
    'part',
    'only',
    'not',
    'and',
  ],
  ...[
    'reverse',
    'starts where',
    'ends with',
    'everything off',
    'hold',
    'allow',
    'measure',
    'value v =',
    'continues',
  ],
];

const mutation: fc.Arbitrary<Mutation> = fc.oneof(
  fc.record({
    kind: fc.constantFrom('delete' as const, 'double' as const),
    at: place,
    length: fc.integer({ min: 1, max: 40 }),
  }),
  fc.record({
    kind: fc.constantFrom('insert' as const, 'replace' as const),
    at: place,
    text: fc.constantFrom(...WRITTEN),
  }),
  fc.record({
    kind: fc.constantFrom('delete line' as const, 'double line' as const, 'swap lines' as const),
    at: place,
  }),
  fc.record({ kind: fc.constant('move line' as const), at: place, to: place }),
);

export const mutations: fc.Arbitrary<Mutation[]> = fc.array(mutation, { minLength: 1, maxLength: 6 });

export function mutated(text: string, changes: readonly Mutation[]): string {
  return changes.reduce(change, text);
}

function change(text: string, mutation: Mutation): string {
  const at = Math.floor(mutation.at * text.length);
  switch (mutation.kind) {
    case 'delete':
      return text.slice(0, at) + text.slice(at + mutation.length);
    case 'double':
      return text.slice(0, at + mutation.length) + text.slice(at);
    case 'insert':
      return `${text.slice(0, at)}${mutation.text}${text.slice(at)}`;
    case 'replace':
      return `${text.slice(0, at)}${mutation.text}${text.slice(at + mutation.text.length)}`;
  }
  const lines = text.split('\n');
  const line = Math.floor(mutation.at * lines.length);
  switch (mutation.kind) {
    case 'delete line':
      lines.splice(line, 1);
      break;
    case 'double line':
      lines.splice(line, 0, lines[line]!);
      break;
    case 'swap lines':
      lines.splice(line, 2, ...lines.slice(line, line + 2).reverse());
      break;
    case 'move line':
      lines.splice(Math.floor(mutation.to * lines.length), 0, ...lines.splice(line, 1));
  }
  return lines.join('\n');
}
