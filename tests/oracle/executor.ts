/**
 * Runs a procedure case by case with plain objects for the state: each combination of variants from the start,
 * and wherever something is found, measured or chosen, once for every answer, each with a state of its own. Cases
 * whose states have become the same again (but for the lines that made them so) go on as one; that changes no
 * verdict. Slow and simple on purpose: it is what the product's way of carrying all cases at once is compared with.
 */
import { Execution } from './flow.ts';
import { headersHold } from './headers.ts';
import type { Model, Variants } from './model.ts';
import { holdsFor, modelOf } from './model.ts';
import type { Work } from './needs.ts';
import type { Reading } from './reader.ts';
import { readAll, wholeMachine } from './reader.ts';
import type { Machine, Procedure } from './shape.ts';
import { doesAgain } from './statements.ts';
import { Comparison, editBetween, type Trace } from './trace.ts';
import { Watch } from './watch.ts';

export interface Violation {
  /** The name of the finding, as in the chapter on states. */
  kind: string;
  line: number;
  /** One case that shows it: the variants and what was answered on the way. */
  cases: string;
}

/** Every finding that the chapter on states names (and `contract-broken`, for `ends with`). */
export const KINDS: ReadonlySet<string> = new Set([
  ...['covered', 'not-in-place', 'done-twice', 'refitted-before-removed', 'not-made-safe', 'not-proved-safe'],
  ...['opened-full', 'still-held', 'still-connected', 'not-supported', 'not-marked', 'thrown-away-with'],
  ...['discarded-reused', 'single-use-reused', 'trial-not-undone', 'seat-missing', 'seal-missing'],
  ...['face-not-cleaned', 'tightened-unseated', 'retightened-yield', 'stage-skipped', 'stage-repeated'],
  ...['stage-out-of-order', 'not-secured', 'wrong-verb', 'isolated-out-of-order', 'restored-out-of-order'],
  ...['turned-while-locked', 'left-off', 'left-aside', 'left-loose', 'left-disconnected', 'left-open'],
  ...['left-locked', 'left-drained', 'left-isolated', 'not-bled', 'left-supported', 'fixture-left-on'],
  ...['bypass-left', 'contract-broken', 'chosen-not-fitted', 'start-without-seal'],
]);

/** What is looked at beside the states, and in the headers. */
export const BESIDE: ReadonlySet<string> = new Set([
  ...['caution-missing', 'caution-late', 'signal-word-weak', 'heavy-lift'],
  ...['compound-missing', 'lubricant-missing', 'filled-before-cured', 'fluid-differs'],
  ...['tool-unlisted', 'tool-unused', 'supply-short', 'time-differs', 'people-short'],
]);

/** What a right text went through, to compare a spoiled one with (see `trace.ts`). */
export interface Traces {
  source: string;
  /** By procedure, machine and variants. */
  runs: Map<string, Trace>;
}

/** All violations of the procedures of one file. */
export function execute(files: Readonly<Record<string, string>>, path: string): Violation[] {
  const found = new Map<string, Violation>();
  everyRun(files, path, (run) => {
    const report = (kind: string, line: number, cases: string) => {
      if (!found.has(`${kind} ${line}`)) found.set(`${kind} ${line}`, { kind, line, cases });
    };
    new Execution(run.reading, run.procedure, run.model, run.variants, allowing(run.procedure, report)).run();
  });
  return [...found.values()].toSorted((a, b) => a.line - b.line || a.kind.localeCompare(b.kind));
}

/** As `execute`, and what is looked at beside the states: notices, compounds, lifting, headers. */
export function judge(files: Readonly<Record<string, string>>, path: string): Violation[] {
  const found = new Map<string, Violation>();
  everyRun(files, path, ({ reading, procedure, model, variants, machine }) => {
    const add = (kind: string, line: number, cases: string) => {
      if (!found.has(`${kind} ${line}`)) found.set(`${kind} ${line}`, { kind, line, cases });
    };
    const report = allowing(procedure, add);
    headersHold(reading, procedure, machine, (kind, line) => report(kind, line, ''));
    const watch = (w: Work) => new Watch(w, procedure.people);
    new Execution(reading, procedure, model, variants, report, watch).run();
  });
  return [...found.values()].toSorted((a, b) => a.line - b.line || a.kind.localeCompare(b.kind));
}

/** Whether there is any violation; stops at the first. With the traces of the text it was made from: sooner. */
export function isWrong(files: Readonly<Record<string, string>>, path: string, like?: Traces): boolean {
  const edit = like && editBetween(like.source, files[path]!);
  try {
    everyRun(files, path, (run) => {
      const report = allowing(run.procedure, () => {
        throw new FoundOne();
      });
      const execution = new Execution(run.reading, run.procedure, run.model, run.variants, report);
      const trace = like?.runs.get(run.key);
      if (trace && edit) execution.compareWith(new Comparison(trace, edit));
      execution.run();
    });
  } catch (error) {
    if (error instanceof FoundOne) return true;
    throw error;
  }
  return false;
}

/** The traces of a right text; none of a text that does a task again, where an edit acts in two places. */
export function tracesOf(files: Readonly<Record<string, string>>, path: string): Traces | undefined {
  const traces: Traces = { source: files[path]!, runs: new Map() };
  let comparable = true;
  everyRun(files, path, (run) => {
    if (doesAgain(run.procedure.body!)) comparable = false;
    const execution = new Execution(run.reading, run.procedure, run.model, run.variants, () => {
      comparable = false;
    });
    traces.runs.set(run.key, execution.recorded());
  });
  return comparable ? traces : undefined;
}

interface Run {
  reading: Reading;
  procedure: Procedure;
  model: Model;
  variants: Variants;
  machine: Machine;
  key: string;
}

function everyRun(files: Readonly<Record<string, string>>, path: string, act: (run: Run) => void): void {
  const reading = readAll(files, path);
  for (const procedure of reading.file.procedures) {
    if (!procedure.body) continue;
    for (const name of procedure.machines) {
      const { machine, models } = machineOf(reading, name);
      for (const variants of allVariants(machine, procedure)) {
        const key = JSON.stringify(variants);
        const model = models.get(key) ?? modelOf(machine, variants);
        models.set(key, model);
        act({ reading, procedure, model, variants, machine, key: `${procedure.name} ${name} ${key}` });
      }
    }
  }
}

type Report = (kind: string, line: number, cases: string) => void;

/** Without what an `allow` in the text waives. */
function allowing(procedure: Procedure, report: Report): Report {
  return (kind, line, cases) => {
    const waived = procedure.allows.some((one) => one.check === kind && line >= one.from && line <= one.to);
    if (!waived) report(kind, line, cases);
  };
}

class FoundOne extends Error {}

const MACHINES = new Map<string, { machine: Machine; models: Map<string, Model> }>();

/** Machines and their models are kept from run to run: mutants change procedures only. */
function machineOf(reading: Reading, name: string): { machine: Machine; models: Map<string, Model> } {
  const key = `${name}\n${reading.key}`;
  let known = MACHINES.get(key);
  if (!known) {
    if (MACHINES.size > 50) MACHINES.clear();
    known = { machine: wholeMachine(reading, name), models: new Map() };
    MACHINES.set(key, known);
  }
  return known;
}

function allVariants(machine: Machine, procedure: Procedure): Variants[] {
  let all: Record<string, string>[] = [{}];
  for (const { name, values } of machine.variants) {
    all = all.flatMap((one) => values.map((value) => ({ ...one, [name]: value })));
  }
  return all.filter(
    (one) =>
      !machine.nevers.some((never) => holdsFor(never, one)) &&
      (procedure.only === undefined || holdsFor(procedure.only, one)),
  );
}
