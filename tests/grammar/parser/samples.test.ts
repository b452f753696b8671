/** The samples of the language's description are read whole, and as the description means them. */
import { describe, expect, it } from 'vitest';
import { parse } from '../../../grammar/parser/parse.ts';
import type { Action, Declaration, Machine, Procedure, Rule, Task } from '../../../grammar/syntax/tree.ts';
import { SAMPLE_MACHINE, SAMPLE_PROCEDURE, SAMPLE_RULES } from '../../support/dowel-samples.ts';

function machine(): Machine {
  return parse(SAMPLE_MACHINE).tree.items[0] as Machine;
}

function declared(name: string): Declaration {
  return machine().items.find(
    (item): item is Declaration => item.kind === 'declaration' && item.name?.text === name,
  )!;
}

function task(name: string): Task {
  const procedure = parse(SAMPLE_PROCEDURE).tree.items[1] as Procedure;
  return procedure.body!.statements.find(
    (statement): statement is Task => statement.kind === 'task' && statement.name?.text === name,
  )!;
}

describe('the sample machine', () => {
  it('has no problem', () => {
    expect(parse(SAMPLE_MACHINE).problems).toEqual([]);
  });

  it('has its declarations in order', () => {
    const names = machine().items.map((item) =>
      item.kind === 'declaration' ? `${item.type} ${item.name!.text}` : item.kind,
    );
    expect(names).toEqual([
      'variant',
      'fluid pump-oil',
      'system air',
      'system mains',
      'system sump',
      'isolator disconnector',
      'part crankcase',
      'part crankshaft',
      'part capacitor-box',
      'part belt-guard',
      'part flywheel',
      'part cylinder-head',
      'part valve-plate',
      'seal head-gasket',
      'seal plate-gasket',
      'face plate-face',
      'fastener head-bolts',
      'fastener flywheel-bolt',
      'connection discharge-pipe',
      'coupled',
      'tool holding-strap',
      'rule',
    ]);
  });

  it('reads the clauses of the cylinder head over several lines', () => {
    expect(declared('cylinder-head').clauses.map((clause) => clause.clause)).toEqual([
      'on',
      'under',
      'joined by',
      'opens',
      'mass',
      'held by',
      'sealed by',
    ]);
  });

  it('reads plans with their stages, and to yield', () => {
    const plan = declared('flywheel-bolt').clauses.find((clause) => clause.clause === 'plan')!;
    expect(plan).toMatchObject({ plan: { toYield: true, stages: [{ kind: 'torque' }, { kind: 'angle' }] } });
    const head = declared('head-bolts').clauses.find((clause) => clause.clause === 'plan')!;
    expect(head).toMatchObject({ plan: { toYield: false, stages: [{}, {}, {}] } });
  });

  it('reads layout, order, thread and class', () => {
    const { clauses } = declared('head-bolts');
    expect(clauses.find((clause) => clause.clause === 'layout')).toMatchObject({
      layout: { kind: 'rows', rows: 2, of: 3 },
    });
    expect(clauses.find((clause) => clause.clause === 'order')).toMatchObject({
      order: { kind: 'named', name: 'from the middle' },
    });
    expect(clauses.find((clause) => clause.clause === 'thread')).toMatchObject({
      designation: { text: 'M8x1.25' },
    });
    expect(clauses.find((clause) => clause.clause === 'class')).toMatchObject({
      designation: { text: '8.8' },
    });
  });
});

describe('the sample procedure', () => {
  it('has no problem', () => {
    expect(parse(SAMPLE_PROCEDURE).problems).toEqual([]);
  });

  it('has its headers and tasks', () => {
    const procedure = parse(SAMPLE_PROCEDURE).tree.items[1] as Procedure;
    expect(procedure.headers.map((header) => header.header)).toEqual([
      'for',
      'document',
      'people',
      'skill',
      'time',
      'wear',
      'tools',
    ]);
    const tasks = procedure.body!.statements.map((statement) => (statement as Task).name?.text);
    expect(tasks).toEqual(['make-safe', 'strip', 'inspect', 'rebuild', 'prove']);
  });

  it('closes the verb “prove” behind its object and keeps the tail and the sentence', () => {
    const prove = task('make-safe').body!.statements[5] as Action;
    expect(prove).toMatchObject({
      verb: 'prove',
      objects: [{ name: { text: 'air' } }],
      tails: [{ tail: 'with', refs: [{ name: { text: 'receiver-gauge' } }] }],
      text: { value: 'The needle stands on zero and stays there.' },
    });
  });

  it('reads outcomes of a measurement', () => {
    const measure = task('inspect').body!.statements[1] as Action;
    expect(measure).toMatchObject({
      topic: { text: 'warp' },
      objects: [{ name: { text: 'cylinder-face' } }],
      outcomes: [
        { intervals: [{ bound: 'up to' }], body: { statements: [] } },
        { intervals: [{ bound: 'over' }], body: { statements: [{ verb: 'send' }] } },
      ],
    });
  });
});

describe('the sample rules', () => {
  it('stand at the top of a file and have no problem', () => {
    const parsed = parse(SAMPLE_RULES);
    expect(parsed.problems).toEqual([]);
    expect(parsed.tree.items.map((item) => (item as Rule).name!.text)).toEqual([
      'strap-first',
      'no-turning-on-the-strap',
      'seat-then-check',
      'pressure-proof',
    ]);
  });

  it('read scope, demand, events and states', () => {
    const bodies = parse(SAMPLE_RULES).tree.items.map((item) => (item as Rule).bodies[0]!);
    expect(
      bodies.map(({ scope, demand, trigger, demanded }) => [scope, trigger!.kind, demand, demanded!.kind]),
    ).toEqual([
      ['before', 'event', 'require', 'state'],
      ['while', 'state', 'never', 'event'],
      ['after', 'event', 'require', 'event'],
      ['before', 'event', 'require', 'state'],
    ]);
    expect(bodies[2]!.demanded).toMatchObject({ times: 2 });
    expect(bodies[3]).toMatchObject({
      trigger: {
        selectors: [
          {
            kind: 'any',
            what: { text: 'connection' },
            of: { what: { text: 'system' }, with: { text: 'pressure' } },
          },
        ],
      },
      demanded: { selectors: [{ kind: 'that', what: { text: 'system' } }], state: { text: 'safe' } },
    });
  });
});
