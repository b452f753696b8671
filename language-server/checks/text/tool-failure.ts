import type { Check } from '../check.ts';

/**
 * No text is known that makes the tool fail, so its examples are empty and it stands beside the list of
 * checks, not in it.
 */
export const toolFailure: Check = {
  name: 'tool-failure',
  group: 'Text',
  severity: 'error',
  title: 'Dowel itself failed while it checked this.',
  explanation: `
A fault in the tool, not in your text. One analysis of the machine or procedure at this place came to grief; all others
went on, so every other finding still holds, but this machine or procedure was not fully checked and must not be taken
for right.

Please report it with the file that shows it. Taking out half of the text again and again until the finding is gone
shows the line that brings it about.`,
  source: 'this tool',
  bad: '',
  good: '',
  says: ({ words = {} }) => ({
    message: `Dowel failed while it checked this: ${words.error!.replace(/\.$/, '')}.`,
    help: 'The rest was checked. Please report this with the file.',
  }),
};
