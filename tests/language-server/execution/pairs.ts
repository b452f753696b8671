/**
 * Every verb on every kind of thing, in every state that a few steps bring it to: small jobs of one to five lines on one
 * machine. What is right and wrong about them is said by grammar/STATE.md, read by the independent executor (tests/oracle).
 */

import { readFileSync } from 'node:fs';
import { found, jobText, machineOf } from './courses.ts';

export const MACHINE = `machine m "M" {
  variant size: small, large
  part bed "bed" fixed
  part lid "lid" on bed  held by lid-bolts  sealed by gasket  opens bath
  seal gasket "gasket" on bed  single-use
  face rim "rim" under gasket
  part knob "knob" on lid
  part crown "crown" on lid  held by crown-nut
  fastener crown-nut "crown nut" x1  torque 8 N·m
  fastener lid-bolts "lid bolts" x2  plan { 10 N·m; 22 N·m }
  part gear "gear" on bed  under lid
  part cap "cap" on bed  matched  held by cap-nuts
  fastener cap-nuts "cap nuts" x2  single-use
  part stud-plate "stud plate" on bed  held by studs
  fastener studs "studs" x2  stay
  part hose-end "hose end" on bed  held by clamp
  fastener clamp "clamp" x1  frees when loose
  fastener stretch "stretch bolt" x1  clamps cap to bed  plan { 20 N·m; 90° } to yield
  fastener pinned "pinned nut" x1  on bed  secured by split-pin  plan { until "it binds" while turning gear; back off 1/6 turn }
  fastener eased "eased bolt" x1  on bed  plan { 20 N·m; loosen; 40 N·m }
  part ring "wear ring" on bed  single-use
  part eye "lifting eye" on bed  added
  part motor "motor" on bed  held by motor-bolts  joined by plug  supplied with motor-ring  mass 12 kg
  seal motor-ring "motor ring" on motor
  fastener motor-bolts "motor bolts" x2  clamps motor to bed
  part bracket "bracket" on bed  carries motor  held by bracket-screw
  fastener bracket-screw "bracket screw" x1
  part badge "badge" on motor  part of motor
  connection plug "plug" joins motor to bed  opens mains
  connection pipe "pipe" joins lid to bed  slack  sealed by pipe-ring  opens air
  seal pipe-ring "pipe ring" on bed  single-use
  connection lead "lead" joins motor to bed  single-use
  control valve "valve" in air
  control tap "tap" in bath
  control knob-switch "knob switch" on bed
  control cover-switch "cover switch" on lid  normally on
  isolator breaker "breaker" in mains  normally on
  system mains "mains" live 400 V  isolated at breaker  proved with tester
  system air "air" pressure 8 bar  relieved at valve
  system bath "bath" holds 2 L oil  temperature 80 °C  drained at tap  needs bleeding
  system spring "spring" stored "a spring"
  fluid oil "oil"
  part wheel "wheel" on bed
  part shaft "shaft" on bed
  part belt "belt" on bed
  coupled wheel, shaft while belt fitted
  tool bar "bar" locks shaft
  tool tester "tester"
  tool jack "jack"
  tool wire "bridge wire"
  kit set "set" contains gasket, ring
}
`;

interface Kind {
  /** Short rows of steps that bring the thing to a state, parted by `;`. */
  before: readonly string[];
  /** The step that is tried there. */
  tried: readonly string[];
}

const LOOKS = ['inspect X', 'send X for "grinding"', 'mark X', 'clean X'];
const PART = [
  ...['remove X', 'remove X and discard', 'unbolt X', 'refit X', 'fit X', 'fit new X', 'trial fit X'],
  ...['bolt up X', 'move aside X', 'move back X', 'move X to new bed', 'discard X', 'choose X', 'align X'],
  ...['adjust X', 'coat X', 'lubricate X', 'turn X', 'lock X', 'unlock X', 'lock X with bar', 'support X'],
  ...['support X with jack', 'raise X with jack', 'lower X', 'bypass X with wire', 'let cool X', 'run X'],
  ...LOOKS,
];
const FASTENER = [
  ...['remove X', 'remove X and discard', 'refit X', 'fit X', 'fit X by hand', 'fit new X'],
  ...['fit new X by hand', 'loosen X', 'tighten X', 'tighten X stage 1', 'tighten X stage 2'],
  ...['tighten X stage 3', 'tighten X pass 50 %', 'tighten X pass 100 %', 'tighten X until "snug"'],
  ...['tighten X to 10 N·m', 'tighten X to 22 N·m', 'back off X 1/6 turn', 'secure X', 'discard X'],
  ...['check X at 20 N·m', 'choose X', 'adjust X', 'coat X', 'lubricate X', ...LOOKS],
];
const CONNECTION = [
  ...['remove X', 'refit X', 'fit new X', 'connect X', 'disconnect X', 'cap X', 'open X', 'close X'],
  ...[
    'move aside X',
    'move back X',
    'discard X',
    'remove X and discard',
    'bypass X with wire',
    'inspect X',
    'mark X',
    'clean X',
  ],
];
const CONTROL = [
  ...['open X', 'close X', 'switch on X', 'switch off X', 'lock out X', 'unlock X', 'remove X', 'refit X'],
  ...['fit new X', 'bypass X with wire', 'remove wire', 'inspect X', 'clean X'],
];
const SYSTEM = [
  ...['isolate X', 'restore X', 'prove X safe', 'relieve X', 'let cool X', 'drain X', 'recover X', 'fill X'],
  ...['top up X', 'bleed X', 'evacuate X', 'pressurise X', 'inflate X', 'run X', 'run', 'inspect X'],
];
const SEAL = [
  ...['remove X', 'remove X and discard', 'refit X', 'fit X', 'fit new X', 'trial fit X', 'discard X'],
  ...['move X to new bed', 'coat X', 'lubricate X', 'inspect X', 'clean X', 'choose X'],
];
const FASTENER_STATES = [
  ...['', 'remove X', 'remove X and discard', 'loosen X', 'remove X; fit X by hand', 'remove X; fit new X'],
  ...['loosen X; tighten X stage 1', 'loosen X; tighten X stage 1; tighten X stage 2', 'back off X 1/6 turn'],
  ...['loosen X; tighten X pass 50 %', 'loosen X; tighten X', 'loosen X; tighten X until "snug"'],
];

export const KINDS: Readonly<Record<string, Kind>> = {
  knob: {
    before: [
      ...[
        '',
        'remove X',
        'remove X and discard',
        'move aside X',
        'remove X; trial fit X',
        'remove X; refit X',
      ],
      ...['lock X', 'support X with jack', 'bypass X with wire', 'remove X; discard X; fit new X'],
    ],
    tried: PART,
  },
  ring: { before: ['', 'remove X', 'remove X and discard', 'remove X; fit new X'], tried: PART },
  eye: { before: ['', 'fit X', 'fit X; remove X', 'fit new X'], tried: PART },
  cap: {
    before: ['', 'mark X', 'remove cap-nuts, stretch; remove X', 'mark X; unbolt X', 'loosen cap-nuts'],
    tried: PART,
  },
  lid: {
    before: [
      '',
      'let cool bath',
      'let cool bath; unbolt X',
      'let cool bath; unbolt X and discard',
      'loosen lid-bolts',
    ],
    tried: PART,
  },
  gear: { before: ['', 'let cool bath; unbolt lid'], tried: PART },
  motor: {
    before: [
      '',
      'isolate mains; prove mains safe; disconnect plug',
      'remove motor-bolts',
      'support X with jack',
    ],
    tried: PART,
  },
  bracket: {
    before: ['', 'support motor with jack', 'support motor; unbolt X', 'remove bracket-screw'],
    tried: PART,
  },
  'stud-plate': { before: ['', 'remove X', 'remove studs'], tried: PART },
  'hose-end': { before: ['', 'loosen clamp', 'remove clamp', 'loosen clamp; remove X'], tried: PART },
  shaft: {
    before: ['', 'lock wheel', 'fit bar', 'lock X with bar', 'remove belt; fit bar', 'fit bar; unlock X'],
    tried: [...PART, 'turn wheel', 'run', 'fit bar', 'remove bar', 'unlock bar'],
  },
  gasket: {
    before: [
      '',
      'let cool bath; unbolt lid',
      'let cool bath; unbolt lid; remove X',
      'let cool bath; unbolt lid; remove X and discard',
    ],
    tried: [...SEAL, 'refit lid', 'clean rim; refit lid', 'fit kit set', 'fit new X; clean rim; refit lid'],
  },
  'crown-nut': { before: FASTENER_STATES, tried: FASTENER },
  'lid-bolts': { before: FASTENER_STATES, tried: FASTENER },
  'cap-nuts': { before: FASTENER_STATES, tried: FASTENER },
  stretch: { before: FASTENER_STATES, tried: FASTENER },
  pinned: { before: [...FASTENER_STATES, 'loosen X; tighten X; secure X'], tried: FASTENER },
  eased: {
    before: [...FASTENER_STATES, 'loosen X; tighten X stage 1; loosen X', 'loosen X; tighten X; loosen X'],
    tried: FASTENER,
  },
  plug: {
    before: [
      '',
      'disconnect X',
      'isolate mains; disconnect X',
      'isolate mains; prove mains safe; disconnect X',
      'isolate mains; prove mains safe; disconnect X; cap X',
    ],
    tried: [...CONNECTION, 'restore mains'],
  },
  pipe: {
    before: [
      '',
      'relieve air; disconnect X; discard X',
      'relieve air',
      'relieve air; disconnect X',
      'relieve air; disconnect X; cap X',
      'relieve air; disconnect X; remove pipe-ring and discard; fit new pipe-ring',
      'open valve; disconnect X; connect X',
    ],
    tried: [...CONNECTION, 'pressurise air', 'unbolt lid'],
  },
  lead: {
    before: [
      '',
      'remove X and discard',
      'disconnect X; discard X',
      'disconnect X',
      'disconnect X; connect X',
      'disconnect X; cap X',
    ],
    tried: CONNECTION,
  },
  valve: {
    before: [
      '',
      'open X',
      'close X',
      'open X; close X',
      'remove X',
      'bypass X with wire',
      'lock out X',
      'open X; lock out X',
    ],
    tried: [...CONTROL, 'adjust X', 'pressurise air'],
  },
  tap: {
    before: ['', 'open X', 'close X', 'remove X'],
    tried: [...CONTROL, 'fill bath', 'fill bath; bleed bath'],
  },
  'knob-switch': {
    before: [
      '',
      'switch on X',
      'switch off X',
      'open X',
      'switch on X; switch off X',
      'lock out X',
      'bypass X with wire',
      'remove X',
    ],
    tried: [...CONTROL, 'adjust X'],
  },
  breaker: {
    before: [
      '',
      'switch off X',
      'isolate mains',
      'switch off X; lock out X',
      'isolate mains; lock out X; unlock X',
      'open X',
      'lock out X',
    ],
    tried: [...CONTROL, 'isolate mains', 'restore mains', 'prove mains safe', 'run'],
  },
  mains: {
    before: [
      '',
      'isolate X',
      'isolate X; prove X safe',
      'isolate X; lock out breaker',
      'isolate X; restore X',
      'isolate X; disconnect plug',
    ],
    tried: SYSTEM,
  },
  air: {
    before: [
      '',
      'relieve X',
      'open valve',
      'relieve X; disconnect pipe',
      'relieve X; pressurise X',
      'relieve X; prove X safe',
    ],
    tried: SYSTEM,
  },
  bath: {
    before: [
      '',
      'drain X',
      'open tap',
      'let cool X; unbolt lid',
      'drain X; fill X',
      'let cool X',
      'let cool X; unbolt lid; clean rim; remove gasket and discard; fit new gasket; bolt up lid',
    ],
    tried: SYSTEM,
  },
  spring: { before: ['', 'relieve X', 'relieve X; prove X safe'], tried: SYSTEM },
  bar: {
    before: ['', 'fit X', 'lock shaft with X', 'lock wheel with X'],
    tried: ['fit X', 'remove X', 'unlock X', 'unlock wheel', 'turn wheel', 'run', 'refit X'],
  },
  jack: {
    before: ['', 'support motor with X', 'raise bed with X', 'support motor with X; unbolt bracket'],
    tried: [
      'remove X',
      'fit X',
      'lower motor',
      'lower bed',
      'remove X; lower motor',
      'unbolt bracket',
      'bolt up bracket; lower motor',
    ],
  },
};

export interface State {
  thing: string;
  /** The steps that lead there; none where the machine stands as before the job. */
  steps: readonly string[];
  /** What is tried there: one step, or several. */
  tried: readonly (readonly string[])[];
}

const stepsOf = (row: string, thing: string) =>
  row === '' ? [] : row.replaceAll(/\bX\b/g, thing).split('; ');

export const STATES: readonly State[] = Object.entries(KINDS).flatMap(([thing, { before, tried }]) =>
  before.map((row) => ({
    thing,
    steps: stepsOf(row, thing),
    tried: tried.map((last) => stepsOf(last, thing)),
  })),
);

export const RECORD = new URL('pairs.txt', import.meta.url);
const NOTHING = 'nothing';

export const nameOf = ({ thing, steps }: State) =>
  steps.length === 0 ? `${thing}, untouched` : `${thing}: ${steps.join('; ')}`;

/** What is found, then what was tried, where that is found; in the order in which it is first found. */
export function outcomes(machine: ReturnType<typeof machineOf>, { steps, tried }: State): string[] {
  const byOutcome = new Map<string, string[]>();
  for (const last of tried) {
    const outcome = found(machine, jobText([...steps, ...last])).join(' | ') || NOTHING;
    byOutcome.set(outcome, [...(byOutcome.get(outcome) ?? []), last.join(' + ')]);
  }
  return [...byOutcome].map(([outcome, rows]) => `${outcome} <= ${rows.join('; ')}`);
}

export function written(): string {
  const machine = machineOf(MACHINE);
  return STATES.map((state) =>
    [nameOf(state), ...outcomes(machine, state).map((line) => `  ${line}`)].join('\n'),
  )
    .join('\n')
    .concat('\n');
}

/** What the record says: name of the state -> lines. */
export function recorded(): Map<string, string[]> {
  const all = new Map<string, string[]>();
  let lines: string[] = [];
  for (const line of readFileSync(RECORD, 'utf8').split('\n')) {
    if (line.startsWith('  ')) lines.push(line.slice(2));
    else if (line !== '') {
      lines = [];
      all.set(line, lines);
    }
  }
  return all;
}

/** One job of the record: its steps, and of what is found the line and the name. */
export function* jobsIn(record: ReadonlyMap<string, readonly string[]>) {
  for (const state of STATES) {
    for (const line of record.get(nameOf(state)) ?? []) {
      const [outcome, rows] = line.split(' <= ') as [string, string];
      const names =
        outcome === NOTHING ? [] : outcome.split(' | ').map((one) => one.split(' ').slice(0, 2).join(' '));
      for (const row of rows.split('; ')) yield { steps: [...state.steps, ...row.split(' + ')], names };
    }
  }
}
