import type { Check } from '../check.ts';
import { agree, subject } from '../speak.ts';

export const reverseImpossible: Check = {
  name: 'reverse-impossible',
  group: 'Flow and measurements',
  severity: 'error',
  title: 'A reversed task would put back what cannot go back.',
  explanation: `
\`reverse\` writes out the steps of a task turned round. A part that was thrown away and a part of one use cannot go
back as they came off, so they have no mirrored step: somebody has to fit a new one, at the right place.

Leave such things out with \`except\`, and write the step that fits the new one yourself.`,
  source: 'case 01: a gasket removed, and the refit in reverse order that never says a new one',
  bad: `
machine pump "wash pump" {
  part body "body" fixed
  part lid "lid" on body held by lid-screws sealed by lid-gasket
  seal lid-gasket "lid gasket" single-use
  fastener lid-screws "lid screws" x4
}
procedure look-inside "Look inside the pump" for pump {
  task open-up {
    unbolt lid
    remove lid-gasket
  }
  clean body
  reverse open-up
  ^^^^^^^^^^^^^^^
}
`,
  good: `
machine pump "wash pump" {
  part body "body" fixed
  part lid "lid" on body held by lid-screws sealed by lid-gasket
  seal lid-gasket "lid gasket" single-use
  fastener lid-screws "lid screws" x4
}
procedure look-inside "Look inside the pump" for pump {
  task open-up {
    unbolt lid
    remove lid-gasket
  }
  clean body
  fit new lid-gasket
  reverse open-up except lid-gasket
}
`,
  says: ({ words = {}, ...fact }) => ({
    message:
      words.why === 'discarded'
        ? `Reversing ${words.task} cannot put back ${subject(fact)}: ${agree(fact, 'it was', 'they were')} thrown away when the task was done.`
        : `Reversing ${words.task} cannot put back ${subject(fact)}: ${agree(fact, 'it', 'they')} may be used only once.`,
    help: 'Write `except` with its name after the task, and the step that fits a new one before this line.',
  }),
};
