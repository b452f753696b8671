/**
 * What a house has agreed on: how severe each finding is, which signal words and units it writes, where its rules
 * stand. Plain data with its defaults; reads nothing (see ./config.ts) and loads nothing.
 */
import type { Convention, LiftingGuideline } from '../hazards/index.ts';
import type { Severity } from '../report/finding.ts';

/** The file that is looked for in the folder of the procedures and in the folders above it. */
export const CONFIG_NAME = 'dowel.config.json';

/** `british`: refit, spanner, tyre. `american`: reinstall, wrench, tire. Of published words only. */
export type WordChoice = 'british' | 'american';
/** Which unit a published quantity stands in: the one that the author wrote, SI and its kin, or US customary. */
export type UnitChoice = 'as written' | 'metric' | 'us';
/** A second unit in brackets: where the author wrote one, always (of the other system), never. */
export type SecondUnitChoice = 'as written' | 'always' | 'never';

export interface HouseConfig {
  /** By the name of the check; `off`: it is not reported. A check that is not named keeps its own severity. */
  readonly severities: Readonly<Record<string, Severity | 'off'>>;
  /** What the signal words of notices mean. */
  readonly convention: Convention;
  readonly words: WordChoice;
  readonly units: UnitChoice;
  readonly secondUnit: SecondUnitChoice;
  /** Against which guideline weights lifted by hand are held. */
  readonly liftingGuideline: LiftingGuideline;
  /** Files with rules that hold for every procedure, as written: seen from the configuration file. */
  readonly rules: readonly string[];
  /** Paths that are not checked when a folder is, seen from the configuration file; `*` and `**` as usual. */
  readonly ignore: readonly string[];
  /** How many findings a report lists at the most: for one file, and in all. */
  readonly limits: { readonly findings: number; readonly perFile: number };
}

export const defaultConfig: HouseConfig = {
  severities: {},
  convention: 'ansi',
  words: 'british',
  units: 'as written',
  secondUnit: 'as written',
  liftingGuideline: 'hse',
  rules: [],
  ignore: [],
  limits: { findings: 10_000, perFile: 1_000 },
};
