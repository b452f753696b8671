/** Slips with fluids, compounds, lubricants, faces and amounts. */
import { type Bench, inMachine, inSteps, type Slip } from './slip.ts';

const BENCH: Bench = {
  subject: 'fluids',
  machine: `machine m "M" {
  part bed "bed" fixed
  part cover "cover" on bed  held by bolts  sealed by gasket  opens oil
  part covers "side covers" on bed  held by studs
  face joint "joint face" under cover  coated with sealant
  face joints "side faces" x2 under covers  coated with sealant, primer  lubricated with grease
  seal gasket "gasket" on bed
  seal rings "rings" x2 on bed  coated with sealant  lubricated with grease
  part drum "drum" on bed  sealed by rings
  fastener bolts "bolts" x4  coated with lock-paste
  fastener studs "studs" x2  lubricated with grease, oil-spray
  part pin "pin" on bed  lubricated with grease
  part bush "bush" on bed  coated with sealant
  consumable sealant "flange sealant" curing time 2 h
  consumable primer "primer"
  consumable lock-paste "thread lock"
  consumable grease "grease"
  consumable oil-spray "oil spray"
  consumable glue "glue"
  fluid gear-oil "gear oil"
  fluid brake-oil "brake fluid"
  system oil "gear oil bath" holds 3 L gear-oil  drained at plug  filled at plug
  part plug "plug" on bed
  system brakes "brakes" holds 1 L brake-oil  needs bleeding  bled at nipples
  control nipples "nipples" x2 normally closed
  connection line "brake line" joins bed to drum  opens brakes
  system circuit "cooling circuit" holds 2 kg brake-oil  pressure 3 bar
  system circuits "cooling circuits" holds 2 kg brake-oil
  part port "port" on bed  opens circuits
  tool pump "vacuum pump"
}
`,
};

const STEPS = inSteps(BENCH, [
  'remove bolts\nremove cover\nrefit cover\nfit bolts with lock-paste',
  'remove bolts\nremove cover\nclean joint\nrefit cover\nfit bolts with lock-paste',
  'remove bolts\nremove cover\nclean joint\ncoat joint with sealant\nrefit cover\nfit bolts',
  'remove bolts\nremove cover\nclean joint\ncoat joint with glue\nrefit cover\nfit bolts with lock-paste',
  'remove studs\nremove covers\nrefit covers\nfit studs with grease',
  'remove studs\nremove covers\nclean joints\nrefit covers\nfit studs',
  'remove studs #1\nfit studs #1',
  'remove bolts #1\nfit bolts #1',
  'remove studs\nremove covers\nclean joints #1\ncoat joints with sealant\nlubricate joints with grease\nrefit covers\nfit studs with oil-spray',
  'remove drum\nremove rings\nrefit rings\nrefit drum',
  'remove drum\nremove rings #1\nrefit rings #1\nrefit drum',
  'remove pin\nrefit pin',
  'remove bush\nrefit bush',
  'coat pin with glue',
  'lubricate studs with gear-oil',
  'lubricate rings with glue',
  'coat joints with glue',
  'drain oil\nfill oil with 3 L brake-oil',
  'drain brakes\nfill brakes with 1 L gear-oil\nbleed brakes',
  'drain oil\nfill oil with 5 L gear-oil',
  'drain oil\nfill oil with 2 L gear-oil "Fill in 4 L."',
  'top up brakes with 2 L brake-oil',
  'drain brakes\nfill brakes with 1 L brake-oil',
  'disconnect line\nconnect line',
  'remove port\nrefit port',
  'evacuate circuit to 500 micron',
  'evacuate circuits to 500 micron',
  'recover circuit\nevacuate circuit to at least 500 micron\nfill circuit with 2 kg brake-oil',
  'recover circuit\nevacuate circuit "To 500 micron or more."\nfill circuit with 2 kg brake-oil',
  'recover circuit\nevacuate circuit not under 500 micron\nfill circuit with 2 kg brake-oil',
  'recover circuit\nevacuate circuit to 500 ± 1 micron\nevacuate circuit to 500 ± 100 micron\nfill circuit with 2 kg brake-oil',
  'adjust pin to 10 ± 5 mm\nadjust pin to 10 ± 0.1 mm',
  'drain oil\nremove bolts\nremove cover\nclean joint\ncoat joint with sealant\nrefit cover\nfit bolts with lock-paste\nfill oil',
  'drain oil\nremove bolts\nremove cover\nclean joint\ncoat joint with sealant\nrefit cover\nfit bolts with lock-paste\nwait 30 s\ntop up oil',
  'remove bolts\nremove cover\nrefit cover\nfit bolts with lock-paste\ntop up oil',
]);

const SEVERAL = inMachine(
  BENCH,
  [
    'system tanks "tanks" holds 1 L gear-oil, 2 L brake-oil',
    'system tanks "tanks" holds 1 L gear-oil, brake-oil',
    'part lids "lids" on bed  opens tanks\n  face edge "edge" under lids  coated with sealant\n  system tanks "tanks" holds 1 L gear-oil',
  ],
  'drain tanks\nremove lids\nclean edge\ncoat edge with sealant\nrefit lids\nfill tanks with 9 L gear-oil',
);

export const FLUID_SLIPS: readonly Slip[] = [...STEPS, ...SEVERAL];
