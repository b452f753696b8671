/** A random job for all cases at once, and for each case alone: where the two find something else. */
import type { Machine, Procedure } from '../../grammar/syntax/tree.ts';
import { NONE } from '../../language-server/execution/cases.ts';
import { execute } from '../../language-server/execution/execute.ts';
import { buildModel } from '../../language-server/model/build.ts';
import type { Fact } from '../../language-server/model/facts.ts';
import { Loader } from '../../language-server/model/names.ts';
import { memoryHost } from '../../language-server/project/project.ts';
import { absentFrom, machineFor, procedureFor } from './one-case.ts';
import { randomJob } from './random-job.ts';

/** Hints and remarks about branches themselves have no meaning for a text without branches. */
const ABOUT_BRANCHES = new Set(['never-needed', 'variant-dead', 'undecided']);

export interface Compared {
  cases: number;
  findings: number;
  disagreements: string[];
}

export function compare(seed: number, axes: number): Compared {
  const job = randomJob(seed, axes);
  const text = job.machine + job.procedure;
  const loader = new Loader(memoryHost({ 'job.dowel': text }));
  const file = loader.load('job.dowel')!;
  const machine = file.machines[0]!;
  const procedure = file.procedures[0]!;
  if (file.parsed.problems.length > 0)
    throw new Error(`seed ${seed}: ${file.parsed.problems[0]!.message}\n${text}`);
  const keyOf = (fact: Fact) => {
    const line = text.slice(text.lastIndexOf('\n', fact.at.start) + 1, text.indexOf('\n', fact.at.start));
    return `${fact.inner ?? fact.check} ${fact.subject?.thing.name ?? ''} ${/"s\d+"/.exec(line)?.[0] ?? line.trim()}`;
  };
  const { model } = buildModel(machine, file, [file]);
  const together = execute(model, procedure, 'job.dowel', [file]);
  const { cases } = together.run;
  const facts = together.facts.filter((fact) => !ABOUT_BRANCHES.has(fact.check));
  // Rounds of a repeat are not cases of the job.
  const rounds = cases.axes.flatMap((axis, index) => (axis.key.startsWith('repeat ') ? [index] : []));
  const said = new Map<string, number>();
  for (const fact of facts) {
    const set = rounds.reduce((all, axis) => cases.forget(all, axis), fact.cases ?? NONE);
    said.set(keyOf(fact), cases.or(said.get(keyOf(fact)) ?? NONE, set));
  }
  const widths = cases.axes.map((axis) => (axis.key.startsWith('repeat ') ? 1 : axis.phrases.length));
  const disagreements: string[] = [];
  let count = 0;
  const values = widths.map(() => 0);
  for (;;) {
    count++;
    const alone = checkAlone(machine, procedure, file, cases.axes, values, keyOf);
    for (const key of new Set([...said.keys(), ...alone])) {
      const inSet = cases.holds(said.get(key) ?? NONE, values);
      if (inSet !== alone.has(key)) {
        const words = cases.axes.map((axis, index) => axis.phrases[values[index]!]).join(', ');
        disagreements.push(
          `seed ${seed}: ${key}: ${inSet ? 'only all at once' : 'only alone'} in the case ${words}`,
        );
      }
    }
    let index = 0;
    while (index < widths.length && ++values[index]! >= widths[index]!) values[index++] = 0;
    if (index >= widths.length) break;
  }
  return { cases: count, findings: said.size, disagreements };
}

function checkAlone(
  machine: Machine,
  procedure: Procedure,
  file: Parameters<typeof buildModel>[1],
  axes: readonly { key: string }[],
  values: readonly number[],
  keyOf: (fact: Fact) => string,
): Set<string> {
  const oneCase = new Map<string, string | number>();
  axes.forEach(({ key }, index) => {
    const value = values[index]!;
    const [kind, ...rest] = key.split(' ');
    if (kind === 'variant') oneCase.set(key, 'ab'[value]!);
    else if (kind === 'choice') oneCase.set(`choice ${rest[1]}`, 'xy'[value]!);
    else if (kind === 'seen') oneCase.set(`seen ${rest.slice(1).join(' ').trim()}`, value);
    else if (kind === 'outcome') oneCase.set(`outcome ${rest[1]}`, value);
  });
  const one = machineFor(machine, oneCase);
  const { model } = buildModel(one, { ...file, machines: [one] }, [{ ...file, machines: [one] }]);
  const { facts } = execute(
    model,
    procedureFor(procedure, oneCase, absentFrom(machine, oneCase)),
    'job.dowel',
    [file],
  );
  return new Set(facts.filter((fact) => !ABOUT_BRANCHES.has(fact.check)).map(keyOf));
}
