/** What an edit of a procedure in one piece executes, counted by hand, and names of tasks that change under their uses. */
import { describe, expect, test } from 'vitest';
import { checkProject } from '../../../language-server/checks/check-project.ts';
import { Engine } from '../../../language-server/engine/engine.ts';
import { memoryHost } from '../../../language-server/project/project.ts';

test('a task that is renamed is no longer what other steps use, before and behind it', () => {
  const machine = 'machine m "m" {\n  part bed "bed" fixed\n  part lid "lid" on bed\n}\n';
  const steps = '  clean bed\n'.repeat(10);
  const task = '  task strip "Strip" {\n    remove lid\n  }\n';
  for (const body of [`  do strip\n  refit lid\n${steps}${task}`, `${task}${steps}  reverse strip\n`]) {
    const text = `${machine}procedure p "P" for m ends with lid off {\n${body}}\n`;
    const engine = new Engine(memoryHost({}));
    engine.put('a.dowel', text);
    engine.check('a.dowel');
    const line = text.split('\n').findIndex((one) => one.includes('task strip'));
    for (const letter of ['x', '']) {
      const [at, end] = letter ? [12, 12] : [12, 13];
      engine.edit('a.dowel', { line, column: at }, { line, column: end }, letter);
      const now = engine.text('a.dowel')!;
      const scratch = checkProject(memoryHost({ 'a.dowel': now }), ['a.dowel']).findings;
      expect(engine.plain(engine.check('a.dowel'))).toEqual(scratch);
    }
  }
});

describe('what an edit of a long procedure executes', () => {
  const COVERS = 12;
  const parts = Array.from(
    { length: COVERS },
    (_, index) => `  part cover-${index} "cover ${index}" on bed  held by bolts-${index}
  fastener bolts-${index} "bolts of cover ${index}" x4`,
  ).join('\n');
  // Each cover comes off, is looked at and goes back: 4 steps, all in one procedure.
  const steps = Array.from(
    { length: COVERS },
    (_, index) => `  unbolt cover-${index} "Keep it dry."
  clean bed
  clean cover-${index}
  bolt up cover-${index}`,
  ).join('\n');
  const head = `machine press "press" {\n  part bed "bed" fixed\n${parts}\n}\n`;
  const text = `${head}\nprocedure p "Look at the covers" for press {\n${steps}\n}\n`;
  const first = head.split('\n').length + 1;
  /** The line of a step of the cover in the middle: 0 unbolt, 1 and 2 clean, 3 bolt up. */
  const middle = (step: number) => first + (COVERS / 2) * 4 + step;

  function opened() {
    const engine = new Engine(memoryHost({}));
    engine.put('a.dowel', text);
    expect(engine.check('a.dowel')).toEqual([]);
    expect(engine.work.actions).toBe(4 * COVERS);
    return (from: [number, number], to: [number, number], put: string) => {
      const before = engine.work.actions;
      const at = ([line, column]: [number, number]) => ({ line, column });
      engine.edit('a.dowel', at(from), at(to), put);
      const found = engine.check('a.dowel').map(({ check }) => check);
      return { actions: engine.work.actions - before, found };
    };
  }

  test('a comment: nothing', () => {
    const edit = opened();
    expect(edit([middle(1), 11], [middle(1), 11], ' // all over')).toEqual({ actions: 0, found: [] });
  });

  test('a sentence, which changes no state: its own step', () => {
    const edit = opened();
    const line = text.split('\n')[middle(0)]!;
    const column = line.indexOf('"') + 1;
    expect(edit([middle(0), column], [middle(0), column], 'Now: ')).toEqual({ actions: 1, found: [] });
  });

  test('a step that changes a thing: itself, and the steps that come near the thing', () => {
    const edit = opened();
    expect(edit([middle(2), 0], [middle(2), 0], '  mark cover-6\n')).toEqual({ actions: 3, found: [] });
    expect(edit([middle(2), 0], [middle(3), 0], '')).toEqual({ actions: 2, found: [] });
  });

  test('a step that matters: the steps to where the state is as before', () => {
    const edit = opened();
    // Its cover stays on: cleaning it and bolting it up are all that is left of it.
    expect(edit([middle(0), 0], [middle(1), 0], '')).toEqual({
      actions: 2,
      found: ['refitted-before-removed'],
    });
    expect(edit([middle(0), 0], [middle(0), 0], '  unbolt cover-6 "Keep it dry."\n')).toEqual({
      actions: 3,
      found: [],
    });
    // What is never put back is so to the end, and nobody comes near it any more. A part tells for its bolts.
    expect(edit([middle(3), 0], [middle(4), 0], '')).toEqual({ actions: 0, found: ['left-off'] });
  });
});
