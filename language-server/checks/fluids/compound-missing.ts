import type { Check } from '../check.ts';
import { lacking } from './put-on.ts';

export const compoundMissing: Check = {
  name: 'compound-missing',
  group: 'Fluids, faces, consumables',
  severity: 'warning',
  title: 'A joint is closed without the compound that it is declared with.',
  explanation: `
Sealant, heat paste or thread compound does its work only where it is. What the machine file says is \`coated with\` something asks
for it again after its joint was parted: a face before the joint closes, a part, seal or bolt before or while it goes in, at the latest
before the job ends.

A \`coat\` step counts, and so does the compound after \`with\` (\`fit new ring with sealant\`) or in the sentence of the step. Where the
machine file says nothing, nothing is asked.`,
  source: 'common practice, no source',
  bad: `
machine lathe "bench lathe" {
  part bed "bed" fixed
  part end-plate "end plate" on bed held by plate-screws
  face plate-face "face of the end plate" under end-plate coated with sealant
  fastener plate-screws "plate screws" x4 torque 8 N·m
  consumable sealant "flange sealant"
}
procedure reseal-plate "Seal the end plate again" for lathe {
  unbolt end-plate
  clean plate-face
  bolt up end-plate
          ^^^^^^^^^
}
`,
  good: `
machine lathe "bench lathe" {
  part bed "bed" fixed
  part end-plate "end plate" on bed held by plate-screws
  face plate-face "face of the end plate" under end-plate coated with sealant
  fastener plate-screws "plate screws" x4 torque 8 N·m
  consumable sealant "flange sealant"
}
procedure reseal-plate "Seal the end plate again" for lathe {
  unbolt end-plate
  clean plate-face
  coat plate-face with sealant
  bolt up end-plate
}
`,
  says: (fact) => lacking(fact, ({ coatedWith }) => coatedWith, 'coat'),
};
