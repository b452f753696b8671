/** Questions about the text of a procedure that need no state: what is in a block, which tasks there are. */
import type { Model } from './model.ts';
import type { Block, Condition, Statement } from './shape.ts';

const LOOKING = [
  'inspect',
  'measure',
  'record',
  'choose',
  'check',
  'send',
  'wait',
  'sign',
  'align',
  'adjust',
];

/** True where a block has nothing that changes a state or ends the work. */
export function onlyLooks(block: Block): boolean {
  return block.statements.every((statement) => {
    if (statement.kind === 'step' || statement.kind === 'hold') return onlyLooks(statement.body);
    if (statement.kind === 'notice') return true;
    return (
      statement.kind === 'action' && LOOKING.includes(statement.verb) && statement.outcomes.every(onlyLooks)
    );
  });
}

/** What the technician is asked in a condition. */
export function questionsOf(condition: Condition): string[] {
  if (condition.kind === 'seen') return [condition.text];
  return condition.kind === 'and' ? condition.parts.flatMap(questionsOf) : [];
}

/** True where a task is done again, forwards or backwards. */
export function doesAgain(body: Block): boolean {
  let again = false;
  everyStatement(body, ({ kind }) => {
    if (kind === 'reverse' || kind === 'do') again = true;
  });
  return again;
}

/** Every block of a statement. */
function blocksOf(statement: Statement): Block[] {
  if (statement.kind === 'action') return statement.outcomes;
  const blocks = 'body' in statement ? [statement.body] : [];
  return 'otherwise' in statement && statement.otherwise ? [...blocks, statement.otherwise] : blocks;
}

export function everyStatement(block: Block, visit: (statement: Statement) => void): void {
  for (const statement of block.statements) {
    visit(statement);
    for (const inner of blocksOf(statement)) everyStatement(inner, visit);
  }
}

/** The questions that come up more than once; the empty text stands for all of them (a task done again). */
export function askedOften(body: Block): Set<string> {
  const seen = new Map<string, number>();
  everyStatement(body, (statement) => {
    if (statement.kind === 'reverse' || statement.kind === 'do') seen.set('', 2);
    if (statement.kind !== 'if' && statement.kind !== 'when') return;
    for (const text of questionsOf(statement.condition)) seen.set(text, (seen.get(text) ?? 0) + 1);
  });
  return new Set([...seen].filter(([, times]) => times > 1).map(([text]) => text));
}

export function findTask(body: Block, name: string): Block | undefined {
  let found: Block | undefined;
  everyStatement(body, (statement) => {
    if (statement.kind === 'task' && statement.name === name) found ??= statement.body;
  });
  return found;
}

const MAKES: Record<string, boolean> = {
  open: true,
  close: false,
  'switch on': true,
  'switch off': false,
  isolate: false,
  restore: true,
};

/** For each control: what the first action on it in the text makes of it (true: open or on). */
export function firstPositions(model: Model, body: Block): Map<string, boolean> {
  const first = new Map<string, boolean>();
  // What isolates a live system is on at the start.
  for (const system of model.systems)
    for (const isolator of system.isolators) first.set(isolator.name, false);
  everyStatement(body, (statement) => {
    const flowing = statement.kind === 'action' ? MAKES[statement.verb] : undefined;
    if (flowing === undefined || statement.kind !== 'action') return;
    for (const ref of statement.objects) if (!first.has(ref.name)) first.set(ref.name, flowing);
  });
  return first;
}
