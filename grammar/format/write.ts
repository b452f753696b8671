/** From the plan of the gaps to the edits that make the text so. Only what stands between tokens changes. */
import type { Span } from '../syntax/tree.ts';
import type { KeptLines } from './kept.ts';
import { STEP } from './layout.ts';
import { type GapPlan, NEW_LINE, NONE, ONE, TOGETHER } from './plan.ts';
import type { Source } from './source.ts';

/** Puts `text` in the place of what stands from `start` to `end`. */
export interface Edit extends Span {
  text: string;
}

export function edits(plan: GapPlan, kept: KeptLines): Edit[] {
  return new Writer(plan, kept).all();
}

export function applied(text: string, list: readonly Edit[]): string {
  const parts: string[] = [];
  let at = 0;
  for (const edit of list) {
    parts.push(text.slice(at, edit.start), edit.text);
    at = edit.end;
  }
  parts.push(text.slice(at));
  return parts.join('');
}

class Writer {
  private readonly source: Source;
  private readonly plan: GapPlan;
  private readonly kept: KeptLines;
  private readonly list: Edit[] = [];
  /** Where the last token or comment ended. */
  private end = 0;
  private keptBefore = false;
  /** Nothing but a comment on the same line stands behind an opening brace so far. */
  private opened = false;

  constructor(plan: GapPlan, kept: KeptLines) {
    this.source = plan.source;
    this.plan = plan;
    this.kept = kept;
  }

  all(): Edit[] {
    const { tokens, comments } = this.source;
    for (let gap = 0; gap <= tokens.length; gap += 1) {
      const token = tokens[gap];
      if (this.source.hasComment(gap)) {
        const first = this.source.commentsFrom(gap);
        const end = this.source.commentsTo(gap);
        const wanted = this.emptyLineBefore(gap, first, end);
        for (let i = first; i < end; i += 1) this.comment(gap, comments[i]!, i === wanted);
        if (token) this.ownLine(gap, token, wanted === end);
      } else if (token) this.token(gap, token);
      if (token) {
        this.end = token.end;
        this.opened = this.source.is(gap, '{');
      }
    }
    this.finish();
    return this.list;
  }

  private token(gap: number, token: Span): void {
    const { plan, kept } = this;
    const typed = this.source.tokens[gap]!.beginsLine;
    const line = plan.lines[gap]!;
    const parted = typed && kept.any && this.keptBefore !== kept.has(token.start);
    if (gap === 0 || line === NEW_LINE || (line !== TOGETHER && typed) || parted) {
      this.ownLine(gap, token, plan.empties[gap] === ONE);
    } else this.put(token, ' '.repeat(plan.spaces(gap)));
  }

  private ownLine(gap: number, token: Span, wanted: boolean): void {
    const { plan, source } = this;
    const empty = !this.opened && !source.is(gap, '}') && (wanted || this.typedEmpty(gap, token.start));
    this.line(token, plan.indents[gap]!, empty);
  }

  private comment(gap: number, comment: Span, wanted: boolean): void {
    const { plan, source } = this;
    if (this.end > 0 && newlines(source.text, this.end, comment.start) === 0) this.put(comment, '  ');
    else {
      // What stands before a closing brace or within a statement stands further in than the brace does.
      const inner = source.is(gap, '}') || source.is(gap, '{') ? STEP : 0;
      const empty = !this.opened && (wanted || this.typedEmpty(gap, comment.start));
      this.line(comment, plan.indents[gap]! + inner, empty);
      this.opened = false;
    }
    this.end = comment.end;
  }

  /** Where an empty line is wanted and the author has none: the number of the comment it goes before. */
  private emptyLineBefore(gap: number, first: number, end: number): number {
    const { source, plan } = this;
    if (plan.empties[gap] !== ONE) return -1;
    const { text, comments, tokens } = source;
    let at = tokens[gap - 1]?.end ?? 0;
    let place = -1;
    for (let i = first; i <= end; i += 1) {
      const next = i < end ? comments[i]! : tokens[gap];
      if (!next) return -1;
      const lines = newlines(text, at, next.start);
      if (lines > 1) return -1;
      if (lines > 0 && place < 0) place = i;
      at = next.end;
    }
    return place;
  }

  private finish(): void {
    const { text } = this.source;
    const rest = text.slice(this.end);
    if (this.end === 0) this.change(0, text.length, '');
    else this.change(this.end, text.length, `${this.keptBefore ? beforeLineEnd(rest) : ''}\n`);
  }

  /** The author has an empty line before `start`, and the plan allows it. */
  private typedEmpty(gap: number, start: number): boolean {
    return this.end > 0 && this.plan.empties[gap] !== NONE && newlines(this.source.text, this.end, start) > 1;
  }

  /** The token or comment begins a line. */
  private line(next: Span, indent: number, empty: boolean): void {
    const { text } = this.source;
    const here = this.kept.any && this.kept.has(next.start);
    const typed = text.slice(this.end, next.start);
    if (here && this.keptBefore) {
      this.change(this.end, next.start, unixLines(typed));
      return;
    }
    const tail = this.keptBefore ? beforeLineEnd(typed) : '';
    const blank = here ? afterLineEnd(typed) : ' '.repeat(indent);
    const ends = this.end === 0 ? '' : empty ? '\n\n' : '\n';
    this.change(this.end, next.start, `${tail}${ends}${blank}`);
    this.keptBefore = here;
  }

  /** The token or comment stays on the line. */
  private put(next: Span, spaces: string): void {
    if (this.kept.any && this.kept.has(next.start)) {
      this.keptBefore = true;
      return;
    }
    this.change(this.end, next.start, spaces);
    this.keptBefore = false;
  }

  private change(start: number, end: number, text: string): void {
    if (this.source.text.slice(start, end) !== text) this.list.push({ start, end, text });
  }
}

/** Line ends between two places, of any kind. */
function newlines(text: string, start: number, end: number): number {
  let count = 0;
  for (let at = start; at < end; at += 1) {
    const code = text.charCodeAt(at);
    if (code === 0x0a || code === 0x2028 || code === 0x2029 || code === 0x85) count += 1;
    else if (code === 0x0d && text.charCodeAt(at + 1) !== 0x0a) count += 1;
  }
  return count;
}

const LINE_END = /\r\n?/g;

function unixLines(blank: string): string {
  return blank.replace(LINE_END, '\n').replace(/^\uFEFF/, '');
}

function beforeLineEnd(blank: string): string {
  return /^[^\r\n]*/.exec(blank)![0];
}

function afterLineEnd(blank: string): string {
  const end = Math.max(blank.lastIndexOf('\n'), blank.lastIndexOf('\r'));
  return blank.slice(end + 1).replace(/^\uFEFF/, '');
}
