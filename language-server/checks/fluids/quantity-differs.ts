import type { Check } from '../check.ts';
import { subject } from '../speak.ts';

export const quantityDiffers: Check = {
  name: 'quantity-differs',
  group: 'Fluids, faces, consumables',
  severity: 'error',
  title: 'A step fills in more than the system holds.',
  explanation: `
What a system holds is declared once. A step or sentence that fills in more floods it: oil foams, a radiator overflows, a
refrigeration circuit bursts. The checker compares the amounts of \`fill\` and \`top up\`, and those in their sentences, with
what the system \`holds\` and with its \`service fill\`.

Less is not reported: where only part was drained, only part goes back. A can, a pan or a limit in the sentence is not taken
for the amount.`,
  source: 'common practice, no source',
  bad: `
machine engine "barge engine" {
  part block "engine block" fixed
  part plug "drain plug" on block
  part cap "filler cap" on block
  system sump "engine oil" holds 6.5 L drained at plug filled at cap
}
procedure change-oil "Change the oil" for engine {
  drain sump
  fill sump "Pour in 8 L."
                     ^^^
}
`,
  good: `
machine engine "barge engine" {
  part block "engine block" fixed
  part plug "drain plug" on block
  part cap "filler cap" on block
  system sump "engine oil" holds 6.5 L drained at plug filled at cap
}
procedure change-oil "Change the oil" for engine {
  drain sump
  fill sump "Pour in 6 L from a 20 L drum, then look at the dipstick."
}
`,
  says: ({ words = {}, ...fact }) => ({
    message: `This step fills in ${words.typed}, more than the ${words.holds} declared for ${subject(fact)}.`,
    help: 'Mend the one that is wrong, or leave the amount out: it is taken from the machine.',
  }),
};
