import type { Check } from '../check.ts';

export const rangeGap: Check = {
  name: 'range-gap',
  group: 'Flow and measurements',
  severity: 'warning',
  title: 'The outcomes of a measurement leave a hole in the scale.',
  explanation: `
A technician who reads a value for which nothing is said has to guess. The outcomes of a measurement split a scale, and
together they must take in every value that can be read, from its beginning up. \`up to\`, \`from\` and both ends of
\`0.1..0.2 mm\` take their end in; \`below\` and \`over\` leave it out, so that \`below 0.04 mm\` and \`over 0.04 mm\` leave
0.04 mm itself.

A scale begins at zero unless a negative value is written; temperatures have no beginning. \`0.10..0.14 mm\` and
\`0.15..0.19 mm\` leave no hole, because a reading as fine as the numbers are written cannot fall between them. An outcome
that is a word, such as \`otherwise\`, takes the rest. A table of parts may end where its parts do: only what lies between
its rows counts.`,
  source:
    'US Army TM 55-1905-223-24-1, rod bolts: after the second measurement nothing is said of a bolt that is above the limit (case 02)',
  bad: `
machine pump "bilge pump" {
  part volute "volute" fixed
  part impeller "impeller" on volute
}
procedure measure-gap "Measure the gap" for pump {
  measure gap between impeller and volute {
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
    below 0.3 mm { stop "Grind the impeller." }
    0.3..0.5 mm { }
  }
}
`,
  good: `
machine pump "bilge pump" {
  part volute "volute" fixed
  part impeller "impeller" on volute
}
procedure measure-gap "Measure the gap" for pump {
  measure gap between impeller and volute {
    below 0.3 mm { stop "Grind the impeller." }
    0.3..0.5 mm { }
    over 0.5 mm { stop "Renew the impeller." }
  }
}
`,
  says: ({ words = {} }) =>
    words.of === 'rows'
      ? {
          message: `No row of the table is for a value ${words.holes}.`,
          help: 'Write a row for it, or let the row before or after take it in.',
        }
      : {
          message: `No outcome is for a reading ${words.holes}.`,
          help: 'Write an outcome for it, let a neighbour take it in (`up to` and `from` do), or let `otherwise` take the rest.',
        },
};
