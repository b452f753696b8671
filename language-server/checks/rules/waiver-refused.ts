import type { Check } from '../check.ts';

export const waiverRefused: Check = {
  name: 'waiver-refused',
  group: 'Words and rules',
  severity: 'error',
  title: 'A waiver names a finding that cannot be waived.',
  explanation: `
Some findings say that a part of the text was not read as it stands, or that a part of the work was not checked: a
missing brace, a file that is not there, cases too many to follow. To hold such a finding back would hide that nobody
looked. Findings about waivers themselves cannot be waived either.

Everything else can be, with a reason.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4
}
procedure open-up "Open the press" for press ends with cover off {
  allow syntax because "It reads well enough."
        ^^^^^^
  unbolt cover
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4
}
procedure open-up "Open the press" for press ends with cover off {
  unbolt cover
}
`,
  says: ({ words = {} }) => ({
    message: `\`${words.check}\` cannot be waived: ${words.because}.`,
    help: 'Mend what it tells of, and take the waiver away.',
  }),
};
