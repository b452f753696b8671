/** What is wrong with the text itself: the parser has put it into a sentence already, with a right example. */
import type { Fact } from '../../model/facts.ts';

export function fromText(fact: Fact): { message: string; help?: string } {
  const { example } = fact.words!;
  const message = fact.words!.message!;
  const mend = fact.mends?.[0]?.title;
  if (example) return { message, help: `Write it like this: ${example}` };
  return mend ? { message, help: `${mend}.` } : { message };
}
