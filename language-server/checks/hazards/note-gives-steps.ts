import type { Check } from '../check.ts';

export const noteGivesSteps: Check = {
  name: 'note-gives-steps',
  group: 'Hazards',
  severity: 'information',
  title: 'A note gives an instruction.',
  explanation: `
Notes inform: readers skip them when they know the job. Printed manuals often put the essential steps into a note behind the step list,
where the seals are fitted and the torques stand after the system has been filled. The checker reports a command at the beginning of a
sentence or clause of a \`note\` that does something to a thing of the machine.

Write it as a step where it is done. A note keeps what is good to know.`,
  source:
    'ASD-STE100 rule 5.5: notes give information, never instructions; TM 5-6115-545-12 fits its seals in a note after the last step',
  bad: `
machine pump-set "pump set" {
  part casing "casing" fixed
  part cover "pump cover" on casing held by cover-nuts
  fastener cover-nuts "cover nuts" x6 torque 20 N·m
  face flange "flange" under cover
}
procedure open-pump "Clean the flange" for pump-set {
  unbolt cover
  clean flange
  refit cover
  fit cover-nuts by hand
  tighten cover-nuts
  note "Before you start the pump, tighten the cover nuts again."
       ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}
`,
  good: `
machine pump-set "pump set" {
  part casing "casing" fixed
  part cover "pump cover" on casing held by cover-nuts
  fastener cover-nuts "cover nuts" x6 torque 20 N·m
  face flange "flange" under cover
}
procedure open-pump "Clean the flange" for pump-set {
  unbolt cover
  clean flange
  refit cover
  fit cover-nuts by hand
  tighten cover-nuts
  note "The cover settles in the first hour."
  wait 1 h
  tighten cover-nuts
}
`,
  says: ({ words = {} }) => ({
    message: `This note gives an instruction: \`${words.step}\`.`,
    help: words.also
      ? 'Say it in the step itself, and leave the note to what is good to know.'
      : 'Write it as a step where it is done; a note only informs.',
  }),
};
