/**
 * What the house has agreed on, for each file: the configuration file in its folder, or in the nearest folder above
 * it. The reader of configurations is loaded only where there is one.
 */
import { existsSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import type { ReadConfig } from '../config/config.ts';
import { CONFIG_NAME, defaultConfig, type HouseConfig } from '../config/house.ts';
import type { House, SourceHost } from '../project/project.ts';
import type { Finding } from '../report/finding.ts';
import { disk } from './disk.ts';
import type { Names } from './names.ts';

export interface HouseOptions {
  /** The configuration file to use, wherever the files lie. */
  config?: string;
  /** Stronger than the configuration. */
  convention?: HouseConfig['convention'];
}

export interface Houses {
  of(file: string): House | undefined;
  /** The same object for the same house. */
  configOf(file: string): HouseConfig;
  /** Whether the configuration leaves the file out where a folder is checked. */
  ignores(file: string): boolean;
  /** What is wrong with the configurations. */
  problems: Finding[];
}

interface Known {
  read: ReadConfig;
  house: House;
  /** The folder that paths in it are seen from. */
  folder: string;
}

/** `files` and `host` use the names of the command line. A configuration that cannot be read is refused by the host. */
export async function housesOf(
  files: readonly string[],
  host: SourceHost,
  names: Names,
  { config, convention }: HouseOptions,
): Promise<Houses> {
  const places = new Map(files.map((file) => [file, config ?? configFor(file)]));
  const known = new Map<string, Known>();
  const problems: Finding[] = [];
  for (const place of new Set([...places.values(), config])) {
    if (place === undefined) continue;
    const name = names.of(place);
    const text = host.read(name);
    if (text === undefined) continue;
    const [{ readConfig }, { houseOf }] = await Promise.all([
      import('../config/config.ts'),
      import('../config/use.ts'),
    ]);
    const read = readConfig(text, name);
    // A file of rules that is not there is a finding in the configuration, not a file named in vain.
    const used = houseOf(read, disk(names), name);
    problems.push(...used.problems);
    const house = convention ? { ...used.house, convention } : used.house;
    known.set(place, { read, house, folder: dirname(resolve(place)) });
  }
  const { isIgnored } = known.size > 0 ? await import('../config/use.ts') : { isIgnored: () => false };
  const bare: House | undefined = convention ? { convention } : undefined;
  const at = (file: string) => known.get(places.get(file) ?? '');
  const configs = new Map<Known | undefined, HouseConfig>();
  return {
    of: (file) => at(file)?.house ?? bare,
    configOf(file) {
      const house = at(file);
      const config = configs.get(house) ?? {
        ...(house?.read.config ?? defaultConfig),
        ...(convention ? { convention } : {}),
      };
      configs.set(house, config);
      return config;
    },
    ignores(file) {
      const found = at(file);
      if (!found) return false;
      const path = relative(found.folder, resolve(file)).replaceAll('\\', '/');
      return isIgnored(found.read.config.ignore, path);
    },
    problems,
  };
}

const ofFolder = new Map<string, string | undefined>();

/** The configuration of a file; asked once for all files of a folder. */
function configFor(file: string): string | undefined {
  const folder = file.slice(0, file.lastIndexOf('/') + 1);
  if (!ofFolder.has(folder)) ofFolder.set(folder, configAbove(dirname(resolve(file))));
  return ofFolder.get(folder);
}

const above = new Map<string, string | undefined>();

/** The configuration of a folder: its own, or that of the nearest folder above it that has one. */
function configAbove(folder: string): string | undefined {
  if (above.has(folder)) return above.get(folder);
  const own = join(folder, CONFIG_NAME);
  const parent = dirname(folder);
  const found = existsSync(own) ? own : parent === folder ? undefined : configAbove(parent);
  above.set(folder, found);
  return found;
}
