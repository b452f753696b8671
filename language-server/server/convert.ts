/** The one place where offsets become the editor protocol's positions, and findings its diagnostics. */
import {
  type CodeDescription,
  type Diagnostic,
  DiagnosticSeverity,
  DiagnosticTag,
  type Location,
  type Position,
  PositionEncodingKind,
  type Range,
  type TextEdit,
} from 'vscode-languageserver';
import type { Span } from '../../grammar/syntax/tree.ts';
import type { Engine } from '../engine/engine.ts';
import type { Finding, Severity } from '../report/finding.ts';
import { type Lines, linesOf } from '../report/positions.ts';
import { columnIn, columnOut, type Encoding } from './encoding.ts';

const SEVERITY: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

/** From places in findings to ranges of the editor. */
export interface Ranges {
  range(uri: string, span: Span): Range;
  location(uri: string, span: Span): Location;
}

/** The same for places of an engine, which are those of lines. */
export class EngineRanges implements Ranges {
  encoding: Encoding = PositionEncodingKind.UTF16;
  private readonly engine: Engine;

  constructor(engine: Engine) {
    this.engine = engine;
  }

  range(uri: string, { start, end }: Span): Range {
    return { start: this.position(uri, start), end: this.position(uri, Math.max(start, end)) };
  }

  location(uri: string, span: Span): Location {
    return { uri, range: this.range(uri, span) };
  }

  /** A position of the editor's as one inside. */
  inside(uri: string, { line, character }: Position): { line: number; column: number } {
    return { line, column: columnIn(this.engine.line(uri, line), character, this.encoding) };
  }

  private position(uri: string, place: number): Position {
    const { line, column } = this.engine.positionOf(uri, place);
    return { line, character: columnOut(this.engine.line(uri, line), column, this.encoding) };
  }
}

/** Lines of the texts at hand, each split once for as long as it stays the same. */
export class LinesCache implements Ranges {
  encoding: Encoding = PositionEncodingKind.UTF16;
  private readonly known = new Map<string, { text: string; lines: Lines }>();
  private readonly read: (uri: string) => string | undefined;

  constructor(read: (uri: string) => string | undefined) {
    this.read = read;
  }

  of(uri: string): Lines {
    const text = this.read(uri) ?? '';
    const known = this.known.get(uri);
    if (known?.text === text) return known.lines;
    const lines = linesOf(text);
    this.known.set(uri, { text, lines });
    return lines;
  }

  range(uri: string, { start, end }: Span): Range {
    const lines = this.of(uri);
    return {
      start: this.position(lines, lines.at(start)),
      end: this.position(lines, lines.at(Math.max(start, end))),
    };
  }

  /** The offset of a position as the editor counts. */
  offset(uri: string, { line, character }: Position): number {
    const lines = this.of(uri);
    return lines.offset({ line, column: columnIn(lines.text(line), character, this.encoding) });
  }

  private position(lines: Lines, { line, column }: { line: number; column: number }): Position {
    return { line, character: columnOut(lines.text(line), column, this.encoding) };
  }

  location(uri: string, span: Span): Location {
    return { uri, range: this.range(uri, span) };
  }

  edit(uri: string, span: Span, newText: string): TextEdit {
    return { range: this.range(uri, span), newText };
  }
}

export function diagnosticOf(finding: Finding, lines: Ranges, about?: CodeDescription): Diagnostic {
  const when = finding.case ? ` (when ${finding.case})` : '';
  return {
    range: lines.range(finding.file, finding),
    severity: SEVERITY[finding.severity],
    source: 'dowel',
    code: finding.check,
    ...(about ? { codeDescription: about } : {}),
    message: `${finding.message}${when}${finding.help ? `\n${finding.help}` : ''}`,
    relatedInformation: finding.related.map(({ file, start, end, message }) => ({
      location: lines.location(file, { start, end }),
      message,
    })),
    ...(finding.check === 'unused-name' ? { tags: [DiagnosticTag.Unnecessary] } : {}),
  };
}
