import type { Check } from '../check.ts';

export const variantDead: Check = {
  name: 'variant-dead',
  group: 'Flow and measurements',
  severity: 'warning',
  title: 'A block is for a variant that cannot be.',
  explanation: `
The condition of this block holds for no machine: the combination is ruled out by \`never\`, or the block stands inside
another one that leaves this variant out. Nobody will ever do these steps, so either the condition is wrong or the steps
are not needed.`,
  source: 'common practice, no source',
  bad: `
machine mower "bank mower" {
  variant engine: petrol, diesel
  part deck "deck" fixed
  part blade "blade" on deck
}
procedure look "Look at the blade" for mower {
  when engine is petrol {
    when engine is diesel { clean blade }
         ^^^^^^^^^^^^^^^^
    clean blade
  }
}
`,
  good: `
machine mower "bank mower" {
  variant engine: petrol, diesel
  part deck "deck" fixed
  part blade "blade" on deck
}
procedure look "Look at the blade" for mower {
  when engine is petrol { clean blade }
  when engine is diesel { clean blade }
}
`,
  says: () => ({
    message: 'These steps are for a variant that cannot be here: nobody will ever do them.',
    help: 'Correct the condition, or delete the block.',
  }),
};
