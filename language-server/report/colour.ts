/** Colours for the terminal report. Loaded only where colour is wanted: the report is plain without it. */
import picocolors from 'picocolors';
import type { Dress, Painter } from './text.ts';

const colours = picocolors.createColors(true);

const DRESSES: Readonly<Record<Dress, (text: string) => string>> = {
  error: (text) => colours.bold(colours.red(text)),
  warning: (text) => colours.bold(colours.yellow(text)),
  information: (text) => colours.bold(colours.blue(text)),
  hint: (text) => colours.bold(colours.magenta(text)),
  check: colours.bold,
  message: colours.bold,
  place: colours.cyan,
  margin: colours.dim,
  advice: colours.green,
};

export const inColour: Painter = (dress, text) => (text === '' ? '' : DRESSES[dress](text));
