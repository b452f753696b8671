/**
 * Writes a site and kills itself, by force, just before the call of the file system whose number is given. Run as a
 * process of its own: `write-and-die.ts FOLDER NUMBER`.
 */
import * as fs from 'node:fs';
import { type SiteDisk, writeSite } from '../../language-server/cli/write-site.ts';

const [folder = '', number = ''] = process.argv.slice(2);
const files = new Map([
  ['index.html', 'new index'],
  ['procedures/a/b.html', 'new page'],
  ['procedures/c.html', 'another new page'],
  ['.dowel-site', 'marker'],
]);

let calls = 0;
const disk = Object.fromEntries(
  Object.entries(fs).map(([name, value]) => [
    name,
    typeof value !== 'function' || !/Sync$/.test(name)
      ? value
      : (...args: unknown[]) => {
          calls += 1;
          if (calls === Number(number)) process.kill(process.pid, 'SIGKILL');
          return (value as (...all: unknown[]) => unknown)(...args);
        },
  ]),
) as unknown as SiteDisk;

const written = writeSite(folder, files, [], disk);
fs.writeSync(1, JSON.stringify({ written, calls }));
