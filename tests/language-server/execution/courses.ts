/**
 * Small jobs carried out by the executor alone, without the checks, and what it finds in short: the line of the step, the
 * name, what it is about, what is in the way, what earlier lines did, words, the case.
 */
import { caseWords } from '../../../language-server/checks/speak.ts';
import type { Cases } from '../../../language-server/execution/cases.ts';
import { execute } from '../../../language-server/execution/execute.ts';
import { buildModel } from '../../../language-server/model/build.ts';
import type { Fact, Mentioned } from '../../../language-server/model/facts.ts';
import type { Model } from '../../../language-server/model/model.ts';
import { type LoadedFile, Loader } from '../../../language-server/model/names.ts';
import { memoryHost } from '../../../language-server/project/project.ts';

export function machineOf(text: string): { model: Model; file: LoadedFile } {
  const file = new Loader(memoryHost({ 'machine.dowel': text })).load('machine.dowel')!;
  if (file.parsed.problems.length > 0) throw new Error(file.parsed.problems[0]!.message);
  return { model: buildModel(file.machines[0]!, file, [file]).model, file };
}

/** The steps as a procedure of its own, one on a line: the first stands in line 1. */
export function jobText(steps: readonly string[], headers = ''): string {
  return `procedure p "Job" for m ${headers} {${headers === '' ? '' : '//'}\n${steps.join('\n')}\n}\n`;
}

let jobs = 0;

/** Carries out a procedure; `used` are others that it may use. Its header stands in line 0, theirs before it. */
export function found({ model }: { model: Model }, job: string, used = ''): string[] {
  const text = used + job;
  const lineOf = (offset: number) => lineIn(text, offset) - lineIn(used, used.length);
  // Each under a path of its own: what is seen and found in one job is nothing to the next.
  const path = `job-${++jobs}.dowel`;
  const file = new Loader(memoryHost({ [path]: text })).load(path)!;
  if (file.parsed.problems.length > 0) throw new Error(`${file.parsed.problems[0]!.message}\n${text}`);
  const { facts, run } = execute(model, file.procedures.at(-1)!, path, [file]);
  return facts
    .map((fact) => ({ fact, line: lineOf(fact.at.start) }))
    .sort((a, b) => a.line - b.line || (a.fact.check < b.fact.check ? -1 : 1))
    .map(({ fact, line }) => `${line} ${inShort(fact, lineOf, run.cases, model)}`);
}

function lineIn(text: string, offset: number): number {
  return text.slice(0, offset).split('\n').length - 1;
}

function inShort(fact: Fact, lineOf: (offset: number) => number, cases: Cases, model: Model): string {
  const { check, inner, subject, others = [], story = [], words = {} } = fact;
  const all = [inner ? `${check}:${inner}` : check];
  if (subject) all.push(named(subject));
  if (others.length > 0) all.push(`< ${others.map(named).join(', ')}`);
  if (story.length > 0)
    all.push(
      `(${story.map(({ at, what, thing }) => `${lineOf(at.start)} ${what}${thing && thing !== subject?.thing ? ` ${thing.name}` : ''}`).join('; ')})`,
    );
  const said = Object.entries(words).map(([key, value]) => (key === value ? key : `${key} ${value}`));
  if (said.length > 0) all.push(`{${said.join(', ')}}`);
  const inCase =
    fact.cases === undefined ? undefined : caseWords(fact.cases, cases, fact.every ?? model.built);
  if (inCase) all.push(`[${inCase}]`);
  return all.join(' ');
}

function named({ thing, items }: Mentioned): string {
  if (!items || items.length === thing.positions.length) return thing.name;
  return `${thing.name}${items.map((item) => `#${thing.positions[item - thing.first]}`).join('')}`;
}
