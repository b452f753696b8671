/**
 * What the steps of a procedure do with fasteners, against the machine file: values, orders, tools, counts. Goes
 * through the statements once, as written; which state the machine is in is the execution's business.
 */
import type { Quantity } from '../../grammar/quantity/index.ts';
import type {
  Action,
  Block,
  Procedure,
  Ref,
  Reverse,
  Span,
  Statement,
  Quantity as Typed,
  Written,
} from '../../grammar/syntax/tree.ts';
import type { Place } from '../report/finding.ts';
import { hasDigit, saysWhichWins } from '../wording/torque-words.ts';
import type { Fact } from './facts.ts';
import { readTyped, said } from './fastening-amounts.ts';
import { Counts, isUncounted } from './fastening-counts.ts';
import { asksInVain, givesTorque, torqueMissing } from './fastening-missing.ts';
import { orderFaults } from './fastening-order-steps.ts';
import { isMisread, meantAngle } from './fastening-plan.ts';
import { isWholePass, type Toolset, toolFaults, toolsetOf, toolsWith } from './fastening-tools.ts';
import { type Context, secondFaults, toldTorqueFaults, typedTorqueFault } from './fastening-torques.ts';
import { visited } from './flow-walk.ts';
import { itemsOf } from './items.ts';
import { mirror } from './mirror.ts';
import type { Model, Thing } from './model.ts';
import type { Survey } from './survey.ts';

/** One group that a step tightens. */
export interface Tightened {
  readonly thing: Thing;
  readonly items: readonly number[];
  readonly at: Place;
  /** The stage that the step names; absent where it works the whole plan. */
  readonly stage?: number;
}

type File = { readonly path: string; readonly written: Written };

/** What a step shows; what rests on other steps is asked when all are known. */
type Shown =
  | { readonly kind: 'fact'; readonly fact: Fact }
  /** Told once for each thing. */
  | { readonly kind: 'once'; readonly thing: Thing; readonly fact: Fact }
  /** Where no sentence of the procedure tells the torque. */
  | { readonly kind: 'missing'; readonly thing: Thing; readonly fact: Fact }
  /** Steps with the same key show the same. */
  | { readonly kind: 'tools'; readonly thing: Thing; readonly key: string | undefined; facts(): Fact[] }
  | { readonly kind: 'count'; readonly action: Action; readonly ref: Ref }
  | { readonly kind: 'reverse'; readonly statement: Reverse; readonly conditional: number };

export function fasteningSteps(model: Model, survey: Survey, file: File): Fact[] {
  const header = survey.procedure.headers.find((one) => one.header === 'tools');
  const shown = survey.wholes('fastening', [model, header], (statement) =>
    new Walk(model, survey.procedure, file).of(statement),
  );
  return [...new Gathering(model, survey, file).of(shown), ...orderFaults(model, survey, file.path)];
}

/** Things that are told how tight they go; `bolt up` and `fit` go by the plan. */
const TIGHTENING: ReadonlySet<string> = new Set(['tighten', 'bolt up', 'fit', 'refit', 'connect', 'close']);

/** Puts together what all steps show. */
class Gathering {
  private readonly facts: Fact[] = [];
  private readonly told = new Set<string>();
  private readonly counts: Counts;
  private valueInNotes: boolean | undefined;
  private readonly model: Model;
  private readonly survey: Survey;
  private readonly file: File;

  constructor(model: Model, survey: Survey, file: File) {
    this.model = model;
    this.survey = survey;
    this.file = file;
    this.counts = new Counts(model, file.path);
  }

  of(shown: readonly Shown[]): Fact[] {
    for (const one of shown) this.add(one);
    return [...this.facts, ...this.counts.faults()];
  }

  private add(one: Shown): void {
    switch (one.kind) {
      case 'fact':
        this.facts.push(one.fact);
        return;
      case 'once':
        if (this.once(one.fact.check, one.thing)) this.facts.push(one.fact);
        return;
      case 'missing':
        if (!this.notesTell() && this.once(one.fact.check, one.thing)) this.facts.push(one.fact);
        return;
      case 'tools':
        if (one.key !== undefined) {
          if (this.told.has(one.key)) return;
          this.told.add(one.key);
        }
        for (const fact of one.facts()) if (this.once(fact.check, one.thing)) this.facts.push(fact);
        return;
      case 'count':
        this.counts.note(one.action, one.ref);
        return;
      case 'reverse':
        for (const statement of mirrored(this.model, this.survey.procedure, one.statement))
          for (const inner of this.walk().whole(statement, one.conditional)) this.add(inner);
    }
  }

  private walk(): Walk {
    return new Walk(this.model, this.survey.procedure, this.file);
  }

  private notesTell(): boolean {
    this.valueInNotes ??=
      this.survey.distinct('torque in notes', [], (one) => (givesTorque(one) ? [true] : [])).length > 0;
    return this.valueInNotes;
  }

  private once(check: string, thing: Thing): boolean {
    const key = `${check} ${thing.id}`;
    if (this.told.has(key)) return false;
    this.told.add(key);
    return true;
  }
}

/** The way back, which is judged like steps that stand where the `reverse` does. */
function mirrored(model: Model, procedure: Procedure, statement: Reverse): Statement[] {
  const task = visited(procedure.body).find(
    ({ statement: one }) => one.kind === 'task' && one.name?.text === statement.task?.text,
  )?.statement;
  return task?.kind === 'task' ? mirror(task.body, statement, model).statements : [];
}

/** What one statement shows, with all that stands in it. */
class Walk {
  private readonly shown: Shown[] = [];
  private readonly context: Context;
  private readonly model: Model;
  private readonly procedure: Procedure;
  private tools: Toolset | undefined;
  /** How deep in outcomes, findings and repeats. */
  private conditional = 0;

  constructor(model: Model, procedure: Procedure, file: File) {
    this.model = model;
    this.procedure = procedure;
    this.context = { model, file: file.path, written: file.written };
  }

  of(statement: Statement): Shown[] {
    // Of a task only the head is meant: its steps are asked by themselves.
    if (statement.kind !== 'task' && statement.kind !== 'step' && statement.kind !== 'hold')
      this.statement(statement);
    return this.shown;
  }

  whole(statement: Statement, conditional: number): Shown[] {
    this.conditional = conditional;
    this.statement(statement);
    return this.shown;
  }

  private block(block: Block | undefined): void {
    for (const statement of block?.statements ?? []) this.statement(statement);
  }

  private statement(statement: Statement): void {
    switch (statement.kind) {
      case 'action':
        this.action(statement);
        return;
      case 'notice':
        if (statement.text && hasDigit(statement.text.value))
          this.tell(...secondFaults(this.context, statement.text));
        return;
      case 'task':
      case 'step':
      case 'hold':
      case 'for each':
        this.block(statement.body);
        return;
      case 'when':
        this.block(statement.body);
        this.block(statement.otherwise);
        return;
      case 'if':
      case 'repeat':
        this.conditional++;
        this.block(statement.body);
        this.block(statement.otherwise);
        this.conditional--;
        return;
      case 'reverse':
        this.shown.push({ kind: 'reverse', statement, conditional: this.conditional });
        return;
      default:
        return;
    }
  }

  private tell(...facts: readonly Fact[]): void {
    for (const fact of facts) this.shown.push({ kind: 'fact', fact });
  }

  private action(action: Action): void {
    if (action.text && hasDigit(action.text.value)) this.tell(...secondFaults(this.context, action.text));
    if (action.objects.length > 0) {
      for (const ref of action.objects)
        if (ref.count !== undefined) this.shown.push({ kind: 'count', action, ref });
      if (TIGHTENING.has(action.verb) || action.verb === 'check') this.tighten(action);
    }
    if (action.outcomes.length === 0) return;
    this.conditional++;
    for (const outcome of action.outcomes) this.block(outcome.body);
    this.conditional--;
  }

  // ------------------------------------------------------------ tightening

  private tighten(action: Action): void {
    if (action.tails.some(({ tail }) => tail === 'by hand')) return;
    const tightened = this.targets(action);
    if (tightened.length === 0) return;
    const checking = action.verb === 'check';
    const typed = this.typed(action);
    if (typed) {
      for (const one of tightened) {
        const felt = action.tails.some(({ tail }) => tail === 'until' || tail === 'pass');
        const how = { conditional: this.conditional > 0, checking, felt };
        const fault = typedTorqueFault(this.context, one, typed.quantity, typed.at, how);
        if (fault) this.tell(fault);
      }
      this.stops(action);
    } else if (action.text && !checking && this.conditional === 0)
      this.tell(...toldTorqueFaults(this.context, action.text, tightened));
    if (checking) return;
    this.angle(action, tightened);
    const own = toolsWith(this.model, action);
    const pass = action.tails.find((tail) => tail.tail === 'pass');
    const partly = pass?.tail === 'pass' && !isWholePass(readTyped(pass.quantity, this.model.values));
    for (const one of tightened) {
      if (!partly) this.withTools(action, own, one, typed?.quantity);
      if (!typed) this.missing(action, own, one);
      this.counted(one, typed !== undefined);
    }
  }

  /** The groups that a step tightens: what it names, or what holds the part that it bolts up. */
  private targets(action: Action): Tightened[] {
    const stage = stageOf(action);
    const targets: Tightened[] = [];
    for (const ref of action.objects) {
      const thing = this.model.byName.get(ref.name.text);
      if (!thing) continue;
      const at = this.place(ref);
      const { items } = itemsOf(thing, ref);
      if (action.verb === 'bolt up') {
        const held = new Map<Thing, number[]>();
        for (const item of items)
          for (const bolt of this.model.heldBy[item]!) {
            const group = this.model.thingOf[bolt]!;
            held.set(group, [...(held.get(group) ?? []), bolt]);
          }
        for (const [group, bolts] of held) targets.push({ thing: group, items: bolts, at });
      } else if (canBeTight(action.verb, thing))
        targets.push({ thing, items, at, ...(stage === undefined ? {} : { stage }) });
    }
    return targets;
  }

  /** The torque that the step types, and where. */
  private typed(action: Action): { quantity: Quantity; at: Place } | undefined {
    const candidates: (Typed | undefined)[] = [action.quantity];
    for (const tail of action.tails) {
      if (tail.tail !== 'to' && tail.tail !== 'at') continue;
      candidates.push(tail.quantity);
      const [ref] = tail.refs;
      if (ref && this.model.values.has(ref.name.text))
        candidates.push({ start: ref.start, end: ref.end, form: 'plain', amounts: [], named: ref });
    }
    for (const typed of candidates) {
      const quantity = readTyped(typed, this.model.values);
      if (typed && quantity?.unit.kind === 'torque')
        return {
          quantity,
          at: this.place({ start: typed.start, end: typed.amounts.at(-1)?.end ?? typed.end }),
        };
    }
    return undefined;
  }

  /** A torque and a feel end one turning, and nobody says which. */
  private stops(action: Action): void {
    const until = action.tails.find((tail) => tail.tail === 'until');
    if (!until || (action.text && saysWhichWins(action.text.value))) return;
    if (until.tail === 'until' && until.text && saysWhichWins(until.text.value)) return;
    const typed = this.typed(action);
    this.tell({
      check: 'two-stops',
      at: this.place(until),
      ...(this.subject(action) ?? {}),
      words: {
        torque: typed ? said(typed.quantity) : '',
        feel: until.tail === 'until' ? (until.text?.value ?? '') : '',
      },
    });
  }

  /** `tighten bolts 900°` */
  private angle(action: Action, tightened: readonly Tightened[]): void {
    for (const typed of [
      action.quantity,
      ...action.tails.map((tail) => (tail.tail === 'to' ? tail.quantity : undefined)),
    ]) {
      const quantity = typed && readTyped(typed, this.model.values);
      if (!quantity || !isMisread(quantity)) continue;
      this.tell({
        check: 'angle-too-large',
        at: this.place(typed),
        subject: { thing: tightened[0]!.thing },
        words: { angle: said(quantity), ...meantAngle(quantity) },
      });
    }
  }

  private withTools(
    action: Action,
    own: readonly Thing[],
    one: Tightened,
    typed: Quantity | undefined,
  ): void {
    this.tools ??= toolsetOf(this.model, this.procedure);
    const { tools, model } = this;
    if (tools.listed.length === 0 && own.length === 0) return;
    // A step that names no tools is the same as every other one that tightens this group.
    const key = own.length > 0 || typed ? undefined : `tools ${one.thing.id} ${one.stage ?? ''}`;
    const facts = () => toolFaults(model, tools, action, own, one, typed);
    this.shown.push({ kind: 'tools', thing: one.thing, key, facts });
  }

  private missing(action: Action, own: readonly Thing[], one: Tightened): void {
    if (!asksInVain(this.model, action, own, one)) return;
    const fact = torqueMissing(this.model, action, own, one);
    this.shown.push({ kind: 'missing', thing: one.thing, fact });
  }

  private counted(one: Tightened, typed: boolean): void {
    if (!isUncounted(this.model, one, typed)) return;
    const fact: Fact = { check: 'count-missing', at: one.at, subject: { thing: one.thing } };
    this.shown.push({ kind: 'once', thing: one.thing, fact });
  }

  private subject(action: Action): Pick<Fact, 'subject'> | undefined {
    const thing = this.model.byName.get(action.objects[0]?.name.text ?? '');
    return thing && { subject: { thing } };
  }

  private place({ start, end }: Span): Place {
    return { file: this.context.file, start, end };
  }
}

function canBeTight(verb: string, thing: Thing): boolean {
  switch (thing.type) {
    case 'fastener':
      return verb !== 'close';
    case 'connection':
      return verb === 'connect' || verb === 'tighten' || verb === 'close' || verb === 'check';
    default:
      return thing.torque !== undefined && (verb === 'tighten' || verb === 'close' || verb === 'check');
  }
}

/** `stage 2`, `to stage 2` */
function stageOf(action: Action): number | undefined {
  for (const tail of action.tails) {
    if (tail.tail !== 'stage') continue;
    const number = Number(tail.quantity?.amounts[0]?.number);
    return Number.isInteger(number) && number > 0 ? number : undefined;
  }
  return undefined;
}
