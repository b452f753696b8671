import type { Check } from '../check.ts';

export const waiverWithoutReason: Check = {
  name: 'waiver-without-reason',
  group: 'Words and rules',
  severity: 'error',
  title: 'A waiver does not say why.',
  explanation: `
Who reads the job later has to know why a finding was accepted, and whether that still holds. So a waiver that gives no
reason holds nothing back. The reason is printed with the procedure.

Say what makes it right here: “The hose is long enough to reach the bench.” “Sheared screws are drilled out.”`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part cover "cover" on bed held by cover-screws
  fastener cover-screws "cover screws" x4
}
procedure open-up "Open the press" for press ends with cover off {
  remove cover-screws
  allow still-held because " "
                           ^^^
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
    message: `\`allow ${words.check}\` gives no reason, so it holds nothing back.`,
    help: `Write why it is right here: \`allow ${words.check} because "The hose reaches to the bench."\`.`,
  }),
};
