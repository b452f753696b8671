/**
 * Right procedures are spoiled in small ways and mended again. What a mended text is worth is judged by the oracle
 * (written from the language reference alone), not only by the checker that the mends were tried with; and by the
 * text that was spoiled: a right step that the spoiled text still has must be there after mending.
 *
 * A fixed sample; with DOWEL_LONG=1 all of them. The floors are what was measured on 2026-11-25, less a little.
 */
import { describe, expect, it } from 'vitest';
import { checkTexts } from '../../language-server/checks/check-texts.ts';
import { mendFile } from '../../language-server/features/mend.ts';
import { memoryHost } from '../../language-server/project/project.ts';
import { isWrong } from '../oracle/executor.ts';
import { readFile } from '../oracle/reader.ts';
import type { Action, Block, Statement } from '../oracle/shape.ts';
import { mutantsOf } from './mutants.ts';
import { FILES, filesFor, RIGHT } from './right.ts';

const ALL = process.env.DOWEL_LONG === '1';
/** Spoiled texts of one procedure in the sample. */
const OF_EACH = 5;

const totals = { wrong: 0, clean: 0, right: 0, kept: 0, same: 0, tries: 0 };

describe('a spoiled procedure', () => {
  it.each(RIGHT)('%s is mended', { timeout: ALL ? 7_200_000 : 600_000 }, (path) => {
    const unmended: string[] = [];
    for (const { text, description } of wrongMutants(path)) {
      const files = filesFor(path, text);
      totals.wrong++;
      const mended = mendFile(memoryHost(files), path);
      totals.tries += mended.tries;
      const serious = seriousIn({ ...files, [path]: mended.text }, path);
      if (serious > 0) {
        unmended.push(description);
        continue;
      }
      totals.clean++;
      if (!isWrong({ ...files, [path]: mended.text }, path)) totals.right++;
      if (mended.text === FILES[path]) totals.same++;
      const lost = missing(common(steps(FILES[path]!), steps(text)), steps(mended.text));
      if (lost.length === 0) totals.kept++;
    }
    // What is left is counted below; that a whole procedure cannot be mended at all would be a fault of its own.
    expect(unmended.length, unmended.join('\n')).toBeLessThan(OF_EACH);
  });

  it('is clean afterwards, right for the oracle, and has lost no right step', () => {
    const { wrong, clean, right, kept, same, tries } = totals;
    console.log(
      `${wrong} spoiled procedures: ${clean} clean after mending, ${right} of these right for the oracle, ` +
        `${kept} with every right step kept, ${same} as before to the letter; ${tries} texts tried`,
    );
    expect(wrong).toBeGreaterThanOrEqual(100);
    expect(clean / wrong).toBeGreaterThanOrEqual(0.98);
    expect(right / clean).toBeGreaterThanOrEqual(0.98);
    expect(kept / clean).toBeGreaterThanOrEqual(0.95);
  });
});

describe('several steps left out at once', () => {
  it('are written again', { timeout: 600_000 }, () => {
    let jobs = 0;
    let clean = 0;
    for (const path of RIGHT) {
      if (FILES[path]!.length > 6_000) continue;
      const random = randomFrom(path.length);
      const text = without(FILES[path]!, 3, random);
      if (seriousIn(filesFor(path, text), path) === 0) continue;
      jobs++;
      if (mendFile(memoryHost(filesFor(path, text)), path).left.length === 0) clean++;
    }
    console.log(`${jobs} procedures without three of their steps: ${clean} clean after mending`);
    expect(jobs).toBeGreaterThan(20);
    expect(clean / jobs).toBeGreaterThanOrEqual(0.9);
  });
});

/** Spoiled texts in which something is found: some of them, the same ones each time. */
function wrongMutants(path: string): { text: string; description: string }[] {
  const mutants = [...mutantsOf(FILES[path]!)];
  if (!ALL) shuffle(mutants, randomFrom(path.length));
  const wrong: { text: string; description: string }[] = [];
  for (const mutant of mutants) {
    if (!ALL && wrong.length === OF_EACH) break;
    if (seriousIn(filesFor(path, mutant.text), path) > 0) wrong.push(mutant);
  }
  return wrong;
}

function seriousIn(files: Record<string, string>, path: string): number {
  return checkTexts(files, path).findings.filter(
    ({ severity }) => severity === 'error' || severity === 'warning',
  ).length;
}

/** The steps of a text in words, without what stands in their outcomes. */
function steps(text: string): string[] {
  const found: string[] = [];
  const walk = (block: Block | undefined): void => {
    for (const statement of block?.statements ?? []) {
      if (statement.kind === 'action') {
        found.push(wordsOf(text, statement));
        for (const outcome of statement.outcomes) walk(outcome);
      } else for (const inner of bodies(statement)) walk(inner);
    }
  };
  for (const { body } of readFile(text).procedures) walk(body);
  return found;
}

function wordsOf(text: string, action: Action): string {
  const words = text.slice(action.start, action.end);
  const until = action.outcomes.length > 0 ? words.indexOf('{') : words.length;
  return words.slice(0, until).replace(/\s+/g, ' ').trim();
}

function bodies(statement: Statement): Block[] {
  const found = 'body' in statement ? [statement.body] : [];
  if ('otherwise' in statement && statement.otherwise) found.push(statement.otherwise);
  return found;
}

/** What both have, as often as both have it. */
function common(a: readonly string[], b: readonly string[]): string[] {
  const left = [...b];
  return a.filter((one) => {
    const index = left.indexOf(one);
    if (index >= 0) left.splice(index, 1);
    return index >= 0;
  });
}

function missing(wanted: readonly string[], there: readonly string[]): string[] {
  const left = [...there];
  return wanted.filter((one) => {
    const index = left.indexOf(one);
    if (index >= 0) left.splice(index, 1);
    return index < 0;
  });
}

/** The text without some steps of its own list, picked by chance. */
function without(text: string, count: number, random: () => number): string {
  const all: Action[] = [];
  const walk = (block: Block | undefined): void => {
    for (const statement of block?.statements ?? []) {
      if (statement.kind === 'action') all.push(statement);
      else for (const inner of bodies(statement)) walk(inner);
    }
  };
  for (const { body } of readFile(text).procedures) walk(body);
  shuffle(all, random);
  let result = text;
  for (const { start, end } of all.slice(0, count).sort((a, b) => b.start - a.start))
    result = result.slice(0, start) + result.slice(end);
  return result;
}

function shuffle<T>(list: T[], random: () => number): void {
  for (let index = list.length - 1; index > 0; index--) {
    const other = Math.floor(random() * (index + 1));
    [list[index], list[other]] = [list[other]!, list[index]!];
  }
}

/** Park and Miller, "Random number generators: good ones are hard to find" (1988): the minimal standard. */
function randomFrom(seed: number): () => number {
  let state = seed + 1;
  return () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
