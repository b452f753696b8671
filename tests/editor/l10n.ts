/** The sentences of the editor client that are ready for translation: every first argument of `l10n.t`. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';

export function sentencesOf(folder: string): string[] {
  const found = new Set<string>();
  for (const name of readdirSync(folder).filter((one) => one.endsWith('.ts'))) {
    const source = ts.createSourceFile(
      name,
      readFileSync(join(folder, name), 'utf8'),
      ts.ScriptTarget.ES2022,
      true,
    );
    const visit = (node: ts.Node): void => {
      if (ts.isCallExpression(node) && node.expression.getText() === 'l10n.t') {
        const [first] = node.arguments;
        if (!first || !ts.isStringLiteralLike(first))
          throw new Error(`${name}: l10n.t is given something that is no plain text: ${node.getText()}`);
        found.add(first.text);
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return [...found].sort();
}
