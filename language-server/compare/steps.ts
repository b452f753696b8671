/**
 * The steps of a procedure one after the other, each with the conditions it stands under, what it does, what it does it
 * to, how, and the notices that stand before it. Blocks are opened up, so that two procedures can be laid side by side.
 */
import type { Action, Block, Notice, Outcome, Span, Statement } from '../../grammar/syntax/tree.ts';
import { meaningOf, setMeaning, typed, wordsOf } from './meaning.ts';

export interface ComparedStep extends Span {
  /** When it is done: one meaning for each condition, from the outside in. */
  under: readonly string[];
  /** The same for a reader: `when supply is single-phase`. */
  underWords: string;
  /** What is done to what; two steps with the same key are the same step with other details. */
  key: string;
  /** How it is done, by clause: `with` to its meaning and what was typed. */
  details: ReadonlyMap<string, { meaning: string; typed: string; quantity?: string }>;
  /** Everything about it, in one text: equal for steps that mean the same. */
  meaning: string;
  /** The author's sentences. */
  words: readonly string[];
  notices: readonly ComparedNotice[];
  /** In one line, without its texts and blocks. */
  typed: string;
  /** Title of the task it stands in. */
  task: string;
}

export interface ComparedNotice extends Span {
  signal: Notice['signal'];
  hazards: readonly string[];
  words: string;
}

export function stepsOf(body: Block | undefined, source: string): ComparedStep[] {
  const steps = new Steps(source);
  steps.block(body, { under: [], words: [], task: '' });
  return steps.found;
}

interface Where {
  under: readonly string[];
  words: readonly string[];
  task: string;
}

class Steps {
  readonly found: ComparedStep[] = [];
  private waiting: ComparedNotice[] = [];
  private readonly source: string;

  constructor(source: string) {
    this.source = source;
  }

  block(block: Block | undefined, where: Where): void {
    for (const statement of block?.statements ?? []) this.statement(statement, where);
    // A notice that stands last in its block guards nothing behind it.
    this.waiting = [];
  }

  private statement(statement: Statement, where: Where): void {
    const inside = (condition: unknown, words: string): Where => ({
      ...where,
      under: [
        ...where.under,
        `${words.split(' ')[0]} ${meaningOf(condition, this.source)}${wordsOf(condition)}`,
      ],
      words: [...where.words, words],
    });
    const said = (span: Span | undefined) => (span ? typed(span, this.source) : '');
    switch (statement.kind) {
      case 'notice':
        this.waiting.push({
          start: statement.start,
          end: statement.end,
          signal: statement.signal,
          hazards: statement.hazards.map(({ text }) => text),
          words: wordsOf(statement).join(' '),
        });
        return;
      case 'task':
        this.block(statement.body, { ...where, task: statement.title?.value ?? statement.name?.text ?? '' });
        return;
      case 'step':
        this.block(statement.body, where);
        return;
      case 'when':
      case 'if': {
        const words = `${statement.kind} ${said(statement.condition)}`;
        this.block(statement.body, inside(statement.condition, words));
        this.block(statement.otherwise, inside(statement.condition, `otherwise, not ${words}`));
        return;
      }
      case 'repeat': {
        const words = `repeat until ${said(statement.until)}${statement.atMost ? ` at most ${statement.atMost}` : ''}`;
        this.block(statement.body, inside([statement.until, statement.atMost], words));
        this.block(statement.otherwise, inside(statement.until, `otherwise, after ${words}`));
        return;
      }
      case 'for each': {
        const words = `for each ${statement.variable?.text ?? ''} in ${said(statement.over)}`;
        this.block(statement.body, inside([statement.variable, statement.over], words));
        return;
      }
      case 'hold':
        this.block(statement.body, inside(statement.text, `holding ${said(statement.text)}`));
        return;
      case 'action':
        this.action(statement, where, inside);
        return;
      default:
        this.add(statement, where, `${statement.kind} ${meaningOf(statement, this.source)}`, new Map());
    }
  }

  private action(action: Action, where: Where, inside: (condition: unknown, words: string) => Where): void {
    const { source } = this;
    const details = new Map<string, { meaning: string; typed: string; quantity?: string }>();
    const put = (name: string, node: Span, quantity?: Span) => {
      const meaning = meaningOf(node, source);
      const before = details.get(name);
      details.set(name, {
        meaning: before ? `${before.meaning} ${meaning}` : meaning,
        typed: before ? `${before.typed} ${typed(node, source)}` : typed(node, source),
        ...(quantity && !before ? { quantity: source.slice(quantity.start, quantity.end) } : {}),
      });
    };
    if (action.quantity) put('amount', action.quantity, action.quantity);
    if (action.expression) put('worked out as', action.expression);
    for (const tail of action.tails) put(tail.tail, tail, 'quantity' in tail ? tail.quantity : undefined);
    for (const outcome of action.outcomes)
      put('outcomes', {
        ...(namedIn(outcome) ?? { start: outcome.start, end: outcome.start }),
      });
    const objects = action.together ? setMeaning(action.objects, source) : meaningOf(action.objects, source);
    const key = `${action.verb} ${action.fresh ?? ''} ${objects} ${action.topic?.text ?? ''}`;
    this.add(action, where, key, details);
    for (const outcome of action.outcomes) {
      const named = namedIn(outcome);
      this.block(
        outcome.body,
        inside([key, ...outcome.intervals, outcome.word], `where ${named ? typed(named, source) : ''}`),
      );
    }
  }

  private add(statement: Statement, where: Where, key: string, details: ComparedStep['details']): void {
    const blocks = statement.kind === 'action' ? statement.outcomes : [];
    const end = blocks[0]?.start ?? statement.end;
    const how = [...details].map(([name, { meaning }]) => `${name} ${meaning}`).sort();
    const own = statement.kind === 'action' ? { ...statement, outcomes: [] } : statement;
    this.found.push({
      start: statement.start,
      end,
      under: where.under,
      underWords: where.words.join(', '),
      key,
      details,
      meaning: [...where.under, key, ...how].join(' | '),
      words: wordsOf(own),
      notices: this.waiting,
      typed: withoutTexts(own, end, this.source),
      task: where.task,
    });
    this.waiting = [];
  }
}

/** The step in one line, its quoted texts left out where something else is said. */
function withoutTexts(statement: Statement, end: number, source: string): string {
  const line = typed({ start: statement.start, end }, source);
  const bare = line
    .replace(/"(?:[^"\\]|\\.)*"/g, '')
    .replace(/\s+/g, ' ')
    .trim();
  return bare.includes(' ') ? bare : line;
}

/** From the first word of an outcome to the brace. */
function namedIn({ intervals, word }: Outcome): Span | undefined {
  const [first] = intervals;
  return first ? { start: first.start, end: intervals[intervals.length - 1]!.end } : word;
}
