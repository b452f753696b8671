/** The finding about a picture that cannot be put into a page: said when publishing, which alone reads pictures. */
import type { Check } from '../checks/check.ts';
import { findingOf } from '../checks/finding-of.ts';
import { visited } from '../model/flow-walk.ts';
import type { LoadedFile } from '../model/names.ts';
import { pathFault } from '../model/picture-paths.ts';
import { type PictureSource, pictureData } from '../publish/page/pictures.ts';
import type { Finding } from '../report/finding.ts';

/** No example in text can show a file that is not there, so it stands beside the list of checks. */
export const pictureMissing: Check = {
  name: 'picture-missing',
  group: 'Names and quantities',
  severity: 'error',
  title: 'A picture cannot be put into the page.',
  explanation: `
A published page carries its pictures inside. So each picture that a step names must be there when the page is made: a
plain file of at most 4 MB that is a PNG, JPEG, GIF, WebP or AVIF picture by its first bytes, inside the folder of the
file that names it, also after symbolic links are followed.

Only \`dowel publish\` looks for the pictures; \`dowel check\` reads texts alone.`,
  source: 'common practice, no source',
  bad: '',
  good: '',
  says: ({ words = {} }) => ({
    message: `The picture "${words.path}" ${words.why}, and the page would lack it.`,
    help: 'Put a picture file there, or mend the path; it starts from the folder of this file.',
  }),
};

/** The pictures of a file's procedures that cannot be had; a path that is wrong by itself is another finding. */
export function picturesMissing(file: LoadedFile, pictures: PictureSource): Finding[] {
  return file.procedures.flatMap((procedure) =>
    visited(procedure.body).flatMap(({ statement }) => {
      if (statement.kind !== 'action') return [];
      return statement.tails.flatMap((tail): Finding[] => {
        if (tail.tail !== 'picture' || !tail.file || pathFault(tail.file.value) !== undefined) return [];
        const data = pictureData(pictures(file.path, tail.file.value));
        if (!('refused' in data)) return [];
        const at = { file: file.path, start: tail.file.start, end: tail.file.end };
        return [findingOf(pictureMissing, at, { path: tail.file.value, why: data.refused })];
      });
    }),
  );
}
