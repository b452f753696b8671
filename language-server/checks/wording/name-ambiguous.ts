import type { Check } from '../check.ts';

export const nameAmbiguous: Check = {
  name: 'name-ambiguous',
  group: 'Words and rules',
  severity: 'information',
  title: 'A sentence uses a name that two things go by.',
  explanation: `
“Turn the valve to the balance mark”: the tube has one, and the tyre has one. Where two things of the machine file have the
same title or are \`also called\` the same, a sentence has to say which one is meant.

Silent where the step acts on one of them or on what it belongs to, and where the sentence names such a thing. A mark on
a part can be declared as a \`face\` \`on\` that part.`,
  source:
    'FAA AC 43.13-1B CHG 1, paragraph 9-18: the valve is aligned with the balance mark, which tube and tyre both have (case 26)',
  bad: `
machine crusher "jaw crusher" {
  part frame "frame" fixed
  part wheel "flywheel" on frame
  part pulley "pulley" on frame
  part handle "handle" on frame
  face wheel-mark "timing mark" on wheel
  face pulley-mark "timing mark" on pulley
}
procedure set-handle "Set the handle" for crusher {
  align handle "Bring it to the timing mark."
                                ^^^^^^^^^^^
}
`,
  good: `
machine crusher "jaw crusher" {
  part frame "frame" fixed
  part wheel "flywheel" on frame
  part pulley "pulley" on frame
  part handle "handle" on frame
  face wheel-mark "timing mark" on wheel
  face pulley-mark "timing mark" on pulley
}
procedure set-handle "Set the handle" for crusher {
  align handle "Bring it to the timing mark of the flywheel."
}
`,
  says: ({ words = {} }) => ({
    message: `“${words.name}” may be ${words.may}.`,
    help: 'Say in the sentence which one is meant: name the part that it is on.',
  }),
};
