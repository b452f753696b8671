/** Reads procedures: headers, blocks, statements, and each action with its place in the text. */
import type { Cursor } from './cursor.ts';
import { phrases } from './cursor.ts';
import { skipLine } from './read-machine.ts';
import type { Action, Block, Claim, Flow, Placed, Procedure, Statement } from './shape.ts';

const VERBS: Record<string, string> = Object.fromEntries(
  [
    ...[
      'remove',
      'unbolt',
      'move aside',
      'move back',
      'move',
      'refit',
      'fit',
      'trial fit',
      'bolt up',
      'loosen',
    ],
    ...['back off', 'tighten', 'connect', 'disconnect', 'cap', 'open', 'close', 'switch on', 'switch off'],
    ...['lock out', 'unlock', 'let cool', 'relieve', 'drain', 'recover', 'evacuate', 'pressurise', 'inflate'],
    ...[
      'isolate',
      'prove',
      'restore',
      'fill',
      'top up',
      'bleed',
      'lock',
      'support',
      'raise',
      'lower',
      'bypass',
    ],
    ...[
      'turn',
      'mark',
      'clean',
      'coat',
      'lubricate',
      'align',
      'secure',
      'inspect',
      'measure',
      'record',
      'choose',
    ],
    ...['check', 'adjust', 'discard', 'send', 'wait', 'sign', 'run'],
  ].map((verb) => [verb, verb]),
);
const ALSO: Record<string, string> = {
  install: 'refit',
  reinstall: 'refit',
  slacken: 'loosen',
  reconnect: 'connect',
  pressurize: 'pressurise',
  refill: 'fill',
  rotate: 'turn',
  oil: 'lubricate',
  grease: 'lubricate',
  start: 'run',
};
const MEANT: Record<string, string> = { ...VERBS, ...ALSO };
const PHRASES = phrases(Object.keys(MEANT));
const NO_OBJECT = ['wait', 'sign'];
const TOPIC_FIRST = ['measure', 'record'];
const SIGNALS = phrases(['danger', 'warning', 'caution', 'notice', 'note']);
const HEADERS = phrases([
  ...['for', 'document', 'people', 'skill', 'time', 'wear', 'tools', 'supplies', 'starts with', 'ends with'],
  ...['starts where', 'elsewhere', 'only', 'needs', 'change', 'serial numbers'],
]);
const TAILS = phrases([
  ...['with', 'holding', 'while', 'by hand', 'by', 'from', 'into', 'between', 'of', 'except', 'until', 'for'],
  ...[
    'within',
    'not over',
    'not under',
    'in',
    'at',
    'to',
    'stage',
    'pass',
    'times',
    'as',
    'expect',
    'picture',
  ],
  ...['and discard'],
]);
const STATES = [
  ...['fitted', 'off', 'on', 'aside', 'loose', 'tight', 'hand-tight', 'connected', 'disconnected', 'capped'],
  ...['open', 'closed', 'locked', 'unlocked', 'full', 'drained', 'pressurised', 'relieved', 'hot', 'cool'],
  ...['live', 'isolated', 'safe', 'bled', 'clean', 'dirty', 'supported', 'raised', 'marked', 'new'],
];

export function readProcedure(c: Cursor): Procedure {
  const procedure: Procedure = {
    name: '',
    machines: [],
    starts: [],
    ends: [],
    tools: [],
    supplies: [],
    stock: [],
    allows: [],
    start: c.peek()?.start ?? 0,
    end: 0,
  };
  procedure.name = c.needWord();
  c.takeText();
  while (c.peek() && !c.mark('{')) {
    if (c.peek()!.begins && (c.words('procedure') || c.words('machine') || c.words('use'))) return procedure;
    readHeader(c, procedure);
  }
  if (c.mark('{')) procedure.body = readBlock(c, procedure);
  procedure.end = c.tokens[c.at - 1]!.end;
  return procedure;
}

function readHeader(c: Cursor, procedure: Procedure): void {
  const header = c.takeOneOf(HEADERS);
  if (header === 'for') procedure.machines = c.names();
  else if (header === 'starts with') procedure.starts.push(...readClaims(c));
  else if (header === 'ends with') procedure.ends.push(...readClaims(c));
  else if (header === 'starts where') {
    const line = c.peek()?.line ?? 0;
    procedure.startsWhere = { name: c.needWord(), line };
    if (!c.takeWords('ends')) c.fail('ends');
  } else if (header === 'only') procedure.only = c.condition();
  else if (header === 'tools') procedure.tools = c.refs();
  else if (header === 'supplies') readSupplies(c, procedure);
  else if (header === 'people') procedure.people = c.needNumber();
  else if (header === 'time') {
    const time = c.takeAmount();
    if (time) procedure.time = time;
  } else if (header === undefined) c.fail('a header');
  else {
    const begins = () => c.isOneOf(HEADERS) && c.tokens[c.at - 1]?.text !== ',';
    while (c.peek() && !c.mark('{') && !begins()) c.next();
  }
}

function readSupplies(c: Cursor, procedure: Procedure): void {
  do {
    const amount = c.peek()?.type === 'number' ? c.takeAmount() : undefined;
    const ref = c.ref();
    if (amount) procedure.stock.push({ amount, fluid: ref.name });
    else procedure.supplies.push(ref);
  } while (c.separator());
}

function readClaims(c: Cursor): Claim[] {
  const claims = [readClaim(c)];
  while (c.takeMark(',') || c.takeWords('and')) claims.push(readClaim(c));
  return claims;
}

function readClaim(c: Cursor): Claim {
  const claim: Claim = { scope: 'things', refs: [], state: '', except: [], line: c.peek()?.line ?? 0 };
  if (c.takeWords('everything')) claim.scope = 'everything';
  else {
    if (c.takeWords('all of')) claim.scope = 'all of';
    claim.refs = c.refs();
  }
  claim.state = c.needWord();
  if (!STATES.includes(claim.state)) c.fail('a word for a state');
  if (c.takeWords('except')) {
    claim.except = [c.ref()];
    // `except spindle, supply isolated`: what has a state after it is a claim of its own.
    while ((c.mark(',') || c.words('and')) && !STATES.includes(c.peek(2)?.text ?? '')) {
      if (!c.separator()) break;
      claim.except.push(c.ref());
    }
  }
  return claim;
}

function readBlock(c: Cursor, procedure: Procedure): Block {
  const block: Block = { statements: [] };
  c.needMark('{');
  while (!c.takeMark('}')) {
    if (c.takeWords('allow')) {
      const check = c.needWord();
      if (c.takeWords('because')) c.takeText();
      const from = c.peek()?.line ?? 0;
      // The reader knows where the next statement ends only when it has read it.
      const allow = { check, from, to: from };
      procedure.allows.push(allow);
      if (c.mark('}')) continue;
      const statement = readStatement(c, procedure);
      allow.to = c.tokens[c.at - 1]!.line;
      if (statement) block.statements.push(statement);
      continue;
    }
    const statement = readStatement(c, procedure);
    if (statement) block.statements.push(statement);
  }
  return block;
}

type Unplaced<T> = T extends unknown ? Omit<T, keyof Placed> : never;

function readStatement(c: Cursor, procedure: Procedure): Statement | undefined {
  const first = c.peek();
  const flow = readFlow(c, () => readBlock(c, procedure));
  if (flow === 'nothing') return undefined;
  if (flow === 'action') return readAction(c, procedure);
  return { ...flow, start: first!.start, end: c.tokens[c.at - 1]!.end, line: first!.line };
}

/** Gives `nothing` for what has no bearing on the state (read over), `action` where an action stands (unread). */
function readFlow(c: Cursor, block: () => Block): Unplaced<Flow> | 'nothing' | 'action' {
  const signal = c.takeOneOf(SIGNALS);
  if (signal !== undefined) {
    const hazards: string[] = [];
    while (c.peek()?.type === 'word' && !c.peek()!.begins) hazards.push(...c.names());
    return { kind: 'notice', signal, hazards, text: c.takeText() ?? '' };
  }
  if (c.takeWords('value')) {
    skipLine(c);
    return 'nothing';
  }
  if (c.takeWords('task')) {
    const name = c.needWord();
    c.takeText();
    return { kind: 'task', name, body: block() };
  }
  if (c.words('step') || c.words('hold')) {
    const kind = c.needWord() as 'step' | 'hold';
    c.takeText();
    return { kind, body: block() };
  }
  if (c.words('when') || c.words('if')) {
    const kind = c.needWord() as 'when' | 'if';
    const condition = c.condition();
    const body = block();
    return c.takeWords('otherwise')
      ? { kind, condition, body, otherwise: block() }
      : { kind, condition, body };
  }
  if (c.takeWords('choice')) {
    const name = c.needWord();
    c.needMark(':');
    const values = [c.next().text];
    while (c.takeMark(',')) values.push(c.next().text);
    return { kind: 'choice', name, values };
  }
  if (c.takeWords('repeat')) {
    while (!c.mark('{')) c.next();
    const body = block();
    return c.takeWords('otherwise') ? { kind: 'repeat', body, otherwise: block() } : { kind: 'repeat', body };
  }
  if (c.takeWords('for each')) return readForEach(c, block);
  if (c.takeWords('reverse')) {
    const task = c.needWord();
    return { kind: 'reverse', task, except: c.takeWords('except') ? c.refs() : [] };
  }
  if (c.takeWords('do')) return { kind: 'do', name: c.needWord() };
  if (c.takeWords('stop')) {
    c.takeText();
    return { kind: 'stop' };
  }
  return c.takeWords('continues') ? { kind: 'continues' } : 'action';
}

function readForEach(c: Cursor, block: () => Block): Unplaced<Flow> {
  const variable = c.next().text;
  if (c.takeWords('of')) return { kind: 'for each', variable, values: [], of: c.ref(), body: block() };
  if (!c.takeWords('in')) c.fail('in or of');
  if (c.peek()?.type !== 'number') return { kind: 'for each', variable, values: c.names(), body: block() };
  const from = c.needNumber();
  c.needMark('..');
  const to = c.needNumber();
  const values = Array.from({ length: to - from + 1 }, (_, index) => String(from + index));
  return { kind: 'for each', variable, values, body: block() };
}

function readAction(c: Cursor, procedure: Procedure): Action {
  const first = c.peek();
  const phrase = c.takeOneOf(PHRASES);
  if (!first || phrase === undefined) c.fail('a verb');
  const action: Action = {
    kind: 'action',
    verb: MEANT[phrase]!,
    objects: [],
    together: false,
    with: [],
    between: [],
    byHand: false,
    discard: false,
    until: false,
    at: false,
    outcomes: [],
    amounts: [],
    texts: [],
    start: first.start,
    end: first.end,
    line: first.line,
  };
  if (TOPIC_FIRST.includes(action.verb)) readTopic(c, action);
  else if (NO_OBJECT.includes(action.verb)) readTime(c, action);
  else readObjects(c, action);
  while (readTail(c, action));
  if (c.mark('{')) readOutcomes(c, action, procedure);
  while (readTail(c, action));
  action.end = c.tokens[c.at - 1]!.end;
  return action;
}

function readTime(c: Cursor, action: Action): void {
  const time = c.takeAmount();
  if (time) action.time = time;
}

function readObjects(c: Cursor, action: Action): void {
  if (['fit', 'refit'].includes(action.verb) && c.peek(1)?.type === 'word') {
    for (const fresh of ['new', 'kit'] as const) {
      if (c.words(fresh) && !c.words(`${fresh} by`)) {
        c.next();
        action.fresh = fresh;
        break;
      }
    }
  }
  const tailFirst = action.verb === 'run' && c.isOneOf(TAILS);
  if (c.peek()?.type === 'word' && !c.peek()!.begins && !tailFirst) {
    action.objects.push(c.ref());
    for (;;) {
      const and = c.words('and');
      if (!c.separator()) break;
      action.objects.push(c.ref());
      action.together = and;
    }
  }
  if (action.verb === 'prove' && !c.takeWords('safe')) c.fail('safe');
  if (c.peek()?.type === 'number' && !c.peek()!.begins) c.skipQuantity();
  c.takeWords('times');
}

/** `warp of cylinder-head`, `gap between a and b`, `total = gap + 0.2 mm`, `shim from shims`. */
function readTopic(c: Cursor, action: Action): void {
  if (c.isText() || c.peek()?.begins) return;
  c.next();
  if (c.takeWords('of')) action.objects = c.refs();
  if (!c.takeMark('=')) return;
  while (c.peek() && !c.peek()!.begins && !c.mark('{') && !c.mark('}') && !c.isText()) c.next();
}

function readOutcomes(c: Cursor, action: Action, procedure: Procedure): void {
  c.needMark('{');
  while (!c.takeMark('}')) {
    while (!c.mark('{')) c.next();
    action.outcomes.push(readBlock(c, procedure));
  }
}

/** Reads one tail, or gives false where the action ends. */
function readTail(c: Cursor, action: Action): boolean {
  const text = c.takeText();
  if (text !== undefined) {
    action.texts.push(text);
    return true;
  }
  if (c.words('for each')) return false;
  const tail = c.takeOneOf(TAILS);
  switch (tail) {
    case undefined:
      return false;
    case 'with':
      if (c.peek()?.type !== 'number') action.with.push(...c.refs());
      else {
        // `with 2 people`, `with 1.2 L pump-oil`
        const amount = c.takeAmount()!;
        const tailNext = c.isOneOf(TAILS);
        if (c.takeWords('people')) action.people = amount.value;
        else if (c.peek()?.type === 'word' && !c.peek()!.begins && !tailNext) {
          action.amounts.push({ amount, fluid: c.ref().name });
        } else action.amounts.push({ amount });
      }
      return true;
    case 'for':
      readTime(c, action);
      return true;
    case 'holding':
      c.refs();
      return true;
    case 'while':
      c.needWord();
      if (c.peek()?.type === 'word' && !c.peek()!.begins) c.refs();
      return true;
    case 'by hand':
      action.byHand = true;
      return true;
    case 'and discard':
      action.discard = true;
      return true;
    case 'between':
      action.between = c.refs();
      return true;
    case 'of':
      action.objects.push(...c.refs());
      return true;
    case 'by':
    case 'from':
    case 'into':
    case 'except':
      c.takeWords('table');
      c.refs();
      return true;
    case 'until':
      action.until = true;
      return true;
    case 'in':
      readOrder(c);
      return true;
    case 'at':
      action.at = true;
      readAt(c);
      return true;
    case 'to':
      readTo(c, action);
      return true;
    case 'stage':
      action.stage = c.needNumber();
      return true;
    case 'pass':
      action.pass = c.peek(1)?.text === '%' ? c.needNumber() : Number.NaN;
      c.skipQuantity();
      return true;
    case 'times':
      c.needNumber();
      return true;
    case 'as':
      c.needWord();
      while (c.peek()?.type === 'position') c.next();
      return true;
    default:
      // for, within, not over, not under, expect, picture: a quantity or texts.
      c.skipQuantity();
      return true;
  }
}

function readOrder(c: Cursor): void {
  const words = ['order', 'reverse', 'from', 'the', 'middle', 'across', 'turn', 'in'];
  for (;;) {
    const token = c.peek();
    if (!token || token.begins) return;
    const known = token.type === 'word' ? words.includes(token.text) : true;
    if (!known || token.type === 'text' || c.mark('{') || c.mark('}')) return;
    c.next();
  }
}

function readAt(c: Cursor): void {
  if (c.peek()?.type === 'position') {
    while (c.peek()?.type === 'position' || c.mark(',') || c.mark('..')) c.next();
  } else if (c.peek()?.type === 'word') c.refs();
  else c.skipQuantity();
}

function readTo(c: Cursor, action: Action): void {
  if (c.takeWords('new')) {
    action.toNew = c.ref();
    return;
  }
  if (c.takeWords('stage')) {
    action.stage = c.needNumber();
    return;
  }
  c.takeWords('below');
  if (c.peek()?.type === 'word' && !c.words('at least') && !c.words('at most')) c.refs();
  else c.skipQuantity();
}
