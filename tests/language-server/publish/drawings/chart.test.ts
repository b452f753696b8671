/**
 * Bars against the independent executor of tests/oracle, which was written from grammar/STATE.md alone and runs one
 * case at a time: at every place in the text the same things must be away. And what a reader needs of the picture.
 */
import { describe, expect, test } from 'vitest';
import { NONE } from '../../../../language-server/execution/cases.ts';
import { type Bar, chartOf, onTheBench, stepsOf } from '../../../../language-server/publish/drawings/bars.ts';
import { chart } from '../../../../language-server/publish/drawings/chart.ts';
import { MOST_ROWS, rowsOf } from '../../../../language-server/publish/drawings/chart-rows.ts';
import { type Case, Execution as Walk } from '../../../oracle/flow.ts';
import { holdsFor, modelOf } from '../../../oracle/model.ts';
import { readAll, wholeMachine } from '../../../oracle/reader.ts';
import type { Trace } from '../../../oracle/trace.ts';
import { elementsOf, proceduresIn, readSvg, TEXTS } from './demos.ts';

const DEMOS = proceduresIn(TEXTS);

/** The walks of the oracle, one for each combination of variants. */
function walksOf(path: string, name: string): Trace[] {
  const reading = readAll(TEXTS, path);
  const procedure = reading.file.procedures.find((one) => one.name === name)!;
  const machine = wholeMachine(reading, procedure.machines[0]!);
  let all: Record<string, string>[] = [{}];
  for (const axis of machine.variants)
    all = all.flatMap((one) => axis.values.map((value) => ({ ...one, [axis.name]: value })));
  return all
    .filter((one) => !machine.nevers.some((never) => holdsFor(never, one)))
    .map((variants) =>
      new Walk(reading, procedure, modelOf(machine, variants), variants, () => {}).recorded(),
    );
}

/** What the oracle has away in one of its cases: `name` or `name#position`. */
function awayIn({ work }: Case): Set<string> {
  const away = new Set<string>();
  for (const item of work.model.items) {
    const state = work.state.items[item.id]!;
    const gone =
      item.kind === 'fastener'
        ? state.fastening === 'out'
        : item.kind === 'connection'
          ? state.joined !== 'connected'
          : ['part', 'seal', 'control', 'isolator'].includes(item.kind) &&
            !['fitted', 'trial'].includes(state.place);
    if (gone) away.add(`${item.name}#${positionOf(item.position, item.name, work.model)}`);
  }
  // What comes with a new one goes with the old one: the oracle lets it ride there.
  for (const item of work.model.items) {
    if (work.state.items[item.id]!.place !== 'discarded') continue;
    for (const { name, position } of item.comesWith)
      away.add(`${name}#${positionOf(position, name, work.model)}`);
  }
  return away;
}

/** One alone has no name of its own. */
function positionOf(position: string, name: string, model: Case['work']['model']): string {
  return model.byName.get(name)!.length === 1 ? '' : position;
}

function awayAfter(bars: readonly Bar[], step: number, positions: (thing: string) => readonly string[]) {
  const away = new Set<string>();
  for (const bar of bars) {
    if (bar.from > step || (bar.to ?? Number.POSITIVE_INFINITY) <= step) continue;
    for (const position of bar.positions ?? positions(bar.thing)) away.add(`${bar.thing}#${position}`);
  }
  return away;
}

describe.each(DEMOS.map((demo) => [demo.path, demo] as const))(
  '%s',
  (path, { name, model, procedure, execution }) => {
    const data = chartOf(model, execution);
    const runs = walksOf(path, procedure.name!.text);

    test('the same things are away as an independent walk finds', () => {
      const ends = [...new Set(runs.flatMap(({ after }) => [...after.keys()]))].sort((a, b) => a - b);
      expect(ends.length).toBeGreaterThan(0);
      let compared = 0;
      for (const end of ends) {
        const step = data.steps.findLast(({ at }) => at.file === path && at.end <= end)?.number;
        // Inside a used procedure the text of this file tells no place.
        if (step === undefined || data.steps[step - 1]!.at.end > end) continue;
        if (data.steps.some(({ at, number }) => at.file !== path && number > step && number < step + 2))
          continue;
        const cases = runs.flatMap(({ after }) => after.get(end) ?? []);
        const expected = new Set(cases.flatMap((one) => [...awayIn(one)]));
        const drawn = awayAfter(data.bars, step, (thing) => model.byName.get(thing)!.positions);
        expect([step, [...drawn].sort()]).toEqual([step, [...expected].sort()]);
        compared++;
      }
      expect(compared).toBeGreaterThan(ends.length / 2);
    });

    test('a bar that is so in every case is away in every case of the walk', () => {
      const always = data.bars.filter((bar) => bar.case === undefined);
      for (const trace of runs) {
        for (const [end, cases] of trace.after) {
          const step = data.steps.findLast(({ at }) => at.file === path && at.end <= end)?.number;
          if (step === undefined || data.steps[step]?.at.file !== path) continue;
          for (const one of cases) {
            const away = awayIn(one);
            for (const bar of always) {
              if (bar.from > step || (bar.to ?? Number.POSITIVE_INFINITY) <= step) continue;
              const thing = model.byName.get(bar.thing)!;
              if (!one.work.model.byName.has(thing.name)) continue;
              for (const position of bar.positions ?? thing.positions)
                expect(away).toContain(`${bar.thing}#${position}`);
            }
          }
        }
      }
    });

    test('depth counts the bars around', () => {
      data.bars.forEach((bar, index) => {
        const end = (one: Bar) => one.to ?? Number.POSITIVE_INFINITY;
        const around = data.bars.filter(
          (one, other) =>
            other < index && one.from <= bar.from && end(one) >= end(bar) && end(one) > bar.from,
        );
        expect(bar.depth).toBe(around.length);
      });
    });

    test.each([360, 680])('the drawing %i px wide is whole', async (width) => {
      const drawing = chart(data, { prefix: 'c', name, width, idOf: (step) => `s${step}` });
      expect(drawing.width).toBe(width);
      const elements = elementsOf(await readSvg(drawing.svg));
      const rows = elements.filter((one) => one.$?.['data-thing'] !== undefined);
      const drawn = new Set(rows.flatMap((one) => one.$!['data-thing']!.split(' ')));
      expect(drawn).toEqual(new Set(data.bars.map(({ thing }) => thing)));
      expect(rows.length).toBeLessThanOrEqual(MOST_ROWS);
      for (const row of rows) expect(row.$!['data-step']).toBe(`s${row.$!['data-from']}`);
      const ids = elements.flatMap((one) => one.$?.id ?? []);
      expect(new Set(ids).size).toBe(ids.length);
      expect(ids.every((id) => id.startsWith('c-'))).toBe(true);
      if (drawing.alternative.kind === 'table')
        expect(drawing.alternative.rows).toHaveLength(data.bars.length);
    });
  },
);

const MACHINE = `machine m "M" {
  variant drive: belt, chain
  part frame fixed
  part guard "guard <1>" on frame held by screws
  part cover on frame under guard held by bolts sealed by gasket
  part belt on frame only drive is belt
  seal gasket on frame single-use
  fastener screws x2
  fastener bolts x4
  connection lead joins cover to frame
  part strap on frame
}
`;

function barsOf(steps: string, headers = '') {
  const [demo] = proceduresIn({ 'j.dowel': `${MACHINE}procedure job for m ${headers} {\n${steps}\n}\n` });
  return { ...demo!, ...chartOf(demo!.model, demo!.execution) };
}

const brief = ({ thing, positions, from, to, end, thrownAway, case: when, state }: Bar) =>
  [
    thing + (positions ? `#${positions}` : ''),
    state,
    `${from}-${to ?? ''}`,
    end,
    thrownAway && `x${thrownAway}`,
    when,
  ]
    .filter(Boolean)
    .join(' ');

describe('bars', () => {
  test.each([
    ['unbolt guard\nbolt up guard', ['guard off 1-2 back', 'screws out 1-2 back']],
    ['unbolt guard and discard\nfit new guard\nfit screws', ['screws out 1-3 back', 'guard off 1-2 new x1']],
    ['remove strap\ndiscard strap\nfit new strap', ['strap off 1-3 new x2']],
    ['remove strap', ['strap off 1- never']],
    ['remove strap and discard', ['strap off 1- never x1']],
    [
      'remove screws #1\nremove screws #2\nremove guard\nrefit guard\nfit screws',
      ['screws#1 out 1-5 back', 'screws#2 out 2-5 back', 'guard off 3-4 back'],
    ],
    ['when drive is belt { remove belt\nrefit belt }', ['belt off 1-2 back']],
    ['if "worn" { remove strap\nrefit strap }', ['strap off 1-2 back “worn”']],
    [
      'remove strap\nif "worn" { discard strap\nfit new strap } otherwise { refit strap }',
      ['strap off 1-4 back not “worn”', 'strap off 1-3 new x2 “worn”'],
    ],
    ['move aside strap\nmove back strap', ['strap aside 1-2 back']],
    ['move aside strap\nremove strap\nrefit strap', ['strap aside 1-2 further', 'strap off 2-3 back']],
    ['disconnect lead\ncap lead\nconnect lead', ['lead apart 1-3 back']],
    [
      'remove strap\ntrial fit strap\nremove strap\nrefit strap',
      ['strap off 1-2 trial', 'strap off 3-4 back'],
    ],
    ['repeat until "free" at most 3 times { remove strap\nrefit strap }', ['strap off 1-2 back']],
    ['task t { remove strap }\nreverse t', ['strap off 1-2 back']],
    ['remove strap\nif "cracked" { stop "Order one." }\nrefit strap', ['strap off 1-2 back']],
    ['clean frame', []],
  ])('%s', (steps, expected) => {
    expect(barsOf(steps).bars.map(brief)).toEqual(expected);
  });

  test('what was away at the start begins at 0', () => {
    expect(barsOf('refit strap', 'starts with strap off').bars.map(brief)).toEqual(['strap off 0-1 back']);
  });

  test('what is on the bench is off and not thrown away', () => {
    const { bars } = barsOf(
      'disconnect lead\nunbolt guard and discard\nfit new guard\nfit screws\nconnect lead',
    );
    const names = (step: number) => onTheBench(bars, step).map(({ thing }) => thing);
    expect([1, 2, 3, 4].map(names)).toEqual([[], ['screws'], ['screws'], []]);
  });

  test('without a journal there is nothing to draw', () => {
    const { model, execution } = barsOf('remove strap\nrefit strap');
    execution.run.journal = undefined;
    expect(chartOf(model, execution).bars).toEqual([]);
  });

  test('every step has one number, rounds of repeats none of their own', () => {
    const { execution } = barsOf(
      'repeat until "free" at most 3 times { remove strap\nrefit strap }\nclean frame',
    );
    expect(stepsOf(execution.run).map(({ number }) => number)).toEqual([1, 2, 3]);
    expect(execution.run.steps.last).toBeGreaterThan(2);
    expect(execution.run.within).not.toBe(NONE);
  });
});

test('titles are text, whatever stands in them', async () => {
  const { bars, steps, undecided } = barsOf('unbolt guard\nbolt up guard');
  const nasty = '</svg><script>alert(1)</script> & "\u0001\ud800';
  const { svg } = chart({ bars, steps, undecided }, { prefix: 'x', name: nasty });
  expect(svg).not.toContain('<script');
  const title = elementsOf(await readSvg(svg)).find((one) => one['#name'] === 'title');
  expect(title?._).toBe('What comes off and goes back: </svg><script>alert(1)</script> & "');
});

test('a long job is gathered by its tasks', () => {
  const demo = DEMOS.find(({ path }) => path.endsWith('overhaul.dowel'))!;
  const data = chartOf(demo.model, demo.execution);
  const half = Math.floor(data.steps.length / 2);
  const tasks = [
    { number: '1', title: 'Strip', from: 1, to: half },
    { number: '2', title: 'Rebuild', from: half + 1, to: data.steps.length },
  ];
  const rows = rowsOf(data, tasks);
  expect(data.bars.length).toBeGreaterThan(MOST_ROWS);
  expect(rows.length).toBeLessThanOrEqual(MOST_ROWS);
  expect(rows.flatMap(({ bars }) => bars)).toHaveLength(data.bars.length);
  for (const { bars } of rows) {
    const taskOf = (step: number | undefined) => (step === undefined ? 0 : step <= half ? 1 : 2);
    expect(new Set(bars.map(({ from, to }) => `${taskOf(from)} ${taskOf(to)}`)).size).toBe(1);
  }
});
