import type { Check } from '../check.ts';
import { apartFromItself, bringBack, capital, isAre, others, subject, them, told } from '../speak.ts';

export const notInPlace: Check = {
  name: 'not-in-place',
  group: 'Order and completeness',
  severity: 'error',
  title: 'Something is worked on that is not there.',
  explanation: `
A bolt cannot be loosened when it is out, a motor cannot be aligned on the floor, and a gap cannot be measured to a part
that is off. The checker asks that what is adjusted, aligned, loosened, checked, secured or measured between is in its
place, and that nothing is worked on that was thrown away.

Put the step where the thing is in place.`,
  source: 'common practice, no source',
  bad: `
machine conveyor "belt conveyor" {
  part frame "frame" fixed
  part roller "tension roller" on frame held by roller-bolts
  part bush "roller bush" on frame under roller
  fastener roller-bolts "roller bolts" x2 torque 45 N·m
}
procedure renew-bush "Renew the roller bush" for conveyor supplies bush {
  unbolt roller
  remove bush and discard
  fit new bush
  align roller
        ^^^^^^
  refit roller
  fit roller-bolts
}
`,
  good: `
machine conveyor "belt conveyor" {
  part frame "frame" fixed
  part roller "tension roller" on frame held by roller-bolts
  part bush "roller bush" on frame under roller
  fastener roller-bolts "roller bolts" x2 torque 45 N·m
}
procedure renew-bush "Renew the roller bush" for conveyor supplies bush {
  unbolt roller
  remove bush and discard
  fit new bush
  refit roller
  fit roller-bolts by hand
  align roller
  tighten roller-bolts
}
`,
  says: (fact) => {
    const away = apartFromItself(fact);
    if (away.others.length > 0)
      return {
        message: `This cannot be measured to ${subject(fact)}: ${others(away)} ${isAre(away, 'others')} not in place.`,
        help: `${bringBack(away.others)} before this step.`,
      };
    const thrown = told(fact, 'discarded');
    const state = thrown ? 'thrown away' : fact.subject!.thing.type === 'fastener' ? 'out' : 'off';
    return {
      message: `${capital(subject(fact))} ${isAre(fact)} ${state} when this step works on ${them(fact)}.`,
      help: thrown
        ? 'Name the new one after it is fitted, or do this step before the old one is thrown away.'
        : `Do this step while ${subject(fact)} ${isAre(fact)} in place.`,
    };
  },
};
