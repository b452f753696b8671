/** The one place where offsets become the editor protocol's positions, and findings its diagnostics. */
import {
  type CodeDescription,
  type Diagnostic,
  DiagnosticSeverity,
  DiagnosticTag,
  type Location,
  type Range,
  type TextEdit,
} from 'vscode-languageserver';
import type { Span } from '../../grammar/syntax/tree.ts';
import type { Finding, Severity } from '../report/finding.ts';
import { type Lines, linesOf } from '../report/positions.ts';

const SEVERITY: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

/** Lines of the texts at hand, each split once for as long as it stays the same. */
export class LinesCache {
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
    const from = lines.at(start);
    const to = lines.at(Math.max(start, end));
    return {
      start: { line: from.line, character: from.column },
      end: { line: to.line, character: to.column },
    };
  }

  location(uri: string, span: Span): Location {
    return { uri, range: this.range(uri, span) };
  }

  edit(uri: string, span: Span, newText: string): TextEdit {
    return { range: this.range(uri, span), newText };
  }
}

export function diagnosticOf(finding: Finding, lines: LinesCache, about?: CodeDescription): Diagnostic {
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
