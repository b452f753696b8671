/**
 * What is wrong with the quantities of a file as they are typed: a unit of another kind than its place takes,
 * a unit with two readings, a range that runs downwards, a second unit that is no conversion of the first.
 * Knows the text of one file only: declared values that stand for a quantity are the checks' business.
 */
import {
  checkSecond,
  type KindName,
  printReader,
  type QuantityProblem,
  type Quantity as Read,
  readQuantity,
  roundedIn,
  unitByText,
  unitNamed,
} from '../../grammar/quantity/index.ts';
import type {
  Action,
  Block,
  Clause,
  Expression,
  FileItem,
  Header,
  Interval,
  Quantity,
  Rule,
  Span,
  Stage,
  Statement,
  Table,
} from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { list } from './model.ts';
import type { LoadedFile } from './names.ts';
import {
  aKind,
  CLAUSE_KINDS,
  LAYOUT_KINDS,
  likelyUnits,
  STAGE_KINDS,
  SUPPLY_KINDS,
  TAIL_KINDS,
  TIME_HEADER_KINDS,
  TO_KINDS,
  VERB_KINDS,
  type Wanted,
} from './quantity-kinds.ts';
import type { Survey } from './survey.ts';

/** Facts: `unit-wrong-kind`, `unit-ambiguous`, `tolerance-unit`, `range-reversed`, `quantity-malformed`, `torque-differs`, `second-unit-differs`. */
export function quantityFaults(file: LoadedFile): Fact[] {
  // No number, no quantity; the tokens are not asked, since building them costs more than the walk.
  if (!/\d/.test(file.text)) return [];
  return file.parsed.tree.items.flatMap((item) => quantityFaultsIn(item, file));
}

/** The same for one item of the file: no fact of one rests on another. */
export function quantityFaultsIn(item: FileItem, file: Pick<LoadedFile, 'path' | 'written'>): Fact[] {
  return new Reader(file).all(item);
}

/** The same for a procedure, step by step. */
export function quantityFaultsOf(survey: Survey, file: Pick<LoadedFile, 'path' | 'written'>): Fact[] {
  return [
    ...new Reader(file).headers(survey.procedure.headers),
    ...survey.each('quantities', [], (statement) => new Reader(file).alone(statement)),
  ];
}

interface Seen {
  read: Read;
  span: Span;
}

class Reader {
  private readonly facts: Fact[] = [];
  private readonly file: Pick<LoadedFile, 'path' | 'written'>;

  constructor(file: Pick<LoadedFile, 'path' | 'written'>) {
    this.file = file;
  }

  all(item: FileItem): Fact[] {
    this.item(item);
    return this.facts;
  }

  headers(headers: readonly Header[]): Fact[] {
    for (const header of headers) this.header(header);
    return this.facts;
  }

  /** Of one statement, without what stands in it. */
  alone(statement: Statement): Fact[] {
    if (statement.kind === 'action') this.actionAlone(statement);
    else if (statement.kind === 'value') this.expression(statement.expression);
    return this.facts;
  }

  // ------------------------------------------------------------ where quantities stand

  private item(item: FileItem): void {
    switch (item.kind) {
      case 'machine':
        for (const inner of item.items) this.item(inner);
        return;
      case 'procedure':
        for (const header of item.headers) this.header(header);
        this.block(item.body);
        return;
      case 'declaration':
        this.clauses(item.clauses);
        return;
      case 'value':
        this.expression(item.expression);
        return;
      case 'table':
        this.table(item);
        return;
      case 'rule':
        this.rule(item);
        return;
      case 'use':
      case 'coupled':
      case 'variant':
      case 'never':
      case 'broken':
        return;
      default:
        item satisfies never;
    }
  }

  private clauses(clauses: readonly Clause[]): void {
    let range: Seen | undefined;
    let accuracy: Seen | undefined;
    for (const clause of clauses) {
      if (clause.clause === 'plan') {
        for (const stage of clause.plan.stages) this.stage(stage);
      } else if (clause.clause === 'layout') {
        if (clause.layout?.kind === 'places' && clause.layout.unit) this.layoutUnit(clause.layout.unit);
      } else if ('quantity' in clause && clause.quantity) {
        const seen = this.quantity(clause.quantity, CLAUSE_KINDS[clause.clause], `\`${clause.clause}\``);
        if (clause.clause === 'range') range = seen;
        if (clause.clause === 'accuracy') accuracy = seen;
      }
    }
    if (range && accuracy && accuracy.read.unit.symbol !== '%') {
      const { kind, symbol } = range.read.unit;
      this.kind(
        accuracy,
        { kinds: [kind], words: `${aKind(kind)}, in ${symbol}, or a percentage` },
        '`accuracy`',
      );
    }
  }

  private layoutUnit(unit: Span & { text: string }): void {
    const found = unitByText(unit.text);
    if (found?.is !== 'unit' || LAYOUT_KINDS.kinds.includes(found.unit.kind)) return;
    this.wrongKind(unit, unit.text, found.unit.kind, unit.text, LAYOUT_KINDS, '`layout`');
  }

  private stage(stage: Stage): void {
    if (!('quantity' in stage) || !stage.quantity) return;
    const what = stage.kind === 'torque' ? 'A stage' : `\`${stage.kind}\``;
    this.quantity(stage.quantity, STAGE_KINDS[stage.kind], what);
  }

  private header(header: Header): void {
    if (header.header === 'time') this.quantity(header.quantity, TIME_HEADER_KINDS, '`time`');
    else if (header.header === 'supplies') {
      for (const { quantity } of header.fluids) this.quantity(quantity, SUPPLY_KINDS, '`supplies`');
    }
  }

  private block(block: Block | undefined): void {
    for (const statement of block?.statements ?? []) this.statement(statement);
  }

  private statement(statement: Statement): void {
    switch (statement.kind) {
      case 'action':
        this.action(statement);
        return;
      case 'value':
        this.expression(statement.expression);
        return;
      case 'task':
      case 'step':
      case 'hold':
      case 'for each':
        this.block(statement.body);
        return;
      case 'when':
      case 'if':
      case 'repeat':
        this.block(statement.body);
        this.block(statement.otherwise);
        return;
      case 'notice':
      case 'choice':
      case 'reverse':
      case 'do':
      case 'allow':
      case 'stop':
      case 'continues':
      case 'broken':
        return;
      default:
        statement satisfies never;
    }
  }

  private action(action: Action): void {
    this.actionAlone(action);
    for (const outcome of action.outcomes) this.block(outcome.body);
  }

  private actionAlone(action: Action): void {
    this.quantity(action.quantity, VERB_KINDS[action.verb], `\`${action.word.text}\``);
    this.expression(action.expression);
    for (const tail of action.tails) {
      if (!('quantity' in tail) || !tail.quantity) continue;
      const wanted = tail.tail === 'to' ? TO_KINDS[action.verb] : TAIL_KINDS[tail.tail];
      const what = tail.tail === 'to' ? `\`${action.word.text} … to\`` : `\`${tail.word.text}\``;
      this.quantity(tail.quantity, wanted, what);
    }
    this.alike(
      action.outcomes.flatMap(({ intervals }) => intervals),
      'The outcomes of one measurement',
    );
  }

  private table(table: Table): void {
    this.alike(
      table.rows.map((row) => row.interval),
      'The rows of a table',
    );
    const columns: (Seen | undefined)[] = [];
    for (const row of table.rows) {
      for (const [index, gives] of row.gives.entries()) {
        const seen = this.expression(gives);
        if (!seen) continue;
        const first = columns[index];
        if (first) this.sameKind(seen, first, 'The values that a table gives');
        else columns[index] = seen;
      }
    }
  }

  /** All of one kind, as the first one is. */
  private alike(intervals: readonly Interval[], what: string): void {
    let first: Seen | undefined;
    for (const { quantity } of intervals) {
      const seen = this.quantity(quantity);
      if (!seen) continue;
      if (first) this.sameKind(seen, first, what);
      else first = seen;
    }
  }

  private sameKind(seen: Seen, first: Seen, what: string): void {
    if (seen.read.unit.kind === first.read.unit.kind) return;
    const { kind, symbol } = first.read.unit;
    this.wrongKind(
      seen.span,
      this.textOf(seen.span),
      seen.read.unit.kind,
      seen.read.unit.symbol,
      {
        kinds: [kind],
        words: symbol === '' ? 'a number' : `${aKind(kind, symbol)}, as ${this.textOf(first.span)} is`,
      },
      what,
      first.span,
    );
  }

  private rule(rule: Rule): void {
    for (const body of rule.bodies) {
      for (const pattern of [body.trigger, body.demanded]) {
        if (pattern?.kind !== 'event' || !pattern.quantity) continue;
        this.quantity(pattern.quantity, VERB_KINDS[pattern.verb.text], `\`${pattern.verb.text}\``);
      }
    }
  }

  /** The quantity that an expression is, where it is one or a sum that begins with one. */
  private expression(expression: Expression | undefined): Seen | undefined {
    switch (expression?.kind) {
      case 'quantity':
        return this.quantity(expression.quantity);
      case 'binary': {
        const left = this.expression(expression.left);
        const right = this.expression(expression.right);
        if (expression.operator === '*' || expression.operator === '/') return undefined;
        if (left && right) this.sameKind(right, left, 'The members of a sum');
        return left ?? right;
      }
      case 'call': {
        let first: Seen | undefined;
        for (const argument of expression.arguments) {
          const seen = this.expression(argument);
          if (first && seen) this.sameKind(seen, first, `The members of \`${expression.name.text}\``);
          first ??= seen;
        }
        return first;
      }
      default:
        return undefined;
    }
  }

  // ------------------------------------------------------------ one quantity

  /** Reads it and says what is wrong with it; undefined where it cannot be read. */
  private quantity(quantity: Quantity | undefined, wanted?: Wanted, what = ''): Seen | undefined {
    const seen = this.read(quantity);
    if (!quantity) return undefined;
    if (seen && wanted) this.kind(seen, wanted, what);
    if (quantity.second) {
      const second = this.read(quantity.second);
      if (seen && second) this.second(seen, second);
    }
    return seen;
  }

  private read(quantity: Quantity | undefined): Seen | undefined {
    const last = quantity?.amounts[quantity.amounts.length - 1];
    if (!quantity || !last) return undefined;
    const span = { start: quantity.start, end: last.end };
    const outcome = readQuantity(this.textOf(span));
    if (outcome.ok) return { read: outcome.value, span };
    this.problem(outcome.problem, quantity, span);
    return undefined;
  }

  private kind(seen: Seen, wanted: Wanted, what: string): void {
    const { kind, symbol } = seen.read.unit;
    if (wanted.kinds.includes(kind)) return;
    this.wrongKind(seen.span, this.textOf(seen.span), kind, symbol, wanted, what);
  }

  private wrongKind(
    span: Span,
    typed: string,
    kind: KindName,
    unit: string,
    wanted: Wanted,
    what: string,
    first?: Span,
  ): void {
    const near = likelyUnits(unit, wanted.kinds);
    this.facts.push({
      check: 'unit-wrong-kind',
      at: this.at(span),
      words: {
        what,
        typed,
        kind: aKind(kind, unit),
        wanted: wanted.words,
        ...(near.length > 0 ? { near: near.join(' or ') } : {}),
      },
      ...(first ? { story: [{ at: this.at(first), what: 'declared' as const }] } : {}),
    });
  }

  private second(first: Seen, second: Seen): void {
    const pair = `${this.textOf(first.span)} (${this.textOf(second.span)})`;
    if (agreed.has(pair)) return;
    const outcome = checkSecond(first.read, second.read);
    if (!outcome.ok) {
      // `1.2 L (1.1 kg)`: how much a litre weighs is not known here.
      const amounts = [first, second].every(({ read }) => AMOUNTS.has(read.unit.kind));
      if (amounts) return;
      if (outcome.problem.code === 'unit-wrong-kind') this.secondKind(first, second);
      else this.malformed(second.span, outcome.problem.message);
      return;
    }
    if (outcome.value.verdict !== 'differs') {
      if (agreed.size >= MOST_AGREED) agreed.clear();
      agreed.add(pair);
      return;
    }
    const rounded = roundedIn(first.read, second.read.unit);
    const torque = first.read.unit.kind === 'torque';
    this.facts.push({
      check: torque ? 'torque-differs' : 'second-unit-differs',
      at: this.at(second.span),
      words: {
        first: this.textOf(first.span),
        second: this.textOf(second.span),
        ...(rounded.ok ? { right: printReader(rounded.value) } : {}),
      },
    });
  }

  /** `270 lbf·ft (365 N)`: where the number is right and only a piece of the unit is missing, the mend is certain. */
  private secondKind(first: Seen, second: Seen): void {
    const { kind, symbol } = second.read.unit;
    const wanted: Wanted = {
      kinds: [first.read.unit.kind],
      words: `${aKind(first.read.unit.kind)}, as ${this.textOf(first.span)} is`,
    };
    this.wrongKind(second.span, this.textOf(second.span), kind, symbol, wanted, 'A second unit');
    const typed = this.textOf(second.span);
    const right = likelyUnits(symbol, wanted.kinds).filter((unit) => {
      const reading = readQuantity(typed.replaceAll(symbol, unit));
      if (!reading.ok) return false;
      const check = checkSecond(first.read, reading.value);
      return check.ok && check.value.verdict === 'agrees';
    });
    const fact = this.facts[this.facts.length - 1];
    if (right.length !== 1 || !fact) return;
    const text = typed.replaceAll(symbol, right[0]!);
    fact.words = { ...fact.words, near: right[0]! };
    fact.mends = [{ title: `Write ${text}`, at: fact.at, text }];
  }

  private problem(problem: QuantityProblem, quantity: Quantity, span: Span): void {
    const here =
      problem.from === undefined || problem.to === undefined
        ? span
        : { start: span.start + problem.from, end: span.start + problem.to };
    switch (problem.code) {
      case 'unit-ambiguous': {
        const readings = problem.proposals.map((symbol) => unitNamed(symbol));
        this.facts.push({
          check: 'unit-ambiguous',
          at: this.at(here),
          words: {
            typed: this.textOf(here),
            readings: list(
              readings.map((unit) => `the ${unit?.name ?? ''}`),
              'or',
            ),
            units: list(problem.proposals, 'or'),
          },
        });
        return;
      }
      case 'tolerance-unit':
        this.tolerance(problem, quantity, span, here);
        return;
      case 'range-reversed': {
        const proposal = problem.proposals[0];
        this.facts.push({
          check: 'range-reversed',
          at: this.at(span),
          words: { typed: this.textOf(span), ...(proposal ? { right: proposal } : {}) },
          ...(proposal ? { mends: [{ title: `Write ${proposal}`, at: this.at(span), text: proposal }] } : {}),
        });
        return;
      }
      case 'unit-wrong-kind':
      case 'tolerance-negative':
      case 'temperature-reading':
      case 'mixed-units':
      case 'pressure-reference':
      case 'one-number-expected':
        this.malformed(here, problem.message);
        return;
      default:
        // A comma, a missing number or unit: the parser has said it.
        return;
    }
  }

  private tolerance(problem: QuantityProblem, quantity: Quantity, span: Span, here: Span): void {
    const own = quantity.amounts[0]?.unit?.text;
    const typed = this.textOf(here);
    const value = own === undefined ? undefined : unitNamed(own);
    const unit = unitNamed(typed);
    const piece =
      own !== undefined && value !== undefined && unit !== undefined && pieceOf(unit.symbol, value.symbol);
    this.facts.push({
      check: 'tolerance-unit',
      at: this.at(here),
      words: {
        typed: this.textOf(span),
        unit: typed,
        kind: unit ? aKind(unit.kind, unit.symbol) : '',
        value: own ?? '',
        valueKind: value ? aKind(value.kind, value.symbol) : '',
        right: problem.proposals[0] ?? '',
      },
      ...(piece ? { mends: [{ title: `Write ${own}`, at: this.at(here), text: own }] } : {}),
    });
  }

  private malformed(span: Span, message: string): void {
    this.facts.push({ check: 'quantity-malformed', at: this.at(span), words: { message } });
  }

  private textOf({ start, end }: Span): string {
    return this.file.written.slice(start, end);
  }

  private at({ start, end }: Span) {
    return { file: this.file.path, start, end };
  }
}

/** Pairs found to agree: exact arithmetic is dear, and the same few are asked for at every keystroke. */
const agreed = new Set<string>();
const MOST_AGREED = 5000;

const AMOUNTS: ReadonlySet<KindName> = new Set(['volume', 'mass']);

/** `lb` or `lbf` of `lbf·ft`, `N` of `N·m`: what was left out is certain. */
function pieceOf(unit: string, whole: string): boolean {
  const pieces = whole.split('·');
  return pieces.length > 1 && (pieces.includes(unit) || pieces.includes(`${unit}f`));
}
