/**
 * Pictures from the disk, for pages: a plain file inside the folder of the file that names it, also after every
 * symbolic link is followed. Each is read once.
 */
import { readFileSync, realpathSync, statSync } from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import { pathFault, plainPath } from '../model/picture-paths.ts';
import { PICTURE_LIMIT, type PictureFile, type PictureSource } from '../publish/page/pictures.ts';
import { refusal } from './read.ts';

export function pictureFiles(): PictureSource {
  const known = new Map<string, PictureFile>();
  return (from, path) => {
    const why = pathFault(path);
    if (why !== undefined) return { refused: why };
    const key = join(dirname(resolve(from)), plainPath(path));
    let picture = known.get(key);
    if (picture === undefined) {
      picture = readPicture(dirname(resolve(from)), key);
      known.set(key, picture);
    }
    return picture;
  };
}

function readPicture(folder: string, path: string): PictureFile {
  try {
    const real = realpathSync(path);
    if (!real.startsWith(realpathSync(folder) + sep))
      return { refused: 'is a link that leads out of the folder of this file' };
    const stat = statSync(real);
    if (!stat.isFile()) return { refused: 'is not a plain file' };
    if (stat.size > PICTURE_LIMIT)
      return { refused: `has ${Math.ceil(stat.size / 1024 / 1024)} MB; at most 4 MB go into a page` };
    return { bytes: readFileSync(real) };
  } catch (error) {
    return { refused: `cannot be read: ${refusal(error as NodeJS.ErrnoException).reason}` };
  }
}
