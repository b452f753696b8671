/** Renaming: everywhere that a name means the same, nowhere else, and not into a name that is taken. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checkProject } from '../../../language-server/checks/check-project.ts';
import { meaningAt, occurrencesOf } from '../../../language-server/features/meaning.ts';
import { rename, renameableAt } from '../../../language-server/features/rename.ts';
import { View } from '../../../language-server/features/view.ts';
import { spliced } from '../../../language-server/features/write-out-edits.ts';
import { memoryHost } from '../../../language-server/project/project.ts';
import { job, PRESS, placed } from './cursor.ts';

/** The texts after a rename, or why it was refused. */
function renamed(files: Record<string, string>, to: string): Record<string, string> | string {
  const { view, path, offset, host } = placed(files);
  const result = rename(view, path, offset, to, host.list!());
  if (!result.ok) return result.reason;
  return applied(Object.fromEntries(host.list!().map((name) => [name, host.read(name)!])), result.edits);
}

function applied(
  texts: Record<string, string>,
  edits: readonly { file: string; start: number; end: number; text: string }[],
): Record<string, string> {
  return Object.fromEntries(
    Object.entries(texts).map(([name, text]) => {
      const own = edits.filter(({ file }) => file === name);
      return [name, spliced(text, { start: 0, end: text.length }, own)];
    }),
  );
}

describe('what is renamed', () => {
  test('a thing, in the machine and in every job, sentences included', () => {
    const files = {
      'm.dowel':
        'machine m "m" {\n  part bed "bed" fixed\n  part lid "lid" on bed\n  seal ring "ring" on lid\n}\n',
      'a.dowel':
        'use "m.dowel"\nprocedure a "A" for m ends with lid off { remove li▮d "Put the {lid} down." }\n',
      'b.dowel': 'use "m.dowel"\nprocedure b "B" for m { clean lid }\n',
      'other.dowel': 'machine n "n" {\n  part lid "lid" fixed\n}\n',
    };
    expect(renamed(files, 'hood')).toEqual({
      'm.dowel':
        'machine m "m" {\n  part bed "bed" fixed\n  part hood "lid" on bed\n  seal ring "ring" on hood\n}\n',
      'a.dowel':
        'use "m.dowel"\nprocedure a "A" for m ends with hood off { remove hood "Put the {hood} down." }\n',
      'b.dowel': 'use "m.dowel"\nprocedure b "B" for m { clean hood }\n',
      'other.dowel': files['other.dowel'],
    });
  });

  test('a thing that a machine replaces is renamed with it', () => {
    const files = {
      'm.dowel':
        'machine s "s" {\n  part bed "bed" fixed\n  part lid "lid" on bed\n}\nmachine l "l" extends s {\n  part li▮d "large lid" on bed\n}\n',
    };
    expect(renamed(files, 'hood')).toEqual({
      'm.dowel':
        'machine s "s" {\n  part bed "bed" fixed\n  part hood "lid" on bed\n}\nmachine l "l" extends s {\n  part hood "large lid" on bed\n}\n',
    });
  });

  test.each([
    ['a value', '  note "At most {pl▮ay}."', 'note "At most {slack-of-nut}."'],
    ['a variant', '  when dri▮ve is hand { clean lever }', 'when slack-of-nut is hand'],
    ['a value of a variant', '  when drive is ha▮nd { clean lever }', 'when drive is slack-of-nut'],
    ['a position', '  inspect guides #le▮ft', 'inspect guides #slack-of-nut'],
    ['a task', '  task st▮rip "S" { remove lever }\n  reverse strip', 'reverse slack-of-nut'],
    [
      'a choice',
      '  choice wh▮ere: bench, here\n  when where is bench { clean lever }',
      'when slack-of-nut is bench',
    ],
    [
      'a choice value',
      '  choice where: be▮nch, here\n  when where is bench { clean lever }',
      'when where is slack-of-nut',
    ],
    [
      'a measured value',
      '  measure gap of lever as g▮ap\n  note "{gap}"',
      'as slack-of-nut\n  note "{slack-of-nut}"',
    ],
    [
      'a loop variable',
      '  for each #n of cover-screws { loosen cover-screws #▮n }',
      'for each #slack-of-nut of cover-screws { loosen cover-screws #slack-of-nut }',
    ],
    ['a procedure', '  do jo▮b', 'procedure slack-of-nut "A job"'],
  ])('%s', (_, steps, wanted) => {
    const result = renamed(job(steps), 'slack-of-nut');
    expect(typeof result === 'string' ? result : result['job.dowel']).toContain(wanted);
  });

  test('only the loop around', () => {
    const steps =
      '  for each #n of cover-screws { loosen cover-screws #▮n }\n  for each #n of cover-screws { tighten cover-screws #n }';
    const result = renamed(job(steps), 'screw') as Record<string, string>;
    expect(result['job.dowel']).toContain('for each #screw of cover-screws { loosen cover-screws #screw }');
    expect(result['job.dowel']).toContain('for each #n of cover-screws { tighten cover-screws #n }');
  });

  test('a machine in the jobs that are for it', () => {
    const result = renamed(
      { ...job(''), 'press.dowel': PRESS.replace('machine press', 'machine pr▮ess') },
      'arbor',
    ) as Record<string, string>;
    expect(result['press.dowel']).toContain('machine arbor "bench press"');
    expect(result['job.dowel']).toContain('for arbor');
  });
});

describe('what is refused', () => {
  test.each([
    ['a name that is taken', '  remove le▮ver', 'cover', 'the name of another thing already'],
    ['a name with a blank', '  remove le▮ver', 'hand lever', 'joined by hyphens: “hand-lever”'],
    ['an underscore', '  remove le▮ver', 'hand_lever', 'underscore'],
    ['a digit first', '  remove le▮ver', '2-lever', 'begins with a digit'],
    ['nothing', '  remove le▮ver', '', 'is not a name'],
    ['a task that is taken', '  task on▮e "1" { }\n  task two "2" { }', 'two', 'already'],
    [
      'a value of a choice that is taken',
      '  choice where: be▮nch, here\n  when where is bench { }',
      'here',
      'already',
    ],
    [
      'a local name in the way',
      '  measure gap of lever as g▮ap\n  note "{gap}"',
      'play',
      'a value of the machine already',
    ],
    ['a word of the language', '  rem▮ove lever', 'x', 'Only names'],
    ['a state', '  if cover o▮ff { }', 'x', 'Nothing declares “off”'],
    ['a name of nothing', '  remove lev▮el', 'x', 'Nothing declares “level”'],
  ])('%s', (_, steps, to, reason) => {
    expect(renamed(job(steps), to)).toContain(reason);
  });

  test('before anything is typed, the place is asked', () => {
    const { view, path, offset, text } = placed(job('  remove le▮ver'));
    const found = renameableAt(view, path, offset);
    expect(found.ok && text.slice(found.at.start, found.at.end)).toBe('lever');
  });
});

const ROOT = resolve(import.meta.dirname, '../../../procedures');
const DEMOS: Readonly<Record<string, string>> = Object.fromEntries(
  readdirSync(ROOT, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.dowel'))
    .sort()
    .map((name) => [relative(ROOT, join(ROOT, name)), readFileSync(join(ROOT, name), 'utf8')]),
);

describe('every name of the demo files', () => {
  const paths = Object.keys(DEMOS);
  const view = new View(memoryHost(DEMOS));
  const names = paths.flatMap((path) =>
    occurrencesOf(view.file(path)!)
      .filter(({ declares }) => declares)
      .map((occurrence) => ({ path, occurrence })),
  );
  const chosen = process.env.DOWEL_LONG === '1' ? names : names.filter((_, index) => index % 61 === 5);

  test(`${chosen.length} of ${names.length}: there and back is the same, and nothing new is wrong`, {
    timeout: 3_600_000,
  }, () => {
    const count = (texts: Record<string, string>) =>
      checkProject(memoryHost(texts), paths).findings.map(
        ({ file, check, severity }) => `${file} ${check} ${severity}`,
      );
    const before = count(DEMOS);
    for (const { path, occurrence } of chosen) {
      const to = `zz-${occurrence.text}`;
      const there = rename(view, path, occurrence.start, to, paths);
      if (!there.ok) throw new Error(`${path} ${occurrence.text}: ${there.reason}`);
      const texts = applied(DEMOS, there.edits);
      expect(count(texts).sort(), `${path} ${occurrence.text}`).toEqual([...before].sort());
      const back = new View(memoryHost(texts));
      const first = there.edits.filter(({ file, start }) => file === path && start < occurrence.start).length;
      const at = occurrence.start + 3 * first;
      expect(meaningAt(back, path, at)?.meaning.name).toBe(to);
      const again = rename(back, path, at, occurrence.text, paths);
      expect(again.ok && applied(texts, again.edits)).toEqual(DEMOS);
    }
  });
});
