/**
 * The bad example of every check once more, with each title in the other number: what was `cover` is `covers`, what was
 * `cover screws` is `cover screw`. Nothing else is found in it; all the words that hang on the number are others.
 */
import { ALL_CHECKS } from '../../../language-server/checks/all.ts';
import { isPlural, plural, singular } from '../../../language-server/checks/grammatical.ts';
import { unmark } from '../../support/marked.ts';

const DECLARED =
  /^(\s*(?:part|fastener|seal|connection|control|isolator|face|system|fluid|consumable|tool|kit) [\w-]+ ")([^"]+)"/gm;

export const IN_OTHER_NUMBER: readonly { name: string; text: string }[] = ALL_CHECKS.flatMap(
  ({ name, bad }) => {
    const { text } = unmark(bad);
    const changed = text.replaceAll(
      DECLARED,
      (_, before: string, title: string) => `${before}${isPlural(title) ? singular(title) : plural(title)}"`,
    );
    return changed === text ? [] : [{ name: `example of ${name} in the other number`, text: changed }];
  },
);
