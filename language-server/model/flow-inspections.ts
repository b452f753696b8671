/**
 * Inspections and measurements after which nothing is said of what follows from them (`finding-without-action`).
 * Quiet wherever anything near could be the answer: outcomes, `expect`, a sentence, a name for the value, a branch
 * or a repeat that asks for it, a step that works with it.
 */
import type { Action, Statement } from '../../grammar/syntax/tree.ts';
import { verbNamed } from '../../grammar/tokens/verbs.ts';
import type { Fact } from './facts.ts';
import { around, following, headOf, type Visited } from './flow-walk.ts';

export function inspectionFaults(one: Visited, path: string): Fact[] {
  const { statement } = one;
  if (!isInspection(statement) || statement.objects.length === 0 || isAnswered(statement)) return [];
  // What is looked at in a repeat is what its end is about.
  for (const outer of around(one)) if (outer.kind === 'repeat') return [];
  for (const next of following(one)) {
    if (next.kind === 'notice' || next.kind === 'allow') continue;
    // Several things may be looked at before the one question about all of them.
    if (isInspection(next) && !isAnswered(next)) continue;
    if (usesIt(next)) return [];
    break;
  }
  return [
    {
      check: 'finding-without-action',
      at: { file: path, ...headOf(statement) },
      words: { verb: statement.word.text },
    },
  ];
}

/** `inspect`, `measure` and `check`: what `record` writes down needs no answer. */
function isInspection(statement: Statement): statement is Action {
  if (statement.kind !== 'action' || statement.verb === 'record') return false;
  return verbNamed(statement.verb)?.outcomes === true;
}

function isAnswered(action: Action): boolean {
  if (action.outcomes.length > 0 || action.text) return true;
  return action.tails.some((tail) => {
    if (tail.tail === 'for') return tail.text !== undefined && SECOND_SENTENCE.test(tail.text.value);
    return tail.tail === 'expect' || tail.tail === 'until' || tail.tail === 'as';
  });
}

/** `for "cracks. Renew a cracked one."` */
const SECOND_SENTENCE = /[.!?:;] +\S/;

/** The step that follows takes up what was found. */
function usesIt(next: Statement): boolean {
  switch (next.kind) {
    case 'if':
    case 'choice':
    case 'repeat':
    case 'value':
    case 'stop':
      return true;
    case 'step':
    case 'task':
    case 'hold':
      return next.body?.statements[0] !== undefined && usesIt(next.body.statements[0]);
    case 'action':
      return TAKES_IT_UP.has(next.verb);
    default:
      return false;
  }
}

const TAKES_IT_UP: ReadonlySet<string> = new Set(['choose', 'record', 'adjust', 'send', 'sign', 'align']);
