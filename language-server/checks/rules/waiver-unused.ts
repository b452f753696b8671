import type { Check } from '../check.ts';

export const waiverUnused: Check = {
  name: 'waiver-unused',
  group: 'Words and rules',
  severity: 'warning',
  title: 'A waiver holds nothing back.',
  explanation: `
\`allow\` holds back one kind of finding at the step that follows it. Where there is no such finding (any more), the
waiver says of the step what is not true, and would silently hold back a finding that comes later with another cause.

A waiver before a block is about the block itself, not about the steps in it; one at the end of a block is about the
end.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4
}
procedure open-up "Open the press" for press ends with cover off {
  remove cover-screws
  allow still-held because "The screws are sheared."
        ^^^^^^^^^^
  remove cover
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4
}
procedure open-up "Open the press" for press ends with cover off {
  allow still-held because "The screws are sheared."
  remove cover
}
`,
  says: ({ words = {} }) => ({
    message: `\`allow ${words.check}\` holds nothing back: ${words.end ? 'the end of this block' : 'the step that follows'} has no such finding.`,
    help: `Take it away, or put it directly before the step that it is about.`,
  }),
};
