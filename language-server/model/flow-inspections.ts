/**
 * Inspections and measurements after which nothing is said of what follows from them (`finding-without-action`), of
 * which only one outcome is written (`outcome-missing`), or of which an outcome only looks further, and the job goes on
 * as after the others (`outcome-goes-on`). Quiet wherever anything near could be the answer: outcomes, `expect`, a
 * sentence, a name for the value, a branch or a repeat that asks for it, a step that works with it.
 */
import type { Action, Statement } from '../../grammar/syntax/tree.ts';
import { verbNamed } from '../../grammar/tokens/verbs.ts';
import type { Fact } from './facts.ts';
import { around, following, headOf, type Visited } from './flow-walk.ts';

/** Something may be said of it: most statements are done with here. */
export function mayLackAnswer(statement: Statement): boolean {
  if (statement.kind === 'action' && statement.outcomes.length > 0) return true;
  return isInspection(statement) && statement.objects.length > 0 && !isAnswered(statement);
}

export function inspectionFaults(one: Visited, path: string): Fact[] {
  const { statement } = one;
  if (statement.kind === 'action' && statement.outcomes.length > 0)
    return outcomeFaults(one, statement, path);
  if (!isInspection(statement) || statement.objects.length === 0 || isAnswered(statement)) return [];
  // What is looked at in a repeat is what its end is about.
  for (const outer of around(one)) if (outer.kind === 'repeat') return [];
  // Told as `outcome-goes-on`.
  const parent = one.parent?.statement;
  if (
    parent?.kind === 'action' &&
    parent.outcomes.some((outcome) => furtherLook(parent, outcome) === statement)
  )
    return [];
  if (isTakenUp(one)) return [];
  return [
    {
      check: 'finding-without-action',
      at: { file: path, ...headOf(statement) },
      words: { verb: statement.word.text },
    },
  ];
}

function outcomeFaults(one: Visited, action: Action, path: string): Fact[] {
  const facts: Fact[] = [];
  const [only, second] = action.outcomes;
  // What a single range leaves out is a hole of its scale.
  if (only?.word && !second)
    facts.push({
      check: 'outcome-missing',
      at: { file: path, ...headOf(action) },
      words: { outcome: only.word.text },
    });
  for (const outer of around(one)) if (outer.kind === 'repeat') return facts;
  if (isTakenUp(one)) return facts;
  for (const outcome of action.outcomes) {
    const last = furtherLook(action, outcome);
    if (last)
      facts.push({
        check: 'outcome-goes-on',
        at: { file: path, ...headOf(last) },
        words: outcome.word ? { outcome: outcome.word.text } : {},
      });
  }
  return facts;
}

/** Of an outcome beside others in which nothing is done but looking, the last look; what answers itself is none. */
function furtherLook(action: Action, { body }: Action['outcomes'][number]): Action | undefined {
  if (action.outcomes.length < 2) return undefined;
  const done = (body?.statements ?? []).filter(({ kind }) => kind !== 'notice' && kind !== 'allow');
  const looks = done.filter(isInspection).filter((look) => !isAnswered(look));
  return looks.length === done.length ? looks.at(-1) : undefined;
}

/** What follows asks for the finding or works with it. */
function isTakenUp(one: Visited): boolean {
  for (const next of following(one)) {
    if (next.kind === 'notice' || next.kind === 'allow') continue;
    // Several things may be looked at before the one question about all of them.
    if (isInspection(next) && !isAnswered(next)) continue;
    return usesIt(next);
  }
  return false;
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
