/** Slips in machines and names: rings of seats and covers, things out of reach, unknown names, wrong kinds. */
import { type Bench, inHeaders, inMachine, inSteps, type Slip } from './slip.ts';

const BENCH: Bench = {
  subject: 'names',
  machine: `machine m "M" {
  variant size: small, large
  variant week: mon, tue, wed, thu, fri, sat, sun
  part bed "bed" fixed
  part beds "beds" x2 fixed
  part cover "cover" on bed  held by bolts
  part doors "doors" x3 on bed
  part knob "knob" positions left on bed
  part flaps "flaps" positions upper, lower on bed
  fastener bolts "bolts" x4
  seal ring "ring" on bed
  part lid "lid" on bed  sealed by ring
  connection hose "hose" joins cover to lid
  control valve "valve" normally closed in air
  isolator switch "switch" in mains
  system air "air" pressure 8 bar  relieved at valve
  system mains "mains" live 230 V  isolated at switch
  face rim "rim" under lid
  tool puller "puller"
  fluid oil "oil"
  kit rings "ring set"  contains ring
  value limit = 3 mm
  table shims "Shims" {
    below 1 mm: 1 mm
    from 1 mm: 2 mm
  }
}
`,
};

/** Verbs and the kinds of things that they do not take. */
const WRONG = inSteps(BENCH, [
  ...['remove', 'unbolt', 'bolt up', 'loosen', 'tighten', 'connect', 'disconnect', 'open', 'close'].flatMap(
    (verb) =>
      ['cover', 'doors', 'bolts', 'ring', 'hose', 'valve', 'air', 'rim', 'puller', 'oil'].map(
        (thing) => `${verb} ${thing}`,
      ),
  ),
  ...[
    'isolate',
    'restore',
    'lock out',
    'drain',
    'fill',
    'relieve',
    'switch off',
    'switch on',
    'prove',
    'evacuate',
  ].flatMap((verb) =>
    ['cover', 'bolts', 'valve', 'switch', 'air'].map(
      (thing) => `${verb} ${thing}${verb === 'prove' ? ' safe' : ''}`,
    ),
  ),
]);

const STEPS = inSteps(BENCH, [
  'remove dors',
  'remove nothing-known',
  'remove doors #4',
  'remove doors #1..#9',
  'remove flaps #left',
  'remove knob #right',
  'remove cover #2',
  'remove bolts #x',
  'when size is medium { clean bed }',
  'when size is smal { clean bed }',
  'when week is holiday { clean bed }',
  'when colour is red { clean bed }',
  'when sise is small { clean bed }',
  'if cover bff { clean bed }',
  'if cover openn { clean bed }',
  'if valve hot { clean bed }',
  'clean bed with nothing-known',
  'clean bed with pullr',
  'choose doors from shim by limit',
  'choose doors from nothing-known by limit',
  'choose doors from shims by nothing-known',
  'choose doors from shims by limt',
  'adjust doors to nothing-known',
  'allow stil-held because "x"\nclean bed',
  'allow nothing-of-the-kind because "x"\nclean bed',
  'frobnicate bed',
  'inspct bed',
  'clean bed picture "ring.png" "A ring."',
  'clean bed picture "../ring.png" "A ring."',
  'clean bed picture "/ring.png" "A ring."',
  'clean bed picture "http://a.b/ring.png" "A ring."',
  'clean bed "not closed',
  'clean bed {',
  'clean bed ‚now‘',
  'remove cover, ',
  'repeat until "a" {\nrepeat until "b" {',
]);

const DECLARED = inMachine(BENCH, [
  'part one "one" on two\n  part two "two" on one',
  'part one "one" on two\n  part two "two" on three\n  part three "three" on one',
  'part one "one" on one',
  'part ones "ones" x2 on ones',
  'part one "one" on bed  under two\n  part two "two" on bed  under one',
  'part one "one" on bed  under one',
  'part ones "ones" x2 on bed  under ones',
  'part one "one" on bed  under bed',
  'part ones "ones" x2 on bed  under bed',
  'part one "one" on bed  under beds',
  'part one "one" on bed  under two\n  part two "two" on bed  held by three\n  fastener three "three" x2 under one',
  'part one "one" on bed  pressure 3 bar',
  'fastener one "one" x2  clamps cover to bed  holds 3 L oil',
  'system one "one" torque 3 N·m',
  'part cover "second cover"',
  'variant size: tiny, huge',
  'value limit = 4 mm',
  'table shims "More" {\n below 1 mm: 1 mm\n from 1 mm: 2 mm\n}',
  'part one "one" on bd',
  'part one "one" like nothing-known',
  'part one "one" like one',
  'part one "one" like two\n  part two "two" like one',
  'part one "one" on bed  only size is medium',
  'part one "one" on bed  only week is holiday',
  'part one "one" on bed  mas 3 kg',
  'prt one "one" on bed',
  'thing one "one" on bed',
  'part one "one" on bed  positions a, a',
  'system one "one" holds 3 L nothing-known',
  'system one "one" isolated at nothing-known',
  'system one "one" isolated at bolts',
  'fastener one "one"  clamps cover to air',
  'part one "one" on bolts',
  'part one "one" on bed  sealed by bolts',
  'part ones "ones" x2 on bed  held by ring',
  'kit one "one" contains nothing-known',
  'value one = limt + 1 mm',
  'value one = nothing-known + 1 mm',
]);

/** Rules of the house that speak of what is not there. */
const RULES = inMachine(
  BENCH,
  [
    'before open any conection require cover fitted',
    'before open any thing require cover fitted',
    'before open any connection of any system with presure require that system proved safe',
    'before open any system with colour require cover fitted',
    'before clean any fluid with colour require cover fitted',
    'before clean any face with colour require cover fitted',
    'before open any connection require that system proved safe',
    'while open valve never remove cover',
    'before open cover require nothing-known fitted',
    'before drain cover require cover fitted',
  ].map((sentence) => `rule odd "Odd." {\n    ${sentence}\n  }`),
  'clean bed',
);

const FILES = inHeaders({ ...BENCH, machine: '' }, [
  'use "nothing.dowel"\nmachine m "M" {\n}',
  'use "a.dowel"\nmachine m "M" {\n}',
  'machine m "M" extends m {\n}',
  'machine m "M" extends n {\n}',
  'machine m "M" {\n}\nmachine m "M2" {\n}',
  'procedure p "P" for m {\n}\nprocedure p "P2" for m {\n}\nmachine m "M" {\n}',
  'procedure p "P" for m {\n}',
  'procedure p "P" for n {\n}\nmachine m "M" {\n}\nmachine m2 "M2" {\n}',
  'procedure p "P" {\n}',
  'machine m "M" {\n part bed "bed" fixed\n}\nprocedure p "P" for m {\n do q\n}',
  'machine a1 "A" {\n}\nmachine a2 "A" {\n}\nmachine a3 "A" {\n}\nmachine a4 "A" {\n}\nmachine a5 "A" {\n}\nmachine a6 "A" {\n}\nmachine a7 "A" {\n}\nprocedure p "P" for b {\n do q\n}',
  'machine m "M" {\n part bed "bed" fixed\n}\nprocedure p "P" for m tools nothing-known {\n clean bed\n}',
  'machine m "M" {\n part bed "bed" fixed\n}\nprocedure p "P" for m starts with nothing-known off {\n clean bed\n}',
  'machine m "M" {\n part bed "bed" fixed\n}\nprocedure p "P" for m starts where q ends {\n clean bed\n}',
]);

/** More procedures than are told where none is near. */
const MANY: Slip[] = [5, 6].map((count) => ({
  name: `names, ${count + 1} procedures`,
  text: `machine m "M" {\n part bed "bed" fixed\n}\nprocedure p "P" for m {\n do nothing-known\n}\n${Array.from(
    { length: count },
    (_, index) => `procedure p${index + 1} "P" for m {\n clean bed\n}\n`,
  ).join('')}`,
}));

export const NAME_SLIPS: readonly Slip[] = [...WRONG, ...STEPS, ...DECLARED, ...RULES, ...FILES, ...MANY];
