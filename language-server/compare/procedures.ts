/** What is different between two procedures: headers, steps, notices, tasks. Finds no meaning in layout or order of headers. */
import type { Header, Procedure, Span } from '../../grammar/syntax/tree.ts';
import { hunksBetween } from '../features/mend-lines.ts';
import { type Change, percentWords, titleChanges } from './change.ts';
import { meaningOf, percentBetween, typed, wordsOf } from './meaning.ts';
import { noticeChanges } from './notices.ts';
import { type ComparedStep, stepsOf } from './steps.ts';

export interface ProcedureOf {
  file: string;
  source: string;
  procedure: Procedure;
}

export function procedureChanges(old: ProcedureOf, now: ProcedureOf): Change[] {
  return [
    ...titleChanges(old.procedure, now.procedure),
    ...headerChanges(old, now),
    ...stepChanges(old, now),
  ];
}

/** The meaning of all steps, one text a step: equal for procedures in which the same is done in the same order. */
export function stepMeanings({ procedure, source }: ProcedureOf): string[] {
  return stepsOf(procedure.body, source).map(({ meaning }) => meaning);
}

/** Headers that say which paper this is. */
const RECORD: ReadonlySet<string> = new Set(['document', 'change']);

function headerChanges(old: ProcedureOf, now: ProcedureOf): Change[] {
  const before = headersOf(old);
  const after = headersOf(now);
  const changes: Change[] = [];
  for (const name of new Set([...before.keys(), ...after.keys()])) {
    const [from, to] = [before.get(name), after.get(name)];
    const places = {
      ...(from ? { old: { file: old.file, start: from.start, end: from.end } } : {}),
      ...(to ? { new: { file: now.file, start: to.start, end: to.end } } : {}),
    };
    const texts = { ...(from ? { before: from.typed } : {}), ...(to ? { after: to.typed } : {}) };
    if (RECORD.has(name)) {
      if (from?.typed !== to?.typed)
        changes.push({
          kind: 'record',
          what: name,
          message: `${name}: ${told(from?.typed, to?.typed)}.`,
          ...texts,
          ...places,
          meaning: false,
        });
      continue;
    }
    // Lists are told entry by entry: a reviewer asks which tool is new.
    for (const [entry, words] of to?.entries ?? [])
      if (!from?.entries.has(entry))
        changes.push({
          kind: 'added',
          what: name,
          message: `${name}: \`${words}\` is new.`,
          after: words,
          ...places,
          meaning: true,
        });
    for (const [entry, words] of from?.entries ?? [])
      if (!to?.entries.has(entry))
        changes.push({
          kind: 'removed',
          what: name,
          message: `${name}: \`${words}\` is gone.`,
          before: words,
          ...places,
          meaning: true,
        });
    if ((from?.rest ?? '') !== (to?.rest ?? '')) {
      const percent = from?.quantity && to?.quantity ? percentBetween(from.quantity, to.quantity) : undefined;
      const share = percent === undefined ? '' : ` (${percentWords(percent)})`;
      changes.push({
        kind: 'changed',
        what: name,
        message: `${told(from?.typed, to?.typed)}${share}.`,
        ...texts,
        ...(percent === undefined ? {} : { percent }),
        ...places,
        meaning: true,
      });
    } else if ((from?.words ?? '') !== (to?.words ?? ''))
      changes.push({
        // For which machines it is written is no matter of words.
        kind: name === 'serial numbers' ? 'changed' : 'reworded',
        what: name,
        message: `${told(from?.typed, to?.typed)}.`,
        ...texts,
        ...places,
        meaning: name === 'serial numbers',
      });
  }
  return changes;
}

function told(before: string | undefined, after: string | undefined): string {
  if (before === undefined) return `\`${after}\` is new`;
  if (after === undefined) return `\`${before}\` is gone`;
  return `\`${before}\` is now \`${after}\``;
}

interface HeaderOf extends Span {
  typed: string;
  /** The things listed, by meaning. */
  entries: Map<string, string>;
  /** The meaning without the list. */
  rest: string;
  words: string;
  quantity?: string;
}

function headersOf({ procedure, source }: ProcedureOf): Map<string, HeaderOf> {
  const result = new Map<string, HeaderOf>();
  for (const header of procedure.headers) {
    const known = result.get(header.header);
    const entries = new Map(known?.entries);
    for (const one of listed(header)) entries.set(meaningOf(one, source), typed(one, source));
    const rest = `${known?.rest ?? ''}${meaningOf({ ...header, header: '', refs: [], names: [], fluids: [], claims: [] }, source)}`;
    const quantity = 'quantity' in header ? header.quantity : undefined;
    result.set(header.header, {
      start: known?.start ?? header.start,
      end: header.end,
      typed: known ? `${known.typed} ${typed(header, source)}` : typed(header, source),
      entries,
      rest,
      words: `${known?.words ?? ''}${wordsOf(header).join(' ')}`,
      ...(quantity ? { quantity: source.slice(quantity.start, quantity.end) } : {}),
    });
  }
  return result;
}

function listed(header: Header): Span[] {
  switch (header.header) {
    case 'for':
    case 'tools':
      return header.refs;
    case 'supplies':
      return [
        ...header.refs,
        ...header.fluids.map(({ quantity, fluid }) => ({
          ...(fluid ?? {}),
          quantity,
          start: quantity.start,
          end: fluid?.end ?? quantity.end,
        })),
      ];
    case 'wear':
      return header.names;
    case 'starts with':
    case 'ends with':
      return header.claims;
    default:
      return [];
  }
}

function stepChanges(old: ProcedureOf, now: ProcedureOf): Change[] {
  const a = stepsOf(old.procedure.body, old.source);
  const b = stepsOf(now.procedure.body, now.source);
  const pairs: [ComparedStep, ComparedStep][] = [];
  const left = new Set(a);
  const right = new Set(b);
  const pair = (one: ComparedStep, other: ComparedStep) => {
    pairs.push([one, other]);
    left.delete(one);
    right.delete(other);
  };
  const moved = new Set<ComparedStep>();
  for (const gap of inOrder(a, b, ({ meaning }) => meaning, pair)) {
    // The same step with other details stands where it stood, between steps that have stayed.
    inOrder(gap.old, gap.now, ({ under, key }) => `${under.join(' | ')} | ${key}`, pair);
  }
  for (const alike of [({ meaning }: ComparedStep) => meaning, ({ key }: ComparedStep) => key]) {
    for (const from of [...left]) {
      const to = [...right].find((one) => alike(one) === alike(from));
      if (!to) continue;
      pair(from, to);
      moved.add(to);
    }
  }
  const at = (one: Span, file: string) => ({ file, start: one.start, end: one.end });
  const changes: { at: number; change: Change }[] = [];
  const say = (step: ComparedStep, change: Change) => changes.push({ at: b.indexOf(step), change });
  for (const [from, to] of pairs) {
    const places = { old: at(from, old.file), new: at(to, now.file) };
    if (moved.has(to)) say(to, { ...moveOf(from, to, a, b), ...places });
    for (const change of detailChanges(from, to)) say(to, { ...change, ...places });
    for (const change of noticeChanges(from, to)) say(to, { ...places, ...change });
  }
  for (const step of right) {
    const change: Change = {
      kind: 'added',
      what: 'step',
      message: `\`${step.typed}\`${whereWords(step)} is new.`,
      after: step.typed,
      meaning: true,
    };
    say(step, { ...change, new: at(step, now.file) });
    for (const one of noticeChanges(undefined, step)) say(step, { new: at(step, now.file), ...one });
  }
  for (const step of left) {
    const place = a.indexOf(step);
    const next = a.slice(place).find((one) => !left.has(one));
    const twin = pairs.find(([from]) => from === next)?.[1];
    const where = twin ? b.indexOf(twin) - 0.5 : b.length;
    const change: Change = {
      kind: 'removed',
      what: 'step',
      message: `\`${step.typed}\`${whereWords(step)} is gone.`,
      before: step.typed,
      meaning: true,
    };
    changes.push({ at: where, change: { ...change, old: at(step, old.file) } });
    for (const one of noticeChanges(step, undefined))
      changes.push({ at: where, change: { old: at(step, old.file), ...one } });
  }
  return changes.sort((one, other) => one.at - other.at).map(({ change }) => change);
}

/** Pairs equal steps in an order that both keep, as many as there can be; what is left between them is given back. */
function inOrder(
  a: readonly ComparedStep[],
  b: readonly ComparedStep[],
  of: (step: ComparedStep) => string,
  pair: (one: ComparedStep, other: ComparedStep) => void,
): { old: readonly ComparedStep[]; now: readonly ComparedStep[] }[] {
  const text = (steps: readonly ComparedStep[]) =>
    steps.map((step) => of(step).replaceAll('\n', ' ')).join('\n');
  if (a.length === 0 || b.length === 0) return [{ old: a, now: b }];
  const hunks = hunksBetween(text(a), text(b));
  let i = 0;
  let j = 0;
  for (const hunk of [...hunks, { from: a.length, to: b.length, removed: [], added: [] }]) {
    while (i < hunk.from && j < hunk.to) pair(a[i++]!, b[j++]!);
    i = hunk.from + hunk.removed.length;
    j = hunk.to + hunk.added.length;
  }
  return hunks.map(({ from, removed, to, added }) => ({
    old: a.slice(from, from + removed.length),
    now: b.slice(to, to + added.length),
  }));
}

function whereWords({ underWords, task }: ComparedStep): string {
  return `${underWords ? ` (${underWords})` : ''}${task ? ` in "${task}"` : ''}`;
}

function moveOf(from: ComparedStep, to: ComparedStep, a: ComparedStep[], b: ComparedStep[]): Change {
  const behind = (step: ComparedStep, all: ComparedStep[]) => {
    const before = all[all.indexOf(step) - 1];
    return before ? `after \`${before.typed}\`` : 'first of all';
  };
  const [before, after] = [behind(from, a), behind(to, b)];
  if (from.underWords !== to.underWords) {
    const [one, other] = [from.underWords || 'in every case', to.underWords || 'in every case'];
    return {
      kind: 'changed',
      what: 'condition',
      message: `\`${to.typed}\` was done ${one}, now ${other}.`,
      before: one,
      after: other,
      meaning: true,
    };
  }
  return {
    kind: 'moved',
    what: 'step',
    message: `\`${to.typed}\` stood ${before}, now ${after}.`,
    before,
    after,
    meaning: true,
  };
}

function detailChanges(from: ComparedStep, to: ComparedStep): Change[] {
  const changes: Change[] = [];
  for (const name of new Set([...from.details.keys(), ...to.details.keys()])) {
    const [one, other] = [from.details.get(name), to.details.get(name)];
    if (one?.meaning === other?.meaning) continue;
    const percent =
      one?.quantity && other?.quantity ? percentBetween(one.quantity, other.quantity) : undefined;
    const share = percent === undefined ? '' : ` (${percentWords(percent)})`;
    changes.push({
      kind: 'changed',
      what: 'step',
      message: `\`${to.typed}\`: ${told(one?.typed, other?.typed)}${share}.`,
      ...(one ? { before: one.typed } : {}),
      ...(other ? { after: other.typed } : {}),
      ...(percent === undefined ? {} : { percent }),
      meaning: true,
    });
  }
  const [before, after] = [from.words.join(' '), to.words.join(' ')];
  if (before !== after)
    changes.push({
      kind: 'reworded',
      what: 'step',
      message: `\`${to.typed}\` is worded otherwise.`,
      before,
      after,
      meaning: false,
    });
  return changes;
}
