/**
 * Two executions written apart, one verdict: every right procedure is spoiled in small ways, and for each spoiled
 * text the product (all cases at once) and the oracle (case by case, written from the language reference alone)
 * must agree on whether it is still right. Source of the expected verdicts: the oracle, not the product.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkTexts } from '../../language-server/checks/check-texts.ts';
import { execute, isWrong, KINDS, tracesOf } from '../oracle/executor.ts';
import { mutantsOf } from './mutants.ts';

const ROOT = new URL('../..', import.meta.url).pathname;
const FILES: Record<string, string> = { ...read('procedures'), ...read('tests/everyday') };
const RIGHT = Object.keys(FILES).filter(
  (path) => !path.includes('broken') && /^procedure /m.test(FILES[path]!),
);

function read(folder: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const entry of readdirSync(join(ROOT, folder), { withFileTypes: true })) {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) Object.assign(found, read(path));
    else if (path.endsWith('.dowel')) found[path] = readFileSync(join(ROOT, path), 'utf8');
  }
  return found;
}

/** Only the files that the one at the path leads to: what else is there has no bearing on it. */
function needed(path: string, text: string): Record<string, string> {
  const files: Record<string, string> = { [path]: text };
  const folder = path.split('/').slice(0, -1).join('/');
  for (const [, use] of text.matchAll(/^use "([^"]+)"/gm)) {
    const target = join(folder, use!);
    if (FILES[target] !== undefined) Object.assign(files, needed(target, FILES[target]), { [path]: text });
  }
  return files;
}

/** Names of the same faults where only one side of a branch, one variant or one round has them. */
const ONE_SIDED = ['branch-unfinished', 'variant-uncovered', 'loop-not-restored', 'reverse-impossible'];

/** Findings of the checks that are about states, as the chapter on states names them; hints do not count. */
function product(files: Record<string, string>, path: string): string[] {
  return checkTexts(files, path)
    .findings.filter(({ severity }) => severity === 'error' || severity === 'warning')
    .filter(({ check }) => KINDS.has(check) || ONE_SIDED.includes(check))
    .map(({ check, start }) => `${check} ${files[path]!.slice(0, start).split('\n').length}`);
}

function oracle(files: Record<string, string>, path: string): string[] {
  return execute(files, path).map(({ kind, line }) => `${kind} ${line}`);
}

describe('right procedures', () => {
  it.each(RIGHT)('%s is right for the oracle', (path) => {
    expect(execute(needed(path, FILES[path]!), path)).toEqual([]);
  });

  it.each(RIGHT)('%s is right for the product', (path) => {
    const { findings } = checkTexts(needed(path, FILES[path]!), path);
    expect(findings.filter(({ severity }) => severity === 'error' || severity === 'warning')).toEqual([]);
  });
});

describe('spoiled procedures', () => {
  it.each(RIGHT)('%s: product and oracle agree on every mutant', (path) => {
    const disagreements: string[] = [];
    let count = 0;
    let wrong = 0;
    let found = 0;
    let alike = 0;
    let oracleTime = 0;
    let productTime = 0;
    const traces = tracesOf(needed(path, FILES[path]!), path);
    for (const { text, description } of mutantsOf(FILES[path]!)) {
      count++;
      const files = needed(path, text);
      const begun = performance.now();
      const spoiled = isWrong(files, path, traces);
      const between = performance.now();
      const findings = product(files, path);
      oracleTime += between - begun;
      productTime += performance.now() - between;
      if (spoiled) wrong++;
      if (spoiled && findings.length > 0) found++;
      if (spoiled === findings.length > 0) {
        alike++;
        continue;
      }
      disagreements.push(
        `${description}\n      oracle: ${oracle(files, path).join(', ') || 'right'}\n      product: ${findings.join(', ') || 'right'}`,
      );
    }
    const seconds = (time: number) => `${(time / 1000).toFixed(1)} s`;
    console.log(
      `${path}: ${count} mutants, ${wrong} wrong, ${found} of them found, ${alike} verdicts alike` +
        ` (oracle ${seconds(oracleTime)}, product ${seconds(productTime)})`,
    );
    expect(disagreements.slice(0, 20).join('\n'), `${disagreements.length} disagreements`).toBe('');
    expect(wrong).toBeGreaterThan(0);
  });
});
