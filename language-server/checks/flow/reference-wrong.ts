import type { Check } from '../check.ts';
import { agree, isAre, subject } from '../speak.ts';

export const referenceWrong: Check = {
  name: 'reference-wrong',
  group: 'Flow and measurements',
  severity: 'warning',
  title: 'A sentence refers to an item or a figure that is another one.',
  explanation: `
“Items 25 and 26, figure 3-39” in one step and “Items 25 and 26, figure 3-29” in another: item numbers belong to one
figure, so one of the two is wrong, and who follows it looks at another part. The same goes for a sentence that gives
the step's part an item number that the machine file does not give it.

Only sentences that are nothing but a reference are judged. A number inside a longer sentence may be about another thing.`,
  source:
    'US Army TM 5-6115-545-12, paragraphs 3-205 and 3-206: the fan guards are items of figure 3-39 when they come off and of figure 3-29 when they go back (case 01)',
  bad: `
machine engine "generator engine" {
  part frame "frame" fixed
  part guards "fan guards" on frame item 25 also called "fan guards 25 and 26"
}
procedure guards-off "Clean behind the guards" for engine {
  remove guards "Items 25 and 26, figure 3-39."
  clean frame
  refit guards "Items 25 and 26, figure 3-29."
               ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}
`,
  good: `
machine engine "generator engine" {
  part frame "frame" fixed
  part guards "fan guards" on frame item 25 also called "fan guards 25 and 26"
}
procedure guards-off "Clean behind the guards" for engine {
  remove guards "Items 25 and 26, figure 3-39."
  clean frame
  refit guards "Items 25 and 26, figure 3-39."
}
`,
  says: (fact) => {
    const { of, items, wanted, figure, earlier } = fact.words!;
    const item = items!.includes(' ') ? 'items' : 'item';
    const name = subject(fact);
    return of === 'figure'
      ? {
          message: `Figure ${figure} is named for ${item} ${items}, and an earlier step says figure ${earlier} for ${name}.`,
          help: 'Item numbers belong to one figure: mend the reference that is wrong.',
        }
      : {
          message: `The sentence says ${item} ${items}, and ${name} ${isAre(fact)} ${agree(fact, 'item', 'items')} ${wanted}.`,
          help: 'Mend the number in the sentence or in the machine file.',
        };
  },
};
