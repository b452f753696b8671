/** Reads what can stand in a machine. Clauses without a bearing on the state are read over, not kept. */
import type { Cursor } from './cursor.ts';
import { phrases } from './cursor.ts';
import type { Clause, Declaration, Machine, Stage } from './shape.ts';

const KINDS = [
  ...['part', 'fastener', 'seal', 'connection', 'control', 'isolator', 'face', 'system', 'fluid'],
  ...['consumable', 'tool', 'kit'],
];
const OTHER_ITEMS = ['coupled', 'value', 'table', 'variant', 'never', 'rule'];
const WITH_REFS = [
  ...['on', 'under', 'sealed by', 'joined by', 'opens', 'carries', 'part of', 'supplied with', 'like', 'in'],
  ...['lubricated with', 'coated with', 'relieved at', 'drained at', 'filled at', 'vented at', 'isolated at'],
  ...[
    'bled at',
    'proved with',
    'runs',
    'locks',
    'contains',
    'with',
    'secured by',
    'held by',
    'clamps',
    'joins',
  ],
];
const PLAIN = [
  ...['matched', 'numbered', 'single-use', 'added', 'fixed', 'left-hand', 'stay', 'first off', 'last on'],
  ...['slack', 'frees when loose', 'needs bleeding', 'adapter'],
  ...['closes clockwise', 'closes counter-clockwise'],
];
const WITH_TEXT = ['goes', 'part number', 'stored'];
const WITH_QUANTITY = [
  ...['mass', 'torque', 'pressure', 'temperature', 'live', 'service fill', 'range', 'accuracy', 'length'],
  ...['open time', 'curing time', 'nut factor', 'thread friction', 'head friction', 'prevailing torque'],
  ...['not over', 'item'],
];
const SPECIAL = [
  ...['positions', 'only', 'hazard', 'holds', 'thread', 'class', 'grade', 'layout', 'order', 'plan'],
  ...['normally', 'also called'],
];
const CLAUSES = phrases([...WITH_REFS, ...PLAIN, ...WITH_TEXT, ...WITH_QUANTITY, ...SPECIAL]);
const ITEMS = phrases([...KINDS, ...OTHER_ITEMS]);

export function emptyMachine(name: string): Machine {
  return { name, declarations: [], coupled: [], variants: [], nevers: [] };
}

export function readMachine(c: Cursor): Machine {
  const machine = emptyMachine(c.needWord());
  c.takeText();
  if (c.takeWords('extends')) machine.extends = c.needWord();
  c.takeText();
  c.needMark('{');
  while (!c.takeMark('}')) readItem(c, machine);
  return machine;
}

/** True where an item of a machine begins. */
export function atItem(c: Cursor): boolean {
  if (c.words('part of') || c.words('part number')) return false;
  return c.isOneOf(ITEMS) && c.peek(1)?.type === 'word';
}

export function readItem(c: Cursor, into: Machine): void {
  if (c.takeWords('coupled')) {
    const refs = c.refs();
    into.coupled.push(c.takeWords('while') ? { refs, while: c.condition() } : { refs });
  } else if (c.takeWords('variant')) {
    const name = c.needWord();
    c.takeText();
    c.needMark(':');
    const values = [c.next().text];
    while (c.takeMark(',')) values.push(c.next().text);
    into.variants.push({ name, values });
  } else if (c.takeWords('never')) {
    into.nevers.push(c.condition());
  } else if (c.takeWords('value')) {
    skipLine(c);
  } else if (c.words('table') || c.words('rule')) {
    while (!c.mark('{')) c.next();
    c.skipBraces();
  } else if (atItem(c)) {
    into.declarations.push(readDeclaration(c));
  } else c.fail('a declaration');
}

/** To the end of the line and over the lines that are only text. */
export function skipLine(c: Cursor): void {
  while (c.peek() && !c.mark('}') && (!c.peek()!.begins || c.isText())) c.next();
}

function readDeclaration(c: Cursor): Declaration {
  const kind = c.needWord();
  const declaration: Declaration = { kind, name: c.needWord(), title: '', clauses: [] };
  declaration.title = c.takeText() ?? '';
  for (;;) {
    const token = c.peek();
    if (!token || c.mark('}') || (token.begins && atItem(c))) return declaration;
    // A file of loose declarations: the next top-level item.
    if (token.begins && ['machine', 'procedure', 'use'].includes(token.text)) return declaration;
    declaration.clauses.push(readClause(c));
  }
}

function readClause(c: Cursor): Clause {
  const clause: Clause = { clause: '', refs: [], to: [], names: [], stages: [], toYield: false };
  const count = c.takeCount();
  if (count !== undefined) return { ...clause, clause: 'count', count };
  const name = c.takeOneOf(CLAUSES);
  if (name === undefined) c.fail('a clause');
  clause.clause = name;
  if (WITH_REFS.includes(name)) {
    clause.refs = c.refs();
    if ((name === 'clamps' || name === 'joins') && c.takeWords('to')) clause.to = c.refs();
    if (c.peek()?.type === 'number' && c.peek(1)?.text === 'each') {
      clause.each = c.needNumber();
      c.next();
    }
  } else if (WITH_TEXT.includes(name)) c.takeText();
  else if (WITH_QUANTITY.includes(name)) takeAmount(c, clause);
  else if (name === 'positions') clause.names = c.names();
  else if (name === 'only') clause.condition = c.condition();
  else if (name === 'hazard') {
    clause.names = c.names();
    takeHarm(c, clause);
    if (c.takeWords('when')) clause.when = c.names();
    takeHarm(c, clause);
  } else if (name === 'holds') {
    takeAmount(c, clause);
    if (c.peek()?.type === 'word' && !c.isOneOf(CLAUSES) && !c.peek()!.begins) clause.refs = [c.ref()];
  } else if (name === 'normally') clause.names = [c.needWord()];
  else if (name === 'also called') {
    do c.takeText();
    while (c.takeMark(','));
  } else if (name === 'plan') readPlan(c, clause);
  else skipDesignation(c);
  return clause;
}

function takeHarm(c: Cursor, clause: Clause): void {
  for (const harm of ['will kill', 'can kill', 'can hurt', 'can damage'])
    if (c.takeWords(harm)) clause.harm = harm;
}

function takeAmount(c: Cursor, clause: Clause): void {
  const amount = c.takeAmount();
  if (amount) clause.amount = amount;
}

/** Threads, classes, layouts and orders: everything up to the next clause. */
function skipDesignation(c: Cursor): void {
  for (;;) {
    const token = c.peek();
    if (!token || c.mark('}') || (token.begins && atItem(c))) return;
    if (c.takeWords('in turn') || c.takeWords('from the middle')) continue;
    if (token.begins && ['machine', 'procedure', 'use'].includes(token.text)) return;
    if (/^x\d+$/.test(token.text) || c.isOneOf(CLAUSES)) return;
    c.next();
  }
}

function readPlan(c: Cursor, clause: Clause): void {
  c.needMark('{');
  while (!c.takeMark('}')) {
    let stage: Stage = 'torque';
    if (c.words('loosen')) stage = 'loosen';
    else if (c.words('back off')) stage = 'back off';
    else if (c.words('by hand')) stage = 'by hand';
    else if (c.words('wait') || c.words('until')) stage = 'other';
    clause.stages.push(stage);
    for (let first = true; !c.mark(';') && !c.mark('}') && (first || !c.peek()?.begins); first = false) {
      c.next();
    }
    while (c.takeMark(';'));
  }
  clause.toYield = c.takeWords('to yield');
}
