/**
 * The oracle's reader: what it takes from a text, and that it throws on what it does not know. Source: the look of
 * the language and its tables in the language reference.
 */
import { describe, expect, it } from 'vitest';
import { readAll, readFile, wholeMachine } from './reader.ts';
import type { Action } from './shape.ts';

function actions(steps: string): Action[] {
  const { procedures } = readFile(`procedure job for rig {\n${steps}\n}`);
  return procedures[0]!.body!.statements.filter((statement) => statement.kind === 'action');
}

describe('actions', () => {
  it('has verbs of several words, objects, positions and tails', () => {
    const [first, second, third] = actions(
      'lock out breaker with padlock\ntighten caps #1..#3, nuts to stage 2 with torque-wrench "Evenly."\nremove a, b and c and discard',
    );
    expect(first).toMatchObject({
      verb: 'lock out',
      objects: [{ name: 'breaker' }],
      with: [{ name: 'padlock' }],
    });
    expect(second).toMatchObject({
      verb: 'tighten',
      stage: 2,
      objects: [
        { name: 'caps', positions: ['1..3'] },
        { name: 'nuts', positions: [] },
      ],
    });
    expect(third).toMatchObject({ verb: 'remove', together: true, discard: true });
    expect(third!.objects.map(({ name }) => name)).toEqual(['a', 'b', 'c']);
  });

  it('places an action with its continuation lines', () => {
    const text = 'procedure job for rig {\n  clean face\n    with cloth\n    "Well."\n  wait 10 min\n}';
    const [action] = readFile(text).procedures[0]!.body!.statements as Action[];
    expect(text.slice(action!.start, action!.end)).toBe('clean face\n    with cloth\n    "Well."');
    expect(action!.line).toBe(2);
  });

  it('reads outcomes as blocks', () => {
    const [action] = actions(
      'measure warp of face with edge { up to 0.04 mm { } over 0.04 mm { send block } }',
    );
    expect(action!.outcomes.map(({ statements }) => statements.length)).toEqual([0, 1]);
  });

  it.each(['frobnicate pump', 'remove pump sideways', 'remove ,', 'clean § face', 'when supply { }'])(
    'throws on %s',
    (steps) => {
      expect(() => actions(steps)).toThrow();
    },
  );
});

describe('machines', () => {
  it('lays a machine over the one it extends, and a thing over the one it is like', () => {
    const files = {
      'jobs/job.dowel': 'use "../machines/big.dowel"\nprocedure job for big { wait 1 min }',
      'machines/big.dowel':
        'use "small.dowel"\nmachine big extends small {\n  fastener bolts x8\n  fastener nuts like bolts single-use\n}',
      'machines/small.dowel': 'machine small {\n  part frame fixed\n  fastener bolts x4 stay\n}',
    };
    const machine = wholeMachine(readAll(files, 'jobs/job.dowel'), 'big');
    const clauses = (name: string) =>
      machine.declarations
        .find((one) => one.name === name)!
        .clauses.map(({ clause, count }) => [clause, count]);
    expect(machine.declarations.map(({ name }) => name)).toEqual(['frame', 'bolts', 'nuts']);
    expect(clauses('bolts')).toEqual([
      ['stay', undefined],
      ['count', 8],
    ]);
    expect(clauses('nuts').map(([clause]) => clause)).toEqual(['stay', 'count', 'like', 'single-use']);
  });

  it('throws on a clause it does not know', () => {
    expect(() => readFile('machine rig {\n  part frame wobbly\n}')).toThrow();
  });
});
