import type { Check } from '../check.ts';
import { hazardSaid, meets, noticeSaid } from './hazard-words.ts';

export const cautionLate: Check = {
  name: 'caution-late',
  group: 'Hazards',
  severity: 'warning',
  title: 'A notice stands after the step that it is about.',
  explanation: `
A reader does one step and then reads the next line. A notice that follows the step it guards is read with the hose already off. The
checker reports it where a step comes near a declared hazard, no notice with that word stands before it in the task, and one
stands after it that is about nothing else. So it does where a notice stands directly behind a step that comes near (or begins to make
safe) and no later step of the task does, even where the task was warned before: then it guards nothing.

Move it in front of the first step that comes near the hazard.`,
  source:
    'MIL-STD-38784: warnings and cautions directly before the step (from memory); FAA AC 43.13-1B, 9-17 prints the cage after the bolts',
  bad: `
machine tyre-bay "wheel with a split rim" {
  part hub "hub" fixed
  face hub-face "face of the hub" under wheel
  part wheel "wheel" on hub held by rim-bolts hazard pressure when removing
  fastener rim-bolts "rim bolts" x8 torque 60 N·m
}
procedure change-wheel "Change the wheel" for tyre-bay {
  remove rim-bolts
  remove wheel
  warning pressure "A rim under pressure flies apart and kills. Let the air out before you touch the bolts."
  ^^^^^^^
  clean hub-face
  refit wheel
  fit rim-bolts by hand
  tighten rim-bolts
}
`,
  good: `
machine tyre-bay "wheel with a split rim" {
  part hub "hub" fixed
  face hub-face "face of the hub" under wheel
  part wheel "wheel" on hub held by rim-bolts hazard pressure when removing
  fastener rim-bolts "rim bolts" x8 torque 60 N·m
}
procedure change-wheel "Change the wheel" for tyre-bay {
  warning pressure "A rim under pressure flies apart and kills. Let the air out before you touch the bolts."
  remove rim-bolts
  remove wheel
  clean hub-face
  refit wheel
  fit rim-bolts by hand
  tighten rim-bolts
}
`,
  says: (fact) => {
    const { signal, directly } = fact.words!;
    const after = directly ? `${meets(fact)}, and no step behind it comes near` : `first ${meets(fact)}`;
    return {
      message: `This ${noticeSaid(signal!)} about ${hazardSaid(fact)} comes after the ${after}.`,
      help: 'Move it in front of that step.',
    };
  },
};
