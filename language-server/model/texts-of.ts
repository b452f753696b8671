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
export function textsIn(statement: Statement): readonly ReaderText[] {
  switch (statement.kind) {
    case 'task':
    case 'step':
      return only(statement.title, 'title');
    case 'notice':
      return only(statement.text, statement.signal === 'note' ? 'note' : 'notice');
    case 'stop':
      return only(statement.text, 'stop');
    case 'hold':
      return only(statement.text, 'step');
    case 'if':
      return only(statement.condition?.kind === 'seen' ? statement.condition.text : undefined, 'criterion');
    case 'repeat':
      return only(statement.until?.kind === 'seen' ? statement.until.text : undefined, 'criterion');
    case 'action':
      return textsOfAction(statement);
    default:
      return NONE;
  }
}

const NONE: readonly ReaderText[] = [];

function only(text: Text | undefined, kind: TextKind): readonly ReaderText[] {
  return text ? [{ text, kind }] : NONE;
}

function textsOfAction(action: Action): readonly ReaderText[] {
  // Many an action has no text: nothing is made for it.
  let found: ReaderText[] | undefined;
  if (action.text) found = [{ text: action.text, kind: 'step', action }];
  for (const tail of action.tails) {
    if (!('text' in tail) || !tail.text) continue;
    found ??= [];
    found.push({ text: tail.text, kind: 'criterion', action });
  }
  return found ?? NONE;
}
