/**
 * Values that were measured, and what they were measured on. A value is stale once that has been disturbed:
 * taken off, put back, loosened or exchanged since.
 */
import type { Action, Expression, Position, Ref } from '../../grammar/syntax/tree.ts';
import { bit, TRIAL } from './aspects.ts';
import { NONE } from './cases.ts';
import { Tracked } from './recorder.ts';
import type { Run } from './run.ts';

interface Value {
  items: readonly number[];
  /** The step that measured it; of several for a computed value, the first. */
  step: number;
}

export class Measured {
  readonly values = new Tracked<string, Value>();
  private readonly run: Run;
  /** What the variables of the blocks stand for. */
  private position: Bound = (name) => name;

  constructor(run: Run) {
    this.run = run;
  }

  /** Takes note of what an action measures, and checks what it uses. */
  note(action: Action, file: string, position: Bound): void {
    this.position = position;
    const { run } = this;
    const step = run.step;
    if (action.expression) this.use(action.expression, file, action);
    for (const tail of action.tails) {
      if (tail.tail === 'by' || tail.tail === 'to')
        for (const ref of tail.refs)
          for (const key of this.keysOf(ref)) this.ask(key, file, ref.start, ref.end);
    }
    const name = action.tails.find((tail) => tail.tail === 'as');
    const key =
      name?.tail === 'as'
        ? name.name && keyOf(name.name.text, name.positions, position)
        : action.verb === 'record'
          ? action.topic?.text
          : undefined;
    if (!key) return;
    if (action.expression) this.derive(key, action.expression);
    else if (action.verb === 'measure' || action.verb === 'record') {
      // What is measured on a trial fit is meant for the time after it.
      const items = run.steps.present!.touched;
      const onTrial = items.some(
        (item) => run.thing(item).type === 'part' && run.where('place', item, bit(TRIAL)) !== NONE,
      );
      this.values.set(key, { items: onTrial ? [] : items, step });
    }
  }

  /** A value computed from others is as fresh as the oldest of them. */
  derive(name: string, expression: Expression): void {
    const from = this.keysIn(expression).flatMap((one) => this.values.get(one) ?? []);
    if (from.length === 0) return;
    this.values.set(name, {
      items: from.flatMap((value) => value.items),
      step: Math.min(...from.map((value) => value.step)),
    });
  }

  private use(expression: Expression, file: string, action: Action): void {
    const names = this.keysIn(expression);
    const newest = Math.max(...names.map((name) => this.values.get(name)?.step ?? -1));
    // `tight - zero`: what happened between two readings is what is measured, unless the thing was exchanged.
    for (const name of names)
      this.ask(name, file, action.start, action.end, this.comparedWithin(name, names, newest));
  }

  private comparedWithin(name: string, names: readonly string[], newest: number): boolean {
    const value = this.values.get(name);
    if (!value || value.step === newest) return false;
    return names.some(
      (other) => other !== name && this.values.get(other)?.items.some((item) => value.items.includes(item)),
    );
  }

  /** The values that an expression works with. */
  private keysIn(expression: Expression): string[] {
    return [...new Set(refsIn(expression).flatMap((ref) => this.keysOf(ref)))];
  }

  /** `zero #2`: its own value, or the one of them all; `zero`: that, or every one there is. */
  private keysOf({ name, positions }: Ref): string[] {
    const own = keyOf(name.text, positions, this.position);
    if (this.values.has(own)) return [own];
    if (positions.length > 0) return this.values.has(name.text) ? [name.text] : [];
    return [...this.values.keys()].filter((key) => key.startsWith(`${name.text} #`));
  }

  private ask(name: string, file: string, start: number, end: number, compared = false): void {
    const value = this.values.get(name);
    if (!value) return;
    const { run } = this;
    // Of readings at each position one is said for all: which of them stands in the story.
    const [plain = name, position] = name.split(' #');
    for (const item of value.items) {
      for (const entry of run.entries(compared ? 'fresh' : 'place', item)) {
        if (entry.since <= value.step || entry.assumed) continue;
        const { action, file: from } = run.steps.at(entry.since)!;
        // To try a torque disturbs nothing.
        if (action.verb === 'check') continue;
        const by = run.steps.at(value.step)!;
        run.fact({
          check: 'stale-measurement',
          at: { file, start, end },
          subject: { thing: run.thing(item), ...(position === undefined ? { items: [item] } : {}) },
          cases: entry.cases,
          words: { name: plain },
          story: [
            {
              at: { file: by.file, start: by.action.start, end: by.action.end },
              what: 'measured',
              thing: run.thing(item),
            },
            {
              at: { file: from, start: action.start, end: action.end },
              what: 'disturbed',
              thing: run.thing(item),
            },
          ],
        });
        return;
      }
    }
  }
}

/** What a position stands for, inside `for each`. */
type Bound = (position: string) => string;

function keyOf(name: string, positions: readonly Position[], bound: Bound): string {
  if (positions.length === 0) return name;
  const told = positions.map(({ from, to }) => bound(from) + (to === undefined ? '' : `..${bound(to)}`));
  return `${name} #${told.join(', #')}`;
}

function refsIn(expression: Expression): Ref[] {
  switch (expression.kind) {
    case 'name':
      return [expression.ref];
    case 'binary':
      return [...refsIn(expression.left), ...(expression.right ? refsIn(expression.right) : [])];
    case 'call':
      return expression.arguments.flatMap(refsIn);
    case 'quantity':
      return [];
  }
}
