/**
 * Whether a precondition can fail, against a solver from outside: Z3, as the npm package `z3-solver` 5.2.0
 * (of itself it says 5.1.0; de Moura and Bjørner, "Z3: an efficient SMT solver", TACAS 2008). For random
 * histories of one thing, each precondition of each step is put to it as a formula: is there an assignment for
 * which it fails there? The product must have that finding at that step where and only where there is, and in
 * exactly those cases, so that the case it names to the reader is one of them, too.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { init } from 'z3-solver';
import { type CaseSet, type Cases, NONE } from '../../language-server/execution/cases.ts';
import { execute } from '../../language-server/execution/execute.ts';
import { buildModel } from '../../language-server/model/build.ts';
import { Loader } from '../../language-server/model/names.ts';
import { memoryHost } from '../../language-server/project/project.ts';
import { caseFormula, formulasOf } from './solver-formulas.ts';
import { type History, KINDS, randomHistory, textOf } from './solver-job.ts';

/** All 6,000 in the long run; a share of them in the normal one. */
const JOBS = process.env.DOWEL_LONG === '1' ? 6_000 : 300;

/** Cases that make up a whole set, the one that is named to the reader first. */
type Said = { axis: string; value: number }[][];

let solve: (script: string) => string[];

beforeAll(async () => {
  const { Z3, em } = await init();
  const context = Z3.mk_context(Z3.mk_config());
  solve = (script) => {
    // In place of `Z3.eval_smtlib2_string`, which frees the text before its thread has read it.
    const bytes = new TextEncoder().encode(`${script}\0`);
    const at = em._malloc(bytes.length);
    em.HEAPU8.set(bytes, at);
    const said: string = em.UTF8ToString(em._Z3_eval_smtlib2_string(context, at));
    em._free(at);
    return said.trim().split('\n');
  };
  return () => em.PThread.terminateAllThreads();
});

describe('whether a precondition can fail, as Z3 sees it', () => {
  it.each(KINDS.map((kind, index) => [kind.declared, index] as const))('%s', (_, kind) => {
    let questions = 0;
    let fail = 0;
    const disagreements: string[] = [];
    for (let seed = kind; seed < JOBS; seed += KINDS.length) {
      const history = randomHistory(seed);
      const text = textOf(history);
      const said = findingsOf(text, history);
      const { prelude, asked } = formulasOf(history);
      const known = new Set(asked.map(({ key }) => key));
      for (const key of said.keys())
        if (!known.has(key)) disagreements.push(`job ${seed}: ${key} was never asked\n${text}`);
      // What the product says and what the formula says differ somewhere.
      const wrong = asked.map(
        ({ key, formula }) =>
          `(xor ${formula} (or false ${(said.get(key) ?? []).map(caseFormula).join(' ')}))`,
      );
      questions += asked.length;
      fail += said.size;
      if (!canBe(prelude, [`(or ${wrong.join(' ')})`])[0]) continue;
      const [fails, differ] = [
        canBe(
          prelude,
          asked.map(({ formula }) => formula),
        ),
        canBe(prelude, wrong),
      ];
      asked.forEach(({ key }, index) => {
        if (!differ[index]) return;
        const how = said.has(key) ? (fails[index] ? 'in other cases' : 'Z3 has none') : 'only Z3 has it';
        disagreements.push(`job ${seed}: ${key}: ${how}\n${text}`);
      });
    }
    console.log(`${questions} questions, ${fail} can fail, ${disagreements.length} disagreements`);
    expect(disagreements.slice(0, 3)).toEqual([]);
    // Both answers were given often enough.
    expect(fail).toBeGreaterThan(JOBS / KINDS.length);
    expect(questions - fail).toBeGreaterThan(JOBS / KINDS.length);
  });

  it('sees a difference where there is one', () => {
    let seen = 0;
    for (let seed = 0; seed < 60; seed++) {
      const history = randomHistory(seed);
      const said = findingsOf(textOf(history), history);
      const { prelude, asked } = formulasOf(history);
      const one = asked.find(({ key }) => (said.get(key)?.[0]?.length ?? 0) > 0);
      if (!one) continue;
      seen++;
      const cover = said.get(one.key)!;
      // One case too few, and all cases in place of some.
      const few = `(xor ${one.formula} (or false ${cover.slice(1).map(caseFormula).join(' ')}))`;
      const many = `(xor ${one.formula} true)`;
      expect(canBe(prelude, [few, many, one.formula])).toEqual([true, true, true]);
    }
    expect(seen).toBeGreaterThan(20);
  });
});

/** For each formula whether some assignment makes it true. */
function canBe(prelude: string, formulas: readonly string[]): boolean[] {
  const asked = formulas.map((formula) => `(push)(assert ${formula})(check-sat)(pop)`);
  const answers = solve(`(reset)\n${prelude}\n${asked.join('\n')}`);
  expect(answers.length).toBe(formulas.length);
  return answers.map((line) => {
    if (line !== 'sat' && line !== 'unsat') throw new Error(`Z3 says: ${line}`);
    return line === 'sat';
  });
}

/** What the product finds about the thing: check and step, with the cases. */
function findingsOf(text: string, history: History): Map<string, Said> {
  const loader = new Loader(memoryHost({ 'job.dowel': text }));
  const file = loader.load('job.dowel')!;
  if (file.parsed.problems.length > 0) throw new Error(`${file.parsed.problems[0]!.message}\n${text}`);
  const { model } = buildModel(file.machines[0]!, file, [file]);
  const { facts, run } = execute(model, file.procedures[0]!, 'job.dowel', [file]);
  const { cases } = run;
  const axisNames = cases.axes.map(({ key }) => axisName(key, text));
  for (const name of axisNames) if (!history.axes.some((axis) => axis.name === name)) throw new Error(name);
  const sets = new Map<string, CaseSet>();
  for (const fact of facts) {
    // A hint about needless work asks nothing of a state.
    if (fact.subject?.thing.name !== 'it' || fact.check === 'never-needed') continue;
    const line = text.slice(text.lastIndexOf('\n', fact.at.start) + 1, text.indexOf('\n', fact.at.start));
    const key = `${fact.inner ?? fact.check} ${/"(s\d+)"/.exec(line)?.[1] ?? line.trim()}`;
    sets.set(key, cases.or(sets.get(key) ?? NONE, fact.cases ?? NONE));
  }
  const namedBy = (set: CaseSet) =>
    cases.smallest(set).map(({ axis, value }) => ({ axis: axisNames[axis]!, value }));
  return new Map([...sets].map(([key, set]) => [key, coverOf(cases, set).map(namedBy)]));
}

/** Sets of one named case each that together are the whole set; the first is the one named to the reader. */
function coverOf(cases: Cases, set: CaseSet): CaseSet[] {
  const cover: CaseSet[] = [];
  for (let left = set; left !== NONE; left = cases.minus(left, cover.at(-1)!)) {
    const named = cases.smallest(left);
    cover.push(named.reduce((all, { axis, value }) => cases.and(all, cases.oneOf(axis, [value])), 1));
  }
  return cover;
}

function axisName(key: string, text: string): string {
  const [kind, ...rest] = key.split(' ');
  if (kind === 'variant') return rest[0]!;
  if (kind === 'choice') return rest[1]!;
  if (kind === 'seen') return rest.slice(1).join(' ').trim();
  return `outcome ${/"(s\d+)"/.exec(text.slice(Number(rest[1])))![1]}`;
}
