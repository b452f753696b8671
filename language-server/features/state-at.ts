/**
 * How the machine stands at a place of a procedure: what is off, aside, loose, open, drained, isolated,
 * locked, supported or new there, and which step made it so. Pure: plain data for the command line and the
 * editor.
 */

import { caseWords } from '../checks/speak.ts';
import {
  ASIDE,
  type Aspect,
  CAPPED,
  CLEAN,
  DISCONNECTED,
  DRAINED,
  GONE,
  HAND,
  IN_PLACE,
  LOOSE,
  LOW,
  OFF,
  OUT,
  PASS,
  STAGE,
  TRIAL,
  YES,
} from '../execution/aspects.ts';
import { type CaseSet, NONE } from '../execution/cases.ts';
import type { Run } from '../execution/run.ts';
import type { Thing } from '../model/model.ts';
import type { SourceHost } from '../project/project.ts';
import type { Place } from '../report/finding.ts';
import { View } from './view.ts';

export interface StateGroup {
  /** `off`, `aside`, `loose` … */
  state: string;
  things: StateThing[];
}

export interface StateThing {
  name: string;
  title: string;
  /** `part`, `fastener` … */
  type: string;
  /** Names of the positions, where not all of the thing is so. */
  positions?: string[];
  /** The step that made it so; absent where it was so from the start. */
  since?: Place;
  /** The smallest case, where it is not so in all of them. */
  case?: string;
}

export interface StateAt {
  procedure: string;
  title: string;
  groups: StateGroup[];
}

/** The state just before the statement at `offset`; undefined where no procedure is there. */
export function stateAt(host: SourceHost, path: string, offset: number): StateAt | undefined {
  return stateIn(new View(host), path, offset);
}

export function stateIn(view: View, path: string, offset: number): StateAt | undefined {
  const scene = view.sceneAt(path, offset);
  if (!scene?.procedure) return undefined;
  const { procedure, file, model } = scene;
  return {
    procedure: procedure.name?.text ?? '',
    title: procedure.title?.value ?? procedure.name?.text ?? '',
    groups: view.at(procedure, file, model, offset, statesOf),
  };
}

/** Everything that is not as on a machine in working order, by state. */
export function statesOf(run: Run): StateGroup[] {
  const { model } = run;
  const groups = new Map<string, Map<string, StateThing & { items: number[]; cases: CaseSet }>>();
  for (const thing of model.things) {
    for (let item = thing.first; item < thing.first + thing.positions.length; item++) {
      for (const [aspect, word] of wordsFor(thing)) {
        for (const entry of run.entries(aspect, item)) {
          const state = word(entry.value);
          if (!state) continue;
          const step = entry.since >= 0 ? run.steps.at(entry.since) : undefined;
          const since = step && { file: step.file, start: step.action.start, end: step.action.end };
          const group = groups.get(state) ?? new Map();
          groups.set(state, group);
          const key = `${thing.id} ${entry.since}`;
          const known = group.get(key);
          if (known) {
            known.items.push(item);
            known.cases = run.cases.or(known.cases, entry.cases);
          } else
            group.set(key, {
              name: thing.name,
              title: thing.title,
              type: thing.type,
              items: [item],
              cases: entry.cases,
              ...(since ? { since } : {}),
            });
        }
      }
    }
  }
  return ORDER.filter((state) => groups.has(state)).map((state) => ({
    state,
    things: [...groups.get(state)!.values()].map(({ items, cases, ...thing }) => {
      const declared = model.byName.get(thing.name)!;
      const some = items.length < declared.positions.length;
      const inCase = caseWords(cases, run.cases, run.cases.and(run.within, declared.exists));
      return {
        ...thing,
        ...(some ? { positions: items.map((item) => declared.positions[item - declared.first]!) } : {}),
        ...(inCase && run.within !== NONE ? { case: inCase } : {}),
      };
    }),
  }));
}

/** The order in which a technician asks: what is not as it should be, what holds it safe, what was done to it. */
const ORDER = [
  'isolated',
  'locked',
  'relieved',
  'proved safe',
  'cool',
  'drained',
  'low',
  'not bled',
  'open',
  'off',
  'thrown away',
  'aside',
  'on trial',
  'out',
  'loose',
  'started by hand',
  'part tight',
  'disconnected',
  'capped',
  'not secured',
  'supported',
  'in place',
  'bypassed',
  'new',
  'marked',
  'clean',
];

type Word = (value: number) => string | undefined;
const yes =
  (word: string): Word =>
  (value) =>
    value === YES ? word : undefined;

function wordsFor(thing: Thing): [Aspect, Word][] {
  const common: [Aspect, Word][] = [
    ['fresh', yes('new')],
    ['bypass', yes('bypassed')],
    ['supported', yes('supported')],
    ['lock', yes('locked')],
  ];
  switch (thing.type) {
    case 'part':
    case 'seal':
    case 'control':
    case 'isolator':
      return [
        [
          'place',
          (value) => ({ [ASIDE]: 'aside', [TRIAL]: 'on trial', [OFF]: 'off', [GONE]: 'thrown away' })[value],
        ],
        ['moved', yes('open')],
        ['marked', yes('marked')],
        ...common,
      ];
    case 'fastener':
      return [
        [
          'place',
          (value) =>
            ({ [OUT]: 'out', [HAND]: 'started by hand', [LOOSE]: 'loose', [PASS]: 'part tight' })[value] ??
            (value > STAGE ? 'part tight' : undefined),
        ],
        ...(thing.needsSecuring ? ([['secured', yes('not secured')]] as [Aspect, Word][]) : []),
        ...common,
      ];
    case 'connection':
      return [
        ['place', (value) => ({ [DISCONNECTED]: 'disconnected', [CAPPED]: 'capped' })[value]],
        ...common,
      ];
    case 'system':
      return [
        ['fluid', (value) => ({ [LOW]: 'low', [DRAINED]: 'drained' })[value]],
        ['pressure', (value) => (thing.hasPressure ? yes('relieved')(value) : undefined)],
        ['heat', (value) => (thing.hasHeat ? yes('cool')(value) : undefined)],
        ['live', yes('isolated')],
        ['proved', yes('proved safe')],
        ['bled', (value) => (thing.needsBleeding ? yes('not bled')(value) : undefined)],
      ];
    case 'face':
      return [['place', (value) => (value === CLEAN ? 'clean' : undefined)]];
    case 'tool':
      return [['place', (value) => (value === IN_PLACE ? 'in place' : undefined)]];
    default:
      return [];
  }
}
