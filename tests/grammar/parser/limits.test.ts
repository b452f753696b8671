/** Texts that are too deep, too broken or no text at all: an answer in good time, and never an exception. */
import { describe, expect, it } from 'vitest';
import { MAX_DEPTH } from '../../../grammar/parser/braces.ts';
import { DowelParser } from '../../../grammar/parser/file.ts';
import { MAX_PROBLEMS, parse } from '../../../grammar/parser/parse.ts';
import { outline } from '../../support/trees.ts';

describe('the grammar', () => {
  it('has no ambiguity that is not decided on purpose, no left recursion and no empty loop', () => {
    expect(() => new DowelParser({ validate: true })).not.toThrow();
  });
});

describe('nesting', () => {
  const nested = (depth: number) => `${'step {\n'.repeat(depth)}remove cover\n${'}\n'.repeat(depth)}`;

  it('as deep as the limit is read', () => {
    const { problems } = parse(`procedure p {\n${nested(MAX_DEPTH - 1)}}\npart last`);
    expect(problems).toEqual([]);
  });

  it.each([MAX_DEPTH, 10_000])(
    'of %i blocks more is one problem, and what is outside is still read',
    (depth) => {
      const { problems, tree } = parse(`procedure p {\n${nested(depth)}task last { }\n}\nprocedure q { }`);
      expect(problems.map((problem) => problem.check)).toEqual(['nested-too-deep']);
      expect(outline(tree.items)).toEqual(['procedure p', 'task last', 'procedure q']);
    },
  );

  it('that is never closed ends as well', () => {
    const { problems } = parse(`procedure p {\n${'step {\n'.repeat(10_000)}`);
    expect(problems.map((problem) => problem.check)).toContain('nested-too-deep');
  });

  it.each([
    ['brackets', `value v = ${'('.repeat(10_000)}1 mm${')'.repeat(10_000)}`],
    ['calls', `value v = ${'sum of '.repeat(10_000)}a`],
    ['selectors', `rule r { require ${'any part of '.repeat(10_000)}a off }`],
    ['second values', `part p mass ${'1 kg ('.repeat(10_000)}`],
  ])('of %s', (_, text) => {
    const { problems, tree } = parse(`${text}\npart last`);
    expect(problems.length).toBeGreaterThan(0);
    expect(problems.length).toBeLessThan(5);
    expect(tree.items.at(-1)).toMatchObject({ kind: 'declaration', name: { text: 'last' } });
  });
});

describe('problems', () => {
  it('are listed up to a limit, and that there are more is said', () => {
    const { problems } = parse(`procedure p {\n${'removee cover\n'.repeat(500)}}`);
    expect(problems).toHaveLength(MAX_PROBLEMS + 1);
    expect(problems.at(-1)!.message).toContain('400 more problems');
  });

  it('are in the order of the text', () => {
    const { problems } = parse('procedure p {\n foo a\n remove "x\n bar\n remove 3,5 mm\n');
    const starts = problems.map((problem) => problem.start);
    expect(starts).toEqual([...starts].sort((a, b) => a - b));
  });
});

describe('what is hardly text', () => {
  it.each([
    ['nothing', ''],
    ['a byte order mark', '\uFEFF'],
    ['blanks', ' \t\r\n\u00A0'],
    ['only a comment', '// nothing'],
  ])('%s has no problem', (_, text) => {
    expect(parse(text)).toMatchObject({ problems: [], tree: { items: [], start: 0, end: text.length } });
  });

  it('a byte order mark and CRLF change nothing but the places', () => {
    const text = 'machine m {\n  part a "A"\n    on b // here\n}\n';
    const windows = `\uFEFF${text.replaceAll('\n', '\r\n')}`;
    const parsed = parse(windows);
    expect(parsed.problems).toEqual([]);
    expect(parsed.tree.items).toMatchObject([
      { items: [{ name: { text: 'a' }, clauses: [{ clause: 'on' }] }] },
    ]);
    expect(parsed.comments).toMatchObject([{ text: '// here' }]);
  });

  it('bytes of another kind of file', () => {
    let bytes = '';
    for (let i = 0; i < 60_000; i += 1) bytes += String.fromCharCode((i * 7919) % 65_536);
    const { problems } = parse(bytes);
    expect(problems.length).toBeLessThanOrEqual(MAX_PROBLEMS + 1);
  });

  it('halves of surrogate pairs', () => {
    expect(parse('part \ud83d on base').problems).toMatchObject([{ check: 'bad-character' }]);
  });
});
