/** The pages' scripts are texts, so the compiler is asked here: do they parse, and do they use what browsers have? */
import ts from 'typescript';
import { expect, test } from 'vitest';
import { WORK_SCRIPT } from '../../../language-server/publish/page/script/script.ts';
import { SEARCH_SCRIPT } from '../../../language-server/publish/site/search-script.ts';

/** A name that nobody declares, with and without one that was meant. */
const NO_SUCH_NAME: ReadonlySet<number> = new Set([2304, 2552, 2568, 2570]);

/** Faults of a JavaScript text, with the names of the browser known. Types of elements are not asked for. */
function faultsIn(text: string): string[] {
  const options: ts.CompilerOptions = {
    allowJs: true,
    checkJs: true,
    noEmit: true,
    target: ts.ScriptTarget.ES2022,
    lib: ['lib.es2022.d.ts', 'lib.dom.d.ts', 'lib.dom.iterable.d.ts'],
    types: [],
  };
  const host = ts.createCompilerHost(options);
  const { getSourceFile } = host;
  host.getSourceFile = (name, version) =>
    name === 'page.js'
      ? ts.createSourceFile(name, text, version, true)
      : getSourceFile.call(host, name, version);
  const program = ts.createProgram(['page.js'], options, host);
  const source = program.getSourceFile('page.js')!;
  const all = [...program.getSyntacticDiagnostics(source), ...program.getSemanticDiagnostics(source)];
  // Below 2000: what cannot be parsed.
  return all
    .filter(({ code }) => code < 2000 || NO_SUCH_NAME.has(code))
    .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' '));
}

test.each([
  ['work', WORK_SCRIPT],
  ['search', SEARCH_SCRIPT],
])('the script of %s is right', (_, text) => expect(faultsIn(text)).toEqual([]));

test('a slip is found', () => {
  expect(faultsIn('documnet.querySelector(1);')).toHaveLength(1);
  expect(faultsIn('const a = ;')).not.toEqual([]);
});

test('scripts make no markup, run no text and ask no network', () => {
  for (const text of [WORK_SCRIPT, SEARCH_SCRIPT])
    expect(text).not.toMatch(
      /innerHTML|outerHTML|insertAdjacent|document\.write|eval|Function\(|fetch|XMLHttp|WebSocket|import\(/,
    );
});
