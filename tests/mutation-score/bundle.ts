/**
 * One program of all tests that are asked, with the sampled mutants inside, each behind a switch that Stryker's
 * instrumenter put there. `vitest` is stood in for by `names.ts`, so that the tests run in this one process.
 */
import { readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { described, instrument, type Mutant, ROOT } from './mutants.ts';

const REMEMBERS = /(^const remembered = )new Map<.*>\(\)/m;

export interface Bundle {
  path: string;
  /** The number by which the program knows a mutant. */
  ids: ReadonlyMap<Mutant, string>;
}

export async function bundle(
  mutants: readonly Mutant[],
  tests: readonly string[],
  path: string,
): Promise<Bundle> {
  const changed = new Map<string, string>();
  const ids = new Map<Mutant, string>();
  const byKey = new Map(mutants.map((mutant) => [mutant.key, mutant]));
  const names = [...new Set(mutants.map(({ file }) => file))];
  const files = names.map((name) => ({
    name,
    // A range brings the mutants inside it too; those are never switched on.
    mutate: mutants.filter(({ file }) => file === name).map(({ location }) => location),
    content: readFileSync(join(ROOT, name), 'utf8'),
  }));
  const made = await instrument(files);
  for (const { name, content } of made.files) changed.set(name, content);
  for (const one of made.mutants) {
    const known = byKey.get(described(one, files.find(({ name }) => name === one.fileName)!.content).key);
    if (known && one.status === undefined) ids.set(known, one.id);
  }
  const lost = mutants.filter((mutant) => !ids.has(mutant));
  if (lost.length > 0) throw new Error(`not instrumented: ${lost.map(({ key }) => key).join(', ')}`);

  await build({
    stdin: {
      contents: [
        ...tests.map((test) => `import './${test}';`),
        `import './tests/mutation-score/run.ts';`,
      ].join('\n'),
      resolveDir: ROOT,
      loader: 'ts',
    },
    bundle: true,
    format: 'esm',
    platform: 'node',
    packages: 'external',
    alias: { vitest: join(ROOT, 'tests/mutation-score/names.ts') },
    outfile: path,
    logLevel: 'error',
    plugins: [
      {
        name: 'mutants',
        setup(on) {
          on.onLoad({ filter: /\.ts$/ }, ({ path: file }) => {
            const name = relative(ROOT, file).replaceAll('\\', '/');
            if (name.startsWith('node_modules')) return undefined;
            const text = (changed.get(name) ?? readFileSync(file, 'utf8'))
              .replaceAll('import.meta.url', JSON.stringify(pathToFileURL(file).href))
              .replaceAll('import.meta.dirname', JSON.stringify(dirname(file)))
              // What is remembered from an earlier test would keep a mutant from showing.
              .replace(
                REMEMBERS,
                '$1new (class extends Map<any, any> { override get() { return undefined; } })()',
              );
            return { contents: name.endsWith('.test.ts') ? asTest(name, text) : text, loader: 'ts' };
          });
        },
      },
    ],
  });
  return { path, ids };
}

/** What a test file does while it is loaded belongs to the tests, not to the loading of the code under test. */
function asTest(name: string, text: string): string {
  const says = JSON.stringify(name);
  return `import { fileBegins, fileEnds } from 'vitest';\nfileBegins(${says});\n${text}\nfileEnds();\n`;
}
