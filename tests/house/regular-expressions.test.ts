/**
 * No regular expression of the program takes time that grows faster than the square of a text that somebody writes to hurt.
 * Judge: recheck, a checker of regular expressions that knows nothing of this project. Those that grow with the square of
 * a text are named, with what keeps that text short.
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

/** What grows with the square, and why that hurts nobody. Files, with the beginning of the expression. */
const SQUARE: Readonly<Record<string, string>> = {
  'extension/marks.ts /\\/\\/.*$/': 'one line at a time, in the editor of its author',
  'extension/status.ts /\\$\\(([a-z]+': 'words of the program itself',
  'grammar/quantity/scan.ts /[.,]+$/': 'at most forty characters',
  'language-server/cli/fastener.ts /^\\d*\\.?\\d+$/': 'one word of a command line',
  'language-server/compare/compare.ts /"(?:[^"': 'the line of one finding',
  'language-server/compare/steps.ts /"(?:[^"': 'the line of one step',
  'language-server/config/use.ts /\\/+$/': 'one pattern of the configuration of the house',
  'language-server/features/quick-fix-candidates.ts /^(.*?)': 'one word, looked at when a fix is asked for',
  'language-server/features/rebuild-steps.ts /(\\S+) ': 'a quantity as the program prints it',
  'language-server/publish/document/flow-names.ts /^-+|-+$/': 'runs of other signs are one hyphen before',
  'language-server/fastening/threads.ts /^': 'the thread of one fastener',
  'language-server/publish/page/style/style.ts /\\/\\*': 'style sheets of the program itself',
  'language-server/publish/sentences/noun.ts /,([^,]+': 'the title of one thing',
  'language-server/publish/site/check-pages.ts /^\\n+': 'texts of the checks',
  'language-server/server/handlers/completion.ts /‹': 'proposals of the program itself',
};

/**
 * A proof counts whatever it says. Where the judge can only try (lookaheads, long lists of words), how far it comes hangs
 * on how busy the machine is: there only what grows faster than the square counts.
 */
function growthOf(result: ReturnType<typeof checkSync>): string {
  if (result.status !== 'vulnerable') return result.status;
  const { complexity, checker } = result;
  if (complexity.type === 'exponential' || (complexity.type === 'polynomial' && complexity.degree > 2))
    return 'exponential';
  return checker === 'fuzz' ? 'safe' : 'polynomial';
}

test('none grows faster than the square, and few with it', { timeout: 600_000 }, () => {
  const judged = new Map<string, string>();
  const wrong = all.flatMap(({ file, source, flags }) => {
    const key = `/${source}/${flags}`;
    if (!judged.has(key)) {
      judged.set(key, growthOf(checkSync(source, flags, { timeout: 20_000 })));
    }
    const growth = judged.get(key)!;
    if (growth === 'exponential') return [`${file}: ${key} (more than the square)`];
    const named = Object.keys(SQUARE).some((known) => `${file} ${key}`.startsWith(known));
    return growth === 'polynomial' && !named ? [`${file}: ${key} (square)`] : [];
  });
  expect(wrong).toEqual([]);
});
