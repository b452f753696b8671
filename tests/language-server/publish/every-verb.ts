/**
 * Every verb with every kind of thing it can act on, one, two, several, one of several and nobody knows how many, as
 * one job: what its sentences are is compared with a table that was read through line by line.
 */
import { VERBS } from '../../../grammar/tokens/verbs.ts';

/** Things of each kind: one, two, six, and a plural that nobody counted. */
const THINGS: Readonly<Record<string, readonly string[]>> = {
  part: [
    'part p1 "cover" on base',
    'part p2 "pistons" x2 on base',
    'part p6 "vanes" x6 on base',
    'part pn "shims" on base',
  ],
  fastener: [
    'fastener f1 "drain plug" x1 on base thread M14x1.5 torque 25 N·m',
    'fastener f2 "cap nuts" x2 clamps p1 to base thread M8x1.25 torque 22 N·m',
    'fastener f6 "flange bolts" x6 clamps p1 to base thread M10x1.5 layout circle order across plan { 20 N·m; 45 N·m; 60° }',
    'fastener fn "circlips" clamps p1 to base',
  ],
  seal: [
    'seal s1 "O-ring" on base',
    'seal s2 "lip seals" x2 on base',
    'seal s6 "copper washers" x6 on base',
    'seal sn "packing rings" on base',
  ],
  connection: [
    'connection c1 "fuel hose" joins p1 to base torque 40 N·m',
    'connection c2 "battery leads" positions red, black joins p1 to base',
    'connection c6 "spark plug caps" x6 joins p1 to base',
    'connection cn "earth straps" joins p1 to base',
  ],
  control: [
    'control v1 "relief valve" on base',
    'control v2 "bleed screws" positions left, right on base',
    'control v6 "petcocks" x6 on base',
    'control vn "valves of the rack" on base',
  ],
  isolator: [
    'isolator i1 "main switch" in mains normally on',
    'isolator i2 "breakers" x2 in mains normally on',
    'isolator i6 "gate valves" x6 in water normally open',
    'isolator in "supply switches" in mains normally on',
  ],
  face: [
    'face a1 "flange" on base',
    'face a2 "joint faces" x2 on base',
    'face a6 "valve seats" x6 on base',
    'face an "mating faces of the housing" on base',
  ],
  tool: [
    'tool t1 "engine hoist"',
    'tool t2 "axle stands" x2',
    'tool t6 "guide studs" x6',
    'tool tn "pliers"',
  ],
  system: [
    'system y1 "gear oil" holds 0.8 L oil drained at f1',
    'system y2 "cooling circuit" holds 8 L coolant pressure 1.4 bar',
    'system mains "mains supply" live 400 V isolated at i1',
    'system charge "charge of the capacitor" stored "325 V d.c."',
    'system spring "brake spring" stored "a spring under 6 kN"',
  ],
  kit: ['kit k1 "seal kit" contains s1, s2, s6'],
};

/** What is written behind the objects for verbs that need something there. */
const BEHIND: Readonly<Record<string, string>> = {
  move: 'to new base',
  'back off': '1/6 turn',
  turn: '2 turns by hand',
  'lock out': 'with padlock',
  'let cool': 'for 30 min',
  drain: 'into tray',
  recover: 'with tray',
  evacuate: 'to 500 micron for 30 min',
  pressurise: 'to 2 bar',
  inflate: 'to 2 bar',
  prove: 'safe with tester',
  'top up': 'to "the upper mark"',
  lock: 'with bar',
  support: 'with t1',
  raise: 'with t2',
  bypass: 'with lead',
  clean: 'with degreaser',
  coat: 'with sealant',
  lubricate: 'with grease by hand',
  align: 'with bar',
  inspect: 'for "cracks"',
  check: 'with tester',
  adjust: 'to 2 mm',
  send: 'for "grinding"',
  run: 'for 2 min',
  choose: 'from size-table by wear-limit',
};

const BEFORE: Readonly<Record<string, string>> = { measure: 'wear of', record: 'number of' };

/** One row of the table: what it is, and how it is written. */
export interface Row {
  what: string;
  line: string;
}

export function rows(): Row[] {
  const all: Row[] = [];
  for (const { verb, on, objectless } of VERBS) {
    const write = (object: string) => [verb, BEFORE[verb], object, BEHIND[verb]].filter(Boolean).join(' ');
    for (const kind of on) {
      for (const name of namesOf(kind)) all.push({ what: `${verb} · ${kind}`, line: write(name) });
      if (verb === 'fit' && kind !== 'tool' && kind !== 'kit')
        for (const name of namesOf(kind)) all.push({ what: `fit new · ${kind}`, line: `fit new ${name}` });
    }
    if (objectless && on.length === 0)
      all.push({ what: verb, line: verb === 'wait' ? 'wait 10 min' : 'sign "All tools counted."' });
    if (verb === 'run') all.push({ what: verb, line: 'run for 2 min' });
  }
  return [...all, ...TAILS.map((line) => ({ what: 'tails', line }))];
}

function namesOf(kind: string): string[] {
  const declared = (THINGS[kind] ?? []).map((line) => line.split(' ')[1]!);
  if (kind === 'system' || kind === 'kit') return declared;
  const several = THINGS[kind]![1]!.includes('positions')
    ? `${declared[1]} #${/positions (\w+)/.exec(THINGS[kind]![1]!)![1]}`
    : `${declared[2]} #2`;
  return [...declared, several, `${declared[2]} #1, #3`, `${declared[2]} #1..#4`, `${declared[2]} x2`];
}

/** Tails that change the sentence. */
const TAILS: readonly string[] = [
  'remove p1, p2',
  'remove p1 and p2',
  'remove p1, p2, p6',
  'remove s1 and discard',
  'remove s6 and discard',
  'remove p1 with t1 with 2 people',
  'remove f1 with tray',
  'unbolt held',
  'unbolt held and discard',
  'unbolt held, other',
  'bolt up held',
  'bolt up held within 10 min',
  'bolt up pinned',
  'fit f6 by hand',
  'fit f2 by hand',
  'fit f1 by hand',
  'fit fn by hand',
  'fit new s1, s2',
  'fit kit k1',
  'tighten f2',
  'tighten f6',
  'tighten f6 stage 2',
  'tighten f6 pass 50 %',
  'tighten f2 to 20 N·m with wrench',
  'tighten f6 in reverse order',
  'tighten f6 in order #1, #4, #2, #5, #3, #6',
  'tighten hub-nut',
  'tighten hub-nut until "the wheel binds" while turning p1',
  'tighten lock-nut with wrench',
  'tighten f2 with wrench, crowfoot',
  'loosen f6 in reverse order',
  'loosen f1 holding p1 with bar',
  'turn p1 1 turn',
  'turn p1 3 times while holding p2',
  'fill y1',
  'fill y1 with 0.7 L oil',
  'fill y2',
  'drain y2 to below p1',
  'top up y1 with oil',
  'bleed y2 at v2 #left until "no bubbles come" with 2 people',
  'isolate mains',
  'restore mains',
  'secure f1',
  'secure hub-nut',
  'mark matched-caps',
  'mark matched-one',
  'measure gap between p1 and base with gauge as gap',
  'measure creep of p1 for 10 min',
  'record total = wear-limit + 0.2 mm',
  'record serial-number of base',
  'choose pn from size-table by wear-limit',
  'clean base except a1',
  'clean a1 of base with degreaser for 5 min not over 40 °C',
  'check f2 at 22 N·m with wrench',
  'run y2 for 10 min',
  'wait 1 h 30 min "Let it set."',
];

/** The machine and the job, one step a row. */
export function everyVerb(): { text: string; rows: Row[] } {
  const all = rows();
  const machine = `machine bench "test bench" {
  fluid oil "gear oil, ISO VG 220"
  fluid coolant "coolant"
  consumable sealant "flange sealant"
  consumable grease "bearing grease"
  consumable degreaser "degreaser"
  value wear-limit "largest wear" = 0.25 mm
  table size-table "Sizes" { up to 0.1 mm: 0.1 mm
    over 0.1 mm: 0.2 mm }
  part base "base" on frame-part
  part frame-part "frame" fixed
  part held "belt guard" on base  held by guard-screws
  part other "lid" on base  held by lid-bolts, lid-clips
  part pinned "ram" on base  held by ram-pins
  part matched-caps "bearing caps" x3 on base  matched
  part matched-one "flywheel" on base  matched
  fastener guard-screws "guard screws" x4  thread M6x1  torque 9 N·m
  fastener lid-bolts "lid bolts" x2  thread M8x1.25  torque 22 N·m
  fastener lid-clips "lid clips" x2
  fastener ram-pins "ram pins" x2
  fastener hub-nut "hub nut" x1  clamps p1 to base  left-hand  secured by split-pin  plan { until "it binds" while turning p1; back off 1/6 turn }
  fastener lock-nut "lock nut" x1  clamps p1 to base  prevailing torque 3 N·m  torque 25 N·m
  tool padlock "padlock and tag"
  tool tray "oil tray"
  tool tester "two-pole tester"
  tool bar "holding bar"
  tool lead "bridge lead"
  tool gauge "dial gauge"
  tool wrench "torque wrench" range 5..60 N·m length 400 mm
  tool crowfoot "crowfoot adapter" length 40 mm
${Object.values(THINGS)
  .flat()
  .map((line) => `  ${line}`)
  .join('\n')}
}`;
  const steps = all
    .map(({ line }, index) => `  task n${index} "Row ${index}" {\n    ${line}\n  }`)
    .join('\n');
  return { text: `${machine}\n\nprocedure all "Do everything"\n  for bench\n{\n${steps}\n}\n`, rows: all };
}
