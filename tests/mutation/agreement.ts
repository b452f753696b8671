/**
 * Two executions written apart, one verdict: right procedures are spoiled in small ways, and for each spoiled text
 * the product (all cases at once) and the oracle (case by case, written from the language reference alone) are asked
 * whether it is still right. Source of the expected verdicts: the oracle, not the product.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { checkTexts } from '../../language-server/checks/check-texts.ts';
import { execute, isWrong, KINDS, tracesOf } from '../oracle/executor.ts';
import { mutantsOf } from './mutants.ts';

const ROOT = new URL('../..', import.meta.url).pathname;
const FILES: Record<string, string> = { ...read('procedures'), ...read('tests/everyday') };

/** The right procedures, by path. */
export const RIGHT: readonly string[] = Object.keys(FILES).filter(
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

/** The file at the path with the given text, and only the files that it leads to: no others bear on it. */
function filesFor(path: string, text = FILES[path]!): Record<string, string> {
  const files: Record<string, string> = { [path]: text };
  const queue = [path];
  for (const at of queue) {
    for (const [, use] of files[at]!.matchAll(/^use "([^"]+)"/gm)) {
      const target = join(at, '..', use!);
      if (files[target] !== undefined || FILES[target] === undefined) continue;
      files[target] = FILES[target];
      queue.push(target);
    }
  }
  return files;
}

/** Names of the same faults where only one side of a branch, one variant or one round has them. */
const ONE_SIDED = ['branch-unfinished', 'variant-uncovered', 'loop-not-restored', 'reverse-impossible'];

function seriousFindings(files: Record<string, string>, path: string) {
  return checkTexts(files, path).findings.filter(
    ({ severity }) => severity === 'error' || severity === 'warning',
  );
}

/** What the product finds against the chapter on states, as `name line`. */
function productSays(files: Record<string, string>, path: string): string[] {
  return seriousFindings(files, path)
    .filter(({ check }) => KINDS.has(check) || ONE_SIDED.includes(check))
    .map(({ check, start }) => `${check} ${files[path]!.slice(0, start).split('\n').length}`);
}

function oracleSays(files: Record<string, string>, path: string): string[] {
  return execute(files, path).map(({ kind, line }) => `${kind} ${line}`);
}

export function expectRightForOracle(path: string): void {
  expect(execute(filesFor(path), path)).toEqual([]);
}

export function expectRightForProduct(path: string): void {
  expect(seriousFindings(filesFor(path), path)).toEqual([]);
}

/** Every `of`th mutant from `first` on: the two agree on each. Says how many there were and what they took. */
export function expectAgreement(path: string, first: number, of: number): void {
  const traces = tracesOf(filesFor(path), path);
  const disagreements: string[] = [];
  const count = { mutants: 0, wrong: 0, found: 0 };
  const time = { oracle: 0, product: 0 };
  let index = 0;
  for (const { text, description } of mutantsOf(FILES[path]!)) {
    if (index++ % of !== first) continue;
    const files = filesFor(path, text);
    const begun = performance.now();
    const wrong = isWrong(files, path, traces);
    const between = performance.now();
    const findings = productSays(files, path);
    time.oracle += between - begun;
    time.product += performance.now() - between;
    count.mutants++;
    if (wrong) count.wrong++;
    if (wrong && findings.length > 0) count.found++;
    if (wrong === findings.length > 0) continue;
    const oracle = oracleSays(files, path).join(', ') || 'right';
    disagreements.push(`${description}\n  oracle: ${oracle}\n  product: ${findings.join(', ') || 'right'}`);
  }
  console.log(
    `${path}: ${count.mutants} mutants, ${count.wrong} wrong, ${count.found} of them found,` +
      ` ${disagreements.length} disagreements (oracle ${seconds(time.oracle)}, product ${seconds(time.product)})`,
  );
  expect(disagreements.slice(0, 20).join('\n'), `${disagreements.length} disagreements`).toBe('');
  expect(count.wrong).toBeGreaterThan(0);
}

function seconds(milliseconds: number): string {
  return `${(milliseconds / 1000).toFixed(1)} s`;
}
