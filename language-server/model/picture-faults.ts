/** Pictures that lie where no page may take them from. Fact `picture-outside`. */
import type { Fact } from './facts.ts';
import { pathFault } from './picture-paths.ts';
import type { Survey } from './survey.ts';

export function pictureFaults(survey: Survey, file: { readonly path: string }): Fact[] {
  return survey.each('pictures', [], (statement) => {
    if (statement.kind !== 'action') return [];
    return statement.tails.flatMap((tail): Fact[] => {
      if (tail.tail !== 'picture' || !tail.file) return [];
      const why = pathFault(tail.file.value);
      if (why === undefined) return [];
      const at = { file: file.path, start: tail.file.start, end: tail.file.end };
      return [{ check: 'picture-outside', at, words: { path: tail.file.value, why } }];
    });
  });
}
