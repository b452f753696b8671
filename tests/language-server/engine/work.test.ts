/** What an edit costs, counted: texts and nodes read, models made, procedures checked, actions executed. */
import { expect, test } from 'vitest';
import { Engine, type EngineWork } from '../../../language-server/engine/engine.ts';
import { memoryHost } from '../../../language-server/project/project.ts';

const PRESS = `machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed  held by cover-screws
  part lid "lid" on bed
  fastener cover-screws "cover screws" x4
}
`;
const JOB = `use "press.dowel"

procedure first "Open the press" for press ends with cover off {
  unbolt cover
}

procedure second "Open the lid" for press {
  remove lid
  clean bed // all over
  // Look inside.
  refit lid
}

procedure third "Both" for press ends with cover off {
  do first
  remove lid
  clean bed
  refit lid
}
`;

function opened() {
  const engine = new Engine(memoryHost({}));
  engine.put('press.dowel', PRESS);
  engine.put('job.dowel', JOB);
  engine.check('press.dowel');
  engine.check('job.dowel');
  const all = () => [...engine.check('press.dowel'), ...engine.check('job.dowel')];
  /** The work of one edit, of what is not 0. */
  const edit = (path: string, line: number, column: number, taken: number, text: string) => {
    const before = engine.work;
    engine.edit(path, { line, column }, { line, column: column + taken }, text);
    all();
    const after = engine.work;
    const keys = Object.keys(after) as (keyof EngineWork)[];
    return Object.fromEntries(keys.map((key) => [key, after[key] - before[key]]).filter(([, more]) => more));
  };
  return { engine, edit, all };
}

test('a check that is asked for again costs nothing', () => {
  const { engine, all } = opened();
  const before = engine.work;
  expect(all()).toEqual([]);
  expect(engine.work).toEqual(before);
});

test('a comment and an empty line cost nothing, wherever they stand', () => {
  const { edit } = opened();
  expect(edit('job.dowel', 9, 17, 0, 's')).toEqual({});
  expect(edit('job.dowel', 3, 14, 0, ' // by hand')).toEqual({});
  expect(edit('job.dowel', 5, 0, 0, '\n')).toEqual({});
  expect(edit('press.dowel', 1, 0, 0, '// The frame.\n')).toEqual({});
});

test('a step costs its procedure and those that use it', () => {
  const { edit } = opened();
  // Read: the step with its neighbours. Executed: what the procedure has, counted by hand.
  //  Checked: the procedure, and the quantities in it.
  expect(edit('job.dowel', 10, 11, 0, ' "Flush."')).toEqual({
    nodes: 2,
    procedures: 1,
    parts: 1,
    actions: 3,
  });
  expect(edit('job.dowel', 3, 14, 0, ' "Slowly."')).toEqual({
    nodes: 1,
    procedures: 2,
    parts: 1,
    actions: 5,
  });
});

test('the machine costs its model and every procedure for it', () => {
  const { edit } = opened();
  const work = edit('press.dowel', 3, 13, 0, 's');
  expect(work).toMatchObject({ models: 1, procedures: 3 });
  expect(work).not.toHaveProperty('texts');
});

test('a brace that is missing has the whole text read, and what was not touched is still not checked again', () => {
  const { edit, engine } = opened();
  const work = edit('job.dowel', 11, 0, 1, '');
  expect(work.texts).toBe(1);
  expect(engine.check('job.dowel').map(({ check }) => check)).toContain('brace-missing');
  expect(edit('job.dowel', 11, 0, 0, '}').texts).toBe(1);
  expect(engine.check('job.dowel')).toEqual([]);
});
