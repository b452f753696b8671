/**
 * A small document by hand that has one of everything a page can show, so that pages are tested apart from how
 * documents are made. Machine and job are invented.
 */
import type {
  ActionDetail,
  Notice,
  ProcedureDocument,
  Rich,
  Step,
  When,
} from '../../language-server/publish/document/types.ts';

export const say = (text: string): Rich => [{ kind: 'text', text }];

const supply = (value: string): When => ({
  sentence: `if the supply is ${value}`,
  any: [{ supply: [value] }],
});

const DETAIL: ActionDetail = {
  ...{ verb: 'remove', verbShown: 'Remove', objects: [], tools: [], with: [], fastening: [], wayRound: [] },
  ...{ limits: [], byHand: false, discards: false },
};

export function stepOf(id: string, number: string, heading: string, more: Partial<Step> = {}): Step {
  return {
    ...{
      kind: 'step',
      id,
      number,
      heading: say(heading),
      detail: DETAIL,
      source: { file: 'mill.dowel', line: 1 },
    },
    ...{ notices: [], more: [], said: [], expect: [], pictures: [], changes: [], bench: [], records: [] },
    waivers: [],
    ...more,
  };
}

function noticeOf(signal: Notice['signal'], symbol: Notice['symbol'], label: string, text: string): Notice {
  const hazards = label === '' ? [] : [{ id: symbol, label }];
  return { signal, word: signal.toUpperCase(), convention: 'ANSI Z535.6', hazards, symbol, text: say(text) };
}

const LIVE = 'The box carries 400 V. Touching it kills. Work on a supply that is locked out.';
const BELT = 'The belt pulls fingers in. Keep clear.';
const GUARD = 'The guard cuts. Wear gloves.';

const axis = (id: string, kind: 'variant' | 'choice', ...values: string[]) => ({
  ...{ id, kind, label: id },
  values: values.map((value) => ({ id: value, label: value })),
});
const tell = (file: string, alt: string, step: string) => ({ file, alt, step });
const PICTURE = tell('belt.png', 'The belt, seen from the left.', 'belt/off');

const TIGHTEN: ActionDetail = {
  ...DETAIL,
  fastening: [
    {
      ...{ id: 'screws', name: 'guard screws', count: 6, work: 'tighten', wrenches: [] },
      ...{ leftHand: false, toYield: false, lubricated: [], securedBy: [] },
      stages: ['Tighten to 4 N·m (35 lbf·in).', 'Tighten to 8 N·m (71 lbf·in).'].map((sentence, at) => ({
        ...{ number: at + 1, sentence, kind: 'torque', again: false },
      })),
    },
  ],
};

const MEASURE = stepOf('belt/measure', '2.3', 'Measure the end float of the shaft.', {
  records: ['float'],
  measurement: {
    ...{ what: 'end float of the shaft', with: ['dial gauge'], record: 'float', kind: 'measure' },
    rows: [
      {
        ...{ id: 'belt/low', reading: 'up to 0.25 mm', high: { value: 0.25, included: true }, unit: 'mm' },
        ...{ meaning: 'right', meaningText: 'right: go on', action: 'Go on.', items: [] },
      },
      {
        ...{ id: 'belt/high', reading: 'over 0.25 mm', low: { value: 0.25, included: false }, unit: 'mm' },
        ...{ meaning: 'stop', meaningText: 'stop', action: 'Stop here.' },
        items: [{ kind: 'stop', id: 'belt/stop', text: say('Stop here. Send the mill in.') }],
      },
    ],
  },
});

const SAFE: ProcedureDocument['flow'][number] = {
  ...{ kind: 'task', id: 'safe', number: '1', title: 'Make safe' },
  items: [
    stepOf('safe/isolate', '1.1', 'Isolate the mains.', {
      notices: [noticeOf('danger', 'electricity', 'Electric shock', LIVE)],
    }),
    stepOf('safe/prove', '1.2', 'Prove the mains dead.', { when: supply('three-phase') }),
    stepOf('safe/wait', '1.3', 'Wait 5 min.', {
      when: supply('single-phase'),
      said: [say('The capacitor empties.')],
    }),
  ],
};

const change = (id: string, what: 'off' | 'back' | 'discarded' | 'new') => ({
  ...{ id, name: id, positions: [], change: what },
});

const RENEW: ProcedureDocument['flow'][number] = {
  ...{ kind: 'task', id: 'belt', number: '2', title: 'Renew the belt' },
  items: [
    { kind: 'note', id: 'belt/note', notice: noticeOf('note', 'information', '', 'The belt is tight.') },
    stepOf('belt/guard-off', '2.1', 'Remove the six guard screws and the guard.', {
      notices: [noticeOf('caution', 'sharp', 'Sharp edges', GUARD)],
      changes: [change('guard', 'off'), change('screws', 'off')],
    }),
    stepOf('belt/off', '2.2', 'Remove the belt and throw it away.', {
      notices: [
        noticeOf('warning', 'crushing', 'Moving parts', BELT),
        noticeOf('notice', 'property', '', 'Grit wears the pulley. Keep it clean.'),
      ],
      changes: [change('belt', 'discarded')],
      pictures: [PICTURE],
    }),
    MEASURE,
    {
      ...{ kind: 'branch', id: 'belt/scored', by: 'seen', question: 'Look: is the pulley scored?' },
      ways: [
        {
          ...{ id: 'belt/scored/yes', label: 'If the pulley is scored:', goOn: false },
          items: [stepOf('belt/polish', '2.4', 'Clean the pulley.')],
        },
        { id: 'belt/scored/no', label: 'Otherwise:', items: [], goOn: true },
      ],
    },
    { kind: 'choice', id: 'belt/place', axis: 'place', sentence: 'Decide: bench or machine.' },
    {
      ...{ kind: 'group', id: 'belt/back', number: '2.5', title: 'Put the new belt on', note: [] },
      origin: { kind: 'step' },
      items: [
        stepOf('belt/new', '2.5.1', 'Fit a new belt.', { changes: [change('belt', 'new')] }),
        stepOf('belt/guard-on', '2.5.2', 'Refit the guard with its six screws.', {
          more: [
            [
              { kind: 'text', text: 'The last torque is ' },
              { kind: 'measure', text: '8 N·m (71 lbf·in)', measure: { text: '8 N·m', unit: 'N·m' } },
            ],
          ],
          changes: [change('guard', 'back'), change('screws', 'back')],
          detail: TIGHTEN,
        }),
      ],
    },
    {
      ...{ kind: 'repeat', id: 'belt/until', number: '2.6', atMost: 4, until: say('the belt gives 8 mm') },
      sentence: 'Repeat until the belt gives 8 mm, at most 4 times.',
      items: [stepOf('belt/adjust', '2.6.1', 'Adjust the motor.')],
      otherwise: {
        sentence: 'If it does not come right after 4 times:',
        items: [{ kind: 'stop', id: 'belt/wrong', text: say('Stop here. The belt has the wrong length.') }],
      },
    },
    {
      ...{ kind: 'hold', id: 'belt/hold', text: say('Keep the hopper empty.') },
      items: [
        stepOf('belt/sign', '2.7', 'Sign: mill handed back.', {
          records: ['signed', 'second'],
          expect: [say('The mill runs quietly.')],
        }),
      ],
    },
  ],
};

const times = (count: number) => ({ least: count, most: count });

const thing = (id: string, name: string, ...positions: string[]) => ({
  ...{ id, name, type: 'part' as const, positions, alsoCalled: [] },
});

export function sampleDocument(): ProcedureDocument {
  return {
    ...{ version: 1, id: 'renew-belt', language: 'en-GB', title: 'Renew the belt of the mill' },
    ...{ number: 'ML-7', issue: '3', date: '2026-10-01', purpose: 'Renews a worn or oily belt.' },
    changes: ['Torque of the guard screws corrected.', 'First issue.'],
    machine: { id: 'mill', title: 'grain mill' },
    machines: [{ id: 'mill', title: 'grain mill' }],
    appliesTo: {
      ...{ sentence: 'All variants of the grain mill.', combinations: [], serialNumbers: [] },
      axes: [
        axis('supply', 'variant', 'single-phase', 'three-phase'),
        axis('place', 'choice', 'bench', 'machine'),
      ],
    },
    startsWith: [say('The mill is in working order.')],
    endsWith: [],
    lists: {
      ...{ people: 1, peopleAtOnce: 2, skill: 'fitter', conditions: ['The hopper is empty.'], kits: [] },
      times: {
        stated: { text: '1 h', unit: 'h' },
        ...{ waitingMinutes: 5, waiting: { text: '5 min', unit: 'min' }, waitingByVariant: [] },
      },
      protection: [{ id: 'gloves', name: 'gloves' }],
      tools: [
        { id: 'wrench', name: 'torque wrench', range: { text: '5 to 60 N·m', unit: 'N·m' }, listed: true },
        { id: 'tester', name: 'voltage tester', listed: true, when: supply('three-phase') },
      ],
      newParts: [{ id: 'belt', name: 'drive belt', count: 1, partNumber: '40-112', ifFound: false }],
      ...{ fluids: [], consumables: [] },
    },
    hazards: [
      {
        ...{
          hazard: 'live',
          label: 'Electric shock',
          signal: 'danger',
          word: 'DANGER',
          symbol: 'electricity',
        },
        ...{ text: say(LIVE), steps: ['safe/isolate'] },
      },
      {
        ...{
          hazard: 'moving',
          label: 'Moving parts',
          signal: 'warning',
          word: 'WARNING',
          symbol: 'crushing',
        },
        ...{ text: say(BELT), steps: ['belt/off'] },
      },
      {
        ...{ hazard: 'sharp', label: 'Sharp edges', signal: 'caution', word: 'CAUTION', symbol: 'sharp' },
        ...{ text: say(GUARD), steps: ['belt/guard-off'] },
      },
    ],
    variantDifferences: [
      { when: supply('three-phase'), steps: ['safe/prove'], sentences: ['Prove the mains dead.'] },
    ],
    flow: [SAFE, RENEW],
    things: {
      belt: thing('belt', 'drive belt'),
      guard: thing('guard', 'belt guard'),
      screws: thing('screws', 'guard screws', '1', '2', '3', '4', '5', '6'),
    },
    records: [
      { id: 'float', step: 'belt/measure', kind: 'value', label: 'end float', unit: 'mm' },
      { id: 'signed', step: 'belt/sign', kind: 'signature', label: 'Signature: mill handed back' },
      {
        id: 'second',
        step: 'belt/sign',
        kind: 'second-person',
        label: 'Seen by a second person: mill handed back',
      },
    ],
    leftAtEnd: [],
    tally: [
      { id: 'belt', name: 'drive belt', off: times(1), back: times(0), fresh: times(1), discarded: times(1) },
      {
        ...{ id: 'screws', name: 'guard screws', count: 6 },
        ...{ off: times(6), back: times(6), fresh: times(0), discarded: times(0) },
      },
    ],
    waste: [{ id: 'belt', name: 'drive belt', kind: 'part', disposal: 'As your local rules say.' }],
    troubles: [
      {
        ...{ step: 'belt/until', number: '2.6', sign: 'The belt does not give 8 mm after 4 times.' },
        ...{ remedy: ['The belt has the wrong length.'], stops: true },
      },
    ],
    waivers: [],
    pictures: [PICTURE],
    uses: [],
    check: {
      ...{ checked: true, errors: 0, warnings: 0, informations: 0, hints: 0, findings: [] },
      sentence: 'Checked by Dowel: no findings.',
    },
    sources: [{ file: 'mill.dowel', date: '2026-10-01' }],
    cautions: ['Local codes and licensed practice come before this page.'],
  };
}
