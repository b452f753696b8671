/**
 * Colouring, tokenized by the editors' own libraries (vscode-textmate with vscode-oniguruma): at every place marked
 * with `^` in the samples the scope named behind it.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, it } from 'vitest';
import oniguruma from 'vscode-oniguruma';
import textmate, { type IGrammar } from 'vscode-textmate';
import { VERBS } from '../../grammar/tokens/verbs.ts';
import { colouring } from '../build/colouring.ts';

let grammar: IGrammar;
beforeAll(async () => {
  const wasm = createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm');
  await oniguruma.loadWASM(readFileSync(wasm));
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async () => textmate.parseRawGrammar(JSON.stringify(colouring()), 'dowel.json'),
  });
  grammar = (await registry.loadGrammar('source.dowel'))!;
});

/** Lines of Dowel; below each, lines of `^^^ scope` say what the piece above the carets is. */
const SAMPLE = `
use "pump.dowel"
^^^ keyword.control
    ^^^^^^^^^^^^ string.quoted
machine pump "Pump" {
^^^^^^^ keyword.control
        ^^^^ source.dowel
             ^^^^^^ string.quoted
  part cover "part {the} \\"cover\\"" on body  held by cover-screws
  ^^^^ keyword.control
              ^^^^ string.quoted
                   ^^^^^ variable.other.hole
                         ^^ constant.character.escape
                                    ^^ keyword.other.clause
                                             ^^^^^^^ keyword.other.clause
                                                     ^^^^^^^^^^^^ source.dowel
  fastener cover-screws x6  thread M8x1.25  torque 22 N·m  // torque 3
                        ^^ constant.numeric
                            ^^^^^^ keyword.other.clause
                                   ^^^^^^^ constant.numeric.thread
                                                   ^^ constant.numeric
                                                           ^^^^^^^^^^^ comment.line
procedure renew "Renew" for pump {
^^^^^^^^^ keyword.control
  danger live "It kills."
  ^^^^^^ keyword.other.notice
  remove cover-screws #3 except #4-left
  ^^^^^^ entity.name.function.verb
         ^^^^^^^^^^^^ source.dowel
                      ^^ constant.other.position
                                ^^^^^^^ constant.other.position
  bolt  up cover
  ^^^^^^^^ entity.name.function.verb
           ^^^^^ source.dowel
  remove remove-tool
         ^^^^^^^^^^^ source.dowel
  inspect cover for "cracks" { cracked { stop "No." } }
  ^^^^^^^ entity.name.function.verb
                ^^^ keyword.other.clause
                               ^ source.dowel
                                         ^^^^ keyword.control
  for each side in left, right { loosen screws }
  ^^^^^^^^ keyword.control
                                 ^^^^^^ entity.name.function.verb
  "not closed
  ^^^^^^^^^^^ string.quoted
  refit cover
  ^^^^^ entity.name.function.verb
}
`;

interface Expected {
  line: string;
  piece: string;
  start: number;
  end: number;
  scope: string;
}

/** What the sample asks for, and its lines without the marks. */
function read(sample: string): { lines: string[]; expected: (Expected & { at: number })[] } {
  const lines: string[] = [];
  const expected: (Expected & { at: number })[] = [];
  for (const line of sample.trim().split('\n')) {
    const marked = /^( *)(\^+) ([a-z.-]+)$/.exec(line);
    if (!marked) {
      lines.push(line);
      continue;
    }
    const start = marked[1]!.length;
    const end = start + marked[2]!.length;
    const above = lines.at(-1)!;
    expected.push({
      line: above,
      piece: above.slice(start, end),
      start,
      end,
      scope: marked[3]!,
      at: lines.length - 1,
    });
  }
  return { lines, expected };
}

/** The innermost scopes of every character of every line. */
function scopesOf(lines: readonly string[]): string[][] {
  let stack = textmate.INITIAL;
  return lines.map((line) => {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, stack);
    stack = ruleStack;
    return tokens.flatMap(({ startIndex, endIndex, scopes }) =>
      Array.from({ length: endIndex - startIndex }, () => scopes.join(' ')),
    );
  });
}

describe('colouring', () => {
  it('gives every marked place its scope', () => {
    const { lines, expected } = read(SAMPLE);
    const scopes = scopesOf(lines);
    const wrong = expected.flatMap(({ at, start, end, scope, piece, line }) => {
      const here = [...new Set(scopes[at]!.slice(start, end))];
      const right = here.every((one) =>
        scope === 'source.dowel' ? one === scope : one.split(' ').some((each) => each.startsWith(scope)),
      );
      return right ? [] : [`${line.trim()}: ${piece} is ${here.join(' | ')}, not ${scope}`];
    });
    expect(wrong).toEqual([]);
    expect(expected.length).toBeGreaterThan(25);
  });

  it('knows every verb, in every spelling, at the start of a line', () => {
    const spellings = VERBS.flatMap(({ verb, also = [] }) => [verb, ...also]);
    const wrong = spellings.filter((verb) => {
      const [scopes] = scopesOf([`    ${verb} things`]);
      return !scopes!.slice(4, 4 + verb.length).every((one) => one.includes('entity.name.function.verb'));
    });
    expect(wrong).toEqual([]);
  });

  it('takes no verb for one inside a name', () => {
    const [scopes] = scopesOf(['  refit drain-plug']);
    expect(scopes!.slice(8).every((one) => one === 'source.dowel')).toBe(true);
  });
});
