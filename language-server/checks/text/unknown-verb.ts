import type { Check } from '../check.ts';
import { fromText } from './from-text.ts';

export const unknownVerb: Check = {
  name: 'unknown-verb',
  group: 'Text',
  severity: 'error',
  title: 'A step begins with a word that is no verb of the language.',
  explanation: `
A step begins with a verb of the trade that the language knows, so that what it needs and what it does is known too.
The nearest verb is proposed where one is near; the list of verbs is in the language reference.

What no verb says goes into a sentence in quotation marks, behind the verb that comes nearest or in \`step "…" { }\`.`,
  source: 'the language reference',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
procedure look-over "Look the press over" for press {
  inspekt ram for "scores"
  ^^^^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
procedure look-over "Look the press over" for press {
  inspect ram for "scores" { sound { } scored { send ram for "grinding" } }
}
`,
  says: fromText,
};
