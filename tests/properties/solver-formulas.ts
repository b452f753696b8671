/**
 * The history of a thing as formulas in SMT-LIB 2.7 (smt-lib.org, "The SMT-LIB Standard"): every axis is a
 * number, the state after each step is an if-then-else over the state before it, and each precondition is the
 * question whether there are values for which the step is carried out although it is not met.
 */
import type { Axis, History, Line, Question } from './solver-job.ts';

export interface Asked {
  /** Check and step, as the findings are named: `done-twice s4`. */
  key: string;
  /** True in the cases that have the fault. */
  formula: string;
}

export interface Formulas {
  /** Declarations and definitions, to be said before anything is asked. */
  prelude: string;
  asked: Asked[];
}

export function formulasOf({ kind, axes, only, body }: History): Formulas {
  const prelude: string[] = [];
  const asked: Asked[] = [];
  for (const axis of axes) {
    const name = symbol(axis.name);
    prelude.push(`(declare-const ${name} Int)`, `(assert (and (<= 0 ${name}) (< ${name} ${axis.width})))`);
  }
  let names = 0;
  const define = (sort: 'Int' | 'Bool', formula: string): string => {
    const name = `d${names++}`;
    prelude.push(`(define-fun ${name} () ${sort} ${formula})`);
    return name;
  };
  const exists = only ? define('Bool', axisFormula(only)) : 'true';
  const number = (state: string) => kind.states.indexOf(state);
  let state = '0';
  /** The step that made it so; -1: so from the start. */
  let since = '(- 1)';
  let stopped = 'false';
  const isOne = (states: readonly string[]) =>
    `(or false ${states.map((one) => `(= ${state} ${number(one)})`).join(' ')})`;

  const truth = (question: Question, within: string): string => {
    if (question.ask === 'both')
      return `(and ${truth(question.left, within)} ${truth(question.right, within)})`;
    if (question.ask === 'axis') return axisFormula(question);
    const so = `(and ${exists} ${within} ${isOne(kind.words[question.word]!)})`;
    return question.negated ? `(not ${so})` : so;
  };

  const walk = (lines: readonly Line[], path: string): void => {
    for (const line of lines) {
      const within = define('Bool', `(and ${path} (not ${stopped}))`);
      if (line.line === 'stop') stopped = define('Bool', `(or ${stopped} ${within})`);
      else if (line.line === 'branch') {
        const yes = define('Bool', truth(line.question, within));
        walk(line.body, define('Bool', `(and ${within} ${yes})`));
        walk(line.otherwise, define('Bool', `(and ${within} (not ${yes}))`));
      } else if (line.line === 'outcomes') {
        line.bodies.forEach((inner, value) => {
          walk(inner, define('Bool', `(and ${within} (= ${symbol(line.axis)} ${value}))`));
        });
      } else if (line.line === 'act') {
        const { act, tag } = line;
        const done = define('Bool', `(and ${within} ${exists})`);
        const already = define('Bool', `(and ${done} ${isOne(act.already)})`);
        const untouched = `(< ${since} 0)`;
        if (act.putsBack) {
          asked.push({ key: `refitted-before-removed s${tag}`, formula: `(and ${already} ${untouched})` });
          asked.push({ key: `done-twice s${tag}`, formula: `(and ${already} (not ${untouched}))` });
        } else asked.push({ key: `done-twice s${tag}`, formula: already });
        if (act.cannot) {
          const cannot = define('Bool', `(and ${done} ${isOne(act.cannot.states)})`);
          asked.push({ key: `${act.cannot.check} s${tag}`, formula: cannot });
        }
        const works = define('Bool', `(and ${done} (not ${already}))`);
        state = define('Int', `(ite ${works} ${number(act.makes)} ${state})`);
        since = define('Int', `(ite ${works} ${tag} ${since})`);
      }
    }
  };
  walk(body, 'true');

  const finished = define('Bool', `(and ${exists} (not ${stopped}))`);
  for (const check of new Set(Object.values(kind.left))) {
    const states = Object.keys(kind.left).filter((one) => kind.left[one] === check);
    const left = define('Bool', `(and ${finished} ${isOne(states)})`);
    for (const tag of tagsOf(body))
      asked.push({ key: `${check} s${tag}`, formula: `(and ${left} (= ${since} ${tag}))` });
  }
  return { prelude: prelude.join('\n'), asked };
}

/** A case, as pairs of axis and value. */
export function caseFormula(named: readonly { axis: string; value: number }[]): string {
  return `(and true ${named.map(({ axis, value }) => `(= ${symbol(axis)} ${value})`).join(' ')})`;
}

function axisFormula(question: Question): string {
  if (question.ask !== 'axis') throw new Error('Only an axis can be asked here.');
  const among = `(or false ${question.values.map((value) => `(= ${symbol(question.axis)} ${value})`).join(' ')})`;
  return question.negated ? `(not ${among})` : among;
}

function symbol(axis: Axis['name']): string {
  return axis.replaceAll(' ', '-');
}

function tagsOf(lines: readonly Line[]): number[] {
  return lines.flatMap((line) => {
    if (line.line === 'act') return [line.tag];
    if (line.line === 'branch') return [...tagsOf(line.body), ...tagsOf(line.otherwise)];
    return line.line === 'outcomes' ? line.bodies.flatMap(tagsOf) : [];
  });
}
