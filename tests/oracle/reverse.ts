/**
 * `reverse task except …`: the steps of the task from last to first, each with its verb turned round. What has no
 * way back (measuring, cleaning, proving) is left out.
 */
import type { Action, Block, Ref, Statement } from './shape.ts';

const UNDONE: Record<string, string> = {
  remove: 'refit',
  refit: 'remove',
  fit: 'remove',
  'trial fit': 'remove',
  unbolt: 'bolt up',
  'bolt up': 'unbolt',
  'move aside': 'move back',
  'move back': 'move aside',
  loosen: 'tighten',
  tighten: 'loosen',
  connect: 'disconnect',
  disconnect: 'connect',
  cap: 'connect',
  open: 'close',
  close: 'open',
  'switch on': 'switch off',
  'switch off': 'switch on',
  'lock out': 'unlock',
  unlock: 'lock out',
  drain: 'fill',
  recover: 'fill',
  isolate: 'restore',
  restore: 'isolate',
  lock: 'unlock',
  support: 'lower',
  raise: 'lower',
  lower: 'raise',
};

export function reversed(task: Block, except: readonly Ref[], line: number): Block {
  const statements: Statement[] = [];
  for (const statement of task.statements.toReversed()) {
    if (statement.kind === 'action') statements.push(...reversedAction(statement, except, line));
    else if (statement.kind === 'when' || statement.kind === 'if') {
      const turned = { ...statement, body: reversed(statement.body, except, line) };
      if (statement.otherwise) turned.otherwise = reversed(statement.otherwise, except, line);
      statements.push(turned);
    } else if (statement.kind === 'step' || statement.kind === 'hold' || statement.kind === 'for each') {
      statements.push({ ...statement, body: reversed(statement.body, except, line) });
    } else if (statement.kind !== 'notice')
      throw new Error(`line ${line}: the oracle cannot reverse ${statement.kind}`);
  }
  return { statements };
}

function reversedAction(action: Action, except: readonly Ref[], line: number): Action[] {
  const verb = UNDONE[action.verb];
  if (verb === undefined) return [];
  const objects = action.objects
    .filter((ref) => !except.some((one) => one.name === ref.name && one.positions.length === 0))
    .toReversed();
  if (objects.length === 0) return [];
  // Removed with `bypass` and `fit` of tools: what the tools were put in with comes off by name elsewhere.
  const together = action.together && objects.length === action.objects.length;
  return [{ ...action, verb, objects, together, discard: false, outcomes: [], line }];
}
