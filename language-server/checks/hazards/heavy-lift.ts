import type { Check } from '../check.ts';
import { agree, CAUTION, capital, others, subject, them } from '../speak.ts';

export const heavyLift: Check = {
  name: 'heavy-lift',
  group: 'Hazards',
  severity: 'warning',
  title: 'A part is heavier than the guideline lets so many people lift by hand.',
  explanation: `
The British guideline for lifting by hand gives figures by height and reach; the largest, for a man, at elbow height and close to the
body, is 25 kg. Two people can lift two thirds of what each could alone, three can lift half, more than four hardly work together: 33 kg
for two, 37.5 kg for three, 50 kg for four. The checker cannot see how somebody stands, so it only reports what is beyond the
largest figure: below the waist, at arm's length or for a woman much less is too much. The figures are a filter, no limit and no proof of
safety.

The weight is the declared \`mass\` of the part with everything that moves along. A hoist, jack or stand named after \`with\`, or a part that
was supported or raised before, is not reported; neither is a part without a \`mass\`. People are those of \`with 2 people\`, else of the header;
where nobody says, four are assumed. ${CAUTION}`,
  source: 'HSE L23 and INDG143, guideline figures for lifting and lowering, and the rule for teams',
  bad: `
machine pump-set "pump set" {
  part base "base plate" fixed
  face motor-seat "seat of the motor" under motor
  part motor "motor" on base held by motor-bolts mass 24 kg
  part flywheel "flywheel" on motor mass 6 kg
  fastener motor-bolts "motor bolts" x4 torque 40 N·m
}
procedure change-motor "Turn the motor round" for pump-set people 1 {
  remove motor-bolts
  remove motor
         ^^^^^
  clean motor-seat
  refit motor
        ^^^^^
  fit motor-bolts
}
`,
  good: `
machine pump-set "pump set" {
  part base "base plate" fixed
  face motor-seat "seat of the motor" under motor
  part motor "motor" on base held by motor-bolts mass 24 kg
  part flywheel "flywheel" on motor mass 6 kg
  fastener motor-bolts "motor bolts" x4 torque 40 N·m
  tool hoist "hoist"
}
procedure change-motor "Turn the motor round" for pump-set people 2 tools hoist {
  remove motor-bolts
  remove motor with 2 people
  clean motor-seat
  refit motor with hoist
  fit motor-bolts
}
`,
  says: (fact) => {
    const { mass, limit, people, guideline } = fact.words!;
    const along = fact.others!.length > 0 ? ` with ${others(fact)}` : '';
    const crew = people === undefined ? 'four people' : people === '1' ? 'one person' : `${people} people`;
    return {
      message: `${capital(subject(fact))}${along} ${agree(fact, 'weighs', 'weigh')} ${mass} kg, more than the ${limit} kg that the ${guideline === 'niosh' ? 'NIOSH equation' : 'guideline'} gives ${crew} at the most.`,
      help: `Name what lifts ${them(fact)} (\`with hoist\`), support ${them(fact)} before, or say how many people lift (\`with 2 people\`).`,
    };
  },
};
