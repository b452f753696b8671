/**
 * Spoils a procedure in small ways, as text: every action that changes something is left out, written twice, or
 * moved to another place not far away. Which of them are wrong is not known here.
 */
import { readFile } from '../oracle/reader.ts';
import type { Action, Block, Statement } from '../oracle/shape.ts';

export interface Mutant {
  text: string;
  description: string;
}

/** How far an action is moved, in actions up and down. */
const WINDOW = 10;

const CHANGES_NOTHING = ['inspect', 'measure', 'record', 'choose', 'check', 'send', 'wait', 'sign'];

/** An action in the list of statements it stands in; a list is plain where nothing decides whether it is done. */
interface Place {
  action: Action;
  list: Block;
  plain: boolean;
}

export function* mutantsOf(source: string): Generator<Mutant> {
  for (const procedure of readFile(source).procedures) {
    if (!procedure.body) continue;
    const places: Place[] = [];
    collect(procedure.body, true, places);
    for (const [index, place] of places.entries()) {
      const { action } = place;
      if (CHANGES_NOTHING.includes(action.verb) || action.outcomes.length > 0) continue;
      const said = `${source.slice(action.start, action.end).split('\n')[0]!.trim()} (line ${action.line})`;
      const own = source.slice(action.start, action.end);
      yield { text: edited(source, [cut(action)]), description: `left out: ${said}` };
      yield { text: edited(source, [after(action, own)]), description: `twice: ${said}` };
      for (const target of places.slice(Math.max(0, index - WINDOW), index)) {
        if (!mayMove(place, target)) continue;
        const text = edited(source, [before(target.action, own), cut(action)]);
        yield { text, description: `moved up to before line ${target.action.line}: ${said}` };
      }
      for (const target of places.slice(index + 1, index + 1 + WINDOW)) {
        if (!mayMove(place, target)) continue;
        const text = edited(source, [cut(action), after(target.action, own)]);
        yield { text, description: `moved down to after line ${target.action.line}: ${said}` };
      }
    }
  }
}

/** In its own list, or from one plain body of a task to another. */
function mayMove(from: Place, to: Place): boolean {
  return from.list === to.list || (from.plain && to.plain);
}

function collect(list: Block, plain: boolean, places: Place[]): void {
  for (const statement of list.statements) {
    if (statement.kind === 'action') {
      places.push({ action: statement, list, plain });
      for (const outcome of statement.outcomes) collect(outcome, false, places);
      continue;
    }
    const inner = plain && ['task', 'step', 'hold'].includes(statement.kind);
    for (const body of bodies(statement)) collect(body, inner, places);
  }
}

function bodies(statement: Statement): Block[] {
  const found = 'body' in statement ? [statement.body] : [];
  if ('otherwise' in statement && statement.otherwise) found.push(statement.otherwise);
  return found;
}

interface Edit {
  start: number;
  end: number;
  text: string;
}

function cut(action: Action): Edit {
  return { start: action.start, end: action.end, text: '' };
}

function before(action: Action, text: string): Edit {
  return { start: action.start, end: action.start, text: `${text}\n` };
}

function after(action: Action, text: string): Edit {
  return { start: action.end, end: action.end, text: `\n${text}` };
}

/** The edits in the order in which they stand in the text. */
function edited(source: string, edits: readonly Edit[]): string {
  let text = '';
  let at = 0;
  for (const edit of edits) {
    text += source.slice(at, edit.start) + edit.text;
    at = edit.end;
  }
  return text + source.slice(at);
}
