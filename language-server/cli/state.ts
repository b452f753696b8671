/** `dowel state FILE --at LINE`: how the machine stands just before a line of a procedure, and since when. */
import { type StateAt, type StateThing, stateAt } from '../features/state-at.ts';
import { DEFERENCE } from '../report/deference.ts';
import { lineStore } from '../report/frame.ts';
import { linesOf } from '../report/positions.ts';
import { printable } from '../report/width.ts';
import { disk } from './disk.ts';
import { type HouseOptions, housesOf } from './houses.ts';
import { namesIn } from './names.ts';
import { complain, type ExitCode, print } from './output.ts';
import { SIZE_LIMIT } from './read.ts';

export interface StateOptions extends HouseOptions {
  /** The line, counted from 1. */
  at: number;
}

export async function state(path: string, options: StateOptions): Promise<ExitCode> {
  const names = namesIn(process.cwd());
  const file = names.of(path);
  const texts = disk(names);
  const text = texts.read(file);
  if (text === undefined) {
    const { reason, remedy } = texts.refused[0] ?? {
      reason: `it is larger than ${SIZE_LIMIT / 1024 / 1024} MB`,
      remedy: 'Split it into procedures that use one another.',
    };
    complain(`cannot read ${file}: ${reason}. ${remedy}`);
    return 2;
  }
  const houses = await housesOf([file], texts, names, options);
  texts.houseOf = houses.of;
  const lines = linesOf(text);
  if (options.at > lines.count) {
    complain(`${file} has ${lines.count} lines, so no line ${options.at}. Name one of its lines.`);
    return 2;
  }
  const line = options.at - 1;
  const blanks = lines.text(line).search(/\S|$/);
  const found = stateAt(texts, file, lines.span(line).start + blanks);
  if (found === undefined) {
    complain(`no procedure with a known machine stands at ${file}:${options.at}. Name a line of its steps.`);
    return 2;
  }
  const linesOfFile = lineStore((name) => texts.read(name));
  print(`${stateText(found, { file, line: options.at }, (name) => linesOfFile(name))}\n\n${DEFERENCE}`);
  return 0;
}

/** One group a state, one row a thing; `where` is the asked place. */
export function stateText(
  { title, groups }: StateAt,
  where: { file: string; line: number },
  lines: (file: string) => ReturnType<typeof linesOf> | undefined,
): string {
  const head = `Before line ${where.line} of ${printable(where.file)} (${printable(title)}):`;
  if (groups.length === 0) return `${head}\n\nEverything stands as it did at the start.`;
  const since = (thing: StateThing): string => {
    if (thing.since === undefined) return 'from the start';
    const at = lines(thing.since.file)?.at(thing.since.start);
    const line = at === undefined ? '' : `line ${at.line + 1}`;
    return thing.since.file === where.file ? `since ${line}` : `since ${thing.since.file} ${line}`.trimEnd();
  };
  const rows = groups.map(({ state: word, things }) => ({
    word,
    things: things.map((thing) => ({
      what: `${thing.name}${(thing.positions ?? []).map((position) => ` #${position}`).join('')}`,
      since: `${since(thing)}${thing.case === undefined ? '' : `, where ${thing.case}`}`,
    })),
  }));
  const width = Math.max(...rows.flatMap(({ things }) => things.map(({ what }) => what.length)));
  const parts = rows.map(({ word, things }) =>
    [word, ...things.map(({ what, since: when }) => `  ${what.padEnd(width)}  ${when}`)].join('\n'),
  );
  return [head, ...parts].join('\n\n');
}
