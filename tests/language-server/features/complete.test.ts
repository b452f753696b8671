/** What is proposed where: fixtures with a cursor. */
import { describe, expect, test } from 'vitest';
import { VERBS } from '../../../grammar/tokens/verbs.ts';
import { completeAt } from '../../../language-server/features/complete.ts';
import { job, PRESS, placed } from './cursor.ts';

function proposed(files: Record<string, string>) {
  const { view, path, offset } = placed(files);
  return completeAt(view, path, offset);
}

/** Labels, those with something in the way left out. */
function labels(files: Record<string, string>): string[] {
  return proposed(files)
    .proposals.filter(({ blocked }) => !blocked)
    .map(({ label }) => label);
}

const things = (files: Record<string, string>) =>
  proposed(files)
    .proposals.filter(({ kind, blocked }) => kind === 'thing' && !blocked)
    .map(({ label }) => label);

describe('things that a verb can act on', () => {
  test('what is off is not offered for removal', () => {
    const before = things(job('  remove ▮'));
    expect(before).toContain('cover-screws');
    const after = things(job('  remove cover-screws\n  remove ▮'));
    expect(after).not.toContain('cover-screws');
    expect(after).toContain('lever');
    expect(after).not.toContain('bed');
  });

  test('what something must be done to first comes last, and says what', () => {
    const { proposals } = proposed(job('  remove ▮'));
    const cover = proposals.find(({ label }) => label === 'cover')!;
    expect(cover.blocked).toContain('still-held');
    expect(cover.detail).toContain('first: ');
    expect(cover.detail).toContain('cover screws');
    const lever = proposals.find(({ label }) => label === 'lever')!;
    expect(lever.blocked).toBeUndefined();
    expect(lever.rank).toBeLessThan(cover.rank);
  });

  test('what was named before in the same line counts', () => {
    expect(things(job('  remove lever, ▮'))).not.toContain('lever');
    expect(things(job('  remove cover-screws, ▮'))).not.toContain('cover-screws');
  });

  test('only what is off is put back', () => {
    expect(things(job('  refit ▮'))).toEqual([]);
    expect(things(job('  remove lever\n  refit ▮'))).toEqual(['lever']);
    expect(things(job('  remove lever\n  refit lev▮'))).toEqual(['lever']);
  });

  test('a group that is out in part is offered with what is left', () => {
    expect(things(job('  remove cover-screws #1, #2\n  remove ▮'))).toContain('cover-screws #3, #4');
  });

  test('systems by what they have', () => {
    expect(things(job('  isolate ▮'))).toEqual(['mains']);
    expect(things(job('  isolate mains\n  isolate ▮'))).toEqual([]);
    expect(things(job('  drain ▮'))).toEqual(['oil']);
    expect(things(job('  unlock ▮'))).toEqual([]);
  });

  test('a variant in which a thing is not there', () => {
    expect(things(job('  when drive is hand { isolate ▮ }'))).toEqual([]);
    expect(things(job('  when drive is motor { isolate ▮ }'))).toEqual(['mains']);
  });

  test('in text that is cut off', () => {
    const text = 'use "press.dowel"\nprocedure job "A job" for press {\n  remove lever\n  refit ▮';
    expect(things({ 'press.dowel': PRESS, 'job.dowel': text })).toEqual(['lever']);
  });

  test('in text with a fault before', () => {
    expect(things(job('  remove lever\n  removee cover\n  refit ▮'))).toEqual(['lever']);
  });
});

describe('words', () => {
  test('a step begins with a verb or a statement', () => {
    const all = labels(job('  ▮'));
    expect(all).toEqual(
      expect.arrayContaining(['remove', 'fit new', 'prove', 'task', 'warning', 'when', 'allow']),
    );
    expect(all).not.toContain('part');
    // No kit is declared, and nothing in a list of kinds that the machine lacks.
    expect(all).not.toContain('fit kit');
  });

  test('every verb says what it does', () => {
    const all = proposed(job('  ▮')).proposals;
    for (const { verb, on } of VERBS) {
      const one = all.find(({ label }) => label === verb);
      if (!one)
        expect(on.every((kind) => kind === 'face' || kind === 'control' || kind === 'kit')).toBe(true);
      else expect(one.documentation, verb).toMatch(/It does: |Acts on: /);
    }
  });

  test('tails of the verb first', () => {
    const { proposals } = proposed(job('  tighten cover-screws ▮'));
    const first = proposals.filter(({ rank }) => rank <= 1).map(({ label }) => label);
    expect(first).toEqual(expect.arrayContaining(['in order', 'stage', 'to', 'with']));
    expect(labels(job('  remove lever with wrench ▮'))).toContain('and discard');
  });

  test('the word that closes a verb', () => {
    expect(labels(job('  prove mains ▮'))).toEqual(['safe']);
  });

  test('otherwise only behind a branch', () => {
    expect(labels(job('  if "it leaks" { }\n  ▮'))).toContain('otherwise');
    expect(labels(job('  remove lever\n  ▮'))).not.toContain('otherwise');
  });

  test('declarations and the clauses of their kind', () => {
    const machine = (item: string) => ({ 'm.dowel': `machine m "m" {\n  part a "a" fixed\n  ${item}\n}\n` });
    expect(labels(machine('▮'))).toEqual(expect.arrayContaining(['part', 'fastener', 'held by']));
    const part = labels(machine('part b "b" on a ▮'));
    expect(part).toEqual(expect.arrayContaining(['held by', 'under', 'mass']));
    expect(part).not.toContain('on');
    expect(part).not.toContain('torque');
    expect(labels(machine('fluid oil "oil" ▮'))).not.toContain('held by');
  });

  test('headers that are not there yet', () => {
    const head = labels({
      'press.dowel': PRESS,
      'j.dowel': 'use "press.dowel"\nprocedure j "J" for press ▮',
    });
    expect(head).toEqual(expect.arrayContaining(['people', 'time', 'tools', 'wear', 'starts with']));
    expect(head).not.toContain('for');
  });

  test('the top of a file', () => {
    expect(labels({ 'a.dowel': '▮' })).toEqual(
      expect.arrayContaining(['use', 'machine', 'procedure', 'tool']),
    );
  });
});

describe('names', () => {
  test.each([
    [
      'machines',
      { 'press.dowel': PRESS, 'j.dowel': 'use "press.dowel"\nprocedure j "J" for ▮ { }' },
      ['press'],
    ],
    ['tools', job('', '  tools ▮\n'), ['wrench', 'tester']],
    ['states of the kind', job('', '  ends with cover ▮\n'), ['fitted', 'off', 'aside']],
    ['variants', job('  when ▮'), ['drive']],
    ['values of the variant', job('  when drive is ▮ { }'), ['hand', 'motor']],
    ['hazards', job('  warning ▮'), ['pressure', 'hot', 'live']],
    ['checks', job('  allow ▮'), ['still-held', 'left-off']],
    ['tasks', job('  task strip "S" { remove lever }\n  reverse ▮'), ['strip']],
    ['positions by name', job('  inspect guides #▮'), ['left', 'right']],
    ['positions by number', job('  loosen cover-screws #1, #▮'), ['1', '2', '3', '4']],
    ['values in a sentence', job('  note "At most {▮} of play."'), ['play']],
    ['tools behind with', job('  tighten cover-screws with ▮'), ['wrench', 'padlock']],
    ['orders', job('  tighten cover-screws in order ▮'), ['from the middle', 'across']],
    ['files', { 'press.dowel': PRESS, 'jobs/j.dowel': 'use "▮"' }, ['../press.dowel']],
    ['seats', { 'm.dowel': 'machine m "m" {\n  part a "a" fixed\n  part b "b" on ▮\n}' }, ['a']],
    ['fasteners', { 'm.dowel': 'machine m "m" {\n  fastener f "f"\n  part b "b" held by ▮\n}' }, ['f']],
  ])('%s', (_, files, wanted) => {
    expect(labels(files as Record<string, string>)).toEqual(expect.arrayContaining(wanted));
  });

  test('nothing in comments, sentences and names of one’s own', () => {
    expect(labels(job('  // remove ▮'))).toEqual([]);
    expect(labels(job('  note "remove ▮"'))).toEqual([]);
    expect(labels(job('  task ▮'))).toEqual([]);
  });

  test('fasteners only behind held by', () => {
    const found = things({
      'm.dowel': 'machine m "m" {\n  fastener f "f"\n  part a "a" fixed\n  part b "b" held by ▮\n}',
    });
    expect(found).toEqual(['f']);
  });
});

describe('units', () => {
  test.each([
    ['mass', 'part b "b" mass 5 ▮', ['kg', 'lb'], ['N·m', 'bar']],
    ['torque', 'fastener b "b" torque 5 ▮', ['N·m', 'lbf·ft'], ['kg']],
    ['plan', 'fastener b "b" plan { 5 ▮ }', ['N·m', '°', '%'], ['kg', 'V']],
    ['volume', 'system b "b" holds 5 ▮', ['L', 'kg'], ['N·m']],
  ])('of a clause: %s', (_, item, wanted, not) => {
    const found = labels({ 'm.dowel': `machine m "m" {\n  ${item}\n}\n` });
    expect(found).toEqual(expect.arrayContaining(wanted));
    for (const unit of not) expect(found).not.toContain(unit);
  });

  test.each([
    ['wait 5 ▮', ['min', 'h'], 'kg'],
    ['tighten cover-screws to 5 ▮', ['N·m'], 'kg'],
    ['tighten cover-screws to 5▮', ['N·m'], 'kg'],
    ['fill oil with 2 ▮', ['L'], 'N·m'],
  ])('of a step: %s', (step, wanted, not) => {
    const found = labels(job(`  ${step}`));
    expect(found).toEqual(expect.arrayContaining(wanted));
    expect(found).not.toContain(not);
  });
});

test('what is replaced is the word around the cursor', () => {
  const { start, end } = proposed(job('  remove le▮ver'));
  const { text } = placed(job('  remove le▮ver'));
  expect(text.slice(start, end)).toBe('lever');
});
