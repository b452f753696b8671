/**
 * Two executions written apart, one verdict: right procedures are spoiled in small ways, and for each spoiled text
 * the product (all cases at once) and the oracle (case by case, written from the language reference alone) are asked
 * whether it is still right. Source of the expected verdicts: the oracle, not the product.
 */
import { expect } from 'vitest';
import { checkTexts } from '../../language-server/checks/check-texts.ts';
import { Trial } from '../../language-server/features/trial.ts';
import { memoryHost } from '../../language-server/project/project.ts';
import type { Finding } from '../../language-server/report/finding.ts';
import type { Traces } from '../oracle/executor.ts';
import { execute, isWrong, KINDS, tracesOf } from '../oracle/executor.ts';
import type { Mutant } from './mutants.ts';
import { mutantsOf } from './mutants.ts';
import { FILES, filesFor, RIGHT } from './right.ts';

export { RIGHT };

/** Names of the same faults where only one side of a branch, one variant or one round has them. */
const ONE_SIDED = ['branch-unfinished', 'variant-uncovered', 'loop-not-restored', 'reverse-impossible'];

function seriousFindings(files: Record<string, string>, path: string) {
  return checkTexts(files, path).findings.filter(
    ({ severity }) => severity === 'error' || severity === 'warning',
  );
}

/** What the product finds against the chapter on states, as `name line`. */
function productSays(files: Record<string, string>, path: string): string[] {
  return counted(checkTexts(files, path).findings, files[path]!);
}

function counted(findings: readonly Finding[], text: string): string[] {
  return findings
    .filter(({ severity }) => severity === 'error' || severity === 'warning')
    .filter(
      // A fault of one side of a branch counts by the fault itself, where it is known.
      ({ check, about }) =>
        KINDS.has(check) ||
        (ONE_SIDED.includes(check) &&
          (about === undefined || KINDS.has(about.check) || ONE_SIDED.includes(about.check))),
    )
    .map(({ check, start }) => `${check} ${text.slice(0, start).split('\n').length}`);
}

/** A share of the mutants is asked from scratch as well: reading the machine once must make no difference. */
const FROM_SCRATCH = 25;

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
  const mutants = [...mutantsOf(FILES[path]!)].filter((_, index) => index % of === first);
  const traces = tracesOf(filesFor(path), path);
  const result = compare(mutants, (text) => filesFor(path, text), path, traces);
  console.log(
    `${path}: ${mutants.length} mutants, ${result.wrong} wrong, ${result.found} of them found,` +
      ` ${result.disagreements.length} disagreements` +
      ` (oracle ${seconds(result.oracleTime)}, product ${seconds(result.productTime)})`,
  );
  expectNone(result.disagreements);
  expect(result.wrong).toBeGreaterThan(0);
}

/** A right job in one text: right for both, and the two agree on each of its mutants. */
export function expectAgreementOnText(right: string): void {
  const files = (text: string) => ({ 'job.dowel': text });
  expect(execute(files(right), 'job.dowel')).toEqual([]);
  const mutants = [{ text: right, description: 'as it is' }, ...mutantsOf(right)];
  expectNone(compare(mutants, files, 'job.dowel', undefined).disagreements);
}

function expectNone(disagreements: readonly string[]): void {
  expect(disagreements.slice(0, 20).join('\n'), `${disagreements.length} disagreements`).toBe('');
}

function compare(
  mutants: readonly Mutant[],
  filesOf: (text: string) => Record<string, string>,
  path: string,
  traces: Traces | undefined,
) {
  // The machine stays as it is: it is read once, as the editor does it.
  const trial = new Trial(memoryHost(filesOf(mutants[0]?.text ?? '')), path);
  const says = (text: string) => counted(trial.check(text).findings, text);
  const result = {
    asked: 0,
    wrong: 0,
    found: 0,
    oracleTime: 0,
    productTime: 0,
    disagreements: [] as string[],
  };
  for (const { text, description } of mutants) {
    const files = filesOf(text);
    const begun = performance.now();
    const wrong = isWrong(files, path, traces);
    const between = performance.now();
    const findings = says(text);
    result.oracleTime += between - begun;
    result.productTime += performance.now() - between;
    if (result.asked++ % FROM_SCRATCH === 0) expect(findings).toEqual(productSays(files, path));
    if (wrong) result.wrong++;
    if (wrong && findings.length > 0) result.found++;
    if (wrong === findings.length > 0) continue;
    const oracle = oracleSays(files, path).join(', ') || 'right';
    const product = findings.join(', ') || 'right';
    result.disagreements.push(`${description}\n  oracle: ${oracle}\n  product: ${product}`);
  }
  return result;
}

function seconds(milliseconds: number): string {
  return `${(milliseconds / 1000).toFixed(1)} s`;
}
