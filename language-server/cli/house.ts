/** Finds what a house has agreed on: the nearest configuration file, from the folder of the procedures upwards. */
import { existsSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { CONFIG_NAME, defaultConfig, type HouseConfig, readConfig } from '../config/config.ts';
import type { Finding } from '../report/finding.ts';
import { readText } from './read.ts';
import type { Refused } from './walk.ts';

export interface House {
  config: HouseConfig;
  /** What is wrong with the file; places are offsets in it. */
  problems: Finding[];
  /** The file that could not be read. */
  refused?: Refused;
}

/** `path` is a file or a folder. */
export function houseOf(path: string): House {
  const start = resolve(path);
  const first = existsSync(start) && statSync(start).isDirectory() ? start : dirname(start);
  for (let folder = first; ; folder = dirname(folder)) {
    const file = join(folder, CONFIG_NAME);
    if (existsSync(file)) {
      const read = readText(file);
      if ('text' in read) return readConfig(read.text, file);
      const why =
        'reason' in read ? read : { reason: 'it is too large', remedy: 'Name a configuration file.' };
      return { config: defaultConfig, problems: [], refused: { path: file, ...why } };
    }
    if (folder === dirname(folder)) return { config: defaultConfig, problems: [] };
  }
}
