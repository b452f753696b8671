/**
 * Writes a site to a folder as one act: everything goes to a folder beside it, which then takes its place. A run that
 * fails or is killed leaves the old site whole. Only an empty folder, or one that has the marker of a site made here,
 * is ever replaced.
 *
 * No call of Node swaps two folders, so there are two renames. A run that is killed by force just between them leaves
 * the old site whole under its name for that moment, and the next run puts it back first. Signals that can be caught
 * wait until both are done, because nothing else runs between them.
 */
import * as nodeFs from 'node:fs';
import { basename, dirname, join, resolve, sep } from 'node:path';
import { MARKER } from '../publish/site/addresses.ts';
import { refusedWriting } from './replace.ts';

/** The calls of the file system that are used: tests put failing ones in their place. */
export type SiteDisk = Pick<
  typeof nodeFs,
  | 'existsSync'
  | 'lstatSync'
  | 'mkdirSync'
  | 'readdirSync'
  | 'realpathSync'
  | 'renameSync'
  | 'rmSync'
  | 'writeFileSync'
>;

export type Written = { files: number } | { reason: string; remedy: string };

/** `sources` are never inside what is replaced. */
export function writeSite(
  folder: string,
  files: ReadonlyMap<string, string | Uint8Array>,
  sources: readonly string[],
  disk: SiteDisk = nodeFs,
): Written {
  let fresh: string | undefined;
  try {
    const place = placeOf(folder, disk);
    putBack(place, disk);
    const refused = whyNot(place, sources, disk);
    if (refused) return refused;
    disk.mkdirSync(dirname(place), { recursive: true });
    fresh = beside(place, `new-${process.pid}`);
    disk.rmSync(fresh, { recursive: true, force: true });
    disk.mkdirSync(fresh);
    for (const [address, content] of files) write(fresh, address, content, disk);
    swap(place, fresh, disk);
    tidy(place, disk);
    return { files: files.size };
  } catch (error) {
    if (fresh !== undefined) clear(fresh, disk);
    const { reason, remedy } = refusedWriting(error as NodeJS.ErrnoException);
    return { reason: `${reason}; what was there before is unchanged`, remedy };
  }
}

/** Where a link leads, so that the folder itself is replaced and not the link. */
function placeOf(folder: string, disk: SiteDisk): string {
  const place = resolve(folder);
  return disk.existsSync(place) ? disk.realpathSync(place) : place;
}

function whyNot(place: string, sources: readonly string[], disk: SiteDisk): Written | undefined {
  const inside = sources.find((source) => isInside(disk.realpathSync(resolve(source)), place));
  if (inside !== undefined)
    return {
      reason: `the procedures lie in the folder that would be replaced (${inside})`,
      remedy: 'Name another folder for the site.',
    };
  if (!disk.existsSync(place)) return undefined;
  if (!disk.lstatSync(place).isDirectory())
    return { reason: 'there is a file of that name', remedy: 'Name a folder.' };
  const entries = disk.readdirSync(place);
  if (entries.length > 0 && !entries.includes(MARKER))
    return {
      reason: 'the folder holds other things, and the site would replace them',
      remedy: 'Name an empty or a new folder.',
    };
  return undefined;
}

function write(top: string, address: string, content: string | Uint8Array, disk: SiteDisk): void {
  const path = join(top, ...address.split('/'));
  // Addresses are made here and stay inside; should one not, nothing is written.
  if (!isInside(path, top)) throw new Error(`the address ${address} leads out of the folder`);
  disk.mkdirSync(dirname(path), { recursive: true });
  disk.writeFileSync(path, content);
}

/** Nothing but these two calls stands between the old site and the new one. */
function swap(place: string, fresh: string, disk: SiteDisk): void {
  if (!disk.existsSync(place)) {
    disk.renameSync(fresh, place);
    return;
  }
  const old = beside(place, 'old');
  disk.rmSync(old, { recursive: true, force: true });
  disk.renameSync(place, old);
  try {
    disk.renameSync(fresh, place);
  } catch (error) {
    disk.renameSync(old, place);
    throw error;
  }
}

/** After a run that was killed between the two renames. */
function putBack(place: string, disk: SiteDisk): void {
  const old = beside(place, 'old');
  if (!disk.existsSync(place) && disk.existsSync(join(old, MARKER))) disk.renameSync(old, place);
}

/** What this and killed runs have left beside the site. The site is in place: a failure here is no failure. */
function tidy(place: string, disk: SiteDisk): void {
  const parent = dirname(place);
  const prefix = basename(beside(place, ''));
  try {
    for (const name of disk.readdirSync(parent))
      if (name === `${prefix}old` || /^new-\d+$/.test(rest(name, prefix))) clear(join(parent, name), disk);
  } catch {
    // The next run tries again.
  }
}

function rest(name: string, prefix: string): string {
  return name.startsWith(prefix) ? name.slice(prefix.length) : '';
}

function clear(path: string, disk: SiteDisk): void {
  try {
    disk.rmSync(path, { recursive: true, force: true });
  } catch {
    // It lies beside the site, under a name of its own, and the next run takes it away.
  }
}

function beside(place: string, what: string): string {
  return join(dirname(place), `.${basename(place)}.dowel-${what}`);
}

function isInside(path: string, folder: string): boolean {
  return path === folder || path.startsWith(folder.endsWith(sep) ? folder : folder + sep);
}
