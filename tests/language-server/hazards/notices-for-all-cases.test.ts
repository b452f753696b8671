/**
 * Notices for all cases at once against each case alone: random jobs with hazards, notices, tasks and branches. Every
 * finding about notices is given in exactly the cases in which that case alone has it. Source of what is expected: the
 * same execution of a text without branches and variants (see tests/properties/one-case.ts), so that sets of cases
 * play no part in it.
 */
import { describe, expect, it } from 'vitest';
import type { Machine, Procedure, Statement } from '../../../grammar/syntax/tree.ts';
import { NONE } from '../../../language-server/execution/cases.ts';
import { execute } from '../../../language-server/execution/execute.ts';
import { buildModel } from '../../../language-server/model/build.ts';
import type { Fact } from '../../../language-server/model/facts.ts';
import { type LoadedFile, Loader } from '../../../language-server/model/names.ts';
import { memoryHost } from '../../../language-server/project/project.ts';
import { absentFrom, machineFor, procedureFor } from '../../properties/one-case.ts';
import { Random } from '../../properties/random-job.ts';

const MACHINE = `machine m "m" {
  variant v0: a, b
  variant v1: a, b
  fluid spirit "spirit" hazard fuel
  part base "base" fixed
  part cover "cover" on base hazard moving can kill when removing mass 26 kg
  part blade "blade" on base hazard sharp can hurt only v0 is a
  part motor "motor" on base mass 22 kg hazard lifting
  part fan "fan" on motor mass 9 kg only v1 is b
  part head "head" on base opens air, tank hazard hot
  connection hose "hose" joins base opens air
  connection feed "feed" joins base opens tank
  part box "box" on base opens mains
  isolator breaker "breaker" in mains normally on
  control cock "cock" in air normally closed
  control tap "tap" in tank normally closed
  system air "air" pressure 8 bar temperature 90 °C relieved at cock hazard pressure, hot
  system mains "mains" live 400 V isolated at breaker hazard live only v0 is b
  system tank "tank" holds 5 L spirit drained at tap
  tool padlock "padlock"
}
`;

const ACTIONS = [
  ...[
    'remove cover',
    'refit cover',
    'remove blade',
    'clean blade',
    'remove motor',
    'refit motor',
    'remove head',
  ],
  ...[
    'refit head',
    'disconnect hose',
    'connect hose',
    'disconnect feed',
    'connect feed',
    'remove box',
    'refit box',
  ],
  ...['open cock', 'close cock', 'relieve air', 'pressurise air', 'let cool air', 'let cool head', 'run'],
  ...[
    'isolate mains',
    'restore mains',
    'prove mains safe',
    'lock out breaker',
    'unlock breaker',
    'drain tank',
  ],
  ...['fill tank', 'open tap', 'close tap', 'inspect base'],
];
const HAZARDS = ['pressure', 'hot', 'live', 'fuel', 'moving', 'sharp', 'lifting', 'pressure, hot'];

function randomProcedure(seed: number): string {
  const random = new Random(seed);
  let tag = 0;
  let forks = 3;
  const lines: string[] = ['procedure p "p" for m people 1 {'];
  const line = (indent: string): string => {
    const kind = random.below(10);
    if (kind < 3)
      return `${indent}${random.pick(['danger', 'warning', 'caution', 'note'])} ${random.pick(HAZARDS)} "s${tag++}"`;
    if (kind === 3) return `${indent}warning "s${tag++}"`;
    return `${indent}${random.pick(ACTIONS)} "s${tag++}"`;
  };
  const block = (indent: string, depth: number, length: number): void => {
    for (let i = 0; i < length; i++) {
      if (depth > 2 || !random.chance(0.25)) {
        lines.push(line(indent));
        continue;
      }
      const inner = 1 + random.below(3);
      const kind = random.below(4);
      if (kind < 2 || forks === 0) {
        lines.push(`${indent}when v${random.below(2)} is ${random.pick(['a', 'b'])} {`);
        block(`${indent}  `, depth + 1, inner);
        if (random.chance(0.4)) {
          lines.push(`${indent}} otherwise {`);
          block(`${indent}  `, depth + 1, inner);
        }
        lines.push(`${indent}}`);
      } else if (kind === 2) {
        forks--;
        lines.push(`${indent}if "seen ${forks}" {`);
        block(`${indent}  `, depth + 1, inner);
        lines.push(`${indent}}`);
      } else {
        forks--;
        lines.push(`${indent}inspect base "s${tag++}" {`, `${indent}  good {`);
        block(`${indent}    `, depth + 1, inner);
        lines.push(`${indent}  }`, `${indent}  worn {`);
        block(`${indent}    `, depth + 1, inner);
        lines.push(`${indent}  }`, `${indent}}`);
      }
    }
  };
  const tasks = 1 + random.below(3);
  for (let i = 0; i < tasks; i++) {
    if (random.chance(0.3)) lines.push(line('  '));
    lines.push(`  task t${i} "t${i}" {`);
    block('    ', 1, 3 + random.below(6));
    lines.push('  }');
  }
  lines.push('}');
  return lines.join('\n');
}

const ABOUT_NOTICES = new Set([
  ...[
    'caution-missing',
    'caution-late',
    'signal-word-weak',
    'heavy-lift',
    'relieved-before-lock',
    'not-kept-safe',
  ],
]);

function compare(seed: number): { cases: number; findings: string[]; disagreements: string[] } {
  const text = MACHINE + randomProcedure(seed);
  const file = new Loader(memoryHost({ 'job.dowel': text })).load('job.dowel')!;
  if (file.parsed.problems.length > 0) throw new Error(`${file.parsed.problems[0]!.message}\n${text}`);
  const [machine, procedure] = [file.machines[0]!, file.procedures[0]!];
  const keyOf = (fact: Fact) => {
    const line = text.slice(text.lastIndexOf('\n', fact.at.start) + 1, text.indexOf('\n', fact.at.start));
    return `${fact.check} ${/"s\d+"/.exec(line)?.[0] ?? line.trim()}`;
  };
  const { model } = buildModel(machine, file, [file]);
  const { run, facts } = execute(model, procedure, 'job.dowel', [file]);
  const { cases } = run;
  const said = new Map<string, number>();
  for (const fact of facts.filter(({ check }) => ABOUT_NOTICES.has(check)))
    said.set(keyOf(fact), cases.or(said.get(keyOf(fact)) ?? NONE, fact.cases ?? NONE));
  const disagreements: string[] = [];
  let count = 0;
  const values = cases.axes.map(() => 0);
  for (;;) {
    count++;
    const alone = new Set(factsAlone(machine, procedure, file, cases.axes, values).map(keyOf));
    for (const key of new Set([...said.keys(), ...alone])) {
      const together = cases.holds(said.get(key) ?? NONE, values);
      if (together === alone.has(key)) continue;
      const words = cases.axes.map((axis, index) => axis.phrases[values[index]!]).join(', ');
      disagreements.push(
        `seed ${seed}: ${key}: ${together ? 'only all at once' : 'only alone'} in the case ${words}`,
      );
    }
    let index = 0;
    while (index < values.length && ++values[index]! >= cases.axes[index]!.phrases.length)
      values[index++] = 0;
    if (index >= values.length) break;
  }
  return { cases: count, findings: [...said.keys()], disagreements };
}

function factsAlone(
  machine: Machine,
  procedure: Procedure,
  file: LoadedFile,
  axes: readonly { key: string }[],
  values: readonly number[],
): Fact[] {
  const oneCase = new Map<string, string | number>();
  axes.forEach(({ key }, index) => {
    const value = values[index]!;
    const [kind, ...rest] = key.split(' ');
    if (kind === 'variant') oneCase.set(key, 'ab'[value]!);
    else if (kind === 'seen') oneCase.set(`seen ${rest.slice(1).join(' ').trim()}`, value);
    else if (kind === 'outcome') oneCase.set(`outcome ${rest[1]}`, value);
  });
  const one = machineFor(machine, oneCase);
  const { model } = buildModel(one, { ...file, machines: [one] }, [{ ...file, machines: [one] }]);
  const missing = absentFrom(machine, oneCase);
  const body = procedure.body!;
  const statements = body.statements.map((statement): Statement => {
    if (statement.kind !== 'task') return statement;
    const inner = procedureFor({ ...procedure, body: statement.body! }, oneCase, missing).body!;
    return { ...statement, body: inner };
  });
  const job = procedureFor({ ...procedure, body: { ...body, statements } }, oneCase, missing);
  return execute(model, job, 'job.dowel', [file]).facts.filter(({ check }) => ABOUT_NOTICES.has(check));
}

const LONG = process.env.DOWEL_LONG === '1';

describe('notices for all cases at once agree with each case alone', () => {
  it('on random jobs', { timeout: 600_000 }, () => {
    const found = new Map<string, number>();
    const disagreements: string[] = [];
    let cases = 0;
    const jobs = LONG ? 4_000 : 300;
    for (let seed = 1; seed <= jobs; seed++) {
      const result = compare(seed);
      cases += result.cases;
      disagreements.push(...result.disagreements);
      for (const key of result.findings) {
        const check = key.split(' ')[0]!;
        found.set(check, (found.get(check) ?? 0) + 1);
      }
    }
    const counts = [...found].map(([check, count]) => `${count} ${check}`).join(', ');
    console.log(`${jobs} jobs: ${cases} cases; ${counts}; ${disagreements.length} disagreements`);
    expect(disagreements.slice(0, 10)).toEqual([]);
    expect([...found.keys()].sort()).toEqual([...ABOUT_NOTICES].sort());
  });
});
