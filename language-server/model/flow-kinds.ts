/**
 * Which kind of quantity a value is, as far as the texts say: of declared and measured values, of sums, of what a
 * table is entered with. A kind that is not said is unknown, and nothing is said of it. Facts: `unit-wrong-kind` where
 * a named value is of another kind than what it is added to or looked up in. (Quantities that are typed side by side
 * are quantity-faults.ts.)
 */
import { kindNamed, type Unit, unitOfDimension } from '../../grammar/quantity/index.ts';
import type { Action, Expression, Interval, Span, Table } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { stretchOf } from './flow-ranges.ts';
import type { Where } from './flow-scales.ts';
import type { Model } from './model.ts';
import { aKind } from './quantity-kinds.ts';
import { evaluate, FUNCTIONS, NO_NAMES } from './values.ts';

/** What is known of a value: a unit of its kind and, where a quantity in this text says so, the quantity. */
export interface Known {
  unit: Unit;
  typed?: Span;
}

export type Kinds = (name: string) => Known | undefined;

/** The kinds of the values that are declared, and of those that the steps measure or work out on the way. */
export class KnownKinds {
  private readonly model: Model;
  private readonly local = new Map<string, Known | undefined>();

  constructor(model: Model) {
    this.model = model;
  }

  readonly of: Kinds = (name) => {
    if (this.local.has(name)) return this.local.get(name);
    const expression = this.model.values.get(name)?.expression;
    const outcome = expression && evaluate(expression, (other) => this.model.values.get(other)?.expression);
    return outcome?.ok ? { unit: outcome.value.unit } : undefined;
  };

  /** A name that stands for two kinds in turn is not known. */
  learn(name: string, known: Known | undefined): void {
    const before = this.local.get(name);
    const changed = this.local.has(name) && before?.unit.kind !== known?.unit.kind;
    this.local.set(name, known && !changed ? { unit: known.unit } : undefined);
  }
}

/** What an expression is, with the facts about its members. */
export function expressionKind(
  expression: Expression,
  kinds: Kinds,
  where: Where,
  facts: Fact[],
): Known | undefined {
  switch (expression.kind) {
    case 'quantity': {
      const { named } = expression.quantity;
      if (named) return kinds(named.name.text);
      const outcome = evaluate(expression);
      return outcome.ok ? { unit: outcome.value.unit, typed: spanOf(expression) } : undefined;
    }
    case 'name':
      return kinds(expression.ref.name.text);
    case 'call': {
      if (!FUNCTIONS.has(expression.name.text)) return undefined;
      const members = expression.arguments.map((argument) => ({
        known: expressionKind(argument, kinds, where, facts),
        at: argument,
      }));
      return alike(members, `The members of \`${expression.name.text}\``, where, facts);
    }
    case 'binary': {
      const left = expressionKind(expression.left, kinds, where, facts);
      const right = expression.right && expressionKind(expression.right, kinds, where, facts);
      if (!expression.right) return left;
      switch (expression.operator) {
        case '+':
        case '-':
          return sum(
            { known: left, at: expression.left },
            { known: right, at: expression.right },
            expression.operator,
            where,
            facts,
          );
        case '*':
        case '/':
          return product(left, right, expression.operator);
      }
    }
  }
}

interface Member {
  known: Known | undefined;
  at: Span;
}

function sum(
  left: Member,
  right: Member,
  operator: '+' | '-',
  where: Where,
  facts: Fact[],
): Known | undefined {
  const readings = [left, right].map(({ known }) => known?.unit.kind);
  // A difference goes with a reading; two readings have a difference.
  if (readings.includes('temperature')) {
    const both = readings.every((kind) => kind === 'temperature');
    if (both || readings.includes('temperature difference'))
      return both && operator === '-' ? undefined : (left.known ?? right.known);
  }
  return alike([left, right], 'The members of a sum', where, facts);
}

function product(left: Known | undefined, right: Known | undefined, operator: '*' | '/'): Known | undefined {
  if (!left || !right) return undefined;
  if (right.unit.kind === 'number') return { unit: left.unit };
  if (left.unit.kind === 'number' && operator === '*') return { unit: right.unit };
  const power = operator === '*' ? 1 : -1;
  const dimension = left.unit.dimension.map((one, i) => one + power * right.unit.dimension[i]!);
  return { unit: unitOfDimension(dimension as unknown as Unit['dimension']) };
}

/** All of one kind, as the first known one is. Two that are typed are told elsewhere. */
function alike(members: readonly Member[], what: string, where: Where, facts: Fact[]): Known | undefined {
  const first = members.find(({ known }) => known !== undefined)?.known;
  if (!first) return undefined;
  for (const { known, at } of members) {
    if (!known || known.unit.kind === first.unit.kind || isDerived(known) || isDerived(first)) continue;
    if (!(known.typed && first.typed)) facts.push(differs(known, at, first, what, where));
  }
  const typed = members.find(({ known }) => known?.typed)?.known?.typed;
  return { unit: first.unit, ...(typed ? { typed } : {}) };
}

function isDerived({ unit }: Known): boolean {
  return kindNamed(unit.kind) === undefined;
}

/** Intervals of one scale where a named value stands in one of them. */
export function scaleKind(
  intervals: readonly Interval[],
  what: string,
  kinds: Kinds,
  where: Where,
  facts: Fact[],
): Known | undefined {
  const members = intervals.flatMap(({ quantity }) =>
    quantity
      ? [
          {
            known: expressionKind({ kind: 'quantity', quantity, ...spanOf(quantity) }, kinds, where, facts),
            at: quantity,
          },
        ]
      : [],
  );
  return alike(members, what, where, facts);
}

/** `choose shims from shim-table by gap`: the gap is of the kind that the rows of the table are. */
export function lookUpFaults(action: Action, tables: Model['tables'], kinds: Kinds, where: Where): Fact[] {
  const facts: Fact[] = [];
  const refs = action.tails.flatMap((tail) => (tail.tail === 'by' || tail.tail === 'from' ? tail.refs : []));
  for (const { name } of refs) {
    const unit = unitOfTable(tables.get(name.text));
    if (!unit) continue;
    for (const ref of refs) {
      const known = tables.has(ref.name.text) ? undefined : kinds(ref.name.text);
      if (!known || known.unit.kind === unit.kind) continue;
      facts.push(differs(known, ref, { unit }, `the table ${name.text}`, where));
    }
  }
  return facts;
}

function unitOfTable(table: Table | undefined): Unit | undefined {
  for (const { interval } of table?.rows ?? []) {
    const stretch = stretchOf(interval, NO_NAMES);
    if (stretch) return stretch.unit;
  }
  return undefined;
}

function differs(known: Known, at: Span, first: Known, what: string, { path, written }: Where): Fact {
  const { kind, symbol } = first.unit;
  const { typed } = first;
  const beside = typed ? `, as ${written.slice(typed.start, typed.end)} is` : '';
  return {
    check: 'unit-wrong-kind',
    at: { file: path, ...spanOf(at) },
    words: {
      what,
      typed: written.slice(at.start, at.end),
      kind: aKind(known.unit.kind, known.unit.symbol),
      wanted: symbol === '' ? 'a number' : `${aKind(kind, symbol)}${beside}`,
    },
    ...(typed ? { story: [{ at: { file: path, ...typed }, what: 'declared' as const }] } : {}),
  };
}

function spanOf({ start, end }: Span): Span {
  return { start, end };
}
