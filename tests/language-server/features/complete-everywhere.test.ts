/**
 * Proposals at every place of the demo files, whole and cut off: nothing is thrown, and at a verb's object
 * nothing is proposed that the checker would call done already, absent or of the wrong kind. What is proposed
 * without a word about something in the way brings no blame at that step; what is said to be in the way does.
 * A sample of places in the normal run, with a fixed seed; all of them with DOWEL_LONG=1.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Action, Statement } from '../../../grammar/syntax/tree.ts';
import { scan } from '../../../grammar/tokens/scan.ts';
import { checkProject } from '../../../language-server/checks/check-project.ts';
import { completeAt } from '../../../language-server/features/complete.ts';
import { View } from '../../../language-server/features/view.ts';
import { memoryHost } from '../../../language-server/project/project.ts';

const ROOT = resolve(import.meta.dirname, '../../../procedures');
const LONG = process.env.DOWEL_LONG === '1';

const FILES: Readonly<Record<string, string>> = Object.fromEntries(
  readdirSync(ROOT, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.dowel'))
    .sort()
    .map((name) => [relative(ROOT, join(ROOT, name)), readFileSync(join(ROOT, name), 'utf8')]),
);
const PATHS = Object.keys(FILES);

/** Park and Miller, "Random number generators: good ones are hard to find" (1988). */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** Offsets at which a token begins or ends. */
function boundaries(text: string): number[] {
  const all = scan(text).tokens.flatMap(({ start, end }) => [start, end]);
  return [...new Set([0, ...all, text.length])];
}

function sample<One>(all: readonly One[], most: number, next: () => number): One[] {
  return LONG ? [...all] : sampled(all, most, next);
}

function sampled<One>(all: readonly One[], most: number, next: () => number): One[] {
  if (all.length <= most) return [...all];
  return Array.from({ length: most }, () => all[Math.floor(next() * all.length)]!);
}

describe.each(PATHS)('%s', (path) => {
  const text = FILES[path]!;

  test('every boundary of the whole text', () => {
    const view = new View(memoryHost(FILES));
    for (const offset of sample(boundaries(text), 20, random(7))) {
      const { start, end, proposals } = completeAt(view, path, offset);
      expect(start).toBeLessThanOrEqual(offset);
      expect(end).toBeGreaterThanOrEqual(offset);
      const labels = proposals.map(({ label }) => label);
      expect(new Set(labels).size, `${offset}`).toBe(labels.length);
    }
  });

  test('every boundary of the text cut off there', () => {
    for (const offset of sample(boundaries(text), 10, random(11))) {
      const cut = { ...FILES, [path]: text.slice(0, offset) };
      const { end } = completeAt(new View(memoryHost(cut)), path, offset);
      expect(end).toBe(offset);
    }
  });
});

function actionsIn(statements: readonly Statement[]): Action[] {
  return statements.flatMap((statement): Action[] => {
    if (statement.kind === 'action')
      return [statement, ...statement.outcomes.flatMap(({ body }) => actionsIn(body?.statements ?? []))];
    const blocks = [
      'body' in statement ? statement.body : undefined,
      'otherwise' in statement ? statement.otherwise : undefined,
    ];
    // Inside a repeat and with loop variables a step is not the same each time.
    if (statement.kind === 'repeat' || statement.kind === 'for each') return [];
    return blocks.flatMap((block) => actionsIn(block?.statements ?? []));
  });
}

/** What the checker says of a step that acts on what is so already, is not there, or is of another kind. */
const IDLE = [
  'done-twice',
  'refitted-before-removed',
  'discarded-reused',
  'single-use-reused',
  'wrong-kind',
  'unknown-name',
  'wrong-verb',
  'not-in-place',
  'unknown-position',
];
/** What a step is blamed for by other analyses than the state of the machine: not asked for here. */
const ELSEWHERE =
  /^(tool-|tester-|rule-|lubricant-|fluid-differs|brace-|torque-|caution-|signal-|hazard-|people-|supply-|time-|notice-|adapter-|wrench-|gauge-|heavy-lift|two-stops|count-|quantity-|supplies|sentence|stage-repeated|finding-without|isolated-out|relieved-before|lead-out|not-secured|never-needed|order-)/;

describe('at a verb’s object', () => {
  const places = PATHS.filter((path) => !path.includes('broken')).flatMap((path) =>
    new View(memoryHost(FILES))
      .file(path)!
      .procedures.flatMap(({ body }) => actionsIn(body?.statements ?? []))
      .filter(
        ({ objects, verb }) =>
          objects.length === 1 && verb !== 'measure' && verb !== 'record' && verb !== 'choose',
      )
      .map((action) => ({ path, action })),
  );
  const chosen = sample(places, 20, random(23));

  test(`${chosen.length} of ${places.length} places: what is proposed can be acted on`, {
    timeout: 3_600_000,
  }, () => {
    const next = random(31);
    let tried = 0;
    const wrong: string[] = [];
    for (const { path, action } of chosen) {
      const text = FILES[path]!;
      const object = action.objects[0]!;
      const { proposals } = completeAt(new View(memoryHost(FILES)), path, object.start);
      const things = proposals.filter(({ kind, label }) => kind === 'thing' && !label.includes('#'));
      // What the author wrote there can be acted on, so it is among them.
      if (object.positions.length === 0 && !things.some(({ label }) => label === object.name.text))
        wrong.push(`${path}:${action.start} ${action.verb} ${object.name.text} is not proposed`);
      for (const one of sampled(things, LONG ? 12 : 4, next)) {
        const { label, blocked } = one;
        // Cut off behind the step: what only the end of the job shows is not asked.
        const changed = text.slice(0, object.start) + label + text.slice(object.end, action.end);
        const end = action.end + label.length - (object.end - object.start);
        const found = checkProject(memoryHost({ ...FILES, [path]: changed }), [path]).findings.filter(
          (finding) => finding.file === path && finding.start >= action.start && finding.start < end,
        );
        const checks = found.map((finding) => finding.about?.check ?? finding.check);
        const idle = checks.filter((check) => IDLE.includes(check));
        const blame = checks.filter((check) => !ELSEWHERE.test(check));
        tried++;
        const what = `${path}:${action.start} ${action.verb} ${label}`;
        if (idle.length > 0) wrong.push(`${what}: ${idle}`);
        else if (!blocked && blame.length > 0) wrong.push(`${what}: not said to be in the way: ${blame}`);
        else if (blocked && blame.length === 0) wrong.push(`${what}: nothing in the way, said ${blocked}`);
      }
    }
    expect(wrong).toEqual([]);
    expect(tried).toBeGreaterThan(30);
  });
});
