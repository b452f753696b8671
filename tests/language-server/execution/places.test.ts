/** How things stand at a place of the text, and every change of the state with the step that made it. */
import { expect, test } from 'vitest';
import { ASPECT, FITTED, OFF } from '../../../language-server/execution/aspects.ts';
import { NONE } from '../../../language-server/execution/cases.ts';
import { execute, executeTo } from '../../../language-server/execution/execute.ts';
import { SharedWork } from '../../../language-server/execution/shared-work.ts';
import { buildModel } from '../../../language-server/model/build.ts';
import { Loader } from '../../../language-server/model/names.ts';
import { memoryHost } from '../../../language-server/project/project.ts';

const MACHINE = `machine m "M" {
  variant size: small, large
  part bed "bed" fixed
  part lid "lid" on bed
  part cap "cap" on bed  added
  part pad "pad" on bed
}
`;

function made(text: string) {
  const loader = new Loader(memoryHost({ 'a.dowel': MACHINE + text }));
  const file = loader.load('a.dowel')!;
  const { model } = buildModel(file.machines[0]!, file, [file]);
  return { file, model, procedure: file.procedures.at(-1)!, text: MACHINE + text };
}

/** Whether the lid is off at `^`, and in how many of the cases (`size`, and what is seen) one gets there. */
function lidAt(text: string): { off: 'in all' | 'in some' | 'in none'; cases: number } {
  const at = (MACHINE + text).indexOf('^');
  const { file, model, procedure } = made(text.replace('^', ''));
  const run = executeTo(model, procedure, 'a.dowel', [file], at);
  const lid = model.byName.get('lid')!.first;
  const off = run.where('place', lid, 1 << OFF);
  const on = run.where('place', lid, 1 << FITTED);
  return {
    off: on === NONE ? 'in all' : off === NONE ? 'in none' : 'in some',
    cases: run.cases.count(run.within),
  };
}

test.each([
  ['procedure p "P" for m {\n^remove lid\nrefit lid\n}\n', 'in none', 2],
  ['procedure p "P" for m {\nremove lid\n^refit lid\n}\n', 'in all', 2],
  ['procedure p "P" for m {\nremove lid\nrefit lid\n^}\n', 'in none', 2],
  ['procedure p "P" for m {\nremove lid\n^\n\n}\n', 'in all', 2],
  ['procedure p "P" for m {\nwhen size is small {\nremove lid\n^}\nrefit lid\n}\n', 'in all', 1],
  ['procedure p "P" for m {\nwhen size is small {\nremove lid\n}\n^refit lid\n}\n', 'in some', 2],
  [
    'procedure p "P" for m {\nwhen size is small {\nremove lid\n} otherwise {\n^clean bed\n}\n}\n',
    'in none',
    1,
  ],
  ['procedure p "P" for m {\ntask t "T" {\nremove lid\n^clean bed\n}\nrefit lid\n}\n', 'in all', 2],
  ['procedure p "P" for m {\nif "worn" {\nstop "Done."\n}\nremove lid\n^refit lid\n}\n', 'in all', 2],
  ['procedure p "P" for m {\nrepeat until "clean" {\nremove lid\n^clean bed\nrefit lid\n}\n}\n', 'in all', 2],
  ['procedure p "P" for m starts with lid off {\n^clean bed\n}\n', 'in all', 2],
  ['procedure q "Q" for m {\nremove lid\n}\nprocedure p "P" for m {\ndo q\n^clean bed\n}\n', 'in all', 2],
] as const)('%j: the lid is off %s', (text, off, cases) => {
  expect(lidAt(text)).toEqual({ off, cases });
});

test('every change of the state, in order, with its step, thing and value', () => {
  const { file, model, procedure } = made(
    'procedure p "P" for m starts with pad off {\nfit cap\nwhen size is large {\nmark lid\n}\nrefit pad\n}\n',
  );
  const { run } = execute(model, procedure, 'a.dowel', [file], {}, new SharedWork(), true);
  const changes = run.journal!.filter(({ aspect }) => aspect === 'place' || aspect === 'marked');
  expect(
    changes.map(({ step, aspect, item, value, cases }) => [
      step,
      aspect,
      model.thingOf[item]!.name,
      value,
      run.cases.count(cases),
    ]),
  ).toEqual([
    [-1, 'place', 'cap', OFF, 2],
    [-1, 'place', 'pad', OFF, 2],
    [0, 'place', 'cap', FITTED, 2],
    [1, 'marked', 'lid', 1, 1],
    [2, 'place', 'pad', FITTED, 2],
  ]);
  expect(Object.keys(ASPECT).length).toBeGreaterThan(20);
});

test('without the wish for it no change is kept', () => {
  const { file, model, procedure } = made('procedure p "P" for m {\nremove lid\n}\n');
  expect(execute(model, procedure, 'a.dowel', [file]).run.journal).toBeUndefined();
});

test('what came before counts as the start, where a procedure starts where another ends', () => {
  const { file, model, procedure } = made(
    'procedure q "Q" for m {\nremove lid\n}\nprocedure p "P" for m starts where q ends {\nrefit lid\n}\n',
  );
  const { run } = execute(model, procedure, 'a.dowel', [file], {}, new SharedWork(), true);
  const lid = model.byName.get('lid')!.first;
  const places = run.journal!.filter(({ aspect, item }) => aspect === 'place' && item === lid);
  expect(places.map(({ step, value }) => [step, value])).toEqual([
    [-1, OFF],
    [0, FITTED],
  ]);
});
