import type { Check } from '../check.ts';
import { isAre, subject } from '../speak.ts';

export const staleMeasurement: Check = {
  name: 'stale-measurement',
  group: 'Flow and measurements',
  severity: 'error',
  title: 'A measured value is used after what it was measured on was disturbed.',
  explanation: `
A clearance measured before a part came off says nothing about the part that goes back. Once something that a value was
measured on has been taken off, put back, loosened or exchanged, the value is stale: what is chosen or computed from it
may be wrong.

Measure again before the value is used, or use it before the parts are disturbed.`,
  source: 'case 02: the zero reading of a bolt that was replaced since; common practice, no source',
  bad: `
machine gearbox "hoist gearbox" {
  part housing "housing" fixed
  part cap "bearing cap" on housing held by cap-screws
  part shaft "shaft" on housing under cap
  fastener cap-screws "cap screws" x4
  value wanted-play = 0.05 mm
}
procedure set-play "Set the play" for gearbox {
  measure play of shaft as play {
    up to 0.1 mm { }
    over 0.1 mm { }
  }
  unbolt cap
  remove shaft
  clean shaft
  refit shaft
  record pack = play + wanted-play
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  bolt up cap
}
`,
  good: `
machine gearbox "hoist gearbox" {
  part housing "housing" fixed
  part cap "bearing cap" on housing held by cap-screws
  part shaft "shaft" on housing under cap
  fastener cap-screws "cap screws" x4
  value wanted-play = 0.05 mm
}
procedure set-play "Set the play" for gearbox {
  measure play of shaft as play {
    up to 0.1 mm { }
    over 0.1 mm { }
  }
  record pack = play + wanted-play
  unbolt cap
  remove shaft
  clean shaft
  refit shaft
  bolt up cap
}
`,
  says: ({ words = {}, ...fact }) => ({
    message: `The value ${words.name} is stale: ${subject(fact)} ${isAre(fact)} no longer as when it was measured.`,
    help: 'Measure again before this step, or use the value before the parts are disturbed.',
  }),
};
