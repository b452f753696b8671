/** From the plan of the gaps to the edits that make the text so. Only what stands between tokens changes. */
import type { Span } from '../syntax/tree.ts';
import type { KeptLines } from './kept.ts';
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
        const forced = this.emptyLineBefore(gap, first, end);
        for (let i = first; i < end; i += 1) this.comment(gap, comments[i]!, i === first, i === forced);
        if (token)
          this.line(token, this.plan.indents[gap]!, this.emptyAfterComment(gap, end, forced === end));
      } else if (token) this.token(gap, token);
      if (token) this.end = token.end;
    }
    this.finish();
    return this.list;
  }

  private token(gap: number, token: Span): void {
    const { plan, source } = this;
    if (gap === 0) {
      this.line(token, plan.indents[gap]!, false);
      return;
    }
    const typed = source.tokens[gap]!.beginsLine;
    const line = plan.lines[gap]!;
    const keeps = typed && this.kept.any && this.keptBefore !== this.kept.has(token.start);
    if (line === NEW_LINE || (line !== TOGETHER && typed) || keeps) {
      const touching = source.is(gap - 1, '{') || source.is(gap, '}');
      const wanted = plan.empties[gap]!;
      const empty = !touching && (wanted === ONE || (wanted !== NONE && this.typedEmpty(token.start)));
      this.line(token, plan.indents[gap]!, empty);
      return;
    }
    this.put(token, ' '.repeat(plan.spaces(gap)));
  }

  private comment(gap: number, comment: Span, first: boolean, forced: boolean): void {
    const behind = first && gap > 0 && newlines(this.source.text, this.end, comment.start) === 0;
    if (behind) {
      this.put(comment, '  ');
    } else {
      const { plan, source } = this;
      const touching = this.end === 0 || (first && source.is(gap - 1, '{'));
      const empty = !touching && (forced || (plan.empties[gap] !== NONE && this.typedEmpty(comment.start)));
      // What stands before a closing brace or within a statement stands further in than the brace does.
      const inner = source.is(gap, '}') || source.is(gap, '{') ? 2 : 0;
      this.line(comment, plan.indents[gap]! + inner, empty);
    }
    this.end = comment.end;
  }

  /** Whether an empty line belongs between the last comment of a gap and the token. */
  private emptyAfterComment(gap: number, afterLast: number, forced: boolean): boolean {
    const { source, plan } = this;
    if (source.is(gap, '}')) return false;
    const only = afterLast - source.commentsFrom(gap) === 1;
    const before = source.tokens[gap - 1];
    const behind =
      only && before && newlines(source.text, before.end, source.comments[afterLast - 1]!.start) === 0;
    if (behind && source.is(gap - 1, '{')) return false;
    return forced || (plan.empties[gap] !== NONE && this.typedEmpty(source.tokens[gap]!.start));
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

  private typedEmpty(start: number): boolean {
    return newlines(this.source.text, this.end, start) > 1;
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
  return /[^\r\n]*$/.exec(blank)![0].replace(/^\uFEFF/, '');
}
