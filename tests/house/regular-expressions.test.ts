/**
 * No regular expression of the program takes more than linear time on a text that somebody writes to hurt. Judge: recheck,
 * a checker of regular expressions that knows nothing of this project. One that grows with the square of a line, and
 * only sees lines of the author, is let through by name, with the reason.
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

test('none grows faster than its text', { timeout: 300_000 }, () => {
  const judged = new Map<string, string>();
  const wrong = all.flatMap(({ file, source, flags }) => {
    const key = `/${source}/${flags}`;
    const known =
      judged.get(key) ??
      (() => {
        const result = checkSync(source, flags, { timeout: 10_000 });
        return result.status === 'vulnerable' ? result.complexity.summary : result.status;
      })();
    judged.set(key, known);
    return known === 'safe' ? [] : [`${file}: ${key} (${known})`];
  });
  expect(wrong).toEqual([]);
});
