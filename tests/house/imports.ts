/**
 * Reads which files import which, over the TypeScript compiler's own scanner, and says which rooms they
 * stand in. Knows nothing of what is allowed (see import-graph.test.ts).
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import ts from 'typescript';

export interface Import {
  /** The importing file, with `/`, from the top of the project. */
  file: string;
  /** As written. */
  target: string;
}

/** Every import, export-from, `import()` and `import type` of a text; calls of `require` are not looked at. */
export function importsIn(file: string, text: string): Import[] {
  const { importedFiles } = ts.preProcessFile(text, true, false);
  return importedFiles.map(({ fileName }) => ({ file, target: fileName }));
}

/**
 * Names of the running system that a text uses without importing them: `process`, `console`, a clock, a
 * timer, chance, the network. Property names and own declarations of the same name are not meant.
 */
export function systemNamesIn(file: string, text: string): string[] {
  const found = new Set<string>();
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node) && SYSTEM.has(node.text) && isUse(node)) found.add(node.text);
    if (ts.isPropertyAccessExpression(node) && node.getText() === 'Math.random') found.add('Math.random');
    node.forEachChild(visit);
  };
  visit(ts.createSourceFile(file, text, ts.ScriptTarget.ES2023, true));
  return [...found].sort();
}

const SYSTEM = new Set([
  'process',
  'console',
  'Date',
  'performance',
  'fetch',
  'setTimeout',
  'setInterval',
  'setImmediate',
  'Buffer',
  'globalThis',
]);

function isUse(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  if (ts.isPropertyAssignment(parent) || ts.isPropertySignature(parent)) return parent.name !== node;
  if (ts.isTypeReferenceNode(parent) || ts.isQualifiedName(parent)) return false;
  return true;
}

/** The room of a file: `grammar/parser`, `language-server/checks`, `extension`, `tests`. */
export function roomOf(file: string): string {
  const [top, inner, below] = file.split('/');
  if ((top === 'grammar' || top === 'language-server') && below !== undefined) return `${top}/${inner}`;
  return top!;
}

/** The room or the package that an import leads to: `grammar/parser`, `node:fs`, `chevrotain`. */
export function destinationOf({ file, target }: Import): string {
  if (target.startsWith('.')) return roomOf(posix.join(posix.dirname(file), target));
  if (target.startsWith('node:')) return target;
  const pieces = target.split('/');
  return target.startsWith('@') ? pieces.slice(0, 2).join('/') : pieces[0]!;
}

/** TypeScript files below the given folders, sorted, with `/`, from the top of the project. */
export function sourceFiles(root: string, folders: readonly string[]): string[] {
  return folders
    .flatMap((folder) =>
      readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
        .map((name) => `${folder}/${name.split('\\').join('/')}`)
        .filter(
          (name) => name.endsWith('.ts') && !name.includes('/node_modules/') && !name.endsWith('.d.ts'),
        ),
    )
    .sort();
}

export function readSource(root: string, file: string): string {
  return readFileSync(join(root, file), 'utf8');
}
