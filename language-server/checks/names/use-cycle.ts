import type { Check } from '../check.ts';

export const useCycle: Check = {
  name: 'use-cycle',
  group: 'Names and quantities',
  severity: 'error',
  title: 'Something is made up of itself.',
  explanation: `
A procedure that does itself, directly or by way of another one, could never end; a machine that extends itself and a
declaration that is like itself have nothing to start from.

The checker follows \`do\`, \`extends\` and \`like\`. Two files may use each other; a file that uses itself is reported,
because nothing comes of it.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
procedure look-over "Look the press over" for press {
  task round "Go round" {
    clean ram
    do round
       ^^^^^
  }
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
procedure look-over "Look the press over" for press {
  task round "Go round" {
    clean ram
  }
  do round
}
`,
  says: ({ words = {} }) => {
    const { name, of } = words;
    switch (of) {
      case 'do':
        return {
          message: `\`do ${name}\` leads back to this place: the work would never end.`,
          help: 'Take one of the two uses out; work that is done again until something holds stands in `repeat`.',
        };
      case 'extends':
        return {
          message: `The machine \`${name}\` would extend itself.`,
          help: 'Extend a machine that stands on its own.',
        };
      case 'like':
        return {
          message: `\`like ${name}\` leads back to this declaration.`,
          help: 'Write the clauses out in one of the two.',
        };
      case 'value':
        return {
          message: `The value \`${name}\` is computed from itself.`,
          help: 'Give one of the values that it is computed from as a quantity.',
        };
      default:
        return { message: 'The file uses itself.', help: 'Take this line out.' };
    }
  },
};
