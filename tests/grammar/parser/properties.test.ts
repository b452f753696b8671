/** What holds of every text, tried on cut and mutated samples with a fixed seed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from '../../../grammar/parser/parse.ts';
import type { ParsedFile } from '../../../grammar/syntax/tree.ts';
import { TAIL_WORDS } from '../../../grammar/tokens/words.ts';
import { SAMPLE_MACHINE, SAMPLE_PROCEDURE, SAMPLE_RULES } from '../../support/dowel-samples.ts';
import { outline, visit } from '../../support/trees.ts';

const SEED = 20_261_102;
const SAMPLES = [SAMPLE_MACHINE, SAMPLE_PROCEDURE, SAMPLE_RULES];

/** Tokens, comments and the blanks between them make up the text. */
function rebuilt(text: string, { tokens, comments }: ParsedFile): string {
  let result = '';
  let at = 0;
  for (const { start, end } of [...tokens, ...comments].sort((a, b) => a.start - b.start)) {
    const between = text.slice(at, start);
    if (start < at || /\S/u.test(between.replace(/[\u200b\u0085]/g, ''))) return `broken at ${at}`;
    result += between + text.slice(start, end);
    at = end;
  }
  return result + text.slice(at);
}

/** Ranges that do not lie in their parent's, or lie the wrong way round. */
function misplaced(text: string, parsed: ParsedFile): string[] {
  return visit(parsed.tree)
    .filter(
      ({ node, parent }) =>
        node.start > node.end ||
        node.end > text.length ||
        (parent !== undefined && (node.start < parent.start || node.end > parent.end)),
    )
    .map(
      ({ path, node, parent }) => `${path} ${node.start}..${node.end} in ${parent?.start}..${parent?.end}`,
    );
}

/** Items, statements, clauses and tails stand one behind the other. */
function disordered(parsed: ParsedFile): string[] {
  const found: string[] = [];
  for (const { node, path } of visit(parsed.tree)) {
    for (const [key, value] of Object.entries(node)) {
      if (
        !Array.isArray(value) ||
        !['items', 'statements', 'clauses', 'headers', 'outcomes', 'rows', 'stages'].includes(key)
      )
        continue;
      for (let i = 1; i < value.length; i += 1) {
        if (value[i].start < value[i - 1].end) found.push(`${path}.${key}[${i}]`);
      }
    }
  }
  return found;
}

function holds(text: string): void {
  const parsed = parse(text);
  expect(rebuilt(text, parsed)).toBe(text);
  expect(misplaced(text, parsed)).toEqual([]);
  expect(disordered(parsed)).toEqual([]);
  for (const problem of parsed.problems) {
    expect(problem.start).toBeLessThanOrEqual(problem.end);
    expect(problem.end).toBeLessThanOrEqual(text.length);
    // No half-made sentence, and no text at which the grammar itself gives up.
    expect(problem.message).not.toMatch(/undefined|NaN|“”|any further than this/);
  }
}

describe('every text', () => {
  it.each(SAMPLES)('sample %#: ranges nest, tokens rebuild the text', (sample) => {
    holds(sample);
  });

  it.each(SAMPLES)('sample %#, cut off anywhere, keeps the outline above the cut', (sample) => {
    const whole = parse(sample);
    const starts = outlineStarts(whole);
    for (let cut = 0; cut <= sample.length; cut += 1) {
      const text = sample.slice(0, cut);
      const parsed = parse(text);
      const names = outline(parsed.tree.items);
      const above = starts.filter(({ nameEnd }) => nameEnd < cut).map(({ name }) => name);
      expect(names.slice(0, above.length)).toEqual(above);
      if (cut % 41 === 0) holds(text);
    }
  });

  const word = fc.constantFrom(
    ...[
      ...TAIL_WORDS,
      'remove',
      'lock out',
      'part',
      'seal',
      'plan',
      'machine m',
      'procedure p',
      'use',
      'otherwise',
    ],
    ...[
      '{',
      '}',
      '(',
      ')',
      ',',
      ':',
      ';',
      '=',
      '..',
      '±',
      '+1/-0',
      '"',
      '"text"',
      '\n',
      '\r\n',
      '//',
      '#1',
      'x2',
    ],
    ...['25', '0,5 mm', '1/2-13', 'N·m', 'in', '%', '°', '\u0000', '🔧', '“', 'é', '\ud83d', '-', '\t'],
  );

  it('with pieces cut out, put in and swapped', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SAMPLES),
        fc.array(fc.tuple(fc.nat(4000), fc.nat(12), word), { minLength: 1, maxLength: 6 }),
        (sample, edits) => {
          let text = sample;
          for (const [place, length, piece] of edits) {
            const at = place % (text.length + 1);
            text = `${text.slice(0, at)} ${piece} ${text.slice(at + length)}`;
          }
          holds(text);
        },
      ),
      { seed: SEED, numRuns: 200 },
    );
  });

  it('of words of the language in any order', () => {
    fc.assert(
      fc.property(fc.array(word, { maxLength: 60 }), (words) => {
        holds(`procedure p {\n${words.join(' ')}\n}`);
        holds(`machine m {\n${words.join(' ')}\n}`);
        holds(words.join(' '));
      }),
      { seed: SEED, numRuns: 150 },
    );
  });

  it('of any characters', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        holds(text);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it('gives the same tree twice, and does not remember the text before', () => {
    fc.assert(
      fc.property(fc.constantFrom(...SAMPLES), fc.nat(3000), (sample, cut) => {
        const first = parse(sample);
        parse(sample.slice(0, cut));
        expect(parse(sample)).toEqual(first);
      }),
      { seed: SEED, numRuns: 20 },
    );
  });
});

/** Every line of the outline with where its name ends. */
function outlineStarts(parsed: ParsedFile): { name: string; nameEnd: number }[] {
  const list: { name: string; nameEnd: number }[] = [];
  for (const item of parsed.tree.items) {
    if (item.kind === 'machine') {
      list.push({ name: `machine ${item.name!.text}`, nameEnd: item.name!.end });
      for (const one of item.items) {
        if (one.kind === 'declaration')
          list.push({ name: `${one.type} ${one.name!.text}`, nameEnd: one.name!.end });
      }
    } else if (item.kind === 'procedure') {
      list.push({ name: `procedure ${item.name!.text}`, nameEnd: item.name!.end });
      for (const one of item.body!.statements) {
        if (one.kind === 'task') list.push({ name: `task ${one.name!.text}`, nameEnd: one.name!.end });
      }
    }
  }
  return list;
}
