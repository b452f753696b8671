import type { Check } from '../check.ts';

export const vacuumReversed: Check = {
  name: 'vacuum-reversed',
  group: 'Fluids, faces, consumables',
  severity: 'error',
  title: 'A vacuum is asked for with a bound on the wrong side.',
  explanation: `
A vacuum gauge in microns, Torr or millibar shows the pressure that is left: the deeper the vacuum, the smaller the number. “500
microns or more” is met before the pump runs, and moisture and air stay in the system.

The checker looks at \`evacuate … to at least\`, at \`not under\`, and at “or more” and “at least” in the sentence of the
step. Inches of mercury and bar are left alone: a gauge may count them from the air around downwards.`,
  source: 'US Army TM 10-8145-222-23, WP 0014: a deep vacuum of “500 microns or more”',
  bad: `
machine cooler "milk cooler" {
  part unit "cooling unit" fixed
  system gas "refrigerant circuit" holds 1.4 kg coolant
  fluid coolant "refrigerant"
}
procedure dry "Dry the circuit" for cooler {
  recover gas
  evacuate gas to at least 500 micron
                  ^^^^^^^^^^^^^^^^^^^
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
  evacuate gas to at most 500 micron
  fill gas with 1.4 kg coolant
}
`,
  says: ({ words = {} }) => ({
    message: `“${words.typed}” is the wrong way round: the deeper the vacuum, the smaller the reading.`,
    help: `Write \`to at most ${words.most}\`, or the reading alone.`,
  }),
};
