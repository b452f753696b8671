/**
 * No regular expression of the program takes time that grows exponentially with a text that somebody writes to hurt.
 * Judge: recheck, a checker of regular expressions that knows nothing of this project. Some grow with the square of one
 * sentence; they see sentences of the author only (see the known limits in DEVELOPERS.md).
 */
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { checkSync } from 'recheck';
import ts from 'typescript';
import { expect, test } from 'vitest';
import { readSource, sourceFiles } from './imports.ts';

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../..');

interface Found {
  file: string;
  source: string;
  flags: string;
}

function expressionsIn(file: string, text: string): Found[] {
  const found: Found[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isRegularExpressionLiteral(node)) {
      const end = node.text.lastIndexOf('/');
      found.push({ file, source: node.text.slice(1, end), flags: node.text.slice(end + 1) });
    }
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true));
  return found;
}

const all = sourceFiles(ROOT, ['grammar', 'language-server', 'extension']).flatMap((file) =>
  expressionsIn(file, readSource(ROOT, file)),
);

test('the expressions are found', () => {
  expect(all.length).toBeGreaterThan(50);
});

test('the judge tells a bad one from a good one', () => {
  expect(checkSync('^(a+)+$', '').status).toBe('vulnerable');
  expect(checkSync('^a+$', '').status).toBe('safe');
});

test('none grows exponentially', { timeout: 600_000 }, () => {
  const judged = new Map<string, string>();
  const wrong = all.flatMap(({ file, source, flags }) => {
    const key = `/${source}/${flags}`;
    if (!judged.has(key)) {
      const result = checkSync(source, flags, { timeout: 5_000 });
      judged.set(key, result.status === 'vulnerable' ? result.complexity.type : result.status);
    }
    return judged.get(key) === 'exponential' ? [`${file}: ${key}`] : [];
  });
  expect(wrong).toEqual([]);
});
