/** What the headers promise against what the steps need: the chapter on states, "What the headers promise". */
import { clauseOf, litres, seconds } from './amounts.ts';
import type { Reading } from './reader.ts';
import type { Action, Block, Declaration, Machine, Procedure, Ref, Statement } from './shape.ts';

type Report = (kind: string, line: number) => void;

interface Step {
  action: Action;
  /** Not only where something is found, or in a further try. */
  planned: boolean;
  certain: boolean;
  /** Rounds of the loops around it. */
  rounds: ReadonlyMap<string, readonly string[]>;
}

export function headersHold(reading: Reading, procedure: Procedure, machine: Machine, report: Report): void {
  const declared = new Map(machine.declarations.map((one) => [one.name, one]));
  const steps = [...stepsIn(procedure.body!, true, true, new Map(), declared)];
  toolsListed(reading, procedure, declared, steps, report);
  if (procedure.supplies.length + procedure.stock.length > 0)
    suppliesListed(procedure, declared, steps, report);
  const time = seconds(procedure.time);
  if (time !== undefined && waits(procedure.body!) > time) report('time-differs', 1);
  for (const { action } of steps)
    if ((action.people ?? 0) > (procedure.people ?? Number.POSITIVE_INFINITY))
      report('people-short', action.line);
}

function* stepsIn(
  block: Block,
  planned: boolean,
  certain: boolean,
  rounds: ReadonlyMap<string, readonly string[]>,
  declared: ReadonlyMap<string, Declaration>,
): Generator<Step> {
  for (const statement of block.statements) {
    switch (statement.kind) {
      case 'action':
        yield { action: statement, planned, certain, rounds };
        for (const outcome of statement.outcomes) yield* stepsIn(outcome, false, false, rounds, declared);
        break;
      case 'task':
      case 'step':
      case 'hold':
        yield* stepsIn(statement.body, planned, certain, rounds, declared);
        break;
      case 'when':
        for (const body of [statement.body, statement.otherwise])
          if (body) yield* stepsIn(body, planned, false, rounds, declared);
        break;
      case 'if':
      case 'repeat':
        for (const body of [statement.body, statement.otherwise])
          if (body) yield* stepsIn(body, false, false, rounds, declared);
        break;
      case 'for each': {
        const of = statement.of && declared.get(statement.of.name);
        const values = of ? positions(of) : statement.values;
        const inner = new Map([...rounds, [statement.variable, values] as const]);
        yield* stepsIn(statement.body, planned, false, inner, declared);
        break;
      }
      default:
        break;
    }
  }
}

function positions(declaration: Declaration): string[] {
  const named = clauseOf(declaration, 'positions')?.names;
  const count = clauseOf(declaration, 'count')?.count ?? 1;
  return named ?? Array.from({ length: count }, (_, index) => String(index + 1));
}

// ------------------------------------------------------------------------------------------------------------ tools

const TURNING = ['tighten', 'fit', 'refit', 'bolt up', 'connect', 'check', 'back off', 'loosen'];
const LOOKING = ['measure', 'check', 'inspect', 'prove', 'record', 'adjust', 'align'];
const TURNS = /wrench|spanner|socket|ratchet|driver|key|angle|extension|tool ?(kit|set)|hand tools/i;
const MEASURES =
  /gauge|meter|caliper|feeler|scale|indicator|tester|edge|rule|level|light|mirror|thermo|tacho|probe|micro/i;

function toolsListed(
  reading: Reading,
  procedure: Procedure,
  declared: ReadonlyMap<string, Declaration>,
  steps: readonly Step[],
  report: Report,
): void {
  if (procedure.tools.length === 0) return;
  const listed = new Set(procedure.tools.map(({ name }) => name));
  for (const { action } of steps) {
    for (const { name } of [...action.objects, ...action.with]) {
      if (declared.get(name)?.kind === 'tool' && !listed.has(name)) report('tool-unlisted', action.line);
    }
  }
  const all = [...procedureAndUsed(reading, procedure)];
  const actions = all.flatMap(({ body }) =>
    body ? [...stepsIn(body, true, true, new Map(), declared)].map(({ action }) => action) : [],
  );
  const verbs = new Set(actions.map(({ verb }) => verb));
  const named = new Set(actions.flatMap((one) => [...one.objects, ...one.with].map(({ name }) => name)));
  const spoken = new Set(all.flatMap(({ body }) => (body ? textsIn(body) : [])).flatMap(wordsOf));
  const openly = actions.some((one) => LOOKING.includes(one.verb) && one.with.length === 0);
  for (const name of listed) {
    const tool = declared.get(name);
    if (tool?.kind !== 'tool' || named.has(name)) continue;
    const called = `${name.replaceAll('-', ' ')} ${tool.title}`;
    const proves = [...declared.values()].some((one) =>
      clauseOf(one, 'proved with')?.refs.some((ref) => ref.name === name),
    );
    const isUsed =
      wordsOf(called).some((word) => spoken.has(word)) ||
      (TURNING.some((verb) => verbs.has(verb)) &&
        (TURNS.test(called) || clauseOf(tool, 'range') !== undefined)) ||
      (clauseOf(tool, 'locks') !== undefined && (verbs.has('lock') || verbs.has('turn'))) ||
      (/lock|tag\b/i.test(called) && verbs.has('lock out')) ||
      (proves && verbs.has('prove')) ||
      (openly && MEASURES.test(called));
    if (!isUsed) report('tool-unused', 1);
  }
}

function* procedureAndUsed(
  reading: Reading,
  procedure: Procedure,
  seen = new Set<string>(),
): Generator<Procedure> {
  if (seen.has(procedure.name)) return;
  seen.add(procedure.name);
  yield procedure;
  if (!procedure.body) return;
  for (const name of doneIn(procedure.body)) {
    const other = reading.procedures.get(name);
    if (other) yield* procedureAndUsed(reading, other, seen);
  }
}

function blocksOf(statement: Statement): Block[] {
  if (statement.kind === 'action') return statement.outcomes;
  const body = 'body' in statement ? [statement.body] : [];
  return 'otherwise' in statement && statement.otherwise ? [...body, statement.otherwise] : body;
}

function doneIn(block: Block): string[] {
  return block.statements.flatMap((one) => [
    ...(one.kind === 'do' ? [one.name] : []),
    ...blocksOf(one).flatMap(doneIn),
  ]);
}

function textsIn(block: Block): string[] {
  return block.statements.flatMap((one) => [
    ...(one.kind === 'notice' ? [one.text] : one.kind === 'action' ? one.texts : []),
    ...blocksOf(one).flatMap(textsIn),
  ]);
}

function wordsOf(text: string): string[] {
  const small = ['the', 'and', 'for', 'with', 'from', 'off', 'out', 'all', 'one', 'two', 'set', 'new', 'old'];
  const words = text.toLowerCase().match(/[a-z]{3,}/g) ?? [];
  return words.filter((word) => !small.includes(word)).map((word) => word.replace(/s$/, ''));
}

// --------------------------------------------------------------------------------------------------------- supplies

function suppliesListed(
  procedure: Procedure,
  declared: ReadonlyMap<string, Declaration>,
  steps: readonly Step[],
  report: Report,
): void {
  const stock = new Map<string, number>();
  const add = (name: string, count: number) => {
    if (stock.has(name)) return;
    stock.set(name, count);
    const own = declared.get(name)?.clauses ?? [];
    for (const { clause, refs } of own)
      if (clause === 'contains' || clause === 'supplied with')
        for (const ref of refs) add(ref.name, Number.POSITIVE_INFINITY);
    for (const one of declared.values())
      if (clauseOf(one, 'part of')?.refs.some((ref) => ref.name === name))
        add(one.name, Number.POSITIVE_INFINITY);
  };
  for (const ref of procedure.supplies)
    add(ref.name, ref.count ?? (ref.positions.length || Number.POSITIVE_INFINITY));
  const fitted = new Map<string, Set<string>>();
  for (const { action, planned, rounds } of steps) {
    if (action.fresh === undefined || !planned) continue;
    for (const ref of action.objects) {
      const declaration = declared.get(ref.name);
      if (!declaration || declaration.kind === 'tool') continue;
      const places = fitted.get(ref.name) ?? new Set<string>();
      fitted.set(ref.name, places);
      for (const place of placesOf(ref, declaration, rounds)) places.add(place);
      const pieces = clauseOf(declaration, 'contains')?.refs ?? [];
      const inPieces = pieces.length > 0 && pieces.every(({ name }) => stock.has(name));
      const there = stock.get(ref.name) ?? (inPieces ? 1 : 0);
      const isGroup = declaration.clauses.some(({ clause }) => clause === 'count' || clause === 'positions');
      if (there < (isGroup ? Math.max(1, places.size) : 1)) report('supply-short', action.line);
    }
  }
  usedUp(procedure, declared, steps, report);
}

function placesOf(ref: Ref, declaration: Declaration, rounds: Step['rounds']): string[] {
  if (ref.positions.length === 0) return positions(declaration);
  return ref.positions.flatMap((position) => {
    const [from, to] = position.split('..');
    if (to === undefined) return rounds.get(position) ?? [position];
    return Array.from({ length: Number(to) - Number(from) + 1 }, (_, index) => String(Number(from) + index));
  });
}

function usedUp(
  procedure: Procedure,
  declared: ReadonlyMap<string, Declaration>,
  steps: readonly Step[],
  report: Report,
): void {
  const isUsedUp = (name: string) => ['fluid', 'consumable'].includes(declared.get(name)?.kind ?? '');
  const listed = new Set(
    [...procedure.supplies.map(({ name }) => name), ...procedure.stock.map(({ fluid }) => fluid)].filter(
      isUsedUp,
    ),
  );
  const filled = new Map<string, number>();
  for (const { action, planned, certain } of steps) {
    const names = [
      ...action.with.map(({ name }) => name),
      ...action.amounts.flatMap(({ fluid }) => fluid ?? []),
    ];
    for (const name of names)
      if (planned && listed.size > 0 && isUsedUp(name) && !listed.has(name))
        report('supply-short', action.line);
    for (const { amount, fluid } of action.amounts)
      if (certain && fluid) filled.set(fluid, (filled.get(fluid) ?? 0) + (litres(amount) ?? 0));
  }
  for (const { amount, fluid } of procedure.stock)
    if ((filled.get(fluid) ?? 0) > (litres(amount) ?? Number.POSITIVE_INFINITY) + 1e-9)
      report('supply-short', 1);
}

// ------------------------------------------------------------------------------------------------------------- time

/** s: what is waited for certain. */
function waits(block: Block): number {
  let sum = 0;
  for (const one of block.statements) {
    if (one.kind === 'stop') break;
    if (one.kind === 'action') {
      const least = one.outcomes.length > 0 ? Math.min(...one.outcomes.map(waits)) : 0;
      sum += (seconds(one.time) ?? 0) + least;
    } else if (one.kind === 'when' || one.kind === 'if')
      sum += Math.min(waits(one.body), one.otherwise ? waits(one.otherwise) : 0);
    else if (one.kind === 'repeat' || one.kind === 'task' || one.kind === 'step' || one.kind === 'hold')
      sum += waits(one.body);
  }
  return sum;
}
