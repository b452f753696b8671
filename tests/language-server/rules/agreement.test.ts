/**
 * Rules judged for all cases at once against an evaluator written from the reference alone, one case at a time, on
 * random jobs with random rules: the same sentences broken, in the same cases, at the same lines.
 */
import { describe, expect, test } from 'vitest';
import { execute } from '../../../language-server/execution/execute.ts';
import { SharedWork } from '../../../language-server/execution/shared-work.ts';
import { buildModel } from '../../../language-server/model/build.ts';
import { Loader } from '../../../language-server/model/names.ts';
import { memoryHost } from '../../../language-server/project/project.ts';
import { ruleWatch } from '../../../language-server/rules/watch.ts';
import { brokenAt } from './evaluator.ts';
import { type Job, randomJob } from './random-jobs.ts';

const PATH = 'job.dowel';

/** `sentence place` for each sentence broken in the case, by the product. */
function productSays(job: Job): (known: Readonly<Record<string, string>>) => string[] {
  const file = new Loader(memoryHost({ [PATH]: job.text })).load(PATH)!;
  expect(file.parsed.problems.map(({ message }) => message)).toEqual([]);
  const { model } = buildModel(file.machines[0], file, [file]);
  const procedure = file.procedures[0]!;
  const { run, facts } = execute(model, procedure, PATH, [file], {}, new SharedWork(), false, ruleWatch);
  const lineOf = (offset: number) => job.text.slice(0, offset).split('\n').length;
  const broken = facts.filter(({ check }) => check === 'rule-broken');
  return (known) => {
    const values = run.cases.axes.map(({ key, phrases }) => {
      const [kind, ...name] = key.split(' ');
      if (kind === 'variant') {
        const axis = name.join(' ');
        return phrases.indexOf(`${axis} is ${known[axis]}`);
      }
      const sight = Object.keys(known).find((axis) => phrases[0] === `“${axis}”`);
      return sight !== undefined && known[sight] === 'yes' ? 0 : 1;
    });
    return broken
      .filter(({ cases }) => run.cases.holds(cases!, values))
      .map(({ at, story, words }) => {
        const rule = story!.find(({ what }) => what === 'ruled')!;
        expect(lineOf(rule.at.start)).toBe(job.lines[0]! - 1);
        const where = words!.where === 'step' ? lineOf(at.start) : words!.where;
        return `${words!.sentence} ${words!.body} ${where}`;
      });
  };
}

function agree(seed: number): number {
  const job = randomJob(seed);
  const product = productSays(job);
  let count = 0;
  for (const known of job.cases) {
    const trace = job.run(known);
    const wanted = job.sentences.flatMap((sentence, index) =>
      [...brokenAt(sentence, trace)].map((place) => `R ${index} ${place}`),
    );
    const found = [...new Set(product(known))];
    count += wanted.length;
    expect(found.sort(), `seed ${seed}, ${JSON.stringify(known)}\n${job.text}`).toEqual(wanted.sort());
  }
  return count;
}

describe('random jobs with random rules', () => {
  test.each([0, 1, 2, 3])(
    '500 jobs, part %i',
    (part) => {
      let broken = 0;
      for (let seed = part * 500; seed < part * 500 + 500; seed++) broken += agree(seed);
      // The jobs are worth their while: there is something to disagree about.
      expect(broken).toBeGreaterThan(5_000);
    },
    300_000,
  );
});
