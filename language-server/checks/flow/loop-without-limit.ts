import type { Check } from '../check.ts';

export const loopWithoutLimit: Check = {
  name: 'loop-without-limit',
  group: 'Flow and measurements',
  severity: 'information',
  title: 'A repeat has no way out if its end does not come.',
  explanation: `
“Repeat until no bubbles come” never ends where air keeps getting in. The technician goes on, or gives up without having
been told what that means. \`at most 10 times\` ends the repeat, and \`otherwise\` says what to do then; a \`stop\` inside the
repeat is a way out too.

Many published procedures leave the limit to the trade, so this is told for information only.`,
  source:
    'pass list credited to ASME PCC-1: nuts are gone round “until no nut turns”, with no most number of rounds (case 27); common practice, no source',
  bad: `
machine brake "hand brake" {
  system oil "brake oil" holds 0.2 L
  control bleeder "bleeder" in oil normally closed
}
procedure bleed-brake "Bleed the brake" for brake {
  repeat until "the oil comes without bubbles" {
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
    open bleeder
    close bleeder
  }
  top up oil
}
`,
  good: `
machine brake "hand brake" {
  system oil "brake oil" holds 0.2 L
  control bleeder "bleeder" in oil normally closed
}
procedure bleed-brake "Bleed the brake" for brake {
  repeat until "the oil comes without bubbles" at most 10 times {
    open bleeder
    close bleeder
  } otherwise {
    stop "Look for the leak that lets air in."
  }
  top up oil
}
`,
  says: () => ({
    message: 'The repeat has no way out if its end does not come.',
    help: 'Write `at most … times`, and behind the block `otherwise { }` with what is done then.',
  }),
};
