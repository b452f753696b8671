/**
 * For each row of the chapter on states (grammar/STATE.md) a small job that breaks it and its right twin. Source of
 * what is right and wrong: that chapter and the tables in the language reference; the trade practice behind them is
 * common practice, no source, unless a row names one.
 */

const MACHINE = `
machine rig "Rig" {
  variant supply: one-phase, three-phase

  system oil
    holds 2 L  pressure 5 bar  temperature 80 °C
    relieved at relief-cock  drained at sump-plug and side-plug  filled at filler  bled at bleeder
    proved with gauge  needs bleeding
  system mains  live 400 V  isolated at breaker  proved with tester
  system charge  isolated at lead
  system water  holds 5 L  drained at tap
  isolator breaker in mains normally on
  control relief-cock in oil
  control bleeder in oil
  control tap in water
  control valve in oil
  connection lead joins motor to frame

  part frame fixed
  part filler on frame
  part guard on frame held by guard-screws only supply is three-phase
  part box on frame under guard

  part base on frame held by base-bolts
  part lid on base held by lid-screws sealed by gasket
  part gear on base under lid
  part key on gear under lid
  seal gasket on base single-use
  face rim under gasket
  part bridge on base, frame

  part pump on frame held by pump-bolts joined by hose opens oil
  part pulley on pump
  part rotor on pump held by rotor-nut
  part impeller on pump
  part chip part of pump on pump
  connection hose joins pump to frame opens oil
  connection lead-wire joins motor to frame opens mains
  connection tether joins arm to frame slack
  part arm on frame held by arm-bolts
  part motor on frame held by motor-bolts mass 30 kg
  part mount on frame carries motor held by mount-bolt
  part cap on frame matched held by cap-bolts
  part liner on frame single-use
  part shim added on frame
  part belt on wheel
  part wheel on shaft
  part shaft on frame
  coupled shaft, wheel while belt fitted
  tool strap locks wheel
  tool stand
  tool jumper
  part plate on frame sealed by ring
  seal ring on frame single-use
  kit rings contains gasket, liner

  fastener guard-screws x2
  fastener base-bolts x4
  fastener lid-screws x4
  fastener pump-bolts x3 clamps pump to frame
  fastener rotor-nut
  fastener arm-bolts x2
  fastener motor-bolts x4
  fastener mount-bolt
  fastener cap-bolts x2
  fastener head-bolts x2 plan { 20 N·m; 40 N·m; 60° } to yield
  fastener rod-bolts x2 plan { 20 N·m; 40 N·m; loosen; 20 N·m; 40 N·m }
  fastener hub-nut plan { until "it binds" while turning shaft; back off 1/6 turn } secured by pin
  fastener set-screw secured by wire
  fastener one-time single-use
  fastener plain-nut
  fastener sump-plug sealed by washer
  fastener side-plug
  seal washer single-use
  part clamped-hose on frame held by clamp
  fastener clamp frees when loose
  part studded on frame held by studs, stud-nuts
  fastener studs x2 stay
  fastener stud-nuts x2
}
`;

/** The text of a job with these steps, with its machine. */
export function jobText(steps: string, headers = ''): string {
  return `${MACHINE}\nprocedure job for rig ${headers} {\n${steps}\n}\n`;
}

/** Makes the oil system safe to open, and puts it right again. */
const SAFE = 'open relief-cock\nprove oil safe\nlet cool oil';
const DONE = 'close relief-cock\ntop up oil\nbleed oil';
const LID = 'remove lid-screws\nremove lid\nremove gasket and discard';
const LID_BACK = 'clean rim\nfit new gasket\nrefit lid\nfit lid-screws';
const PUMP = `${SAFE}\ndisconnect hose\nremove pump-bolts`;
const PUMP_BACK = `fit pump-bolts\nconnect hose\n${DONE}`;

export interface Row {
  finds: string;
  bad: string;
  good: string;
  headers?: string;
}

export const ROWS: Record<string, Row[]> = {
  'common needs': [
    { finds: 'covered', bad: 'clean gear', good: `${LID}\nclean gear\n${LID_BACK}` },
    {
      finds: 'covered',
      bad: `${LID}\nremove gear\n${LID_BACK}\nrefit gear`,
      good: `${LID}\nremove gear\nrefit gear\n${LID_BACK}`,
    },
    {
      finds: 'done-twice',
      bad: 'open tap\nopen tap\nclose tap\nfill water',
      good: 'open tap\nclose tap\nfill water',
    },
    { finds: 'refitted-before-removed', bad: 'refit filler', good: 'remove filler\nrefit filler' },
    {
      finds: 'refitted-before-removed',
      bad: 'tighten plain-nut',
      good: 'loosen plain-nut\ntighten plain-nut',
    },
    {
      finds: 'done-twice',
      headers: 'starts with filler off',
      bad: 'remove filler\nrefit filler',
      good: 'refit filler',
    },
    {
      finds: 'not-in-place',
      bad: 'remove liner and discard\nclean liner\nfit new liner',
      good: 'clean liner',
    },
  ],
  'opening a system': [
    {
      finds: 'not-made-safe',
      bad: `disconnect hose\nconnect hose\n${DONE.replace('close relief-cock\n', '')}`,
      good: `${SAFE}\ndisconnect hose\nconnect hose\n${DONE}`,
    },
    {
      finds: 'not-proved-safe',
      bad: `isolate mains\ndisconnect lead-wire\nconnect lead-wire\nrestore mains`,
      good: `isolate mains\nprove mains safe\ndisconnect lead-wire\nconnect lead-wire\nrestore mains`,
    },
    {
      finds: 'opened-full',
      bad: `${SAFE}\ndisconnect hose\nconnect hose\nclose relief-cock`,
      good: `${SAFE}\ndisconnect hose\nconnect hose\n${DONE}`,
    },
    {
      finds: 'not-bled',
      bad: `${SAFE}\ndisconnect hose\nconnect hose\nclose relief-cock\ntop up oil`,
      good: `${SAFE}\ndisconnect hose\nconnect hose\nclose relief-cock\nbleed oil`,
    },
    {
      finds: 'left-drained',
      bad: 'remove sump-plug\nremove side-plug\nremove washer and discard\nfit new washer\nfit side-plug, sump-plug\nbleed oil',
      good: 'remove sump-plug\nremove side-plug\nremove washer and discard\nfit new washer\nfit side-plug, sump-plug\nfill oil\nbleed oil',
    },
    {
      finds: 'restored-out-of-order',
      bad: 'open tap\nfill water\nclose tap',
      good: 'open tap\nclose tap\nfill water',
    },
  ],
  remove: [
    {
      finds: 'still-held',
      bad: 'disconnect tether\nremove arm\nrefit arm\nconnect tether',
      good: 'disconnect tether\nunbolt arm\nbolt up arm\nconnect tether',
    },
    {
      finds: 'still-held',
      bad: 'remove studded\nrefit studded',
      good: 'remove stud-nuts\nremove studded\nrefit studded\nfit stud-nuts',
    },
    {
      finds: 'still-held',
      bad: 'remove clamped-hose\nrefit clamped-hose',
      good: 'loosen clamp\nremove clamped-hose\nrefit clamped-hose\ntighten clamp',
    },
    {
      finds: 'still-connected',
      bad: `${SAFE}\nremove pump-bolts\nremove pump\nrefit pump\nfit pump-bolts\n${DONE}`,
      good: `${PUMP}\nremove pump\nrefit pump\n${PUMP_BACK}`,
    },
    {
      finds: 'not-supported',
      bad: 'unbolt mount\nbolt up mount',
      good: 'support motor with stand\nunbolt mount\nbolt up mount\nlower motor',
    },
    {
      finds: 'not-marked',
      bad: 'unbolt cap\nbolt up cap',
      good: 'mark cap\nunbolt cap\nbolt up cap',
    },
    {
      finds: 'covered',
      bad: 'unbolt base\nbolt up base',
      good: 'remove bridge\nunbolt base\nbolt up base\nrefit bridge',
    },
    {
      finds: 'thrown-away-with',
      bad: `${PUMP}\nremove pulley, impeller\nremove pump and discard\nfit new pump\nrefit pulley, impeller\n${PUMP_BACK}`,
      good: `${PUMP}\nremove pulley, impeller\nremove rotor-nut\nremove rotor\nremove pump and discard\nfit new pump\nrefit pulley, impeller, rotor\nfit rotor-nut\n${PUMP_BACK}`,
    },
  ],
  'moving aside': [
    {
      finds: 'still-held',
      bad: 'move aside arm\nmove back arm',
      good: 'loosen arm-bolts\nmove aside arm\nmove back arm\ntighten arm-bolts',
    },
    {
      finds: 'still-connected',
      bad: `${SAFE}\nloosen pump-bolts\nmove aside pump\nmove back pump\ntighten pump-bolts\n${DONE}`,
      good: `${SAFE}\nloosen pump-bolts\ndisconnect hose\nmove aside pump\nmove back pump\ntighten pump-bolts\nconnect hose\n${DONE}`,
    },
    {
      finds: 'tightened-unseated',
      bad: 'remove arm-bolts\nmove aside arm\nfit arm-bolts\nmove back arm',
      good: 'remove arm-bolts\nmove aside arm\nmove back arm\nfit arm-bolts',
    },
    {
      finds: 'single-use-reused',
      bad: 'move aside plate\nmove back plate',
      good: 'remove plate\nremove ring and discard\nfit new ring\nrefit plate',
    },
  ],
  'fitting parts': [
    {
      finds: 'discarded-reused',
      bad: 'remove filler and discard\nrefit filler',
      good: 'remove filler and discard\nfit new filler',
    },
    {
      finds: 'single-use-reused',
      bad: 'remove liner\nrefit liner',
      good: 'remove liner and discard\nfit new liner',
    },
    { finds: 'left-off', bad: 'fit shim\nremove shim', good: 'fit shim' },
    {
      finds: 'seat-missing',
      bad: `${LID}\nremove key\nremove gear and discard\nrefit key\nfit new gear\n${LID_BACK}`,
      good: `${LID}\nremove key\nremove gear and discard\nfit new gear\nrefit key\n${LID_BACK}`,
    },
    {
      finds: 'seat-missing',
      bad: 'remove bridge\nunbolt base\nrefit bridge\nbolt up base',
      good: 'remove bridge\nunbolt base\nbolt up base\nrefit bridge',
    },
    {
      finds: 'seat-missing',
      bad: 'remove belt\nremove wheel\nrefit belt',
      good: 'remove belt\nremove wheel\nrefit belt\nrefit wheel',
    },
    {
      finds: 'seal-missing',
      bad: 'remove lid-screws\nremove lid\nremove gasket and discard\nclean rim\nrefit lid\nfit lid-screws',
      good: `${LID}\n${LID_BACK}`,
    },
    {
      finds: 'single-use-reused',
      bad: 'remove plate\nrefit plate',
      good: 'remove plate\nremove ring and discard\nfit new ring\nrefit plate',
    },
    {
      finds: 'face-not-cleaned',
      bad: `${LID}\nfit new gasket\nrefit lid\nfit lid-screws`,
      good: `${LID}\n${LID_BACK}`,
    },
    {
      finds: 'thrown-away-with',
      bad: `${PUMP}\nremove pump\nfit new pump\n${PUMP_BACK}`,
      good: `${PUMP}\nremove pump\nmove pulley to new pump\nmove impeller to new pump\nmove rotor to new pump\ndiscard pump\nfit new pump\n${PUMP_BACK}`,
    },
    {
      finds: 'trial-not-undone',
      bad: 'remove wheel\ntrial fit wheel\nrefit wheel',
      good: 'remove wheel\ntrial fit wheel\nremove wheel\nrefit wheel',
    },
    {
      finds: 'tightened-unseated',
      bad: 'mark cap\nunbolt cap\nfit cap-bolts\nrefit cap',
      good: 'mark cap\nunbolt cap\nrefit cap\nfit cap-bolts',
    },
    {
      finds: 'single-use-reused',
      bad: 'remove lid-screws\nremove lid\nremove gasket, liner and discard\nclean rim\nfit new gasket\nfit liner\nrefit lid\nfit lid-screws',
      good: 'remove lid-screws\nremove lid\nremove gasket, liner and discard\nclean rim\nfit kit rings\nrefit lid\nfit lid-screws',
    },
  ],
  fasteners: [
    {
      finds: 'single-use-reused',
      bad: 'remove one-time\nrefit one-time',
      good: 'remove one-time\nfit new one-time',
    },
    {
      finds: 'discarded-reused',
      bad: 'remove plain-nut and discard\nfit plain-nut',
      good: 'remove plain-nut and discard\nfit new plain-nut',
    },
    {
      finds: 'not-in-place',
      bad: 'remove plain-nut\nloosen plain-nut\ntighten plain-nut',
      good: 'loosen plain-nut\nremove plain-nut\nfit plain-nut',
    },
    {
      finds: 'tightened-unseated',
      bad: 'remove plain-nut\ntighten plain-nut',
      good: 'remove plain-nut\nfit plain-nut by hand\ntighten plain-nut',
    },
    {
      finds: 'left-loose',
      bad: 'remove plain-nut\nfit plain-nut by hand',
      good: 'remove plain-nut\nfit plain-nut',
    },
    {
      finds: 'left-loose',
      bad: 'loosen plain-nut\ntighten plain-nut pass 50 %',
      good: 'loosen plain-nut\ntighten plain-nut pass 50 %\ntighten plain-nut pass 100 %',
    },
    {
      finds: 'retightened-yield',
      bad: 'remove head-bolts\nfit new head-bolts\ntighten head-bolts',
      good: 'remove head-bolts\nfit new head-bolts by hand\ntighten head-bolts',
    },
    {
      finds: 'retightened-yield',
      bad: 'loosen head-bolts\ntighten head-bolts',
      good: 'loosen plain-nut\ntighten plain-nut\ntighten plain-nut',
    },
    {
      finds: 'stage-skipped',
      bad: 'loosen rod-bolts\ntighten rod-bolts to stage 2\nloosen rod-bolts\ntighten rod-bolts to stage 4\ntighten rod-bolts to stage 5',
      good: 'loosen rod-bolts\ntighten rod-bolts to stage 1\ntighten rod-bolts to stage 2\nloosen rod-bolts\ntighten rod-bolts to stage 4\ntighten rod-bolts to stage 5',
    },
    {
      finds: 'stage-repeated',
      bad: 'remove head-bolts\nfit new head-bolts by hand\ntighten head-bolts to stage 1\ntighten head-bolts to stage 1\ntighten head-bolts to stage 2\ntighten head-bolts to stage 3',
      good: 'remove head-bolts\nfit new head-bolts by hand\ntighten head-bolts to stage 1\ntighten head-bolts to stage 2\ntighten head-bolts to stage 3',
    },
    {
      finds: 'stage-out-of-order',
      bad: 'remove head-bolts\nfit new head-bolts by hand\ntighten head-bolts to stage 1\ntighten head-bolts to stage 2\ntighten head-bolts to stage 1\ntighten head-bolts',
      good: 'remove head-bolts\nfit new head-bolts by hand\ntighten head-bolts to stage 1\ntighten head-bolts to stage 2\ntighten head-bolts',
    },
    {
      finds: 'not-secured',
      bad: 'loosen set-screw\ntighten set-screw',
      good: 'loosen set-screw\ntighten set-screw\nsecure set-screw',
    },
    {
      finds: 'left-loose',
      bad: 'back off plain-nut 1/6 turn',
      good: 'loosen hub-nut\ntighten hub-nut until "it binds"\nback off hub-nut 1/6 turn\nsecure hub-nut',
    },
    {
      finds: 'not-in-place',
      bad: 'remove plain-nut\ncheck plain-nut at 20 N·m { tight { } moves { } }\nfit plain-nut',
      good: 'check plain-nut at 20 N·m { tight { } moves { } }',
    },
    {
      finds: 'still-held',
      bad: 'discard plain-nut\nremove plain-nut\nfit new plain-nut',
      good: 'remove plain-nut\ndiscard plain-nut\nfit new plain-nut',
    },
    {
      finds: 'single-use-reused',
      bad: 'remove sump-plug\nfit sump-plug',
      good: 'remove sump-plug\nremove washer and discard\nfit new washer\nfit sump-plug',
    },
  ],
  connections: [
    {
      finds: 'seat-missing',
      bad: `${PUMP}\nremove pump\nconnect hose\nrefit pump\nfit pump-bolts\n${DONE}`,
      good: `${PUMP}\nremove pump\nrefit pump\n${PUMP_BACK}`,
    },
    { finds: 'left-disconnected', bad: 'disconnect tether', good: 'disconnect tether\nconnect tether' },
    {
      finds: 'left-disconnected',
      bad: 'disconnect tether\ncap tether',
      good: 'disconnect tether\ncap tether\nconnect tether',
    },
  ],
  'controls and energy': [
    {
      finds: 'wrong-verb',
      bad: 'switch off breaker\nlock out breaker\nswitch on breaker',
      good: 'switch off breaker\nlock out breaker\nunlock breaker\nswitch on breaker',
    },
    {
      // Lock after shut-down and isolation, stored energy after that: 29 CFR 1910.147(d).
      finds: 'isolated-out-of-order',
      bad: 'lock out breaker\nunlock breaker',
      good: 'isolate mains\nlock out breaker\nunlock breaker\nrestore mains',
    },
    {
      // Locks off before energy comes back: 29 CFR 1910.147(e).
      finds: 'restored-out-of-order',
      bad: 'isolate mains\nlock out breaker\nrestore mains\nunlock breaker',
      good: 'isolate mains\nlock out breaker\nunlock breaker\nrestore mains',
    },
    {
      finds: 'not-made-safe',
      bad: 'prove mains safe',
      good: 'isolate mains\nprove mains safe\nrestore mains',
    },
    {
      finds: 'done-twice',
      bad: 'isolate mains\nisolate mains\nrestore mains',
      good: 'isolate mains\nrestore mains',
    },
    {
      finds: 'left-isolated',
      bad: 'disconnect lead',
      good: 'disconnect lead\nconnect lead',
    },
    {
      finds: 'left-locked',
      headers: 'starts with mains isolated',
      bad: 'lock out breaker',
      good: 'lock out breaker\nunlock breaker',
    },
    { finds: 'left-open', bad: 'open bleeder', good: 'open bleeder\nclose bleeder' },
    { finds: 'left-open', bad: 'close valve', good: 'close valve\nopen valve' },
    { finds: 'opened-full', bad: 'evacuate water', good: 'drain water\nevacuate water\nfill water' },
    {
      finds: 'restored-out-of-order',
      bad: 'open relief-cock\npressurise oil to 5 bar\nclose relief-cock',
      good: 'open relief-cock\nclose relief-cock\npressurise oil to 5 bar',
    },
    {
      finds: 'restored-out-of-order',
      bad: 'drain water\nrun\nfill water',
      good: 'drain water\nfill water\nrun',
    },
    {
      finds: 'turned-while-locked',
      bad: 'fit strap\nrun\nremove strap',
      good: 'fit strap\nremove strap\nrun',
    },
  ],
  'loads, locks and tools': [
    { finds: 'done-twice', bad: 'lower motor', good: 'raise motor with stand\nlower motor' },
    {
      finds: 'left-supported',
      bad: 'support motor with stand',
      good: 'support motor with stand\nlower motor',
    },
    {
      finds: 'not-supported',
      bad: 'support motor with stand\nunbolt mount\nlower motor\nbolt up mount',
      good: 'support motor with stand\nunbolt mount\nbolt up mount\nlower motor',
    },
    {
      finds: 'turned-while-locked',
      bad: 'fit strap\nturn shaft\nremove strap',
      good: 'fit strap\nremove strap\nturn shaft',
    },
    {
      finds: 'turned-while-locked',
      bad: 'lock wheel with strap\nturn wheel\nunlock wheel',
      good: 'remove belt\nlock wheel with strap\nturn shaft\nunlock wheel\nrefit belt',
    },
    { finds: 'fixture-left-on', bad: 'fit strap', good: 'fit strap\nremove strap' },
    { finds: 'done-twice', bad: 'remove strap', good: 'fit strap\nremove strap' },
    {
      finds: 'bypass-left',
      bad: 'bypass valve with jumper',
      good: 'bypass valve with jumper\nremove jumper',
    },
  ],
  'measuring and moving': [
    {
      finds: 'not-in-place',
      bad: 'remove wheel\nmeasure gap between wheel and shaft { below 1 mm { } from 1 mm { } }\nrefit wheel',
      good: 'remove wheel\nrefit wheel\nmeasure gap between wheel and shaft { below 1 mm { } from 1 mm { } }',
    },
    { finds: 'not-in-place', bad: 'remove wheel\nalign wheel\nrefit wheel', good: 'align wheel' },
    {
      finds: 'chosen-not-fitted',
      bad: `${LID}\nchoose gear\n${LID_BACK}`,
      good: `${LID}\nchoose gear\nremove gear\nfit gear\n${LID_BACK}`,
    },
    {
      finds: 'chosen-not-fitted',
      bad: 'choose base-bolts\nloosen base-bolts #1\ntighten base-bolts #1',
      good: 'choose wheel',
    },
    {
      finds: 'chosen-not-fitted',
      bad: `repeat until "it runs true" { ${LID}\nchoose gear\n${LID_BACK} }`,
      good: `repeat until "it runs true" { ${LID}\nremove gear\nfit gear\n${LID_BACK}\nchoose gear }`,
    },
    {
      finds: 'not-in-place',
      bad: `${PUMP}\nremove impeller and discard\nmove impeller to new pump\n${PUMP_BACK}`,
      good: `${PUMP}\n${PUMP_BACK}`,
    },
  ],
  'cases and claims': [
    {
      finds: 'covered',
      bad: 'clean box',
      good: 'when supply is three-phase { unbolt guard }\nclean box\nwhen supply is three-phase { bolt up guard }',
    },
    {
      finds: 'left-off',
      bad: 'remove filler\nif "the thread is clean" { refit filler }',
      good: 'remove filler\nif "the thread is clean" { refit filler } otherwise { clean filler\nrefit filler }',
    },
    {
      finds: 'left-off',
      bad: 'remove filler\nmeasure wear of filler { below 1 mm { refit filler } from 1 mm { } }',
      good: 'remove filler\nmeasure wear of filler { below 1 mm { refit filler } from 1 mm { fit new filler } }',
    },
    { finds: 'left-off', bad: 'remove filler', good: 'remove filler\ncontinues' },
    { finds: 'contract-broken', headers: 'ends with filler off', bad: 'clean filler', good: 'remove filler' },
    {
      finds: 'left-off',
      headers: 'starts with all of wheel off',
      bad: 'refit wheel',
      good: 'refit wheel\nrefit belt',
    },
    {
      finds: 'left-aside',
      bad: 'loosen arm-bolts\nmove aside arm',
      good: 'loosen arm-bolts\nmove aside arm\nmove back arm\ntighten arm-bolts',
    },
  ],
};
