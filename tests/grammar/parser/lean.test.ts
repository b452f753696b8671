/**
 * The parser without the parts of Chevrotain that it leaves out, and with its decisions read instead of worked out, is the
 * parser as Chevrotain makes it: same trees, same problems, same failures, on right texts and on texts cut off anywhere.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { EOF } from 'chevrotain';
import { describe, expect, it } from 'vitest';
import { arrange } from '../../../grammar/parser/arrange.ts';
import { balance } from '../../../grammar/parser/braces.ts';
import { decisionsOf } from '../../../grammar/parser/decisions.ts';
import { DowelParser } from '../../../grammar/parser/file.ts';
import { LeanParser } from '../../../grammar/parser/lean.ts';
import { scan } from '../../../grammar/tokens/scan.ts';
import { FIRST_NUMBER, Lexeme, VerbStart, VOCABULARY } from '../../../grammar/tokens/types.ts';

const ROOT = resolve(import.meta.dirname, '../../../procedures');
const samples = (readdirSync(ROOT, { recursive: true }) as string[])
  .filter((file) => file.endsWith('.dowel'))
  .sort()
  .map((file) => readFileSync(join(ROOT, file), 'utf8'));
/** Each sample, and a quarter of it. */
const texts = samples.flatMap((text) => [text, text.slice(0, Math.floor(text.length / 4))]);

/** What the methods of `LeanParser` stand for, put back for as long as `work` takes. */
function asChevrotainDoes<Result>(work: () => Result): Result {
  const own = Object.getOwnPropertyDescriptors(LeanParser.prototype);
  const names = Object.keys(own).filter((name) => name !== 'constructor');
  for (const name of names) Reflect.deleteProperty(LeanParser.prototype, name);
  try {
    return work();
  } finally {
    for (const name of names)
      Object.defineProperty(LeanParser.prototype, name, own[name as keyof typeof own]!);
  }
}

function read(parser: DowelParser, text: string) {
  const { lexemes, virtual } = balance(text, scan(text).lexemes);
  parser.begin(arrange(lexemes), virtual);
  return { items: parser.file(), problems: parser.problems, failures: parser.failures() };
}

/** A token that no rule knows, as no text gives it. */
function failing(parser: DowelParser) {
  const odd = new Lexeme('x', 0, 1, VerbStart, true);
  odd.tokenTypeIdx = EOF.tokenTypeIdx! + 1;
  parser.begin([odd], new Set());
  return { items: parser.file(), failures: parser.failures() };
}

describe('the lean parser', () => {
  const original = asChevrotainDoes(() => new DowelParser());
  const recorded = new DowelParser();
  const decisions = decisionsOf(recorded);
  const told = new DowelParser({ decisions });

  it('reads what Chevrotain reads', () => {
    for (const text of texts) {
      const expected = asChevrotainDoes(() => read(original, text));
      expect(read(recorded, text)).toEqual(expected);
      expect(read(told, text)).toEqual(expected);
    }
  });

  it('fails where Chevrotain fails', () => {
    const expected = asChevrotainDoes(() => failing(original));
    expect(expected.failures).toHaveLength(1);
    expect(failing(recorded)).toEqual(expected);
    expect(failing(told)).toEqual(expected);
    // And goes on with the next text.
    expect(read(told, samples[0]!)).toEqual(asChevrotainDoes(() => read(original, samples[0]!)));
  });

  it('records nothing where the decisions are there', () => {
    expect(Object.keys(told.getGAstProductions())).toEqual([]);
    expect(Object.keys(recorded.getGAstProductions()).length).toBeGreaterThan(100);
  });

  it('has decisions for every place where the grammar decides', () => {
    const { choices, options } = JSON.parse(decisions) as { choices: unknown[]; options: unknown[] };
    const { lookAheadFuncsCache } = original as unknown as { lookAheadFuncsCache: Map<number, unknown> };
    expect(choices.length + options.length).toBe(lookAheadFuncsCache.size);
  });

  it('numbers its tokens above those of Chevrotain', () => {
    expect(EOF.tokenTypeIdx).toBeLessThan(FIRST_NUMBER);
    expect(new Set(VOCABULARY.map(({ tokenTypeIdx }) => tokenTypeIdx)).size).toBe(VOCABULARY.length);
  });
});
