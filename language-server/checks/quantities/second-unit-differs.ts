import type { Check } from '../check.ts';

export const secondUnitDiffers: Check = {
  name: 'second-unit-differs',
  group: 'Names and quantities',
  severity: 'error',
  title: 'A value in a second unit is not the first value.',
  explanation: `
A value printed in two units is two values for the reader, who takes the one that the gauge shows. If the second is not
a fair rounding of the first, one of the two is wrong, perhaps above a limit.

The second value may be rounded to its last digit, and a whole number that ends in 0 or 5 to tens or fives, by no more
than 5 %. Torques are reported as \`torque-differs\`.`,
  source: 'US Army TB 9-2320-335-13&P, paragraph 7-2.1: 12-15 psi is printed with 103-138 kPa',
  bad: `
machine press "bench press" {
  system air "compressed air" pressure 12..15 psi (103..138 kPa)
                                                   ^^^^^^^^^^^^
}
`,
  good: `
machine press "bench press" {
  system air "compressed air" pressure 12..15 psi (83..103 kPa)
}
`,
  says: ({ words = {} }) => ({
    message: `The second unit says ${words.second}, and ${words.first} is ${words.right}.`,
    help: 'Mend the value that is wrong, or leave the second unit out: it is written out when the page is made.',
  }),
};
