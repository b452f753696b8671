/** Every statement of a block in reading order, however deep it stands, with what it stands in and what follows. */
import type { Action, Block, Span, Statement } from '../../grammar/syntax/tree.ts';

export interface Visited {
  statement: Statement;
  /** Its own block, and where it stands there. */
  statements: readonly Statement[];
  index: number;
  /** The statement that its block belongs to. */
  parent: Visited | undefined;
}

export function visited(block: Block | undefined): Visited[] {
  const all: Visited[] = [];
  gather(block, undefined, all);
  return all;
}

function gather(block: Block | undefined, parent: Visited | undefined, into: Visited[]): void {
  const statements = block?.statements ?? [];
  statements.forEach((statement, index) => {
    const one = { statement, statements, index, parent };
    into.push(one);
    for (const body of bodiesOf(statement)) gather(body, one, into);
  });
}

/** The statements after it, in its own block and, where that only groups steps, in the block around. */
export function* following(one: Visited): Generator<Statement> {
  for (let at: Visited | undefined = one; at; at = at.parent) {
    for (let next = at.index + 1; next < at.statements.length; next++) yield at.statements[next]!;
    const kind: Statement['kind'] | undefined = at.parent?.statement.kind;
    if (kind !== 'step' && kind !== 'task' && kind !== 'hold') return;
  }
}

/** The statements that it stands in, innermost first. */
export function* around(one: Visited): Generator<Statement> {
  for (let at = one.parent; at; at = at.parent) yield at.statement;
}

/** The blocks of a statement, those of its outcomes among them. */
export function bodiesOf(statement: Statement): readonly Block[] {
  // Most statements hold nothing, and all of them are asked often.
  if (statement.kind === 'action') {
    if (statement.outcomes.length === 0) return NO_BODIES;
    return statement.outcomes.flatMap(({ body }) => body ?? []);
  }
  const first = 'body' in statement ? statement.body : undefined;
  const second = 'otherwise' in statement ? statement.otherwise : undefined;
  if (!first) return second ? [second] : NO_BODIES;
  return second ? [first, second] : [first];
}

const NO_BODIES: readonly Block[] = [];

/** Where a statement stands, found by its place. */
export function locate(block: Block | undefined, statement: Statement): Visited | undefined {
  let parent: Visited | undefined;
  let statements = block?.statements ?? [];
  for (;;) {
    const index = lastFrom(statements, statement.start);
    const one = statements[index];
    if (!one) return undefined;
    const here: Visited = { statement: one, statements, index, parent };
    if (one === statement) return here;
    const body = bodiesOf(one).findLast(({ start }) => start <= statement.start);
    if (!body) return undefined;
    parent = here;
    statements = body.statements;
  }
}

/** The last of them that begins at the place or before it. */
function lastFrom(statements: readonly Statement[], place: number): number {
  let low = 0;
  let high = statements.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (statements[middle]!.start > place) high = middle;
    else low = middle + 1;
  }
  return low - 1;
}

/** The action that begins at a place. */
export function actionAt(block: Block | undefined, place: number): Action | undefined {
  for (let statements = block?.statements ?? []; ; ) {
    const one = statements[lastFrom(statements, place)];
    if (!one) return undefined;
    if (one.start === place && one.kind === 'action') return one;
    const body = bodiesOf(one).findLast(({ start }) => start <= place);
    if (!body) return undefined;
    statements = body.statements;
  }
}

/** The action without its outcomes: what it does, to what, with its tails. */
export function headOf(action: Action): Span {
  const { word, objects, tails, topic, quantity, expression, text } = action;
  const parts = [word, ...objects, ...tails, topic, quantity, expression, text];
  return { start: action.start, end: Math.max(...parts.map((part) => part?.end ?? 0)) };
}
