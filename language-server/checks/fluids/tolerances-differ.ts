import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const tolerancesDiffer: Check = {
  name: 'tolerances-differ',
  group: 'Fluids, faces, consumables',
  severity: 'information',
  title: 'A reading is asked for far more finely than another one of the same thing.',
  explanation: `
A gauge that is trusted to 25 microns in 2000 does not show 1 micron in 500. One of the two tolerances is a slip, and the
technician cannot know which: he chases a reading that nobody can hold, or takes one that is too coarse.

The checker compares what one procedure brings the same thing to (\`evacuate\`, \`pressurise\`, \`inflate\`, \`adjust\`),
in the same unit, and speaks up where one tolerance is more than ten times finer than another, as a share of its value.`,
  source:
    'US Army TM 10-8145-222-23, WP 0014: 500 +1/-0 microns, and 2000 ± 25 with the same set; the factor of ten is judgement, no source',
  bad: `
machine cooler "milk cooler" {
  part unit "cooling unit" fixed
  system gas "refrigerant circuit" holds 1.4 kg coolant
  fluid coolant "refrigerant"
}
procedure dry "Dry the circuit" for cooler {
  recover gas
  evacuate gas to 2000 ± 25 micron
  evacuate gas to 500 +1/-0 micron
                  ^^^^^^^^^^^^^^^^
  fill gas with 1.4 kg coolant
}
`,
  good: `
machine cooler "milk cooler" {
  part unit "cooling unit" fixed
  system gas "refrigerant circuit" holds 1.4 kg coolant
  fluid coolant "refrigerant"
}
procedure dry "Dry the circuit" for cooler {
  recover gas
  evacuate gas to 2000 ± 25 micron
  evacuate gas to 500 ± 10 micron
  fill gas with 1.4 kg coolant
}
`,
  says: ({ words = {}, ...fact }) => ({
    message: `The tolerance of ${words.fine} for ${subject(fact)} is far finer than that of ${words.wide} in the same job.`,
    help: 'Give both as the gauge can show them.',
  }),
};
