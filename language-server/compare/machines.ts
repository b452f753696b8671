/** What is different between two machines: declarations by their names, clause by clause, whatever their order. */
import type { Clause, Declaration, MachineItem, Quantity, Span } from '../../grammar/syntax/tree.ts';
import { type Change, percentWords } from './change.ts';
import { meaningOf, percentBetween, setMeaning, typed, wordsOf } from './meaning.ts';

/** The items of a machine (or of a file of shared declarations) and the text they stand in. */
export interface ItemsOf {
  file: string;
  source: string;
  items: readonly MachineItem[];
}

export function itemChanges(old: ItemsOf, now: ItemsOf): Change[] {
  const before = named(old);
  const after = named(now);
  const changes: Change[] = [];
  for (const [key, item] of before) {
    const other = after.get(key);
    if (other) changes.push(...between(item, old, other, now));
    else changes.push({ ...gone(item, old), old: place(item, old) });
  }
  for (const [key, item] of after)
    if (!before.has(key)) changes.push({ ...come(item, now), new: place(item, now) });
  return changes;
}

/** Items by what they are called; those without a name (couplings, combinations not built) by what they mean. */
function named({ items, source }: ItemsOf): Map<string, MachineItem> {
  const result = new Map<string, MachineItem>();
  for (const item of items) {
    if (item.kind === 'broken') continue;
    const name = 'name' in item ? item.name?.text : undefined;
    const kind = item.kind === 'declaration' ? item.type : item.kind;
    const key = `${kind} ${name ?? (item.kind === 'coupled' ? setMeaning(item.refs, source) : meaningOf(item, source))}`;
    if (!result.has(key)) result.set(key, item);
  }
  return result;
}

function wordFor(item: MachineItem): string {
  return item.kind === 'declaration' ? item.type : item.kind;
}

function called(item: MachineItem, { source }: ItemsOf): string {
  const name = 'name' in item ? item.name?.text : undefined;
  return `${wordFor(item)} ${name ?? `\`${typed(item, source).slice(0, 60)}\``}`;
}

function gone(item: MachineItem, of: ItemsOf): Change {
  const before = typed(item, of.source);
  return {
    kind: 'removed',
    what: wordFor(item),
    message: `${called(item, of)} is no longer declared.`,
    before,
    meaning: true,
  };
}

function come(item: MachineItem, of: ItemsOf): Change {
  const after = typed(item, of.source);
  return { kind: 'added', what: wordFor(item), message: `${called(item, of)} is new.`, after, meaning: true };
}

function between(a: MachineItem, old: ItemsOf, b: MachineItem, now: ItemsOf): Change[] {
  const places = { old: place(a, old), new: place(b, now) };
  const what = wordFor(b);
  if (a.kind === 'declaration' && b.kind === 'declaration') {
    const changes = clauseChanges(a, old, b, now).map((change) => ({ ...change, ...places }));
    if (changes.length > 0 || wordsOf(a).join('\n') === wordsOf(b).join('\n')) return changes;
  } else if (meaningOf(a, old.source) !== meaningOf(b, now.source)) {
    return [
      {
        kind: 'changed',
        what,
        message: `${called(b, now)} is another.`,
        before: typed(a, old.source),
        after: typed(b, now.source),
        ...places,
        meaning: true,
      },
    ];
  }
  const [before, after] = [wordsOf(a).join(' '), wordsOf(b).join(' ')];
  if (before === after) return [];
  return [
    {
      kind: 'reworded',
      what,
      message: `${called(b, now)} is worded otherwise.`,
      before,
      after,
      ...places,
      meaning: false,
    },
  ];
}

function clauseChanges(a: Declaration, old: ItemsOf, b: Declaration, now: ItemsOf): Change[] {
  const before = clausesOf(a, old.source);
  const after = clausesOf(b, now.source);
  const thing = called(b, now);
  const changes: Change[] = [];
  for (const name of new Set([...before.keys(), ...after.keys()])) {
    const [from, to] = [before.get(name), after.get(name)];
    if (from?.meaning === to?.meaning) continue;
    const percent = from?.quantity && to?.quantity ? percentBetween(from.quantity, to.quantity) : undefined;
    const share = percent === undefined ? '' : ` (${percentWords(percent)})`;
    const message = !to
      ? `${thing} no longer has \`${from!.typed}\`.`
      : !from
        ? `${thing} now has \`${to.typed}\`.`
        : `${thing}: \`${from.typed}\` is now \`${to.typed}\`${share}.`;
    changes.push({
      kind: 'changed',
      what: b.type,
      message,
      ...(from ? { before: from.typed } : {}),
      ...(to ? { after: to.typed } : {}),
      ...(percent === undefined ? {} : { percent }),
      meaning: true,
    });
  }
  return changes;
}

interface ClauseOf {
  meaning: string;
  typed: string;
  quantity?: string;
}

/** Clauses by their word; several of one word together. Clauses with only words for the reader have no meaning here. */
function clausesOf({ clauses }: Declaration, source: string): Map<string, ClauseOf> {
  const result = new Map<string, ClauseOf>();
  const sorted = clauses.map((clause) => ({ clause, meaning: clauseMeaning(clause, source) }));
  sorted.sort((one, other) => (one.meaning < other.meaning ? -1 : one.meaning > other.meaning ? 1 : 0));
  for (const { clause, meaning } of sorted) {
    const known = result.get(clause.clause);
    const quantity = quantityIn(clause);
    result.set(clause.clause, {
      meaning: known ? `${known.meaning} ${meaning}` : meaning,
      typed: known ? `${known.typed} ${typed(clause, source)}` : typed(clause, source),
      ...(quantity && !known ? { quantity: source.slice(quantity.start, quantity.end) } : {}),
    });
  }
  return result;
}

function clauseMeaning(clause: Clause, source: string): string {
  // What sits on, joins or opens what is a set; the words of other clauses come in an order that says something.
  if ('refs' in clause)
    return `${meaningOf({ ...clause, refs: [] }, source)}${setMeaning(clause.refs, source)}`;
  return meaningOf(clause, source);
}

function quantityIn(clause: Clause): Quantity | undefined {
  return 'quantity' in clause && !('stages' in clause) ? clause.quantity : undefined;
}

function place({ start, end }: Span, { file }: ItemsOf) {
  return { file, start, end };
}
