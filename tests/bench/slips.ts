/**
 * `npx tsx tests/bench/slips.ts`: how many slips of the pen in the demo machines are found, and by which check. Prints a
 * table. What is not found is listed: mostly small changes of a torque, which no thread and no class can tell from a
 * right one.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { checkTexts } from '../../language-server/checks/check-texts.ts';
import { KINDS, type Slip, slipsIn, slipsInSteps } from './slips-of.ts';

const ROOT = resolve(import.meta.dirname, '../..');

interface Tried {
  readonly slip: Slip;
  readonly checks: readonly string[];
}

const tried = demoFolders().flatMap(tryFolder);
process.stdout.write(`${table(tried)}\n\n${missed(tried)}\n`);

function demoFolders(): Record<string, string>[] {
  const folders = readdirSync(join(ROOT, 'procedures'), { withFileTypes: true }).filter((each) =>
    each.isDirectory(),
  );
  return [...folders.map(({ name }) => join(ROOT, 'procedures', name)), join(ROOT, 'tests/everyday')].map(
    (folder) =>
      Object.fromEntries(
        readdirSync(folder)
          .filter((name) => name.endsWith('.dowel'))
          .map((name) => [name, readFileSync(join(folder, name), 'utf8')]),
      ),
  );
}

function tryFolder(files: Record<string, string>): Tried[] {
  return Object.entries(files).flatMap(([path, text]) => {
    const inMachine = slipsIn(text).map((slip) => attempt({ ...files, [path]: slip.text }, path, slip));
    const inSteps = Object.entries(files).flatMap(([other, procedures]) =>
      slipsInSteps(text, procedures).map((slip) => attempt({ ...files, [other]: slip.text }, other, slip)),
    );
    return [...inMachine, ...inSteps];
  });
}

function attempt(files: Record<string, string>, path: string, slip: Slip): Tried {
  const checks = new Set(checkTexts(files, path).findings.map(({ check }) => check));
  return { slip, checks: [...checks].sort() };
}

function table(all: readonly Tried[]): string {
  const rows = KINDS.map((kind) => {
    const of = all.filter(({ slip }) => slip.kind === kind);
    const found = of.filter(({ checks }) => checks.length > 0);
    const by = new Map<string, number>();
    for (const { checks } of found) for (const check of checks) by.set(check, (by.get(check) ?? 0) + 1);
    const list = [...by].sort((a, b) => b[1] - a[1]).map(([check, count]) => `${check} ${count}`);
    return [kind, String(of.length), String(found.length), list.join(', ')];
  });
  const head = ['slip', 'tried', 'found', 'by'];
  const widths = head.map((_, column) => Math.max(...[head, ...rows].map((row) => row[column]!.length)));
  const line = (row: readonly string[]) =>
    `| ${row.map((cell, column) => cell.padEnd(widths[column]!)).join(' | ')} |`;
  return [line(head), `|${widths.map((width) => '-'.repeat(width + 2)).join('|')}|`, ...rows.map(line)].join(
    '\n',
  );
}

function missed(all: readonly Tried[]): string {
  const bands = [
    ['more than 3 times too much', (factor: number) => factor >= 3],
    ['1.5 to 3 times too much', (factor: number) => factor >= 1.5 && factor < 3],
    ['up to 1.5 times too much', (factor: number) => factor > 1 && factor < 1.5],
    ['the same', (factor: number) => factor === 1],
    ['down to a third', (factor: number) => factor < 1 && factor > 1 / 3],
    ['less than a third', (factor: number) => factor <= 1 / 3],
  ] as const;
  const left = all.filter(({ checks }) => checks.length === 0);
  const lines = bands.map(([words, inBand]) => {
    const here = left.filter(({ slip }) => inBand(slip.factor));
    const some = here.slice(0, 4).map(({ slip }) => `${slip.fastener} ${slip.change}`);
    return `  ${words}: ${here.length}${some.length > 0 ? ` (${some.join('; ')}${here.length > 4 ? '; …' : ''})` : ''}`;
  });
  return [`Not found: ${left.length} of ${all.length}, by the torque that results`, ...lines].join('\n');
}
