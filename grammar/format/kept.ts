/**
 * The lines that stay as they were typed because the text on them could not be read. Lines are those of an
 * editor: they end with LF, CR or both.
 */
import type { Span } from '../syntax/tree.ts';

export class KeptLines {
  private readonly starts: number[] = [0];
  /** Lines with a problem: what reaches into one of them is kept as a whole. */
  private readonly troubled: Uint8Array;
  private readonly kept: Uint8Array;
  /** False while nothing is kept, so that whole texts need no questions. */
  any = false;

  constructor(text: string, troubles: readonly Span[], more: readonly Span[] = []) {
    if (troubles.length > 0 || more.length > 0) {
      for (let at = 0; at < text.length; at += 1) {
        const code = text.charCodeAt(at);
        if (code === 0x0a || (code === 0x0d && text.charCodeAt(at + 1) !== 0x0a)) this.starts.push(at + 1);
      }
    }
    this.troubled = new Uint8Array(this.starts.length);
    this.kept = new Uint8Array(this.starts.length);
    for (const span of troubles) this.mark(this.troubled, span);
    for (const span of troubles) this.keep(span);
    for (const span of more) this.keep(span);
  }

  has(offset: number): boolean {
    return this.any && this.kept[this.lineOf(offset)] === 1;
  }

  keep(span: Span): void {
    this.any = true;
    this.mark(this.kept, span);
  }

  /** Keeps all lines of something that can only be read as a whole, if one of them has a problem. */
  keepIfTroubled(span: Span): void {
    if (!this.any) return;
    const last = this.lineOf(span.end);
    for (let line = this.lineOf(span.start); line <= last; line += 1) {
      if (this.troubled[line] === 1) {
        this.keep(span);
        return;
      }
    }
  }

  private mark(lines: Uint8Array, span: Span): void {
    lines.fill(1, this.lineOf(span.start), this.lineOf(span.end) + 1);
  }

  private lineOf(offset: number): number {
    let low = 0;
    let high = this.starts.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.starts[middle]! <= offset) low = middle + 1;
      else high = middle;
    }
    return low - 1;
  }
}
