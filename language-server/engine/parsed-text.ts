/**
 * A text with its tree, kept while the text is edited: only the steps or declarations around an edit are read again
 * (together with their neighbours, since a line may go on in the next), all other nodes stay the same objects. Where
 * an edit reaches further (braces, the heads of machines and procedures) the whole text is read and compared.
 */
import { capped, type Reading, readAt, readStretch } from '../../grammar/parser/parse.ts';
import type {
  Block,
  Comment,
  FileItem,
  MachineItem,
  ParsedFile,
  Span,
  Statement,
  SyntaxProblem,
} from '../../grammar/syntax/tree.ts';
import { scan } from '../../grammar/tokens/scan.ts';
import { graftList } from './graft.ts';
import { type LineChange, type LinePosition, LineSpace } from './line-space.ts';

/** What reading took, counted since the beginning. */
export interface ReadingWork {
  /** Times that a whole text was read. */
  texts: number;
  /** Statements, declarations and file items that were read, those of whole texts not counted. */
  nodes: number;
}

type Listed = Statement | MachineItem | FileItem;

/** How often a stretch that did not come out as before at its end is read again with one more neighbour. */
const MOST_TRIES = 4;

export class ParsedText {
  readonly space: LineSpace;
  readonly work: ReadingWork = { texts: 0, nodes: 0 };
  items: FileItem[] = [];
  private problems: SyntaxProblem[] = [];
  private comments: Comment[] = [];
  private balanced = true;
  private made: ParsedFile | undefined;

  constructor(text: string) {
    this.space = new LineSpace(text);
    this.take(this.readWhole());
  }

  get text(): string {
    return this.space.text;
  }

  /** The tree; the same object for as long as nothing in it changed. Its places are those of `space`. */
  get parsed(): ParsedFile {
    const { items, comments, problems } = this;
    this.made ??= {
      tree: { kind: 'file', items, start: 0, end: Number.MAX_SAFE_INTEGER },
      tokens: [],
      comments,
      problems: capped(problems),
    };
    return this.made;
  }

  /** Puts a text in place of what stands between two positions. */
  edit(start: LinePosition, end: LinePosition, text: string): void {
    this.reread(this.space.edit(start, end, text));
  }

  /** Puts in a whole new text; lines that are as before keep their places. */
  replace(text: string): void {
    const last = this.space.count - 1;
    const end = { line: last, column: this.space.line(last).length };
    this.reread(this.space.edit({ line: 0, column: 0 }, end, text));
  }

  private reread(change: LineChange): void {
    const lines = change.renumbered ? undefined : this.linesOf(change);
    if (lines && this.onlyComments(lines)) return;
    this.made = undefined;
    // Items in stray braces stand in the list of the block around: an edit of braces may reach anywhere.
    const near = lines && this.balanced && braces(lines.before) === braces(lines.after);
    if (near && this.rereadStretch(change)) return;
    this.take(this.readWhole());
  }

  private readWhole(): Reading {
    this.work.texts++;
    return readAt(this.text, this.space.placing());
  }

  private take({ items, comments, problems, balanced }: Reading): void {
    this.items = graftList(this.items, items);
    this.comments = comments;
    this.problems = problems;
    this.balanced = balanced;
  }

  private linesOf({ first, last, removed }: LineChange): ChangedLines {
    const { space } = this;
    const fresh = Array.from({ length: last - first + 1 }, (_, index) => ({
      text: space.line(first + index),
      place: space.place(first + index),
    }));
    return { before: removed.map(wordsOf), after: fresh.map(wordsOf), lines: [...removed, ...fresh] };
  }

  /** True where blanks and comments are all that is other than before. */
  private onlyComments({ before, after, lines }: ChangedLines): boolean {
    if ([...before, ...after].some(({ sure }) => !sure)) return false;
    const shown = (lines: typeof before) => lines.flatMap(({ words }) => words).join('\n');
    if (shown(before) !== shown(after)) return false;
    if (lines.length === 0) return true;
    const from = Math.min(...lines.map(({ place }) => place));
    const to = Math.max(...lines.map(({ place, text }) => place + text.length));
    this.comments = spliced(
      this.comments,
      after.flatMap(({ comments }) => comments),
      [from, to + 1],
    );
    if (this.made) this.made = { ...this.made, comments: this.comments };
    return true;
  }

  // ------------------------------------------------------------ around an edit

  /** True where reading a stretch was enough. */
  private rereadStretch({ first, last }: LineChange): boolean {
    const { space } = this;
    const before = first === 0 ? -1 : space.place(first - 1) + space.line(first - 1).length;
    const after = last + 1 < space.count ? space.place(last + 1) : Number.MAX_SAFE_INTEGER;
    const edit: Edit = { before, after };
    const items = this.descend(edit);
    if (items === undefined) return false;
    this.items = items;
    return true;
  }

  /** The items of the file with the edited one read again; undefined where the edit is not inside one. */
  private descend(edit: Edit): FileItem[] | undefined {
    const [at, to] = touched(this.items, edit);
    const item = this.items[at];
    if (at !== to - 1 || !item) return undefined;
    let fresh: FileItem | undefined;
    if (item.kind === 'procedure' && item.body) {
      const body = this.block(item.body, edit, 1);
      if (body) fresh = body === item.body ? item : { ...item, body };
    } else if (item.kind === 'machine') {
      const items = this.machine(item, edit);
      if (items) fresh = items === item.items ? item : { ...item, items: items as MachineItem[] };
    }
    if (!fresh) return undefined;
    return fresh === item ? this.items : replaced(this.items, at, fresh);
  }

  private machine(item: Span & { items: MachineItem[] }, edit: Edit): Listed[] | undefined {
    const [first] = item.items;
    // Where its brace stands is not noted: an edit behind the first item is inside for certain.
    if (!first || first.start > edit.before || item.end - 1 < edit.after) return undefined;
    if (this.space.slice(item.end - 1, item.end) !== '}') return undefined;
    return this.stretch(item.items, edit, 'machine', 1, [item.start, first.start], item.end - 1);
  }

  /** A block with what was edited in it read again, as far inside as can be. */
  private block(block: Block, edit: Edit, depth: number): Block | undefined {
    if (!block.closed || block.start > edit.before || block.end - 1 < edit.after) return undefined;
    const [at, to] = touched(block.statements, edit);
    const statement = block.statements[at];
    if (at === to - 1 && statement) {
      const inner = this.inside(statement, edit, depth + 1);
      if (inner === statement) return block;
      if (inner) return { ...block, statements: replaced(block.statements, at, inner) };
    }
    const from = this.space.lineAt(block.start) + 1;
    const statements = this.stretch(
      block.statements,
      edit,
      'procedure',
      depth,
      [block.start, this.space.place(Math.min(from, this.space.count - 1))],
      block.end - 1,
    );
    if (!statements) return undefined;
    return statements === block.statements ? block : { ...block, statements: statements as Statement[] };
  }

  private inside(statement: Statement, edit: Edit, depth: number): Statement | undefined {
    if (statement.kind === 'action') {
      for (const [index, outcome] of statement.outcomes.entries()) {
        const body = outcome.body && this.block(outcome.body, edit, depth + 1);
        if (!body) continue;
        if (body === outcome.body) return statement;
        return { ...statement, outcomes: replaced(statement.outcomes, index, { ...outcome, body }) };
      }
      return undefined;
    }
    for (const key of ['body', 'otherwise'] as const) {
      const old = (statement as { body?: Block; otherwise?: Block })[key];
      const body = old && this.block(old, edit, depth);
      if (body) return body === old ? statement : ({ ...statement, [key]: body } as Statement);
    }
    return undefined;
  }

  /**
   * The list with the touched members and their neighbours read again. It is opened at `opened`, the
   * line of its first member begins at `from`, and `end` is where the brace stands that closes it. Undefined where the stretch cannot be read by itself.
   */
  private stretch<Node extends Listed>(
    list: readonly Node[],
    edit: Edit,
    within: 'procedure' | 'machine',
    depth: number,
    [opened, from]: [number, number],
    end: number,
  ): Node[] | undefined {
    const [touchedFrom, touchedTo] = touched(list, edit);
    let lo = Math.max(0, touchedFrom - 1);
    // What is wrong with the member before may be told at the first word of this one.
    while (
      lo > 0 &&
      (!this.isFirst(list[lo]!.start) || this.hasProblem(list[lo - 1]!.start, list[lo]!.start))
    )
      lo--;
    const start = lo === 0 ? from : list[lo]!.start;
    if (!this.isFirst(start) || (lo === 0 && this.hasProblem(opened, start))) return undefined;
    if (lo === 0 && list[0] && list[0].start < start) return undefined;
    const startLine = this.space.lineAt(start);
    for (let tries = 1; tries <= MOST_TRIES; tries++) {
      const hi = Math.min(list.length, touchedTo + tries);
      const next = hi < list.length ? list[hi]!.start : end;
      const nextLine = this.space.lineAt(next);
      if (!this.isFirst(next) || next < edit.after) {
        if (hi === list.length) return undefined;
        continue;
      }
      const read = readStretch(
        this.space.stretch(startLine, nextLine),
        within,
        depth,
        this.space.placing(startLine),
      );
      if (!read) return undefined;
      this.work.nodes += read.list.length;
      const fresh = graftList(list.slice(lo, hi), read.list as Node[]);
      const bounds: [number, number] = [this.space.place(startLine), this.space.place(nextLine)];
      const sure =
        hi === list.length || (hi > touchedTo && this.endsAlike(list[hi - 1]!, fresh, read.problems));
      if (!sure) continue;
      this.comments = spliced(this.comments, read.comments, bounds);
      this.problems = spliced(this.problems, read.problems, bounds);
      if (fresh.length === hi - lo && fresh.every((one, index) => one === list[lo + index]))
        return list as Node[];
      return [...list.slice(0, lo), ...fresh, ...list.slice(hi)];
    }
    return undefined;
  }

  /** The last member that was read again came out as it was, with the same problems. */
  private endsAlike(last: Listed, fresh: readonly Listed[], problems: readonly SyntaxProblem[]): boolean {
    if (fresh.at(-1) !== last || last.kind === 'broken') return false;
    const there = (one: SyntaxProblem) => one.start >= last.start;
    const old = this.problems.filter((one) => one.start >= last.start && one.start < last.end);
    return JSON.stringify(problems.filter(there)) === JSON.stringify(old);
  }

  private hasProblem(from: number, to: number): boolean {
    return this.problems.some(({ start }) => start >= from && start < to);
  }

  /** Nothing but blanks stands before it in its line. */
  private isFirst(place: number): boolean {
    const line = this.space.lineAt(place);
    return (
      this.space
        .line(line)
        .slice(0, place - this.space.place(line))
        .trim() === ''
    );
  }
}

/** The lines that an edit was about, as they were and as they are. */
interface ChangedLines {
  before: LineWords[];
  after: LineWords[];
  lines: { text: string; place: number }[];
}

interface LineWords {
  sure: boolean;
  words: string[];
  braces: string;
  comments: Comment[];
}

function braces(lines: readonly LineWords[]): string {
  return lines.map((line) => line.braces).join('');
}

/** What is not touched ends at `before` at the latest, or starts at `after` at the earliest. */
interface Edit {
  before: number;
  after: number;
}

/** The members of a list that an edit touches: from the first to the one after the last. */
function touched(list: readonly Span[], { before, after }: Edit): [number, number] {
  let from = firstThat(list, ({ end }) => end > before);
  const to = firstThat(list, ({ start }) => start >= after);
  if (from > to) from = to;
  return [from, to];
}

function firstThat(list: readonly Span[], is: (span: Span) => boolean): number {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (is(list[middle]!)) high = middle;
    else low = middle + 1;
  }
  return low;
}

function replaced<Node>(list: readonly Node[], at: number, node: Node): Node[] {
  const copy = list.slice();
  copy[at] = node;
  return copy;
}

/** The spans within the bounds replaced; both lists are in the order of the text. */
function spliced<Node extends Span>(
  list: Node[],
  fresh: readonly Node[],
  [from, to]: [number, number],
): Node[] {
  const at = firstThat(list, ({ start }) => start >= from);
  const end = firstThat(list, ({ start }) => start >= to);
  if (at === end && fresh.length === 0) return list;
  return [...list.slice(0, at), ...fresh, ...list.slice(end)];
}

/** The words and marks of a line with their places; not sure where the line has something wrong in itself. */
function wordsOf({ text, place }: { text: string; place: number }): LineWords {
  const { lexemes, comments, problems } = scan(text);
  return {
    sure: problems.length === 0,
    words: lexemes.map(({ image, startOffset }) => `${place + startOffset} ${image}`),
    braces: lexemes.flatMap(({ image }) => (image === '{' || image === '}' ? image : '')).join(''),
    comments: comments.map((one) => ({ ...one, start: one.start + place, end: one.end + place })),
  };
}
