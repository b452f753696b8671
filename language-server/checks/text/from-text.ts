/** What is wrong with the text itself: the parser has put it into a sentence already, with a right example. */
import type { Fact } from '../../model/facts.ts';

export function fromText({ words = {}, mends = [] }: Fact): { message: string; help?: string } {
  const message = words.message!;
  const [mend] = mends;
  if (words.example) return { message, help: `Write it like this: ${words.example}` };
  return mend ? { message, help: `${mend.title}.` } : { message };
}
