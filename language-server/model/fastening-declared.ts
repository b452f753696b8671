/**
 * What a machine file says about how tight one thing is: its torques, the stages of its plan, its thread and
 * strength. Worked out once for each thing. Says nothing about whether it is right.
 */
import { exact, type Quantity } from '../../grammar/quantity/index.ts';
import type { Clause, ClauseName, Span, Stage, Quantity as Typed } from '../../grammar/syntax/tree.ts';
import {
  type Band,
  longFormNutFactor,
  proofLoad,
  readThread,
  type Strength,
  strengthOf,
  type Thread,
  UNSTATED_NUT_FACTOR,
} from '../fastening/index.ts';
import type { Place } from '../report/finding.ts';
import { readTyped, torqueBand } from './fastening-amounts.ts';
import type { Model, Thing } from './model.ts';

export interface DeclaredStage {
  /** Counted from 1, as a step names it. */
  readonly number: number;
  readonly stage: Stage;
  /** Where it stands; of an inherited plan, the name of the thing. */
  readonly at: Place;
  /** The torque of a torque stage, of `again`, or of a percentage of the declared torque. */
  readonly torque?: Quantity;
  /** Only for a torque that is typed as such. */
  readonly typed: boolean;
}

export interface Bolt {
  readonly thread: Thread;
  readonly strength: Strength;
  /** N. */
  readonly proofLoad: number;
  /** The K to reckon with, and whether the machine file states it. */
  readonly nutFactor: Band & { readonly stated: boolean };
}

export interface Declared {
  readonly thing: Thing;
  readonly torque?: Quantity;
  readonly stages: readonly DeclaredStage[];
  /** Every torque that the thing may be tightened to: of the clause and of the stages. */
  readonly torques: readonly Quantity[];
  /** The torque that the tightening ends with; absent where an angle, a feel or nothing ends it. */
  readonly final?: Quantity;
  readonly limit?: Quantity;
  /** Known only where thread and class are declared and go together. */
  readonly bolt?: Bolt;
}

const declaredOf = new WeakMap<Model, Map<Thing, Declared>>();

export function declared(model: Model, thing: Thing): Declared {
  const known = declaredOf.get(model) ?? new Map<Thing, Declared>();
  const one = known.get(thing) ?? work(model, thing);
  if (!declaredOf.has(model)) declaredOf.set(model, known);
  known.set(thing, one);
  return one;
}

export function clauseOf<Name extends ClauseName>(
  thing: Thing,
  name: Name,
): (Clause & { clause: Name }) | undefined {
  return thing.declaration.clauses.find((clause) => clause.clause === name) as
    | (Clause & { clause: Name })
    | undefined;
}

/** Where a piece of a declaration stands; a piece that `like` brought is shown at the thing's own name. */
export function placeIn(thing: Thing, span: Span): Place {
  const { start, end } = thing.declaration;
  if (span.start < start || span.end > end) return thing.place;
  return { file: thing.place.file, start: span.start, end: span.end };
}

/** Where a quantity itself stands, without its second one in brackets. */
export function firstOf(typed: Typed): Span {
  return { start: typed.start, end: typed.amounts[typed.amounts.length - 1]?.end ?? typed.end };
}

function work(model: Model, thing: Thing): Declared {
  const torque = torqueIn(thing.torque, model);
  const stages = thing.stages.map((stage, index) => stageOf(model, thing, stage, index + 1, torque));
  const limit = torqueIn(clauseOf(thing, 'not over')?.quantity, model);
  const final = finalOf(stages, torque);
  const bolt = boltOf(model, thing);
  return {
    thing,
    stages,
    torques: [...(torque ? [torque] : []), ...stages.flatMap((stage) => stage.torque ?? [])],
    ...(torque ? { torque } : {}),
    ...(final ? { final } : {}),
    ...(limit ? { limit } : {}),
    ...(bolt ? { bolt } : {}),
  };
}

function stageOf(
  model: Model,
  thing: Thing,
  stage: Stage,
  number: number,
  whole: Quantity | undefined,
): DeclaredStage {
  const typed = 'quantity' in stage ? stage.quantity : undefined;
  const at = placeIn(thing, typed ? firstOf(typed) : stage);
  const own = torqueIn(typed, model);
  if (own) return { number, stage, at, torque: own, typed: true };
  const share =
    stage.kind === 'percent' && whole ? percentOf(whole, readTyped(typed, model.values)) : undefined;
  return { number, stage, at, typed: false, ...(share ? { torque: share } : {}) };
}

function torqueIn(typed: Typed | undefined, model: Model): Quantity | undefined {
  const read = readTyped(typed, model.values);
  return read?.unit.kind === 'torque' ? read : undefined;
}

/** `30 %` of a torque, as computed: without the digits of a typed value. */
export function percentOf(whole: Quantity, percent: Quantity | undefined): Quantity | undefined {
  const share = percent?.nominal && exact.multiply(percent.nominal, percent.unit.factor);
  if (!share) return undefined;
  const { form, unit, low, high, nominal } = whole;
  return {
    form,
    unit,
    ...(low ? { low: exact.multiply(low, share) } : {}),
    ...(high ? { high: exact.multiply(high, share) } : {}),
    ...(nominal ? { nominal: exact.multiply(nominal, share) } : {}),
  };
}

function finalOf(stages: readonly DeclaredStage[], torque: Quantity | undefined): Quantity | undefined {
  const last = stages.findLast(({ stage }) => stage.kind !== 'wait');
  return last ? last.torque : torque;
}

/** Without thread or class, or where these do not go together, nothing is known. */
function boltOf(model: Model, thing: Thing): Bolt | undefined {
  const designation = clauseOf(thing, 'thread')?.designation?.text;
  const grade = clauseOf(thing, 'grade')?.designation?.text;
  const written = clauseOf(thing, 'class')?.designation?.text ?? (grade && `grade ${grade}`);
  if (designation === undefined || !written) return undefined;
  const key = `${designation}\n${written}`;
  let made = boltsRead.get(key);
  if (made === undefined) {
    made = readBolt(designation, written) ?? null;
    if (boltsRead.size >= MOST_READ) boltsRead.clear();
    boltsRead.set(key, made);
  }
  return made ? { ...made, nutFactor: nutFactorOf(model, thing, made.thread) } : undefined;
}

/** A machine has few different bolts and many of each; null for those that cannot be read. */
const boltsRead = new Map<string, Omit<Bolt, 'nutFactor'> | null>();
const MOST_READ = 500;

function readBolt(designation: string, written: string): Omit<Bolt, 'nutFactor'> | undefined {
  const reading = readThread(designation);
  if (!reading.ok) return undefined;
  const { thread } = reading;
  const strength = strengthOf(written, thread);
  if (!strength.known) return undefined;
  return { thread, strength: strength.value, proofLoad: proofLoad(thread, strength.value) };
}

/** K as stated; or worked out from both frictions, where both are stated; or all that is usual. */
function nutFactorOf(model: Model, thing: Thing, thread: Thread): Bolt['nutFactor'] {
  const stated = numberOf(model, thing, 'nut factor');
  if (stated) return { ...stated, stated: true };
  const inThread = numberOf(model, thing, 'thread friction');
  const underHead = numberOf(model, thing, 'head friction');
  if (!inThread || !underHead) return { ...UNSTATED_NUT_FACTOR, stated: false };
  const factor = (threadFriction: number, headFriction: number) =>
    longFormNutFactor({
      nominalDiameter: thread.nominalDiameter,
      pitch: thread.pitch,
      meanDiameter: thread.pitchDiameter,
      threadFriction,
      headFriction,
    });
  return {
    low: factor(inThread.low, underHead.low),
    high: factor(inThread.high, underHead.high),
    stated: true,
  };
}

function numberOf(
  model: Model,
  thing: Thing,
  name: 'nut factor' | 'thread friction' | 'head friction',
): Band | undefined {
  const read = readTyped(clauseOf(thing, name)?.quantity, model.values);
  if (!read?.low || !read.high || read.unit.kind !== 'number') return undefined;
  const low = exact.toNumber(read.low);
  const high = exact.toNumber(read.high);
  return low > 0 && high < 1 ? { low, high } : undefined;
}

/** The torque of a thing that needs no number: the largest that its plan or clause has, N·m. */
export function largestTorque(torques: readonly Quantity[]): Quantity | undefined {
  let largest: Quantity | undefined;
  let most = 0;
  for (const torque of torques) {
    const band = torqueBand(torque);
    if (!band) continue;
    const value = Number.isFinite(band.high) ? band.high : band.low;
    if (value > most) {
      most = value;
      largest = torque;
    }
  }
  return largest;
}
