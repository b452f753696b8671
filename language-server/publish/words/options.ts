/** What a house may choose about its pages. */
import type { Convention } from '../../hazards/index.ts';
import { DEFAULT_CONVENTION } from '../../hazards/index.ts';
import type { Spelling } from './words.ts';

export interface PublishOptions {
  words: Spelling;
  /** Quantities in a second system of units, too: all, only those that the author gave, none. */
  secondUnits: boolean | 'never';
  /** The system of units that comes first. */
  units: 'as written' | 'metric' | 'us';
  convention: Convention;
  /** Verbs whose steps a second person confirms: `prove`, `lock out`. None unless the house says so. */
  secondPerson: readonly string[];
  /** ISO date of a file's last change, where it is known. */
  dateOf?: (file: string) => string | undefined;
}

export const DEFAULT_OPTIONS: PublishOptions = {
  words: 'british',
  secondUnits: true,
  units: 'as written',
  convention: DEFAULT_CONVENTION,
  secondPerson: [],
};
