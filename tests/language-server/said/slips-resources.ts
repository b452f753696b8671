/** Slips in what a job says that it needs, in its quantities and in its sentences. */
const MACHINE = `machine m "M" {
  part bed "bed" fixed
  part cover "cover" on bed  mass 4 kg
  part pads "pads" x4 on bed
  part flap "flap" on bed
  seal o-rings "O-rings" x2 on bed
  face seam "seam" on bed
  system bath "bath" holds 2 L oil
  fluid oil "oil"
  fluid greases "greases"
  fluid thinner "thinner"
  consumable wipes "wipes"
  consumable jointing "jointing"
  tool saw "saw"
  tool drifts "drifts" x2
  tool pliers "pliers"
  tool lift "lift"
}
`;

/** Headers and steps. */
const JOBS: readonly (readonly [headers: string, steps: string])[] = [
  ['tools saw', 'clean bed'],
  ['tools drifts', 'clean bed'],
  ['tools pliers', 'clean bed'],
  ['tools saw', 'clean bed with drifts, saw'],
  ['tools saw', 'clean bed with pliers\nclean cover with saw'],
  ['tools saw', 'clean bed with saw\nclean cover with lift'],
  ['supplies cover', 'remove pads and discard\nfit new pads\nremove cover and discard\nfit new cover'],
  ['supplies pads x1', 'remove pads and discard\nfit new pads'],
  ['supplies pads x2', 'remove pads and discard\nfit new pads'],
  ['supplies pads x4', 'remove pads and discard\nfit new pads'],
  ['supplies o-rings x1', 'remove o-rings and discard\nfit new o-rings'],
  ['supplies pads', 'remove flap and discard\nfit new flap'],
  ['supplies pads #1', 'remove pads #1, #2 and discard\nfit new pads #1, #2'],
  ['supplies jointing', 'clean seam with wipes\ncoat seam with jointing'],
  ['supplies wipes', 'clean seam with wipes\nclean bed with thinner'],
  ['supplies wipes', 'clean seam with wipes\nlubricate seam with greases'],
  ['supplies 1 L oil', 'drain bath\nfill bath with 2 L oil'],
  ['supplies 1 L oil', 'drain bath\nfill bath with 1 L oil\ntop up bath with 1 L oil'],
  ['supplies 3 L oil', 'drain bath\nfill bath with 2 L oil'],
  ['people 1', 'remove cover with 2 people\nrefit cover with 3 people'],
  ['people 2', 'remove cover with 2 people\nrefit cover'],
  ['time 20 min', 'clean bed\nwait 15 min\nwait 10 min'],
  ['time 20 min', 'clean bed\nwait 20 min'],
  ['', 'measure gap of bed {\nup to 1 mm { clean bed }\nover 1 kg { stop "Send for help." }\n}'],
];

/** What stands behind a part of the machine. */
const QUANTITIES: readonly string[] = [
  'tool a "a" range 60..5 N·m',
  'tool a "a" range 6..5 lbf·ft',
  'part a "a" on bed  mass 5',
  'part a "a" on bed  mass 5,5 kg',
  'part a "a" on bed  mass 5 N',
  'part a "a" on bed  mass 5 lbf',
  'part a "a" on bed  mass 5 min',
  'part a "a" on bed  mass 3 tons',
  'system a "a" holds 2 gallons oil',
  'system a "a" holds 2 kg oil',
  'system a "a" temperature 80 %',
  'system a "a" temperature 80 °C ± 2 °C',
  'system a "a" temperature 80 °C ± 5 %',
  'system a "a" temperature 80 °C ± 2 mm',
  'system a "a" pressure 12..15 psi (103..138 kPa)',
  'system a "a" pressure 12 psi (83 kPa)',
  'system a "a" pressure 12 psi (83 N)',
  'system a "a" pressure 5 bar ± 3 mm',
  'system a "a" pressure 5 ± -3 bar',
  'fastener a "a" x1  torque 30 lbf·ft ± 3 lb',
  'fastener a "a" x1  torque 80 lbf·ft (90 N·m)',
  'fastener a "a" x1  torque 80 lbf·ft (108 N)',
  'fastener a "a" x1  plan { 10 N; 20 N·m }',
  'value a = at least 5..10 N·m',
  'value a = 5 ft 2 kg',
  'table a "a" { x 1 mm: y 2 mm }',
];

const SENTENCES: readonly string[] = [
  'clean bed "It is to be wiped, etc."',
  'clean bed "Wipe it, e.g. with a rag, i.e. softly."',
  'clean bed "Wipe it; dry it."',
  'clean bed "Wipe it properly and leave it as required."',
  'clean bed "Wipe it sufficiently, if necessary."',
  'clean bed "Leave a gap of about 5 mm, approximately 3 bar."',
  'clean bed "The bed should be wiped."',
  'clean bed "The bed must be clean."',
  'clean bed "Wipe the bed and lift the cover."',
  'clean bed "Wipe the bed, then remove the cover and put it on the bench."',
  'clean bed "Wipe. Dry. Wipe. Dry. Wipe. Dry. Wipe."',
  'clean bed "Wipe the bed with a clean and dry rag that has no fluff and no oil on it from one end to the other end of it and back again."',
  'note "The bed of this machine is a part which has been made in one piece with the frame and all of the feet on which it stands, so that it cannot ever be taken off."\nclean bed',
  'clean bed "Mind the circlip."\nclean cover "Mind the snap ring."',
  'clean bed "Mind the circlip."\nclean cover "Mind the circlip."',
  'clean bed "Set it to about 40 mm."',
  'clean bed "Press it home securely."',
  'clean bed "Wipe it with suitable care."',
  'clean bed "Wipe it regularly."',
];

export const RESOURCE_SLIPS: readonly { name: string; text: string }[] = [
  ...JOBS.map(([headers, steps]) => ({
    name: `needs ${JSON.stringify(headers)} ${JSON.stringify(steps)}`,
    text: `${MACHINE}procedure p "Work" for m ${headers} {\n${steps}\n}\n`,
  })),
  ...QUANTITIES.map((line) => ({
    name: `quantity ${JSON.stringify(line)}`,
    text: `${MACHINE.replace(/}\n$/, '')}  ${line}\n}\n`,
  })),
  ...SENTENCES.map((steps) => ({
    name: `sentence ${JSON.stringify(steps)}`,
    text: `${MACHINE}procedure p "Work" for m {\n${steps}\n}\n`,
  })),
];
