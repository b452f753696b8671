/** Random jobs with random rules, as text for the product and, beside it, as data for the evaluator. */
import { GROUPS, type Pattern, type Sentence, type Step, type Trace } from './evaluator.ts';

/** A small generator of numbers, the same for the same seed (mulberry32). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

type Case = Readonly<Record<string, string>>;

type Statement =
  | { kind: 'step'; line: number; verb: string; groups: string[][]; turns?: number }
  | { kind: 'branch'; axis: string; value: string; body: Statement[]; otherwise: Statement[] }
  | { kind: 'do'; task: string }
  | { kind: 'stop' };

export interface Job {
  text: string;
  sentences: Sentence[];
  /** Line of each sentence, from 1. */
  lines: number[];
  cases: Case[];
  run(one: Case): Trace;
}

/** `cam` has two positions; `tap` is only on the small size. */
const SINGLE = ['shaft', 'cock', 'tap', 'gauge'];
const ALL = [...SINGLE, ...GROUPS.cam!];
const CONTROLS = ['cock', 'tap'];
const MACHINE = `machine rig "rig" {
  variant size: small, large
  variant supply: single-phase, three-phase
  part bed "bed" fixed
  part shaft "shaft" on bed
  part cam "cam" x2 on bed
  control cock "cock" normally closed
  control tap "tap" normally closed only size is small
  tool gauge "gauge"
`;

export function randomJob(seed: number): Job {
  const random = randomFrom(seed);
  const below = (count: number) => Math.floor(random() * count);
  const one = <Item>(items: readonly Item[]): Item => items[below(items.length)]!;
  const text: string[] = MACHINE.trimEnd().split('\n');

  // ------------------------------------------------------------ rules

  const things = (): { words: string; things: string[] } => {
    const roll = below(8);
    if (roll === 0) return { words: 'any control', things: CONTROLS };
    if (roll === 1) return { words: 'cam', things: [...GROUPS.cam!] };
    if (roll === 2) return { words: 'cock, tap', things: CONTROLS };
    const thing = one(ALL);
    return { words: thing, things: [thing] };
  };
  const state = (): { words: string; pattern: Pattern } => {
    for (;;) {
      const about = things();
      const word = one(stateWords(about.things));
      if (word === undefined) continue;
      const negated = below(4) === 0;
      return {
        words: `${about.words} ${negated ? 'not ' : ''}${word}`,
        pattern: { kind: 'state', things: about.things, word, negated },
      };
    }
  };
  const step = (counted: boolean): { words: string; pattern: Pattern } => {
    if (below(8) === 0) return { words: 'sign', pattern: { kind: 'step', verb: 'sign', things: [] } };
    for (;;) {
      const about = things();
      const verb = one([...verbs(about.things), ...(about.things.every(isPart) ? ['support'] : [])]);
      if (verb === undefined) continue;
      const pattern: Pattern = { kind: 'step', verb, things: about.things };
      const roll = below(3);
      if (verb === 'turn' && roll === 0) {
        const turns = 1 + below(3);
        return { words: `turn ${about.words} ${turns} turns`, pattern: { ...pattern, turns } };
      }
      if (counted && roll === 1)
        return { words: `${verb} ${about.words} 2 times`, pattern: { ...pattern, times: 2 } };
      return { words: `${verb} ${about.words}`, pattern };
    }
  };
  const sentences: Sentence[] = [];
  const lines: number[] = [];
  text.push('  rule r "R" {');
  for (let count = 0; count < 6; count++) {
    const scope = one(['always', 'before', 'after', 'while'] as const);
    const demand = one(['require', 'never'] as const);
    const trigger =
      scope === 'always' ? undefined : scope === 'while' || below(3) === 0 ? state() : step(false);
    const demanded = below(2) === 0 ? state() : step(demand === 'require');
    sentences.push({
      scope,
      demand,
      demanded: demanded.pattern,
      ...(trigger ? { trigger: trigger.pattern } : {}),
    });
    text.push(`    ${scope} ${trigger ? `${trigger.words} ` : ''}${demand} ${demanded.words}`);
    lines.push(text.length);
  }
  text.push('  }', '}', 'procedure p "P" for rig {');

  // ------------------------------------------------------------ steps

  const seen: string[] = [];
  const tasks: Record<string, Statement[]> = {};
  const action = (indent: string): Statement => {
    if (below(10) === 0) {
      text.push(`${indent}sign`);
      return { kind: 'step', line: text.length, verb: 'sign', groups: [[]] };
    }
    const first = one(ALL);
    const verb = one(verbs([first]).concat(isPart(first) ? ['raise'] : []));
    const more = ALL.filter(
      (thing) => thing !== first && [...verbs([thing]), ...(isPart(thing) ? ['raise'] : [])].includes(verb),
    );
    const turns = verb === 'turn' && below(2) === 0 ? 1 + below(2) : undefined;
    const second = more.length > 0 && below(3) === 0 ? one(more) : undefined;
    const together = below(2) === 0;
    const words = second === undefined ? first : `${first}${together ? ' and ' : ', '}${second}`;
    text.push(`${indent}${verb} ${words}${turns ? ` ${turns} turn${turns > 1 ? 's' : ''}` : ''}`);
    const groups = second === undefined ? [[first]] : together ? [[first, second]] : [[first], [second]];
    return { kind: 'step', line: text.length, verb, groups, ...(turns ? { turns } : {}) };
  };
  const block = (count: number, depth: number): Statement[] => {
    const indent = '  '.repeat(depth + 1);
    const result: Statement[] = [];
    for (let index = 0; index < count; index++) {
      const roll = below(12);
      if (roll === 0 && depth < 3) {
        const axis = one(['size', 'supply']);
        const value = axis === 'size' ? one(['small', 'large']) : one(['single-phase', 'three-phase']);
        text.push(`${indent}when ${axis} is ${value} {`);
        const body = block(1 + below(3), depth + 1);
        text.push(`${indent}} otherwise {`);
        const otherwise = block(below(3), depth + 1);
        text.push(`${indent}}`);
        result.push({ kind: 'branch', axis, value, body, otherwise });
      } else if (roll === 1 && depth < 3 && seen.length < 2) {
        const axis = `sight ${seen.length}`;
        seen.push(axis);
        text.push(`${indent}if "${axis}" {`);
        const body = block(1 + below(3), depth + 1);
        if (below(5) === 0) {
          text.push(`${indent}  stop "Enough."`);
          body.push({ kind: 'stop' });
        }
        text.push(`${indent}}`);
        result.push({ kind: 'branch', axis, value: 'yes', body, otherwise: [] });
      } else if (roll === 2 && depth === 0) {
        const task = `t${Object.keys(tasks).length}`;
        text.push(`${indent}task ${task} "T" {`);
        tasks[task] = block(1 + below(2), depth + 1);
        text.push(`${indent}}`);
        // A task is done where it stands, and once more where it is named.
        result.push({ kind: 'do', task });
        if (below(2) === 0) {
          text.push(`${indent}do ${task}`);
          result.push({ kind: 'do', task });
        }
      } else result.push(action(indent));
    }
    return result;
  };
  const body = block(4 + below(8), 0);
  text.push('}');

  let cases: Record<string, string>[] = [{}];
  for (const [axis, values] of [
    ['size', ['small', 'large']],
    ['supply', ['single-phase', 'three-phase']],
    ...seen.map((sight) => [sight, ['yes', 'no']] as const),
  ] as const)
    cases = cases.flatMap((known) => values.map((value) => ({ ...known, [axis]: value })));

  return {
    text: `${text.join('\n')}\n`,
    sentences,
    lines,
    cases,
    run: (known) => carryOut(body, tasks, known),
  };
}

const isPart = (thing: string) => /^(shaft|cam)/.test(thing);

/** Verbs that act on each of these things and leave them where they are. */
function verbs(things: readonly string[]): string[] {
  const on = (thing: string) =>
    CONTROLS.includes(thing)
      ? ['open', 'close', 'inspect', 'clean']
      : thing === 'gauge'
        ? ['fit', 'remove']
        : ['turn', 'mark', 'inspect', 'clean'];
  return on(things[0]!).filter((verb) => things.every((thing) => on(thing).includes(verb)));
}

function stateWords(things: readonly string[]): string[] {
  const of = (thing: string) =>
    CONTROLS.includes(thing)
      ? ['open', 'closed']
      : thing === 'gauge'
        ? ['fitted', 'off']
        : ['marked', 'supported'];
  return of(things[0]!).filter((word) => things.every((thing) => of(thing).includes(word)));
}

/** One case, step by step. */
function carryOut(
  body: readonly Statement[],
  tasks: Readonly<Record<string, Statement[]>>,
  known: Case,
): Trace {
  const has = new Set(ALL.filter((thing) => thing !== 'tap' || known.size === 'small'));
  const state = new Set(['gauge off', ...CONTROLS.map((thing) => `${thing} closed`)]);
  const steps: Step[] = [];
  const states: Set<string>[] = [new Set(state)];
  let stopped = false;
  const go = (statements: readonly Statement[]) => {
    for (const statement of statements) {
      if (stopped) return;
      if (statement.kind === 'stop') stopped = true;
      else if (statement.kind === 'do') go(tasks[statement.task]!);
      else if (statement.kind === 'branch')
        go(known[statement.axis] === statement.value ? statement.body : statement.otherwise);
      else {
        for (const group of statement.groups) {
          const { line, verb, turns } = statement;
          steps.push({ line, verb, things: group, ...(turns ? { turns } : {}) });
          for (const thing of group) if (has.has(thing)) change(state, verb, thing);
          states.push(new Set(state));
        }
      }
    }
  };
  go(body);
  return { steps, states, has, finished: !stopped };
}

function change(state: Set<string>, verb: string, thing: string): void {
  const swap = (away: string, here: string) => {
    state.delete(`${thing} ${away}`);
    state.add(`${thing} ${here}`);
  };
  if (verb === 'open') swap('closed', 'open');
  if (verb === 'close') swap('open', 'closed');
  if (verb === 'fit') swap('off', 'fitted');
  if (verb === 'remove') swap('fitted', 'off');
  if (verb === 'mark') state.add(`${thing} marked`);
  if (verb === 'raise') state.add(`${thing} supported`);
}
