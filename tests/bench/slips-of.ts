/**
 * Slips of the pen in the fastening data of a machine file: a digit dropped or doubled, a decimal point lost, a unit
 * taken for another, two stages swapped, a position missing from an order, a wrong second unit; and the same in a step
 * that repeats the torque. Each slip is the whole text with one edit. Which are found is not known here.
 */
import { parse } from '../../grammar/parser/parse.ts';
import { exact, readQuantity, unitNamed } from '../../grammar/quantity/index.ts';
import type {
  Action,
  Block,
  Clause,
  Declaration,
  Machine,
  Quantity,
  Span,
  Stage,
} from '../../grammar/syntax/tree.ts';

export const KINDS = [
  'digit dropped',
  'digit doubled',
  'decimal point lost',
  'unit swapped',
  'stages swapped',
  'position missing',
  'position twice',
  'second unit wrong',
  'value in a step',
] as const;

export interface Slip {
  readonly kind: (typeof KINDS)[number];
  readonly fastener: string;
  /** `25 N·m → 2 N·m` */
  readonly change: string;
  /** New torque over the right one; 1 where no torque changes. */
  readonly factor: number;
  /** The torque only seats the joint: an angle follows it. */
  readonly seats: boolean;
  /** It is the torque that the tightening ends with. */
  readonly final: boolean;
  readonly text: string;
}

/** The fasteners of a file that have a thread, a class and a torque. */
export function fastenersOf(text: string): Declaration[] {
  const { items } = parse(text).tree;
  const declared = [
    ...items,
    ...items.flatMap((item) => (item.kind === 'machine' ? (item as Machine).items : [])),
  ];
  return declared.filter((item): item is Declaration => {
    if (item.kind !== 'declaration' || item.type !== 'fastener') return false;
    const has = (name: Clause['clause']) => item.clauses.some(({ clause }) => clause === name);
    return has('thread') && (has('class') || has('grade')) && (has('torque') || has('plan'));
  });
}

/** Every slip in the fasteners of a machine file. */
export function slipsIn(text: string): Slip[] {
  return fastenersOf(text).flatMap((fastener) => {
    const stages = stagesOf(fastener);
    const seats = stages.some(({ kind }) => kind === 'angle');
    const of = { fastener: fastener.name?.text ?? '', seats, final: true };
    const torques = torquesOf(fastener);
    return [
      ...torques.flatMap((torque, index) => {
        const one = { ...of, final: index === torques.length - 1 };
        return [...numberSlips(text, torque, one), ...unitSlips(text, torque, one)];
      }),
      ...secondUnits(text, torques, of),
      ...swappedStages(text, stages, of),
      ...orders(text, fastener, of),
    ];
  });
}

/** Every slip in a torque that a step of the procedures repeats, for the fasteners of a machine file. */
export function slipsInSteps(machine: string, procedures: string): Slip[] {
  const byName = new Map(fastenersOf(machine).map((each) => [each.name?.text ?? '', each]));
  return tightenings(procedures).flatMap((action) => {
    const name = action.objects[0]?.name.text ?? '';
    const fastener = byName.get(name);
    const last = fastener && torquesOf(fastener).at(-1);
    if (!last) return [];
    const right = machine.slice(last.start, endOf(last));
    const at = action.objects[0]!.end;
    const typed = `${procedures.slice(0, at)} to ${right}${procedures.slice(at)}`;
    const span = { start: at + 4, end: at + 4 + right.length };
    const of = { fastener: name, seats: false, final: true };
    return [...numberSlips(typed, span, of), ...unitSlips(typed, span, of)].map((slip) => ({
      ...slip,
      kind: 'value in a step' as const,
    }));
  });
}

/** The right text with the torque repeated in a step: nothing may be found in it. */
export function rightInSteps(machine: string, procedures: string): string[] {
  const byName = new Map(fastenersOf(machine).map((each) => [each.name?.text ?? '', each]));
  return tightenings(procedures).flatMap((action) => {
    const last = torquesOf(byName.get(action.objects[0]?.name.text ?? '')).at(-1);
    const at = action.objects[0]!.end;
    return last
      ? `${procedures.slice(0, at)} to ${machine.slice(last.start, endOf(last))}${procedures.slice(at)}`
      : [];
  });
}

type Of = Pick<Slip, 'fastener' | 'seats' | 'final'>;

const UNITS = ['N·m', 'lbf·ft', 'lbf·in', 'kgf·m'];

function* changes(number: string): Generator<[Slip['kind'], string]> {
  for (let at = 0; at < number.length; at++) {
    if (number[at] === '.') {
      yield ['decimal point lost', number.replace('.', '').replace(/^0+(?=\d)/, '')];
      continue;
    }
    yield ['digit dropped', number.slice(0, at) + number.slice(at + 1)];
    yield ['digit doubled', number.slice(0, at) + number[at] + number.slice(at)];
  }
}

function numberSlips(text: string, span: Span, of: Of): Slip[] {
  const right = text.slice(span.start, endOf(span));
  const number = /^[\d.]+/.exec(right)?.[0] ?? '';
  const slips: Slip[] = [];
  for (const [kind, typed] of changes(number)) {
    // A dropped digit leaves a number that can be typed, and another one.
    if (!/^(\d+(\.\d+)?)$/.test(typed) || Number(typed) === Number(number) || Number(typed) === 0) continue;
    const wrong = typed + right.slice(number.length);
    if (slips.some((slip) => slip.change === `${right} → ${wrong}`)) continue;
    slips.push(slip(kind, text, span, right, wrong, of));
  }
  return slips;
}

function unitSlips(text: string, span: Span, of: Of): Slip[] {
  const right = text.slice(span.start, endOf(span));
  const unit = /[^\d.\s]+$/.exec(right)?.[0] ?? '';
  return UNITS.filter((other) => other !== unit).map((other) =>
    slip('unit swapped', text, span, right, right.slice(0, -unit.length) + other, of),
  );
}

function slip(kind: Slip['kind'], text: string, span: Span, right: string, wrong: string, of: Of): Slip {
  return {
    ...of,
    kind,
    change: `${right} → ${wrong}`,
    factor: newtonMetres(wrong) / newtonMetres(right),
    text: text.slice(0, span.start) + wrong + text.slice(endOf(span)),
  };
}

/** The conversion of another unit, or the number once more. */
function secondUnits(text: string, torques: readonly Quantity[], of: Of): Slip[] {
  return torques.flatMap((torque) => {
    const right = text.slice(torque.start, endOf(torque));
    const value = newtonMetres(right);
    const wrong = [value * 1.35582, value / 0.112985, value].map(
      (number) => `${right} (${Number(number.toPrecision(3))} lbf·ft)`,
    );
    return wrong.map((typed) => ({
      ...of,
      kind: 'second unit wrong' as const,
      change: `${right} → ${typed}`,
      factor: 1,
      text: text.slice(0, torque.start) + typed + text.slice(torque.end),
    }));
  });
}

function swappedStages(text: string, stages: readonly Stage[], of: Of): Slip[] {
  return stages.slice(1).flatMap((second, index) => {
    const first = stages[index]!;
    const [a, b] = [text.slice(first.start, first.end), text.slice(second.start, second.end)];
    if (a === b) return [];
    return {
      ...of,
      kind: 'stages swapped' as const,
      change: `${a}; ${b} → ${b}; ${a}`,
      factor: 1,
      text: text.slice(0, first.start) + b + text.slice(first.end, second.start) + a + text.slice(second.end),
    };
  });
}

/** The order written out, with one position left out, or written in the place of its neighbour. */
function orders(text: string, fastener: Declaration, of: Of): Slip[] {
  const order = fastener.clauses.find((clause) => clause.clause === 'order');
  const count = fastener.clauses.find((clause) => clause.clause === 'count')?.count ?? 0;
  if (!order?.order || count < 3) return [];
  const span = order.order;
  const all = Array.from({ length: count }, (_, index) => `#${index + 1}`);
  return all.flatMap((name, index) => {
    const typed = (names: readonly string[]) =>
      text.slice(0, span.start) + names.join(', ') + text.slice(span.end);
    const next = all[(index + 1) % count]!;
    return [
      {
        ...of,
        kind: 'position missing' as const,
        change: `without ${name}`,
        factor: 1,
        text: typed(all.toSpliced(index, 1)),
      },
      {
        ...of,
        kind: 'position twice' as const,
        change: `${next} for ${name}`,
        factor: 1,
        text: typed(all.with(index, next)),
      },
    ];
  });
}

function stagesOf(fastener: Declaration): readonly Stage[] {
  return fastener.clauses.find((clause) => clause.clause === 'plan')?.plan.stages ?? [];
}

/** Torques that are one plain number with a unit, in the order in which they are worked. */
function torquesOf(fastener: Declaration | undefined): Quantity[] {
  if (!fastener) return [];
  const clause = fastener.clauses.find(({ clause: name }) => name === 'torque');
  const own = clause && 'quantity' in clause && clause.quantity ? [clause.quantity] : [];
  const staged = stagesOf(fastener).flatMap((stage) => (stage.kind === 'torque' ? stage.quantity : []));
  return [...own, ...staged].filter(
    ({ form, bound, amounts }) => form === 'plain' && !bound && amounts.length === 1,
  );
}

/** `tighten` steps without a value, stage or pass, in reading order. */
function tightenings(procedures: string): Action[] {
  const found: Action[] = [];
  const walk = (block: Block | undefined): void => {
    for (const statement of block?.statements ?? []) {
      if (statement.kind === 'action') {
        const plain = statement.tails.every(({ tail }) => tail === 'with');
        if (statement.verb === 'tighten' && plain && statement.objects.length === 1 && !statement.quantity)
          found.push(statement);
      } else if (statement.kind === 'task' || statement.kind === 'step') walk(statement.body);
    }
  };
  for (const item of parse(procedures).tree.items) if (item.kind === 'procedure') walk(item.body);
  return found;
}

function endOf(span: Span | Quantity): number {
  return 'amounts' in span ? (span.amounts.at(-1)?.end ?? span.end) : span.end;
}

function newtonMetres(text: string): number {
  const outcome = readQuantity(text);
  if (!outcome.ok || !outcome.value.nominal) throw new Error(`no torque: ${text}`);
  const unit = unitNamed(outcome.value.unit.symbol)!;
  return exact.toNumber(exact.multiply(outcome.value.nominal, unit.factor));
}
