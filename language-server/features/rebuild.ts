/**
 * Writes the strip-down and rebuild of a part from the machine: every step that the machine asks for in an
 * order that it allows, the notices before them, and the tools. What comes out is checked and mended until the
 * checker finds nothing; where that cannot be had, there is a reason instead.
 */
import { formatText } from '../../grammar/format/format.ts';
import type { Machine } from '../../grammar/syntax/tree.ts';
import type { Model } from '../model/model.ts';
import type { LoadedFile } from '../model/names.ts';
import type { Finding } from '../report/finding.ts';
import { mendsFor } from './mend.ts';
import { quickFixes } from './quick-fixes.ts';
import { planFor } from './rebuild-plan.ts';
import { Trial } from './trial.ts';
import { relative, type View } from './view.ts';
import { spliced } from './write-out-edits.ts';

export type Rebuild =
  | { ok: true; text: string /** What is left to be seen to: hints and information. */; left: Finding[] }
  | { ok: false; reason: string; left: Finding[] };

/** Changes to the text at the most, so that a part with a hundred steps has an end. */
const MOST_CHANGES = 60;

/** A whole file with the job, named `path`, which uses the file of the machine. */
export function rebuild(
  view: View,
  machineFile: LoadedFile,
  machine: Machine,
  part: string,
  path: string,
): Rebuild {
  const model = view.model(machine, machineFile);
  const thing = model.byName.get(part);
  if (thing?.type !== 'part') return no(`The machine has no part called \`${part}\`.`);
  if (thing.fixed) return no(`The ${thing.title} is fixed: it never comes off.`);
  const head = (steps: string, tools = '') =>
    `use "${relative(path, machineFile.path)}"\n\nprocedure renew-${part} "Take the ${thing.title.replaceAll('"', '')} off and put it back"\n  for ${machine.name?.text ?? ''}\n${tools}{\n${steps}}\n`;
  const planned = planIn(view, head(''), path, part);
  if (!planned || 'stuck' in planned)
    return no(
      `No order was found in which the ${thing.title} comes off and goes back${planned ? ` (${planned.stuck})` : ''}.`,
    );
  const title = thing.title.replaceAll('"', '');
  const text = (tasks: readonly (readonly [string, string, readonly string[]])[]) => {
    const steps = tasks
      .filter(([, , lines]) => lines.length > 0)
      .map(([name, words, lines]) => `task ${name} "${words}" {\n${lines.join('\n')}\n}\n`);
    const tools = toolsIn(
      tasks.flatMap(([, , lines]) => lines),
      model,
    );
    return formatText(head(steps.join('\n'), tools.length > 0 ? `  tools ${tools.join(', ')}\n` : ''));
  };
  const off = ['strip', `Take the ${title} off`] as const;
  const on = ['rebuild', `Put the ${title} back`] as const;
  const safe = planned.strip.filter(makesSafe);
  // A technician makes safe before anything else, and restores the energy when all is closed.
  const usual = refined(
    view,
    path,
    text([
      ['make-safe', 'Make safe', safe],
      [...off, planned.strip.filter((line) => !makesSafe(line))],
      [...on, planned.rebuild.filter((line) => !restores(line))],
      ['restore', 'Restore the energy', planned.rebuild.filter(restores)],
    ]),
  );
  if (usual.ok) return usual;
  return refined(
    view,
    path,
    text([
      [...off, planned.strip],
      [...on, planned.rebuild],
    ]),
  );
}

function makesSafe(line: string): boolean {
  return /^(isolate|lock out|prove|relieve|open|let cool) /.test(line);
}

function restores(line: string): boolean {
  return /^(unlock|restore) /.test(line);
}

/** The tools that steps are done with, each once. */
function toolsIn(lines: readonly string[], model: Model): string[] {
  const named = lines.flatMap((line) => / with (\S+)/.exec(line)?.[1] ?? /^fit (\S+)$/.exec(line)?.[1] ?? []);
  return [...new Set(named)].filter((name) => model.byName.get(name)?.type === 'tool');
}

function no(reason: string): Rebuild {
  return { ok: false, reason, left: [] };
}

function planIn(
  view: View,
  empty: string,
  path: string,
  part: string,
): ReturnType<typeof planFor> | undefined {
  const tried = view.trying(path, empty);
  const file = tried.file(path)!;
  const procedure = file.procedures[0]!;
  const found = tried.machineOf(procedure, file);
  const thing = found?.model.byName.get(part);
  if (!found || !thing) return undefined;
  return tried.at(procedure, file, found.model, procedure.body!.end - 1, (run) => planFor(run, thing, path));
}

/** Notices, tools and what else the checker asks for. */
function refined(view: View, path: string, first: string): Rebuild {
  let text = first;
  const failed = new Set<string>();
  for (let change = 0; change < MOST_CHANGES; change++) {
    const now = view.trying(path, text);
    const trial = new Trial(now.host, path);
    const findings = trial.check(text).findings;
    const serious = findings.filter(({ severity }) => severity === 'error' || severity === 'warning');
    if (serious.length === 0) return { ok: true, text, left: findings };
    const next = serious.find((finding) => !failed.has(keyOf(finding)));
    if (!next) {
      const [left] = serious;
      return { ok: false, reason: left!.message, left: serious };
    }
    const mend = quickFixes(now, path, next, trial)[0] ?? mendsFor(now.host, path, next, trial)[0];
    if (!mend) {
      failed.add(keyOf(next));
      continue;
    }
    text = formatText(spliced(text, { start: 0, end: text.length }, mend.edits));
  }
  return { ok: false, reason: 'So many changes were not enough.', left: [] };
}

function keyOf({ check, message }: Finding): string {
  return `${check} ${message}`;
}
