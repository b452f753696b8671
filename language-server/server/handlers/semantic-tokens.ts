/** Colouring by meaning: full, of a range, and as changes to what was sent before. */
import {
  type SemanticTokens,
  SemanticTokensBuilder,
  type SemanticTokensDelta,
} from 'vscode-languageserver/node';
import { COLOURS, type Colour, MARKS, type Piece, piecesOf } from '../../features/colour.ts';
import { type Handler, offsetOf, type Services } from './handler.ts';

/** Names that themes know; the others are told apart by editors that are taught them. */
const TYPES: Readonly<Record<Colour, string>> = {
  comment: 'comment',
  keyword: 'keyword',
  verb: 'function',
  string: 'string',
  number: 'number',
  unit: 'unit',
  operator: 'operator',
  machine: 'class',
  procedure: 'method',
  thing: 'property',
  value: 'variable',
  variant: 'enum',
  enumMember: 'enumMember',
  position: 'parameter',
  state: 'state',
  hazard: 'hazard',
  check: 'check',
  task: 'namespace',
  signal: 'signal',
  word: 'string',
};

const LEGEND = {
  tokenTypes: [...new Set(COLOURS.map((colour) => TYPES[colour]))],
  tokenModifiers: [...MARKS],
};

/** So many texts are remembered for changes. */
const MOST_KEPT = 100;

export const semanticTokens: Handler = {
  capabilities: {
    semanticTokensProvider: { legend: LEGEND, full: { delta: true }, range: true },
  },
  register(services) {
    const { connection, view } = services;
    const builders = new Map<string, SemanticTokensBuilder>();
    const builder = (uri: string): SemanticTokensBuilder => {
      const known = builders.get(uri) ?? new SemanticTokensBuilder();
      builders.delete(uri);
      builders.set(uri, known);
      if (builders.size > MOST_KEPT) builders.delete(builders.keys().next().value!);
      return known;
    };
    const pieces = (uri: string): Piece[] => {
      const file = view().file(uri);
      return file ? piecesOf(file.parsed, file.text) : [];
    };
    connection.languages.semanticTokens.on(({ textDocument: { uri } }): SemanticTokens => {
      const made = builder(uri);
      made.previousResult('');
      push(services, uri, pieces(uri), made);
      return made.build();
    });
    connection.languages.semanticTokens.onDelta(
      ({ textDocument: { uri }, previousResultId }): SemanticTokens | SemanticTokensDelta => {
        const made = builder(uri);
        made.previousResult(previousResultId);
        push(services, uri, pieces(uri), made);
        return made.buildEdits();
      },
    );
    connection.languages.semanticTokens.onRange(({ textDocument: { uri }, range }): SemanticTokens => {
      const from = offsetOf(services, uri, range.start);
      const to = offsetOf(services, uri, range.end);
      const made = new SemanticTokensBuilder();
      const seen = pieces(uri).filter(({ start, end }) => start < to && end > from);
      push(services, uri, seen, made);
      return made.build();
    });
  },
};

function push(
  { lines, host }: Services,
  uri: string,
  pieces: readonly Piece[],
  into: SemanticTokensBuilder,
): void {
  const text = host.read(uri) ?? '';
  for (const { start, end, colour, declares } of pieces) {
    const type = LEGEND.tokenTypes.indexOf(TYPES[colour]);
    // A piece of the protocol ends on its line.
    for (const line of linesOf(text, start, end)) {
      const { start: at } = lines.range(uri, line);
      into.push(at.line, at.character, line.end - line.start, type, declares ? 1 : 0);
    }
  }
}

function linesOf(text: string, start: number, end: number): { start: number; end: number }[] {
  const pieces: { start: number; end: number }[] = [];
  let at = start;
  while (at < end) {
    const newline = text.indexOf('\n', at);
    const stop = newline < 0 || newline > end ? end : newline;
    const last = text[stop - 1] === '\r' ? stop - 1 : stop;
    if (last > at) pieces.push({ start: at, end: last });
    at = stop + 1;
  }
  return pieces;
}
