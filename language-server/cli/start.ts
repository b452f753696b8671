/**
 * The first thing that runs: loads a bundled part of the program together with the code that V8 compiled
 * for it at build time, so that a start costs little more than Node itself. Where that code does not fit
 * (another Node, a changed part) V8 refuses it and compiles anew; nothing is ever written here.
 *
 * Built into `.build/dowel.cjs` and, for editors, `.build/server.cjs`; the parts stand in the folder beside them (see
 * tests/build/build.mjs).
 */
import { readFileSync } from 'node:fs';
import { Script } from 'node:vm';

export interface Parts {
  /** What a part exports. Loaded once. */
  load(name: string): unknown;
  /** The compiled parts by name: the build asks them for their code after they have run. */
  scripts: ReadonlyMap<string, Script>;
}

export function partsIn(folder: string): Parts {
  const loaded = new Map<string, { exports: unknown }>();
  const scripts = new Map<string, Script>();
  const load = (name: string): unknown => {
    const known = loaded.get(name);
    if (known !== undefined) return known.exports;
    const filename = `${folder}/${name}.cjs`;
    // Parts are plain ASCII: reading them as Latin-1 saves the decoding.
    const source = readFileSync(filename, 'latin1');
    const script = new Script(`(function(exports,require,module,__filename,__dirname){${source}\n})`, {
      // The same on every machine: it stands in stack traces and in the compiled code.
      filename: `dowel/${name}.cjs`,
      cachedData: compiledCode(`${folder}/${name}.code`),
    });
    scripts.set(name, script);
    const module = { exports: {} };
    loaded.set(name, module);
    // Everything else is bundled: what is left are modules of Node.
    const require = (id: string): unknown =>
      id.startsWith('part:') ? load(id.slice(5)) : process.getBuiltinModule(id);
    script.runInThisContext()(module.exports, require, module, filename, folder);
    return module.exports;
  };
  return { load, scripts };
}

export async function run(): Promise<void> {
  const { main } = partsIn(`${import.meta.dirname}/parts`).load('main') as typeof import('./main.ts');
  process.exitCode = await main(process.argv.slice(2));
}

/** The same for the language server. */
export function runServer(): void {
  (partsIn(`${import.meta.dirname}/parts`).load('server-main') as { run(): void }).run();
}

function compiledCode(path: string): Buffer | undefined {
  try {
    return readFileSync(path);
  } catch {
    return undefined;
  }
}
