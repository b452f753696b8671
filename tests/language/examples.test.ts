/**
 * Every example of the language reference is checked: it brings the findings that are named at it, and no
 * other. Where a message is quoted below an example, it is the one that is printed. The source of what is right
 * is the reference itself: where code and reference differ, one of them is wrong.
 */
import { describe, expect, test } from 'vitest';
import { formatText } from '../../grammar/format/format.ts';
import { parse } from '../../grammar/parser/parse.ts';
import { ALL_CHECKS } from '../../language-server/checks/all.ts';
import { checkTexts } from '../../language-server/checks/check-texts.ts';
import { type Example, examplesIn, REFERENCE, textOf } from './examples.ts';
import { namedFiles, surround } from './surroundings.ts';

const reference = textOf(REFERENCE);
const examples = examplesIn(reference);
const named = namedFiles(examples);

function findingsOf(example: Example) {
  const { files, path } = surround(example, named);
  return { text: files[path]!, findings: checkTexts(files, path).findings };
}

/** What was found, with the line it was found in: what a failed test prints. */
function shown({ text, findings }: ReturnType<typeof findingsOf>): string[] {
  return findings.map(({ check, start, message }) => {
    const line = text.slice(text.lastIndexOf('\n', start - 1) + 1).split('\n')[0]!;
    return `${check}: ${line.trim()}: ${message}`;
  });
}

test('the reference has examples of all forms', () => {
  const forms = new Set(examples.map(({ form }) => form));
  expect([...forms].sort()).toEqual(['file', 'machine', 'steps']);
  expect(examples.length).toBeGreaterThan(30);
});

test('no two files of the reference have one name', () => {
  const paths = examples.flatMap(({ path }) => path ?? []);
  expect(paths.filter((path, index) => paths.indexOf(path) !== index)).toEqual([]);
});

describe.each(examples.map((example) => [`line ${example.line}`, example] as const))('%s', (_, example) => {
  test('is read without problems of the text', () => {
    expect(parse(findingsOf(example).text).problems.map(({ message }) => message)).toEqual([]);
  });

  test('brings the findings that are named, and no other', () => {
    const result = findingsOf(example);
    const found = result.findings.map(({ check }) => check).sort();
    const wanted = [...example.finds].sort();
    expect(found.join() === wanted.join() ? wanted : shown(result)).toEqual(wanted);
  });

  test('is laid out as the formatter does it', () => {
    if (example.form === 'file') expect(example.text).toBe(formatText(example.text));
    else expect(example.text).toBe(unwrapped(formatText(wrapped(example))));
  });
});

/** A fragment in the braces that it belongs in, and back. */
function wrapped({ form, text }: Example): string {
  return form === 'machine' ? `machine m {\n${text}}\n` : `procedure p\n  for m\n{\n${text}}\n`;
}

function unwrapped(text: string): string {
  const lines = text.split('\n');
  const inside = lines.slice(lines.findIndex((line) => line.endsWith('{')) + 1, lines.lastIndexOf('}'));
  return `${inside.map((line) => line.replace(/^ {2}/, '')).join('\n')}\n`;
}

test('quoted messages are the ones that are printed', () => {
  const lines = reference.split('\n');
  let quotes = 0;
  for (const example of examples) {
    const end = lines.indexOf('```', example.line);
    if (lines[end + 1] !== '' || !lines[end + 2]?.startsWith('> ')) continue;
    const quoted: string[] = [];
    for (let at = end + 2; lines[at]?.startsWith('> '); at++) quoted.push(lines[at]!.slice(2));
    expect(findingsOf(example).findings.map(({ message }) => message)).toContain(quoted.join(' '));
    quotes++;
  }
  expect(quotes).toBeGreaterThan(0);
  expect(quotes).toBe(reference.match(/\n\n> /g)?.length);
});

test('what examples are said to bring are names of checks', () => {
  const names = ALL_CHECKS.map(({ name }) => name);
  expect(examples.flatMap(({ finds }) => finds).filter((name) => !names.includes(name))).toEqual([]);
});
