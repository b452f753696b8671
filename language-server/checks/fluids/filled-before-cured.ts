import type { Check } from '../check.ts';
import { subject, them } from '../speak.ts';

export const filledBeforeCured: Check = {
  name: 'filled-before-cured',
  group: 'Fluids, faces, consumables',
  severity: 'warning',
  title: 'A system is filled before the sealant of its joint has cured.',
  explanation: `
Oil against a sealant that is still wet washes it out of the joint, and the leak shows a week later. Where a consumable has a \`curing time\`
and is put on a joint of a system, the checker adds up the waits that the steps state (\`wait\`, \`for\`) until the system is filled,
topped up or put under pressure.

How long the work itself takes is not guessed: write the wait. A wait without a time, cooling down, work elsewhere, and a sentence that
speaks of curing count as long enough.`,
  source: 'common practice, no source',
  bad: `
machine gearbox "mixer gearbox" {
  part housing "housing" fixed
  part cover "cover" on housing held by cover-bolts opens oil
  part plug "drain plug" on housing
  part cap "filler cap" on housing
  face cover-face "face of the cover" under cover coated with sealant
  fastener cover-bolts "cover bolts" x6 torque 20 N·m
  fluid gear-oil "gear oil"
  consumable sealant "flange sealant" curing time 2 h
  system oil "gearbox oil" holds 3 L gear-oil drained at plug filled at cap
}
procedure reseal-cover "Seal the cover again" for gearbox {
  drain oil
  unbolt cover
  clean cover-face
  coat cover-face with sealant
  bolt up cover
  wait 30 min
  fill oil with 3 L gear-oil
       ^^^
}
`,
  good: `
machine gearbox "mixer gearbox" {
  part housing "housing" fixed
  part cover "cover" on housing held by cover-bolts opens oil
  part plug "drain plug" on housing
  part cap "filler cap" on housing
  face cover-face "face of the cover" under cover coated with sealant
  fastener cover-bolts "cover bolts" x6 torque 20 N·m
  fluid gear-oil "gear oil"
  consumable sealant "flange sealant" curing time 2 h
  system oil "gearbox oil" holds 3 L gear-oil drained at plug filled at cap
}
procedure reseal-cover "Seal the cover again" for gearbox {
  drain oil
  unbolt cover
  clean cover-face
  coat cover-face with sealant
  bolt up cover
  wait 2 h
  fill oil with 3 L gear-oil
}
`,
  says: ({ words = {}, ...fact }) => ({
    message: `A joint of ${subject(fact)} has ${words.left} to cure still when this step fills ${them(fact)} or puts ${them(fact)} under pressure.`,
    help: `Write \`wait ${words.left}\` before this step, after the joint is closed.`,
  }),
};
