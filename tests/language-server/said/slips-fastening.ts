/** Slips with fasteners: values, orders, stages and tools, of one and of several, in rare words. */
import { type Bench, inHeaders, inMachine, inSteps, type Slip } from './slip.ts';

const BENCH: Bench = {
  subject: 'fastening',
  machine: `machine m "M" {
  part bed "bed" fixed
  part cover "cover" on bed  held by bolts  sealed by ring
  seal ring "ring" on bed  single-use
  seal shims "shims" x2 on bed  single-use
  part lid "lid" on bed  held by screw  sealed by shims
  part cap "cap" on bed  held by studs
  part caps "caps" x3 on bed  held by nut
  part clamp "clamp" on bed  held by pins  single-use
  part hub "hub" on bed  held by nails
  fastener bolts "bolts" x6  plan { 10 N·m; 20 N·m; 30 N·m; 40 N·m }
  fastener screw "screw" x1  plan { 10 N·m; 20 N·m }
  fastener studs "studs" x2  plan { 10 N·m; 90° } to yield
  fastener nut "nut" x1  plan { 10 N·m; 90° } to yield
  fastener pins "pins" x2  single-use  secured by wire
  fastener nails "nails" torque 20 N·m
  connection pipe "pipe" joins cap to bed  single-use
  tool wrench "torque wrench" range 5..100 N·m
}
`,
};

const STEPS = inSteps(BENCH, [
  'remove bolts\nremove cover\nremove ring\nfit ring\nrefit cover\nfit bolts by hand\ntighten bolts',
  'remove bolts\nremove cover\nremove ring and discard\nfit ring\nrefit cover\nfit bolts',
  'remove screw\nremove lid\nrefit lid\nfit screw',
  'remove screw\nremove lid\nremove shims\nfit shims\nrefit lid\nfit screw',
  'remove screw\nremove lid\nremove shims and discard\nfit shims\nrefit lid\nfit screw',
  'remove pins\nremove clamp\nrefit clamp\nfit pins\nsecure pins',
  'remove pins and discard\nremove clamp and discard\nrefit clamp\nfit pins\nsecure pins',
  'remove pins #1\nfit pins #1\nsecure pins #1',
  'remove pins #1 and discard\nfit new pins #1',
  'disconnect pipe\nconnect pipe',
  'remove studs\nremove cap\ndisconnect pipe\nconnect pipe\nrefit cap\nfit studs',
  'remove nut\nfit nut',
  'remove nut\nremove caps\nfit nut',
  'remove nut\nremove caps #1\nrefit caps #1\ntighten nut',
  'remove studs\ntighten studs',
  'loosen bolts\nremove bolts\nremove cover\ntighten bolts',
  'remove bolts #1\nfit bolts #1 by hand\ntighten bolts #1 stage 2\ntighten bolts #1 stage 4',
  'loosen bolts\ntighten bolts stage 1\ntighten bolts stage 3\ntighten bolts stage 4',
  'loosen bolts\ntighten bolts stage 4',
  'loosen bolts\ntighten bolts stage 1\ntighten bolts stage 2\ntighten bolts stage 2\ntighten bolts stage 3\ntighten bolts stage 4\ntighten bolts stage 4',
  'loosen bolts\ntighten bolts stage 1\ntighten bolts stage 2\ntighten bolts stage 1',
  'loosen screw\ntighten screw stage 1\ntighten screw stage 2\ntighten screw stage 1',
  'loosen screw\ntighten screw stage 2',
  'loosen screw\ntighten screw stage 3',
  'loosen bolts\ntighten bolts stage 9',
  'loosen bolts\ntighten bolts in order #1, #2, #3',
  'loosen bolts\ntighten bolts in order #1, #2, #3, #4, #5',
  'loosen bolts\ntighten bolts in order #1, #2, #3, #4, #5, #6, #6',
  'loosen bolts\ntighten bolts in order #1, #1, #2, #2, #3, #4',
  'loosen bolts #1, #2\ntighten bolts #1, #2 in order #1, #2, #3',
  'loosen bolts #1, #2\ntighten bolts #1, #2 in order #3, #4',
  'loosen bolts\ntighten bolts stage 2 to 30 N·m',
  'loosen bolts\ntighten bolts to 50 N·m',
  'loosen bolts\ntighten bolts to 40 lbf·ft',
  'loosen bolts\ntighten bolts "Go to 40 lbf·ft (40 N·m)."',
  'loosen nails\ntighten nails',
  'loosen nails #1\ntighten nails to 20 N·m until "they bind"',
  'loosen screw\ntighten screw to 20 N·m until "it binds"',
  'loosen nails\nremove nails x3\nfit nails x3',
  'loosen bolts x5\ntighten bolts x5',
  'remove pins x1\nfit new pins x1\nsecure pins',
]);

const TORQUES = inMachine(BENCH, [
  'fastener long "long bolts" x4  clamps cover to bed  plan { 60°; 90° }',
  'fastener long "long bolt" x1  clamps cover to bed  plan { 30 N·m; 450° }',
  'fastener long "long bolts" x4  clamps cover to bed  plan { 30 N·m; 455° }',
  'fastener long "long bolts" x4  clamps cover to bed  plan { 30 N·m; 20 N·m }',
  'fastener long "long bolts" x4  clamps cover to bed  plan { 2 N·m; 200 N·m }',
  'fastener long "long bolts" x4  clamps cover to bed  torque 80 lbf·ft (80 N·m)',
  'fastener long "long bolts" x4  clamps cover to bed  torque 80 N·m  plan { 30 N·m; 100 N·m }',
  'fastener long "long bolts" x4  clamps cover to bed  torque at least 80 N·m',
  'fastener long "long bolts" x4  clamps cover to bed  torque 80 N·m  not over 70 N·m',
  'fastener long "long bolts" x4  clamps cover to bed  thread M8x1.25 class 8.8  torque 200 N·m',
  'fastener long "long bolt" x1  clamps cover to bed  thread M8x1.25 class 8.8  nut factor 0.15  torque 60 N·m',
  'fastener long "long bolts" x4  clamps cover to bed  thread M8x1.25 class 8.8  torque 45 N·m',
  'fastener long "long bolts" x4  clamps cover to bed  thread M8x1.25 class 8.8  torque 2 N·m',
  'fastener long "long bolts" x4  clamps cover to bed  thread M8x1.25 class 8.8  plan { 1 N·m; 60° }',
  'fastener long "long bolts" x4  clamps cover to bed  thread M8x1.25 class 8.8  plan { 28 N·m; 60° }',
  'fastener long "long bolts" x8  clamps cover to bed  layout circle  order #1, #2, #3, #4, #5, #6, #7, #8',
  'fastener long "long bolts" x6  clamps cover to bed  layout circle  order #1, #4, #5, #2, #3, #6',
  'fastener long "long bolts" x4  clamps cover to bed  layout circle  order #1, #2, #4, #3',
  'fastener long "long bolts" x8  clamps cover to bed  layout circle  order #1, #5, #2, #6, #3, #7, #4, #8',
  'fastener long "long bolts" x6  clamps cover to bed  layout 2 rows of 3 #1 "at the top left"  order #1, #2, #3, #4, #5, #6',
  'fastener long "long bolts" x4  clamps cover to bed  order #1, #2, #3, #5',
  'fastener long "long bolts" x4  clamps cover to bed  order #1, #2, #5, #6',
  'fastener long "long bolts" x4  clamps cover to bed  order #1, #1, #2, #3',
  'fastener long "long bolts" x4  positions a, b, c  clamps cover to bed',
  'fastener long "long bolts" x1  positions a, b  clamps cover to bed',
  'fastener long "long bolts" x6  clamps cover to bed  layout 2 rows of 4',
  'fastener long "long bolt" x1  clamps cover to bed  layout 2 rows of 4',
  'part pair "pair" x2 on bed  held by few 3 each\n  fastener few "few bolts" x4',
  'part pair "pair" x1 on bed  held by few 3 each\n  fastener few "few bolts" x4',
  'part pair "pair" x2 on bed  held by one 3 each\n  fastener one "one bolt" x1',
  'fastener lone "lone bolt"',
  'fastener lone "lone bolts" x3',
  'seal lone "lone seal"',
  'seal lone "lone seals" x3',
  'connection lone "lone hose"',
  'connection lone "lone hoses" x3',
]);

/** Orders that a step writes against what is declared. */
const ORDERS = inMachine(
  BENCH,
  [
    'fastener long "long bolts" x4  clamps hub to bed  layout circle  order across',
    'fastener long "long bolts" x4  clamps hub to bed  layout circle  order #1, #3, #2, #4',
    'fastener long "long bolts" x4  clamps hub to bed  layout circle',
    'fastener long "long bolts" x4  clamps hub to bed  layout 1 rows of 4 #1 "at the left"  order from the middle',
  ],
  'loosen long\ntighten long in order #1, #2, #3, #4',
);

const ONE_STAGE = inMachine(
  BENCH,
  ['fastener long "long bolts" x4  clamps hub to bed  plan { 20 N·m }'],
  'loosen long\ntighten long stage 2',
);

const IN_TURN = inMachine(
  BENCH,
  [
    'fastener long "long bolts" x4  clamps hub to bed  layout circle  order across',
    'fastener long "long bolts" x4  clamps hub to bed  secured by',
    'fastener long "long bolts" x4  clamps hub to bed  secured by lock-tab, second-nut',
  ],
  'loosen long\ntighten long in order in turn',
);

/** Tools of which the machine of the others knows nothing. */
const TOOLED: Bench = {
  subject: 'tools of fastening',
  machine: `machine m "M" {
  part bed "bed" fixed
  part cover "cover" on bed  held by bolts
  part lid "lid" on bed  held by screw
  part cap "cap" on bed  held by studs
  part hub "hub" on bed  held by nuts
  fastener bolts "bolts" x4  torque 80 N·m
  fastener screw "screw" x1  torque 80 N·m
  fastener studs "studs" x2  plan { 20 N·m; 60° }
  fastener nuts "nuts" x2  thread M8x1.25 class 8.8
  tool small "small wrench" range 5..50 N·m
  tool smaller "smaller torque wrench" range 1..20 N·m
  tool large "large torque wrench" range 100..500 N·m
  tool preset "preset torque wrenches" range 50 N·m
  tool fixed-wrench "fixed torque wrench" range 40 N·m
  tool huge "huge torque wrench" range 50..500 N·m
  tool long-wrench "long torque wrench" range 20..200 N·m  length 500 mm
  tool foot "crow-foot"  adapter  length 50 mm
  tool foots "offset adapters" x2  adapter
}
`,
};

const WITH_TOOLS = inSteps(
  {
    ...TOOLED,
    procedure:
      'procedure p "Work" for m tools small, smaller, large, preset, fixed-wrench, huge, long-wrench, foot, foots {',
  },
  [
    'loosen bolts\ntighten bolts with small',
    'loosen screw\ntighten screw with small, smaller',
    'loosen bolts\ntighten bolts with large',
    'loosen screw\ntighten screw with small, large',
    'loosen bolts\ntighten bolts with preset',
    'loosen bolts\ntighten bolts with fixed-wrench',
    'loosen bolts\ntighten bolts with fixed-wrench, preset',
    'loosen bolts\ntighten bolts with huge',
    'loosen screw\ntighten screw with huge',
    'loosen bolts\ntighten bolts with long-wrench, foot',
    'loosen screw\ntighten screw with long-wrench, foots',
    'loosen screw\ntighten screw with long-wrench, foot "Set the wrench to 80 N·m."',
    'loosen studs\ntighten studs with long-wrench',
    'loosen studs #1\ntighten studs #1 with long-wrench',
    'loosen nuts\ntighten nuts with large',
    'loosen nuts\ntighten nuts "Tighten them securely."',
    'loosen nuts #1\ntighten nuts #1 "Tighten to the correct torque."',
  ],
);

const LISTED = inHeaders(TOOLED, [
  'procedure p "Work" for m tools small, large {\nloosen bolts\ntighten bolts\n}',
  'procedure p "Work" for m tools small {\nloosen screw\ntighten screw\nloosen studs\ntighten studs\n}',
]);

export const FASTENING_SLIPS: readonly Slip[] = [
  ...STEPS,
  ...TORQUES,
  ...ORDERS,
  ...ONE_STAGE,
  ...IN_TURN,
  ...WITH_TOOLS,
  ...LISTED,
];
