/** Every text of a procedure that a reader reads, with what it is for. */
import type { Action, Statement, Text } from '../../grammar/syntax/tree.ts';

/**
 * `step`: the sentence of an action, or what holds for a block. `stop`: what to do when work ends there. `criterion`:
 * what is felt, seen or expected. `notice`: danger to notice. `note`: a note. `title`: of a task or step.
 */
export type TextKind = 'step' | 'stop' | 'criterion' | 'notice' | 'note' | 'title';

export interface ReaderText {
  readonly text: Text;
  readonly kind: TextKind;
  /** The action that it belongs to. */
  readonly action?: Action;
}

/** Those of one statement, without what stands in it. */
export function textsIn(statement: Statement): ReaderText[] {
  const found: ReaderText[] = [];
  const add = (text: Text | undefined, kind: TextKind, action?: Action) => {
    if (text) found.push({ text, kind, ...(action ? { action } : {}) });
  };
  addOf(statement, add);
  return found;
}

function addOf(
  statement: Statement,
  add: (text: Text | undefined, kind: TextKind, action?: Action) => void,
): void {
  switch (statement.kind) {
    case 'task':
    case 'step':
      add(statement.title, 'title');
      return;
    case 'notice':
      add(statement.text, statement.signal === 'note' ? 'note' : 'notice');
      return;
    case 'stop':
      add(statement.text, 'stop');
      return;
    case 'hold':
      add(statement.text, 'step');
      return;
    case 'if':
      if (statement.condition?.kind === 'seen') add(statement.condition.text, 'criterion');
      return;
    case 'repeat':
      if (statement.until?.kind === 'seen') add(statement.until.text, 'criterion');
      return;
    case 'action':
      add(statement.text, 'step', statement);
      for (const tail of statement.tails) if ('text' in tail) add(tail.text, 'criterion', statement);
      return;
    default:
      return;
  }
}
