import type { Check } from '../check.ts';

export const rangeOverlap: Check = {
  name: 'range-overlap',
  group: 'Flow and measurements',
  severity: 'error',
  title: 'Two outcomes of a measurement claim the same reading.',
  explanation: `
Where two outcomes take in the same values, two different things are to be done for one reading, and each technician
picks one. The same holds for the rows of a table: one value must lead to one row.

Neighbours that share just their end, as in \`0.1..0.2 mm\` and \`0.2..0.3 mm\`, are everyday writing and are not reported:
at that value either will do. Values in different units are compared exactly; an end that is the rounded conversion
of the other one counts as the same.`,
  source: 'common practice, no source',
  bad: `
machine pump "bilge pump" {
  part volute "volute" fixed
  part impeller "impeller" on volute
}
procedure measure-gap "Measure the gap" for pump {
  measure gap between impeller and volute {
    below 0.3 mm { stop "Grind the impeller." }
    0.25..0.5 mm { }
    ^^^^^^^^^^^^
    over 0.5 mm { stop "Renew the impeller." }
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
    below 0.25 mm { stop "Grind the impeller." }
    0.25..0.5 mm { }
    over 0.5 mm { stop "Renew the impeller." }
  }
}
`,
  says: ({ words = {} }) => ({
    message:
      words.of === 'rows'
        ? `The rows “${words.first}” and “${words.second}” of the table are for some of the same values.`
        : `The outcomes “${words.first}” and “${words.second}” claim some of the same readings.`,
    help: 'Let one of the two end where the other begins.',
  }),
};
