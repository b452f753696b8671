import type { Check } from '../check.ts';

export const pictureOutside: Check = {
  name: 'picture-outside',
  group: 'Names and quantities',
  severity: 'error',
  title: 'A picture lies where no page may take it from.',
  explanation: `
A published page carries its pictures inside, so that it works without a network and shows nothing that was not meant
for it. So a picture lies in the folder of the file that names it, or in a folder below, and its path is read from
there, with forward slashes. Addresses of the network, \`file:\` links, paths from the top of a disk and paths that
climb out with \`..\` are not taken: the picture could change, vanish, or be one that the reader must not see.

A symbolic link that leads out of the folder is refused when the page is made.`,
  source: 'common practice, no source',
  bad: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
procedure look-over "Look the press over" for press {
  clean ram picture "../private/ram.png" "The ram, seen from the left."
                    ^^^^^^^^^^^^^^^^^^^^
}
`,
  good: `
machine press "bench press" {
  part bed "bed" fixed
  part ram "ram" on bed
}
procedure look-over "Look the press over" for press {
  clean ram picture "pictures/ram.png" "The ram, seen from the left."
}
`,
  says: ({ words = {} }) => ({
    message: `The picture "${words.path}" ${words.why}: no page can take it from there.`,
    help: 'Put the picture beside this file, or in a folder below, and name it from here: "pictures/ram.png".',
  }),
};
